// What runs out: cooling and time-control deadlines, what is past, what ends today, what to use first.
#include "ledger/due.h"

#include <QTimeZone>
#include <algorithm>

#include "batch/clock.h"

namespace lardiner::ledger {

namespace {

// A correction concerns a lot too, and holds nothing.
constexpr qint64 kRecalled = static_cast<qint64>(history::Kind::RecallOpened);

QDateTime instant(qint64 seconds, const QTimeZone& zone) { return QDateTime::fromSecsSinceEpoch(seconds, zone); }

class Looking {
 public:
  Looking(Store& store, const QDateTime& now, const QTimeZone& zone, int days)
      : store_(store), now_(now), zone_(zone), today_(batch::local_day(now, zone)), days_(days) {}

  std::vector<Due> look() {
    add_cooling();
    add_ends();
    add_relabel();
    std::stable_sort(found_.begin(), found_.end(), [](const Due& a, const Due& b) {
      return std::tuple(a.what, a.ends, a.lot.code, a.place) < std::tuple(b.what, b.ends, b.lot.code, b.place);
    });
    return std::move(found_);
  }

 private:
  void add_cooling() {
    Statement& rows = store_.statement(
        "SELECT id, code, item, name, kind, began, cooling_due FROM lot WHERE cooling_due IS NOT NULL AND EXISTS"
        " (SELECT 1 FROM holder WHERE lot = id AND whereabouts = 0) ORDER BY cooling_due, id");
    while (rows.next()) {
      Due due;
      due.what = Due::What::Cooling;
      due.lot = lot_name(rows);
      due.ends = instant(rows.number(6), zone_);
      due.held = true;
      found_.push_back(std::move(due));
    }
  }

  Due::What what(const QDateTime& ends, bool running) const {
    if (running && ends > now_) return Due::What::Running;
    if (ends <= now_) return Due::What::Past;
    return ends <= batch::end_of(today_, zone_) ? Due::What::Today : Due::What::UseFirst;
  }

  // Containers of one lot and place that end together are one line.
  void add(const Statement& row, Due::What what, const QDateTime& ends) {
    const int number = static_cast<int>(row.number(6));
    if (!found_.empty()) {
      Due& last = found_.back();
      if (last.what == what && last.lot.id == row.number(0) && last.ends == ends && last.place == row.text(8) &&
          last.kind == row.text(7))
        return last.containers.push_back(number);
    }
    Due due;
    due.what = what;
    due.lot = lot_name(row);
    due.ends = ends;
    due.containers = {number};
    due.kind = row.text(7);
    due.place = row.text(8);
    due.frozen = row.number(10) != 0;
    due.held = row.number(11) != 0;
    found_.push_back(std::move(due));
  }

  void add_ends() {
    Statement& rows = store_.statement(
        "SELECT lot.id, code, item, name, lot.kind, began, number, holder.kind, place, ends, frozen,"
        " held OR refused OR EXISTS (SELECT 1 FROM concern WHERE concern.lot = lot.id AND concern.kind = ?), running"
        " FROM holder JOIN lot ON lot.id = holder.lot WHERE whereabouts = 0 AND ends IS NOT NULL AND ends <= ?"
        " ORDER BY ends, holder.lot, place, number");
    rows.with(kRecalled).with(batch::end_of(today_.addDays(days_), zone_).toSecsSinceEpoch());
    while (rows.next()) {
      const QDateTime ends = instant(rows.number(9), zone_);
      add(rows, what(ends, rows.number(12) != 0), ends);
    }
  }

  void add_relabel() {
    Statement& rows = store_.statement(
        "SELECT lot.id, code, item, name, lot.kind, began, number, holder.kind, place, ends, frozen,"
        " held OR refused OR EXISTS (SELECT 1 FROM concern WHERE concern.lot = lot.id AND concern.kind = ?)"
        " FROM holder INDEXED BY holder_superseded JOIN lot ON lot.id = holder.lot"
        " WHERE whereabouts = 0 AND superseded = 1 AND lot.kind = 1 ORDER BY holder.lot, place, number");
    rows.with(kRecalled);
    while (rows.next()) add(rows, Due::What::Relabel, rows.absent(9) ? QDateTime() : instant(rows.number(9), zone_));
  }

  Store& store_;
  QDateTime now_;
  QTimeZone zone_;
  QDate today_;
  int days_;
  std::vector<Due> found_;
};

}  // namespace

problem::Expected<std::vector<Due>> due(Store& store, const QDateTime& now, const QTimeZone& zone, int days) {
  store.forget_fault();
  std::vector<Due> found = Looking(store, now, zone, days).look();
  if (store.fault()) return tl::unexpected(*store.fault());
  return found;
}

}  // namespace lardiner::ledger
