// Tests of batch/clock: local times that occur twice or never, and days that do not start at midnight.
#include "batch/clock.h"

#include "show.h"

using namespace lardiner;
using namespace lardiner::batch;

namespace {

const QTimeZone kNewYork("America/New_York");

reader::Written written(const char* day, int hour, int minute, std::optional<int> offset_hours = std::nullopt) {
  reader::Written w;
  w.date = QDate::fromString(QString::fromLatin1(day), Qt::ISODate);
  w.seconds_of_day = hour * 3600 + minute * 60;
  if (offset_hours) w.offset_seconds = *offset_hours * 3600;
  return w;
}

QString utc(const problem::Expected<QDateTime>& instant) {
  REQUIRE(instant);
  return instant->toUTC().toString(Qt::ISODate);
}

QString refusal(const reader::Written& w, const QTimeZone& zone) {
  const auto refused = instant(w, zone);
  REQUIRE_FALSE(refused);
  return problem::text(refused.error());
}

QString utc_start(const char* day, const char* zone) {
  return start_of(QDate::fromString(QString::fromLatin1(day), Qt::ISODate), QTimeZone(zone))
      .toUTC()
      .toString(Qt::ISODate);
}

}  // namespace

TEST_CASE("an ordinary local time is one instant", "[batch][clock][src:iana-tzdb]") {
  CHECK(utc(instant(written("2026-11-25", 10, 0), kNewYork)) == QStringLiteral("2026-11-25T15:00:00Z"));
  CHECK(utc(instant(written("2026-07-01", 10, 0), kNewYork)) == QStringLiteral("2026-07-01T14:00:00Z"));
  CHECK(utc(instant(written("2026-11-25", 10, 0, -5), kNewYork)) == QStringLiteral("2026-11-25T15:00:00Z"));
}

TEST_CASE("a local time that occurs twice is refused unless the offset is written", "[batch][clock][src:iana-tzdb]") {
  CHECK(refusal(written("2026-11-01", 1, 30), kNewYork) ==
        QStringLiteral("2026-11-01 01:30 occurs twice in America/New_York: the clocks go back\n"
                       "  write the offset: 2026-11-01 01:30-04:00 or 2026-11-01 01:30-05:00"));
  CHECK(utc(instant(written("2026-11-01", 1, 30, -4), kNewYork)) == QStringLiteral("2026-11-01T05:30:00Z"));
  CHECK(utc(instant(written("2026-11-01", 1, 30, -5), kNewYork)) == QStringLiteral("2026-11-01T06:30:00Z"));
}

TEST_CASE("the hour that occurs twice ends where it ends", "[batch][clock][src:iana-tzdb]") {
  CHECK(instant(written("2026-11-01", 0, 59), kNewYork));
  CHECK_FALSE(instant(written("2026-11-01", 1, 0), kNewYork));
  CHECK_FALSE(instant(written("2026-11-01", 1, 59), kNewYork));
  CHECK(instant(written("2026-11-01", 2, 0), kNewYork));
}

TEST_CASE("the two instants of a doubled time stay apart in the zone", "[batch][clock][src:iana-tzdb]") {
  const QDateTime first = instant(written("2026-11-01", 1, 30, -4), kNewYork).value();
  const QDateTime second = instant(written("2026-11-01", 1, 30, -5), kNewYork).value();
  CHECK(first.secsTo(second) == 3600);
  CHECK(first != second);
  CHECK(first.offsetFromUtc() == -4 * 3600);
  CHECK(second.offsetFromUtc() == -5 * 3600);
  CHECK(shows_twice(first, kNewYork));
  CHECK(shows_twice(second, kNewYork));
  CHECK_FALSE(shows_twice(second.addSecs(3600), kNewYork));
}

TEST_CASE("a local time that does not exist is refused", "[batch][clock][src:iana-tzdb]") {
  CHECK(refusal(written("2026-03-08", 2, 30), kNewYork) ==
        QStringLiteral("2026-03-08 02:30 does not exist in America/New_York: the clocks go from 2026-03-08 02:00 to "
                       "2026-03-08 03:00\n  write a time before 2026-03-08 02:00 or from 2026-03-08 03:00 on"));
  CHECK(instant(written("2026-03-08", 1, 59), kNewYork));
  CHECK(utc(instant(written("2026-03-08", 3, 0), kNewYork)) == QStringLiteral("2026-03-08T07:00:00Z"));
}

TEST_CASE("a time that does not exist is refused with an offset too", "[batch][clock][src:iana-tzdb]") {
  CHECK_FALSE(instant(written("2026-03-08", 2, 30, -5), kNewYork));
}

TEST_CASE("an offset that does not belong to the local time is refused", "[batch][clock][src:iana-tzdb]") {
  CHECK(refusal(written("2026-11-25", 10, 0, -4), kNewYork) ==
        QStringLiteral("the offset -04:00 does not belong to 2026-11-25 10:00 in America/New_York\n"
                       "  write the offset: 2026-11-25 10:00-05:00"));
  CHECK(refusal(written("2026-11-01", 1, 30, 2), kNewYork) ==
        QStringLiteral("the offset +02:00 does not belong to 2026-11-01 01:30 in America/New_York\n"
                       "  write the offset: 2026-11-01 01:30-04:00 or 2026-11-01 01:30-05:00"));
}

TEST_CASE("half an hour that occurs twice or never is seen too", "[batch][clock][src:iana-tzdb]") {
  const QTimeZone lord_howe("Australia/Lord_Howe");
  CHECK(refusal(written("2026-04-05", 1, 45), lord_howe)
            .contains(QStringLiteral("01:45+11:00 or 2026-04-05 01:45+10:30")));
  CHECK(refusal(written("2026-10-04", 2, 15), lord_howe).contains(QStringLiteral("does not exist")));
  CHECK(instant(written("2026-04-05", 1, 29), lord_howe));
}

TEST_CASE("a day starts at its first instant, which need not be 00:00", "[batch][clock][src:iana-tzdb]") {
  CHECK(utc_start("2018-11-04", "America/Sao_Paulo") == QStringLiteral("2018-11-04T03:00:00Z"));  // 01:00 -02:00
  CHECK(utc_start("2018-11-05", "America/Sao_Paulo") == QStringLiteral("2018-11-05T02:00:00Z"));
  CHECK(utc_start("2024-03-31", "Asia/Beirut") == QStringLiteral("2024-03-30T22:00:00Z"));  // 01:00 +03:00
  CHECK(utc_start("2026-11-25", "America/New_York") == QStringLiteral("2026-11-25T05:00:00Z"));
}

TEST_CASE("midnight that occurs twice starts the day once, the first time", "[batch][clock][src:iana-tzdb]") {
  // Havana: at 01:00 back to 00:00.
  CHECK(utc_start("2026-11-01", "America/Havana") == QStringLiteral("2026-11-01T04:00:00Z"));
  CHECK(utc_start("2018-02-18", "America/Sao_Paulo") == QStringLiteral("2018-02-18T03:00:00Z"));
}

TEST_CASE("a day that the zone left out starts with the next", "[batch][clock][src:iana-tzdb]") {
  CHECK(utc_start("2011-12-30", "Pacific/Apia") == utc_start("2011-12-31", "Pacific/Apia"));
  CHECK(end_of(QDate(2011, 12, 29), QTimeZone("Pacific/Apia")) ==
        start_of(QDate(2011, 12, 31), QTimeZone("Pacific/Apia")));
  CHECK_FALSE(instant(written("2011-12-30", 12, 0), QTimeZone("Pacific/Apia")));
}

TEST_CASE("the end of a day is the start of the next, in every zone and on every day", "[batch][clock][property]") {
  for (const char* name : {"America/New_York", "Europe/Berlin", "Australia/Lord_Howe", "Asia/Kathmandu", "Pacific/Apia",
                           "America/Sao_Paulo", "Asia/Beirut", "America/Havana", "UTC"}) {
    const QTimeZone zone(name);
    for (QDate day(2017, 1, 1); day < QDate(2027, 1, 1); day = day.addDays(1)) {
      const QDateTime end = end_of(day, zone);
      if (end != start_of(day.addDays(1), zone)) FAIL(name << ' ' << day.toString(Qt::ISODate).toStdString());
      if (local_day(end, zone) != day.addDays(1)) FAIL(name << ' ' << day.toString(Qt::ISODate).toStdString());
      if (local_day(end.addMSecs(-1), zone) != day) FAIL(name << ' ' << day.toString(Qt::ISODate).toStdString());
    }
  }
}
