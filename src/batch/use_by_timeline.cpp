// The events of one container in order, and what they mean for its clocks.
#include "batch/use_by_timeline.h"

#include <algorithm>

#include "batch/phrases.h"
#include "book/limit_text.h"

namespace lardiner::batch {

namespace {

class Walk {
 public:
  Walk(const Question& question, problem::Errors& errors) : question_(question), errors_(errors) {
    timeline_.state = question.tcs ? book::State::Chilled : book::State::Ambient;
  }

  void step(const Event& event) {
    if (event.at < question_.made_at) {
      refuse(event, problem::Code::Range, QStringLiteral("%1 at %2, before it was made at %3"),
             QStringLiteral("correct the time of one of the two"));
    } else if (timeline_.discarded) {
      refuse(event, problem::Code::Conflict, QStringLiteral("%1 at %2, after it was discarded"),
             QStringLiteral("correct the times, or the numbers of the containers"));
    } else if (timeline_.time_control && event.what == Happening::TimeControl) {
      refuse(event, problem::Code::Unsafe, QStringLiteral("%1 a second time at %2: it is never restarted"),
             QStringLiteral("discard the food when its first time is over"));
    } else if (timeline_.time_control && event.what != Happening::Finished && event.what != Happening::Discarded) {
      refuse(event, problem::Code::Unsafe, QStringLiteral("%1 at %2, after it was put on time control"),
             QStringLiteral("after time control food is finished and served, or discarded"));
    } else {
      apply(event);
    }
  }

  Timeline result() const { return timeline_; }

 private:
  void refuse(const Event& event, problem::Code code, const QString& what, const QString& hint) {
    QString said = what.arg(name(event.what), instant_text(event.at, question_.zone));
    if (said.contains(QLatin1String("%3"))) said = said.arg(instant_text(question_.made_at, question_.zone));
    errors_.push_back({code, said, event.place, hint});
  }

  void apply(const Event& event) {
    switch (event.what) {
      case Happening::Frozen:
        freeze(event);
        break;
      case Happening::Thawed:
        thaw(event);
        break;
      case Happening::Opened:
        timeline_.opened.push_back(event.at);
        break;
      case Happening::HotHeld:
        hold_hot(event);
        break;
      case Happening::TimeControl:
        start_time_control(event);
        break;
      case Happening::Finished:
        leave_freezer(event.at);
        timeline_.finished.push_back(event.at);
        if (!timeline_.time_control) timeline_.state = book::State::Finished;
        break;
      case Happening::Reheated:
        leave_freezer(event.at);
        break;
      case Happening::Packed:
        break;
      case Happening::Discarded:
        timeline_.discarded = true;
        break;
    }
  }

  void freeze(const Event& event) {
    if (timeline_.frozen_now()) {
      refuse(event, problem::Code::Conflict, QStringLiteral("%1 at %2, when it was frozen already"),
             QStringLiteral("add the thawing between the two, or leave one out"));
      return;
    }
    timeline_.freezings.push_back({event.at, std::nullopt, event.place});
  }

  void thaw(const Event& event) {
    if (!timeline_.frozen_now()) {
      refuse(event, problem::Code::Conflict, QStringLiteral("%1 at %2, when it was not frozen"),
             QStringLiteral("add the freezing before it"));
      return;
    }
    leave_freezer(event.at);
    timeline_.state = book::State::Thawed;
  }

  void leave_freezer(const QDateTime& at) {
    if (timeline_.frozen_now()) timeline_.freezings.back().left = at;
  }

  void hold_hot(const Event& event) {
    if (event.temperature && !measure::at_least(*event.temperature, question_.hot_holding)) {
      errors_.push_back({problem::Code::Unsafe,
                         QStringLiteral("hot holding at %1 is below %2")
                             .arg(reading_text(*event.temperature), book::text(question_.hot_holding)),
                         event.place, QStringLiteral("reheat it, or put it on time control, or discard it")});
      return;
    }
    leave_freezer(event.at);
    timeline_.hot_held.push_back(event.at);
    timeline_.state = book::State::HotHeld;
  }

  // Source of the rule: FDA Food Code 2022 3-501.19(B)(1) and (C)(1); the figures are the rule set's.
  void start_time_control(const Event& event) {
    const QString cold = book::text(question_.cold_holding);
    const QString hot = book::text(question_.hot_holding);
    if (!event.temperature) {
      errors_.push_back({problem::Code::Missing, QStringLiteral("time control without the temperature it started from"),
                         event.place, QStringLiteral("write the core temperature when it left temperature control")});
    } else if (!measure::at_most(*event.temperature, question_.cold_holding) &&
               !measure::at_least(*event.temperature, question_.hot_holding)) {
      errors_.push_back({problem::Code::Unsafe,
                         QStringLiteral("time control started from %1").arg(reading_text(*event.temperature)),
                         event.place,
                         QStringLiteral("it starts only from food at %1 or below, or at %2 or above; discard this food")
                             .arg(cold, hot)});
    } else {
      leave_freezer(event.at);
      timeline_.time_control = event;
      timeline_.state = book::State::TimeControl;
    }
  }

  const Question& question_;
  problem::Errors& errors_;
  Timeline timeline_;
};

}  // namespace

std::vector<Event> by_time(std::vector<Event> events) {
  std::stable_sort(events.begin(), events.end(), [](const Event& a, const Event& b) { return a.at < b.at; });
  return events;
}

Timeline read_timeline(const Question& question, problem::Errors& errors) {
  Walk walk(question, errors);
  for (const Event& event : by_time(question.timeline)) walk.step(event);
  return walk.result();
}

QString name(Happening what) {
  switch (what) {
    case Happening::Frozen:
      return QStringLiteral("frozen");
    case Happening::Thawed:
      return QStringLiteral("thawed");
    case Happening::Opened:
      return QStringLiteral("opened");
    case Happening::HotHeld:
      return QStringLiteral("held hot");
    case Happening::TimeControl:
      return QStringLiteral("put on time control");
    case Happening::Finished:
      return QStringLiteral("finished");
    case Happening::Packed:
      return QStringLiteral("packed");
    case Happening::Reheated:
      return QStringLiteral("reheated");
    case Happening::Discarded:
      return QStringLiteral("discarded");
  }
  return {};
}

}  // namespace lardiner::batch
