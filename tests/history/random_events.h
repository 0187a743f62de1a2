// Events of every kind, made from a seed, for properties.
#pragma once

#include <random>

#include "history/event.h"
#include "show.h"

namespace lardiner::history::random {

class Events {
 public:
  explicit Events(unsigned seed) : numbers_(seed) {}

  int number(int least, int most) { return std::uniform_int_distribution<int>(least, most)(numbers_); }
  bool chance(int percent) { return number(1, 100) <= percent; }

  /// Whole seconds of 2026, in UTC.
  QDateTime instant() {
    return QDateTime(QDate(2026, 1, 1), QTime(0, 0), Qt::UTC).addSecs(number(0, 365 * 24 * 3600 - 1));
  }

  QString text() {
    static const QStringList all{QStringLiteral("MK"),
                                 QStringLiteral("walk-in 1"),
                                 QStringLiteral("\"quoted\" \\ back"),
                                 QStringLiteral("açaí 豆腐 \u0001"),
                                 QStringLiteral("\"facts\":{"),
                                 QStringLiteral("}")};
    return all[number(0, static_cast<int>(all.size()) - 1)];
  }

  measure::Quantity quantity() {
    return {static_cast<measure::Dimension>(number(0, 2)),
            std::uniform_int_distribution<std::int64_t>(0, measure::kMostNanograms)(numbers_)};
  }

  measure::Temperature temperature() {
    const bool celsius = chance(50);
    return {celsius ? number(-600, 4000) : number(-760, 7520),
            celsius ? measure::Scale::Celsius : measure::Scale::Fahrenheit};
  }

  measure::TemperatureLimit limit() {
    return {{number(-600, 4000), measure::Scale::Celsius}, {number(-760, 7520), measure::Scale::Fahrenheit}};
  }

  batch::StatedEnd stated() {
    return {instant(), chance(50), chance(50) ? book::EndKind::UseBy : book::EndKind::BestBefore};
  }

  /// Each field filled or not, whatever the kind needs. Made has no facts here.
  Event event(Kind kind) {
    Event event;
    event.kind = kind;
    event.at = instant();
    for (QString Event::*field :
         {&Event::by, &Event::lot, &Event::item, &Event::supplier_item, &Event::container_kind, &Event::state,
          &Event::place, &Event::from, &Event::site, &Event::order, &Event::note, &Event::printer, &Event::medium,
          &Event::reason, &Event::action, &Event::what, &Event::label_end, &Event::book_hash})
      if (chance(50)) event.*field = text();
    for (int i = number(-3, 5); i > 0; --i) event.containers.push_back(number(1, 9999));
    if (chance(50)) event.quantity = quantity();
    if (chance(50)) event.left_percent = number(0, 100);
    event.count = number(0, 3);
    if (chance(50)) event.temperature = temperature();
    event.seconds = number(0, 2) * 15;
    if (chance(50)) event.stated = stated();
    if (chance(50)) event.ends = stated();
    event.tcs = chance(50);
    event.accepted = chance(50);
    event.in_order = chance(50);
    if (chance(50)) event.limits.at_least = limit();
    if (chance(50)) event.limits.at_most = limit();
    if (chance(50)) event.of = EntryId{QStringLiteral("A"), number(1, 1'000'000)};
    if (chance(50)) event.day = instant().date();
    if (chance(50)) event.checked = instant().date();
    for (int i = number(-2, 3); i > 0; --i) event.adds += text();
    return event;
  }

 private:
  std::mt19937 numbers_;
};

inline const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all = [] {
    std::vector<Kind> kinds;
    for (int i = 0; i <= static_cast<int>(Kind::MediumLoaded); ++i) kinds.push_back(static_cast<Kind>(i));
    return kinds;
  }();
  return all;
}

}  // namespace lardiner::history::random
