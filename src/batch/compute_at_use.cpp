// The dates of an input at the moment of use: of a lot of the run from its timeline, of a bought thing from its
// package.
#include <algorithm>

#include "batch/clock.h"
#include "batch/compute_inputs.h"
#include "batch/phrases.h"

namespace lardiner::batch {

using problem::Code;
using problem::Error;
using problem::Errors;

namespace {

// The source's question as it stood at `moment`, taken out of the freezer then.
struct Standing {
  Question question;
  UseBy answer;
  bool frozen_before = false;
  bool discarded = false;
};

bool before(const Event& event, const QDateTime& moment) { return event.at <= moment; }

problem::ExpectedAll<Standing> standing_at(const Question& whole, const QDateTime& moment, const Input& input) {
  Standing out{whole, {}, false, false};
  std::erase_if(out.question.timeline, [&](const Event& event) { return !before(event, moment); });
  if (input.opened_at) {
    Event opened;
    opened.what = Happening::Opened;
    opened.at = std::max(*input.opened_at, whole.made_at);
    opened.place = input.place;
    out.question.timeline.push_back(opened);
  }
  out.frozen_before = std::any_of(out.question.timeline.begin(), out.question.timeline.end(),
                                  [](const Event& event) { return event.what == Happening::Frozen; });
  out.discarded = std::any_of(out.question.timeline.begin(), out.question.timeline.end(),
                              [](const Event& event) { return event.what == Happening::Discarded; });
  problem::ExpectedAll<UseBy> answer = use_by(out.question);
  if (answer && answer->form == UseBy::Form::Frozen) {
    Event thawed;
    thawed.what = Happening::Thawed;
    thawed.at = moment;
    thawed.place = input.place;
    out.question.timeline.push_back(thawed);
    answer = use_by(out.question);
  }
  if (!answer) return tl::unexpected(answer.error());
  out.answer = std::move(*answer);
  return out;
}

Cap own_cap(const Making& source, const Standing& standing) {
  const UseBy& answer = standing.answer;
  const std::vector<Cap>& caps = standing.question.caps;
  Cap cap;
  cap.item = source.batch.record.item;
  cap.lot = source.batch.lot;
  cap.why =
      answer.kind == book::EndKind::UseBy ? QStringLiteral("its own use-by") : QStringLiteral("its own best before");
  cap.kind = answer.kind;
  cap.end = answer.end;
  cap.is_date = answer.form == UseBy::Form::Date;
  cap.absolute = answer.time_control;
  cap.shelf_stable = answer.kind == book::EndKind::BestBefore && !source.tcs();
  cap.frozen_before = standing.frozen_before || answer.previously_frozen ||
                      std::any_of(caps.begin(), caps.end(), [](const Cap& other) { return other.frozen_before; });
  return cap;
}

// A deeper date as the freezer moved it.
Cap stretched(const Cap& cap, const Standing& standing) {
  if (cap.absolute || !standing.frozen_before) return cap;
  Question alone = standing.question;
  alone.tcs = false;
  alone.rules.clear();
  alone.caps = {cap};
  const problem::ExpectedAll<UseBy> answer = use_by(alone);
  if (!answer || !answer->end.isValid()) return cap;
  Cap moved = cap;
  moved.end = answer->end;
  moved.frozen_before = true;
  moved.is_date = answer->form == UseBy::Form::Date;
  return moved;
}

// Of two that end together the one that was frozen before has less to gain from a freezer.
bool shorter(const Cap& a, const Cap& b) {
  return a.end < b.end || (a.end == b.end && a.frozen_before && !b.frozen_before);
}

void keep_earlier(std::vector<Carried>& deeper, const std::vector<Carried>& others) {
  if (deeper.empty()) deeper = others;
  for (size_t i = 0; i < deeper.size(); ++i)
    if (shorter(others[i].cap, deeper[i].cap)) deeper[i] = others[i];
}

// Both ends of the making, or of the day when only the day is known: nobody says when in it the lot was taken.
std::vector<QDateTime> moments(const Making& source, const Making& making, const Run& run) {
  const QDateTime made = source.batch.record.made_at;
  const QDateTime from = std::max(making.batch.record.made_at, made);
  return {from, std::max(last_use(making.batch.record, run), made)};
}

Cap named(const Input& input, const QString& why) {
  Cap cap;
  cap.item = input.item;
  cap.lot = input.lot;
  cap.why = why;
  return cap;
}

Cap stated_cap(const Input& input, bool tcs, bool ours) {
  const bool use_by = input.stated->kind == book::EndKind::UseBy;
  Cap cap = named(input, ours     ? QStringLiteral("the date on its label")
                         : use_by ? QStringLiteral("maker's use-by")
                                  : QStringLiteral("maker's best before"));
  cap.kind = input.stated->kind;
  cap.end = input.stated->end;
  cap.is_date = input.stated->is_date;
  cap.absolute = true;
  cap.shelf_stable = !use_by && !tcs;
  return cap;
}

// When the package was opened, frozen and thawed, as a question of its own.
std::optional<Question> package_question(const Input& input, const book::Ingredient& ingredient, const Making& making,
                                         const Run& run) {
  const bool tcs = ingredient.tcs.is != book::TcsStatement::Is::No;
  Question question;
  question.zone = run.zone();
  question.freezing_day = run.book.kitchen.freezing_day;
  question.tcs = false;  // an end for every state is the record's duty, not the rules'
  question.made_at = making.batch.record.made_at;
  for (const auto& at : {input.opened_at, input.frozen_at, input.thawed_at})
    if (at) question.made_at = std::min(question.made_at, *at);
  if (input.opened_at)
    for (Rule rule : opened_rules({ingredient.shelf_lives, tcs, ingredient.must_be_cooked == false}, run.book.rules)) {
      rule.starts_at = input.opened_at;
      question.rules.push_back(rule);
    }
  for (const book::ShelfLife& life : ingredient.shelf_lives) {
    if (life.state != book::State::Thawed || !input.thawed_at) continue;
    question.rules.push_back(rule_of(life));
    question.rules.back().starts_at = input.thawed_at;
  }
  if (question.rules.empty()) return std::nullopt;
  const auto add = [&](Happening what, const QDateTime& at) {
    Event event;
    event.what = what;
    event.at = at;
    event.place = input.place;
    question.timeline.push_back(event);
  };
  if (input.frozen_at) {
    add(Happening::Frozen, *input.frozen_at);
    add(Happening::Thawed, input.thawed_at.value_or(std::max(making.batch.record.made_at, *input.frozen_at)));
  }
  return question;
}

}  // namespace

problem::ExpectedAll<AtUse> at_use(const Making& source, const Input& input, const Making& making, const Run& run) {
  AtUse out;
  std::optional<Cap> earliest;
  bool during = false;
  bool any = false;  // a container that is there to the end of the making
  for (const Question& whole : source.questions) {
    bool left = false;
    for (const QDateTime& moment : moments(source, making, run)) {
      const problem::ExpectedAll<Standing> standing = standing_at(whole, moment, input);
      if (!standing) return tl::unexpected(standing.error());
      left = !standing->discarded;
      if (standing->discarded) continue;
      during = true;
      out.previously_frozen = out.previously_frozen || standing->answer.previously_frozen;
      std::vector<Carried> deeper = source.carried;
      for (Carried& carried : deeper) carried.cap = stretched(carried.cap, *standing);
      keep_earlier(out.deeper, deeper);
      if (standing->answer.form == UseBy::Form::None) continue;
      const Cap own = own_cap(source, *standing);
      if (!earliest || shorter(own, *earliest)) earliest = own;
    }
    any = any || left;
  }
  if (!any)
    return tl::unexpected(
        Errors{Error{Code::Conflict,
                     (during ? QStringLiteral("lot %1 was discarded before the making that it went into was over")
                             : QStringLiteral("lot %1 was discarded before it was used"))
                         .arg(source.batch.lot),
                     input.place, QStringLiteral("correct the lot, or the time of one of the two")}});
  if (earliest) out.caps.push_back(*earliest);
  return out;
}

problem::ExpectedAll<std::vector<Cap>> bought_caps(const Input& input, const Making& making, Run& run) {
  std::vector<Cap> caps;
  const book::Ingredient* ingredient = run.book.ingredient(input.item);
  if (input.stated) caps.push_back(stated_cap(input, is_tcs(run.book, input.item), !ingredient));
  const std::optional<Question> question =
      ingredient ? package_question(input, *ingredient, making, run) : std::nullopt;
  if (!question) return caps;
  const problem::ExpectedAll<UseBy> answer = use_by(*question);
  if (!answer) return tl::unexpected(answer.error());
  if (answer->reasons.empty()) return caps;
  const Reason& reason = answer->reasons.front();
  Cap cap =
      named(input, reason.authority.isEmpty() ? reason.rule : reason.rule + QStringLiteral(", ") + reason.authority);
  cap.kind = answer->kind;
  cap.end = answer->end;
  cap.is_date = answer->form == UseBy::Form::Date;
  cap.shelf_stable = answer->kind == book::EndKind::BestBefore && !is_tcs(run.book, input.item);
  cap.frozen_before = input.frozen_at || input.thawed_at;
  caps.push_back(cap);
  return caps;
}

}  // namespace lardiner::batch
