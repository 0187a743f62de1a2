// Rows of events that name a place of the book, with the limits that it is held to; and checks.
#include "book_files.h"
#include "history/event_json.h"
#include "history/read_events.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::history;

namespace {

book::Book kitchen_with(const QByteArray& places) {
  auto files = test_support::toml_files(QStringLiteral(LARDINER_SOURCE_DIR "/tests/fuzz/book"));
  files.push_back({QStringLiteral("places.toml"), places});
  book::Reading reading =
      book::read_book(files, test_support::toml_files(QStringLiteral(LARDINER_SOURCE_DIR "/templates/rules")));
  REQUIRE(problem::text(reading.findings.errors) == QString());
  return std::move(reading.book);
}

const book::Book& kitchen() {
  static const book::Book book = kitchen_with(
      "[[place]]\nname = \"walk-in 1\"\nkind = \"chilled\"\n"
      "[[place]]\nname = \"freezer 2\"\nkind = \"frozen\"\nat_most = \"0 °F (-18 °C)\"\n"
      "[[place]]\nname = \"dry store\"\nkind = \"ambient\"\n");
  return book;
}

Events read(const QByteArray& keys, const book::Book& book = kitchen()) {
  const auto rows =
      reader::read_json_lines(R"({"at": "2026-11-26 09:00", "by": "MK", )" + keys + "}", QStringLiteral("day.jsonl"));
  REQUIRE(rows);
  return read_events(*rows, book, {QDateTime(QDate(2026, 11, 26), QTime(18, 0), book.kitchen.zone), false});
}

Event one(const QByteArray& keys, const book::Book& book = kitchen()) {
  const Events events = read(keys, book);
  CHECK(problem::text(events.errors) == QString());
  REQUIRE(events.events.size() == 1);
  return events.events.front();
}

QString refused(const QByteArray& keys) {
  const Events events = read(keys);
  CHECK(events.events.empty());
  return problem::text(events.errors);
}

QByteArray temperature_of(const QByteArray& place) {
  return R"("event": "place-temperature", "temperature": "39 °F", "place": ")" + place + "\"";
}

QString limits_of(const QByteArray& place, const book::Book& book = kitchen()) {
  return text(one(temperature_of(place), book).limits);
}

}  // namespace

TEST_CASE("a temperature of a place keeps the limits that the book holds it to", "[history][read_events][place]") {
  CHECK(limits_of("walk-in 1") == "41 °F (5 °C) or below");
  CHECK(limits_of("freezer 2") == "0 °F (-18 °C) or below");
  CHECK(limits_of("dry store") == QString());
  CHECK(limits_of("walk-in 1", kitchen_with("[[place]]\nname = \"walk-in 1\"\nkind = \"hot\"\n")) ==
        "135 °F (57 °C) or above");
}

TEST_CASE("no other event keeps limits", "[history][read_events][place]") {
  const Event hold = one(R"("event": "hold", "place": "walk-in 1", "reason": "door stood open")");
  CHECK(hold.place == QStringLiteral("walk-in 1"));
  CHECK_FALSE(hold.limits.known());
}

TEST_CASE("an event names a place of the book, when the book has places", "[history][read_events][place]") {
  CHECK(refused(temperature_of("walk-in 2")).endsWith(QStringLiteral("  did you mean walk-in 1?\n")));
  CHECK(refused(temperature_of("kerb"))
            .endsWith(QStringLiteral(
                "  write one of walk-in 1, freezer 2, dry store, or add it to the book as a [[place]]\n")));
  for (const char* const keys : {R"("event": "moved", "lot": "HW-1", "place": "Walk-in 1")",
                                 R"("event": "hold", "reason": "r", "place": "Walk-in 1")",
                                 R"("event": "frozen", "lot": "HW-1", "place": "Walk-in 1")",
                                 R"("event": "counted", "lot": "HW-1", "left": "full", "place": "Walk-in 1")",
                                 R"("event": "check", "what": "pests", "in_order": true, "place": "Walk-in 1")"}) {
    const Events events = read(keys);
    CHECK(events.events.empty());
    REQUIRE(events.errors.size() == 1);
    CHECK(events.errors.front().what == QStringLiteral("\"Walk-in 1\" is not a place of the book"));
    CHECK(events.errors.front().hint == QStringLiteral("did you mean walk-in 1?"));
  }
}

TEST_CASE("without places in the book a place is any name, and its limits are not known",
          "[history][read_events][place]") {
  const Event van = one(temperature_of("van"), kitchen_with({}));
  CHECK(van.place == QStringLiteral("van"));
  CHECK_FALSE(van.limits.known());
}

// Common practice, no source.
TEST_CASE("a check says what was checked, whether it was in order, and its remark",
          "[history][read_events][src:practice]") {
  const Event check = one(
      R"("event": "check", "what": "sanitizer strength", "in_order": "no", "place": "walk-in 1", "note": "50 ppm, made anew")");
  CHECK(check.kind == Kind::Check);
  CHECK(check.what == QStringLiteral("sanitizer strength"));
  CHECK_FALSE(check.in_order);
  CHECK(check.note == QStringLiteral("50 ppm, made anew"));
  CHECK(check.place == QStringLiteral("walk-in 1"));
  CHECK(one(R"("event": "check", "what": "pests", "in_order": true)").in_order);
}

TEST_CASE("a check without what or whether, or not in order without a remark, is refused",
          "[history][read_events][src:practice]") {
  const auto told = [](const char* keys) {
    const Events events = read(QByteArray(R"("event": "check", )") + keys);
    CHECK(events.events.empty());
    REQUIRE(events.errors.size() == 1);
    return events.errors.front().what + QStringLiteral("; ") + events.errors.front().hint;
  };
  CHECK(told(R"("what": "pests")") == QStringLiteral("the event \"check\" has no in_order; write yes or no"));
  CHECK(told(R"("in_order": true)") ==
        QStringLiteral("the event \"check\" has no what; write what was checked, as sanitizer strength"));
  CHECK(told(R"("what": "pests", "in_order": false)") ==
        QStringLiteral("the event \"check\" does not say what is not in order; write it as its note"));
  CHECK(told(R"("what": "pests", "in_order": "perhaps")").contains(QStringLiteral("in_order")));
  CHECK(told(R"("what": "pests", "in_order": true, "lot": "HW-1")").contains(QStringLiteral("cannot have \"lot\"")));
}

TEST_CASE("limits and order stand in a body only where there is something to say, so that older bodies stay the same",
          "[history][event_json][place]") {
  Entry entry{{QStringLiteral("A"), 1},
              QDateTime(QDate(2026, 11, 26), QTime(14, 1), Qt::UTC),
              QStringLiteral("America/New_York"),
              {}};
  entry.event = one(temperature_of("van"), kitchen_with({}));
  CHECK(body(entry) ==
        R"({"event":"place-temperature","at":"2026-11-26T14:00:00Z","by":"MK","place":"van","temperature":"39 °F",)"
        R"("recorded":"2026-11-26T14:01:00Z","zone":"America/New_York"})");
  entry.event = one(temperature_of("freezer 2"));
  CHECK(
      body(entry) ==
      R"({"event":"place-temperature","at":"2026-11-26T14:00:00Z","by":"MK","place":"freezer 2","temperature":"39 °F",)"
      R"("at_most":["-18 °C","0 °F"],"recorded":"2026-11-26T14:01:00Z","zone":"America/New_York"})");
  const auto back = entry_of(entry.id, body(entry));
  REQUIRE(back);
  CHECK(back->event.limits == entry.event.limits);
  for (const char* const wrong : {R"(["0 °F","-18 °C"])", R"(["-18 °C"])", R"("0 °F")", R"(["-18 C","0 °F"])"}) {
    QByteArray changed = body(entry);
    changed.replace(R"(["-18 °C","0 °F"])", wrong);
    CHECK_FALSE(entry_of(entry.id, changed));
  }
}
