// Whether a container is good now: the gravest of what is the matter with it, in one word and a reason.
#include "batch/phrases.h"
#include "history/shown.h"

namespace lardiner::history {

namespace {

using State = Good::State;

struct Verdict {
  State state = State::Good;
  QString why;
};

QString hold_text(const HoldOn& hold, const QTimeZone& zone) {
  QString text = QStringLiteral("on hold since %1").arg(batch::instant_text(hold.since, zone));
  if (!hold.place.isEmpty()) text += QStringLiteral(", with all that stood in %1").arg(hold.place);
  if (!hold.reason.isEmpty()) text += QStringLiteral(": ") + hold.reason;
  return hold.by.isEmpty() ? text : text + QStringLiteral(" (%1)").arg(hold.by);
}

// What was pending may be missed by now.
batch::Cooling cooling_at(const batch::Fixed& fixed, const QDateTime& now) {
  if (fixed.batch.cooling.state != batch::Cooling::State::Pending) return fixed.batch.cooling;
  batch::Fixed judged = fixed;
  batch::judge_at(judged, now);
  return judged.batch.cooling;
}

std::optional<Verdict> not_released(const Lot& lot, const QDateTime& now) {
  if (!lot.made) return std::nullopt;
  const batch::Cooling cooling = cooling_at(*lot.made, now);
  if (cooling.state == batch::Cooling::State::Pending)
    return Verdict{State::NotReleased, QStringLiteral("cooling is not shown yet: ") + cooling.why};
  if (cooling.state == batch::Cooling::State::Missed)
    return Verdict{State::NotReleased, QStringLiteral("cooling missed its limits: ") + cooling.why};
  return std::nullopt;
}

Verdict verdict(const Lot& lot, const Holder& holder, const Shown& shown, const QDateTime& now) {
  const bool gone = holder.where == Where::Used || holder.where == Where::Discarded || holder.where == Where::Missing;
  if (gone) return {State::Gone, word(holder.where)};
  if (!lot.recalls.empty()) return {State::Recalled, QStringLiteral("recalled by entry ") + lot.recalls.front().text()};
  if (!lot.holds.empty()) return {State::Held, hold_text(lot.holds.front(), lot.zone)};
  if (holder.not_taken)
    return {State::Held, QStringLiteral("%1 did not take it, and its return is not recorded").arg(holder.site)};
  if (const std::optional<Verdict> cooling = not_released(lot, now)) return *cooling;
  if (shown.end && *shown.end <= now)
    return {State::Past, QStringLiteral("past since ") + batch::instant_text(*shown.end, lot.zone)};
  if (!shown.use_by) return {State::NoDate, shown.why_none};
  if (lot.further_allergens.isEmpty()) return {};
  return {State::Good, QStringLiteral("a correction adds: ") + lot.further_allergens.join(QStringLiteral(", "))};
}

}  // namespace

Good good(const Lot& lot, const Holder& holder, const QDateTime& now) {
  const Shown date = shown(lot, holder);
  const Verdict said = verdict(lot, holder, date, now);
  return {said.state, date.use_by, date.end, said.why};
}

}  // namespace lardiner::history
