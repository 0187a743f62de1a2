// Lengths of time as people write them, in whole seconds.
#pragma once

#include <QString>

#include "problem/error.h"

namespace lardiner::measure {

/// A number of seconds of `15 s`, `2 min`, `4 h`, `1.5 h`, `1 h 30 min`, `0 s`. Refuses negatives, parts of a second,
/// days (they are counted on the calendar, not elapsed) and over 400 days.
problem::Expected<qint64> parse_seconds(const QString& text);

}  // namespace lardiner::measure
