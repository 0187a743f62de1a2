// Histories by chance: receipts, batches of batches, and all that can befall their containers.
#include "random_history.h"

namespace lardiner::ledger {

using history::Event;
using history::Kind;

Event RandomHistory::next() {
  ++entries_;
  now_ = now_.addSecs(60 * (1 + below(240)));
  const int kind = below(20);
  if (bought_.isEmpty() || kind == 0) {
    bought_ << QStringLiteral("S-%1").arg(bought_.size() + 1);
    Event event = received(QStringLiteral("tomatillo"), bought_.last(), now_, 20'000);
    event.supplier_item = supplier_item();
    if (below(2) == 0) event.checked = now_.date().addDays(below(20) - 15);
    return event;
  }
  if (lots_.isEmpty() || kind < 6) return batch();
  return kind == 19 ? about_many() : befalls();
}

QString RandomHistory::supplier_item() {
  return below(2) == 0 ? QStringLiteral("hill-tomatillo") : QStringLiteral("vale-tomatillo");
}

Event RandomHistory::batch() {
  std::vector<Went> went;
  if (below(4) == 0) went.push_back({QStringLiteral("tomatillo"), {}, 300, below(2) == 0 ? bought_ : QStringList()});
  if (below(2) == 0)
    went.push_back({QStringLiteral("tomatillo"), bought_.at(below(static_cast<int>(bought_.size()))), 400});
  for (int more = below(3); more > 0 && !lots_.isEmpty(); --more) {
    // Of the latest, so that chains of some depth come about.
    const int back = below(std::min(6, static_cast<int>(lots_.size())));
    const QString lot = lots_.at(lots_.size() - 1 - back);
    went.push_back({QStringLiteral("salsa"), lot, 250});
  }
  lots_ << QStringLiteral("L%1").arg(lots_.size() + 1, 4, 10, QLatin1Char('0'));
  return made(lots_.last(), QStringLiteral("salsa"), now_, 1 + below(5), went);
}

Event RandomHistory::befalls() {
  static constexpr Kind kKinds[] = {Kind::Moved,  Kind::Frozen,     Kind::Thawed,    Kind::Opened,   Kind::HotHeld,
                                    Kind::Used,   Kind::Counted,    Kind::Discarded, Kind::Hold,     Kind::Split,
                                    Kind::Moved,  Kind::Dispatched, Kind::Arrived,   Kind::Returned, Kind::Correction,
                                    Kind::Frozen, Kind::Thawed};
  const Kind kind = kKinds[below(static_cast<int>(std::size(kKinds)))];
  const QString lot = lots_.at(lots_.size() - 1 - below(std::min(12, static_cast<int>(lots_.size()))));
  std::vector<int> containers;
  if (below(3) > 0) containers = {1 + below(5)};
  Event event = of_lot(kind, lot, now_, containers);
  event.reason = QStringLiteral("by chance");
  if (kind == Kind::Used) event.quantity = grams(100 + below(500));
  if (kind == Kind::Counted) event.left_percent = 25 * below(5);
  if (kind == Kind::Counted || kind == Kind::Split) event.containers = {1 + below(5)};
  if (kind == Kind::Split) {
    event.count = 2;
    event.container_kind = QStringLiteral("tub");
  }
  if (kind == Kind::Correction) {
    event.containers.clear();
    batch::StatedEnd end;
    end.end = now_.addDays(1 + below(5));
    event.ends = end;
  }
  if (kind == Kind::Arrived || kind == Kind::Returned) event.site = QStringLiteral("mill-road");
  return event;
}

Event RandomHistory::about_many() {
  Event event;
  event.at = now_;
  event.by = QStringLiteral("MK");
  event.reason = QStringLiteral("by chance");
  switch (below(4)) {
    case 0:
      event.kind = Kind::RecallOpened;
      event.item = QStringLiteral("tomatillo");
      event.lot = bought_.at(below(static_cast<int>(bought_.size())));
      return event;
    case 1:
      event.kind = Kind::Release;
      event.of = {QStringLiteral("A"), 1 + below(entries_)};
      return event;
    case 2:
      event.kind = Kind::RecallClosed;
      event.of = {QStringLiteral("A"), 1 + below(entries_)};
      return event;
    default:
      event.kind = Kind::Correction;
      event.item = QStringLiteral("tomatillo");
      event.supplier_item = supplier_item();
      if (below(2) == 0) event.lot = bought_.at(below(static_cast<int>(bought_.size())));
      event.adds = QStringList{QStringLiteral("sesame")};
      return event;
  }
}

}  // namespace lardiner::ledger
