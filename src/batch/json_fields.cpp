// Single values of the ledger's text, exact and without floats.
#include "batch/json_fields.h"

#include <algorithm>
#include <array>
#include <cstdlib>

#include "batch/json_instant.h"
#include "reader/quote.h"

namespace lardiner::batch {

using problem::Code;

namespace {

constexpr std::array kAmounts = {"ng", "ml-e11", "pieces-e6"};  // in the order of measure::Dimension

QString text_of(const measure::Temperature& value) {
  const int tenths = std::abs(value.tenths);
  QString text = value.tenths < 0 ? QStringLiteral("-") : QString();
  text += QString::number(tenths / 10);
  if (tenths % 10 != 0) text += QLatin1Char('.') + QString::number(tenths % 10);
  return text + (value.scale == measure::Scale::Celsius ? QStringLiteral(" °C") : QStringLiteral(" °F"));
}

// A whole number that is written as one.
std::optional<qint64> whole(const QJsonValue& json) {
  constexpr qint64 kLeast = std::numeric_limits<qint64>::min();
  if (!json.isDouble()) return std::nullopt;
  const qint64 value = json.toInteger(kLeast);
  return value == kLeast ? std::nullopt : std::optional(value);
}

std::optional<measure::Temperature> temperature(const QJsonValue& json) {
  const problem::Expected<measure::Temperature> read = measure::parse_temperature(json.toString());
  if (!read || text_of(*read) != json.toString()) return std::nullopt;
  return *read;
}

std::optional<measure::Ratio> ratio(const QString& text) {
  const QStringList parts = text.split(QLatin1Char('/'));
  if (parts.size() != 2) return std::nullopt;
  bool num_ok = false;
  bool den_ok = false;
  const qint64 num = parts[0].toLongLong(&num_ok);
  const qint64 den = parts[1].toLongLong(&den_ok);
  if (!num_ok || !den_ok || den < 1) return std::nullopt;
  return measure::Ratio(num, den);
}

}  // namespace

void Writing::put(const QStringList& values) {
  text_.begin_list();
  for (const QString& value : values) put(value);
  text_.end_list();
}

void Writing::put(const QDateTime& value) { put(instant_json(value)); }

void Writing::put(const QDate& value) { put(value.toString(Qt::ISODate)); }

void Writing::put(const measure::Temperature& value) { put(text_of(value)); }

void Writing::put(const measure::TemperatureLimit& value) {
  put(QStringList{text_of(value.celsius), text_of(value.fahrenheit)});
}

void Writing::put(const measure::Quantity& value) {
  text_.begin_object();
  text_.key(QLatin1String(kAmounts[static_cast<size_t>(value.dimension)]));
  text_.number(value.amount);
  text_.end_object();
}

void Writing::put(const measure::Ratio& value) { put(QStringLiteral("%1/%2").arg(value.num()).arg(value.den())); }

void ReadingOf::refuse(Code code, const QString& what, const QString& hint) {
  if (!error) error = problem::Error{code, what, {}, hint};
}

QString Path::text() const {
  if (!key) return outer->text() + QStringLiteral("[%1]").arg(index);
  return outer ? outer->text() + QLatin1Char('.') + QLatin1String(key) : QString::fromLatin1(key);
}

QJsonValue Reading::raw(const char* key) {
  const QJsonValue there = object_.value(QLatin1String(key));
  const QLatin1String name(key);
  if (!there.isUndefined() && std::find(asked_.begin(), asked_.end(), name) == asked_.end()) asked_.push_back(name);
  return there;
}

void Reading::end() {
  if (static_cast<qsizetype>(asked_.size()) == object_.size()) return;
  for (const QString& key : object_.keys())
    if (std::find(asked_.begin(), asked_.end(), key) == asked_.end())
      common_.refuse(Code::Unknown, path_.text() + QLatin1Char('.') + key + QStringLiteral(" is not known here"),
                     QStringLiteral("read it with the version of the program that wrote it"));
}

void Reading::wrong(const Path& path, const QString& kind) {
  common_.refuse(Code::Malformed, path.text() + QStringLiteral(" is not ") + kind);
}

QString Reading::one_of(std::span<const char* const> words) {
  QStringList quoted;
  for (const char* word : words) quoted += reader::quoted(QString::fromLatin1(word));
  return QStringLiteral("one of ") + quoted.join(QStringLiteral(", "));
}

void Reading::take(const QJsonValue& json, const Path& path, QString& value) {
  if (!json.isString()) return wrong(path, QStringLiteral("a text"));
  value = json.toString();
}

void Reading::take(const QJsonValue& json, const Path& path, QStringList& values) {
  if (!json.isArray()) return wrong(path, QStringLiteral("a list"));
  const QJsonArray array = json.toArray();
  for (qsizetype i = 0; i < array.size(); ++i) take(array[i], Path{&path, nullptr, i}, values.emplaceBack());
}

void Reading::take(const QJsonValue& json, const Path& path, bool& value) {
  if (!json.isBool()) return wrong(path, QStringLiteral("true or false"));
  value = json.toBool();
}

void Reading::take(const QJsonValue& json, const Path& path, int& value) {
  const std::optional<qint64> number = whole(json);
  if (!number || *number != static_cast<int>(*number)) return wrong(path, QStringLiteral("a whole number"));
  value = static_cast<int>(*number);
}

void Reading::take(const QJsonValue& json, const Path& path, QDateTime& value) {
  const std::optional<QDateTime> read = instant_from(json.toString());
  if (!read) return wrong(path, QStringLiteral("an instant in UTC, as 2026-11-25T12:40:00Z"));
  value = read->toTimeZone(common_.zone);
}

void Reading::take(const QJsonValue& json, const Path& path, QDate& value) {
  const std::optional<QDate> read = day_from(json.toString());
  if (!read) return wrong(path, QStringLiteral("a day, as 2026-11-25"));
  value = *read;
}

void Reading::take(const QJsonValue& json, const Path& path, measure::Temperature& value) {
  const std::optional<measure::Temperature> read = temperature(json);
  if (!read) return wrong(path, QStringLiteral("a temperature, as 41 °F"));
  value = *read;
}

void Reading::take(const QJsonValue& json, const Path& path, measure::TemperatureLimit& value) {
  const QJsonArray both = json.toArray();
  const std::optional<measure::Temperature> celsius = temperature(both.at(0));
  const std::optional<measure::Temperature> fahrenheit = temperature(both.at(1));
  if (both.size() != 2 || !celsius || !fahrenheit || celsius->scale != measure::Scale::Celsius ||
      fahrenheit->scale != measure::Scale::Fahrenheit)
    return wrong(path, QStringLiteral("a limit in both scales, as [\"5 °C\", \"41 °F\"]"));
  value = {*celsius, *fahrenheit};
}

void Reading::take(const QJsonValue& json, const Path& path, measure::Quantity& value) {
  const QJsonObject object = json.toObject();
  for (size_t i = 0; i < kAmounts.size() && object.size() == 1; ++i) {
    const std::optional<qint64> amount = whole(object.value(QLatin1String(kAmounts[i])));
    if (!amount) continue;
    value = {static_cast<measure::Dimension>(i), *amount};
    return;
  }
  wrong(path, QStringLiteral("an amount in ng, ml-e11 or pieces-e6"));
}

void Reading::take(const QJsonValue& json, const Path& path, measure::Ratio& value) {
  const std::optional<measure::Ratio> read = ratio(json.toString());
  if (!read) return wrong(path, QStringLiteral("a fraction, as 3/4"));
  value = *read;
}

}  // namespace lardiner::batch
