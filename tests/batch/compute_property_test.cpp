// What no order, split, depth or addition may change, tried on random days of batches.
#include <map>

#include "random_day.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

struct Facts {
  bool refused = false;
  QDateTime end;
  std::vector<book::Declaration> contains;
  book::Readiness readiness = book::Readiness::Unknown;
  friend bool operator==(const Facts&, const Facts&) = default;
};

std::map<QString, Facts> facts(const std::vector<Record>& records) {
  std::map<QString, Facts> all;
  for (const Batch& batch : compute(kitchen(), records, at(kNow))) {
    Facts one{!batch.refused.empty(), {}, batch.declared.contains, batch.readiness};
    for (const UseBy& use_by : batch.use_bys)
      if (!use_by.reasons.empty() && (!one.end.isValid() || use_by.reasons.front().end < one.end)) one.end = use_by.reasons.front().end;
    all[batch.lot] = one;
  }
  return all;
}

bool holds(const std::vector<book::Declaration>& all, const std::vector<book::Declaration>& some) {
  return std::all_of(some.begin(), some.end(), [&](const book::Declaration& d) { return std::find(all.begin(), all.end(), d) != all.end(); });
}

constexpr int kDays = 60;

}  // namespace

TEST_CASE("the order of records and of inputs never matters", "[batch][compute][property]") {
  Random random(1);
  int dated = 0;
  for (int i = 0; i < kDays; ++i) {
    std::vector<Record> records = random_day(random);
    const auto before = facts(records);
    std::shuffle(records.begin(), records.end(), random);
    for (Record& record : records) std::shuffle(record.inputs.begin(), record.inputs.end(), random);
    CHECK(facts(records) == before);
    for (const auto& [lot, fact] : before) dated += fact.refused ? 0 : 1;
  }
  CHECK(dated > 2 * kDays);  // the days are not all refused
}

TEST_CASE("splitting an input into two lines changes nothing", "[batch][compute][property]") {
  Random random(2);
  for (int i = 0; i < kDays; ++i) {
    std::vector<Record> records = random_day(random);
    const auto before = facts(records);
    for (Record& record : records)
      if (!record.inputs.empty()) record.inputs.push_back(record.inputs[static_cast<size_t>(pick(random, 0, static_cast<int>(record.inputs.size()) - 1))]);
    CHECK(facts(records) == before);
  }
}

TEST_CASE("another input never makes a date later nor loses an allergen, through any depth", "[batch][compute][property]") {
  Random random(3);
  for (int i = 0; i < kDays; ++i) {
    std::vector<Record> records = random_day(random);
    const auto before = facts(records);
    Input more = bought(pick(random, 0, 1) == 0 ? "butter" : "oysters", pick(random, 1, 20));
    more.agreed_by = QStringLiteral("MK");
    records[static_cast<size_t>(pick(random, 0, static_cast<int>(records.size()) - 1))].inputs.push_back(more);
    for (const auto& [lot, fact] : facts(records)) {
      const Facts& was = before.at(lot);
      CHECK((fact.refused || !was.refused));
      if (!fact.refused) CHECK(fact.end <= was.end);
      if (!was.refused && !fact.refused) CHECK(holds(fact.contains, was.contains));
    }
  }
}

TEST_CASE("a substitution without instead_of keeps the old allergens; with it, only those of nothing else go", "[batch][compute][property]") {
  Random random(4);
  for (int i = 0; i < kDays; ++i) {
    Record dip = record_of("dressing", 1, 1);
    dip.inputs.push_back(bought("butter", pick(random, 2, 20)));
    Input other = bought(pick(random, 0, 1) == 0 ? "margarine" : "cream", 20);
    other.agreed_by = QStringLiteral("MK");
    dip.inputs.push_back(other);
    const auto kept = compute(kitchen(), {dip}, at(kNow)).front();
    CHECK(holds(kept.declared.contains, kitchen().ingredient(QStringLiteral("butter"))->supplier_items.front().declared.contains));
    dip.inputs.erase(dip.inputs.begin());
    dip.inputs.front().instead_of = QStringLiteral("butter");
    const auto replaced = compute(kitchen(), {dip}, at(kNow)).front();
    CHECK(holds(replaced.declared.contains, kitchen().ingredient(other.item)->supplier_items.front().declared.contains));
    CHECK(holds(replaced.declared.contains, kitchen().ingredient(QStringLiteral("mustard"))->supplier_items.front().declared.contains));
  }
}

TEST_CASE("a later moment of making never finds an input younger", "[batch][compute][property]") {
  for (int day = 1; day <= 7; ++day) {
    Record dip = record_of("dip", 1, 1);
    dip.inputs.push_back(bought("mayonnaise", 30));
    Record pie = record_of("fish-pie", 2, day);
    pie.inputs.push_back(bought("cod", 30));
    Input of_dip;
    of_dip.item = QStringLiteral("dip");
    of_dip.lot = lot_of(dip);
    pie.inputs.push_back(of_dip);
    const auto batch = compute(kitchen(), {dip, pie}, at(kNow))[1];
    REQUIRE(batch.refused.empty());
    CHECK(batch.use_bys.front().date == std::min(QDate(2026, 11, day + 3), QDate(2026, 11, 7)));
  }
}
