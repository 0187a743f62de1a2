// The kinds of value in a body: instants, amounts, temperatures, dates of keeping; written one way, and read back
// strictly.
#include "history/event_json_values.h"

#include <QJsonArray>
#include <QJsonObject>
#include <QVariant>

#include "batch/json_instant.h"
#include "batch/phrases.h"

namespace lardiner::history {

using measure::Dimension;

namespace {

constexpr QLatin1String kEnd("end"), kKind("kind"), kTime("time");
constexpr QLatin1String kUseBy("use-by"), kBestBefore("best-before");

QLatin1String unit(Dimension dimension) {
  switch (dimension) {
    case Dimension::Mass:
      return QLatin1String("ng");
    case Dimension::Volume:
      return QLatin1String("ml-e11");
    case Dimension::Count:
      return QLatin1String("pieces-e6");
  }
  return {};
}

}  // namespace

void write(reader::JsonText& text, measure::Quantity quantity) {
  text.begin_object();
  text.key(unit(quantity.dimension));
  text.number(quantity.amount);
  text.end_object();
}

void write(reader::JsonText& text, const batch::StatedEnd& stated) {
  text.begin_object();
  text.key(kEnd);
  text.text(batch::instant_json(stated.end));
  text.key(kKind);
  text.word(stated.kind == book::EndKind::UseBy ? kUseBy : kBestBefore);
  if (!stated.is_date) {
    text.key(kTime);
    text.truth(true);
  }
  text.end_object();
}

void write(reader::JsonText& text, const measure::TemperatureLimit& limit) {
  text.begin_list();
  for (const measure::Temperature& reading : {limit.celsius, limit.fahrenheit}) text.text(batch::reading_text(reading));
  text.end_list();
}

std::optional<qint64> whole_of(const QJsonValue& value) {
  if (!value.isDouble()) return std::nullopt;
  // Qt keeps a whole number that 64 bits hold as an integer, any other as a double.
  const QVariant number = value.toVariant();
  if (number.metaType().id() != QMetaType::LongLong) return std::nullopt;
  return number.toLongLong();
}

std::optional<QDateTime> instant_of(const QJsonValue& value) { return batch::instant_from(value.toString()); }

std::optional<QDate> day_of(const QJsonValue& value) { return batch::day_from(value.toString()); }

std::optional<measure::Quantity> quantity_of(const QJsonValue& value) {
  const QJsonObject json = value.toObject();
  if (json.size() != 1) return std::nullopt;
  const std::optional<qint64> amount = whole_of(json.begin().value());
  if (!amount) return std::nullopt;
  for (const Dimension dimension : {Dimension::Mass, Dimension::Volume, Dimension::Count})
    if (json.begin().key() == unit(dimension)) return measure::Quantity{dimension, *amount};
  return std::nullopt;
}

std::optional<measure::Temperature> temperature_of(const QJsonValue& value) {
  const problem::Expected<measure::Temperature> read = measure::parse_temperature(value.toString());
  if (!read || batch::reading_text(*read) != value.toString()) return std::nullopt;
  return *read;
}

std::optional<measure::TemperatureLimit> limit_of(const QJsonValue& value) {
  const QJsonArray both = value.toArray();
  const auto celsius = temperature_of(both.at(0)), fahrenheit = temperature_of(both.at(1));
  if (both.size() != 2 || !celsius || !fahrenheit || celsius->scale != measure::Scale::Celsius ||
      fahrenheit->scale != measure::Scale::Fahrenheit)
    return std::nullopt;
  return measure::TemperatureLimit{*celsius, *fahrenheit};
}

std::optional<batch::StatedEnd> stated_of(const QJsonValue& value) {
  const QJsonObject json = value.toObject();
  const std::optional<QDateTime> end = instant_of(json[kEnd]);
  const QString kind = json[kKind].toString();
  const bool time = json.contains(kTime);
  if (!end || (kind != kUseBy && kind != kBestBefore) || (time && json[kTime] != QJsonValue(true))) return std::nullopt;
  if (json.size() != (time ? 3 : 2)) return std::nullopt;
  return batch::StatedEnd{*end, !time, kind == kUseBy ? book::EndKind::UseBy : book::EndKind::BestBefore};
}

}  // namespace lardiner::history
