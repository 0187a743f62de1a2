// What the record of a day says: every reading with its limit, what was not met in words, and what nobody recorded.
#include "facts/day_record.h"

#include "sheet_kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::sheets;

namespace {

QDateTime at(int hour, int minute) { return {QDate(2026, 11, 26), QTime(hour, minute), kitchen().kitchen.zone}; }
measure::Temperature celsius(int tenths) { return {tenths, measure::Scale::Celsius}; }
Entered entered(qint64 number, const QDateTime& when) {
  return {{QStringLiteral("A"), number}, when, when.addSecs(60).toUTC(), QStringLiteral("MK"), {}};
}
book::HeldTo cold() { return {std::nullopt, kitchen().rules.cold_holding}; }
measure::TemperatureLimit frost() { return {celsius(0), {320, measure::Scale::Fahrenheit}}; }

Day quiet() {
  Day out;
  out.day = QDate(2026, 11, 26);
  out.rules = QStringLiteral("us-fda-food-code-2022");
  out.rules_source = QStringLiteral("FDA Food Code 2022");
  out.printed_at = at(18, 0);
  return out;
}

Day with_head(Day day) {
  day.entries = 12;
  day.heads = QStringList{QStringLiteral("A-214-") + QString(64, u'd')};
  return day;
}

WorkSheet record(const Day& day, const SheetSetting& setting = in_english()) {
  return must(day_record(setting, with_head(day)));
}

QStringList notes(const WorkSheet& sheet) {
  QStringList out;
  for (const Part& part : sheet.parts)
    if (const Note* note = std::get_if<Note>(&part)) out << note->text;
  return out;
}

}  // namespace

TEST_CASE("each section of a day without entries says so, and a second person has a line to sign", "[facts][day]") {
  const WorkSheet sheet = must(day_record(in_english(), quiet()));
  CHECK(head(sheet) == QStringList{"Thu 26 Nov 2026", "Rules in force: us-fda-food-code-2022 · FDA Food Code 2022",
                                   "Entries of this day: 0"});
  CHECK(notes(sheet) ==
        QStringList{"Temperatures were not recorded", "Cooking: none recorded", "Cooling: none recorded",
                    "Reheating and holding: none recorded", "Received: none recorded", "Checks: none recorded",
                    "Corrective actions: none recorded", "Discarded: none recorded",
                    "Holds and releases: none recorded", "Recalls: none recorded",
                    "Corrections of dates and allergens: none recorded", "Sent and arrived: none recorded",
                    "Made: none recorded", "Count at close of day: none recorded"});
  CHECK(rows(sheet, "Review by a second person") == QStringList{"Not reviewed yet by a second person | __ | __ | __"});
}

TEST_CASE("a review is told, and how much of the day nobody but who recorded it has reviewed", "[facts][day]") {
  Day day = quiet();
  day.reviews = {{entered(9, at(21, 40)), QStringLiteral("read with JO")}};
  const QString told = QStringLiteral("21:40 | reviewed |  | read with JO | MK; A-9");
  CHECK(rows(record(day), "Review by a second person") == QStringList{told});
  CHECK(rows(record(day), "").isEmpty());
  day.unreviewed = 3;
  CHECK(rows(record(day), "Review by a second person") == QStringList{told});
  CHECK(rows(record(day), "") == QStringList{"Entries not reviewed yet by a second person: 3 | __ | __ | __"});
}

TEST_CASE("a place out of its limit is told in words, with the limit; one without a limit is not passed as within",
          "[facts][day]") {
  Day day = quiet();
  day.places = {
      {entered(1, at(7, 5)), QStringLiteral("walk-in 1"), celsius(35), cold()},
      {entered(2, at(7, 6)), QStringLiteral("walk-in 2"), celsius(91), cold()},
      {entered(3, at(7, 7)), QStringLiteral("van"), celsius(35), {}},
      {entered(4, at(7, 8)), QStringLiteral("hot box"), celsius(560), {kitchen().rules.hot_holding, {}}},
      {entered(5, at(7, 9)), QStringLiteral("kerb"), celsius(35), {}, true},
      {entered(6, at(7, 9)), QStringLiteral("kerb"), celsius(35), cold(), true},
      {entered(7, at(7, 9)), QStringLiteral("salad drawer"), celsius(-5), {frost(), kitchen().rules.cold_holding}}};
  CHECK(rows(record(day), "Temperatures of places") ==
        QStringList{
            "07:05 | walk-in 1 | 3.5 °C | within its limit; 5 °C (41 °F) or below | MK; A-1",
            "07:06 | walk-in 2 | 9.1 °C | OUT OF LIMIT; 5 °C (41 °F) or below | MK; A-2",
            "07:07 | van | 3.5 °C | LIMIT NOT KNOWN | MK; A-3",
            "07:08 | hot box | 56 °C | OUT OF LIMIT; 57 °C (135 °F) or above | MK; A-4",
            "07:09 | kerb | 3.5 °C | LIMIT NOT KNOWN; the book does not have this place | MK; A-5",
            "07:09 | kerb | 3.5 °C | within its limit; 5 °C (41 °F) or below | MK; A-6",
            "07:09 | salad drawer | −0.5 °C | OUT OF LIMIT; 0 °C (32 °F) or above; 5 °C (41 °F) or below | MK; A-7"});
}

TEST_CASE("a reading is judged by the figure of its own scale", "[facts][day]") {
  Day day = quiet();
  day.places = {{entered(1, at(7, 5)), QStringLiteral("walk-in 1"),
                 measure::Temperature{411, measure::Scale::Fahrenheit}, cold()}};
  CHECK(rows(record(day), "Temperatures of places").value(0).contains("41.1 °F | OUT OF LIMIT"));
}

TEST_CASE("an entry is late that was recorded more than an hour after it happened", "[facts][day]") {
  Day day = quiet();
  day.made = {{entered(1, at(8, 0)), QStringLiteral("stew"), QStringLiteral("L1"), quantity("4.5 kg")},
              {entered(2, at(8, 0)), QStringLiteral("stew"), QStringLiteral("L2"), std::nullopt}};
  day.made[0].entered.recorded_at = at(9, 0).toUTC();
  day.made[1].entered.recorded_at = at(9, 1).toUTC();
  CHECK(rows(record(day), "Made") ==
        QStringList{"08:00 | Chicken stew; L1 | 4.5 kg |  | MK; A-1",
                    "08:00; LATE: recorded THU 26 NOV 09:01 | Chicken stew; L2 |  |  | MK; A-2"});
}

TEST_CASE("a correction stands beside what it corrects", "[facts][day]") {
  Day day = quiet();
  day.places = {{entered(1, at(7, 5)), QStringLiteral("walk-in 1"), celsius(130), cold()}};
  day.places[0].entered.corrected = {
      {{QStringLiteral("A"), 9}, at(7, 20), QStringLiteral("TR"), QStringLiteral("it read 3 °C")}};
  CHECK(
      rows(record(day), "Temperatures of places") ==
      QStringList{"07:05 | walk-in 1; CORRECTED THU 26 NOV 07:20: it read 3 °C · TR · A-9 | 13 °C | OUT OF LIMIT; 5 °C "
                  "(41 °F) or below | MK; A-1"});
}

TEST_CASE("cooks and coolings stand with their minimum and their verdict; what is not shown is not met",
          "[facts][day]") {
  Day day = quiet();
  const auto* poultry = kitchen().rules.cook_for(QStringLiteral("poultry"));
  REQUIRE(poultry);
  Cooked cook{
      entered(1, at(9, 0)), QStringLiteral("stew"), QStringLiteral("L1"), celsius(760), 20, poultry->any_of, true};
  day.cooks = {cook, cook, cook};
  day.cooks[1].met = false;
  day.cooks[2].met.reset();
  day.cooks[2].core.reset();
  const QStringList cooks = rows(record(day), "Cooking");
  CHECK(cooks.value(0) == "09:00 | Chicken stew; L1 | 76 °C; held 20 s | met; Minimum 74 °C (165 °F) | MK; A-1");
  CHECK(cooks.value(1).contains("| NOT MET; Minimum"));
  CHECK(cooks.value(2).contains("| NOT RECORDED; held 20 s | NOT SHOWN YET; Minimum"));

  using State = batch::Cooling::State;
  Cooled cooled{entered(4, at(10, 0)),
                QStringLiteral("stew"),
                QStringLiteral("L1"),
                {{at(10, 0), celsius(570), QStringLiteral("MK")}, {at(11, 50), celsius(200), QStringLiteral("TR")}},
                {},
                {State::Pending, QStringLiteral("not yet at 5 °C"), std::nullopt}};
  day.coolings = {cooled, cooled, cooled};
  day.coolings[1].verdict.state = State::Passed;
  day.coolings[2].verdict.state = State::NotNeeded;
  const QStringList coolings = rows(record(day), "Cooling");
  CHECK(coolings.value(0) ==
        "10:00 | Chicken stew; L1 | 10:00 57 °C MK; 11:50 20 °C TR | NOT SHOWN YET; not yet at 5 °C | MK; A-4");
  CHECK(coolings.value(1).contains("| met;"));
  CHECK(coolings.value(2).contains("| NOT SHOWN YET;"));
}

TEST_CASE("a reheat is held to the minimum for reheating, its time too, and not to hot holding",
          "[facts][day][src:food-code-2022/3-403.11]") {
  const auto* minimum = kitchen().rules.reheat_for(QStringLiteral("hot-holding"));
  REQUIRE(minimum);
  const auto told = [&](std::optional<measure::Temperature> core, int seconds) {
    Day day = quiet();
    day.holding = {{entered(1, at(11, 0)),
                    QStringLiteral("stew"),
                    QStringLiteral("L1"),
                    QStringLiteral("reheated"),
                    core,
                    seconds,
                    {},
                    minimum->at}};
    return rows(record(day), "Reheating and holding").value(0).section(QStringLiteral(" | "), 3, 3);
  };
  CHECK(told(celsius(740), 15) == "met; Minimum 74 °C (165 °F) for 15 s");
  CHECK(told(celsius(739), 15).startsWith("NOT MET; Minimum"));
  CHECK(told(celsius(740), 14).startsWith("NOT MET; Minimum"));
  CHECK(told(celsius(740), 0).startsWith("NOT SHOWN YET; Minimum"));
  CHECK(told(celsius(600), 0).startsWith("NOT MET; Minimum"));
  CHECK(told(std::nullopt, 15).startsWith("NOT SHOWN YET; Minimum"));
}

TEST_CASE("receipts, discards, holds, recalls, counts, dispatches and reviews say what was done and why",
          "[facts][day]") {
  Day day = quiet();
  day.receipts = {{entered(1, at(6, 0)), QStringLiteral("A"), QStringLiteral("butter"), QStringLiteral("S-7"),
                   quantity("10 kg"), celsius(92), false, QStringLiteral("too warm")}};
  day.discards = {{entered(2, at(7, 0)),
                   QStringLiteral("stew"),
                   QStringLiteral("L1"),
                   {{QStringLiteral("tub"), {2}, 0}},
                   quantity("2 kg"),
                   QStringLiteral("left out")}};
  day.actions = {
      {entered(3, at(7, 1)), Acted::Kind::Hold, {}, {}, QStringLiteral("walk-in 2"), QStringLiteral("warm"), {}},
      {entered(4, at(7, 2)),
       Acted::Kind::RecallOpened,
       QStringLiteral("butter"),
       QStringLiteral("S-6"),
       {},
       QStringLiteral("the supplier called"),
       {}},
      {entered(5, at(7, 3)),
       Acted::Kind::Corrective,
       {},
       QStringLiteral("L1"),
       {},
       QStringLiteral("warm"),
       QStringLiteral("reheated once")}};
  day.counts = {
      {entered(6, at(17, 0)), QStringLiteral("stew"), QStringLiteral("L1"), {{QStringLiteral("tub"), {1}, 0}}, 50},
      {entered(7, at(17, 0)), QStringLiteral("stew"), QStringLiteral("L1"), {{QStringLiteral("tub"), {3}, 0}}, 0}};
  day.shipped = {{entered(8, at(12, 0)),
                  Shipped::Kind::Arrived,
                  QStringLiteral("Harbour Street"),
                  QStringLiteral("118"),
                  {},
                  QStringLiteral("parcel"),
                  QStringLiteral("L9"),
                  {},
                  celsius(40),
                  false,
                  QStringLiteral("open lid")}};
  day.reviews = {{entered(10, at(17, 30)), {}}};
  const WorkSheet sheet = record(day);
  CHECK(rows(sheet, "Received") == QStringList{"06:00 | Butter; S-7; A; 10 kg | 9.2 °C | REFUSED; too warm | MK; A-1"});
  CHECK(rows(sheet, "Discarded") == QStringList{"07:00 | Chicken stew; L1 | 1 tub (2); 2 kg | left out | MK; A-2"});
  CHECK(rows(sheet, "Holds and releases") == QStringList{"07:01 | walk-in 2 |  | HOLD; warm | MK; A-3"});
  CHECK(rows(sheet, "Recalls") == QStringList{"07:02 | Butter; S-6 |  | RECALL OPENED; the supplier called | MK; A-4"});
  CHECK(rows(sheet, "Corrective actions") == QStringList{"07:03 | L1 |  | reheated once; warm | MK; A-5"});
  CHECK(rows(sheet, "Count at close of day") ==
        QStringList{"17:00 | Chicken stew; L1 | 1 tub (1) | seen, 50 % left | MK; A-6",
                    "17:00 | Chicken stew; L1 | 1 tub (3) | NOT SEEN: MISSING | MK; A-7"});
  CHECK(rows(sheet, "Sent and arrived") ==
        QStringList{"12:00 | Chicken parcels; L9; Harbour Street · 118 | 4 °C | arrived; REFUSED; open lid | MK; A-8"});
  CHECK(rows(sheet, "Review by a second person") == QStringList{"17:30 | reviewed |  |  | MK; A-10"});
}

// Common practice, no source.
TEST_CASE("a check says what was checked and where, in order or not, and its remark", "[facts][day][src:practice]") {
  Day day = quiet();
  day.checks = {
      {entered(1, at(7, 0)), QStringLiteral("pests"), QStringLiteral("dry store"), true, {}},
      {entered(2, at(8, 0)), QStringLiteral("sanitizer strength"), {}, false, QStringLiteral("50 ppm, made anew")}};
  CHECK(rows(record(day), "Checks") ==
        QStringList{"07:00 | pests; dry store |  | in order | MK; A-1",
                    "08:00 | sanitizer strength |  | NOT IN ORDER; 50 ppm, made anew | MK; A-2"});
}

TEST_CASE("the head of the chain stands whole on the record; a record of entries without one is refused",
          "[facts][day]") {
  CHECK(record(quiet()).foot.value(0) == "Head of the chain: A-214-" + QString(64, u'd'));
  Day headless = quiet();
  headless.entries = 1;
  const auto refused = day_record(in_english(), headless);
  REQUIRE_FALSE(refused);
  CHECK(problem::text(refused.error()) ==
        "the head of the chain is missing from the record of 2026-11-26\n  run `lardiner verify`\n");
}

TEST_CASE("in two languages a day record says what guards safety in both", "[facts][day]") {
  Day day = quiet();
  day.places = {{entered(1, at(7, 6)), QStringLiteral("walk-in 2"), celsius(91), cold()}};
  const QStringList said = rows(record(day, in_both()), "Temperatures of places / Temperaturas de los lugares");
  CHECK(said.value(0).contains("OUT OF LIMIT; FUERA DE LÍMITE; 5 °C (41 °F) or below; 5 °C (41 °F) o menos"));
}
