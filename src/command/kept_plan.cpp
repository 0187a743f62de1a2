// The plan of the station's orders.
#include "command/kept_plan.h"

#include "batch/clock.h"
#include "command/files.h"
#include "command/plan_folder.h"
#include "ledger/entries.h"
#include "ledger/on_hand.h"
#include "plan/read_orders.h"

namespace lardiner::command {

using problem::Code;
using problem::Error;
using problem::Errors;
using station::PlanShown;

namespace {

QDateTime day_begins(const QDateTime& now, const QTimeZone& zone) {
  return batch::local_day(now, zone).startOfDay(zone);
}

// What was to leave earlier today has left or is late: neither is a matter of planning any more.
int without_past(std::vector<plan::Order>& orders, const QDateTime& now) {
  return static_cast<int>(std::erase_if(orders, [&](const plan::Order& order) { return order.due < now; }));
}

void add_made_today(LedgerRun& run, PlanShown& shown) {
  const auto entries = ledger::entries_of_day(run.ledger.store(), batch::local_day(run.now, run.zone()));
  if (!entries) {
    shown.faults.push_back(entries.error());
    return;
  }
  for (const ledger::Recorded& one : *entries)
    if (one.entry.event.kind == history::Kind::Made) shown.made_today[one.entry.event.item] << one.entry.event.lot;
}

PlanShown shown_of(const QString& path, const book::Book& book, LedgerRun& run) {
  PlanShown shown;
  const auto rows = read_rows(path, RecordFormat::Guess);
  if (!rows) {
    shown.faults = rows.error();
    return shown;
  }
  plan::Orders read = plan::read_orders(*rows, book, {day_begins(run.now, run.zone()), rows->semicolons});
  shown.faults = std::move(read.errors);
  shown.past = without_past(read.orders, run.now);
  auto on_hand = ledger::on_hand(run.ledger, run.now, run.zone());
  if (!on_hand) {  // without it all would have to be made
    shown.faults.push_back(on_hand.error());
    return shown;
  }
  shown.plan = plan::day_plan(book, std::move(read.orders), std::move(*on_hand), run.now);
  add_made_today(run, shown);
  return shown;
}

Error no_orders() {
  return {Code::Missing,
          QStringLiteral("this station has no orders"),
          {},
          QStringLiteral("start it with the file of the orders: --orders")};
}

}  // namespace

std::shared_ptr<const PlanShown> KeptPlan::now(std::shared_ptr<const TakenBook> taken, LedgerRun& run) {
  if (orders_.isEmpty()) return nullptr;
  const std::lock_guard lock(mutex_);
  const qint64 minute = run.now.toSecsSinceEpoch() / 60;
  const QByteArray file = look_of_file(orders_);
  const std::vector<ledger::Head> heads = run.ledger.heads();
  if (!made_ || made_->taken != taken || made_->heads != heads || made_->minute != minute || made_->file != file) {
    PlanShown shown = shown_of(orders_, taken->book, run);
    made_ = std::make_shared<const Made>(Made{std::move(taken), heads, minute, file, std::move(shown)});
  }
  return {made_, &made_->shown};
}

problem::ExpectedAll<QByteArray> KeptPlan::pdf(const Options& options) const {
  if (orders_.isEmpty()) return tl::unexpected(Errors{no_orders()});
  const auto run = read_work_run(options, orders_);
  if (!run) return tl::unexpected(run.error());
  auto orders = read_orders_file(*run, orders_, RecordFormat::Guess, day_begins(run->now, run->book.kitchen.zone));
  if (!orders) return tl::unexpected(orders.error());
  without_past(*orders, run->now);
  auto on_hand = find_on_hand(options, {}, *run);
  if (!on_hand) return tl::unexpected(on_hand.error());
  const auto planned = made_plan(*run, {std::move(*orders), std::move(*on_hand), 0});
  if (!planned) return tl::unexpected(planned.error());
  auto document = plan_document(*run, *planned, paper_of({}, run->book.kitchen));
  if (!document) return tl::unexpected(document.error());
  return std::move(document->pdf);
}

}  // namespace lardiner::command
