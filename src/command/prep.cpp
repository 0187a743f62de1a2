// lardiner prep: the sheet of a batch, what is pulled, weighed and done.
#include <QRegularExpression>

#include "batch/read_records_parts.h"
#include "batch/read_records_values.h"
#include "command/made_sheet.h"
#include "command/one_batch.h"
#include "command/option_error.h"
#include "command/output.h"
#include "command/sheet_json.h"
#include "facts/prep_sheet.h"
#include "measure/text.h"
#include "plan/amounts_of.h"

namespace lardiner::command {

namespace {

using measure::Quantity;
using problem::Code;
using problem::Error;
using problem::Errors;
using problem::Expected;
using problem::ExpectedAll;

// What is asked of the formula; the containers, where they were named.
struct Asked {
  plan::Target target = plan::Makings{{1, 1}};
  std::vector<batch::ContainerGroup> containers;
  QString option;  ///< that asks; empty where none does
};

Expected<Quantity> all_together(const std::vector<batch::ContainerGroup>& groups) {
  Quantity sum{groups.front().holds.dimension, 0};
  for (const batch::ContainerGroup& group : groups) {
    if (group.holds.dimension != sum.dimension)
      return tl::unexpected(Error{Code::Conflict,
                                  QStringLiteral("--give: containers of pieces and of weight do not add up"),
                                  {},
                                  QStringLiteral("make a sheet for each")});
    sum = sum + measure::scaled(group.holds, {group.count, 1});
  }
  return sum;
}

const QString kGive = QStringLiteral("--give");
const QString kFrom = QStringLiteral("--from");
const QString kTimes = QStringLiteral("--times");

// "12 tub 500 g + 1 tub 300 g"
ExpectedAll<Asked> give_containers(const book::Book& book, const book::Product& product, const QString& text) {
  const batch::RecordSettings settings;
  const auto groups = batch::parse_containers(text, batch::Reading{book, settings});
  Errors errors;
  if (!groups)
    for (const Error& error : groups.error()) errors.push_back(of_option(kGive, error));
  if (!errors.empty()) return tl::unexpected(errors);
  for (const batch::ContainerGroup& group : *groups) batch::check_kind(product, group, errors);
  if (!errors.empty()) return tl::unexpected(named_for(kGive, errors));
  const auto sum = all_together(*groups);
  if (!sum) return tl::unexpected(Errors{sum.error()});
  return Asked{plan::Give{*sum}, *groups, kGive};
}

// "12 tub 500 g", unlike "1 lb 8 oz"; "12 tub" alone is told what it lacks.
bool names_containers(const QString& text) {
  static const QRegularExpression form(QStringLiteral(R"(\A[0-9]+ [a-z]+ [0-9])"));
  static const QRegularExpression kind(QStringLiteral(R"(\A[0-9.,]+ ?([a-z]+?)s?\b)"));
  const QString words = text.simplified();
  return (form.match(words).hasMatch() && !measure::parse_quantity(text)) ||
         batch::container_kinds().contains(kind.match(words).captured(1));
}

ExpectedAll<Asked> asked_of(const WorkRun& run, const book::Product& product, const PrepOptions& wish) {
  if (!wish.give.isEmpty()) {
    if (names_containers(wish.give)) return give_containers(run.book, product, wish.give);
    const auto amount = amount_of_option(kGive, wish.give, run.book);
    if (!amount) return tl::unexpected(Errors{amount.error()});
    return Asked{plan::Give{*amount}, {}, kGive};
  }
  if (!wish.from.isEmpty()) {
    const auto there = item_amount(kFrom, wish.from, run.book);
    if (!there) return tl::unexpected(Errors{there.error()});
    return Asked{plan::UseUp{there->item, there->amount}, {}, kFrom};
  }
  if (wish.fill_vessel) return Asked{plan::FillVessel{}, {}, QStringLiteral("--fill-vessel")};
  if (wish.times.isEmpty()) return Asked{};
  const auto times = measure::parse_decimal(wish.times);
  if (times) return Asked{plan::Makings{*times}, {}, kTimes};
  return tl::unexpected(Errors{of_option(kTimes, times.error())});
}

// As of a batch record: a slip of three zeros is far above it.
bool too_much(book::Weighing& weighing, const book::Product& product, measure::Ratio makings) {
  const auto more = [&](Quantity one) {
    return one.amount > 0 && measure::ratio(batch::most_made(one.dimension), one) < makings;
  };
  const auto weight = weighing.output(product);
  const auto units = book::Weighing::units(product);
  return (weight && more(*weight)) || (product.makes && more(*product.makes)) ||
         (units && more(measure::quantity(*units, measure::Unit::Piece)));
}

ExpectedAll<measure::Ratio> makings_of(const WorkRun& run, book::Weighing& weighing, const book::Product& product,
                                       const Asked& asked) {
  const auto makings = plan::makings(run.book, weighing, product, asked.target);
  if (!makings) return tl::unexpected(named_for(asked.option, {makings.error()}));
  if (asked.option.isEmpty() || !too_much(weighing, product, *makings)) return *makings;
  return tl::unexpected(Errors{of_option(
      asked.option, {Code::Range, QStringLiteral("this is more than a kitchen makes"), {}, batch::most_made_text()})});
}

std::vector<plan::Wanted> wanted_by(const plan::Prep& prep) {
  std::vector<plan::Wanted> out;
  for (const plan::Bowl& bowl : prep.bowls)
    for (const plan::PrepLine& line : bowl.lines)
      out.push_back({line.amount.line->item, measure::scaled(line.amount.to_pull, {prep.scaled.pulls, 1})});
  return out;
}

std::vector<plan::Filled> filled(const WorkRun& run, book::Weighing& weighing, const plan::Scaled& scaled,
                                 const Asked& asked) {
  const book::Product& product = *scaled.product;
  std::vector<plan::Filled> out;
  for (const batch::ContainerGroup& group : asked.containers)
    out.push_back({product.container(group.kind, group.holds), group.count, group.holds});
  if (!out.empty()) return out;
  const Quantity weight = measure::scaled(scaled.output, {scaled.pulls, 1});
  const std::optional<Quantity> output = plan::amount_of(weighing, product, weight);
  return output ? plan::filling(product, plan::put_up(run.book.kitchen, product, *output)) : out;
}

}  // namespace

ExpectedAll<MadeSheet> made_prep(const WorkRun& run, const PrepOptions& wish) {
  const auto product = product_named(run.book, wish.product);
  if (!product) return tl::unexpected(Errors{product.error()});
  const auto asked = asked_of(run, **product, wish);
  if (!asked) return tl::unexpected(asked.error());
  book::Weighing weighing(run.book);
  const auto makings = makings_of(run, weighing, **product, *asked);
  if (!makings) return tl::unexpected(makings.error());
  const auto scaled = plan::scaled(run.book, weighing, **product, *makings);
  if (!scaled) return tl::unexpected(named_for(asked->option, scaled.error()));
  const plan::Prep prep = plan::prep(run.book, *scaled);
  auto ahead = batch_ahead(run, weighing, **product, wish.sheet, wanted_by(prep));
  if (!ahead) return tl::unexpected(ahead.error());
  ahead->fill = filled(run, weighing, *scaled, *asked);
  const auto sheet = facts::prep_sheet(run.setting(), prep, *ahead);
  if (!sheet) return tl::unexpected(sheet.error());
  return MadeSheet{*sheet, json_of(run, prep, *ahead)};
}

ExitStatus prep(const Options& options, const PrepOptions& wish) {
  const auto run = read_work_run(options, wish.sheet.out);
  if (!run) return refuse(run.error(), options.json);
  const auto sheet = made_prep(*run, wish);
  if (!sheet) return refuse(sheet.error(), options.json);
  return hand_over(options, wish.sheet, *run, sheet->sheet, sheet->json);
}

}  // namespace lardiner::command
