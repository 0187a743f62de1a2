// Food that is over before it is labelled or used, thawed without a life, or cooked long after it was laid together.
#include "compute_kitchen.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

const book::Book& larder() {
  static const book::Book book = read_kitchen(
      {}, ingredient("ham", "yes", "", "\"none\"", "code = \"HAM\"\nitem_number = \"00000911\"\n") +
              ingredient("peas", "no", "", "\"none\"", "code = \"PEA\"\nitem_number = \"00000912\"\n") +
              product("ham-salad", "HSA", "yes", line("ham"), seven_days()) +
              product("pea-salad", "PSA", "no", line("peas"), life("ambient", "2 days")));
  return book;
}

QByteArray package(const QByteArray& item, const QByteArray& what, const QByteArray& made_at, const QByteArray& more = {}) {
  return "{\"ingredient\": \"" + item + "\", \"what\": \"" + what + "\", \"number\": 1, \"made_at\": \"" + made_at +
         "\", \"use_by\": \"2026-12-20\"" + more + "}\n";
}

Batch first(const QByteArray& lines) { return run(lines, larder()).front(); }

QStringList only(const char* key) { return {QString::fromLatin1(key)}; }

Batch burger(const QByteArray& cooked_at, const QByteArray& more = {}) {
  return run(made("burger", 1, "2026-10-01 08:00", input("ground-beef", "2026-12-01"), more + cooked(cooked_at))).front();
}

const QByteArray kToHalfPast = "\"made_to\": \"2026-10-01 08:30\", ";

// A pie made of a dip from 09:00 to 12:00, while `events` befall the dip.
Batch pie(const QByteArray& events) {
  const QByteArray dip = made("dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-12-20"), "\"events\": [" + events + "]");
  const std::vector<Batch> batches =
      run(dip + made("fish-pie", 2, "2026-11-02 09:00", input("cod", "2026-11-20") + "," + from_lot("dip", lot_of(dip)),
                     "\"made_to\": \"2026-11-02 12:00\""));
  return batches[1];
}

QByteArray discarded(const QByteArray& at, const QByteArray& containers) {
  return R"({"what": "discarded", "at": ")" + at + R"(", "containers": ")" + containers + "\"}";
}

}  // namespace

TEST_CASE("a thawed package was previously frozen, whether or not the book has a thawed life", "[batch][compute][src:practice]") {
  CHECK(first(package("peas", "thawed", "2026-10-01 08:00")).previously_frozen);
  CHECK_FALSE(first(package("peas", "decanted", "2026-10-01 08:00")).previously_frozen);
}

TEST_CASE("what is made of food that was frozen was previously frozen", "[batch][compute][src:practice]") {
  const auto made_of = [](const QByteArray& peas) {
    return first(made("pea-salad", 1, "2026-10-01 09:00", peas)).previously_frozen;
  };
  CHECK(made_of(input("peas", {}, "\"thawed\": \"2026-10-01 07:00\"")));
  CHECK(made_of(input("peas", {}, "\"frozen\": \"2026-09-01 07:00\"")));
  CHECK_FALSE(made_of(input("peas")));
  const QByteArray thawed = package("peas", "thawed", "2026-10-01 08:00");
  const QByteArray salad = made("pea-salad", 2, "2026-10-01 09:00", from_lot("peas", first(thawed).lot.toLatin1()));
  CHECK(run(thawed + salad, larder())[1].previously_frozen);
}

TEST_CASE("a bought food that was thawed is refused where the book has no thawed life for it", "[batch][compute][src:food-code-2022/3-501.17]") {
  const auto salad = [](const QByteArray& more) {
    return first(made("ham-salad", 1, "2026-10-01 09:00", input("ham", "2026-12-20", more)));
  };
  CHECK(salad("\"thawed\": \"2026-09-01 08:00\"").missing == only("missing.shelf_life"));
  CHECK(salad("\"thawed\": \"2026-10-01 08:00\"").missing == only("missing.shelf_life"));
  CHECK(salad({}).refused.empty());
}

TEST_CASE("a bought food that was thawed is dated by its thawed life", "[batch][compute][src:food-code-2022/3-501.17]") {
  const QByteArray tray = made("raw-tray", 1, "2026-11-02 09:00",
                               input("cod", "2026-12-20", "\"thawed\": \"2026-11-02 07:00\"") + "," + input("butter", "2026-12-20"));
  CHECK(last_day(good(tray)) == date("2026-11-03"));
}

TEST_CASE("a cook reading after the making's end is refused", "[batch][compute][src:practice]") {
  CHECK(burger("2026-10-01 08:30", kToHalfPast).refused.empty());
  for (const char* late : {"2026-10-01 08:31", "2026-10-25 08:00"}) {
    const Batch batch = burger(late, kToHalfPast);
    CHECK(batch.missing == only("missing.cook_reading"));
    CHECK(problem::text(batch.refused).contains(QStringLiteral("after the making ended at")));
  }
}

TEST_CASE("a cook reading more than 24 h after the making began is refused where no end is written", "[batch][compute][src:practice]") {
  CHECK(burger("2026-10-02 08:00").refused.empty());
  const Batch batch = burger("2026-10-02 08:01");
  CHECK(batch.missing == only("missing.cook_reading"));
  CHECK(batch.day_one == at("2026-10-01 08:00"));
  CHECK(problem::text(batch.refused).contains(QStringLiteral("more than 24 h")));
}

TEST_CASE("a package past its own opened life gets no new label", "[batch][compute][src:food-code-2022/3-501.18]") {
  const auto decanted = [](const QByteArray& made_at) {
    return first(package("ham", "decanted", made_at, ", \"opened\": \"2026-08-20 08:00\""));
  };
  CHECK(last_day(decanted("2026-08-26 20:00")) == date("2026-08-26"));
  const Batch late = decanted("2026-08-27 00:00");
  CHECK(late.missing == only("missing.past_its_date"));
  CHECK(late.use_bys.empty());
  CHECK_FALSE(decanted("2026-09-05 08:00").refused.empty());
}

TEST_CASE("an input that is past its date before the cook that would not renew it leaves no date", "[batch][compute][src:food-code-2022/3-501.18]") {
  const auto sauce = [](const QByteArray& butter) {
    return run(made("meat-sauce", 1, "2026-11-02 22:00", input("ground-beef", "2026-11-03") + "," + input("butter", butter), cooked("2026-11-03 00:30"))).front();
  };
  CHECK(last_day(sauce("2026-11-03")) == date("2026-11-03"));
  CHECK(sauce("2026-11-02").missing == only("missing.past_its_date"));
}

TEST_CASE("a lot that goes on time control during the making hands its hours on", "[batch][compute][src:food-code-2022/3-501.19]") {
  const auto held = [](const QByteArray& at) {
    return pie(R"({"what": "time-control", "at": ")" + at + R"(", "temperature": "41 °F"})");
  };
  const Batch during = held("2026-11-02 10:00");
  CHECK(problem::text(during.refused) == QString());
  REQUIRE(during.use_bys.size() == 1);
  CHECK(during.use_bys.front().form == UseBy::Form::Instant);
  CHECK(during.use_bys.front().end == at("2026-11-02 14:00"));
  CHECK(last_day(held("2026-11-02 12:01")) == date("2026-11-05"));  // after the making: what went in was cold
}

TEST_CASE("a lot that is discarded during the making is refused as its input", "[batch][compute][src:practice]") {
  const Batch during = pie(discarded("2026-11-02 10:00", "1-4"));
  CHECK(during.missing == only("missing.input"));
  CHECK(problem::text(during.refused).contains(QStringLiteral("was discarded before the making that it went into was over")));
  CHECK(pie(discarded("2026-11-02 10:00", "1-3")).refused.empty());  // one container was there throughout
  CHECK(pie(discarded("2026-11-02 13:00", "1-4")).refused.empty());
}

TEST_CASE("what is past its date and a cook that was too low are told as such", "[batch][compute][src:practice]") {
  const auto missing = [](const QByteArray& beef, const QByteArray& core) {
    return run(made("burger", 1, "2026-06-10 09:00", input("ground-beef", beef), cooked("2026-06-10 10:00", core))).front().missing;
  };
  CHECK(missing("2026-06-12", "165 °F").isEmpty());
  CHECK(missing("2026-06-09", "165 °F") == only("missing.past_its_date"));
  CHECK(missing("2026-06-12", "140 °F") == only("missing.cook_too_low"));
}
