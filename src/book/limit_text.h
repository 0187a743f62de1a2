// Limits as codes and kitchens write them: "165 °F (74 °C) 15 s".
#pragma once

#include <QString>
#include <optional>

#include "book/rule_set.h"
#include "book/shelf_life.h"
#include "measure/temperature.h"
#include "problem/error.h"

namespace lardiner::book {

/// Which side of a limit is safe.
enum class Bound { AtLeast, AtMost };

/// A limit as written: one or both scales, and perhaps a time held ("instant" is 0 s).
struct WrittenLimit {
  measure::TemperatureLimit temperature;
  std::optional<int> seconds;
  bool both_scales = false;
};

/// Reads `165 °F (74 °C) 15 s`, `74 °C instant`, `41 °F`. Where one scale is written the other is the whole degree on
/// the safe side of it. Two figures that are a degree Celsius or more apart, or of one scale, are refused. The error
/// has no place: the caller gives it one.
problem::Expected<WrittenLimit> parse_limit(const QString& text, Bound safe);

QString text(const measure::TemperatureLimit& limit);  ///< "165 °F (74 °C)"
QString text(const TimeAtTemperature& way);            ///< "165 °F (74 °C) 15 s", "158 °F (70 °C) instant"
QString text(const Length& length);                    ///< "7 days", "4 h", "1 h 30 min", "2 months"

}  // namespace lardiner::book
