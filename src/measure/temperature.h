// Temperatures as read from a thermometer, and limits as a code prints them in both scales.
#pragma once

#include <QString>
#include <compare>

#include "measure/seconds.h"
#include "problem/error.h"

namespace lardiner::measure {

enum class Scale { Celsius, Fahrenheit };

/// A temperature as somebody wrote it: tenths of a degree of its own scale.
struct Temperature {
  int tenths = 0;
  Scale scale = Scale::Celsius;

  friend bool operator==(Temperature, Temperature) = default;
};

/// Exact comparison across scales (9/5 and 32 in integers).
std::strong_ordering compare(Temperature a, Temperature b);

/// Whole degrees of the other scale, rounded half up, for display only.
Temperature converted(Temperature t, Scale to);

/// A limit in both scales as its source prints them: 135 °F (57 °C). The two need not be equal to the tenth, so a
/// reading is judged by the figure of its own scale.
struct TemperatureLimit {
  Temperature celsius{0, Scale::Celsius};
  Temperature fahrenheit{0, Scale::Fahrenheit};

  friend bool operator==(const TemperatureLimit&, const TemperatureLimit&) = default;
};

/// True when `reading` is at or above, at or below, the limit's figure in the reading's scale.
bool at_least(Temperature reading, const TemperatureLimit& limit);
bool at_most(Temperature reading, const TemperatureLimit& limit);

/// Reads `165 °F`, `165F`, `74 C`, `-18 °C`, `73.5 C`, `73,5 C`. Refuses a missing scale, more than one decimal, and
/// anything below -60 °C or above 400 °C as absurd. The error has no place: the caller gives it one.
problem::Expected<Temperature> parse_temperature(const QString& text);

}  // namespace lardiner::measure
