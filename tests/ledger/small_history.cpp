// Batches and events without a book, for the tests and the programs that drive a ledger.
#include "small_history.h"

namespace lardiner::ledger {

using history::Event;
using history::Kind;

namespace {

batch::Rule seven_days() {
  batch::Rule rule;
  rule.state = book::State::Chilled;
  rule.length = {book::Length::Unit::Days, 7, 1};
  rule.authority.name = QStringLiteral("kitchen rule");
  return rule;
}

batch::Question question(const QDateTime& made_at) {
  batch::Question question;
  question.zone = kZone;
  question.made_at = made_at;
  question.rules = {seven_days()};
  batch::Rule frozen = seven_days();
  frozen.state = book::State::Frozen;
  frozen.length = {book::Length::Unit::Months, 3, 1};
  frozen.kind = book::EndKind::BestBefore;
  question.rules.push_back(frozen);
  question.hot_or_cold_start.length = {book::Length::Unit::Seconds, 4 * 3600, 1};
  question.cold_start.length = {book::Length::Unit::Seconds, 6 * 3600, 1};
  return question;
}

batch::Input input_of(const Went& went) {
  batch::Input input;
  input.item = went.item;
  input.lot = went.lot;
  input.candidates = went.candidates;
  input.quantity = grams(went.grams);
  return input;
}

void add_containers(batch::Fixed& fixed, int count) {
  batch::ContainerGroup group;
  group.count = count;
  group.kind = QStringLiteral("tub");
  group.holds = grams(1000);
  fixed.batch.record.containers = {group};
  for (int number = 1; number <= count; ++number) {
    batch::Container container;
    container.number = number;
    container.of = count;
    container.serial = QStringLiteral("%1-%2").arg(fixed.batch.lot).arg(number);
    fixed.batch.containers.push_back(container);
    fixed.question_of.push_back(0);
  }
}

}  // namespace

batch::Fixed batch_of(const QString& lot, const QString& item, const QDateTime& made_at, int containers,
                      const std::vector<Went>& inputs) {
  batch::Fixed fixed;
  fixed.name = item;
  fixed.batch.lot = lot;
  fixed.batch.number = 1;
  fixed.batch.record.item = item;
  fixed.batch.record.number = 1;
  fixed.batch.record.made_at = made_at;
  fixed.batch.record.quantity = grams(1000 * containers);
  fixed.batch.record.by = QStringLiteral("MK");
  fixed.batch.day_one = made_at;
  fixed.batch.declared.stated = true;
  fixed.batch.readiness = book::Readiness::CookedReadyToEat;
  for (const Went& went : inputs) fixed.batch.record.inputs.push_back(input_of(went));
  fixed.batch.parts = std::make_shared<const std::vector<batch::Part>>();
  add_containers(fixed, containers);
  fixed.questions = {question(made_at)};
  fixed.batch.use_bys = {*batch::use_by(fixed.questions.front())};
  return fixed;
}

Event made(batch::Fixed fixed) {
  Event event;
  event.kind = Kind::Made;
  event.at = fixed.batch.record.made_at;
  event.by = QStringLiteral("MK");
  event.lot = fixed.batch.lot;
  event.item = fixed.batch.record.item;
  event.made = std::move(fixed);
  return event;
}

Event of_lot(Kind kind, const QString& lot, const QDateTime& at, std::vector<int> containers) {
  Event event;
  event.kind = kind;
  event.at = at;
  event.by = QStringLiteral("JO");
  event.lot = lot;
  event.containers = std::move(containers);
  if (kind == Kind::Moved) event.place = QStringLiteral("walk-in 1");
  if (kind == Kind::Discarded) event.reason = QStringLiteral("past its date");
  if (kind == Kind::Dispatched) event.site = QStringLiteral("mill-road");
  return event;
}

Event received(const QString& item, const QString& lot, const QDateTime& at, qint64 amount) {
  Event event;
  event.kind = Kind::Received;
  event.at = at;
  event.by = QStringLiteral("JO");
  event.item = item;
  event.lot = lot;
  event.quantity = grams(amount);
  event.count = 1;
  event.container_kind = QStringLiteral("case");
  event.state = QStringLiteral("chilled");
  batch::StatedEnd end;
  end.end = at.addDays(30);
  event.stated = end;
  return event;
}

}  // namespace lardiner::ledger
