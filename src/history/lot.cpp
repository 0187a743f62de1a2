// A lot as each further entry leaves it: all that can be refused is, before anything is changed.
#include "history/lot.h"

#include <algorithm>

#include "batch/phrases.h"
#include "history/corrected_input.h"
#include "history/deliveries.h"
#include "history/for_use.h"
#include "history/holders.h"
#include "history/shown.h"

namespace lardiner::history {

using batch::Happening;
using problem::Code;
using problem::Errors;

namespace {

std::optional<Happening> happening(Kind kind) {
  switch (kind) {
    case Kind::Frozen:
      return Happening::Frozen;
    case Kind::Thawed:
      return Happening::Thawed;
    case Kind::Opened:
      return Happening::Opened;
    case Kind::HotHeld:
      return Happening::HotHeld;
    case Kind::TimeControl:
      return Happening::TimeControl;
    case Kind::Reheated:
      return Happening::Reheated;
    case Kind::Finished:
      return Happening::Finished;
    case Kind::Discarded:
      return Happening::Discarded;
    default:
      return std::nullopt;
  }
}

bool cooling_not_shown(const Lot& lot) {
  if (!lot.made) return false;
  const batch::Cooling::State state = lot.made->batch.cooling.state;
  return state == batch::Cooling::State::Pending || state == batch::Cooling::State::Missed;
}

bool may_release(Kind kind) {
  return kind == Kind::Release || kind == Kind::RecallClosed || kind == Kind::Cooled || kind == Kind::CorrectiveAction;
}

bool is_free(const Lot& lot) {
  return lot.holds.empty() && lot.recalls.empty() && !cooling_not_shown(lot) &&
         (!lot.made || lot.made->batch.refused.empty());
}

// One entry on its way into a lot.
class Entering {
 public:
  Entering(Lot& lot, const Entry& entry) : lot_(lot), entry_(entry), event_(entry.event) {}

  Errors run() {
    if (came_through_input(lot_, event_)) return bound();
    if (is_declared_already()) return {};
    std::vector<Holder*> holders =
        event_.kind == Kind::Received ? std::vector<Holder*>() : touched(lot_, event_, errors_);
    check(holders);
    if (errors_.empty()) errors_ = befall_batch(holders);
    if (errors_.empty()) apply(holders);
    if (errors_.empty() && may_release(event_.kind) && is_free(lot_)) relabel_released(lot_);
    return std::move(errors_);
  }

 private:
  // A batch that was recorded with what a correction adds is as it was.
  bool is_declared_already() const {
    return lot_.made && !event_.adds.isEmpty() &&
           std::all_of(event_.adds.begin(), event_.adds.end(),
                       [&](const QString& substance) { return declares(lot_.made->batch.declared, substance); });
  }

  // What was made of a lot takes what there is of its date.
  Errors bound() {
    const std::optional<batch::StatedEnd> end = end_given(event_);
    if (!lot_.not_after || end->end < lot_.not_after->end) lot_.not_after = end;
    supersede_all(lot_);
    return {};
  }

  void refuse(Code code, const QString& what, const QString& hint) {
    errors_.push_back(refusal(code, event_, what, hint));
  }

  void check(const std::vector<Holder*>& holders) {
    check_time();
    switch (event_.kind) {
      case Kind::Made:
        return refuse(Code::Duplicate,
                      QStringLiteral("lot %1 is recorded already, as entry %2").arg(lot_.code, lot_.entry.text()),
                      QStringLiteral("what was recorded is not edited: record a correction of that entry"));
      case Kind::Received:
        return check_delivery();
      case Kind::Used:
        return check_used();
      case Kind::Split:
        if (errors_.empty()) errors_ = check_split(lot_, event_, holders);
        if (errors_.empty() && event_.quantity) check_dimension();
        return;
      case Kind::Reprinted:
        return check_reprint(holders);
      case Kind::Release:
        return check_release();
      case Kind::RecallClosed:
        return check_recall();
      case Kind::Correction:
        return check_correction(holders);
      default:
        return check_state(holders);
    }
  }

  // What is written of a lot, and not done to it, may be written at any time.
  void check_time() {
    const bool done = happening(event_.kind) || event_.kind == Kind::Moved || event_.kind == Kind::Cooled ||
                      event_.kind == Kind::Split || event_.kind == Kind::Used || event_.kind == Kind::Counted ||
                      event_.kind == Kind::Dispatched || event_.kind == Kind::Arrived || event_.kind == Kind::Returned;
    if (!done || event_.at >= lot_.began) return;
    refuse(Code::Range,
           QStringLiteral("%1 at %2, before lot %3 was there at %4")
               .arg(word(event_.kind), batch::instant_text(event_.at, lot_.zone), lot_.code,
                    batch::instant_text(lot_.began, lot_.zone)),
           QStringLiteral("correct the time of one of the two"));
  }

  void check_delivery() {
    if (!lot_.received) {
      refuse(Code::Conflict, QStringLiteral("lot %1 was made here").arg(lot_.code),
             QStringLiteral("correct the lot; what came back is \"returned\""));
    } else if (event_.supplier_item != lot_.supplier_item) {
      refuse(
          Code::Conflict,
          QStringLiteral("lot %1 was received before as another supplier item than \"%2\"")
              .arg(lot_.code, event_.supplier_item),
          QStringLiteral("correct the supplier item, or tell the lots of two suppliers apart by a letter behind them"));
    } else if (event_.quantity) {
      check_dimension();
    }
  }

  void check_used() {
    if (!event_.quantity)
      refuse(Code::Missing, QStringLiteral("how much of lot %1 was used is not written").arg(lot_.code),
             QStringLiteral("write its quantity"));
    else
      check_dimension();
  }

  void check_dimension() {
    if (event_.quantity->dimension == lot_.quantity.dimension) return;
    refuse(Code::Conflict, QStringLiteral("lot %1 is not recorded in such a unit").arg(lot_.code),
           QStringLiteral("write the quantity as it was made or received: by weight, by volume or in pieces"));
  }

  void check_reprint(const std::vector<Holder*>& holders) {
    for (const Holder* const holder : holders) {
      if (holder->superseded)
        refuse(Code::Unsafe,
               QStringLiteral("the label of container %1 of lot %2 is superseded").arg(holder->number).arg(lot_.code),
               QStringLiteral("print a new one"));
      else if (!holder->label.valid() || holder->label_end != event_.label_end)
        refuse(Code::Conflict,
               QStringLiteral("container %1 of lot %2 has no such label").arg(holder->number).arg(lot_.code),
               QStringLiteral("print a new one"));
    }
  }

  void check_release() {
    const bool held =
        std::any_of(lot_.holds.begin(), lot_.holds.end(), [&](const HoldOn& hold) { return hold.entry == event_.of; });
    if (!held)
      refuse(Code::Conflict, QStringLiteral("entry %1 does not hold lot %2").arg(event_.of.text(), lot_.code),
             QStringLiteral("name the entry that put it on hold, as its history shows it"));
    if (cooling_not_shown(lot_))
      refuse(Code::Unsafe, QStringLiteral("lot %1 is not released: %2").arg(lot_.code, lot_.made->batch.cooling.why),
             QStringLiteral("record the readings of its cooling and what was done, or discard it"));
  }

  void check_recall() {
    if (std::find(lot_.recalls.begin(), lot_.recalls.end(), event_.of) != lot_.recalls.end()) return;
    refuse(Code::Conflict, QStringLiteral("entry %1 is no open recall of lot %2").arg(event_.of.text(), lot_.code),
           QStringLiteral("name the entry that opened it, as its history shows it"));
  }

  // One date at least must become earlier, and none can become later: see `shown`.
  void check_correction(const std::vector<Holder*>& holders) {
    if (!event_.ends) return;
    const bool earlier = std::any_of(holders.begin(), holders.end(), [&](const Holder* holder) {
      const std::optional<QDateTime> end = shown(lot_, *holder).end;
      return !end || event_.ends->end < *end;
    });
    const bool corrected = lot_.not_after && lot_.not_after->end <= event_.ends->end;
    if (earlier && !corrected) return;
    refuse(Code::Unsafe, QStringLiteral("the date of lot %1 would not be earlier").arg(lot_.code),
           QStringLiteral("a correction only shortens; for a longer life correct the record and make it again"));
  }

  // What only a record can date is not done to a supplier's package.
  void check_state(const std::vector<Holder*>& holders) {
    if (lot_.made) return;
    switch (event_.kind) {
      case Kind::Cooled:
      case Kind::HotHeld:
      case Kind::TimeControl:
      case Kind::Reheated:
      case Kind::Finished:
        return refuse(Code::Conflict,
                      QStringLiteral("lot %1 is as it was bought, and cannot be %2").arg(lot_.code, word(event_.kind)),
                      QStringLiteral("record what was made of it"));
      case Kind::Frozen:
        return check_frozen(holders, true);
      case Kind::Thawed:
        return check_frozen(holders, false);
      default:
        return;
    }
  }

  void check_frozen(const std::vector<Holder*>& holders, bool already) {
    for (const Holder* const holder : holders)
      if (holder->frozen == already)
        refuse(Code::Conflict,
               (already ? QStringLiteral("container %1 of lot %2 is frozen already")
                        : QStringLiteral("container %1 of lot %2 is not frozen"))
                   .arg(holder->number)
                   .arg(lot_.code),
               QStringLiteral("correct the numbers of the containers"));
  }

  // To all that is left, `batch` is told so: a reheat of all of it may mend a cooling.
  std::vector<int> numbers(const std::vector<Holder*>& holders) const {
    const auto left = std::count_if(lot_.made->batch.containers.begin(), lot_.made->batch.containers.end(),
                                    [](const batch::Container& container) { return !container.discarded; });
    std::vector<int> numbers;
    if (static_cast<std::ptrdiff_t>(holders.size()) == left) return numbers;
    for (const Holder* const holder : holders) numbers.push_back(holder->number);
    return numbers;
  }

  Errors befall_batch(const std::vector<Holder*>& holders) {
    if (!lot_.made) return {};
    std::optional<Happening> what = happening(event_.kind);
    // Whoever divides a container opens it.
    const bool opens = event_.kind == Kind::Split && lot_.made->when_opened && !holders.front()->opened;
    if (opens) what = Happening::Opened;
    if (!what) return {};
    batch::Event befalls;
    befalls.what = *what;
    befalls.at = event_.at;
    befalls.temperature = event_.temperature;
    befalls.seconds = event_.seconds;
    befalls.containers = numbers(holders);
    befalls.by = event_.by;
    befalls.place = event_.source;
    Errors errors = batch::happen(*lot_.made, {befalls});
    if (errors.empty() && opens) holders.front()->opened = true;
    // A reheat may be what mends a missed cooling.
    if (errors.empty() && event_.kind == Kind::Reheated) batch::judge_at(*lot_.made, entry_.recorded_at);
    return errors;
  }

  void apply(const std::vector<Holder*>& holders) {
    befall(lot_, entry_, holders);
    switch (event_.kind) {
      case Kind::Received:
        return add_delivery();
      case Kind::Cooled:
      case Kind::CorrectiveAction:
        return cool();
      case Kind::Used:
        return use(holders);
      case Kind::Split:
        return split(lot_, event_, *holders.front());
      case Kind::Hold:
        return hold();
      case Kind::Returned:
        if (event_.reason != QLatin1String("released")) hold();
        return;
      case Kind::Release:
        std::erase_if(lot_.holds, [&](const HoldOn& one) { return one.entry == event_.of; });
        return;
      case Kind::RecallOpened:
        if (std::find(lot_.recalls.begin(), lot_.recalls.end(), entry_.id) == lot_.recalls.end())
          lot_.recalls.push_back(entry_.id);
        return;
      case Kind::RecallClosed:
        std::erase(lot_.recalls, event_.of);
        return;
      case Kind::Correction:
        return correct();
      default:
        return;
    }
  }

  // Of two dates on packages of one lot the earlier counts for all of it.
  void add_delivery() {
    add_packages(lot_, event_);
    if (!event_.accepted) return;
    std::optional<batch::StatedEnd>& stated = lot_.received->stated;
    if (event_.stated && (!stated || event_.stated->end < stated->end)) stated = event_.stated;
    lot_.received->tcs = lot_.received->tcs || event_.tcs;
  }

  void cool() {
    if (!lot_.made) return;
    std::vector<batch::CoolReading> readings;
    if (event_.kind == Kind::Cooled && event_.temperature)
      readings.push_back({event_.at, *event_.temperature, event_.source});
    const bool action = event_.kind == Kind::CorrectiveAction;
    batch::cool(*lot_.made, readings, action ? event_.action : QString(), action ? event_.by : QString(),
                entry_.recorded_at);
  }

  void use(const std::vector<Holder*>& holders) {
    std::vector<int> numbers;
    for (const Holder* const holder : holders) numbers.push_back(holder->number);
    take(lot_, *event_.quantity, numbers, event_.at);
    lot_.used = lot_.used + *event_.quantity;
  }

  void hold() {
    lot_.holds.push_back(
        {entry_.id, event_.at, event_.reason, event_.by, event_.kind == Kind::Hold ? event_.place : QString()});
  }

  void correct() {
    if (event_.ends && (!lot_.not_after || event_.ends->end < lot_.not_after->end)) lot_.not_after = event_.ends;
    for (const QString& substance : event_.adds)
      if (!lot_.further_allergens.contains(substance)) lot_.further_allergens += substance;
  }

  Lot& lot_;
  const Entry& entry_;
  const Event& event_;
  Errors errors_;
};

}  // namespace

Errors happen(Lot& lot, const Entry& entry) { return Entering(lot, entry).run(); }

}  // namespace lardiner::history
