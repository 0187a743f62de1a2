// A batch's facts as they are fixed when it is recorded, and what happens to its dates afterwards.
#include "batch/fixed.h"

#include <algorithm>
#include <limits>

#include "batch/compute_making.h"

namespace lardiner::batch {

namespace {

using problem::Errors;

// Containers that have a question in common and meet the same of the new events.
struct Group {
  int question = 0;
  std::vector<int> events;  ///< indices into the new events, by their time
};

struct Dated {
  Question question;
  UseBy answer;
};

std::vector<int> by_time(const std::vector<Event>& events) {
  std::vector<int> order;
  for (size_t i = 0; i < events.size(); ++i) order.push_back(static_cast<int>(i));
  std::stable_sort(order.begin(), order.end(),
                   [&](int a, int b) { return events[static_cast<size_t>(a)].at < events[static_cast<size_t>(b)].at; });
  return order;
}

// The new events that befall a container. One that names none befalls all that are not discarded by then.
std::vector<int> befalling(const Container& container, const std::vector<Event>& events,
                           const std::vector<int>& order) {
  std::vector<int> out;
  bool discarded = container.discarded;
  for (const int i : order) {
    const Event& event = events[static_cast<size_t>(i)];
    const std::vector<int>& of = event.containers;
    const bool befalls = of.empty() ? !discarded : std::find(of.begin(), of.end(), container.number) != of.end();
    if (!befalls) continue;
    out.push_back(i);
    discarded = discarded || event.what == Happening::Discarded;
  }
  return out;
}

Errors check_containers(const std::vector<Event>& events, size_t count) {
  Errors errors;
  for (const Event& event : events)
    for (const int number : event.containers)
      if (number < 1 || static_cast<size_t>(number) > count)
        errors.push_back({problem::Code::Range,
                          QStringLiteral("there is no container %1: the record has %2").arg(number).arg(count),
                          event.place, QStringLiteral("correct the numbers of the containers")});
  return errors;
}

void add_events(Question& question, const std::vector<int>& which, const std::vector<Event>& events) {
  for (const int i : which) question.timeline.push_back(events[static_cast<size_t>(i)]);
  std::stable_sort(question.timeline.begin(), question.timeline.end(),
                   [](const Event& a, const Event& b) { return a.at < b.at; });
}

// Of a lot of which no date can be told nothing is refused but what cannot have happened.
Question bare_question(const Record& record) {
  constexpr int kAny = std::numeric_limits<int>::max();
  Question question;
  question.zone = record.made_at.timeZone();
  question.tcs = false;
  question.made_at = record.made_at;
  question.cold_holding = {{kAny, measure::Scale::Celsius}, {kAny, measure::Scale::Fahrenheit}};
  question.hot_holding = {{-kAny, measure::Scale::Celsius}, {-kAny, measure::Scale::Fahrenheit}};
  return question;
}

class Befalling {
 public:
  Befalling(Fixed& fixed, const std::vector<Event>& events)
      : fixed_(fixed), events_(events), dated_(!fixed.questions.empty()) {}

  Errors happen() {
    Errors errors = check_containers(events_, fixed_.batch.containers.size());
    if (errors.empty()) {
      group();
      errors = date();
    }
    problem::sort(errors);
    if (errors.empty()) settle();
    return errors;
  }

 private:
  std::vector<UseBy>& answers() { return fixed_.batch.refused.empty() ? fixed_.batch.use_bys : fixed_.withheld; }

  void group() {
    const std::vector<int> order = by_time(events_);
    for (size_t at = 0; at < fixed_.batch.containers.size(); ++at) {
      std::vector<int> mine = befalling(fixed_.batch.containers[at], events_, order);
      const int question = dated_ ? fixed_.question_of[at] : static_cast<int>(at);
      size_t found = 0;
      while (found < groups_.size() && (groups_[found].question != question || groups_[found].events != mine)) ++found;
      if (found == groups_.size()) groups_.push_back({question, std::move(mine)});
      group_of_.push_back(static_cast<int>(found));
    }
  }

  // One question a group, in the order of its first container, as `compute` has them.
  Errors date() {
    Errors errors;
    for (const Group& group : groups_) {
      Dated dated;
      if (!group.events.empty()) {
        dated.question = question_of(group);
        add_events(dated.question, group.events, events_);
        add_when_opened(dated.question, fixed_.when_opened);
        problem::ExpectedAll<UseBy> answer = use_by(dated.question);
        if (!answer) {
          errors.insert(errors.end(), answer.error().begin(), answer.error().end());
          continue;
        }
        dated.answer = std::move(*answer);
        dated.answer.previously_frozen = dated.answer.previously_frozen || fixed_.batch.previously_frozen;
      }
      dated_groups_.push_back(std::move(dated));
    }
    return errors;
  }

  Question question_of(const Group& group) const {
    if (dated_) return fixed_.questions[static_cast<size_t>(group.question)];
    Question question = bare_question(fixed_.batch.record);
    const int number = fixed_.batch.containers[static_cast<size_t>(group.question)].number;
    for (const Event* event : events_of(fixed_.batch.record, number)) question.timeline.push_back(*event);
    return question;
  }

  void settle() {
    Batch& batch = fixed_.batch;
    for (size_t at = 0; at < batch.containers.size(); ++at)
      for (const int i : groups_[static_cast<size_t>(group_of_[at])].events)
        if (events_[static_cast<size_t>(i)].what == Happening::Discarded) batch.containers[at].discarded = true;
    if (dated_) take_dates();
    batch.record.events.insert(batch.record.events.end(), events_.begin(), events_.end());
  }

  void take_dates() {
    Batch& batch = fixed_.batch;
    std::erase_if(batch.warnings, [&](const QString& warning) {
      return std::any_of(answers().begin(), answers().end(),
                         [&](const UseBy& old) { return old.warnings.contains(warning); });
    });
    std::vector<Question> questions;
    std::vector<UseBy> dates;
    for (size_t g = 0; g < groups_.size(); ++g) {
      const size_t old = static_cast<size_t>(groups_[g].question);
      const bool touched = !groups_[g].events.empty();
      questions.push_back(std::move(touched ? dated_groups_[g].question : fixed_.questions[old]));
      dates.push_back(std::move(touched ? dated_groups_[g].answer : answers()[old]));
      for (const QString& warning : dates.back().warnings)
        if (std::find(batch.warnings.begin(), batch.warnings.end(), warning) == batch.warnings.end())
          batch.warnings.push_back(warning);
    }
    const bool frozen = std::all_of(dates.begin(), dates.end(), [](const UseBy& d) { return d.previously_frozen; });
    batch.previously_frozen = batch.previously_frozen || frozen;
    fixed_.questions = std::move(questions);
    answers() = std::move(dates);
    fixed_.question_of = group_of_;
    if (!batch.refused.empty()) return;
    for (size_t at = 0; at < batch.containers.size(); ++at) batch.containers[at].use_by = group_of_[at];
  }

  Fixed& fixed_;
  const std::vector<Event>& events_;
  const bool dated_;
  std::vector<Group> groups_;
  std::vector<int> group_of_;  ///< container -> index into `groups_`
  std::vector<Dated> dated_groups_;
};

}  // namespace

Errors happen(Fixed& fixed, const std::vector<Event>& events) { return Befalling(fixed, events).happen(); }

const UseBy* use_by_of(const Fixed& fixed, size_t container) {
  const bool released = fixed.batch.refused.empty();
  if (fixed.question_of.empty() || (!released && !held_for_cooling_alone(fixed))) return nullptr;
  const std::vector<UseBy>& answers = released ? fixed.batch.use_bys : fixed.withheld;
  return &answers[static_cast<size_t>(fixed.question_of[container])];
}

}  // namespace lardiner::batch
