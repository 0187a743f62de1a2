// A batch's facts as they are fixed when it is recorded: with the limits they came from, so that what happens to it
// afterwards is dated without the book, and a later edit of the book changes no old lot.
#pragma once

#include <QDateTime>
#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "batch/batch.h"
#include "batch/carried.h"
#include "book/rule_set.h"

namespace lardiner::batch {

/// The limits that the cooling of a lot is held to.
struct CoolingLimits {
  bool from_ambient = false;  ///< of food made from room-temperature ingredients: no start temperature, no reheating
  std::vector<book::CoolingStage> stages;
  std::vector<book::ReheatMinimum> reheat;  ///< what a corrective reheat must meet
  book::Authority authority;
};

struct Fixed {
  /// As `compute` gives it, with one difference: where it is refused, its containers have no use-by, but `questions`
  /// and `question_of` are there whenever a date could be told, so that a lot whose cooling is still to be shown gets
  /// its date as soon as it is.
  Batch batch;
  QString name;                     ///< of the item in the book's first language, for lists; labels take the book's
  bool product = true;              ///< of Deed::Made; else a package of an ingredient
  bool tcs = true;                  ///< unknown counts as yes
  std::vector<Question> questions;  ///< one for each timeline and package that its containers have
  std::vector<UseBy> withheld;      ///< while it is refused: the use-by that each question answers with
  std::vector<int> question_of;     ///< container (by its place in batch.containers) -> index into `questions`
  std::vector<Carried> carried;
  QStringList made_of;
  QString still;  ///< the class of food (CookMinimum::food) whose minimum a later cook must meet; empty: none
  std::optional<QDateTime> cooked_at;
  std::optional<Rule> when_opened;       ///< a rule that begins to hold once a container is opened
  std::optional<CoolingLimits> cooling;  ///< absent: it is not cooled here
};

/// The facts of a batch while events befall it. Every `UseBy` comes from `use_by` on the fixed question and the whole
/// timeline: there is no other way to a date.
///
/// `happen`: `events` (numbers of containers from 1; none: all that are not discarded) befall it besides those it has.
/// Containers that share a timeline share a question. Errors: those of `use_by`, at the events' places; a container
/// that there is not; then nothing is changed. None is an empty list. Fast: it is run for every entry of a ledger.
problem::Errors happen(Fixed& fixed, const std::vector<Event>& events);

/// After further core readings of its cooling, and what was done about a missed limit (empty: nothing said).
/// `now` decides between pending and missed, as in `cooling`. The refusal of the batch for its cooling goes when the
/// limits are met, and comes when they are missed; other refusals stay.
void cool(Fixed& fixed, const std::vector<CoolReading>& readings, const QString& corrective_action,
          const QString& corrective_by, const QDateTime& now);

/// Its cooling judged again at `now`, when nothing else has happened: what was pending may be missed by then.
void judge_at(Fixed& fixed, const QDateTime& now);

/// When the next stage of its cooling must be reached, while it is pending; absent otherwise.
std::optional<QDateTime> cooling_due(const Fixed& fixed);

/// The use-by of a container (by its place in batch.containers); nullptr where no date can be told (refused for more
/// than its cooling). Of a lot that is refused for its cooling alone it is the date that it will have.
const UseBy* use_by_of(const Fixed& fixed, size_t container);

/// Refuses it, at the place of `error`, for something that went in: it has no date from then on.
void refuse_input(Fixed& fixed, const problem::Error& error);

/// Whether nothing but its cooling keeps it from being released.
bool held_for_cooling_alone(const Fixed& fixed);

}  // namespace lardiner::batch
