// Batches from records: what went in, the cook, cooling, freezing, rework, and the dates that come of them.
#include "compute_kitchen.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

const QByteArray kBurgers = made("burger", 1, "2026-06-01 09:00", input("ground-beef", "2026-06-03"), cooked("2026-06-01 10:00"));

QByteArray chili(const QByteArray& burgers, const QByteArray& made_at = "2026-06-03 09:00", const QByteArray& more = {}) {
  return made("chili", 2, made_at, from_lot("burger", burgers, more), cooked("2026-06-03 10:00"));
}

bool names(const Batch& batch, const char* rule) {
  return std::any_of(batch.use_bys.front().reasons.begin(), batch.use_bys.front().reasons.end(),
                     [&](const Reason& reason) { return reason.rule.contains(QLatin1String(rule)); });
}

}  // namespace

TEST_CASE("burgers cooked on 1 June go into chili on 3 June: the chili keeps to 7 June", "[batch][compute][src:snhd-datemarking]") {
  const QByteArray lot = lot_of(kBurgers);
  CHECK(last_day(good(kBurgers + chili(lot), 0)) == date("2026-06-07"));
  const Batch batch = good(kBurgers + chili(lot), 1);
  CHECK(last_day(batch) == date("2026-06-07"));
  CHECK(names(batch, "burger, lot A26152BUR01"));
}

TEST_CASE("the order of records does not matter", "[batch][compute]") {
  const QByteArray lot = lot_of(kBurgers);
  CHECK(last_day(good(chili(lot) + kBurgers, 0)) == date("2026-06-07"));
}

TEST_CASE("tuna opened on day 1 and made into salad on day 3 leaves it four more days", "[batch][compute][src:gilmer-wv]") {
  const QByteArray mayonnaise = input("mayonnaise", "2026-08-01");
  const QByteArray opened = input("tuna", {}, "\"opened\": \"2026-06-01\"");
  CHECK(last_day(good(made("tuna-salad", 1, "2026-06-03 09:00", opened + "," + mayonnaise))) == date("2026-06-07"));
  CHECK(last_day(good(made("tuna-salad", 1, "2026-06-03 09:00", input("tuna") + "," + mayonnaise))) == date("2026-06-09"));
}

TEST_CASE("an opened ready-to-eat package counts from its opening, and never past the maker's date", "[batch][compute][src:food-code-2022/3-501.17]") {
  const auto salad = [](const QByteArray& use_by, const QByteArray& opened) {
    return last_day(good(made("three-day-dip", 1, "2026-10-03 09:00", input("mayonnaise", use_by, "\"opened\": \"" + opened + "\""))));
  };
  CHECK(salad("2026-12-01", "2026-10-02") == date("2026-10-05"));
  CHECK(salad("2026-12-01", "2026-09-28") == date("2026-10-04"));
  CHECK(salad("2026-10-03", "2026-10-02") == date("2026-10-03"));
}

TEST_CASE("an ingredient's own rule for opened packages caps too", "[batch][compute]") {
  CHECK(last_day(good(made("creamy", 1, "2026-10-03 09:00", input("cream", "2026-12-01", "\"opened\": \"2026-10-02\"")))) == date("2026-10-04"));
}

TEST_CASE("a raw tray is capped by raw fish with an earlier date", "[batch][compute]") {
  const auto tray = [](const QByteArray& fish) {
    return last_day(good(made("raw-tray", 1, "2026-11-02 09:00", input("cod", fish) + "," + input("butter", "2026-12-20"))));
  };
  CHECK(tray("2026-11-03") == date("2026-11-03"));
  CHECK(tray("2026-11-20") == date("2026-11-04"));
}

TEST_CASE("a cook that meets its minimum ends the raw input's clock, and day 1 is the day of the cook", "[batch][compute][src:food-code-2022/3-501.17]") {
  const auto sauce = [](const QByteArray& beef, const QByteArray& butter) {
    return good(made("meat-sauce", 1, "2026-11-02 22:00", input("ground-beef", beef) + "," + input("butter", butter), cooked("2026-11-03 00:30")));
  };
  const Batch batch = sauce("2026-11-03", "2026-12-20");
  CHECK(last_day(batch) == date("2026-11-09"));
  CHECK(batch.day_one == at("2026-11-03 00:30"));
  CHECK(batch.readiness == book::Readiness::CookedReadyToEat);
}

TEST_CASE("a ready-to-eat input keeps its date through a cook", "[batch][compute][src:jefferson-co]") {
  const Batch batch = good(made("meat-sauce", 1, "2026-11-02 09:00", input("ground-beef", "2026-11-03") + "," + input("butter", "2026-11-05"),
                                cooked("2026-11-02 10:00")));
  CHECK(last_day(batch) == date("2026-11-05"));
}

TEST_CASE("without a reading, or with one below the minimum, nothing is reset and the batch is refused", "[batch][compute][src:food-code-2022/3-401.11]") {
  const auto burger = [](const QByteArray& readings) { return run(made("burger", 1, "2026-06-01 09:00", input("ground-beef", "2026-06-03"), readings)).front(); };
  const Batch unread = burger({});
  CHECK(unread.missing == QStringList{QStringLiteral("missing.cook_reading")});
  CHECK(unread.use_bys.empty());
  CHECK(unread.readiness == book::Readiness::MustBeCooked);
  CHECK(burger(cooked("2026-06-01 10:00", "154 °F", "17 s")).missing == QStringList{QStringLiteral("missing.cook_too_low")});
  CHECK(burger(cooked("2026-06-01 10:00", "150 °F", "60 s")).refused.empty());
}

TEST_CASE("the most demanding part of what really went in decides the minimum", "[batch][compute][src:food-code-2022/3-401.11]") {
  const auto sauce = [](const QByteArray& core) {
    return run(made("meat-sauce", 1, "2026-06-01 09:00",
                    input("chicken-thigh", "2026-06-03", "\"instead_of\": \"ground-beef\"") + "," + input("butter", "2026-12-20"),
                    cooked("2026-06-01 10:00", core)))
        .front();
  };
  CHECK(sauce("165 °F").refused.empty());
  CHECK(sauce("160 °F").missing == QStringList{QStringLiteral("missing.cook_too_low")});
}

TEST_CASE("the product's own stricter cook temperature must be met too", "[batch][compute]") {
  const auto stew = [](const QByteArray& core) {
    return run(made("stew", 1, "2026-06-01 09:00", input("chicken-thigh", "2026-06-03"), cooked("2026-06-01 10:00", core))).front();
  };
  CHECK(stew("175 °F").refused.empty());
  CHECK(stew("170 °F").missing == QStringList{QStringLiteral("missing.cook_too_low")});
}

TEST_CASE("food cooked in part is not ready to eat, and its raw inputs keep their date", "[batch][compute][src:food-code-2022/3-401.14]") {
  const QByteArray seared = made("seared-beef", 1, "2026-06-01 09:00", input("ground-beef", "2026-06-01"), cooked("2026-06-01 10:00"));
  const Batch batch = good(seared);
  CHECK(batch.readiness == book::Readiness::NotFullyCooked);
  CHECK(last_day(batch) == date("2026-06-01"));
}

TEST_CASE("rework keeps the oldest date, through any depth and through a cook", "[batch][compute]") {
  const QByteArray first = made("burger", 1, "2026-06-01 09:00", input("ground-beef", "2026-06-03"), cooked("2026-06-01 10:00"));
  const QByteArray lot = lot_of(first);
  const QByteArray again = made("burger", 2, "2026-06-04 09:00", input("ground-beef", "2026-06-08") + "," + from_lot("burger", lot), cooked("2026-06-04 10:00"));
  CHECK(last_day(good(first + again, 1)) == date("2026-06-07"));
  const QByteArray third = made("burger", 3, "2026-06-05 09:00",
                                input("ground-beef", "2026-06-08") + "," + from_lot("burger", lot_of(first + again, 1)), cooked("2026-06-05 10:00"));
  CHECK(last_day(good(third + first + again, 0)) == date("2026-06-07"));
}

TEST_CASE("a raw rework is not renewed by the cook", "[batch][compute]") {
  const QByteArray tray = made("raw-tray", 1, "2026-11-02 09:00", input("cod", "2026-11-20") + "," + input("butter", "2026-12-20"));
  const QByteArray again = made("raw-tray", 2, "2026-11-03 09:00",
                                input("cod", "2026-11-20") + "," + input("butter", "2026-12-20") + "," + from_lot("raw-tray", lot_of(tray)));
  CHECK(last_day(good(tray + again, 1)) == date("2026-11-04"));
}

TEST_CASE("a cook ends a raw lot's date, but not those of the ready-to-eat parts in it", "[batch][compute]") {
  const QByteArray dip = made("dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-12-20"));
  const QByteArray pie = made("fish-pie", 2, "2026-11-02 09:00", input("cod", "2026-11-03") + "," + from_lot("dip", lot_of(dip)));
  const QByteArray baked = made("baked-pie", 3, "2026-11-03 09:00", from_lot("fish-pie", lot_of(dip + pie, 1)), cooked("2026-11-03 10:00"));
  CHECK(last_day(good(dip + pie + baked, 1)) == date("2026-11-03"));
  CHECK(last_day(good(dip + pie + baked, 2)) == date("2026-11-07"));
}

TEST_CASE("a raw product of another run keeps its date through the cook when ready-to-eat parts are in it", "[batch][compute]") {
  CHECK(last_day(good(made("baked-pie", 3, "2026-11-03 09:00", input("fish-pie", "2026-11-04"), cooked("2026-11-03 10:00")))) == date("2026-11-04"));
}

TEST_CASE("an input from the freezer starts with what is left, the day of use being the first", "[batch][compute][src:food-code-2022/3-501.18]") {
  const QByteArray frozen = made("burger", 1, "2026-06-01 09:00", input("ground-beef", "2026-06-03"),
                                 cooked("2026-06-01 10:00") + ", \"events\": [{\"what\": \"frozen\", \"at\": \"2026-06-03 08:00\"}]");
  const QByteArray lot = lot_of(frozen);
  const Batch batch = good(frozen + made("chili", 2, "2026-07-01 09:00", from_lot("burger", lot), cooked("2026-07-01 10:00")), 1);
  CHECK(last_day(batch) == date("2026-07-04"));
  CHECK(batch.previously_frozen);
}

TEST_CASE("of a lot whose containers differ the earliest date counts", "[batch][compute]") {
  const QByteArray half = made("burger", 1, "2026-06-01 09:00", input("ground-beef", "2026-06-03"),
                               cooked("2026-06-01 10:00") + ", \"events\": [{\"what\": \"frozen\", \"at\": \"2026-06-03 08:00\", \"containers\": \"3-4\"}]");
  const QByteArray lot = lot_of(half);
  CHECK(last_day(good(half + chili(lot, "2026-06-03 07:00"), 1)) == date("2026-06-07"));
  CHECK(last_day(good(half + chili(lot, "2026-06-03 09:00"), 1)) == date("2026-06-06"));  // out of the freezer again
  const std::vector<Batch> late = run(half + made("chili", 2, "2026-07-01 09:00", from_lot("burger", lot), cooked("2026-07-01 10:00")));
  CHECK(late[1].missing == QStringList{QStringLiteral("missing.past_its_date")});
}

TEST_CASE("containers with the same timeline share a date, and discarded ones get no label", "[batch][compute]") {
  const Batch batch = good(made("dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-12-20"),
                                "\"events\": [{\"what\": \"frozen\", \"at\": \"2026-11-01 12:00\", \"containers\": \"2-3\"},"
                                "{\"what\": \"discarded\", \"at\": \"2026-11-01 13:00\", \"containers\": \"4\"}]"));
  REQUIRE(batch.use_bys.size() == 3);
  CHECK(batch.containers[0].use_by == 0);
  CHECK(batch.containers[1].use_by == 1);
  CHECK(batch.containers[2].use_by == 1);
  CHECK(batch.use_bys[1].form == UseBy::Form::Frozen);
  CHECK(batch.use_bys[1].days_left == 6);
  CHECK(batch.containers[3].discarded);
  CHECK_FALSE(batch.containers[0].discarded);
}

TEST_CASE("a maker's date deep within a frozen batch is not stretched by the freezer", "[batch][compute]") {
  const QByteArray dip = made("dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-11-10"));
  const QByteArray pie = made("fish-pie", 2, "2026-11-02 09:00", input("cod", "2026-11-20") + "," + from_lot("dip", lot_of(dip)),
                              "\"events\": [{\"what\": \"frozen\", \"at\": \"2026-11-02 12:00\"}]");
  const Batch batch = good(dip + pie, 1);
  CHECK(batch.use_bys.front().never_past == date("2026-11-10"));
}

TEST_CASE("a reduced oxygen pack brings its own limit, from packing", "[batch][compute][src:food-code-2022/3-502.12]") {
  const Batch batch = good(made("vac-dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-12-30"),
                                "\"events\": [{\"what\": \"packed\", \"at\": \"2026-11-01 12:00\"}]"));
  CHECK(last_day(batch) == date("2026-11-21"));
  CHECK(names(batch, "reduced oxygen pack, 30 days"));
  CHECK_FALSE(names(batch, "chilled, ready to eat"));  // the study allows more
}

TEST_CASE("cooled food is refused until its cooling is shown, and released then", "[batch][compute][src:food-code-2022/3-501.14]") {
  const auto stock = [](const QByteArray& readings, const char* now = kNow) {
    return run(made("stock", 1, "2026-06-01 09:00", input("chicken-thigh", "2026-06-03"),
                    cooked("2026-06-01 11:00") + ", \"cooled\": [" + readings + "]"), kitchen(), now)
        .front();
  };
  const QByteArray hot = R"({"at": "2026-06-01 12:00", "core": "135 °F"},)";
  CHECK(stock(hot + R"({"at": "2026-06-01 13:00", "core": "70 °F"}, {"at": "2026-06-01 18:00", "core": "41 °F"})").refused.empty());
  const Batch pending = stock(hot + R"({"at": "2026-06-01 13:00", "core": "70 °F"})", "2026-06-01 14:00");
  CHECK(pending.cooling.state == Cooling::State::Pending);
  CHECK(pending.missing == QStringList{QStringLiteral("missing.cooling")});
  const Batch missed = stock(hot + R"({"at": "2026-06-01 14:05", "core": "70 °F"}, {"at": "2026-06-01 17:00", "core": "41 °F"})");
  CHECK(missed.cooling.state == Cooling::State::Missed);
  CHECK(missed.use_bys.empty());
}

TEST_CASE("a refused lot refuses what was made of it", "[batch][compute]") {
  const QByteArray raw = made("burger", 1, "2026-06-01 09:00", input("ground-beef", "2026-06-03"));
  const std::vector<Batch> batches = run(raw + chili(lot_of(raw)));
  CHECK(batches[1].missing == QStringList{QStringLiteral("missing.input")});
}

TEST_CASE("lots that were made of one another are refused, all of them", "[batch][compute]") {
  const QByteArray one = lot_of(made("burger", 1, "2026-06-01 09:00", {}));
  const QByteArray two = lot_of(made("burger", 2, "2026-06-01 09:00", {}));
  const std::vector<Batch> batches = run(made("burger", 1, "2026-06-01 09:00", from_lot("burger", two)) + made("burger", 2, "2026-06-01 09:00", from_lot("burger", one)));
  const QString loop = QStringLiteral("lots that were made of one another: %1 from %2 from %1").arg(QString::fromLatin1(one), QString::fromLatin1(two));
  for (const Batch& batch : batches) CHECK(problem::text(batch.refused).contains(loop));
}

TEST_CASE("identity: lot, GTIN and serials follow from the record", "[batch][compute][src:gs1-genspecs]") {
  const Batch batch = good(kBurgers);
  CHECK(batch.number == 1);
  CHECK(batch.lot.startsWith(QStringLiteral("A26152BUR01")));
  CHECK(batch.gtin.startsWith(QStringLiteral("00401")));
  CHECK(batch.gtin.size() == 14);
  REQUIRE(batch.containers.size() == 4);
  CHECK(batch.containers[2].serial == QStringLiteral("A2615201-3"));
  CHECK(batch.containers[2].of == 4);
}

TEST_CASE("without a number there is neither lot nor date, but a batch for a HOLD label", "[batch][compute]") {
  const std::vector<Batch> batches = run(R"({"product": "burger", "quantity": "2 kg", "made_at": "2026-06-01 09:00", "containers": "4 tub 500 g", "inputs": [{"item": "ground-beef", "use_by": "2026-06-03"}], "cooked": [{"at": "2026-06-01 10:00", "core": "165 °F"}]})" "\n");
  CHECK(batches.front().lot.isEmpty());
  CHECK(batches.front().containers.size() == 4);
  CHECK(batches.front().missing == QStringList{QStringLiteral("missing.other")});
}

TEST_CASE("a best-before of a dry input caps a dry product", "[batch][compute]") {
  const auto mix = [](const QByteArray& best_before) {
    return good(made("spice-mix", 1, "2026-06-01 09:00", input("mustard", {}, "\"best_before\": \"" + best_before + "\"")));
  };
  CHECK(last_day(mix("2026-08-01")) == date("2026-08-01"));
  CHECK(mix("2026-08-01").use_bys.front().kind == book::EndKind::BestBefore);
  CHECK(last_day(mix("2027-08-01")) == date("2026-12-01"));
}

TEST_CASE("and only warns in a short-lived one", "[batch][compute]") {
  const Batch batch = good(made("dressing", 1, "2026-06-01 09:00", input("butter", "2026-12-20") + "," + input("mustard", {}, "\"best_before\": \"2026-06-03\"")));
  CHECK(last_day(batch) == date("2026-06-07"));
  CHECK(batch.warnings.size() == 1);
}

TEST_CASE("an opened package is dated by the maker and by the rule for opened ones, whichever is earlier", "[batch][compute][src:food-code-2022/3-501.17]") {
  const auto cream = [](const QByteArray& use_by, const QByteArray& more = {}) {
    return last_day(good("{\"ingredient\": \"cream\", \"what\": \"opened\", \"number\": 1, \"made_at\": \"2026-10-01 08:00\", \"use_by\": \"" + use_by + "\"" + more + "}\n"));
  };
  CHECK(cream("2026-12-01") == date("2026-10-03"));
  CHECK(cream("2026-10-02") == date("2026-10-02"));
  CHECK(cream("2026-12-01", ", \"opened\": \"2026-09-30\"") == date("2026-10-02"));
}

TEST_CASE("thawed, cut and decanted ingredients", "[batch][compute]") {
  const auto deed = [](const QByteArray& item, const QByteArray& what, const QByteArray& more = {}) {
    return good("{\"ingredient\": \"" + item + "\", \"what\": \"" + what + "\", \"number\": 1, \"made_at\": \"2026-10-01 08:00\", \"use_by\": \"2026-10-20\"" + more + "}\n");
  };
  CHECK(last_day(deed("cod", "thawed")) == date("2026-10-02"));
  CHECK(deed("cod", "thawed").previously_frozen);
  CHECK(deed("cod", "thawed").readiness == book::Readiness::MustBeCooked);
  CHECK(last_day(deed("melon", "cut")) == date("2026-10-04"));
  CHECK(last_day(deed("cream", "decanted", ", \"opened\": \"2026-09-30\"")) == date("2026-10-02"));
  CHECK(last_day(deed("sesame", "decanted")) == date("2026-10-20"));
}

TEST_CASE("a labelled package is an input of the run by its lot", "[batch][compute]") {
  const QByteArray cream = "{\"ingredient\": \"cream\", \"what\": \"opened\", \"number\": 1, \"made_at\": \"2026-10-01 08:00\", \"use_by\": \"2026-12-01\"}\n";
  CHECK(last_day(good(cream + made("creamy", 2, "2026-10-02 08:00", from_lot("cream", lot_of(cream))), 1)) == date("2026-10-03"));
}

TEST_CASE("an hour's limit counts, and the label's date beside a lot of the run only shortens", "[batch][compute]") {
  const QByteArray dip = made("dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-12-20"));
  const auto pie = [&](const QByteArray& use_by) {
    return last_day(good(dip + made("fish-pie", 2, "2026-11-02 09:00", input("cod", "2026-11-20") + "," + input("dip", use_by, "\"lot\": \"" + lot_of(dip) + "\"")), 1));
  };
  CHECK(pie("2026-11-04") == date("2026-11-04"));
  CHECK(pie("2026-11-30") == date("2026-11-05"));
}

TEST_CASE("a kitchen's own tighter figure governs", "[batch][compute]") {
  const book::Book strict = read_kitchen("");
  const book::Book tighter = [] {
    book::Book book = read_kitchen();
    book.rules.ready_to_eat_chilled.length.count = 5;
    return book;
  }();
  const QByteArray dip = made("dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-12-20"));
  CHECK(last_day(good(dip, 0, strict)) == date("2026-11-07"));
  CHECK(last_day(good(dip, 0, tighter)) == date("2026-11-05"));
}

TEST_CASE("a restricted ingredient that a record adds must stay within its maximum of what was made", "[batch][compute]") {
  const auto dip = [](const QByteArray& salt) {
    return run(made("three-day-dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-12-20") + "," + input("curing-salt", {}, salt)))
        .front();
  };
  CHECK(dip("\"quantity\": \"40 g\"").refused.empty());
  CHECK_FALSE(dip("\"quantity\": \"41 g\"").refused.empty());
  CHECK_FALSE(dip("\"lot\": \"C-1\"").refused.empty());  // how much is not written
}
