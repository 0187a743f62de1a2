// The traceability spreadsheet: the critical tracking events as flat rows, and these as CSV. Columns: EXPORTS.md.
#pragma once

#include <QByteArray>
#include <QDateTime>
#include <QStringList>
#include <functional>
#include <variant>

#include "ledger/tracked.h"

namespace lardiner::ledger {

/// An amount in millionths of the unit that stands beside it.
struct Millionths {
  qint64 amount = 0;
  friend bool operator==(const Millionths&, const Millionths&) = default;
};

/// One cell; an empty text is an empty cell.
using Cell = std::variant<QString, Millionths, QDate, QTime>;
using Row = std::vector<Cell>;

/// The names of the columns, in their order: the first line of a CSV, the frozen row of an XLSX.
QStringList export_columns();

/// A row for each event, and of a transformation for each of its inputs; as `each_tracked` hands them out. Gives how
/// many there were, also where `take` ended it.
problem::Expected<qint64> each_export_row(Ledger& ledger, const ExportScope& scope, const ExportKitchen& kitchen,
                                          const std::function<bool(const Row&)>& take);

/// How bytes leave: false when they could not be written, which ends the export.
using Sink = std::function<bool(const QByteArray&)>;

/// RFC 4180, UTF-8 without a mark before it, CRLF. A text that begins with = + - @, a tab or a carriage return gets an
/// apostrophe before it, so that no spreadsheet takes it for a formula. Gives the number of rows beneath the names.
problem::Expected<qint64> write_csv(Ledger& ledger, const ExportScope& scope, const ExportKitchen& kitchen,
                                    const Sink& sink);

/// One line of it.
QByteArray csv_line(const Row& row);

/// How far its clock is from UTC: "-05:00", "+00:00".
QString offset_text(const QDateTime& at);

/// A quantity in the export's unit of its dimension: kilograms or, in customary units, pounds; litres; pieces.
struct Measured {
  Millionths count;
  measure::Unit unit = measure::Unit::Kilogram;
};
Measured measured(measure::Quantity quantity, measure::System units);

}  // namespace lardiner::ledger
