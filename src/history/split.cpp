// One container divided into further ones: the same lot, numbers and serials of their own, the same date.
#include <algorithm>

#include "history/holders.h"

namespace lardiner::history {

using measure::Quantity;
using problem::Code;

namespace {

constexpr int kMostContainers = 9999;

// The parts, and what stays in the one that was divided.
struct Division {
  std::vector<Quantity> parts;
  Quantity rest;
};

Division divide(const Holder& parent, const Event& event) {
  const Quantity none{parent.left.dimension, 0};
  if (!event.quantity) return {shared(parent.left, event.count), none};
  const Quantity all = measure::scaled(*event.quantity, {event.count, 1});
  return {std::vector<Quantity>(static_cast<size_t>(event.count), *event.quantity),
          parent.holds.amount == 0 ? none : parent.left - all};
}

QString serial_of(const Holder& parent, int number) {
  const qsizetype hyphen = parent.serial.lastIndexOf(u'-');
  return hyphen < 0 ? QString() : parent.serial.left(hyphen + 1) + QString::number(number);
}

// The part has the question of the one it came out of, so that it never gets a later date.
void add_to_facts(batch::Fixed& fixed, const Holder& part, const Holder& parent, int group, int of) {
  const size_t from = static_cast<size_t>(parent.number) - 1;
  batch::Container container = fixed.batch.containers[from];
  container.number = part.number;
  container.of = of;
  container.group = group;
  container.serial = part.serial;
  fixed.batch.containers.push_back(container);
  if (from < fixed.question_of.size()) fixed.question_of.push_back(fixed.question_of[from]);
}

}  // namespace

std::vector<Quantity> shared(Quantity total, int count) {
  const std::int64_t each = total.amount / count;
  const std::int64_t more = total.amount % count;
  std::vector<Quantity> parts;
  for (int i = 0; i < count; ++i) parts.push_back({total.dimension, each + (i < more ? 1 : 0)});
  return parts;
}

problem::Errors check_split(const Lot& lot, const Event& event, const std::vector<Holder*>& holders) {
  if (holders.size() != 1)
    return {refusal(Code::Conflict, event, QStringLiteral("%1 containers are divided at once").arg(holders.size()),
                    QStringLiteral("name one container, and write an event for each"))};
  if (event.count < 1 ||
      static_cast<size_t>(event.count) > kMostContainers - std::min<size_t>(kMostContainers, lot.holders.size()))
    return {refusal(Code::Range, event, QStringLiteral("it cannot be divided into %1 containers").arg(event.count),
                    QStringLiteral("a lot has from 1 to %1 containers").arg(kMostContainers))};
  const Holder& parent = *holders.front();
  if (!event.quantity || parent.holds.amount == 0) return {};
  const Quantity all = measure::scaled(*event.quantity, {event.count, 1});
  if (all.dimension != parent.left.dimension || !measure::less(parent.left, all)) return {};
  return {refusal(Code::Conflict, event,
                  QStringLiteral("the parts hold more than what is left in container %1 of lot %2")
                      .arg(parent.number)
                      .arg(lot.code),
                  QStringLiteral("correct the quantity or the count, or count the container first"))};
}

void split(Lot& lot, const Event& event, const Holder& divided) {
  const Holder parent = divided;  // the list grows
  const Division division = divide(parent, event);
  const int of = static_cast<int>(lot.holders.size()) + event.count;
  if (lot.made)
    lot.made->batch.record.containers.push_back({event.count, event.container_kind, division.parts.front(), {}});
  for (const Quantity& amount : division.parts) {
    Holder part = parent;
    part.number = static_cast<int>(lot.holders.size()) + 1;
    part.serial = serial_of(parent, part.number);
    part.kind = event.container_kind;
    part.holds = part.left = amount;
    part.label = {};
    part.label_end.clear();
    part.superseded = part.held_alone = part.hold_label = false;
    if (lot.made)
      add_to_facts(*lot.made, part, parent, static_cast<int>(lot.made->batch.record.containers.size()) - 1, of);
    lot.holders.push_back(part);
  }
  Holder& source = lot.holders[static_cast<size_t>(parent.number) - 1];
  source.left = division.rest;
  if (source.left.amount == 0) source.where = Where::Used;
}

}  // namespace lardiner::history
