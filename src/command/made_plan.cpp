// A day's plan with its batches.
#include "command/made_plan.h"

#include "command/output.h"
#include "command/plan_json.h"
#include "command/plan_problems.h"
#include "command/printed_words.h"
#include "facts/plan_sheet.h"
#include "plan/read_orders.h"

namespace lardiner::command {

using problem::Code;
using problem::Error;
using problem::Errors;
using problem::ExpectedAll;

namespace {

constexpr size_t kMostNumber = 9999;

Error too_many(int first, size_t batches) {
  return {Code::Range,
          QStringLiteral("this plan has %1 batches, and from number %2 not all of them get a number")
              .arg(batches)
              .arg(first),
          {},
          QStringLiteral("begin at a lower --number, or plan fewer orders at a time")};
}

}  // namespace

ExpectedAll<std::vector<plan::Order>> read_orders_file(const WorkRun& run, const QString& path, RecordFormat format,
                                                       const QDateTime& from) {
  const auto rows = read_rows(path, format);
  if (!rows) return tl::unexpected(rows.error());
  plan::Orders read = plan::read_orders(*rows, run.book, {from, rows->semicolons});
  if (read.errors.empty() && run.faces) read.errors = unprintable(read.orders, *run.faces);
  if (!read.errors.empty()) return tl::unexpected(read.errors);
  return std::move(read.orders);
}

ExpectedAll<Planned> made_plan(const WorkRun& run, PlanTold told) {
  Planned out;
  out.plan = plan::day_plan(run.book, std::move(told.orders), std::move(told.on_hand.lots), run.now);
  out.counted = counted_text(told.on_hand, run.book.kitchen.zone);
  const size_t batches = out.plan.makings.size();
  if (static_cast<size_t>(told.number) + batches > kMostNumber + 1)
    return tl::unexpected(Errors{too_many(told.number, batches)});
  out.batches = planned_batches(run, out.plan, told.number);
  QStringList lots;
  for (const PlannedBatch& batch : out.batches) lots << batch.ahead.lot;
  auto sheet = facts::plan_sheet(run.setting(), out.plan, lots, run.now);
  if (!sheet) return tl::unexpected(sheet.error());
  out.sheet = std::move(*sheet);
  out.json = json_of(run, out.plan, out.batches);
  if (!out.counted.isEmpty()) out.json.insert(QStringLiteral("on_hand"), out.counted.trimmed());
  out.json.insert(QStringLiteral("problems"), json(unmet_problems(run.book, out.plan)));
  return out;
}

}  // namespace lardiner::command
