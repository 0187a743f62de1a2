// The date that holds for a container, whatever else is the matter with its lot.
#include "history/shown.h"

#include <algorithm>

#include "batch/clock.h"

namespace lardiner::history {

using batch::StatedEnd;
using batch::UseBy;

namespace {

QDate last_day(const QDateTime& end, const QTimeZone& zone) { return batch::local_day(end.addMSecs(-1), zone); }

// The date of an end; what ends within a day is shown with its time.
void set_end(UseBy& use_by, const StatedEnd& stated, const QTimeZone& zone) {
  use_by.form = stated.is_date ? UseBy::Form::Date : UseBy::Form::Instant;
  use_by.end = stated.end.toTimeZone(zone);
  use_by.date = stated.is_date ? last_day(stated.end, zone) : QDate();
}

UseBy of_package(const Lot& lot, const QString& rule, const StatedEnd& stated) {
  UseBy use_by;
  use_by.kind = stated.kind;
  set_end(use_by, stated, lot.zone);
  use_by.reasons.push_back({rule, lot.received->from, use_by.end, stated.is_date, stated.kind, true});
  return use_by;
}

Shown bought(const Lot& lot, const Holder& holder) {
  const Event& received = *lot.received;
  Shown out;
  if (holder.opened) {
    out.why_none = QStringLiteral("it was opened: a record of the opening gives it a date");
  } else if (holder.thawed && received.tcs) {
    out.why_none = QStringLiteral("it was thawed: a record of the thawing gives it a date");
  } else if (received.stated) {
    out.use_by = of_package(lot, QStringLiteral("the date on its package"), *received.stated);
    out.use_by->previously_frozen = holder.thawed;
    out.end = out.use_by->end;
  } else if (received.tcs && lot.not_after) {  // what nobody wrote down as it came
    out.use_by = of_package(lot, QStringLiteral("corrected"), *lot.not_after);
    out.end = out.use_by->end;
  } else if (received.tcs) {
    out.why_none = QStringLiteral("the date on its package is not recorded");
  } else {
    out.use_by = UseBy();
    out.use_by->form = UseBy::Form::None;
  }
  return out;
}

// Of frozen food the earlier of its frozen best before and of the date that no freezing stretches.
std::optional<QDateTime> end_of(const UseBy& use_by, const QTimeZone& zone) {
  std::optional<QDateTime> end;
  if (use_by.form == UseBy::Form::None) return end;
  if (use_by.end.isValid()) end = use_by.end;
  if (use_by.form != UseBy::Form::Frozen || !use_by.never_past) return end;
  const QDateTime never = batch::end_of(*use_by.never_past, zone);
  return end ? std::min(*end, never) : never;
}

Shown made(const Lot& lot, const Holder& holder) {
  const batch::Fixed& fixed = *lot.made;
  const UseBy* use_by = batch::use_by_of(fixed, static_cast<size_t>(holder.number) - 1);
  Shown out;
  if (use_by) {
    out.use_by = *use_by;
    out.end = end_of(*use_by, lot.zone);
  } else {
    out.why_none =
        fixed.batch.refused.empty() ? QStringLiteral("no date can be told") : fixed.batch.refused.front().what;
  }
  return out;
}

// A correction is a date in itself, which the freezer does not stretch.
void correct(Shown& out, const StatedEnd& not_after, const QTimeZone& zone) {
  if (!out.use_by) {
    out.end = not_after.end.toTimeZone(zone);
    return;
  }
  if (out.end && *out.end <= not_after.end) return;
  UseBy& use_by = *out.use_by;
  if (not_after.kind == book::EndKind::UseBy) use_by.kind = book::EndKind::UseBy;
  for (batch::Reason& reason : use_by.reasons) reason.decided = false;
  use_by.reasons.insert(use_by.reasons.begin(), {QStringLiteral("corrected"), QString(), not_after.end.toTimeZone(zone),
                                                 not_after.is_date, not_after.kind, true});
  out.end = not_after.end.toTimeZone(zone);
  if (use_by.form != UseBy::Form::Frozen) return set_end(use_by, not_after, zone);
  // A frozen label shows days: of a time within a day, the last whole day before it.
  const QDate day = batch::local_day(not_after.end, zone);
  const QDate last = batch::start_of(day, zone) == not_after.end ? last_day(not_after.end, zone) : day.addDays(-1);
  use_by.never_past = use_by.never_past ? std::min(*use_by.never_past, last) : last;
  out.end = std::min(*out.end, batch::end_of(*use_by.never_past, zone));
}

}  // namespace

Shown shown(const Lot& lot, const Holder& holder) {
  Shown out = lot.made ? made(lot, holder) : bought(lot, holder);
  if (lot.not_after) correct(out, *lot.not_after, lot.zone);
  return out;
}

}  // namespace lardiner::history
