// The rows of an export: which entries and lots they are of, their amounts, dates and addresses.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "exporting.h"
#include "gs1/digital_link.h"

using namespace lardiner;
using namespace lardiner::ledger;
using history::Event;
using history::Kind;

namespace {

const QDate kDay(2026, 11, 25);

QDateTime after(int minutes) { return kMorning.addSecs(60 * minutes); }

Event dispatched(const QString& lot, int minutes, const QString& note, std::vector<int> containers = {}) {
  Event event = of_lot(Kind::Dispatched, lot, after(minutes), std::move(containers));
  event.note = note;
  return event;
}

Event arrived(const QString& note, int minutes, bool accepted = true) {
  Event event = of_lot(Kind::Arrived, {}, after(minutes));
  event.note = note;
  event.accepted = accepted;
  return event;
}

Event returned(const QString& lot, int minutes) {
  Event event = of_lot(Kind::Returned, lot, after(minutes));
  event.site = "mill-road";
  event.reason = "not needed";
  return event;
}

// Two lots on one note, a third on another.
struct TwoOnANote : Exporting {
  TwoOnANote() {
    record({made("L1", "salsa", kMorning, 3), made("L2", "salsa", kMorning, 2), made("L3", "salsa", kMorning, 1)},
           after(10));
    record({dispatched("L1", 20, "DN-1", {1, 2}), dispatched("L2", 20, "DN-1"), dispatched("L3", 20, "DN-2")},
           after(30));
  }
  QStringList told(const QString& event, const QString& columns) { return of(rows(day(kDay), columns), event); }
};

QJsonArray events_of(const QByteArray& document) {
  const QJsonObject whole = QJsonDocument::fromJson(document).object();
  INFO(document.toStdString());
  REQUIRE_FALSE(whole.isEmpty());
  return whole["epcisBody"].toObject()["eventList"].toArray();
}

QJsonObject quantity_of(const QJsonValue& event) {
  return event.toObject()["quantityList"].toArray().first().toObject();
}

}  // namespace

TEST_CASE("an arrival by note alone has a row for each lot of the note, also when they have left again",
          "[ledger][export][arrival]") {
  TwoOnANote note;
  note.record({arrived("DN-1", 40)}, after(50));
  const auto arrivals = [&] {
    return note.told("arrival", "event traceability_lot_code quantity unit from to reference_document_number");
  };
  const QStringList both{"arrival L1 2 kg Test Kitchen, 1 Test Lane Mill Road DN-1",
                         "arrival L2 2 kg Test Kitchen, 1 Test Lane Mill Road DN-1"};
  CHECK(arrivals() == both);
  note.record({returned("L1", 60)}, after(70));
  CHECK(arrivals() == both);
  // On another note none of its containers bears the first any more.
  note.record({dispatched("L1", 80, "DN-3", {1, 2})}, after(90));
  CHECK(arrivals() == both);
  note.record({of_lot(Kind::Discarded, "L2", after(95), {1, 2})}, after(99));
  CHECK(arrivals() == both);
}

TEST_CASE("an arrival by note is of what was on its way then, with what it held then", "[ledger][export][arrival]") {
  TwoOnANote note;
  note.record({of_lot(Kind::Arrived, "L2", after(35), {2}), arrived("DN-1", 40, false)}, after(50));
  CHECK(note.told("arrival", "event traceability_lot_code quantity") ==
        QStringList{"arrival L2 1", "arrival refused L1 2", "arrival refused L2 1"});
}

TEST_CASE("an event is of the lot that it reached, not of one of the same code that came later", "[ledger][export]") {
  Exporting two;
  two.record({received("tomatillo", "S-1", kMorning, 5000)}, after(1));
  two.record({of_lot(Kind::Discarded, "S-1", after(2))}, after(3));
  two.record({received("onion", "S-1", after(4), 9000)}, after(5));
  CHECK(two.rows(day(kDay), "event item product_description quantity") ==
        QStringList{"receiving tomatillo Tomatillos 5", "discard tomatillo Tomatillos 5", "receiving onion onion 9"});
}

TEST_CASE("what is thrown away at a site is thrown away there", "[ledger][export]") {
  TwoOnANote note;
  note.record({arrived("DN-1", 40), of_lot(Kind::Discarded, "L2", after(50), {1}),
               of_lot(Kind::Discarded, "L1", after(50), {3})},
              after(60));
  CHECK(note.told("discard", "event location reference_document_number") ==
        QStringList{"discard Mill Road DN-1", "discard Test Kitchen, 1 Test Lane "});
}

TEST_CASE("parts that were used and containers that were divided are no rows, and leave the amounts as they then were",
          "[ledger][export]") {
  TwoOnANote lots;
  Event used = of_lot(Kind::Used, "L1", after(40), {3});
  used.quantity = grams(250);
  Event split = of_lot(Kind::Split, "L1", after(41), {3});
  split.count = 3;
  split.container_kind = "tub";
  lots.record({used, split, of_lot(Kind::Discarded, "L1", after(42), {4, 5})}, after(50));
  const QStringList all = lots.rows(day(kDay), "event traceability_lot_code quantity");
  CHECK(all.size() == 3 + 3 + 1);
  CHECK(all.last() == "discard L1 0.5");
}

TEST_CASE("what containers hold whose size nobody wrote is not known, and not nothing", "[ledger][export]") {
  Exporting unknown;
  batch::Fixed fixed = batch_of("L1", "salsa", kMorning, 2, {});
  fixed.batch.record.containers.front().holds = grams(0);
  unknown.record({made(fixed), dispatched("L1", 20, "DN-1")}, after(30));
  CHECK(of(unknown.rows(day(kDay), "event quantity unit"), "shipping") == QStringList{"shipping  "});
}

TEST_CASE("each of the two half past ones of the day on which clocks go back has its own offset",
          "[ledger][export][src:iana-tzdb]") {
  // New York, 2026-11-01: 01:30 is 05:30 UTC in summer time, and once more 06:30 UTC.
  Exporting fall;
  const QDateTime first(QDate(2026, 11, 1), QTime(5, 30), Qt::UTC), second = first.addSecs(3600);
  fall.record({received("tomatillo", "S-1", first, 1000), received("tomatillo", "S-2", second, 1000)},
              second.addSecs(60));
  CHECK(fall.rows(day(QDate(2026, 11, 1)), "date time utc_offset traceability_lot_code") ==
        QStringList{"2026-11-01 01:30:00 UTC-04:00 S-1", "2026-11-01 01:30:00 UTC-05:00 S-2"});
  const QJsonArray events = events_of(fall.epcis(day(QDate(2026, 11, 1))));
  CHECK(events.at(0)["eventTime"].toString() == "2026-11-01T01:30:00-04:00");
  CHECK(events.at(0)["eventTimeZoneOffset"].toString() == "-04:00");
  CHECK(events.at(1)["eventTime"].toString() == "2026-11-01T01:30:00-05:00");
  CHECK(events.at(1)["eventTimeZoneOffset"].toString() == "-05:00");
}

TEST_CASE("the day on which clocks go forward lacks an hour and no row", "[ledger][export][src:iana-tzdb]") {
  Exporting spring;
  const QDateTime before(QDate(2026, 3, 8), QTime(6, 59, 59), Qt::UTC);
  spring.record({received("tomatillo", "S-1", before, 1000), received("tomatillo", "S-2", before.addSecs(1), 1000)},
                before.addSecs(60));
  CHECK(spring.rows(day(QDate(2026, 3, 8)), "date time utc_offset traceability_lot_code") ==
        QStringList{"2026-03-08 01:59:59 UTC-05:00 S-1", "2026-03-08 03:00:00 UTC-04:00 S-2"});
}

TEST_CASE("a kitchen whose clock is UTC's says so as the others do", "[ledger][export]") {
  Exporting london;
  const QDateTime at(QDate(2026, 11, 25), QTime(9, 0), Qt::UTC);
  REQUIRE(london.ledger->append({received("tomatillo", "S-1", at, 1000)}, {"A", at, "Europe/London"}));
  CHECK(london.rows(day(kDay), "date time utc_offset") == QStringList{"2026-11-25 09:00:00 UTC+00:00"});
}

TEST_CASE("a lot of ours is named by the address of its labels, another's by one of the kitchen's own",
          "[ledger][export][src:gs1-dl]") {
  Exporting made_here;
  batch::Fixed numbered = batch_of("A26329SAL01K", "salsa", kMorning, 1, {{"tomatillo", "T/1", 500}});
  numbered.batch.gtin = "02012345678903";
  made_here.record({received("tomatillo", "T/1", kMorning, 5000), made(numbered), made("L2", "salsa", kMorning, 1)},
                   after(10));
  made_here.record({dispatched("A26329SAL01K", 20, "DN-1")}, after(30));
  const QJsonArray events = events_of(made_here.epcis(day(kDay)));
  REQUIRE(events.size() == 4);
  const auto output = [](const QJsonValue& event) {
    return event["outputQuantityList"].toArray().first()["epcClass"].toString();
  };
  CHECK(output(events.at(1)) == "https://lot.example/01/02012345678903/10/A26329SAL01K");
  CHECK(quantity_of(events.at(3))["epcClass"].toString() == output(events.at(1)));
  const auto link = gs1::parse_digital_link(output(events.at(1)));
  REQUIRE(link);
  CHECK(link->gtin == "02012345678903");
  CHECK(link->lot == "A26329SAL01K");
  CHECK(output(events.at(2)) == "https://lot.example/item/salsa/lot/L2");
  CHECK(events.at(1)["inputQuantityList"].toArray().first()["epcClass"].toString() ==
        "https://lot.example/item/tomatillo/lot/T%2F1");
}

TEST_CASE("a lot that no Digital Link can name is refused by its code, and so is no other",
          "[ledger][export][src:gs1-dl]") {
  const TrackedLot good{QString(20, 'A'), "salsa", "Salsa", "02012345678903"};
  CHECK(class_uri(good, "https://lot.example"));
  TrackedLot longer = good;
  longer.code += 'A';  // an AI (10) has at most 20 characters
  const auto refused = class_uri(longer, "https://lot.example");
  REQUIRE_FALSE(refused);
  CHECK(refused.error().what.startsWith("lot AAAAAAAAAAAAAAAAAAAAA of salsa: "));
  longer.gtin.clear();
  CHECK(class_uri(longer, "https://lot.example"));
}

TEST_CASE("a lot of ours that cannot be read ends the export with its name", "[ledger][export]") {
  Exporting two;
  two.record({made("L1", "salsa", kMorning, 2)}, after(10));
  two.record({made("L2", "salsa", kMorning.addDays(1), 1, {{"salsa", "L1", 500}}),
              of_lot(Kind::Dispatched, "L1", kMorning.addDays(1), {2})},
             kMorning.addDays(1).addSecs(60));
  REQUIRE(two.csv(day(kDay.addDays(1))).size() == 2);
  two.ledger->store().run("UPDATE event SET body = '{}' WHERE seq = 1");
  two.ledger->lots().forget();
  const QStringList refused = two.csv(day(kDay.addDays(1)));
  REQUIRE(refused.size() == 1);
  INFO(refused.front().toStdString());
  CHECK(refused.front().startsWith(two.path + ": lot L1 of salsa cannot be read: entry A-1 cannot be read: "));
  CHECK(refused.front().endsWith("\n  lardiner verify tells whether it was changed; restore a backup that verifies"));
  CHECK(two.epcis(day(kDay.addDays(1))) == refused.front().toUtf8());
}

TEST_CASE("weights are in kilograms or pounds, volumes in litres, all else in pieces, whatever their size",
          "[ledger][export][src:unece-rec-20]") {
  const auto shown = [](measure::Quantity quantity, measure::System units) {
    const Measured amount = measured(quantity, units);
    return std::pair(amount.count.amount, amount.unit);
  };
  using measure::System;
  using measure::Unit;
  // 453.59237 g is a pound.
  const measure::Quantity pound{measure::Dimension::Mass, 453'592'370'000};
  CHECK(shown(pound, System::Customary) == std::pair(qint64{1'000'000}, Unit::Pound));
  CHECK(shown(pound, System::Metric) == std::pair(qint64{453'592}, Unit::Kilogram));
  CHECK(shown({measure::Dimension::Mass, 500'000}, System::Metric) == std::pair(qint64{1}, Unit::Kilogram));
  CHECK(shown({measure::Dimension::Mass, 499'999}, System::Metric) == std::pair(qint64{0}, Unit::Kilogram));
}

TEST_CASE("a document names its units by their codes, and leaves out what is not known",
          "[ledger][export][src:unece-rec-20]") {
  Exporting units;
  Event light = received("tomatillo", "S-1", kMorning, 0);
  light.quantity = measure::quantity({501, 2}, measure::Unit::Gram);
  Event milk = received("milk", "S-2", kMorning, 0);
  milk.quantity = measure::quantity({3, 2}, measure::Unit::Litre);
  Event eggs = received("egg", "S-3", kMorning, 0);
  eggs.quantity = measure::quantity({30, 1}, measure::Unit::Piece);
  Event refused = received("onion", "S-4", kMorning, 0);
  refused.accepted = false;
  refused.reason = "warm";
  units.record({light, milk, eggs, refused}, after(10));
  const QJsonArray events = events_of(units.epcis(day(kDay)));
  REQUIRE(events.size() == 4);
  const auto amount = [&](int at) {
    const QJsonObject quantity = quantity_of(events.at(at));
    return std::pair(quantity["quantity"].toDouble(), quantity["uom"].toString());
  };
  CHECK(amount(0) == std::pair(0.2505, QString("KGM")));  // grams are kilograms: one unit a dimension
  CHECK(amount(1) == std::pair(1.5, QString("LTR")));
  CHECK(amount(2) == std::pair(30.0, QString("H87")));
  CHECK(quantity_of(events.at(3)).keys() == QStringList{"epcClass"});
}
