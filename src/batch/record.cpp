// A batch record as a kitchen wrote it, with its words resolved to the book's ids and its times to instants.
#include "batch/record.h"

#include <algorithm>

#include "batch/clock.h"

namespace lardiner::batch {

QDate lot_day(const Record& record, const QTimeZone& zone) {
  return record.pad_day ? *record.pad_day : local_day(record.made_at, zone);
}

QStringList lots_named(const Record& record) {
  QStringList lots;
  for (const Input& input : record.inputs) {
    if (!input.lot.isEmpty()) lots += input.lot;
    lots += input.candidates;
  }
  return lots;
}

bool lists(const Record& record, const QString& item) {
  return std::any_of(record.inputs.begin(), record.inputs.end(),
                     [&](const Input& input) { return input.item == item || input.instead_of == item; });
}

std::vector<const Event*> events_of(const Record& record, int container) {
  std::vector<const Event*> events;
  for (const Event& event : record.events) {
    const auto& of = event.containers;
    if (of.empty() || std::find(of.begin(), of.end(), container) != of.end()) events.push_back(&event);
  }
  std::stable_sort(events.begin(), events.end(), [](const Event* a, const Event* b) { return a->at < b->at; });
  return events;
}

}  // namespace lardiner::batch
