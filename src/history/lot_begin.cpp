// A lot as its first entry leaves it: a batch with its containers, or a supplier's lot with its packages.
#include <algorithm>

#include "history/deliveries.h"
#include "history/holders.h"

namespace lardiner::history {

using batch::Happening;
using measure::Quantity;
using problem::Code;

namespace {

bool leaves_freezer(Happening what) {
  return what == Happening::Thawed || what == Happening::HotHeld || what == Happening::TimeControl ||
         what == Happening::Finished || what == Happening::Reheated;
}

// What its record says of a container before any other entry.
void take_events(const batch::Record& record, Holder& holder) {
  holder.opened = record.deed != batch::Deed::Made && record.deed != batch::Deed::Thawed;
  for (const batch::Event* event : batch::events_of(record, holder.number)) {
    holder.seen = std::max(holder.seen, event->at);
    if (event->what == Happening::Frozen) holder.frozen = true;
    if (event->what == Happening::Opened) holder.opened = true;
    if (event->what == Happening::Discarded) holder.where = Where::Discarded;
    if (!leaves_freezer(event->what)) continue;
    holder.thawed = holder.thawed || holder.frozen;
    holder.frozen = false;
  }
}

Holder holder_of(const batch::Fixed& fixed, const batch::Container& container, const Event& event) {
  const batch::Record& record = fixed.batch.record;
  Holder holder;
  holder.number = container.number;
  holder.serial = container.serial;
  holder.place = event.place;
  holder.seen = record.made_at;
  if (container.group >= 0 && static_cast<size_t>(container.group) < record.containers.size()) {
    const batch::ContainerGroup& group = record.containers[static_cast<size_t>(container.group)];
    holder.kind = group.kind;
    holder.holds = holder.left = group.holds;
  }
  take_events(record, holder);
  if (container.discarded) holder.where = Where::Discarded;
  return holder;
}

// What was made in the dimension of the containers; where it was written in another, what they hold.
Quantity made_quantity(const batch::Record& record, const std::vector<Holder>& holders) {
  Quantity all{holders.empty() ? measure::Dimension::Mass : holders.front().holds.dimension, 0};
  if (record.quantity && (holders.empty() || record.quantity->dimension == all.dimension)) return *record.quantity;
  for (const Holder& holder : holders)
    if (holder.holds.dimension == all.dimension) all = all + holder.holds;
  return all;
}

void begin_made(const Event& event, Lot& lot) {
  lot.made = event.made;
  const batch::Batch& batch = lot.made->batch;
  lot.code = batch.lot;
  lot.item = batch.record.item;
  lot.supplier_item = batch.record.supplier_item;
  lot.began = batch.record.made_at;
  for (const batch::Container& container : batch.containers)
    lot.holders.push_back(holder_of(*lot.made, container, event));
  lot.quantity = made_quantity(batch.record, lot.holders);
}

void begin_received(const Event& event, Lot& lot) {
  lot.received = event;
  lot.code = event.lot;
  lot.item = event.item;
  lot.supplier_item = event.supplier_item;
  lot.began = event.at;
  if (event.quantity) lot.quantity.dimension = event.quantity->dimension;
  add_packages(lot, event);
}

problem::Error not_first(const Entry& entry) {
  return {Code::Conflict,
          QStringLiteral("entry %1 is \"%2\", and begins no lot").arg(entry.id.text(), word(entry.event.kind)),
          entry.event.source, QStringLiteral("record the making or the receipt first")};
}

}  // namespace

void add_packages(Lot& lot, const Event& event) {
  if (!event.accepted) return;
  const Quantity all = event.quantity.value_or(Quantity{lot.quantity.dimension, 0});
  lot.quantity = lot.quantity + all;
  for (const Quantity& amount : shared(all, std::max(event.count, 1))) {
    Holder package;
    package.number = static_cast<int>(lot.holders.size()) + 1;
    package.kind = event.container_kind;
    package.holds = package.left = amount;
    package.place = event.place;
    package.frozen = event.state == QLatin1String("frozen");
    package.seen = event.at;
    lot.holders.push_back(package);
  }
}

problem::Expected<Lot> begin(const Entry& entry) {
  const Event& event = entry.event;
  const bool made = event.kind == Kind::Made && event.made;
  if (!made && event.kind != Kind::Received) return tl::unexpected(not_first(entry));
  Lot lot;
  lot.entry = entry.id;
  lot.zone = QTimeZone(entry.zone.toLatin1());
  if (!lot.zone.isValid())
    return tl::unexpected(problem::Error{
        Code::Unknown, QStringLiteral("entry %1: there is no time zone %2").arg(entry.id.text(), entry.zone),
        event.source, QStringLiteral("write it as America/New_York")});
  if (made)
    begin_made(event, lot);
  else
    begin_received(event, lot);
  lot.used.dimension = lot.quantity.dimension;
  return lot;
}

}  // namespace lardiner::history
