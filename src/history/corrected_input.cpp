// A lot whose date became known, or was corrected, and what had been made of it by then.
#include "history/corrected_input.h"

#include <algorithm>

#include "batch/clock.h"
#include "history/shown.h"

namespace lardiner::history {

namespace {

bool names(const batch::Cap& cap, const WentIn& input) { return cap.item == input.item && cap.lot == input.lot; }

// What is not cooked keeps the dates of all that is in it, also of what had none until now. A ready part of cooked food
// keeps its own.
bool keeps_date(const batch::Fixed& fixed, const WentIn& input) {
  return !fixed.cooked_at || std::any_of(fixed.questions.begin(), fixed.questions.end(), [&](const auto& question) {
    return std::any_of(question.caps.begin(), question.caps.end(),
                       [&](const batch::Cap& cap) { return names(cap, input); });
  });
}

// Where the time is not known, at the end of the day: nobody says that it was before.
bool made_when_past(const Lot& lot, const QDateTime& end) {
  const batch::Record& record = lot.made->batch.record;
  if (record.time_known) return record.made_at >= end;
  return batch::end_of(batch::local_day(record.made_at, lot.zone), lot.zone) > end;
}

bool only_quality(const Lot& lot, const WentIn& input, const batch::StatedEnd& ends) {
  return ends.kind == book::EndKind::BestBefore && !input.tcs && lot.made->tcs;
}

bool would_be_earlier(const Lot& lot, const QDateTime& end) {
  return std::any_of(lot.holders.begin(), lot.holders.end(), [&](const Holder& holder) {
    const std::optional<QDateTime> now = shown(lot, holder).end;
    return !now || end < *now;
  });
}

// Nobody says which of its containers went in. What is frozen has no date while it is.
std::optional<batch::StatedEnd> earliest_end(const batch::Fixed& fixed) {
  std::optional<batch::StatedEnd> earliest;
  for (const batch::UseBy& use_by : fixed.batch.use_bys) {
    const bool dated = use_by.form == batch::UseBy::Form::Date || use_by.form == batch::UseBy::Form::Instant;
    if (dated && (!earliest || use_by.end < earliest->end))
      earliest = {use_by.end, use_by.form == batch::UseBy::Form::Date, use_by.kind};
  }
  return earliest;
}

}  // namespace

WentIn went_in(const Lot& lot) {
  return {lot.item, lot.code, lot.made ? lot.made->tcs : !lot.received || lot.received->tcs};
}

bool is_bounded(const Lot& lot, const WentIn& input, const batch::StatedEnd& ends) {
  return hands_on(lot, input, ends) && would_be_earlier(lot, ends.end);
}

bool hands_on(const Lot& lot, const WentIn& input, const batch::StatedEnd& ends) {
  if (!lot.made || only_quality(lot, input, ends)) return false;
  return keeps_date(*lot.made, input) || made_when_past(lot, ends.end);
}

std::optional<batch::StatedEnd> end_given(const Event& event) {
  if (event.kind == Kind::Correction) return event.ends;
  if (event.kind == Kind::Made) return event.made ? earliest_end(*event.made) : std::nullopt;
  return event.kind == Kind::Received && event.accepted ? event.stated : std::nullopt;
}

bool came_through_input(const Lot& lot, const Event& event) {
  if (!end_given(event)) return false;
  return event.lot != lot.code || (!event.item.isEmpty() && event.item != lot.item);
}

}  // namespace lardiner::history
