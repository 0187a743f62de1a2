// Short ways to ask for a use-by in tests: a kitchen in New York under the FDA Food Code's figures.
#pragma once

#include <initializer_list>

#include "batch/clock.h"
#include "batch/use_by.h"
#include "show.h"

namespace lardiner::batch::ask {

inline const QTimeZone kNewYork("America/New_York");

inline measure::TemperatureLimit limit(int fahrenheit, int celsius) {
  return {{celsius * 10, measure::Scale::Celsius}, {fahrenheit * 10, measure::Scale::Fahrenheit}};
}

inline measure::Temperature fahrenheit(int degrees) { return {degrees * 10, measure::Scale::Fahrenheit}; }
inline measure::Temperature celsius(int degrees) { return {degrees * 10, measure::Scale::Celsius}; }

inline book::Length days(int count, int first_day = 1) { return {book::Length::Unit::Days, count, first_day}; }
inline book::Length hours(int count) { return {book::Length::Unit::Seconds, count * 3600, 1}; }
inline book::Length months(int count) { return {book::Length::Unit::Months, count, 1}; }

/// "2026-11-25 10:00" on the wall of the zone.
inline QDateTime at(const QString& text, const QTimeZone& zone = kNewYork) {
  const QDateTime wall = QDateTime::fromString(text, QStringLiteral("yyyy-MM-dd HH:mm"));
  return instant({wall.date(), wall.time().msecsSinceStartOfDay() / 1000, std::nullopt}, zone).value();
}
inline QDateTime at(const char* text, const QTimeZone& zone = kNewYork) { return at(QString::fromLatin1(text), zone); }

inline QDate day(const char* text) { return QDate::fromString(QString::fromLatin1(text), Qt::ISODate); }

inline Rule rule(book::State state, book::Length length, book::EndKind kind = book::EndKind::UseBy) {
  return {{}, state, length, kind, {QStringLiteral("FDA Food Code 2022"), QStringLiteral("3-501.17(A)")}, std::nullopt};
}

/// A cap that ends with a calendar day.
inline Cap cap(const char* item, const char* last_day, const QTimeZone& zone = kNewYork) {
  Cap cap;
  cap.item = QString::fromLatin1(item);
  cap.lot = QStringLiteral("L1");
  cap.why = QStringLiteral("its own use-by");
  cap.end = end_of(day(last_day), zone);
  return cap;
}
inline Cap makers_date(const char* last_day) {
  Cap made = cap("tuna", last_day);
  made.why = QStringLiteral("maker's date");
  made.absolute = true;
  return made;
}
inline Cap best_before(Cap cap, bool shelf_stable) {
  cap.kind = book::EndKind::BestBefore;
  cap.shelf_stable = shelf_stable;
  return cap;
}

inline Event event(Happening what, const char* when) {
  Event happened;
  happened.what = what;
  happened.at = at(when);
  return happened;
}
inline Event event(Happening what, const char* when, measure::Temperature temperature) {
  Event happened = event(what, when);
  happened.temperature = temperature;
  return happened;
}

/// TCS food made at `made`, with the figures of the Food Code and no rule yet.
inline Question question(const QDateTime& made, std::initializer_list<Rule> rules = {}) {
  Question asked;
  asked.zone = kNewYork;
  asked.made_at = made;
  asked.rules = rules;
  asked.cold_holding = limit(41, 5);
  asked.hot_holding = limit(135, 57);
  asked.hot_or_cold_start = {
      hours(4), std::nullopt, {QStringLiteral("FDA Food Code 2022"), QStringLiteral("3-501.19(B)")}};
  asked.cold_start = {hours(6), limit(70, 21), {QStringLiteral("FDA Food Code 2022"), QStringLiteral("3-501.19(C)")}};
  return asked;
}
inline Question question(const char* made, std::initializer_list<Rule> rules = {}) { return question(at(made), rules); }

/// Chilled, ready to eat, seven days.
inline Question seven_days(const char* made) { return question(made, {rule(book::State::Chilled, days(7))}); }

/// The text of the first error; empty when there is a use-by.
inline QString refusal(const Question& asked) {
  const auto answer = use_by(asked);
  return answer ? QString() : problem::text(answer.error().front());
}

/// The last good day of a dated answer.
inline QDate last_day(const Question& asked) {
  const auto answer = use_by(asked);
  INFO(refusal(asked).toStdString());
  REQUIRE(answer);
  REQUIRE(answer->form == UseBy::Form::Date);
  return answer->date;
}

inline QDateTime last_instant(const Question& asked) {
  const auto answer = use_by(asked);
  INFO(refusal(asked).toStdString());
  REQUIRE(answer);
  REQUIRE(answer->form == UseBy::Form::Instant);
  return answer->end;
}

}  // namespace lardiner::batch::ask
