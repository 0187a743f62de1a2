// Tests of batch/batch with lots that were recorded before: it must not matter in which run a lot was computed.
#include <QJsonDocument>
#include <set>

#include "batch/fixed_json.h"
#include "batch/statement.h"
#include "demo_day.h"
#include "fixed_kitchen.h"
#include "random_day.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

struct Day {
  const book::Book& book;
  const char* now;
  std::vector<Record> records;

  std::vector<Fixed> run(const std::vector<Record>& some, const std::vector<Fixed>& earlier = {}) const {
    return fix_records(some, earlier, book, now);
  }
};

QString statement_of(const book::Book& book, const Batch& batch) {
  QString text;
  const auto stated = ingredient_statement(book, batch, QStringLiteral("en"), true);
  if (!stated) {
    for (const problem::Error& error : stated.error()) text += error.what + QLatin1Char('\n');
    return text;
  }
  for (const StatedIngredient& one : *stated) text += QStringLiteral("%1 %2; ").arg(one.name).arg(one.weight.amount);
  return text;
}

// A random part of the records that holds the lots that went into it too.
std::set<size_t> closed_part(std::mt19937& random, const Day& day, const std::vector<Fixed>& whole) {
  std::set<size_t> part;
  std::vector<size_t> open;
  for (size_t i = 0; i < day.records.size(); ++i)
    if (pick(random, 0, 2) == 0) open.push_back(i);
  while (!open.empty()) {
    const size_t at = open.back();
    open.pop_back();
    if (!part.insert(at).second) continue;
    const QStringList named = lots_named(day.records[at]);
    for (size_t i = 0; i < whole.size(); ++i)
      if (named.contains(whole[i].batch.lot)) open.push_back(i);
  }
  return part;
}

std::vector<Fixed> kept(const std::vector<Fixed>& fixed) {
  std::vector<Fixed> read;
  for (const Fixed& one : fixed) {
    const problem::Expected<Fixed> back = fixed_from_json(to_json(one));
    if (!back) FAIL(problem::text(back.error()).toStdString());
    read.push_back(*back);
  }
  return read;
}

// How many lots of a second run were made of lots of the first.
int check_two_runs(std::mt19937& random, const Day& day) {
  const std::vector<Fixed> whole = day.run(day.records);
  const std::set<size_t> part = closed_part(random, day, whole);
  std::vector<Record> first;
  std::vector<Record> second;
  for (size_t i = 0; i < day.records.size(); ++i) (part.count(i) ? first : second).push_back(day.records[i]);
  const std::vector<Fixed> earlier = kept(day.run(first));
  std::vector<Fixed> later = day.run(second, earlier);
  int across = 0;
  for (size_t i = 0, e = 0, l = 0; i < whole.size(); ++i) {
    const Fixed& split = part.count(i) ? earlier[e++] : later[l++];
    CHECK(bytes(split).toStdString() == bytes(whole[i]).toStdString());
    CHECK(split.batch.use_bys == whole[i].batch.use_bys);
    if (split.product) CHECK(statement_of(day.book, split.batch) == statement_of(day.book, whole[i].batch));
    if (part.count(i)) continue;
    for (const Fixed& one : earlier) across += lots_named(day.records[i]).contains(one.batch.lot) ? 1 : 0;
  }
  return across;
}

const char* const kMayo = "2026-12-20";

QByteArray dip(const QByteArray& more = {}) { return made("dip", 1, "2026-11-01 09:00", input("mayonnaise", kMayo), more); }

QByteArray dressing(const QByteArray& lot) {
  return made("dressing", 2, "2026-11-03 09:00", input("butter", kMayo) + "," + from_lot("dip", lot, "\"agreed_by\": \"MK\""));
}

}  // namespace

TEST_CASE("it does not matter whether records are computed in one run or in two", "[batch][earlier][property]") {
  std::mt19937 random(1);
  int across = 0;
  for (int i = 0; i < 40; ++i) across += check_two_runs(random, {kitchen(), kNow, random_day(random)});
  CHECK(across > 40);
}

TEST_CASE("it does not matter in how many runs the demo day is recorded", "[batch][earlier][property]") {
  std::mt19937 random(2);
  int across = 0;
  for (const char* file : {"day.csv", "day.jsonl", "trays.csv", "refused.csv"})
    for (int i = 0; i < 3; ++i) across += check_two_runs(random, {demo_kitchen(), kDemoNow, demo_records(file)});
  CHECK(across > 5);
}

TEST_CASE("a lot that was recorded before is made but once", "[batch][earlier]") {
  const Fixed before = fix(dip());
  const std::vector<Fixed> again = fix_records(records_of(dip()), {before});
  REQUIRE(again.front().batch.refused.size() == 1);
  const problem::Error& error = again.front().batch.refused.front();
  CHECK(error.what == QStringLiteral("lot %1 was made and recorded before").arg(before.batch.lot));
  CHECK(error.hint == QStringLiteral("give each batch its own number"));
  CHECK(error.place.line == 1);
  CHECK(again.front().batch.missing == QStringList{QStringLiteral("missing.other")});
  const QByteArray next = made("dip", 2, "2026-11-01 09:00", input("mayonnaise", kMayo));
  CHECK(fix_records(records_of(next), {before}).front().batch.refused.empty());
}

TEST_CASE("what happened to a recorded lot afterwards counts when it is used", "[batch][earlier]") {
  Fixed before = fix(dip());
  const std::vector<Record> made_of_it = records_of(dressing(before.batch.lot.toLatin1()));
  CHECK(fix_records(made_of_it, {before}).front().batch.use_bys.front().date == date("2026-11-07"));
  REQUIRE(happen(before, {event(Happening::Frozen, "2026-11-02 09:00"), event(Happening::Thawed, "2026-11-02 20:00")}).empty());
  const Fixed after = fix_records(made_of_it, {before}).front();
  CHECK(after.batch.previously_frozen);
  CHECK(after.batch.use_bys.front().date == date("2026-11-06"));
  REQUIRE(happen(before, {event(Happening::Discarded, "2026-11-02 21:00")}).empty());
  const Fixed gone = fix_records(made_of_it, {before}).front();
  CHECK(gone.batch.missing == QStringList{QStringLiteral("missing.input")});
}

TEST_CASE("a recorded lot that is not released, be it for its cooling alone, refuses what is made of it",
          "[batch][earlier][src:food-code-2022/3-501.14]") {
  Fixed stock = fix(made("stock", 1, "2026-11-01 09:00", input("chicken-thigh", "2026-11-03"),
                         cooked("2026-11-01 11:00") + R"(, "cooled": [{"at": "2026-11-01 12:00", "core": "135 °F"}])"),
                    kitchen(), "2026-11-01 12:30");
  REQUIRE(held_for_cooling_alone(stock));
  const std::vector<Record> made_of_it =
      records_of(made("dressing", 2, "2026-11-03 09:00", input("butter", kMayo) + "," + from_lot("stock", stock.batch.lot.toLatin1())));
  CHECK(fix_records(made_of_it, {stock}).front().batch.missing == QStringList{QStringLiteral("missing.input")});
  const measure::Temperature cold{400, measure::Scale::Fahrenheit};
  cool(stock, {{at("2026-11-01 13:30"), cold, {}}}, {}, {}, at("2026-11-01 14:00"));
  REQUIRE(stock.batch.refused.empty());
  CHECK(problem::text(fix_records(made_of_it, {stock}).front().batch.refused) == QString());
}

TEST_CASE("a class of food that the rule set has no minimum for any more refuses what is made of the raw lot",
          "[batch][earlier]") {
  Fixed tray = fix(made("raw-tray", 1, "2026-11-01 09:00", input("cod", "2026-11-10") + "," + input("butter", kMayo)));
  REQUIRE(tray.still == QStringLiteral("fish"));
  const std::vector<Record> made_of_it =
      records_of(made("fish-pie", 2, "2026-11-02 09:00",
                      input("cod", "2026-11-10") + "," + from_lot("raw-tray", tray.batch.lot.toLatin1(), "\"agreed_by\": \"MK\"") + "," + input("dip", "2026-11-05")));
  CHECK(problem::text(fix_records(made_of_it, {tray}).front().batch.refused) == QString());
  tray.still = QStringLiteral("sea-monster");
  const Fixed refused = fix_records(made_of_it, {tray}).front();
  CHECK(problem::text(refused.batch.refused)
            .contains(QStringLiteral("\"raw-tray\", lot %1, must still be cooked as \"sea-monster\", for which the rule set has no minimum any more")
                          .arg(tray.batch.lot)));
}
