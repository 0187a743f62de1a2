// The limits that run for one container, each with its clock; for use_by.cpp and its parts.
#pragma once

#include <QDate>
#include <QDateTime>
#include <QString>
#include <optional>
#include <vector>

#include "batch/use_by.h"
#include "batch/use_by_timeline.h"

namespace lardiner::batch {

/// One rule or cap with its end.
struct Limit {
  QString text;
  QString authority;
  book::EndKind kind = book::EndKind::UseBy;
  QDateTime start;
  bool stops_frozen = false;   ///< its clock stands still in the freezer
  bool frozen_before = false;  ///< what it limits was in a freezer before this timeline
  std::optional<QDate> last;   ///< the last good day, of a limit that ends with a calendar day
  QDateTime end;               ///< the first instant past
  int days_left = 0;           ///< of a container that is frozen: days from thawing on
};

/// `length` from `start` in the zone, under `name`.
Limit make_limit(const QString& name, const book::Length& length, const QDateTime& start, const QTimeZone& zone);

/// The limits of all states that the container is or has been in, as if it had never been frozen. What cannot be
/// counted, and a TCS food without a limit for its state, is added to `errors`.
std::vector<Limit> gather_limits(const Question& question, const Timeline& timeline, problem::Errors& errors);

/// The longer time control applies: the food started cold and its own rule asks for more than the shorter one.
bool longer_time_control(const Question& question, const Event& start);

/// Whether a cap limits this food, or only warns: a best-before of a shelf-stable input in a food that is TCS.
bool caps(const Cap& cap, const Question& question);

/// "tomatillo salsa, lot A26329SAL01K: its own use-by"
QString cap_text(const Cap& cap);

}  // namespace lardiner::batch
