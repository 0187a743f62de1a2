// The containers of a lot that an event befalls, and what befalls them; for lot.cpp and its parts.
#pragma once

#include <vector>

#include "history/lot.h"

namespace lardiner::history {

/// An error at the event's place.
problem::Error refusal(problem::Code code, const Event& event, const QString& what, const QString& hint);

/// Those that the event names; where it names none, those of the lot that it can befall (in the kitchen; on their way,
/// for Arrived; away, for Returned). A number that there is not, or of a container that it cannot befall, is added to
/// `errors`, and so is an event that finds none where it must.
std::vector<Holder*> touched(Lot& lot, const Event& event, problem::Errors& errors);

/// Whether an event of this kind befalls containers, and must find one.
bool befalls_containers(Kind kind);

/// Place, whereabouts, state, count and label of the containers as the event leaves them. REQUIRES: checked.
void befall(Lot& lot, const Entry& entry, const std::vector<Holder*>& holders);

/// Divides one container: the parts are added to `lot` (and to its fixed facts), with the date of the one they came
/// from. Errors: more than one container, no room in it for such parts, another dimension.
problem::Errors check_split(const Lot& lot, const Event& event, const std::vector<Holder*>& holders);
void split(Lot& lot, const Event& event, const Holder& parent);

/// Whether the event makes the labels of what it touches untrue.
bool supersedes(Kind kind);

/// The labels of all that is left of the lot are untrue.
void supersede_all(Lot& lot);

/// The labels once nothing holds the lot any more: those from before a hold are true again, HOLD labels are not.
void relabel_released(Lot& lot);

/// `total` in `count` parts that differ by one smallest unit at the most and sum to it.
std::vector<measure::Quantity> shared(measure::Quantity total, int count);

}  // namespace lardiner::history
