// Tests of batch/phrases: days as reasons and errors say them, and the first instant of a day however often it is asked for.
#include "batch/phrases.h"

#include "batch/clock.h"
#include "show.h"

using namespace lardiner::batch;

TEST_CASE("a day is said in English with its weekday, whatever the locale", "[batch][phrases]") {
  CHECK(day_text(QDate(2026, 11, 25)) == QStringLiteral("Wed 25 Nov 2026"));
  CHECK(day_text(QDate()) == QString());
  for (QDate day(2024, 1, 1); day.year() < 2026; day = day.addDays(1))
    CHECK(day_text(day) == day.toString(QStringLiteral("ddd d MMM yyyy")));
}

TEST_CASE("the start of a day is the same whichever zone and day were asked for before", "[batch][clock]") {
  const QTimeZone zones[] = {QTimeZone("America/New_York"), QTimeZone("Asia/Kolkata"), QTimeZone("America/New_York")};
  for (int round = 0; round < 2; ++round)
    for (const QTimeZone& zone : zones)
      for (QDate day(2026, 3, 1); day < QDate(2026, 4, 1); day = day.addDays(1)) {
        const QDateTime start = start_of(day, zone);
        CHECK(start.toTimeZone(zone).date() == day);
        CHECK(start.addMSecs(-1).toTimeZone(zone).date() == day.addDays(-1));
        CHECK(start.timeZone() == zone);
      }
}
