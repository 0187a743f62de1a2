// Amounts in reports: as people write them, and as JSON with the exact figure.
#pragma once

#include <QJsonObject>
#include <optional>

#include "measure/text.h"

namespace lardiner::command {

/// As measure::display; pieces with their word: "24 pieces".
QString amount_text(measure::Quantity amount, measure::System system);

/// {"amount": "4.2 kg", "grams": 4200}: with "millilitres" or "pieces" instead of "grams" for what is measured so. The
/// figure is exact as far as a double is.
QJsonObject json_of(measure::Quantity amount, measure::System system);

double number(measure::Ratio ratio);

/// An object of a report in the making. What is not there is left out: an empty text, an amount that is not known; a
/// count that is not known is null.
class JsonObject {
 public:
  explicit JsonObject(measure::System system) : system_(system) {}

  JsonObject& put(const char* key, const QJsonValue& value);
  JsonObject& put(const char* key, const QString& text);
  JsonObject& put(const char* key, measure::Quantity amount);
  JsonObject& put(const char* key, std::optional<measure::Quantity> amount);
  JsonObject& put(const char* key, std::optional<measure::Ratio> ratio);
  JsonObject& put(const char* key, std::optional<std::int64_t> count);

  const QJsonObject& json() const { return json_; }

 private:
  measure::System system_;
  QJsonObject json_;
};

}  // namespace lardiner::command
