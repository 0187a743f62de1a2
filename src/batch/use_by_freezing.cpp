// Chilled time as a budget: what the freezer does to each limit.
#include "batch/use_by_freezing.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "batch/clock.h"
#include "batch/phrases.h"
#include "book/limit_text.h"

namespace lardiner::batch {

namespace {

constexpr qint64 kHour = 3600;
constexpr qint64 kDay = 24 * kHour;

// Calendar days that surely fit into elapsed time: a day on which clocks go back has an hour more.
int whole_days(qint64 seconds) { return static_cast<int>(std::max<qint64>(0, seconds - kHour) / kDay); }

// What is left of a limit at one freezing.
struct Left {
  int days = 0;
  qint64 seconds = 0;  // of a limit that does not end with a calendar day
};

class Freezer {
 public:
  Freezer(const Question& question, const Timeline& timeline, problem::Errors& errors)
      : question_(question), timeline_(timeline), errors_(errors) {}

  // Source of both settings: county guidance and the North Carolina date-marking sheet differ by the day of freezing.
  // Neither speaks of a second freezing, so that one always counts.
  void keep(Limit& limit) {
    for (size_t i = 0; i < timeline_.freezings.size(); ++i) {
      const Freezing& freezing = timeline_.freezings[i];
      if (freezing.left && *freezing.left <= limit.start) continue;
      const bool inside = freezing.at < limit.start;  // its clock was started in the freezer: nothing is used yet
      const bool free = question_.freezing_day == book::FreezingDay::Free && i == 0 && !limit.frozen_before;
      const Left left = inside ? whole(limit) : left_at(limit, freezing.at, free);
      if (left.days < 1 && (left.seconds < 1 || !freezing.left || !limit.stops_frozen)) {
        exhausted_[i].emplace_back(limit.end, limit.text);
        return;
      }
      limit.days_left = left.days;
      if (limit.stops_frozen) stop(limit, freezing, left, inside ? clock_started_inside() : day_of_freezing(free));
    }
  }

  // A rule for thawed food bounds what a frozen label promises.
  void add_future(const Rule& rule, std::vector<Limit>& limits) const {
    if (rule.state != book::State::Thawed || rule.starts_at) return;
    const QDateTime& frozen = timeline_.freezings.back().at;
    Limit limit = make_limit({}, rule.length, frozen, question_.zone);
    limit.days_left = whole(limit).days;
    limit.stops_frozen = true;
    limit.text = (rule.name.isEmpty() ? state_text(rule.state) : rule.name) + QStringLiteral(", ") +
                 book::text(rule.length) + QStringLiteral(", the day of thawing is day %1").arg(rule.length.first_day);
    limit.authority = rule.authority.text();
    limit.kind = rule.kind;
    if (limit.days_left > 0) {
      limits.push_back(std::move(limit));
      return;
    }
    errors_.push_back({problem::Code::Unsafe,
                       QStringLiteral("%1 after thawing are less than a whole day, which a frozen label cannot say")
                           .arg(book::text(rule.length)),
                       timeline_.freezings.back().place, QStringLiteral("state the limit for thawed food in days")});
  }

  void report() const {
    for (const auto& [index, limits] : exhausted_) {
      const Freezing& freezing = timeline_.freezings[index];
      const QString text = std::min_element(limits.begin(), limits.end())->second;
      errors_.push_back(
          {problem::Code::Unsafe,
           QStringLiteral("frozen at %1 with no day left: %2").arg(instant_text(freezing.at, question_.zone), text),
           freezing.place, QStringLiteral("use it before its use-by or discard it; %1").arg(setting())});
    }
  }

 private:
  static QString day_of_freezing(bool free) {
    return free ? QStringLiteral("the day of freezing is free") : QStringLiteral("the day of freezing counts");
  }
  static QString clock_started_inside() { return QStringLiteral("none used in the freezer"); }

  QString setting() const {
    return question_.freezing_day == book::FreezingDay::Counts
               ? QStringLiteral("the day of freezing counts in this kitchen")
               : QStringLiteral("the day of the first freezing is free in this kitchen");
  }

  QDate day(const QDateTime& instant) const { return local_day(instant, question_.zone); }

  Left left_at(const Limit& limit, const QDateTime& frozen, bool free) const {
    if (limit.last) return {static_cast<int>(day(frozen).daysTo(*limit.last)) + (free ? 1 : 0), 0};
    const qint64 seconds = frozen.secsTo(limit.end);
    return {whole_days(seconds), seconds};
  }

  Left whole(const Limit& limit) const {
    if (limit.last) return {static_cast<int>(day(limit.start).daysTo(*limit.last)) + 1, 0};
    const qint64 seconds = limit.start.secsTo(limit.end);
    return {whole_days(seconds), seconds};
  }

  // The end moves to what is left from the thawing on; while still frozen, to the end if it were thawed on the day of
  // freezing.
  void stop(Limit& limit, const Freezing& freezing, const Left& left, const QString& note) const {
    const QDateTime& from = freezing.left ? *freezing.left : std::max(freezing.at, limit.start);
    if (limit.last) {
      limit.last = day(from).addDays(left.days - 1);
      limit.end = end_of(*limit.last, question_.zone);
      limit.text +=
          QStringLiteral("; frozen %1 with %2 left (%3)").arg(day_text(day(freezing.at)), days_text(left.days), note);
    } else {
      limit.end = from.toTimeZone(question_.zone).addSecs(left.seconds);
      limit.text += QStringLiteral("; frozen %1").arg(instant_text(freezing.at, question_.zone));
    }
    if (!freezing.left) return;
    limit.text += QStringLiteral(", out of the freezer ") +
                  (limit.last ? day_text(day(from)) : instant_text(from, question_.zone));
  }

  const Question& question_;
  const Timeline& timeline_;
  problem::Errors& errors_;
  std::map<size_t, std::vector<std::pair<QDateTime, QString>>> exhausted_;  // by freezing
};

}  // namespace

void stop_while_frozen(std::vector<Limit>& limits, const Question& question, const Timeline& timeline,
                       problem::Errors& errors) {
  if (timeline.freezings.empty()) return;
  Freezer freezer(question, timeline, errors);
  for (Limit& limit : limits) freezer.keep(limit);
  if (timeline.frozen_now()) {
    for (const Rule& rule : question.rules) freezer.add_future(rule, limits);
  }
  freezer.report();
}

}  // namespace lardiner::batch
