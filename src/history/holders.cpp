// The containers of a lot that an event befalls, and what befalls them.
#include "history/holders.h"

#include <algorithm>
#include <initializer_list>

namespace lardiner::history {

using problem::Code;
using problem::Errors;

namespace {

// Where a container may be for an event to befall it when it is named, and which are meant when none is.
struct Reach {
  std::initializer_list<Where> named;
  std::initializer_list<Where> meant;
  bool some = true;  ///< it must find one
};

Reach reach(Kind kind) {
  using enum Where;
  static const Reach here{{Here}, {Here}};
  static const Reach counted{{Here, Missing, Used}, {Here}};
  static const Reach arrived{{Dispatched}, {Dispatched}};
  static const Reach returned{{Dispatched, AtSite}, {Dispatched, AtSite}};
  static const Reach discarded{{Here, Missing, Dispatched, AtSite}, {Here}};
  static const Reach any{
      {Here, Used, Dispatched, AtSite, Discarded, Missing}, {Here, Dispatched, AtSite, Missing}, false};
  switch (kind) {
    case Kind::Counted:
      return counted;
    case Kind::Arrived:
      return arrived;
    case Kind::Returned:
      return returned;
    case Kind::Discarded:
      return discarded;
    case Kind::Moved:
    case Kind::Frozen:
    case Kind::Thawed:
    case Kind::Opened:
    case Kind::HotHeld:
    case Kind::TimeControl:
    case Kind::Reheated:
    case Kind::Finished:
    case Kind::Split:
    case Kind::Used:
    case Kind::Dispatched:
    case Kind::Printed:
    case Kind::Reprinted:
      return here;
    default:
      return any;
  }
}

bool is_in(Where where, const std::initializer_list<Where>& wheres) {
  return std::find(wheres.begin(), wheres.end(), where) != wheres.end();
}

// Of what is away only what was meant: the same site and note, where they are written. What the site refused does not
// arrive with the rest.
bool is_meant(const Holder& holder, const Event& event) {
  if (event.kind != Kind::Arrived && event.kind != Kind::Returned) return true;
  if (event.kind == Kind::Arrived && holder.not_taken) return false;
  return (event.site.isEmpty() || holder.site == event.site) && (event.note.isEmpty() || holder.note == event.note);
}

Holder* find(Lot& lot, int number) {
  if (number < 1 || static_cast<size_t>(number) > lot.holders.size()) return nullptr;
  return &lot.holders[static_cast<size_t>(number) - 1];
}

void add_named(Lot& lot, const Event& event, const Reach& reach, std::vector<Holder*>& found, Errors& errors) {
  for (const int number : event.containers) {
    Holder* holder = find(lot, number);
    if (!holder)
      errors.push_back(refusal(
          Code::Range, event,
          QStringLiteral("there is no container %1: lot %2 has %3").arg(number).arg(lot.code).arg(lot.holders.size()),
          QStringLiteral("correct the numbers of the containers")));
    else if (!is_in(holder->where, reach.named))
      errors.push_back(
          refusal(Code::Conflict, event,
                  QStringLiteral("container %1 of lot %2 is %3, so it cannot be %4")
                      .arg(number)
                      .arg(lot.code, word(holder->where), word(event.kind)),
                  QStringLiteral("correct the numbers of the containers, or record first how it came back")));
    else
      found.push_back(holder);
  }
}

QString none_found(const Lot& lot, const Event& event) {
  if (event.kind == Kind::Arrived) return QStringLiteral("nothing of lot %1 is on its way").arg(lot.code);
  if (event.kind == Kind::Returned) return QStringLiteral("nothing of lot %1 is away").arg(lot.code);
  return QStringLiteral("nothing of lot %1 is in the kitchen any more").arg(lot.code);
}

void go(Holder& holder, const Event& event) {
  holder.where = Where::Dispatched;
  holder.not_taken = false;
  holder.site = event.site;
  holder.order = event.order;
  holder.note = event.note;
  holder.dispatched = event.at;
  holder.place.clear();
}

// Nothing seen of it leaves the amount as it was: that much is missing.
void count(Holder& holder, const Event& event) {
  const int percent = event.left_percent.value_or(100);
  holder.where = percent == 0 ? Where::Missing : Where::Here;
  if (percent != 0) holder.left = measure::scaled(holder.holds, {percent, 100});
}

void label(Holder& holder, const Entry& entry) {
  holder.label = entry.id;
  holder.label_end = entry.event.label_end;
  holder.hold_label = entry.event.what == QLatin1String("hold");
  holder.superseded = holder.held_alone = false;
}

void supersede(Holder& holder, Kind kind) {
  holder.held_alone = kind == Kind::Hold && (holder.held_alone || !holder.superseded);
  holder.superseded = true;
}

void leave_freezer(Holder& holder) {
  holder.thawed = holder.thawed || holder.frozen;
  holder.frozen = false;
}

// What befalls one container; Used and Split are done by amount.
void befall_one(Holder& holder, const Entry& entry) {
  const Event& event = entry.event;
  switch (event.kind) {
    case Kind::Frozen:
      holder.frozen = true;
      break;
    case Kind::Thawed:
    case Kind::HotHeld:
    case Kind::TimeControl:
    case Kind::Reheated:
    case Kind::Finished:
      leave_freezer(holder);
      break;
    case Kind::Opened:
      holder.opened = true;
      break;
    case Kind::Counted:
      count(holder, event);
      break;
    case Kind::Dispatched:
      go(holder, event);
      break;
    case Kind::Arrived:
      if (event.accepted) holder.where = Where::AtSite;
      if (event.accepted) holder.arrived = event.at;
      holder.not_taken = !event.accepted;
      break;
    case Kind::Returned:
      holder.where = Where::Here;
      holder.not_taken = false;
      break;
    case Kind::Discarded:
      holder.where = Where::Discarded;
      holder.place.clear();
      break;
    case Kind::Printed:
    case Kind::Reprinted:
      label(holder, entry);
      break;
    case Kind::Voided:
      holder.label = {};
      holder.label_end.clear();
      holder.hold_label = false;
      supersede(holder, event.kind);  // it bears none, or one from before, which may say less
      break;
    default:
      break;
  }
}

// Where it is put besides. A hold names the place that it holds.
bool moves(Kind kind) {
  switch (kind) {
    case Kind::Hold:
    case Kind::Release:
    case Kind::Reading:
    case Kind::CorrectiveAction:
    case Kind::Correction:
    case Kind::RecallOpened:
    case Kind::RecallClosed:
      return false;
    default:
      return true;
  }
}

// Whether somebody had the food itself in hand.
bool handles(Kind kind) {
  switch (kind) {
    case Kind::Printed:
    case Kind::Reprinted:
    case Kind::Voided:
    case Kind::PrintAsked:
    case Kind::PrintSent:
    case Kind::PrintDone:
      return false;
    default:
      return moves(kind);
  }
}

}  // namespace

QString word(Where where) {
  switch (where) {
    case Where::Here:
      return QStringLiteral("here");
    case Where::Used:
      return QStringLiteral("used up");
    case Where::Dispatched:
      return QStringLiteral("dispatched");
    case Where::AtSite:
      return QStringLiteral("at its site");
    case Where::Discarded:
      return QStringLiteral("discarded");
    case Where::Missing:
      return QStringLiteral("missing");
  }
  return {};
}

problem::Error refusal(Code code, const Event& event, const QString& what, const QString& hint) {
  return {code, what, event.source, hint};
}

bool supersedes(Kind kind) {
  switch (kind) {
    case Kind::Frozen:
    case Kind::Thawed:
    case Kind::Opened:
    case Kind::Split:
    case Kind::HotHeld:
    case Kind::TimeControl:
    case Kind::Finished:
    case Kind::Reheated:
    case Kind::Hold:
    case Kind::Correction:
      return true;
    default:
      return false;
  }
}

void supersede_all(Lot& lot) {
  for (Holder& holder : lot.holders)
    if (holder.where != Where::Used && holder.where != Where::Discarded) supersede(holder, Kind::Correction);
}

void relabel_released(Lot& lot) {
  for (Holder& holder : lot.holders) {
    if (holder.held_alone || holder.hold_label) holder.superseded = holder.hold_label;
    holder.held_alone = false;
  }
}

bool befalls_containers(Kind kind) { return reach(kind).some; }

std::vector<Holder*> touched(Lot& lot, const Event& event, Errors& errors) {
  const Reach reached = reach(event.kind);
  std::vector<Holder*> found;
  add_named(lot, event, reached, found, errors);
  if (!event.containers.empty()) return found;
  for (Holder& holder : lot.holders)
    if (is_in(holder.where, reached.meant) && is_meant(holder, event)) found.push_back(&holder);
  if (found.empty() && reached.some)
    errors.push_back(refusal(Code::Conflict, event, none_found(lot, event),
                             QStringLiteral("correct the lot, or record first how it came back")));
  return found;
}

void befall(Lot& lot, const Entry& entry, const std::vector<Holder*>& holders) {
  const Event& event = entry.event;
  for (Holder* const holder : holders) {
    befall_one(*holder, entry);
    if (supersedes(event.kind)) supersede(*holder, event.kind);
    if (moves(event.kind) && !event.place.isEmpty() && holder->where == Where::Here) holder->place = event.place;
    if (handles(event.kind) && (!holder->seen.isValid() || holder->seen < event.at)) holder->seen = event.at;
    if (!lot.made || event.kind == Kind::Discarded) continue;
    const batch::UseBy* use_by = batch::use_by_of(*lot.made, static_cast<size_t>(holder->number) - 1);
    if (use_by) holder->frozen = use_by->form == batch::UseBy::Form::Frozen;
    if (use_by) holder->thawed = use_by->previously_frozen;
  }
}

}  // namespace lardiner::history
