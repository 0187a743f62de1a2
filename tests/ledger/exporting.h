// A ledger of a test kitchen and what it exports, as text.
#pragma once

#include <QTemporaryDir>

#include "ledger/export_epcis.h"
#include "ledger/export_rows.h"
#include "show.h"
#include "small_history.h"

namespace lardiner::ledger {

inline const ExportKitchen kTestKitchen{"Test Kitchen",
                                        "1 Test Lane",
                                        "https://lot.example",
                                        measure::System::Metric,
                                        {{"tomatillo", "Tomatillos"}, {"salsa", "Salsa"}},
                                        {{"mill-road", "Mill Road"}}};

// RFC 4180, section 2.
inline QStringList cells(const QString& line) {
  QStringList out{QString()};
  bool quoted = false;
  for (const QChar letter : line) {
    if (letter == '"') quoted = !quoted;
    if (letter == ',' && !quoted)
      out << QString();
    else if (letter != '"')
      out.last() += letter;
  }
  return out;
}

// Those that begin so.
inline QStringList of(const QStringList& rows, const QString& event) {
  QStringList out;
  for (const QString& row : rows)
    if (row.startsWith(event)) out << row;
  return out;
}

struct Exporting {
  QTemporaryDir folder;
  QString path = folder.filePath("ledger.sqlite");
  problem::Expected<Ledger> ledger = Ledger::open(path, Access::Write);

  Exporting() { REQUIRE(ledger); }

  void record(std::vector<history::Event> events, const QDateTime& now) {
    const auto entries = ledger->append(std::move(events), stamp(now));
    if (!entries) FAIL(problem::text(entries.error()).toStdString());
  }

  // The lines beneath the names, or what went wrong.
  QStringList csv(const ExportScope& scope) {
    QByteArray bytes;
    const auto rows = write_csv(*ledger, scope, kTestKitchen, [&](const QByteArray& more) {
      bytes += more;
      return true;
    });
    if (!rows) return {problem::text(rows.error())};
    QStringList lines = QString::fromUtf8(bytes).split("\r\n");
    REQUIRE(lines.takeLast().isEmpty());
    REQUIRE(lines.takeFirst() == export_columns().join(','));
    REQUIRE(lines.size() == *rows);
    return lines;
  }
  // Of each line the cells in those columns ("event quantity"), joined by a space. REQUIRES: no line break in a cell.
  QStringList rows(const ExportScope& scope, const QString& columns) {
    QStringList out;
    for (const QString& line : csv(scope)) {
      const QStringList all = cells(line);
      INFO(line.toStdString());
      REQUIRE(all.size() == export_columns().size());
      QStringList some;
      for (const QString& column : columns.split(' ')) some << all.at(export_columns().indexOf(column));
      out << some.join(' ');
    }
    return out;
  }
  // The document, or what went wrong.
  QByteArray epcis(const ExportScope& scope) {
    QByteArray bytes;
    const auto events = write_epcis(*ledger, scope, kTestKitchen, kMorning.addDays(30), [&](const QByteArray& more) {
      bytes += more;
      return true;
    });
    return events ? bytes : problem::text(events.error()).toUtf8();
  }
};

inline ExportScope days(QDate from, QDate to) { return {from, to, {}}; }
inline ExportScope day(QDate day) { return days(day, day); }
inline const ExportScope kAllDays = days(QDate(2020, 1, 1), QDate(2030, 1, 1));

}  // namespace lardiner::ledger
