// The batches of a plan before they are made: their numbers and lots, what they take and fill, whom they are for.
#include "command/planned_batches.h"

#include "batch/clock.h"

namespace lardiner::command {

namespace {

QStringList whom(const WorkRun& run, const plan::DayPlan& plan, const plan::PlannedMaking& making) {
  QStringList out;
  for (const plan::For& what : making.wanted_by) {
    const QString text = what.kind == plan::For::Kind::Order ? whom_text(run, plan.orders[what.index]) : QString();
    if (!text.isEmpty() && !out.contains(text)) out << text;
  }
  return out;
}

// What each takes of lots, then of other batches.
void add_inputs(const plan::DayPlan& plan, std::vector<PlannedBatch>& batches) {
  const auto making = plan::For::Kind::Making;
  for (const plan::Take& take : plan.takes)
    if (take.what.kind == making)
      batches[take.what.index].inputs.push_back({&plan.on_hand[take.lot], 0, take.quantity});
  for (size_t i = 0; i < plan.makings.size(); ++i)
    for (const plan::For& what : plan.makings[i].wanted_by)
      if (what.kind == making) batches[what.index].inputs.push_back({nullptr, i, what.quantity});
}

facts::Drawn drawn(const PlannedInput& input, const std::vector<PlannedBatch>& batches) {
  if (input.lot) return {input.lot->item, input.lot->lot, input.lot->where, input.quantity};
  const PlannedBatch& sub = batches[input.batch];
  return {sub.making->product->id, sub.ahead.lot, {}, input.quantity};
}

}  // namespace

std::vector<PlannedBatch> planned_batches(const WorkRun& run, const plan::DayPlan& plan, int first) {
  std::vector<PlannedBatch> out(plan.makings.size());
  for (size_t i = 0; i < out.size(); ++i) {
    const plan::PlannedMaking& making = plan.makings[i];
    PlannedBatch& batch = out[i];
    batch.making = &making;
    if (first > 0) batch.number = first + static_cast<int>(i);
    batch.put_up = plan::put_up(run.book.kitchen, *making.product, making.output);
    batch.ahead.day = batch::local_day(making.start, run.book.kitchen.zone);
    if (first > 0) batch.ahead.lot = lot_of(run.book.kitchen, *making.product, batch.ahead.day, batch.number);
    batch.ahead.fill = plan::filling(*making.product, batch.put_up);
    batch.ahead.whom = whom(run, plan, making);
  }
  add_inputs(plan, out);
  for (PlannedBatch& batch : out)
    for (const PlannedInput& input : batch.inputs) batch.ahead.drawn.push_back(drawn(input, out));
  return out;
}

}  // namespace lardiner::command
