// Amounts in reports: as people write them, and as JSON with the exact figure.
#include "command/amount_json.h"

namespace lardiner::command {

using measure::Dimension;
using measure::Unit;

namespace {

struct Measured {
  const char* key;
  Unit unit;
};

Measured measured(Dimension dimension) {
  switch (dimension) {
    case Dimension::Mass:
      return {"grams", Unit::Gram};
    case Dimension::Volume:
      return {"millilitres", Unit::Millilitre};
    case Dimension::Count:
      return {"pieces", Unit::Piece};
  }
  return {"pieces", Unit::Piece};
}

}  // namespace

double number(measure::Ratio ratio) { return static_cast<double>(ratio.num()) / static_cast<double>(ratio.den()); }

QString amount_text(measure::Quantity amount, measure::System system) {
  const QString text = measure::display(amount, system);
  if (amount.dimension != Dimension::Count) return text;
  return text + (text == QLatin1String("1") ? QStringLiteral(" piece") : QStringLiteral(" pieces"));
}

QJsonObject json_of(measure::Quantity amount, measure::System system) {
  const Measured as = measured(amount.dimension);
  return {{QStringLiteral("amount"), amount_text(amount, system)},
          {QString::fromLatin1(as.key), number(measure::in_unit(amount, as.unit))}};
}

JsonObject& JsonObject::put(const char* key, const QJsonValue& value) {
  json_.insert(QString::fromLatin1(key), value);
  return *this;
}

JsonObject& JsonObject::put(const char* key, const QString& text) {
  return text.isEmpty() ? *this : put(key, QJsonValue(text));
}

JsonObject& JsonObject::put(const char* key, measure::Quantity amount) {
  return put(key, QJsonValue(json_of(amount, system_)));
}

JsonObject& JsonObject::put(const char* key, std::optional<measure::Quantity> amount) {
  return amount ? put(key, *amount) : *this;
}

JsonObject& JsonObject::put(const char* key, std::optional<measure::Ratio> ratio) {
  return ratio ? put(key, QJsonValue(number(*ratio))) : *this;
}

JsonObject& JsonObject::put(const char* key, std::optional<std::int64_t> count) {
  return put(key, count ? QJsonValue(static_cast<qint64>(*count)) : QJsonValue());
}

}  // namespace lardiner::command
