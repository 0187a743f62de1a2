// The fields of rules, caps and questions in the ledger's text; for fixed_json.cpp.
#pragma once

#include "batch/fixed.h"
#include "batch/json_fields.h"

namespace lardiner::batch {

template <class A>
void fields(A& a, Of<A, book::Authority>& authority) {
  a.text("name", authority.name);
  a.text("section", authority.section);
}

template <class A>
void fields(A& a, Of<A, book::Length>& length) {
  a.must("unit", length.unit);
  a.must("count", length.count);
  a.usual("first_day", length.first_day, 1);
  if constexpr (A::kReads)
    if (length.count < 1)
      a.common().refuse(problem::Code::Range, a.path_of("count") + QStringLiteral(" cannot be true"));
}

template <class A>
void fields(A& a, Of<A, Rule>& rule) {
  a.text("name", rule.name);
  a.must("state", rule.state);
  a.must("length", rule.length);
  a.usual("kind", rule.kind, book::EndKind::UseBy);
  a.must("authority", rule.authority);
  a.maybe("starts_at", rule.starts_at);
}

template <class A>
void fields(A& a, Of<A, Cap>& cap) {
  a.must("item", cap.item);
  a.text("lot", cap.lot);
  a.text("why", cap.why);
  a.usual("kind", cap.kind, book::EndKind::UseBy);
  a.must("end", cap.end);
  a.usual("is_date", cap.is_date, true);
  a.usual("absolute", cap.absolute, false);
  a.usual("shelf_stable", cap.shelf_stable, false);
  a.usual("frozen_before", cap.frozen_before, false);
}

template <class A>
void fields(A& a, Of<A, Carried>& carried) {
  a.must("cap", carried.cap);
  a.usual("ready", carried.ready, false);
}

template <class A>
void fields(A& a, Of<A, book::TimeControlRule>& rule) {
  a.must("length", rule.length);
  a.maybe("never_above", rule.never_above);
  a.must("authority", rule.authority);
}

template <class A>
void fields(A& a, Of<A, Event>& event) {
  a.must("what", event.what);
  a.must("at", event.at);
  a.maybe("temperature", event.temperature);
  a.usual("seconds", event.seconds, 0);
  a.list("containers", event.containers);
  a.text("by", event.by);
}

// Its zone is that of the facts as a whole, and its use-by is told beside it.
template <class A>
void question_fields(A& a, Of<A, Question>& question) {
  a.usual("freezing_day", question.freezing_day, book::FreezingDay::Counts);
  a.usual("tcs", question.tcs, true);
  a.must("made_at", question.made_at);
  a.usual("time_known", question.time_known, true);
  a.maybe("cooked_at", question.cooked_at);
  a.list("rules", question.rules);
  a.list("caps", question.caps);
  a.list("timeline", question.timeline);
  a.must("hot_or_cold_start", question.hot_or_cold_start);
  a.must("cold_start", question.cold_start);
  a.must("cold_holding", question.cold_holding);
  a.must("hot_holding", question.hot_holding);
}

// Written alone: what is read is counted again.
inline void fields(Writing& a, const Reason& reason) {
  a.must("rule", reason.rule);
  a.text("authority", reason.authority);
  a.must("end", reason.end);
  a.usual("is_date", reason.is_date, true);
  a.usual("kind", reason.kind, book::EndKind::UseBy);
  a.usual("decided", reason.decided, false);
}

inline void fields(Writing& a, const UseBy& use_by) {
  a.must("form", use_by.form);
  a.usual("kind", use_by.kind, book::EndKind::UseBy);
  if (use_by.end.isValid()) a.must("end", use_by.end);
  if (use_by.date.isValid()) a.must("date", use_by.date);
  a.usual("days_left", use_by.days_left, 0);
  a.maybe("frozen_on", use_by.frozen_on);
  a.maybe("frozen_best_before", use_by.frozen_best_before);
  a.maybe("never_past", use_by.never_past);
  a.usual("previously_frozen", use_by.previously_frozen, false);
  a.usual("time_control", use_by.time_control, false);
  a.maybe("never_above", use_by.never_above);
  a.list("reasons", use_by.reasons);
  a.texts("warnings", use_by.warnings);
}

template <class A>
void fields(A& a, Of<A, book::CoolingStage>& stage) {
  a.text("id", stage.id);
  a.must("from", stage.from);
  a.must("to", stage.to);
  a.must("within_seconds", stage.within_seconds);
  a.must("authority", stage.authority);
}

template <class A>
void fields(A& a, Of<A, book::ReheatMinimum>& minimum) {
  a.must("how", minimum.how);
  a.must("temperature", minimum.at.temperature);
  a.usual("seconds", minimum.at.seconds, 0);
  a.usual("stand_seconds", minimum.stand_seconds, 0);
  a.maybe("within_seconds", minimum.within_seconds);
  a.must("authority", minimum.authority);
}

template <class A>
void fields(A& a, Of<A, CoolingLimits>& limits) {
  a.usual("from_ambient", limits.from_ambient, false);
  a.list("stages", limits.stages);
  a.list("reheat", limits.reheat);
  a.must("authority", limits.authority);
}

}  // namespace lardiner::batch
