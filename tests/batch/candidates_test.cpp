// Tests of inputs whose lot nobody said: of all that it may have been, the least favourable counts.
#include <QJsonDocument>

#include "batch/fixed_json.h"
#include "batch/statement.h"
#include "fixed_kitchen.h"
#include "random_day.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

const char* const kLater = "2026-12-20";

QByteArray dip(int number, const QByteArray& day, const QByteArray& more_inputs = {}, const QByteArray& more = {}) {
  return made("dip", number, day + " 09:00", input("mayonnaise", kLater) + more_inputs, more);
}

// A dressing that holds one of the dips, nobody knows which.
Record dressing(const std::vector<Fixed>& dips) {
  Record record = records_of(made("dressing", 9, "2026-11-04 09:00", input("butter", kLater) + "," + input("celery"))).front();
  Input any;
  any.item = QStringLiteral("dip");
  any.agreed_by = QStringLiteral("MK");
  any.quantity = measure::quantity({100, 1}, measure::Unit::Gram);
  for (const Fixed& fixed : dips) any.candidates += fixed.batch.lot;
  record.inputs.push_back(any);
  return record;
}

Fixed made_of(const std::vector<Fixed>& dips) { return fix_records({dressing(dips)}, dips).front(); }

bool contains(const Batch& batch, const char* substance) {
  return std::any_of(batch.declared.contains.begin(), batch.declared.contains.end(),
                     [&](const book::Declaration& d) { return d.substance == QLatin1String(substance); });
}

}  // namespace

TEST_CASE("of several lots that it may have been the earliest date counts", "[batch][candidates]") {
  const std::vector<Fixed> dips{fix(dip(1, "2026-11-03")), fix(dip(2, "2026-11-01")), fix(dip(3, "2026-11-02"))};
  const Fixed any = made_of(dips);
  CHECK(problem::text(any.batch.refused) == QString());
  CHECK(use_by_of(any, 0)->date == date("2026-11-07"));
  CHECK(use_by_of(made_of({dips[0]}), 0)->date == date("2026-11-09"));
}

TEST_CASE("of several lots that it may have been all allergens are declared", "[batch][candidates]") {
  const QByteArray sesame = "," + input("sesame", {}, "\"agreed_by\": \"MK\"");
  const Fixed plain = fix(dip(1, "2026-11-03"));
  const Fixed other = fix(dip(2, "2026-11-03", sesame));
  CHECK(contains(made_of({plain, other}).batch, "sesame"));
  CHECK(contains(made_of({plain, other}).batch, "egg"));
  CHECK_FALSE(contains(made_of({plain}).batch, "sesame"));
}

TEST_CASE("what may have been frozen before was", "[batch][candidates]") {
  const Fixed fresh = fix(dip(1, "2026-11-03"));
  Fixed frozen = fix(dip(2, "2026-11-03"));
  REQUIRE(happen(frozen, {event(Happening::Frozen, "2026-11-03 10:00"), event(Happening::Thawed, "2026-11-04 08:00")}).empty());
  CHECK(made_of({fresh, frozen}).batch.previously_frozen);
  CHECK_FALSE(made_of({fresh}).batch.previously_frozen);
}

TEST_CASE("the order of candidates, and naming one twice, decides nothing", "[batch][candidates][property]") {
  std::mt19937 random(1);
  const QByteArray sesame = "," + input("sesame", {}, "\"agreed_by\": \"MK\"");
  const std::vector<Fixed> dips{fix(dip(1, "2026-11-03")), fix(dip(2, "2026-11-01", sesame)), fix(dip(3, "2026-11-02"))};
  Record record = dressing(dips);
  const auto facts = [&](const Record& one) {
    QJsonObject json = to_json(fix_records({one}, dips).front());
    json.remove(QStringLiteral("record"));
    return QJsonDocument(json).toJson();
  };
  const QByteArray before = facts(record);
  for (int i = 0; i < 12; ++i) {
    QStringList& lots = record.inputs.back().candidates;
    std::shuffle(lots.begin(), lots.end(), random);
    if (i % 3 == 0) lots.append(lots.front());
    CHECK(facts(record).toStdString() == before.toStdString());
  }
}

TEST_CASE("it does not matter whether the candidates are of the run or were recorded before", "[batch][candidates]") {
  const std::vector<Record> records = records_of(dip(1, "2026-11-03") + dip(2, "2026-11-01"));
  const std::vector<Fixed> dips = fix_records(records);
  std::vector<Record> together{dressing(dips)};  // before what it is made of
  together.insert(together.end(), records.begin(), records.end());
  CHECK(bytes(fix_records(together).front()).toStdString() == bytes(made_of(dips)).toStdString());
}

TEST_CASE("a candidate that is not known counts as bought, with the date that is written", "[batch][candidates]") {
  const std::vector<Fixed> dips{fix(dip(1, "2026-11-03"))};
  Record record = dressing(dips);
  record.inputs.back().candidates += QStringLiteral("UNKNOWN-7");
  const Fixed undated = fix_records({record}, dips).front();
  CHECK(undated.batch.missing == QStringList{QStringLiteral("missing.input_date")});
  CHECK(problem::text(undated.batch.refused)
            .contains(QStringLiteral("\"dip\", lot UNKNOWN-7, needs time and temperature control, and its date is not written")));
  record.inputs.back().stated = StatedEnd{end_of(date("2026-11-06"), kZone), true, book::EndKind::UseBy};
  const Fixed dated = fix_records({record}, dips).front();
  CHECK(problem::text(dated.batch.refused) == QString());
  CHECK(use_by_of(dated, 0)->date == date("2026-11-06"));
}

TEST_CASE("a candidate that is refused itself refuses what may have been made of it", "[batch][candidates]") {
  const Fixed good = fix(dip(1, "2026-11-03"));
  const Fixed bad = fix(made("dip", 2, "2026-11-03 09:00", input("mayonnaise", "2026-11-01")));
  REQUIRE(!bad.batch.refused.empty());
  CHECK(made_of({good, bad}).batch.missing == QStringList{QStringLiteral("missing.input")});
  CHECK(made_of({good}).batch.refused.empty());
}

TEST_CASE("a cook ends no clock of what may have been ready to eat", "[batch][candidates][src:food-code-2022/3-501.17]") {
  const QByteArray cod = input("cod", "2026-11-10");
  const auto pie = [&](int number, const QByteArray& day, const QByteArray& inputs) {
    return fix(made("fish-pie", number, day + " 09:00", inputs + "," + input("dip", "2026-11-06")));
  };
  const Fixed raw = pie(1, "2026-11-02", cod);
  const Fixed ready = pie(2, "2026-11-02", input("tuna", {}, "\"instead_of\": \"cod\", \"agreed_by\": \"MK\""));
  REQUIRE(raw.batch.refused.empty());
  REQUIRE(ready.batch.refused.empty());
  const auto baked = [&](const std::vector<Fixed>& pies) {
    Record record = records_of(made("baked-pie", 3, "2026-11-04 09:00", input("fish-pie", "2026-11-05"), cooked("2026-11-04 10:00"))).front();
    record.inputs.front().stated.reset();
    for (const Fixed& one : pies) record.inputs.front().candidates += one.batch.lot;
    return fix_records({record}, pies).front();
  };
  CHECK(problem::text(baked({raw, ready}).batch.refused) == QString());
  CHECK(use_by_of(baked({raw, ready}), 0)->date == date("2026-11-05"));
  CHECK(use_by_of(baked({raw}), 0)->date == date("2026-11-06"));  // of the dip in it, which was ready to eat
}

TEST_CASE("an ingredient statement counts an unknown lot once, with all that it may hold", "[batch][candidates]") {
  const QByteArray sesame = "," + input("sesame", {}, "\"quantity\": \"50 g\", \"agreed_by\": \"MK\"");
  const std::vector<Fixed> dips{fix(dip(1, "2026-11-03")), fix(dip(2, "2026-11-03", sesame))};
  const auto statement = [&](const Fixed& fixed) {
    const auto stated = ingredient_statement(kitchen(), fixed.batch, QStringLiteral("en"), false);
    if (!stated) FAIL(problem::text(stated.error()).toStdString());
    return *stated;
  };
  const auto of_dip = [](const std::vector<StatedIngredient>& all) {
    std::vector<StatedIngredient> found;
    for (const StatedIngredient& one : all)
      if (one.name == QStringLiteral("dip")) found.push_back(one);
    REQUIRE(found.size() == 1);
    return found.front();
  };
  const StatedIngredient any = of_dip(statement(made_of(dips)));
  CHECK(any.weight == measure::quantity({100, 1}, measure::Unit::Gram));
  CHECK(any.parts.size() == 3);
  CHECK(of_dip(statement(made_of({dips[0]}))).parts.size() == 2);
}
