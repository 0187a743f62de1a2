// Taking the entries of a table one by one: what is missing, of the wrong kind, or unknown becomes an error with its
// place.
#pragma once

#include <QDate>
#include <QStringList>
#include <optional>

#include "reader/value.h"

namespace lardiner::reader {

/// Walks one table. Every accessor marks its key as known; `finish` reports the keys that nobody asked for, with the
/// nearest known one. Errors are added to the list given at construction; an accessor that fails returns nullopt (or an
/// empty list) and the walk goes on, so that all faults of a file are told at once.
class Fields {
 public:
  /// `table` and `errors` must outlive this. `noun` names the table in errors: "product \"salsa\"".
  Fields(const Value& table, QString noun, problem::Errors& errors);

  /// Whether the key is there (and marks it known).
  bool has(QStringView key);
  /// The raw value or nullptr (and marks it known).
  const Value* value(QStringView key);

  std::optional<QString> text(QStringView key);           ///< a non-empty string, else an error; absent: nullopt
  std::optional<QString> required_text(QStringView key);  ///< absent: an error "<noun> has no <key>"
  std::optional<bool> boolean(QStringView key);           ///< true, false; as text (in CSV) also yes, no, in any case
  std::optional<int> integer(QStringView key, int least, int most);  ///< a whole number, also as text (in CSV)
  std::optional<QDate> date(QStringView key);                        ///< 2026-02-28, quoted or as a TOML date
  QStringList texts(QStringView key);                 ///< a list of strings; one string counts as a list of one
  std::vector<const Value*> tables(QStringView key);  ///< a list of tables; one table counts as a list of one
  const Value* table(QStringView key);                ///< a sub-table or nullptr

  /// An error at the key's value (or at the table when the key is absent).
  void refuse(QStringView key, problem::Code code, QString what, QString hint);

  /// Reports unknown keys. Call last, once.
  void finish();

  const Value& source() const { return table_; }
  const QString& noun() const { return noun_; }

 private:
  std::optional<QString> text_of(QStringView key, const Value& found);
  const Value* table_of(QStringView key, const Value& found);
  void wrong_kind(QStringView key, const Value& found, const QString& expected, const QString& hint);

  const Value& table_;
  QString noun_;
  problem::Errors& errors_;
  QStringList known_;
};

/// A date as people write it wrongly is told how to write it: refuses 31/02, 03/04/26, 2026-02-30, with the hint
/// "write it as 2026-02-28". Accepts YYYY-MM-DD only, years 2000 to 2199.
problem::Expected<QDate> parse_date(const QString& text);

/// An instant as written: a date, perhaps a time (HH:MM or HH:MM:SS, `T` or one space between), perhaps an offset
/// (Z, +02:00). The zone is applied by batch/clock. Refuses 24:00, leap seconds and two-digit years.
struct Written {
  QDate date;
  std::optional<int> seconds_of_day;
  std::optional<int> offset_seconds;
  friend bool operator==(const Written&, const Written&) = default;
};
problem::Expected<Written> parse_written(const QString& text);

}  // namespace lardiner::reader
