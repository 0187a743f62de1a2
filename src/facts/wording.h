// Amounts, temperatures and times in one language, in the order of the kitchen's units; for labels and sheets.
#pragma once

#include <QString>

#include "measure/temperature.h"
#include "measure/text.h"
#include "words/words.h"

namespace lardiner::facts {

/// How things are said: the language outlives it.
struct Wording {
  const words::Language& words;
  measure::System units = measure::System::Metric;
  measure::System weights = units;  ///< of a sheet those that the kitchen's scale shows

  QString word(const char* key) const { return words.word(QString::fromLatin1(key)); }
  QString sentence(const char* key, const QStringList& values) const {
    return words.sentence(QString::fromLatin1(key), values);
  }
};

/// "5 °C (41 °F)" in the order of the kitchen's units, with no-break spaces.
QString both_scales(const Wording& wording, const measure::TemperatureLimit& limit);

/// "3.5 °C": a reading as it was taken, in its own scale alone, by which it is judged.
QString as_read(const Wording& wording, measure::Temperature reading);

/// How the language writes amounts; a figure and its unit stay on one line.
measure::Notation notation(const Wording& wording);

/// "500 g (1 lb 1.6 oz)" in the order of `weights`, or of volumes in that of `units`; pieces as "24 pieces".
QString both_systems(const Wording& wording, measure::Quantity quantity);
QString pieces(const Wording& wording, measure::Quantity count);

/// "16 to 18 min", "30 s", "1 h 30 min".
QString lasting(const Wording& wording, int seconds);
QString lasting(const Wording& wording, int least_seconds, int most_seconds);

/// An entry or a species of an allergen list: "tree nuts", "cod".
QString allergen_word(const Wording& wording, const QString& id);

/// The text with no-break spaces: it stays on one line.
QString unbroken(QString text);

}  // namespace lardiner::facts
