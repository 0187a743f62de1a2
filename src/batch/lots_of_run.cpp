// The lots of one run of records that an input may have been of which nobody wrote the lot.
#include "batch/lots_of_run.h"

#include <QHash>
#include <algorithm>
#include <numeric>
#include <tuple>

#include "batch/lot.h"
#include "batch/read_records_parts.h"

namespace lardiner::batch {

namespace {

// Empty where the record has no lot that could be known.
QString code_of(const Record& record, const book::Book& book) {
  const book::Product* product = book.product(record.item);
  if (record.deed != Deed::Made || !product || product->code.isEmpty() || !record.number) return {};
  return lot(book.kitchen, lot_day(record, book.kitchen.zone), product->code, *record.number);
}

QDateTime first_cook(const Record& record) {
  QDateTime first;
  for (const CookReading& reading : record.cooked)
    if (first.isNull() || reading.at < first) first = reading.at;
  return first;
}

// When the container was discarded; null where it was not.
QDateTime discarded(const Record& record, int container) {
  for (const Event* event : events_of(record, container))
    if (event->what == Happening::Discarded) return event->at;
  return {};
}

// When the last of its containers was discarded; null where one was not.
QDateTime all_discarded(const Record& record) {
  QDateTime last;
  int count = 0;
  for (const ContainerGroup& group : record.containers) count += group.count;
  for (int container = 1; container <= count; ++container) {
    const QDateTime at = discarded(record, container);
    if (at.isNull()) return {};
    if (last.isNull() || at > last) last = at;
  }
  return last;
}

}  // namespace

LotsOfRun::LotsOfRun(const std::vector<Record>& records, const book::Book& book) : book_(book) {
  QHash<QString, size_t> by_code;
  for (const Record& record : records) {
    lots_.push_back(lot_of(record));
    if (!lots_.back().code.isEmpty()) by_code.insert(lots_.back().code, lots_.size() - 1);
  }
  for (size_t at = 0; at < records.size(); ++at)
    for (const QString& code : lots_named(records[at]))
      if (const auto found = by_code.constFind(code); found != by_code.constEnd()) lots_[at].from.insert(*found);
}

LotsOfRun::Lot LotsOfRun::lot_of(const Record& record) const {
  const QDateTime cooked = first_cook(record);
  return {code_of(record, book_),
          record.item,
          record.made_at,
          latest_use(record, book_.kitchen.zone),
          cooked.isNull() ? record.made_at : std::max(cooked, record.made_at),
          all_discarded(record),
          {}};
}

std::vector<size_t> LotsOfRun::latest_first() const {
  std::vector<size_t> order(lots_.size());
  std::iota(order.begin(), order.end(), size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](size_t a, size_t b) {
    return std::tie(lots_[a].began, lots_[a].code) > std::tie(lots_[b].began, lots_[b].code);
  });
  return order;
}

bool LotsOfRun::may_go_into(const Lot& lot, const Lot& into) const {
  return lot.ready <= into.last_use && (lot.gone.isNull() || lot.gone > into.began);
}

bool LotsOfRun::made_of(size_t at, size_t of) const {
  std::set<size_t> seen{at};
  std::vector<size_t> open{at};
  while (!open.empty()) {
    const size_t next = open.back();
    open.pop_back();
    if (next == of) return true;
    for (const size_t source : lots_[next].from)
      if (seen.insert(source).second) open.push_back(source);
  }
  return false;
}

QStringList LotsOfRun::may_have_been(size_t at, const QString& item) {
  QStringList codes;
  for (size_t i = 0; i < lots_.size(); ++i) {
    const Lot& lot = lots_[i];
    if (lot.code.isEmpty() || lot.item != item || !may_go_into(lot, lots_[at]) || made_of(i, at)) continue;
    lots_[at].from.insert(i);
    codes += lot.code;
  }
  codes.sort();
  return codes;
}

}  // namespace lardiner::batch
