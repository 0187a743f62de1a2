// The batches of a plan before they are made: their numbers and lots, what they take, what they fill, whom they are
// for.
#include "command/planned_batches.h"

#include "batch/clock.h"

namespace lardiner::command {

namespace {

bool is_for(const plan::For& what, size_t making) {
  return what.kind == plan::For::Kind::Making && what.index == making;
}

QStringList whom(const WorkRun& run, const plan::DayPlan& plan, const plan::PlannedMaking& making) {
  QStringList out;
  for (const plan::For& what : making.wanted_by) {
    const QString text = what.kind == plan::For::Kind::Order ? whom_text(run, plan.orders[what.index]) : QString();
    if (!text.isEmpty() && !out.contains(text)) out << text;
  }
  return out;
}

}  // namespace

std::vector<PlannedInput> planned_inputs(const plan::DayPlan& plan, size_t making) {
  std::vector<PlannedInput> out;
  for (const plan::Take& take : plan.takes)
    if (is_for(take.what, making)) out.push_back({&plan.on_hand[take.lot], 0, take.quantity});
  for (size_t i = 0; i < plan.makings.size(); ++i)
    for (const plan::For& what : plan.makings[i].wanted_by)
      if (is_for(what, making)) out.push_back({nullptr, i, what.quantity});
  return out;
}

std::vector<PlannedBatch> planned_batches(const WorkRun& run, const plan::DayPlan& plan, int first) {
  std::vector<PlannedBatch> out(plan.makings.size());
  for (size_t i = 0; i < out.size(); ++i) {
    const plan::PlannedMaking& making = plan.makings[i];
    PlannedBatch& batch = out[i];
    batch.making = &making;
    batch.number = first + static_cast<int>(i);
    batch.put_up = plan::put_up(run.book.kitchen, *making.product, making.output);
    batch.ahead.day = batch::local_day(making.start, run.book.kitchen.zone);
    batch.ahead.lot = lot_of(run.book.kitchen, *making.product, batch.ahead.day, batch.number);
    batch.ahead.fill = plan::filling(*making.product, batch.put_up);
    batch.ahead.whom = whom(run, plan, making);
  }
  for (size_t i = 0; i < out.size(); ++i)
    for (const PlannedInput& input : planned_inputs(plan, i)) {
      if (input.lot)
        out[i].ahead.drawn.push_back({input.lot->item, input.lot->lot, input.lot->where, input.quantity});
      else
        out[i].ahead.drawn.push_back(
            {out[input.batch].making->product->id, out[input.batch].ahead.lot, {}, input.quantity});
    }
  return out;
}

}  // namespace lardiner::command
