// The kinds of value a batch record writes, each taken from a key; a fault is told at the key's place.
#pragma once

#include <QTimeZone>
#include <optional>
#include <utility>

#include "batch/read_records.h"
#include "batch/record.h"
#include "reader/fields.h"

namespace lardiner::batch {

/// The most that one making, container or input may be: far above what a kitchen makes, far below a slip of three
/// zeros.
inline constexpr int kMostTonnes = 20;
inline constexpr int kMostLitres = 20'000;
inline constexpr int kMostPieces = 200'000;

measure::Quantity most_made(measure::Dimension dimension);
/// "at most 20 tonnes, 20000 litres or 200000 pieces"
QString most_made_text();

/// What the readers of a record know besides the record.
struct Reading {
  const book::Book& book;
  const RecordSettings& settings;

  const QTimeZone& zone() const { return book.kitchen.zone; }
};

/// A day and perhaps a time of day.
struct Moment {
  QDateTime at;  ///< the start of the day, where no time is written
  bool time_known = true;
};

// Every function returns nothing when the key is absent, and when it is there but refused.

/// In the past of `settings.now`.
std::optional<Moment> read_moment(reader::Fields& fields, QStringView key, const Reading& reading);

/// As above, and a date alone is refused.
std::optional<QDateTime> read_instant(reader::Fields& fields, QStringView key, const Reading& reading);

/// As `read_instant`, and absent is an error.
std::optional<QDateTime> read_required_instant(reader::Fields& fields, QStringView key, const Reading& reading);

/// `use_by` or `best_before`, not both.
std::optional<StatedEnd> read_stated_end(reader::Fields& fields, const Reading& reading);

std::optional<measure::Quantity> read_amount(reader::Fields& fields, QStringView key, const Reading& reading);
std::optional<measure::Quantity> read_required_amount(reader::Fields& fields, QStringView key, const Reading& reading);

/// The same of a text that stands in a cell with others.
problem::Expected<measure::Quantity> amount_of(const QString& text, const Reading& reading);

std::optional<measure::Temperature> read_core(reader::Fields& fields, QStringView key);

/// "15 s": a length of time of at most a day.
std::optional<int> read_held(reader::Fields& fields, QStringView key);

/// Initials of one of the book's people, or any text where it has none.
QString read_person(reader::Fields& fields, QStringView key, const Reading& reading);

/// One of `words`, or nothing.
std::optional<QString> read_word(reader::Fields& fields, QStringView key, const QStringList& words);

/// The same word as `word` was meant, or what there is: for hints.
QString did_you_mean(const QString& word, const QStringList& known, const QString& otherwise);

/// A word that may not be there is an error at the key; `has` says so in the reader's way: "the input has no item".
void require(reader::Fields& fields, QStringView key, const QString& hint);

}  // namespace lardiner::batch
