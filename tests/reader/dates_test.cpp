// Dates and instants as people write them.
#include "reader/fields.h"
#include "show.h"

using namespace lardiner;
using reader::Written;

namespace {

QString date_error(const char* text) {
  const auto read = reader::parse_date(QString::fromUtf8(text));
  return read ? QStringLiteral("accepted") : problem::text(read.error());
}

QString written_error(const char* text) {
  const auto read = reader::parse_written(QString::fromUtf8(text));
  return read ? QStringLiteral("accepted") : problem::text(read.error());
}

Written written(const char* text) {
  const auto read = reader::parse_written(QString::fromUtf8(text));
  if (!read) FAIL(problem::text(read.error()).toStdString());
  return *read;
}

}  // namespace

TEST_CASE("a date is written year, month, day", "[reader][dates][src:iso-8601/4.1.2.2]") {
  CHECK(reader::parse_date(QStringLiteral("2026-02-28")) == QDate(2026, 2, 28));
  CHECK(reader::parse_date(QStringLiteral("2024-02-29")) == QDate(2024, 2, 29));
  CHECK(reader::parse_date(QStringLiteral("2000-01-01")) == QDate(2000, 1, 1));
  CHECK(reader::parse_date(QStringLiteral("2199-12-31")) == QDate(2199, 12, 31));
}

TEST_CASE("what is no date is told how to be written", "[reader][dates][errors]") {
  for (const char* text :
       {"31/02", "03/04/26", "2026-02-30", "2025-02-29", "2026-2-28", "26-02-28", "2026-13-01", "20260228",
        "2026-00-10", "28 Feb 2026", " 2026-02-28", "2026-02-28\n", "٢٠٢٦-٠٢-٢٨", "2026-02-28 10:00", ""})
    CHECK(date_error(text) == QStringLiteral("\"%1\" is not a date\n  write it as 2026-02-28")
                                  .arg(QString::fromUtf8(text).replace(u'\n', QChar(0xFFFD))));
}

TEST_CASE("years outside 2000 to 2199 are slips of the pen", "[reader][dates][errors]") {
  CHECK(date_error("1999-12-31") ==
        QStringLiteral("the year of \"1999-12-31\" is not in 2000 to 2199\n  write it as 2026-02-28"));
  CHECK(date_error("2200-01-01") ==
        QStringLiteral("the year of \"2200-01-01\" is not in 2000 to 2199\n  write it as 2026-02-28"));
  CHECK(written_error("0026-02-28 10:00") ==
        QStringLiteral("the year of \"0026-02-28 10:00\" is not in 2000 to 2199\n  write it as 2026-02-28"));
}

TEST_CASE("an instant is a date, perhaps a time, perhaps an offset", "[reader][dates][src:iso-8601/4.3.2]") {
  const QDate day(2026, 2, 28);
  CHECK(written("2026-02-28") == Written{day, std::nullopt, std::nullopt});
  CHECK(written("2026-02-28 14:30") == Written{day, 52200, std::nullopt});
  CHECK(written("2026-02-28T14:30:15") == Written{day, 52215, std::nullopt});
  CHECK(written("2026-02-28 00:00Z") == Written{day, 0, 0});
  CHECK(written("2026-02-28T23:59:59+02:00") == Written{day, 86399, 7200});
  CHECK(written("2026-02-28 14:30-03:30") == Written{day, 52200, -12600});
  CHECK(written("2026-02-28 14:30+14:00") == Written{day, 52200, 50400});
}

TEST_CASE("times that do not exist on a clock are refused", "[reader][dates][errors]") {
  for (const char* text : {"2026-02-28 24:00", "2026-02-28 23:59:60", "2026-02-28 12:60", "26-02-28 14:30",
                           "2026-02-28 2:30", "2026-02-28  14:30", "2026-02-28 2:30 pm", "2026-02-28 14:30 +02:00",
                           "2026-02-28+02:00", "2026-02-28 14:30+2", "2026-02-28 14:30+14:01", "2026-02-28 14:30+01:60",
                           "2026-02-28 14.30", "2026-02-28 14:30:15.5", "14:30", "2026-02-28 ", "yesterday", ""})
    CHECK(written_error(text) == QStringLiteral("\"%1\" is not a date and time\n"
                                                "  write it as 2026-02-28 14:30; midnight is 00:00 of the next day")
                                     .arg(QString::fromUtf8(text)));
  CHECK(written_error("2026-02-30 14:30") ==
        QStringLiteral("\"2026-02-30 14:30\" is not a date\n  write it as 2026-02-28"));
}

TEST_CASE("what is repeated in an error is short and cannot command a terminal", "[reader][errors]") {
  const QString long_text(100, u'x');
  CHECK(date_error(long_text.toUtf8()) ==
        u'"' + QString(60, u'x') + QString::fromUtf8("…\" is not a date\n  write it as 2026-02-28"));
  CHECK(date_error("\x1b[31m") == QString::fromUtf8("\"\xEF\xBF\xBD[31m\" is not a date\n  write it as 2026-02-28"));
}
