// Rows of events: what each may say, and every fault at its cell.
#include "history/read_events.h"

#include "batch/clock.h"
#include "book_files.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::history;

namespace {

const book::Book& kitchen() {
  static const book::Book book = [] {
    const book::Reading reading =
        book::read_book(test_support::toml_files(QStringLiteral(LARDINER_SOURCE_DIR "/tests/fuzz/book")),
                        test_support::toml_files(QStringLiteral(LARDINER_SOURCE_DIR "/templates/rules")));
    REQUIRE(reading.findings.errors.empty());
    return reading.book;
  }();
  return book;
}

ReadSettings settings() { return {QDateTime(QDate(2026, 11, 26), QTime(18, 0), kitchen().kitchen.zone), false}; }

Events read(const char* json) {
  const auto rows = reader::read_json_lines(QByteArray(json), QStringLiteral("day.jsonl"));
  REQUIRE(rows);
  return read_events(*rows, kitchen(), settings());
}

// `keys` besides at and by, as one row that is right.
Event one(const QByteArray& keys) {
  const Events events =
      read((R"({"at": "2026-11-26 09:00", "by": "MK", )" + QByteArray(keys).replace('\n', ' ') + "}").constData());
  CHECK(problem::text(events.errors) == QString());
  REQUIRE(events.events.size() == 1);
  return events.events.front();
}

// What is wrong with such a row: its faults and remedies, without places.
QString refused(const QByteArray& keys) {
  const Events events =
      read((R"({"at": "2026-11-26 09:00", "by": "MK", )" + QByteArray(keys).replace('\n', ' ') + "}").constData());
  CHECK(events.events.empty());
  QStringList told;
  for (const problem::Error& error : events.errors) {
    CHECK(error.place.line == 1);
    told += error.what + QStringLiteral("; ") + error.hint;
  }
  return told.join(u'\n');
}

}  // namespace

TEST_CASE("a receipt says lot, item, quantity and the temperature of what needs control", "[history][read_events]") {
  const Event event = one(R"("event": "received", "lot": "MB-5521", "item": "butter-unsalted", "quantity": "20 kg",
    "count": 2, "kind": "case", "temperature": "38 °F", "use_by": "2026-12-20", "supplier_item": "meadow-butter-25")");
  CHECK(event.kind == Kind::Received);
  CHECK(event.quantity == measure::quantity({20, 1}, measure::Unit::Kilogram));
  CHECK(event.count == 2);
  CHECK(event.tcs);
  CHECK(event.state == QStringLiteral("chilled"));
  CHECK(event.stated->end == batch::end_of(QDate(2026, 12, 20), kitchen().kitchen.zone));
  CHECK(event.source.line == 1);
}

TEST_CASE("a receipt without a temperature, or of what is made here, is refused", "[history][read_events]") {
  CHECK(refused(R"("event": "received", "lot": "MB-5521", "item": "butter-unsalted", "quantity": "20 kg")") ==
        QStringLiteral("the event \"received\" has no temperature; \"butter-unsalted\" needs time and temperature "
                       "control, or may: write what the thermometer showed, as 41 °F"));
  CHECK(refused(R"("event": "received", "lot": "X1", "item": "chicken-tinga", "quantity": "2 kg")") ==
        QStringLiteral("\"chicken-tinga\" is made here, and not received; record what was made, or what was returned"));
  CHECK(refused(R"("event": "received", "lot": "X1", "item": "butter-unsalted", "quantity": "2 kg",
    "state": "ambient")") ==
        QStringLiteral("\"butter-unsalted\" came ambient, but it needs time and temperature control, or may; "
                       "do not accept it, or state an ambient shelf life in the book"));
}

TEST_CASE("every word of an event is read with what it must say", "[history][read_events]") {
  QByteArray ours;
  for (const char check : QByteArray("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ")) {
    const QByteArray code = QByteArray("A26329CLB01") + check;
    const Events tried =
        read((R"({"event": "moved", "at": "2026-11-26 09:00", "by": "MK", "place": "p", "lot": ")" + code + "\"}")
                 .constData());
    if (tried.errors.empty()) ours += code;
  }
  REQUIRE(ours.size() == 12);  // exactly one check character holds
  const QByteArray of = R"("lot": ")" + ours + R"(", )";
  CHECK(one(of + R"("event": "moved", "place": "walk-in 1", "containers": "1-3, 7")").containers ==
        std::vector<int>{1, 2, 3, 7});
  CHECK(one(of + R"("event": "cooled", "temperature": "70 °F")").temperature->tenths == 700);
  for (const char* const word : {"frozen", "thawed", "opened", "hot-held", "finished"})
    CHECK(one(of + R"("event": ")" + word + "\"").kind == kind_of(QString::fromLatin1(word)));
  CHECK(one(of + R"("event": "time-control", "temperature": "40 °F")").kind == Kind::TimeControl);
  CHECK(one(of + R"("event": "reheated", "temperature": "165 °F", "held": "15 s")").seconds == 15);
  CHECK(one(of + R"("event": "split", "containers": "3", "count": 2, "kind": "tub")").count == 2);
  CHECK(one(of + R"("event": "part-used", "quantity": "200 g")").kind == Kind::Used);
  CHECK(one(of + R"("event": "counted", "left": "half")").left_percent == 50);
  CHECK(one(of + R"("event": "counted", "left": "75 %")").left_percent == 75);
  CHECK(one(of + R"("event": "counted", "left": "none")").left_percent == 0);
  CHECK(one(of + R"("event": "dispatched", "site": "harbour-street", "temperature": "39 °F")").site ==
        QStringLiteral("harbour-street"));
  CHECK_FALSE(one(R"("event": "arrived", "note": "DN-1", "temperature": "50 °F", "accepted": "no", "reason": "warm")")
                  .accepted);
  CHECK(one(of + R"("event": "returned", "site": "harbour-street", "reason": "too many")").kind == Kind::Returned);
  CHECK(one(of + R"("event": "discarded", "reason": "dropped")").reason == QStringLiteral("dropped"));
  CHECK(one(R"("event": "hold", "place": "walk-in 1", "reason": "door stood open")").place ==
        QStringLiteral("walk-in 1"));
  CHECK(one(R"("event": "release", "of": "A-12", "reason": "checked")").of.number == 12);
  CHECK(one(of + R"("event": "voided", "reason": "smeared")").kind == Kind::Voided);
  CHECK(one(R"("event": "place-temperature", "place": "van", "temperature": "39 °F")").place == QStringLiteral("van"));
  CHECK(one(of + R"("event": "reading", "what": "hot-held", "temperature": "140 °F")").what ==
        QStringLiteral("hot-held"));
  CHECK(one(R"("event": "corrective-action", "action": "moved all to walk-in 2")").kind == Kind::CorrectiveAction);
  CHECK(one(R"("event": "review", "day": "2026-11-25")").day == QDate(2026, 11, 25));
  CHECK(one(of + R"("event": "correction", "use_by": "2026-11-27", "reason": "slip")").ends->is_date);
  CHECK(one(R"("event": "correction", "of": "A-3", "reason": "slip")").of.number == 3);
  CHECK(one(R"("event": "correction", "item": "butter-unsalted", "supplier_item": "meadow-butter-25",
    "adds": "sesame, fish:cod", "reason": "letter")")
            .adds == QStringList{QStringLiteral("sesame"), QStringLiteral("fish:cod")});
  CHECK(one(R"("event": "recall", "lot": "MB-5521", "supplier_item": "meadow-butter-25", "reason": "call")").item ==
        QStringLiteral("butter-unsalted"));
  CHECK(one(R"("event": "recall-closed", "of": "A-3", "reason": "over")").kind == Kind::RecallClosed);
}

TEST_CASE("a lot of ours with a wrong check character is refused, and a supplier's is anything",
          "[history][read_events]") {
  int refusals = 0;
  for (const char check : QByteArray("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ")) {
    const QByteArray code = QByteArray("A26329CLB01") + check;
    const Events tried =
        read((R"({"event": "moved", "at": "2026-11-26 09:00", "by": "MK", "place": "p", "lot": ")" + code + "\"}")
                 .constData());
    if (tried.errors.empty()) continue;
    ++refusals;
    CHECK(tried.errors.front().what ==
          QStringLiteral("the check character of lot \"%1\" does not hold").arg(QString::fromLatin1(code)));
    CHECK(tried.errors.front().hint == QStringLiteral("copy it once more from the label"));
  }
  CHECK(refusals == 35);
  CHECK(one(R"("event": "moved", "lot": "HW-88213", "place": "walk-in 1")").lot == QStringLiteral("HW-88213"));
}

TEST_CASE("what the program writes itself, or nobody knows, is no event of a row", "[history][read_events]") {
  CHECK(refused(R"("event": "made")") ==
        QStringLiteral(
            "\"made\" is no row of an event; what was made is a record of its own: leave event out (RECORDS.md)"));
  for (const char* const word : {"printed", "reprinted", "print-asked", "print-sent", "print-done", "medium-loaded"})
    CHECK(refused(QByteArray(R"("event": ")") + word + "\"") ==
          QStringLiteral("\"%1\" is no row of an event; the program writes that itself, when it prints labels")
              .arg(QLatin1String(word)));
  CHECK(refused(R"("event": "discardet")") == QStringLiteral("\"discardet\" is no event; did you mean discarded?"));
}

TEST_CASE("what a row lacks, contradicts or cannot have is told at once", "[history][read_events]") {
  CHECK(refused(R"("event": "moved", "lot": "HW-1", "place": "p", "left": "half")")
            .startsWith(QStringLiteral("the event \"moved\" cannot have \"left\"; ")));
  CHECK(refused(R"("event": "discarded")") ==
        QStringLiteral("the event \"discarded\" has no lot; write the lot as it stands on the label\n"
                       "the event \"discarded\" has no reason; write why"));
  CHECK(refused(R"("event": "hold", "lot": "HW-1", "place": "p", "reason": "r")") ==
        QStringLiteral(
            "the event \"hold\" has a lot and a place; keep one of the two: a place stands for all that is in it"));
  CHECK(refused(R"("event": "hold", "reason": "r")") ==
        QStringLiteral(
            "the event \"hold\" has neither lot nor place; write the lot, or the place for all that stands in it"));
  CHECK(refused(R"("event": "counted", "lot": "HW-1", "left": "101 %")") ==
        QStringLiteral(
            "\"101 %\" does not say how much is left; write full, half, quarter, none, or a percentage, as 75 %"));
  CHECK(refused(R"("event": "release", "of": "A-0", "reason": "r")") ==
        QStringLiteral("\"A-0\" is not the number of an entry; write it as its history shows it: A-123"));
  CHECK(refused(R"("event": "review", "day": "2026-11-27")") ==
        QStringLiteral(
            "\"2026-11-27\" is in the future: it is now Thu 26 Nov 2026 18:00; write a day that is over, or today"));
  CHECK(refused(R"("event": "split", "lot": "HW-1", "containers": "1-2", "count": 2, "kind": "tub")") ==
        QStringLiteral("the event \"split\" has several containers; write an event for each that was divided"));
  CHECK(refused(R"("event": "correction", "reason": "r")") ==
        QStringLiteral("the event \"correction\" must correct one thing; write of (an entry), or lot and use_by (an "
                       "earlier date), or item, supplier_item and adds"));
  CHECK(refused(R"("event": "recall", "lot": "X", "reason": "r")") ==
        QStringLiteral("the event \"recall\" has neither item nor supplier_item; write which item the lot is of: two "
                       "suppliers may use the same lot"));
  CHECK(refused(R"("event": "arrived", "lot": "X", "temperature": "39 °F", "accepted": "no")") ==
        QStringLiteral("the event \"arrived\" does not say why it was not accepted; write the reason"));
  CHECK(refused(R"("event": "dispatched", "lot": "X", "site": "harbor-street", "temperature": "39 °F")") ==
        QStringLiteral("\"harbor-street\" is not a site of the book; did you mean harbour-street?"));
}

TEST_CASE("nothing happened in the future, and by nobody of the kitchen", "[history][read_events]") {
  const Events events =
      read(R"({"event": "moved", "lot": "HW-1", "place": "p", "at": "2026-11-26 18:01", "by": "XX"})");
  CHECK(events.events.empty());
  REQUIRE(events.errors.size() == 2);
  CHECK(events.errors[0].what ==
        QStringLiteral("\"2026-11-26 18:01\" is in the future: it is now Thu 26 Nov 2026 18:00"));
  CHECK(events.errors[1].what == QStringLiteral("\"XX\" is nobody of this kitchen"));
  CHECK(
      read(R"({"event": "moved", "lot": "HW-1", "place": "p", "at": "2026-11-26 18:00", "by": "MK"})").errors.empty());
}
