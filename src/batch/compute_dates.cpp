// The rules that apply to the food itself, and the use-bys of a batch's containers.
#include <algorithm>
#include <map>

#include "batch/compute_making.h"

namespace lardiner::batch {

using book::State;

namespace {

bool has_document(const std::vector<book::ShelfLife>& lives, State state) {
  return std::any_of(lives.begin(), lives.end(),
                     [&](const book::ShelfLife& life) { return life.state == state && !life.document.isEmpty(); });
}

bool has_state(const std::vector<book::ShelfLife>& lives, State state) {
  return std::any_of(lives.begin(), lives.end(), [&](const book::ShelfLife& life) { return life.state == state; });
}

Rule rule_of(const QString& name, State state, const book::LengthLimit& limit) {
  return {name, state, limit.length, book::EndKind::UseBy, limit.authority, std::nullopt};
}

// The rule set's own limit beside the book's, unless the book's is that very limit.
void add_limit(std::vector<Rule>& rules, Rule limit) {
  const bool there = std::any_of(rules.begin(), rules.end(), [&](const Rule& rule) {
    return rule.state == limit.state && rule.length == limit.length && rule.authority == limit.authority &&
           rule.kind == limit.kind && rule.starts_at == limit.starts_at;
  });
  if (!there) rules.push_back(std::move(limit));
}

Question question_for(const Making& making, const Run& run, std::vector<Rule> rules, const std::vector<Cap>& caps) {
  const Record& record = making.batch.record;
  const book::RuleSet& rule_set = run.book.rules;
  Question question;
  question.zone = run.zone();
  question.freezing_day = run.book.kitchen.freezing_day;
  question.tcs = making.tcs();
  question.made_at = record.made_at;
  question.time_known = record.time_known;
  question.cooked_at = making.cooked_at;
  question.rules = std::move(rules);
  question.caps = caps;
  question.hot_or_cold_start = rule_set.time_control;
  question.cold_start = rule_set.time_control_cold_start;
  question.cold_holding = rule_set.cold_holding;
  question.hot_holding = rule_set.hot_holding;
  return question;
}

const char* missing_for(const problem::Error& error, const Question& question) {
  const bool hours = std::any_of(question.rules.begin(), question.rules.end(),
                                 [](const Rule& rule) { return rule.length.unit == book::Length::Unit::Seconds; });
  const bool no_life = error.code == problem::Code::Missing && (question.time_known || !hours);
  return no_life ? "missing.shelf_life" : "missing.other";
}

// Adds the use-by of one timeline.
bool add_use_by(Making& making, const Question& question) {
  problem::ExpectedAll<UseBy> answer = use_by(question);
  if (!answer) {
    for (const problem::Error& error : answer.error()) refuse(making, missing_for(error, question), error);
    return false;
  }
  const bool discarded = std::any_of(question.timeline.begin(), question.timeline.end(),
                                     [](const Event& event) { return event.what == Happening::Discarded; });
  if (answer->form == UseBy::Form::None && !discarded) {
    refuse(making, "missing.shelf_life",
           {problem::Code::Missing,
            QStringLiteral("no shelf life and no input gives \"%1\" a date").arg(making.batch.record.item),
            {},
            QStringLiteral("state its shelf life in the kitchen book")});
    return false;
  }
  for (const QString& warning : answer->warnings)
    if (std::find(making.batch.warnings.begin(), making.batch.warnings.end(), warning) == making.batch.warnings.end())
      making.batch.warnings.push_back(warning);
  answer->previously_frozen = answer->previously_frozen || making.batch.previously_frozen;
  making.batch.use_bys.push_back(std::move(*answer));
  making.questions.push_back(question);
  return true;
}

}  // namespace

Rule rule_when_opened(const book::RuleSet& rule_set) {
  return rule_of(QStringLiteral("opened package"), State::Opened, rule_set.opened_package);
}

void add_when_opened(Question& question, const std::optional<Rule>& when_opened) {
  if (!when_opened) return;
  const auto& events = question.timeline;
  const bool opened =
      std::any_of(events.begin(), events.end(), [](const Event& e) { return e.what == Happening::Opened; });
  const bool answered = std::any_of(question.rules.begin(), question.rules.end(),
                                    [](const Rule& rule) { return rule.state == State::Opened; });
  if (opened && !answered) question.rules.push_back(*when_opened);
}

Rule rule_of(const book::ShelfLife& life) {
  return {{}, life.state, life.length, life.kind, life.authority, std::nullopt};
}

void add_reduced_oxygen(std::vector<Rule>& rules, const Making& making, const std::vector<const Event*>& events,
                        const book::RuleSet& rule_set) {
  std::optional<QDateTime> first;
  for (const Event* event : events)
    if (event->what == Happening::Packed && (!first || event->at < *first)) first = event->at;
  const QDateTime packed = first.value_or(making.batch.record.made_at);
  for (Rule& rule : reduced_oxygen_rules(making.product->shelf_lives, packed, rule_set))
    rules.push_back(std::move(rule));
}

std::vector<Rule> reduced_oxygen_rules(const std::vector<book::ShelfLife>& lives, const QDateTime& packed,
                                       const book::RuleSet& rule_set) {
  std::vector<Rule> rules{rule_of(QStringLiteral("reduced oxygen pack"), State::Chilled, rule_set.reduced_oxygen)};
  if (!has_document(lives, State::Chilled))
    rules.push_back(rule_of(QStringLiteral("reduced oxygen pack without a document"), State::Chilled,
                            rule_set.reduced_oxygen_document));
  for (Rule& rule : rules) rule.starts_at = packed;
  return rules;
}

std::vector<Rule> opened_rules(const Kept& kept, const book::RuleSet& rule_set) {
  std::vector<Rule> rules;
  for (const book::ShelfLife& life : kept.lives)
    if (life.state == State::Opened) rules.push_back(rule_of(life));
  if (kept.tcs && kept.ready && !has_document(kept.lives, State::Opened))
    add_limit(rules, rule_of(QStringLiteral("opened package"), State::Opened, rule_set.opened_package));
  return rules;
}

std::vector<Rule> rules_for(const Kept& kept, const book::RuleSet& rule_set) {
  std::vector<Rule> rules;
  for (const book::ShelfLife& life : kept.lives) rules.push_back(rule_of(life));
  if (kept.tcs && kept.ready && !has_document(kept.lives, State::Chilled) && has_state(kept.lives, State::Chilled))
    add_limit(rules, rule_of(QStringLiteral("chilled, ready to eat"), State::Chilled, rule_set.ready_to_eat_chilled));
  return rules;
}

void date(Making& making, const Run& run, const std::vector<Rule>& rules, const std::vector<Cap>& caps) {
  std::map<std::pair<std::vector<const Event*>, bool>, int> known;  // timelines and packages that are dated already
  for (Container& container : making.batch.containers) {
    const ContainerGroup& group = making.batch.record.containers[static_cast<size_t>(container.group)];
    const std::vector<const Event*> events = events_of(making.batch.record, container.number);
    const bool packed = making.tcs() && making.product && making.product->reduced_oxygen(group.kind, group.holds);
    const auto found = known.find({events, packed});
    container.discarded =
        std::any_of(events.begin(), events.end(), [](const Event* e) { return e->what == Happening::Discarded; });
    if (found != known.end()) {
      container.use_by = found->second;
      continue;
    }
    std::vector<Rule> all = rules;
    if (packed) add_reduced_oxygen(all, making, events, run.book.rules);
    Question question = question_for(making, run, std::move(all), caps);
    for (const Event* event : events) question.timeline.push_back(*event);
    if (making.tcs()) add_when_opened(question, rule_when_opened(run.book.rules));
    if (!add_use_by(making, question)) {
      making.questions.clear();
      making.batch.use_bys.clear();
      return;
    }
    container.use_by = static_cast<int>(making.batch.use_bys.size()) - 1;
    known.insert({{events, packed}, container.use_by});
  }
  const std::vector<UseBy>& all = making.batch.use_bys;
  const bool shared = std::all_of(all.begin(), all.end(), [](const UseBy& use_by) { return use_by.previously_frozen; });
  making.batch.previously_frozen = making.batch.previously_frozen || (shared && !all.empty());
}

}  // namespace lardiner::batch
