// The body of an entry: exact text, and back.
#include "history/event_json.h"

#include "history/without_facts.h"
#include "random_events.h"

using namespace lardiner;
using namespace lardiner::history;

namespace {

const EntryId kId{QStringLiteral("A"), 7};

Entry entry(Event event) {
  return {kId, QDateTime(QDate(2026, 11, 25), QTime(12, 41), Qt::UTC), QStringLiteral("America/New_York"),
          std::move(event)};
}

// `body` with `with` instead of `what`, read back.
QString refused(const QByteArray& what, const QByteArray& with) {
  Event moved;
  moved.at = QDateTime(QDate(2026, 11, 25), QTime(12, 40), Qt::UTC);
  moved.by = QStringLiteral("MK");
  moved.containers = {1, 2};
  moved.temperature = measure::Temperature{410, measure::Scale::Fahrenheit};
  QByteArray text = body(entry(moved));
  REQUIRE(entry_of(kId, text));
  REQUIRE(text.contains(what));
  text.replace(what, with);
  const auto read = entry_of(kId, text);
  const auto brief = brief_entry_of(kId, text);
  REQUIRE_FALSE(read);
  REQUIRE_FALSE(brief);
  CHECK(read.error() == brief.error());
  return problem::text(read.error());
}

QString told(const char* what) {
  return QStringLiteral(
             "entry A-7: %1\n  it was written by another version of the program, or changed since: verify the ledger")
      .arg(QLatin1String(what));
}

}  // namespace

TEST_CASE("the body is compact JSON with whole numbers, and instants in UTC", "[history][event_json]") {
  Event used;
  used.kind = Kind::Used;
  used.at = QDateTime(QDate(2026, 11, 25), QTime(7, 40), QTimeZone("America/New_York"));
  used.by = QStringLiteral("MK");
  used.lot = QStringLiteral("A26329CLB01K");
  used.containers = {3};
  used.quantity = measure::quantity({5, 2}, measure::Unit::Kilogram);
  used.temperature = measure::Temperature{-5, measure::Scale::Celsius};
  used.stated = batch::StatedEnd{QDateTime(QDate(2026, 12, 2), QTime(5, 0), Qt::UTC), true, book::EndKind::UseBy};
  CHECK(body(entry(used)) ==
        QByteArray(R"({"event":"part-used","at":"2026-11-25T12:40:00Z","by":"MK","lot":"A26329CLB01K",)"
                   R"("containers":[3],"quantity":{"ng":2500000000000},"temperature":"-0.5 °C",)"
                   R"("stated":{"end":"2026-12-02T05:00:00Z","kind":"use-by"},)"
                   R"("recorded":"2026-11-25T12:41:00Z","zone":"America/New_York"})"));
}

TEST_CASE("an entry of any kind is read back as it was written, whole and in brief",
          "[history][event_json][property]") {
  random::Events random(20261126);
  for (int round = 0; round < 200; ++round) {
    for (const Kind kind : random::kinds()) {
      if (kind == Kind::Made) continue;
      const QByteArray text = body(entry(random.event(kind)));
      const auto whole = entry_of(kId, text);
      const auto brief = brief_entry_of(kId, text);
      REQUIRE(whole);
      REQUIRE(brief);
      REQUIRE(body(*whole) == text);
      REQUIRE(body(*brief) == text);
      REQUIRE(whole->id == kId);
    }
  }
}

TEST_CASE("each field of an entry is read back", "[history][event_json][property]") {
  random::Events random(7);
  for (int round = 0; round < 500; ++round) {
    const Event written = random.event(Kind::Correction);
    const auto read = entry_of(kId, body(entry(written)));
    REQUIRE(read);
    const Event& event = read->event;
    REQUIRE(event.at == written.at);
    REQUIRE(event.containers == written.containers);
    REQUIRE(event.quantity == written.quantity);
    REQUIRE(event.left_percent == written.left_percent);
    REQUIRE(event.count == written.count);
    REQUIRE(event.seconds == written.seconds);
    REQUIRE(event.temperature == written.temperature);
    REQUIRE(event.stated.has_value() == written.stated.has_value());
    if (event.stated) REQUIRE(event.stated->end == written.stated->end);
    if (event.stated) REQUIRE(event.stated->is_date == written.stated->is_date);
    if (event.stated) REQUIRE(event.stated->kind == written.stated->kind);
    REQUIRE(event.ends.has_value() == written.ends.has_value());
    if (event.ends) REQUIRE(event.ends->end == written.ends->end);
    REQUIRE(event.tcs == written.tcs);
    REQUIRE(event.accepted == written.accepted);
    REQUIRE(event.in_order == written.in_order);
    REQUIRE(event.limits == written.limits);
    REQUIRE(event.of == written.of);
    REQUIRE(event.day == written.day);
    REQUIRE(event.checked == written.checked);
    REQUIRE(event.adds == written.adds);
    REQUIRE(event.by == written.by);
    REQUIRE(event.item == written.item);
    REQUIRE(event.label_end == written.label_end);
    REQUIRE(event.book_hash == written.book_hash);
    REQUIRE(event.container_kind == written.container_kind);
  }
}

TEST_CASE("a body that lacks a key, or has one that nobody knows, is refused by its name", "[history][event_json]") {
  CHECK(refused(R"("zone":"America/New_York")", R"("zine":"America/New_York")") == told("\"zone\" is missing"));
  CHECK(refused(R"("event":"moved",)", "") == told("\"event\" is missing"));
  CHECK(refused(R"("at":"2026-11-25T12:40:00Z",)", "") == told("\"at\" is missing"));
  CHECK(refused(R"("recorded":"2026-11-25T12:41:00Z",)", "") == told("\"recorded\" is missing"));
  CHECK(refused(R"("by":"MK")", R"("bye":"MK")") == told("\"bye\" is not a key of an entry"));
  CHECK(refused(R"("event":"moved",)", R"("event":"made",)") == told("\"facts\" is missing"));
  CHECK(refused(R"("event":"moved",)", R"("event":"moved","facts":{"lot":"}"},)") ==
        told("\"facts\" is not a key of an entry"));
}

TEST_CASE("a value that no entry is written with is refused by its key", "[history][event_json]") {
  CHECK(refused("\"moved\"", "\"eaten\"") == told("\"event\" is not as an entry writes it"));
  CHECK(refused("12:40:00Z", "12:40Z") == told("\"at\" is not as an entry writes it"));
  CHECK(refused("12:40:00Z", "24:00:00Z") == told("\"at\" is not as an entry writes it"));
  CHECK(refused("2026-11-25T12:40", "2026-02-30T12:40") == told("\"at\" is not as an entry writes it"));
  CHECK(refused("[1,2]", "[1,2.5]") == told("\"containers\" is not as an entry writes it"));
  CHECK(refused("[1,2]", "[1,0]") == told("\"containers\" is not as an entry writes it"));
  CHECK(refused("[1,2]", "[]") == told("\"containers\" is not as an entry writes it"));
  CHECK(refused("41 °F", "41 F") == told("\"temperature\" is not as an entry writes it"));
  CHECK(refused("\"MK\"", "\"\"") == told("\"by\" is not as an entry writes it"));
  CHECK(refused("\"MK\"", "5") == told("\"by\" is not as an entry writes it"));
  CHECK(refused("{\"event\"", "[\"event\"") == told("its body is not a JSON object"));
}

TEST_CASE("an amount is read only as whole nanograms, parts of a millilitre or of a piece", "[history][event_json]") {
  Event used;
  used.kind = Kind::Used;
  used.at = QDateTime(QDate(2026, 11, 25), QTime(12, 40), Qt::UTC);
  used.quantity = measure::Quantity{measure::Dimension::Mass, 9'007'199'254'740'993};  // 2^53 + 1: no double holds it
  const QByteArray text = body(entry(used));
  CHECK(entry_of(kId, text)->event.quantity == used.quantity);
  for (const char* const wrong : {R"({"ng":1.5})", R"({"ng":"1"})", R"({"g":1})", R"({"ng":1,"ml-e11":1})", "{}", "1",
                                  R"({"ng":9223372036854775808})"}) {
    QByteArray changed = text;
    changed.replace(R"({"ng":9007199254740993})", wrong);
    const auto read = entry_of(kId, changed);
    REQUIRE_FALSE(read);
    CHECK(problem::text(read.error()) == told("\"quantity\" is not as an entry writes it"));
  }
}

TEST_CASE("facts are left out of a body whatever stands in their texts", "[history][event_json]") {
  CHECK(without_facts(R"({"at":"a","facts":{"x":"}\"","y":[{"facts":{}}]},"zone":"z"})") ==
        QByteArray(R"({"at":"a","zone":"z"})"));
  CHECK(without_facts(R"({"at":"\"facts\":{","facts":{},"zone":"z"})") ==
        QByteArray(R"({"at":"\"facts\":{","zone":"z"})"));
  CHECK(without_facts(R"({"at":{"facts":{}},"zone":"z"})") == std::nullopt);
  CHECK(without_facts(R"({"at":"a","facts":[],"zone":"z"})") == std::nullopt);
  CHECK(without_facts(R"({"at":"a","facts":{"x":"}"})") == std::nullopt);
}
