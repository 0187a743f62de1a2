// The finishing steps of a batch are judged by what really went into it, not by its formula.
#include "compute_kitchen.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

QByteArray finishing(const QByteArray& to, const QByteArray& more = "equipment = \"griddle\"\n") {
  return "[[product.finishing]]\n" + more + "from = \"chilled\"\nsetting = \"375 °F (190 °C)\"\ntime = \"6 to 8 min\"\nto = \"" + to + "\"\n";
}

const book::Book& grill() {
  static const book::Book book = read_kitchen(
      {}, ingredient("ham", "yes", "", "\"none\"") + ingredient("carrot", "no", "", "\"none\"") +
              product("patty", "PAT", "yes", line("ground-beef"), life("chilled", "2 days") + finishing("158 °F (70 °C)")) +
              product("patty-165", "PAS", "yes", line("ground-beef"), life("chilled", "2 days") + finishing("165 °F (74 °C)")) +
              product("cod-cake", "CCA", "yes", line("cod"), life("chilled", "2 days") + finishing("145 °F (63 °C) 15 s")) +
              product("ham-roll", "HAM", "yes", line("ham"),
                      life("chilled", "4 days") + finishing("135 °F (57 °C)", "equipment = \"oven\"\nreheat_how = \"commercial-package\"\n")) +
              product("microwave-pot", "MIC", "yes", line("ham"),
                      life("chilled", "4 days") + finishing("165 °F (74 °C)", "equipment = \"microwave\"\nreheat_how = \"commercial-package\"\n")));
  return book;
}

Batch of(const QByteArray& item, const QByteArray& what, const QByteArray& instead_of) {
  const QByteArray replaced = instead_of.isEmpty() ? QByteArray() : "\"instead_of\": \"" + instead_of + "\", \"agreed_by\": \"MK\"";
  return run(made(item, 1, "2026-06-01 09:00", input(what, "2026-06-04", replaced)), grill()).front();
}

const QStringList kTooCool{QStringLiteral("missing.cook_temperature")};

}  // namespace

TEST_CASE("a finishing below the cook minimum of what really went in is refused", "[batch][compute][src:food-code-2022/3-401.11]") {
  const Batch chicken = of("patty", "chicken-thigh", "ground-beef");
  CHECK(chicken.missing == kTooCool);
  CHECK(chicken.use_bys.empty());
  const QString said = problem::text(chicken.refused);
  for (const char* part : {"griddle", "158 °F", "165 °F", "3-401.11", "poultry", "write to = ", "or make it of what its formula says"})
    CHECK(said.contains(QString::fromUtf8(part)));
}

TEST_CASE("a finishing that reaches the cook minimum of what really went in is accepted", "[batch][compute][src:food-code-2022/3-401.11]") {
  CHECK(of("patty", "ground-beef", {}).refused.empty());
  CHECK(of("patty-165", "chicken-thigh", "ground-beef").refused.empty());
}

TEST_CASE("a reheat target is refused when raw food went in instead of ready-to-eat food", "[batch][compute][src:food-code-2022/3-401.11]") {
  CHECK(of("ham-roll", "ham", {}).refused.empty());
  CHECK(of("ham-roll", "ground-beef", "ham").missing == kTooCool);
}

TEST_CASE("a cook target below the reheat minimum is refused when ready-to-eat food went in instead of raw", "[batch][compute][src:food-code-2022/3-403.11]") {
  CHECK(of("cod-cake", "cod", {}).refused.empty());
  const Batch ham = of("cod-cake", "ham", "cod");
  CHECK(ham.missing == kTooCool);
  CHECK(problem::text(ham.refused).contains(QStringLiteral("3-403.11")));
}

TEST_CASE("raw food finished in a microwave needs the stand too", "[batch][compute][src:food-code-2022/3-401.12]") {
  CHECK(of("microwave-pot", "ham", {}).refused.empty());
  const Batch raw = of("microwave-pot", "ground-beef", "ham");
  CHECK(raw.missing == kTooCool);
  CHECK(problem::text(raw.refused).contains(QStringLiteral("stands less than 2 min")));
}

TEST_CASE("what went in through a lot of the run counts for the finishing as well", "[batch][compute][src:food-code-2022/3-401.11]") {
  const auto rolled = [](const QByteArray& meat) {
    const QByteArray instead = meat == "ham" ? QByteArray() : QByteArray("\"instead_of\": \"ham\"");
    const QByteArray raw = made("ham-roll", 1, "2026-06-01 09:00", input(meat, "2026-06-04", instead));
    const QByteArray lot = run(raw, grill()).front().lot.toLatin1();
    return run(raw + made("ham-roll", 2, "2026-06-01 10:00", from_lot("ham-roll", lot, "\"instead_of\": \"ham\"")), grill());
  };
  CHECK(rolled("ham")[1].refused.empty());
  CHECK(rolled("ground-beef")[1].missing.contains(kTooCool.front()));
}
