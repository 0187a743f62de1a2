// lardiner assembly: the sheet of a batch that is put together unit by unit.
#include "command/one_batch.h"
#include "command/output.h"
#include "command/sheet_json.h"
#include "facts/assembly_sheet.h"
#include "reader/quote.h"

namespace lardiner::command {

namespace {

using measure::Quantity;
using problem::Code;
using problem::Error;
using problem::Errors;
using problem::Expected;
using problem::ExpectedAll;
using reader::quoted;

// "120", or "120 pieces".
Expected<std::int64_t> units_of(const QString& text) {
  bool digits = false;
  const qlonglong plain = text.toLongLong(&digits);
  if (digits && plain >= 0) return plain;
  const auto amount = amount_of_option(QStringLiteral("--units"), text);
  if (!amount) return tl::unexpected(amount.error());
  const Quantity piece = measure::one(measure::Unit::Piece);
  if (amount->dimension == piece.dimension && amount->amount % piece.amount == 0) return amount->amount / piece.amount;
  return tl::unexpected(Error{Code::Malformed,
                              QStringLiteral("--units: %1 is not a number of whole units").arg(quoted(text)),
                              {},
                              QStringLiteral("write it as 120")});
}

ExpectedAll<std::vector<plan::There>> there_of(const WorkRun& run, const QStringList& texts) {
  std::vector<plan::There> out;
  Errors errors;
  for (const QString& text : texts)
    if (const auto there = item_amount(QStringLiteral("--there"), text, run.book))
      out.push_back({there->item, there->amount});
    else
      errors.push_back(there.error());
  if (!errors.empty()) return tl::unexpected(errors);
  return out;
}

// As many as the scarcest item is enough for, at worst.
Expected<std::int64_t> sure_units(const std::vector<plan::Suffices>& suffices) {
  if (suffices.empty())
    return tl::unexpected(Error{Code::Missing,
                                QStringLiteral("nothing says how many units"),
                                {},
                                QStringLiteral("write --units 120, or what there is of an item with --there")});
  const plan::Suffices& scarcest = suffices.front();
  if (scarcest.units.worst && *scarcest.units.worst > 0) return *scarcest.units.worst;
  return tl::unexpected(Error{
      Code::Range,
      QStringLiteral("--there: what there is of %1 is not enough for one unit for sure").arg(quoted(scarcest.item)),
      {},
      QStringLiteral("say with --units how many to make")});
}

// The make-over comes off the units that what is there gives.
std::int64_t wanted_of(const book::Product& product, std::int64_t made) {
  return measure::in_unit(plan::put_up({}, product, measure::quantity({made, 1}, measure::Unit::Piece)),
                          measure::Unit::Piece)
      .num();
}

// The sheet and what it is made of.
struct Made {
  facts::WorkSheet sheet;
  QJsonObject json;
};

ExpectedAll<Made> sheet_of(const WorkRun& run, book::Weighing& weighing, const plan::Assembly& assembly,
                           const std::vector<plan::Suffices>& suffices, const SheetOptions& wish) {
  std::vector<plan::Wanted> wanted;
  for (const plan::AssemblyLine& line : assembly.lines) wanted.push_back({line.line->item, line.to_pull});
  auto ahead = batch_ahead(run, weighing, *assembly.product, wish, wanted);
  if (!ahead) return tl::unexpected(ahead.error());
  ahead->fill = plan::filling(*assembly.product, measure::quantity({assembly.wanted, 1}, measure::Unit::Piece));
  const auto sheet = facts::assembly_sheet(run.setting(), assembly, suffices, *ahead);
  if (!sheet) return tl::unexpected(sheet.error());
  return Made{*sheet, json_of(run, assembly, suffices, *ahead)};
}

ExpectedAll<Made> made(const WorkRun& run, const AssemblyOptions& wish) {
  const auto product = product_named(run.book, wish.product);
  if (!product) return tl::unexpected(Errors{product.error()});
  const auto there = there_of(run, wish.there);
  if (!there) return tl::unexpected(there.error());
  book::Weighing weighing(run.book);
  const auto suffices = plan::units_from(run.book, weighing, **product, *there);
  if (!suffices) return tl::unexpected(suffices.error());
  const auto units = wish.units.isEmpty() ? sure_units(*suffices) : units_of(wish.units);
  if (!units) return tl::unexpected(Errors{units.error()});
  const std::int64_t wanted = wish.units.isEmpty() ? wanted_of(**product, *units) : *units;
  const auto assembly = plan::assembly(run.book, weighing, **product, wanted);
  if (!assembly) return tl::unexpected(assembly.error());
  return sheet_of(run, weighing, *assembly, *suffices, wish.sheet);
}

}  // namespace

ExitStatus assembly(const Options& options, const AssemblyOptions& wish) {
  const auto run = read_work_run(options);
  if (!run) return refuse(run.error(), options.json);
  const auto sheet = made(*run, wish);
  if (!sheet) return refuse(sheet.error(), options.json);
  return hand_over(options, wish.sheet, *run, sheet->sheet, sheet->json);
}

}  // namespace lardiner::command
