// What an entry says that cannot be, beside what is recorded already.
#include "ledger/contradictions.h"

#include <QTimeZone>
#include <algorithm>

#include "batch/phrases.h"
#include "ledger/entries.h"

namespace lardiner::ledger {

using history::Event;
using history::Holder;
using history::Kind;
using history::Lot;
using history::Where;
using problem::Code;
using problem::Error;

namespace {

class Comparing {
 public:
  Comparing(const Work& work, const Event& event) : work_(work), event_(event) {}

  problem::Errors compare(const std::vector<qint64>& lots) {
    for (const qint64 id : lots) {
      const Lot* lot = work_.lots.lot(id);
      if (!lot) continue;
      switch (event_.kind) {
        case Kind::Arrived:
        case Kind::Returned:
          compare_way(*lot);
          break;
        case Kind::Received:
          compare_deliveries(id);
          break;
        default:
          break;
      }
    }
    if (event_.kind == Kind::Dispatched) compare_note();
    if (event_.kind == Kind::Release || event_.kind == Kind::RecallClosed) compare_beginning();
    return std::move(errors_);
  }

 private:
  void refuse(Code code, const QString& what, const QString& hint) {
    errors_.push_back({code, what, event_.source, hint});
  }

  QString time(const QDateTime& at, const QTimeZone& zone) const { return batch::instant_text(at, zone); }

  bool is_meant(const Holder& holder) const {
    if (holder.where != Where::Dispatched && holder.where != Where::AtSite) return false;
    if (event_.containers.empty()) return event_.note.isEmpty() || holder.note == event_.note;
    return std::find(event_.containers.begin(), event_.containers.end(), holder.number) != event_.containers.end();
  }

  // Of one container: the others that left with it differ alike.
  void compare_way(const Lot& lot) {
    for (const Holder& holder : lot.holders) {
      if (!is_meant(holder)) continue;
      const QString container = QStringLiteral("container %1 of lot %2").arg(holder.number).arg(lot.code);
      if (!event_.site.isEmpty() && event_.site != holder.site)
        return refuse(Code::Conflict, QStringLiteral("%1 left for %2").arg(container, holder.site),
                      QStringLiteral("correct the site; what went on from one site to another comes back first"));
      if (!event_.note.isEmpty() && !holder.note.isEmpty() && event_.note != holder.note)
        return refuse(Code::Conflict, QStringLiteral("%1 left with the note %2").arg(container, holder.note),
                      QStringLiteral("correct the note"));
      if (holder.where == Where::AtSite && holder.arrived.isValid() && event_.at < holder.arrived)
        return refuse(
            Code::Range,
            QStringLiteral("%1 arrived at %2, and was %3 at %4")
                .arg(container, time(holder.arrived, lot.zone), history::word(event_.kind), time(event_.at, lot.zone)),
            QStringLiteral("correct the time of one of the two"));
      if (holder.dispatched.isValid() && event_.at < holder.dispatched)
        return refuse(Code::Range,
                      QStringLiteral("%1 left at %2, and was %3 at %4")
                          .arg(container, time(holder.dispatched, lot.zone), history::word(event_.kind),
                               time(event_.at, lot.zone)),
                      QStringLiteral("correct the time of one of the two"));
    }
  }

  void compare_note() {
    if (event_.note.isEmpty()) return;
    Statement& row =
        work_.store.statement("SELECT site FROM holder WHERE note = ? AND note <> '' AND site <> ? LIMIT 1");
    const bool other = row.with(event_.note).with(event_.site).one();
    const QString site = other ? row.text(0) : QString();
    row.end();
    if (other)
      refuse(Code::Conflict, QStringLiteral("note %1 is of what left for %2").arg(event_.note, site),
             QStringLiteral("give each site a note of its own"));
  }

  void compare_deliveries(qint64 id) {
    const auto entries = entries_of_lot(work_.store, id);
    if (!entries) return errors_.push_back(entries.error());
    for (const Recorded& recorded : *entries) {
      const Event& other = recorded.entry.event;
      if (other.kind != Kind::Received || other.at != event_.at || other.quantity != event_.quantity ||
          other.count != event_.count || other.note != event_.note)
        continue;
      return refuse(Code::Duplicate,
                    QStringLiteral("this delivery of lot %1 is recorded already, as entry %2")
                        .arg(event_.lot, recorded.entry.id.text()),
                    QStringLiteral("leave it out; of two alike at one time write the number of each delivery's note"));
    }
  }

  void compare_beginning() {
    const auto begun = entry_named(work_.store, event_.of);
    if (!begun) return errors_.push_back(begun.error());
    if (!*begun || event_.at >= (*begun)->entry.event.at) return;
    const QTimeZone zone((*begun)->entry.zone.toLatin1());
    refuse(Code::Range,
           QStringLiteral("entry %1 began at %2, and cannot end at %3")
               .arg(event_.of.text(), time((*begun)->entry.event.at, zone), time(event_.at, zone)),
           QStringLiteral("correct the time, or the entry that it is of"));
  }

  Work work_;
  const Event& event_;
  problem::Errors errors_;
};

}  // namespace

problem::Errors contradictions(const Work& work, const Event& event, const std::vector<qint64>& lots) {
  return Comparing(work, event).compare(lots);
}

}  // namespace lardiner::ledger
