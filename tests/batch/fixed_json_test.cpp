// Tests of batch/fixed_json: fixed facts as text and back, and what is refused when it is read.
#include "batch/fixed_json.h"

#include <QJsonArray>
#include <QJsonDocument>

#include "demo_day.h"
#include "fixed_kitchen.h"
#include "random_day.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

// Through the bytes that a ledger keeps.
problem::Expected<Fixed> read(const QByteArray& text) { return fixed_from_json(QJsonDocument::fromJson(text).object()); }

Fixed again(const Fixed& fixed) {
  const problem::Expected<Fixed> back = read(bytes(fixed));
  if (!back) FAIL(problem::text(back.error()).toStdString());
  return *back;
}

void check_round_trip(std::mt19937& random, const Fixed& fixed) {
  Fixed one = fixed;
  Fixed other = again(fixed);
  CHECK(bytes(other).toStdString() == bytes(one).toStdString());
  for (int i = 0; i < 6; ++i) {
    const Event next = random_event(random, static_cast<int>(one.batch.containers.size()));
    CHECK(problem::text(happen(one, {next})) == problem::text(happen(other, {next})));
    CHECK(one.batch.use_bys == other.batch.use_bys);
    CHECK(one.withheld == other.withheld);
  }
  const CoolReading cold{one.batch.record.made_at.addSecs(3600), {400, measure::Scale::Fahrenheit}, {}};
  cool(one, {cold}, {}, {}, cold.at);
  cool(other, {cold}, {}, {}, cold.at);
  CHECK(bytes(other).toStdString() == bytes(one).toStdString());
  CHECK(bytes(again(one)).toStdString() == bytes(one).toStdString());
}

Fixed dip() {
  return fix(made("dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-12-20"),
                  R"("events": [{"what": "frozen", "at": "2026-11-02 10:00", "containers": "2"}])"));
}

const char* const kQuestions = "\"questions\":";
const char* const kContainers = R"("containers":[{"number")";

// The text of the error when one piece of the facts, the first after `after`, is another.
QString refused(const QByteArray& from, const QByteArray& to, const char* after = "{") {
  QByteArray text = bytes(dip());
  const auto at = text.indexOf(from, text.indexOf(after));
  REQUIRE(at >= 0);
  text.replace(at, from.size(), to);
  const problem::Expected<Fixed> back = read(text);
  return back ? QStringLiteral("read") : problem::text(back.error());
}

}  // namespace

TEST_CASE("the facts of the demo days read back alike, and live on alike", "[batch][fixed_json][property]") {
  std::mt19937 random(1);
  int lots = 0;
  for (const char* file : {"day.csv", "day.jsonl", "trays.csv", "refused.csv"})
    for (const Fixed& fixed : fix_records(demo_records(file), {}, demo_kitchen(), kDemoNow)) {
      check_round_trip(random, fixed);
      ++lots;
    }
  CHECK(lots > 20);
}

TEST_CASE("the facts of random days read back alike, and live on alike", "[batch][fixed_json][property]") {
  std::mt19937 random(2);
  for (int i = 0; i < 25; ++i)
    for (const Fixed& fixed : fix_records(random_day(random))) check_round_trip(random, fixed);
}

TEST_CASE("a person can read when a fixed lot ends", "[batch][fixed_json]") {
  const QJsonObject facts = to_json(dip());
  CHECK(facts[QStringLiteral("zone")].toString() == QStringLiteral("America/New_York"));
  const QJsonArray questions = facts[QStringLiteral("questions")].toArray();
  REQUIRE(questions.size() == 2);
  const QJsonObject chilled = questions[0][QStringLiteral("use_by")].toObject();
  CHECK(chilled[QStringLiteral("form")].toString() == QStringLiteral("date"));
  CHECK(chilled[QStringLiteral("date")].toString() == QStringLiteral("2026-11-07"));
  CHECK(chilled[QStringLiteral("end")].toString() == QStringLiteral("2026-11-08T05:00:00Z"));
  CHECK(questions[1][QStringLiteral("use_by")][QStringLiteral("days_left")].toInt() == 5);
  CHECK(facts[QStringLiteral("containers")][1][QStringLiteral("question")].toInt() == 1);
  const QJsonObject record = facts[QStringLiteral("record")].toObject();
  CHECK(record[QStringLiteral("made_at")].toString() == QStringLiteral("2026-11-01T14:00:00Z"));
  CHECK(record[QStringLiteral("quantity")][QStringLiteral("ng")].toInteger() == 2'000'000'000'000);
}

TEST_CASE("amounts are kept to the last unit", "[batch][fixed_json]") {
  Fixed fixed = dip();
  fixed.batch.record.quantity = measure::Quantity{measure::Dimension::Mass, measure::kMostNanograms - 1};
  CHECK(again(fixed).batch.record.quantity == fixed.batch.record.quantity);
}

TEST_CASE("a date that is counted otherwise now is refused, not changed", "[batch][fixed_json]") {
  CHECK(refused(R"("date":"2026-11-07")", R"("date":"2026-11-08")") ==
        QStringLiteral("facts.questions[0].use_by was fixed as 2026-11-08, and is counted as 2026-11-07 now\n"
                       "  read it with the version of the program that fixed it"));
  CHECK(refused(R"("days_left":5)", R"("days_left":6)") ==
        QStringLiteral("facts.questions[1].use_by was fixed as frozen with 6 days left, and is counted as frozen with 5 days left now\n"
                       "  read it with the version of the program that fixed it"));
  CHECK(refused(R"("count":7)", R"("count":8)", kQuestions).contains(QStringLiteral("was fixed as 2026-11-07, and is counted as 2026-11-08 now")));
  CHECK(refused(R"("decided":true)", R"("decided":false)").startsWith(QStringLiteral("facts.questions[0].use_by was fixed as")));
}

TEST_CASE("what is missing, of another kind or not known is refused by its key", "[batch][fixed_json]") {
  CHECK(refused(R"("made_at":)", R"("made_on":)", kQuestions) == QStringLiteral("facts.questions[0].made_at is missing"));
  CHECK(refused(R"("zone":"America/New_York")", R"("zone":"Mars/Olympus")") == QStringLiteral("facts.zone is not the name of a time zone"));
  CHECK(refused(R"("zone":"America/New_York")", R"("zone":7)") == QStringLiteral("facts.zone is not a text"));
  CHECK(refused(R"("deed":"made")", R"("deed":"conjured")") ==
        QStringLiteral("facts.record.deed is not one of \"made\", \"opened\", \"thawed\", \"cut\", \"decanted\""));
  CHECK(refused(R"("deed":"made",)", "") == QStringLiteral("facts.record.deed is missing"));
  CHECK(refused(R"("number":1)", R"("number":1.5)", kContainers) == QStringLiteral("facts.containers[0].number is not a whole number"));
  CHECK(refused(R"("number":1)", R"("number":2)", kContainers) == QStringLiteral("facts.containers[0].number cannot be true"));
  CHECK(refused(R"("question":1)", R"("question":9)") == QStringLiteral("facts.containers[1].question cannot be true"));
  CHECK(refused(R"("question":1)", R"("nonsense":1)").startsWith(QStringLiteral("facts.containers[1].nonsense is not known here")));
  CHECK(refused(R"("made_at":"2026-11-01T14:00:00Z")", R"("made_at":"2026-11-01 14:00")", kQuestions) ==
        QStringLiteral("facts.questions[0].made_at is not an instant in UTC, as 2026-11-25T12:40:00Z"));
  CHECK(refused(R"("count":7)", R"("count":0)", kQuestions) == QStringLiteral("facts.questions[0].rules[0].length.count cannot be true"));
  CHECK(refused(R"({"ng":)", R"({"kg":)") == QStringLiteral("facts.record.quantity is not an amount in ng, ml-e11 or pieces-e6"));
  CHECK(refused(R"("cold_holding":["5 °C","41 °F"])", R"("cold_holding":["5 °C"])") ==
        QStringLiteral("facts.questions[0].cold_holding is not a limit in both scales, as [\"5 °C\", \"41 °F\"]"));
}
