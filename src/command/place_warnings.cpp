// What a temperature of a place that is out of its limits asks for, told as it is recorded.
#include "command/place_warnings.h"

#include <algorithm>

#include "batch/clock.h"
#include "batch/phrases.h"
#include "command/lot_called.h"
#include "command/stood_there.h"
#include "ledger/on_hand.h"

namespace lardiner::command {

namespace {

using history::Entry;
using history::Event;
using history::Kind;

bool out_of_limits(const Event& event) {
  return event.kind == Kind::PlaceTemperature && event.temperature && event.limits.known() &&
         !event.limits.met_by(*event.temperature);
}

bool held_since(const Event& reading, const std::vector<Entry>& entries) {
  return std::any_of(entries.begin(), entries.end(), [&](const Entry& entry) {
    const Event& event = entry.event;
    return event.kind == Kind::Hold && event.place == reading.place && event.at >= reading.at;
  });
}

// Lots of which something stands in the place; of those that are on hold already no more is said.
struct Standing {
  QStringList free;
  qsizetype held = 0;
};

Standing standing_in(LedgerRun& run, const QString& place) {
  Standing standing;
  for (const qint64 id : ledger::lots_in(run.ledger.store(), place)) {
    const history::Lot* lot = run.ledger.lots().lot(id);
    const auto name = run.ledger.lots().named(id);
    if (lot && !lot->holds.empty())
      ++standing.held;
    else if (name)
      standing.free << (name->code.isEmpty() ? QStringLiteral("a lot of ") + name->item : name->code);
  }
  return standing;
}

QString counted_lots(qsizetype count) {
  return count == 1 ? QStringLiteral("1 lot stands") : QStringLiteral("%1 lots stand").arg(count);
}

QString remedy(const Standing& standing, const QString& place, const QString& to_hold) {
  if (standing.free.isEmpty())
    return standing.held > 0 ? QStringLiteral("all that stands in it is on hold already")
                             : QStringLiteral("nothing that is recorded stands in it");
  const QString free = QStringLiteral("%1 in it that %2 not on hold: %3")
                           .arg(counted_lots(standing.free.size()),
                                standing.free.size() == 1 ? QStringLiteral("is") : QStringLiteral("are"),
                                first_of(standing.free, QStringLiteral(", ")));
  return to_hold.isEmpty() ? free : free + to_hold.arg(place);
}

// A hold of a place, or a temperature that is out of its limits, that is recorded late.
void add_left(LedgerRun& run, const Event& event, problem::Errors& warnings) {
  QStringList left;
  for (const ledger::LotName& lot : left_since(run, event.place, event.at)) left << called(run.book, lot);
  if (!left.isEmpty())
    warnings.push_back(
        {problem::Code::Unsafe,
         QStringLiteral("warning: stood in %1 on %2 and has left it since: %3")
             .arg(event.place, batch::instant_text(event.at, run.zone()), first_of(left, QStringLiteral("; "))),
         event.source,
         QStringLiteral("a hold of the place does not reach it: hold the lot (event=hold lot=…), and call "
                        "the site that has some")});
}

}  // namespace

problem::Errors place_warnings(LedgerRun& run, const std::vector<Entry>& entries, const QString& to_hold) {
  problem::Errors warnings;
  for (const Entry& entry : entries) {
    const Event& event = entry.event;
    const bool holds_place = event.kind == Kind::Hold && !event.place.isEmpty();
    if (out_of_limits(event) || holds_place) add_left(run, event, warnings);
    if (!out_of_limits(event) || held_since(event, entries)) continue;
    warnings.push_back({problem::Code::Unsafe,
                        QStringLiteral("warning: %1 was at %2 on %3, and is held to %4")
                            .arg(event.place, batch::reading_text(*event.temperature),
                                 batch::instant_text(event.at, run.zone()), text(event.limits)),
                        event.source, remedy(standing_in(run, event.place), event.place, to_hold)});
  }
  return warnings;
}

}  // namespace lardiner::command
