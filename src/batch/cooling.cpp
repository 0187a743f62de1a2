// Cooling is a critical limit: its readings against the rule set's stages.
#include "batch/cooling.h"

#include <algorithm>
#include <optional>

#include "batch/phrases.h"
#include "book/limit_text.h"

namespace lardiner::batch {

namespace {

using Readings = std::vector<CoolReading>;
using Stages = std::vector<book::CoolingStage>;

Readings in_order(Readings readings) {
  std::stable_sort(readings.begin(), readings.end(),
                   [](const CoolReading& a, const CoolReading& b) { return a.at < b.at; });
  return readings;
}

Readings after(const Readings& readings, const QDateTime& from) {
  Readings later;
  std::copy_if(readings.begin(), readings.end(), std::back_inserter(later),
               [&](const CoolReading& reading) { return reading.at > from; });
  return later;
}

// The last of the first readings at or above `from`; nothing when the first is below.
std::optional<QDateTime> last_above(const Readings& readings, const measure::TemperatureLimit& from) {
  std::optional<QDateTime> last;
  for (const CoolReading& reading : readings) {
    if (!measure::at_least(reading.core, from)) break;
    last = reading.at;
  }
  return last;
}

// The last cook reading that was hot enough for cooling to begin with it: any that meets a minimum is.
std::optional<QDateTime> cooked_until(const Record& record, const measure::TemperatureLimit& from) {
  std::optional<QDateTime> end;
  for (const CookReading& reading : record.cooked)
    if (measure::at_least(reading.core, from) && (!end || reading.at > *end)) end = reading.at;
  return end;
}

QDateTime end_of_cook(const Record& record, const measure::TemperatureLimit& from) {
  return cooked_until(record, from).value_or(record.made_to.value_or(record.made_at));
}

// The log of a cooked food begins when its cook is over.
Readings since_cook(const Record& record, const measure::TemperatureLimit& from) {
  Readings readings = in_order(record.cooled);
  if (const std::optional<QDateTime> cooked = cooked_until(record, from))
    std::erase_if(readings, [&](const CoolReading& reading) { return reading.at < *cooked; });
  return readings;
}

QString hours(int seconds) { return book::text(book::Length{book::Length::Unit::Seconds, seconds, 1}); }

// A reading that shows the miss, for the reason: the first after the time was over, else the last before it.
const CoolReading* telling(const Readings& readings, const QDateTime& deadline) {
  if (readings.empty()) return nullptr;
  const auto late =
      std::find_if(readings.begin(), readings.end(), [&](const CoolReading& r) { return r.at > deadline; });
  return late == readings.end() ? &readings.back() : &*late;
}

Cooling missed(const book::CoolingStage& stage, const Readings& readings, const QDateTime& deadline,
               const QTimeZone& zone) {
  QString why = QStringLiteral("%1 was not reached within %2, by %3")
                    .arg(book::text(stage.to), hours(stage.within_seconds), instant_text(deadline, zone));
  const CoolReading* reading = telling(readings, deadline);
  why += reading ? QStringLiteral(": at %1 it read %2").arg(time_text(reading->at, zone), reading_text(reading->core))
                 : QStringLiteral(": no reading");
  return {Cooling::State::Missed, why};
}

// The first reading that is warmer than `stage` ends with although that had been reached: of the last stage at any
// time, of those before it once their time was over.
const CoolReading* warm_again(const book::CoolingStage& stage, const Readings& readings, const QDateTime& start,
                              bool last) {
  const QDateTime deadline = start.addSecs(stage.within_seconds);
  bool reached = false;
  for (const CoolReading& reading : readings) {
    if (reading.at < start) continue;
    const bool cold = measure::at_most(reading.core, stage.to);
    if (reached && !cold && (last || reading.at > deadline)) return &reading;
    reached = reached || cold;
  }
  return nullptr;
}

Cooling warmed(const book::CoolingStage& stage, const CoolReading& reading, const QTimeZone& zone) {
  return {Cooling::State::Missed,
          QStringLiteral("it had reached %1 and was warmer again: at %2 it read %3")
              .arg(book::text(stage.to), time_text(reading.at, zone), reading_text(reading.core))};
}

// REQUIRES: readings in order.
Cooling judge(const Stages& stages, const Readings& readings, const QDateTime& start, const QDateTime& now) {
  const QTimeZone zone = start.timeZone();
  for (const book::CoolingStage& stage : stages) {
    const QDateTime deadline = start.addSecs(stage.within_seconds);
    const bool reached = std::any_of(readings.begin(), readings.end(), [&](const CoolReading& reading) {
      return reading.at >= start && reading.at <= deadline && measure::at_most(reading.core, stage.to);
    });
    if (const CoolReading* warm = warm_again(stage, readings, start, &stage == &stages.back()); reached && warm)
      return warmed(stage, *warm, zone);
    if (reached) continue;
    const bool over = now > deadline || (!readings.empty() && readings.back().at > deadline);
    if (over) return missed(stage, readings, deadline, zone);
    return {Cooling::State::Pending,
            QStringLiteral("%1 is to be reached by %2").arg(book::text(stage.to), instant_text(deadline, zone)),
            deadline};
  }
  return {Cooling::State::Passed, {}};
}

// Food is there to be cooled from the end of its cook, or without one from an earlier first reading.
QDateTime cooling_begun(const Record& record, const measure::TemperatureLimit& from) {
  QDateTime begun = end_of_cook(record, from);
  for (const CoolReading& reading : since_cook(record, from)) begun = std::min(begun, reading.at);
  return begun;
}

// The first reheat of the whole batch since its cooling began that is hot enough for long enough.
std::optional<QDateTime> reheated_at(const book::RuleSet& rules, const Record& record) {
  const book::ReheatMinimum* minimum = rules.reheat_for(QStringLiteral("hot-holding"));
  const QDateTime begun = cooling_begun(record, rules.cooling.front().from);
  std::optional<QDateTime> first;
  for (const Event& event : record.events) {
    if (event.what != Happening::Reheated || !event.containers.empty() || !event.temperature || !minimum) continue;
    if (!measure::at_least(*event.temperature, minimum->at.temperature) || event.seconds < minimum->at.seconds)
      continue;
    if (event.at > begun && (!first || event.at < *first)) first = event.at;
  }
  return first;
}

Cooling cooled_again(const book::RuleSet& rules, const Readings& readings, const QDateTime& reheated,
                     const QDateTime& now) {
  const QDateTime from = last_above(readings, rules.cooling.front().from).value_or(reheated);
  return judge(rules.cooling, readings, from.toTimeZone(reheated.timeZone()), now);
}

Cooling still_missed(const Cooling& miss, const QString& because) {
  return {Cooling::State::Missed, miss.why + QStringLiteral("; ") + because};
}

// What a missed cooling comes to after the one corrective action that is allowed. Food that was warm for longer than
// the whole of the cooling time is past reheating (common practice of food-safety training; the code names no time).
Cooling corrected(const Cooling& miss, const book::RuleSet& rules, const Record& record, const QDateTime& start,
                  const QDateTime& now) {
  if (record.corrective_action.isEmpty()) return miss;
  if (record.corrective_by.isEmpty()) {
    return still_missed(miss, QStringLiteral("the corrective action does not say who took it"));
  }
  const std::optional<QDateTime> reheated = reheated_at(rules, record);
  if (!reheated) return still_missed(miss, QStringLiteral("no reheat that meets the minimum is written"));
  const int whole = rules.cooling.back().within_seconds;
  if (*reheated > start.addSecs(whole)) {
    return still_missed(miss, QStringLiteral("it was reheated after more than %1: discard it").arg(hours(whole)));
  }
  const Cooling again =
      cooled_again(rules, after(in_order(record.cooled), *reheated), reheated->toTimeZone(start.timeZone()), now);
  if (again.state != Cooling::State::Missed) return again;
  return still_missed(again, QStringLiteral("it was reheated once already: discard it"));
}

}  // namespace

// Source of the rule: FDA Food Code 2022 3-501.14(A); the figures are the rule set's.
Cooling cooling(const book::RuleSet& rules, const Record& record, const QDateTime& now) {
  if (rules.cooling.empty()) return {};
  const measure::TemperatureLimit& from = rules.cooling.front().from;
  const QTimeZone zone = record.made_at.timeZone();
  Readings readings = since_cook(record, from);
  const bool too_early = readings.size() < record.cooled.size();
  const std::optional<QDateTime> reheated = reheated_at(rules, record);
  const Readings later = reheated ? after(readings, *reheated) : Readings();
  readings.resize(readings.size() - later.size());
  const QDateTime start = last_above(readings, from).value_or(end_of_cook(record, from)).toTimeZone(zone);
  Cooling first = judge(rules.cooling, readings, start, now);
  if (first.state == Cooling::State::Passed && !later.empty())
    return cooled_again(rules, later, reheated->toTimeZone(zone), now);
  if (too_early && first.state != Cooling::State::Passed)
    first.why += QStringLiteral("; readings before the end of the cook, %1, do not count")
                     .arg(instant_text(*cooked_until(record, from), zone));
  return first.state == Cooling::State::Missed ? corrected(first, rules, record, start, now) : first;
}

// Source of the rule: FDA Food Code 2022 3-501.14(B); the figures are the rule set's.
Cooling cooling_from_ambient(const book::RuleSet& rules, const Record& record, const QDateTime& now) {
  if (rules.cooling_from_ambient.empty()) return {};
  const Readings readings = in_order(record.cooled);
  QDateTime start = record.made_to.value_or(record.made_at);
  const bool start_known = record.time_known || record.made_to;
  if (!readings.empty() && (!start_known || readings.front().at < start)) start = readings.front().at;
  return judge(rules.cooling_from_ambient, readings, start.toTimeZone(record.made_at.timeZone()), now);
}

bool cooked_enough(const std::vector<CookReading>& readings, const book::CookMinimum& minimum,
                   const book::RuleSet& rules) {
  const auto meets = [](const CookReading& reading, const std::vector<book::TimeAtTemperature>& ways, bool held) {
    return std::any_of(ways.begin(), ways.end(), [&](const book::TimeAtTemperature& way) {
      return measure::at_least(reading.core, way.temperature) && (!held || reading.seconds >= way.seconds);
    });
  };
  return std::any_of(readings.begin(), readings.end(), [&](const CookReading& reading) {
    if (!reading.microwave) return meets(reading, minimum.any_of, true);
    return rules.microwave_cook && meets(reading, rules.microwave_cook->any_of, true) &&
           meets(reading, minimum.any_of, false) && reading.stood_seconds >= rules.microwave_stand_seconds;
  });
}

}  // namespace lardiner::batch
