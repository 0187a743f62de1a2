// lardiner assembly: the sheet of a batch that is put together unit by unit.
#include <QRegularExpression>
#include <algorithm>

#include "batch/read_records_values.h"
#include "command/made_sheet.h"
#include "command/one_batch.h"
#include "command/option_error.h"
#include "command/output.h"
#include "command/sheet_json.h"
#include "facts/assembly_sheet.h"
#include "plan/refusals.h"
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

const QString kUnits = QStringLiteral("--units");
const QString kThere = QStringLiteral("--there");

Error too_many(const QString& option, const QString& what) {
  return of_option(option, {Code::Range, what, {}, QStringLiteral("at most %1 pieces").arg(batch::kMostPieces)});
}

Error not_whole(const QString& text) {
  return of_option(kUnits, {Code::Malformed,
                            quoted(text) + QStringLiteral(" is not a number of whole units"),
                            {},
                            QStringLiteral("write it as 120")});
}

// "120"
Expected<std::int64_t> bare_units(const QString& text) {
  bool fits = false;
  const qlonglong units = text.toLongLong(&fits);
  if (!fits || units > batch::kMostPieces)
    return tl::unexpected(too_many(kUnits, quoted(text) + QStringLiteral(" is more than a kitchen makes")));
  if (units < 1) return tl::unexpected(not_whole(text));
  return units;
}

// "120", or "120 pieces".
Expected<std::int64_t> units_of(const book::Book& book, const QString& text) {
  static const QRegularExpression digits(QStringLiteral(R"(\A[0-9]+\z)"));
  if (digits.match(text).hasMatch()) return bare_units(text);
  const auto amount = amount_of_option(kUnits, text, book);
  if (!amount) return tl::unexpected(amount.error().code == Code::Range ? amount.error() : not_whole(text));
  const Quantity piece = measure::one(measure::Unit::Piece);
  if (amount->dimension != piece.dimension || amount->amount % piece.amount != 0)
    return tl::unexpected(not_whole(text));
  return amount->amount / piece.amount;
}

// What there is of an item, as it was first written.
struct Stated {
  QString text;
  plan::There there;
};

// Of an item that is named again the amounts add up.
std::optional<Error> add(std::vector<Stated>& all, const QString& text, const ItemAmount& more) {
  const auto known =
      std::find_if(all.begin(), all.end(), [&](const Stated& one) { return one.there.item == more.item; });
  if (known == all.end()) {
    all.push_back({text, {more.item, more.amount}});
    return std::nullopt;
  }
  Quantity& sum = known->there.amount;
  if (sum.dimension != more.amount.dimension)
    return of_option(kThere, {Code::Conflict,
                              QStringLiteral("%1 and %2 do not add up").arg(quoted(known->text), quoted(text)),
                              {},
                              QStringLiteral("write both in the same kind of unit, or name the item once")});
  sum = sum + more.amount;
  return std::nullopt;
}

ExpectedAll<std::vector<plan::There>> there_of(const WorkRun& run, const QStringList& texts) {
  std::vector<Stated> all;
  Errors errors;
  for (const QString& text : texts) {
    const auto there = item_amount(kThere, text, run.book);
    if (!there)
      errors.push_back(there.error());
    else if (const auto error = add(all, text, *there))
      errors.push_back(*error);
  }
  std::vector<plan::There> out;
  for (const Stated& one : all) out.push_back(one.there);
  if (!errors.empty()) return tl::unexpected(errors);
  return out;
}

Error no_number() {
  return {Code::Missing,
          QStringLiteral("nothing says how many units"),
          {},
          QStringLiteral("write --units 120, or what there is of an item with --there")};
}

// As many as the scarcest item is enough for, at worst. REQUIRES: there is one.
Expected<std::int64_t> sure_units(const std::vector<plan::Suffices>& suffices) {
  const plan::Suffices& scarcest = suffices.front();
  if (scarcest.units.worst && *scarcest.units.worst > batch::kMostPieces)
    return tl::unexpected(too_many(
        kThere,
        QStringLiteral("what there is of %1 is enough for more than a kitchen makes").arg(quoted(scarcest.item))));
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

Error not_in_units(const book::Product& product) {
  Error error = plan::not_in_pieces(product);
  error.hint += QStringLiteral("; of what is made by weight ask for the sheet with prep");
  return error;
}

ExpectedAll<MadeSheet> sheet_of(const WorkRun& run, book::Weighing& weighing, const plan::Assembly& assembly,
                                const std::vector<plan::Suffices>& suffices, const SheetOptions& wish) {
  std::vector<plan::Wanted> wanted;
  for (const plan::AssemblyLine& line : assembly.lines) wanted.push_back({line.line->item, line.to_pull});
  auto ahead = batch_ahead(run, weighing, *assembly.product, wish, wanted);
  if (!ahead) return tl::unexpected(ahead.error());
  ahead->fill = plan::filling(*assembly.product, measure::quantity({assembly.wanted, 1}, measure::Unit::Piece));
  const auto sheet = facts::assembly_sheet(run.setting(), assembly, suffices, *ahead);
  if (!sheet) return tl::unexpected(sheet.error());
  return MadeSheet{*sheet, json_of(run, assembly, suffices, *ahead)};
}

}  // namespace

ExpectedAll<MadeSheet> made_assembly(const WorkRun& run, const AssemblyOptions& wish) {
  const auto product = product_named(run.book, wish.product);
  if (!product) return tl::unexpected(Errors{product.error()});
  if (!book::Weighing::units(**product)) return tl::unexpected(Errors{not_in_units(**product)});
  const auto there = there_of(run, wish.there);
  if (!there) return tl::unexpected(there.error());
  book::Weighing weighing(run.book);
  const auto suffices = plan::units_from(run.book, weighing, **product, *there);
  if (!suffices) return tl::unexpected(named_for(kThere, suffices.error()));
  const auto units = wish.units.isEmpty() ? sure_units(*suffices) : units_of(run.book, wish.units);
  if (!units) return tl::unexpected(Errors{units.error()});
  const std::int64_t wanted = wish.units.isEmpty() ? wanted_of(**product, *units) : *units;
  const auto assembly = plan::assembly(run.book, weighing, **product, wanted);
  if (!assembly) return tl::unexpected(assembly.error());
  return sheet_of(run, weighing, *assembly, *suffices, wish.sheet);
}

ExitStatus assembly(const Options& options, const AssemblyOptions& wish) {
  if (wish.units.isEmpty() && wish.there.isEmpty()) return wrong_usage(no_number(), options.json);
  const auto run = read_work_run(options, wish.sheet.out);
  if (!run) return refuse(run.error(), options.json);
  const auto sheet = made_assembly(*run, wish);
  if (!sheet) return refuse(sheet.error(), options.json);
  return hand_over(options, wish.sheet, *run, sheet->sheet, sheet->json);
}

}  // namespace lardiner::command
