// Dates and times as elements write them.
#include "gs1/dates.h"

#include <QTimeZone>

#include "show.h"

using namespace lardiner::gs1;
using lardiner::problem::text;

namespace {

constexpr int kThisYear = 2026;

QDate read(const char* date, DayZero day_zero = DayZero::LastOfMonth) {
  return read_yymmdd(QString::fromLatin1(date), kThisYear, day_zero).value_or(QDate());
}

}  // namespace

TEST_CASE("two-digit years 51 ahead are of last century, 50 behind of the next",
          "[gs1][dates][src:gs1-genspecs/7.12]") {
  CHECK(full_year(26, 2026) == 2026);
  CHECK(full_year(76, 2026) == 2076);  // 50 ahead
  CHECK(full_year(77, 2026) == 1977);  // 51 ahead
  CHECK(full_year(0, 2026) == 2000);
  CHECK(full_year(1, 2050) == 2001);  // 49 behind
  CHECK(full_year(0, 2050) == 2100);  // 50 behind
  CHECK(full_year(49, 2099) == 2149);
  CHECK(full_year(50, 2099) == 2050);
  CHECK(full_year(50, 2000) == 2050);
  CHECK(full_year(51, 2000) == 1951);
}

TEST_CASE("a date is two digits each of year, month and day", "[gs1][dates][src:gs1-genspecs/3.4]") {
  CHECK(yymmdd(QDate(2018, 4, 26)) == QStringLiteral("180426"));
  CHECK(yymmdd(QDate(2026, 10, 7)) == QStringLiteral("261007"));
  CHECK(yymmdd(QDate(2005, 1, 1)) == QStringLiteral("050101"));
  CHECK(read("180426") == QDate(2018, 4, 26));
  CHECK(read("991225") == QDate(1999, 12, 25));
  CHECK(read("240229") == QDate(2024, 2, 29));
  for (const char* wrong :
       {"250229", "261301", "260001", "260431", "26043", "2604301", "26043A", "", "+60430", " 60430"})
    CHECK_FALSE(read(wrong).isValid());
}

TEST_CASE("day 00 is the last of the month in 11, 13, 15, 17 and no date in 7003, 7006, 8008",
          "[gs1][dates][src:gs1-genspecs/3.4]") {
  CHECK(read("260200") == QDate(2026, 2, 28));
  CHECK(read("280200") == QDate(2028, 2, 29));
  CHECK(read("261200") == QDate(2026, 12, 31));
  CHECK_FALSE(read("261300").isValid());
  CHECK(read_yymmdd(QStringLiteral("260200"), kThisYear, DayZero::Refused).error().what ==
        QStringLiteral("\"260200\" is no date or time"));
  CHECK_FALSE(read_yymmddhhmm(QStringLiteral("2602001040"), kThisYear));
  CHECK_FALSE(read_production_time(QStringLiteral("26020010"), kThisYear));
}

TEST_CASE("every day within fifty years comes back as it was written", "[gs1][dates][src:gs1-genspecs/7.12]") {
  for (QDate day(1977, 1, 1); day <= QDate(2076, 12, 31); day = day.addDays(1))
    REQUIRE(read_yymmdd(yymmdd(day), kThisYear, DayZero::Refused) == day);
}

TEST_CASE("a use-by time is cut to its minute and never later", "[gs1][dates][src:gs1-genspecs/3.8.3]") {
  const WallTime end{QDate(2026, 12, 1), QTime(10, 40, 59)};
  CHECK(yymmddhhmm(end) == QStringLiteral("2612011040"));
  CHECK(read_yymmddhhmm(QStringLiteral("2612011040"), kThisYear) == WallTime{QDate(2026, 12, 1), QTime(10, 40)});
  for (const char* wrong : {"26120110", "261201104059", "2612012400", "2612011060", "2612011O40"})
    CHECK(text(read_yymmddhhmm(QString::fromLatin1(wrong), kThisYear).error()) ==
          QStringLiteral("\"%1\" is no date or time\n  write two digits each of year, month, day, hour and minute")
              .arg(QString::fromLatin1(wrong)));
}

TEST_CASE("a time of making has 8, 10 or 12 digits", "[gs1][dates][src:gs1-genspecs/3.9.8]") {
  const WallTime made{QDate(2026, 11, 25), QTime(7, 5, 9)};
  CHECK(production_time(made, Precision::Hours) == QStringLiteral("26112507"));
  CHECK(production_time(made, Precision::Minutes) == QStringLiteral("2611250705"));
  CHECK(production_time(made, Precision::Seconds) == QStringLiteral("261125070509"));
  const auto hour = read_production_time(QStringLiteral("26112507"), kThisYear);
  CHECK(hour == ProductionTime{{QDate(2026, 11, 25), QTime(7, 0)}, Precision::Hours});
  const auto second = read_production_time(QStringLiteral("261125070509"), kThisYear);
  CHECK(second == ProductionTime{made, Precision::Seconds});
  CHECK(text(read_production_time(QStringLiteral("261125070"), kThisYear).error()) ==
        QStringLiteral("\"261125070\" is no date or time\n"
                       "  write two digits each of year, month, day, hour, and of minute and second if given"));
  CHECK_FALSE(read_production_time(QStringLiteral("261125"), kThisYear));
  CHECK_FALSE(read_production_time(QStringLiteral("26112524"), kThisYear));
  CHECK_FALSE(read_production_time(QStringLiteral("261125070561"), kThisYear));
}

TEST_CASE("elements hold what the clock on the wall shows", "[gs1][dates][src:gs1-genspecs/3.9.8]") {
  const QTimeZone zone("America/New_York");
  const QDateTime made = QDateTime(QDate(2026, 7, 1), QTime(3, 30), Qt::UTC).toTimeZone(zone);
  CHECK(yymmddhhmm(wall_time(made)) == QStringLiteral("2606302330"));
}
