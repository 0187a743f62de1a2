// The parts of a batch record: inputs, readings, events, containers; each a row of its own in CSV, a table in JSON.
#pragma once

#include "batch/read_records_values.h"

namespace lardiner::batch {

/// One part as it stands in the file. Faults are added to `errors`, and nothing is returned then.
struct WrittenPart {
  const reader::Value& table;
  bool row = false;  ///< a further row of a CSV file, which has the record's number and what it is besides
  problem::Errors& errors;
};

/// REQUIRES: record.item, made_at, made_to as read. `product` is nullptr when it is not known.
std::optional<Input> read_input(const WrittenPart& part, const Reading& reading, const Record& record,
                                const book::Product* product);
std::optional<CookReading> read_cook_reading(const WrittenPart& part, const Reading& reading, const Record& record);
std::optional<CoolReading> read_cool_reading(const WrittenPart& part, const Reading& reading, const Record& record);
/// Numbers of containers are checked by the caller, who knows how many there are.
std::optional<Event> read_event(const WrittenPart& part, const Reading& reading);
/// Numbers of containers, "3", "1-4" or "1-4, 9": ascending, each once; none when absent, and when refused.
std::vector<int> read_numbers(reader::Fields& fields, QStringView key);
/// A group with `count`, `kind`, `holds`; in a further row also as a `containers` cell, hence several.
std::vector<ContainerGroup> read_containers(const WrittenPart& part, const Reading& reading);

/// What a record may call a container: "tub".
const QStringList& container_kinds();

/// "24 tub 500 g + 1 tub 300 g". The errors have no place.
problem::ExpectedAll<std::vector<ContainerGroup>> parse_containers(const QString& text, const Reading& reading);

/// Refuses a kind of container that the book does not put the product up in.
void check_kind(const book::Product& product, const ContainerGroup& group, problem::Errors& errors);

/// The same at `key`.
std::vector<ContainerGroup> containers_of(reader::Fields& fields, QStringView key, const Reading& reading);

/// The last instant at which something could still go into the record's making.
QDateTime latest_use(const Record& record, const QTimeZone& zone);

}  // namespace lardiner::batch
