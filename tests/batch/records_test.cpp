// Records as kitchens write them: CSV and JSON Lines say the same.
#include <random>

#include "compute_kitchen.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

Records good_csv(const QByteArray& text) {
  const Records records = read_csv(text);
  if (!records.errors.empty()) FAIL(problem::text(records.errors).toStdString());
  return records;
}

void check_dip(const Record& record) {
  CHECK(record.item == QStringLiteral("dip"));
  CHECK(record.number == 1);
  CHECK(record.quantity == measure::quantity({12300, 1}, measure::Unit::Gram));
  CHECK(record.made_at == at("2026-11-25 07:40"));
  CHECK(record.time_known);
  CHECK(record.made_to == at("2026-11-25 08:25"));
  CHECK(record.by == QStringLiteral("MK"));
  CHECK(record.site == QStringLiteral("harbour-street"));
  CHECK(record.order == QStringLiteral("HS-1182"));
  REQUIRE(record.containers.size() == 2);
  CHECK(record.containers[0].count == 24);
  CHECK(record.containers[0].kind == QStringLiteral("tub"));
  CHECK(record.containers[1].holds == measure::quantity({300, 1}, measure::Unit::Gram));
  REQUIRE(record.inputs.size() == 2);
  CHECK(record.inputs[0].item == QStringLiteral("mayonnaise"));
  CHECK(record.inputs[0].supplier_item == QStringLiteral("mayonnaise-a"));
  CHECK(record.inputs[0].lot == QStringLiteral("MB-5521"));
  REQUIRE(record.inputs[0].stated);
  CHECK(record.inputs[0].stated->end == at("2026-12-21 00:00"));
  CHECK(record.inputs[0].opened_at == at("2026-11-24 00:00"));
  CHECK(record.inputs[1].quantity == measure::quantity({2, 1}, measure::Unit::Kilogram));
  REQUIRE(record.events.size() == 1);
  CHECK(record.events[0].what == Happening::Frozen);
  CHECK(record.events[0].containers == std::vector<int>{13, 14, 20});
}

const QByteArray kCsv =
    "row,product,number,quantity,made_at,made_to,by,containers,site,order,item,supplier_item,lot,use_by,opened,at,what\n"
    ",dip,1,12.3 kg,2026-11-25 07:40,2026-11-25 08:25,MK,24 tub 500 g + 1 tub 300 g,harbour-street,HS-1182,,,,,,,\n"
    "input,,1,,,,,,,,mayonnaise,mayonnaise-a,MB-5521,2026-12-20,2026-11-24,,\n"
    "input,,1,2 kg,,,,,,,onion,,,,,,\n"
    "event,,1,,,,JO,\"13-14, 20\",,,,,,,,2026-11-25 11:00,frozen\n";

}  // namespace

TEST_CASE("a CSV record with further rows", "[batch][records]") { check_dip(good_csv(kCsv).records.front()); }

TEST_CASE("further rows may stand anywhere in the file", "[batch][records]") {
  QList<QByteArray> lines = kCsv.trimmed().split('\n');
  std::mt19937 random(7);
  for (int i = 0; i < 20; ++i) {
    std::shuffle(lines.begin() + 1, lines.end(), random);
    Record record = good_csv(lines.join('\n') + '\n').records.front();
    std::sort(record.inputs.begin(), record.inputs.end(), [](const Input& a, const Input& b) { return a.item < b.item; });
    check_dip(record);
  }
}

TEST_CASE("semicolons and decimal commas, as some spreadsheets write them", "[batch][records]") {
  const QByteArray text =
      "row;product;number;quantity;made_at;made_to;by;containers;site;order;item;supplier_item;lot;use_by;opened;at;what\n"
      ";dip;1;12,3 kg;2026-11-25 07:40;2026-11-25 08:25;MK;24 tub 0,5 kg + 1 tub 300 g;harbour-street;HS-1182;;;;;;;\n"
      "input;;1;;;;;;;;mayonnaise;mayonnaise-a;MB-5521;2026-12-20;2026-11-24;;\n"
      "input;;1;2 kg;;;;;;;onion;;;;;;\n"
      "event;;1;;;;JO;13-14,20;;;;;;;;2026-11-25 11:00;frozen\n";
  check_dip(good_csv(text).records.front());
}

TEST_CASE("the same record as JSON", "[batch][records]") {
  const Records records = read_json(
      R"({"product": "dip", "number": 1, "quantity": "12.3 kg", "made_at": "2026-11-25T07:40", "made_to": "2026-11-25 08:25", "by": "MK", "site": "harbour-street", "order": "HS-1182", "containers": [{"count": 24, "kind": "tub", "holds": "500 g"}, {"count": 1, "kind": "tub", "holds": "300 g"}], "inputs": [{"item": "mayonnaise", "supplier_item": "mayonnaise-a", "lot": "MB-5521", "use_by": "2026-12-20", "opened": "2026-11-24"}, {"item": "onion", "quantity": "2 kg"}], "events": [{"what": "frozen", "at": "2026-11-25 11:00", "containers": "13-14, 20", "by": "JO"}]})"
      "\n");
  CHECK(problem::text(records.errors) == QString());
  check_dip(records.records.front());
}

TEST_CASE("cook and cooling readings, a corrective action and reheating", "[batch][records]") {
  const Record record = good_csv(
      "row,product,number,quantity,made_at,containers,corrective_action,corrective_by,at,core,held,microwave,stood,temperature,what\n"
      ",stock,2,18 kg,2026-11-25 08:10,9 tub 2 kg,reheated and cooled again,MK,,,,,,,\n"
      "cooked,,2,,,,,,2026-11-25 09:20,168 °F,15 s,yes,2 min,,\n"
      "cooled,,2,,,,,,2026-11-25 09:30,\"65,5 °C\",,,,,\n"
      "event,,2,,,,,,2026-11-25 12:00,,15 s,,,165 °F,reheated\n").records.front();
  CHECK(record.corrective_by == QStringLiteral("MK"));
  CHECK(record.cooked.front().microwave);
  CHECK(record.cooked.front().seconds == 15);
  CHECK(record.cooked.front().stood_seconds == 120);
  CHECK(record.cooled.front().core == measure::Temperature{655, measure::Scale::Celsius});
  CHECK(record.events.front().temperature == measure::Temperature{1650, measure::Scale::Fahrenheit});
  CHECK(record.events.front().seconds == 15);
}

TEST_CASE("a package of an ingredient, and container groups too many for the cell", "[batch][records]") {
  const Records records = good_csv(
      "row,what,ingredient,number,made_at,by,supplier_item,supplier_lot,use_by,containers\n"
      ",opened,cream,1,2026-11-25 06:50,MK,cream-a,C-9917,2026-12-09 14:00,\n"
      "containers,,cream,1,,,,,,2 jar 1 L\n");
  const Record& record = records.records.front();
  CHECK(record.deed == Deed::Opened);
  CHECK(record.supplier_lot == QStringLiteral("C-9917"));
  CHECK_FALSE(record.stated->is_date);
  CHECK(record.containers.front().count == 2);
}

TEST_CASE("a further row names the product where two records share a number", "[batch][records]") {
  const Records records = good_csv(
      "row,product,number,quantity,made_at,containers,item,use_by\n"
      ",dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,,\n"
      ",creamy,1,2 kg,2026-11-25 08:10,4 tub 500 g,,\n"
      "input,creamy,1,,,,cream,2026-12-01\n");
  CHECK(records.records[0].inputs.empty());
  CHECK(records.records[1].inputs.size() == 1);
}

TEST_CASE("a date alone is known to be one, and an offset says which of two hours is meant", "[batch][records]") {
  CHECK_FALSE(read_json(made("dip", 1, "2026-11-25", {})).records.front().time_known);
  CHECK(read_json(made("dip", 1, "2026-11-01 01:30-05:00", {})).records.front().made_at.toUTC() == QDateTime(QDate(2026, 11, 1), QTime(6, 30), Qt::UTC));
}

TEST_CASE("the worked examples of the format are read", "[batch][records]") {
  const QByteArray format = file_bytes(QStringLiteral(LARDINER_SOURCE_DIR "/src/batch/RECORDS.md"));
  const qsizetype csv = format.indexOf("```csv\n") + 7;
  const auto rows = reader::read_csv(format.mid(csv, format.indexOf("```", csv) - csv), QStringLiteral("example.csv"));
  REQUIRE(rows);
  for (const problem::Error& error : read_records(rows->rows, kitchen(), {at(kNow), false}).errors)
    CHECK(error.code == problem::Code::Unknown);  // only what this kitchen's book does not have
}
