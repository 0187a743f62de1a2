// The kinds of value a kitchen book writes, each taken from a key of a table; a fault is told at the key's place.
#pragma once

#include <QStringList>
#include <optional>
#include <utility>

#include "book/limit_text.h"
#include "book/local_text.h"
#include "book/rule_set.h"
#include "book/shelf_life.h"
#include "measure/quantity.h"
#include "reader/fields.h"

namespace lardiner::book {

// Every function returns nothing (or an empty text) when the key is absent, and when it is there but refused.

/// The table's `id`, required: small letters, digits and hyphens, beginning with a letter, at most 40.
std::optional<QString> read_id(reader::Fields& fields);

/// A name of the table for errors, before its id has been judged: product "salsa".
QString noun(const QString& table, const reader::Value& value, QStringView key = u"id");

/// A plain string in the first of `languages`, or a table of language codes among them.
LocalText read_local_text(reader::Fields& fields, QStringView key, const QStringList& languages);

/// `name`, required.
LocalText read_name(reader::Fields& fields, const QStringList& languages);

/// One of `words`, as they stand in the file.
std::optional<QString> read_word(reader::Fields& fields, QStringView key, const QStringList& words);

/// As `read_word`, but absent is an error.
std::optional<QString> read_required_word(reader::Fields& fields, QStringView key, const QStringList& words);

std::optional<measure::Quantity> read_quantity(reader::Fields& fields, QStringView key);
std::optional<measure::Quantity> read_weight(reader::Fields& fields, QStringView key);

/// "82 %", always with its sign: 82/100. REQUIRES nothing of its size; zero is read.
std::optional<measure::Ratio> read_share(reader::Fields& fields, QStringView key);

/// A plain number above zero, as a TOML number or as text: 2.5.
std::optional<measure::Ratio> read_number(reader::Fields& fields, QStringView key);

std::optional<measure::TemperatureLimit> read_limit(reader::Fields& fields, QStringView key, Bound safe);
std::optional<TimeAtTemperature> read_held(reader::Fields& fields, QStringView key);

/// The setting of an oven: like a limit, but its two scales may stand 6 °C apart, as dials are marked in round figures.
std::optional<measure::TemperatureLimit> read_setting(reader::Fields& fields, QStringView key);

std::optional<int> read_seconds(reader::Fields& fields, QStringView key);

/// "12 to 15 min", "12 min": least and most.
std::optional<std::pair<int, int>> read_seconds_range(reader::Fields& fields, QStringView key);

/// "7 days", "2 weeks", "3 months", "4 h".
std::optional<Length> read_length(reader::Fields& fields, QStringView key);

/// "50 mm", "4 in": hundredths of a millimetre.
std::optional<int> read_size(reader::Fields& fields, QStringView key);

/// Whether two keys are both there or neither is; else that is refused: "has a vessel but no vessel_takes".
bool both_or_neither(reader::Fields& fields, QStringView one, QStringView other, QStringView article = u"a ");

/// `one of "a", "b" or "c"`, for hints.
QString one_of(const QStringList& words);

/// "did you mean …?", or the list of `known` when nothing is near.
QString meant(const QString& word, const QStringList& known, const QString& kind);

}  // namespace lardiner::book
