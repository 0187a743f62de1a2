// The kinds of value in a body: instants, amounts, temperatures, dates of keeping; written one way, and read back
// strictly.
#pragma once

#include <QDateTime>
#include <QJsonValue>
#include <QString>
#include <optional>

#include "batch/record.h"
#include "measure/quantity.h"
#include "measure/temperature.h"
#include "reader/json_text.h"

namespace lardiner::history {

/// {"ng"|"ml-e11"|"pieces-e6": whole number}
void write(reader::JsonText& text, measure::Quantity quantity);
/// {"end": instant, "kind": "use-by"|"best-before"}, with "time": true where it is no date.
void write(reader::JsonText& text, const batch::StatedEnd& stated);
/// [reading in °C, reading in °F]: "5 °C", "41 °F".
void write(reader::JsonText& text, const measure::TemperatureLimit& limit);

// Nothing for any value that the functions above would not write.
std::optional<QDateTime> instant_of(const QJsonValue& value);
std::optional<QDate> day_of(const QJsonValue& value);
std::optional<measure::Quantity> quantity_of(const QJsonValue& value);
std::optional<measure::Temperature> temperature_of(const QJsonValue& value);
std::optional<measure::TemperatureLimit> limit_of(const QJsonValue& value);
std::optional<batch::StatedEnd> stated_of(const QJsonValue& value);
/// A whole number that 64 bits hold.
std::optional<qint64> whole_of(const QJsonValue& value);

}  // namespace lardiner::history
