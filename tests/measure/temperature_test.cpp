// Temperatures: read, compared across scales, judged by the limit's figure in the reading's own scale.
#include "measure/temperature.h"

#include "make.h"

using namespace lardiner;
using namespace lardiner::measure;

namespace {

Temperature celsius(int tenths) { return {tenths, Scale::Celsius}; }
Temperature fahrenheit(int tenths) { return {tenths, Scale::Fahrenheit}; }

const TemperatureLimit kHotHolding{{570, Scale::Celsius}, {1350, Scale::Fahrenheit}};
const TemperatureLimit kColdHolding{{50, Scale::Celsius}, {410, Scale::Fahrenheit}};

QString refusal(const QString& text) {
  const auto read = parse_temperature(text);
  return read ? QStringLiteral("read") : problem::text(read.error());
}

QString time_refusal(const QString& text) {
  const auto read = parse_seconds(text);
  return read ? QStringLiteral("read") : problem::text(read.error());
}

}  // namespace

TEST_CASE("a reading is judged by the limit's figure in its own scale",
          "[measure][temperature][src:food-code-2022/3-501.16]") {
  // 57 °C is 134.6 °F, yet it meets 135 °F (57 °C).
  CHECK(at_least(celsius(570), kHotHolding));
  CHECK_FALSE(at_least(fahrenheit(1346), kHotHolding));
  CHECK_FALSE(at_least(celsius(569), kHotHolding));
  CHECK(at_least(fahrenheit(1350), kHotHolding));
  CHECK(at_most(celsius(50), kColdHolding));
  CHECK_FALSE(at_most(celsius(51), kColdHolding));
  CHECK(at_most(fahrenheit(410), kColdHolding));
  CHECK_FALSE(at_most(fahrenheit(411), kColdHolding));
}

TEST_CASE("temperatures compare exactly across scales", "[measure][temperature]") {
  CHECK((compare(celsius(1000), fahrenheit(2120)) == 0));
  CHECK((compare(celsius(-400), fahrenheit(-400)) == 0));
  CHECK((compare(celsius(0), fahrenheit(320)) == 0));
  CHECK((compare(celsius(570), fahrenheit(1350)) < 0));
  CHECK((compare(celsius(570), fahrenheit(1346)) == 0));
  CHECK((compare(celsius(571), fahrenheit(1346)) > 0));
}

TEST_CASE("400 °F is about 204 °C", "[measure][temperature][src:practice]") {
  CHECK(converted(fahrenheit(4000), Scale::Celsius) == celsius(2040));
}

TEST_CASE("a converted temperature is in whole degrees, rounded half up", "[measure][temperature]") {
  CHECK(converted(fahrenheit(1650), Scale::Celsius) == celsius(740));
  CHECK(converted(fahrenheit(410), Scale::Celsius) == celsius(50));
  CHECK(converted(fahrenheit(0), Scale::Celsius) == celsius(-180));
  CHECK(converted(fahrenheit(329), Scale::Celsius) == celsius(10));  // 0.5
  CHECK(converted(fahrenheit(311), Scale::Celsius) == celsius(0));   // -0.5
  CHECK(converted(celsius(1900), Scale::Fahrenheit) == fahrenheit(3740));
  CHECK(converted(celsius(-180), Scale::Fahrenheit) == fahrenheit(0));  // -0.4
  CHECK(converted(celsius(25), Scale::Fahrenheit) == fahrenheit(370));  // 36.5
  CHECK(converted(celsius(735), Scale::Celsius) == celsius(735));
}

TEST_CASE("whole degrees Celsius convert to Fahrenheit and back to themselves", "[measure][temperature]") {
  for (int degrees = -60; degrees <= 400; ++degrees) {
    const Temperature there = converted(celsius(degrees * 10), Scale::Fahrenheit);
    REQUIRE(converted(there, Scale::Celsius) == celsius(degrees * 10));
  }
}

TEST_CASE("a temperature is read as people write it", "[measure][temperature]") {
  CHECK(parse_temperature(QStringLiteral("165 °F")).value() == fahrenheit(1650));
  CHECK(parse_temperature(QStringLiteral("165F")).value() == fahrenheit(1650));
  CHECK(parse_temperature(QStringLiteral("74 C")).value() == celsius(740));
  CHECK(parse_temperature(QStringLiteral("-18 °C")).value() == celsius(-180));
  CHECK(parse_temperature(QStringLiteral("\u221218 °C")).value() == celsius(-180));
  CHECK(parse_temperature(QStringLiteral("73.5 c")).value() == celsius(735));
  CHECK(parse_temperature(QStringLiteral("73,5 C")).value() == celsius(735));
  CHECK(parse_temperature(QStringLiteral("74 \u2103")).value() == celsius(740));
  CHECK(parse_temperature(QStringLiteral("-60 C")).value() == celsius(-600));
  CHECK(parse_temperature(QStringLiteral("752 F")).value() == fahrenheit(7520));
}

TEST_CASE("a temperature that cannot be read or cannot be true is refused", "[measure][temperature]") {
  CHECK(refusal(QStringLiteral("165")) ==
        QStringLiteral("\"165\" does not say Celsius or Fahrenheit\n  write C or F after the figure"));
  CHECK(refusal(QStringLiteral("73.55 C")) ==
        QStringLiteral("\"73.55 C\" is finer than a thermometer reads\n  write at most one decimal, such as 73.5 C"));
  CHECK(refusal(QStringLiteral("-61 C")) ==
        QStringLiteral("\"-61 C\" is no temperature of a kitchen\n  write one from -60 C to 400 C"));
  CHECK(refusal(QStringLiteral("401 C")) ==
        QStringLiteral("\"401 C\" is no temperature of a kitchen\n  write one from -60 C to 400 C"));
  CHECK(refusal(QStringLiteral("753 F")) ==
        QStringLiteral("\"753 F\" is no temperature of a kitchen\n  write one from -60 C to 400 C"));
  CHECK(refusal(QStringLiteral("hot")) == QStringLiteral("\"hot\" is not a temperature\n  write it as 74 C or 165 F"));
  CHECK(refusal(QString()) == QStringLiteral("\"\" is not a temperature\n  write it as 74 C or 165 F"));
  CHECK(refusal(QStringLiteral("74 K")) ==
        QStringLiteral("\"74 K\" is not a temperature\n  write it as 74 C or 165 F"));
}

TEST_CASE("a length of time is read in seconds", "[measure][time]") {
  CHECK(parse_seconds(QStringLiteral("15 s")).value() == 15);
  CHECK(parse_seconds(QStringLiteral("0 s")).value() == 0);
  CHECK(parse_seconds(QStringLiteral("2 min")).value() == 120);
  CHECK(parse_seconds(QStringLiteral("4 h")).value() == 14'400);
  CHECK(parse_seconds(QStringLiteral("1.5 hours")).value() == 5'400);
  CHECK(parse_seconds(QStringLiteral("1 h 30 min")).value() == 5'400);
  CHECK(parse_seconds(QStringLiteral("9600 h")).value() == 34'560'000);
}

TEST_CASE("a length of time that cannot be read or cannot be true is refused", "[measure][time]") {
  const QString form = QStringLiteral("write it as 15 s, 2 min, 4 h or 1 h 30 min");
  CHECK(time_refusal(QStringLiteral("-2 min")) ==
        QStringLiteral("\"-2 min\" is negative\n  write a length of time above zero"));
  CHECK(time_refusal(QStringLiteral("9601 h")) ==
        QStringLiteral("\"9601 h\" is over 400 days\n  write a length of time that a kitchen can wait"));
  CHECK(time_refusal(QStringLiteral("1.5 s")) ==
        QStringLiteral("\"1.5 s\" is not a whole number of seconds\n  write it in whole seconds"));
  CHECK(time_refusal(QStringLiteral("15")) == QStringLiteral("\"15\" is not a length of time\n  ") + form);
  CHECK(time_refusal(QStringLiteral("min")) == QStringLiteral("\"min\" is not a length of time\n  ") + form);
  CHECK(time_refusal(QString()) == QStringLiteral("\"\" is not a length of time\n  ") + form);
  CHECK(time_refusal(QStringLiteral("7 days")) == QStringLiteral("\"7 days\" is not a length of time\n  ") + form);
  CHECK(time_refusal(QStringLiteral("30 min 1 h")) ==
        QStringLiteral("\"30 min 1 h\" is not a length of time\n  ") + form);
}
