// Lots for the tests of what befalls them: a butter in tubs, a cooked dish that is cooled, a supplier's case.
#pragma once

#include "batch/clock.h"
#include "history/lot.h"
#include "show.h"

namespace lardiner::history::lots {

inline const QTimeZone& zone() {
  static const QTimeZone zone("America/New_York");
  return zone;
}

/// "25 07:40" of November 2026, in the kitchen's zone.
inline QDateTime at(const char* text) {
  const QStringList parts = QString::fromLatin1(text).split(u' ');
  return QDateTime(QDate(2026, 11, parts[0].toInt()), QTime::fromString(parts[1], QStringLiteral("HH:mm")), zone());
}

/// The first instant after a day of November 2026.
inline QDateTime end_of(int day) { return batch::end_of(QDate(2026, 11, day), zone()); }

inline measure::Quantity grams(int count) { return measure::quantity({count, 1}, measure::Unit::Gram); }

inline batch::Question question() {
  batch::Question question;
  question.zone = zone();
  question.made_at = at("10 07:40");
  const auto days = [](book::State state, int count) {
    batch::Rule rule;
    rule.state = state;
    rule.length = {book::Length::Unit::Days, count, 1};
    rule.authority = {QStringLiteral("kitchen rule"), QString()};
    return rule;
  };
  question.rules = {days(book::State::Chilled, 7), days(book::State::Thawed, 3), days(book::State::Opened, 4)};
  for (const book::State state : {book::State::HotHeld, book::State::Finished}) {
    batch::Rule hours = days(state, 1);
    hours.length = {book::Length::Unit::Seconds, 4 * 3600, 1};
    question.rules.push_back(hours);
  }
  question.hot_or_cold_start.length = {book::Length::Unit::Seconds, 4 * 3600, 1};
  question.cold_start.length = {book::Length::Unit::Seconds, 6 * 3600, 1};
  question.cold_holding = {{50, measure::Scale::Celsius}, {410, measure::Scale::Fahrenheit}};
  question.hot_holding = {{570, measure::Scale::Celsius}, {1350, measure::Scale::Fahrenheit}};
  return question;
}

/// Made on 10 November 07:40, in tubs of 500 g; good to the end of the 16th.
inline batch::Fixed butter(int tubs) {
  batch::Fixed fixed;
  batch::Record& record = fixed.batch.record;
  record.item = QStringLiteral("chilli-lime-butter");
  record.made_at = at("10 07:40");
  record.quantity = grams(500 * tubs + 100);
  record.containers = {{tubs, QStringLiteral("tub"), grams(500), {}}};
  fixed.batch.lot = QStringLiteral("A26314CLB01X");
  fixed.batch.day_one = record.made_at;
  for (int number = 1; number <= tubs; ++number)
    fixed.batch.containers.push_back({number, tubs, 0, QStringLiteral("A2631401-%1").arg(number), 0, false});
  fixed.questions = {question()};
  fixed.question_of.assign(static_cast<size_t>(tubs), 0);
  fixed.batch.use_bys = {batch::use_by(fixed.questions.front()).value()};
  return fixed;
}

/// The same, cooked and to be cooled from 135 °F to 70 °F in 2 h and to 41 °F in 6 h.
inline batch::Fixed tinga(int tubs) {
  batch::Fixed fixed = butter(tubs);
  const auto limit = [](int fahrenheit, int celsius) {
    return measure::TemperatureLimit{{celsius * 10, measure::Scale::Celsius},
                                     {fahrenheit * 10, measure::Scale::Fahrenheit}};
  };
  batch::CoolingLimits limits;
  limits.stages = {{QStringLiteral("first"), limit(135, 57), limit(70, 21), 2 * 3600, {}},
                   {QStringLiteral("whole"), limit(135, 57), limit(41, 5), 6 * 3600, {}}};
  fixed.cooling = limits;
  batch::judge_at(fixed, at("10 07:50"));
  return fixed;
}

inline Entry entry(Event event, int number = 0) {
  static int next = 1000;
  const QDateTime recorded = event.at.addSecs(60);
  return {EntryId{QStringLiteral("A"), number > 0 ? number : ++next}, recorded, QStringLiteral("America/New_York"),
          std::move(event)};
}

inline Event event(Kind kind, const char* when, std::vector<int> containers = {}) {
  Event event;
  event.kind = kind;
  event.at = at(when);
  event.by = QStringLiteral("MK");
  event.lot = QStringLiteral("A26314CLB01X");
  event.containers = std::move(containers);
  return event;
}

inline Lot begun(const batch::Fixed& fixed) {
  Event made = event(Kind::Made, "10 07:40");
  made.made = fixed;
  return begin(entry(made, 1)).value();
}

inline Event receipt(const char* when = "10 06:30") {
  Event received = event(Kind::Received, when);
  received.lot = QStringLiteral("MB-5521");
  received.item = QStringLiteral("butter-unsalted");
  received.supplier_item = QStringLiteral("meadow-butter-25");
  received.quantity = grams(10'000);
  received.count = 3;
  received.container_kind = QStringLiteral("case");
  received.state = QStringLiteral("chilled");
  received.stated = batch::StatedEnd{end_of(20), true, book::EndKind::UseBy};
  received.place = QStringLiteral("walk-in 1");
  return received;
}

inline Lot received() { return begin(entry(receipt(), 2)).value(); }

/// All that a lot says, for comparing: no two states that differ in anything have the same.
QString whole(const Lot& lot);

/// What `happen` says to it, having shown that nothing was changed when it refuses; "" where it does not.
QString told(Lot& lot, const Event& event);
QString told(Lot& lot, const Entry& entry);

inline Good::State state(const Lot& lot, int number, const char* when) {
  return good(lot, lot.holders.at(static_cast<size_t>(number) - 1), at(when)).state;
}

inline std::optional<QDateTime> end(const Lot& lot, int number) {
  return good(lot, lot.holders.at(static_cast<size_t>(number) - 1), at("10 08:00")).end;
}

}  // namespace lardiner::history::lots
