// Allergens of what really went in, for each destination's list, and what a substitution changes.
#include "compute_kitchen.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

// "milk, fish (cod)" on the list.
QString on(const char* list, const Batch& batch) {
  QStringList words;
  for (const book::ListedAllergen& allergen : book::listed(batch.declared.contains, *kitchen().law.list(QString::fromLatin1(list))))
    words += allergen.species.isEmpty() ? allergen.entry : QStringLiteral("%1 (%2)").arg(allergen.entry, allergen.species);
  return words.join(QStringLiteral(", "));
}

Batch sauce_with(const QByteArray& apricots, const QByteArray& more = {}) {
  const QByteArray instead = apricots == "apricots-10" ? QByteArray() : QByteArray("\"instead_of\": \"apricots-10\", \"agreed_by\": \"MK\"");
  return good(made("sauce", 1, "2026-06-01 09:00", input(apricots, {}, instead), more));
}

}  // namespace

TEST_CASE("a formula's allergens come up through its parts", "[batch][allergens]") {
  const Batch batch = good(made("raw-tray", 1, "2026-06-01 09:00", input("cod", "2026-06-03") + "," + input("butter", "2026-12-20")));
  CHECK(on("us", batch) == QStringLiteral("milk, fish (cod)"));
}

TEST_CASE("oysters alone: no entry in the US, molluscs in the EU and Canada", "[batch][allergens][src:21-usc-321]") {
  const Batch batch = good(made("oyster-plate", 1, "2026-06-01 09:00", input("oysters", "2026-06-03") + "," + input("onion", {}, "\"instead_of\": \"celery\"")));
  CHECK(on("us", batch) == QString());
  CHECK(on("eu", batch) == QStringLiteral("mollusc"));
  CHECK(on("ca", batch).startsWith(QStringLiteral("mollusc")));
}

TEST_CASE("mustard and celery: none in the US, both in the EU, mustard in Canada", "[batch][allergens][src:eu-1169-2011]") {
  const Batch batch = good(made("dressing", 1, "2026-06-01 09:00", input("butter", "2026-12-20")));
  CHECK(on("us", batch) == QStringLiteral("milk"));
  CHECK(on("eu", batch) == QStringLiteral("milk, celery, mustard"));
  CHECK(on("ca", batch) == QStringLiteral("milk, mustard"));
}

TEST_CASE("sulphites 9 mg/kg: none; 10: Canada and the US ingredient list; 11: all three", "[batch][allergens][src:canada-fdr]") {
  const auto sulphites = [](const char* list, const Batch& batch) { return on(list, batch).contains(QStringLiteral("sulphites")); };
  const Batch nine = sauce_with("apricots-9"), ten = sauce_with("apricots-10"), eleven = sauce_with("apricots-11");
  CHECK_FALSE(sulphites("us", nine));
  CHECK_FALSE(sulphites("eu", nine));
  CHECK_FALSE(sulphites("ca", nine));
  CHECK(sulphites("us", ten));
  CHECK_FALSE(sulphites("eu", ten));
  CHECK(sulphites("ca", ten));
  CHECK(sulphites("eu", eleven));
}

TEST_CASE("of several supplier items all count unless the record says which", "[batch][allergens]") {
  CHECK(on("us", sauce_with("apricots-9")) == QStringLiteral("fish (anchovy), wheat, soy"));
  const auto named = [](const QByteArray& item) {
    return good(made("sauce", 1, "2026-06-01 09:00", input("worcestershire", {}, "\"supplier_item\": \"" + item + "\"") + "," + input("flour")));
  };
  CHECK(on("us", named("worcestershire-a")) == QStringLiteral("fish (anchovy), wheat, sulphites"));
  CHECK(on("us", named("worcestershire-b")) == QStringLiteral("wheat, soy, sulphites"));
}

TEST_CASE("a substitution with instead_of takes the old allergens away and shows what it adds", "[batch][allergens]") {
  const Batch batch = good(made("raw-tray", 1, "2026-06-01 09:00",
                                input("cod", "2026-06-03") + "," + input("margarine", "2026-12-20", "\"instead_of\": \"butter\", \"agreed_by\": \"MK\"")));
  CHECK(on("us", batch) == QStringLiteral("fish (cod), soy"));
  REQUIRE(batch.differences.size() == 1);
  CHECK(batch.differences[0].item == QStringLiteral("margarine"));
  CHECK(batch.differences[0].instead_of == QStringLiteral("butter"));
  CHECK(batch.differences[0].adds.front().substance == QStringLiteral("soy"));
  CHECK(batch.differences[0].removes.front().substance == QStringLiteral("milk"));
  CHECK(batch.differences[0].agreed_by == QStringLiteral("MK"));
}

TEST_CASE("without instead_of the old allergens stay", "[batch][allergens]") {
  const Batch batch = good(made("dressing", 1, "2026-06-01 09:00",
                                input("butter", "2026-12-20") + "," + input("sesame", {}, "\"agreed_by\": \"MK\"")));
  CHECK(on("us", batch) == QStringLiteral("milk, sesame"));
  CHECK(batch.differences.front().instead_of == QString());
}

TEST_CASE("what the old thing and something else both hold does not count as removed", "[batch][allergens]") {
  const Batch batch = good(made("dressing", 1, "2026-06-01 09:00",
                                input("butter", "2026-12-20") + "," + input("cream", "2026-12-20", "\"instead_of\": \"mustard\"")));
  REQUIRE(batch.differences.size() == 1);
  CHECK(batch.differences[0].adds.empty());
  CHECK(batch.differences[0].removes.size() == 1);
}

TEST_CASE("an allergen that nobody agreed to refuses the batch, by the list of its destination", "[batch][allergens]") {
  const auto dressing = [](const QByteArray& extra, const QByteArray& site) {
    return run(made("raw-tray", 1, "2026-06-01 09:00", input("cod", "2026-06-03") + "," + input("butter", "2026-12-20") + "," + input(extra),
                    "\"site\": \"" + site + "\""))
        .front();
  };
  CHECK_FALSE(dressing("sesame", "harbour-street").refused.empty());
  CHECK(dressing("mustard", "harbour-street").refused.empty());
  CHECK_FALSE(dressing("mustard", "calais").refused.empty());
  CHECK_FALSE(dressing("mustard", "windsor").refused.empty());
  CHECK(dressing("celery", "windsor").refused.empty());
}

TEST_CASE("a lot's additions reach what is made of it, with the agreement of its own record", "[batch][allergens]") {
  const QByteArray dip = made("dip", 1, "2026-11-01 09:00", input("mayonnaise", "2026-12-20") + "," + input("sesame", {}, "\"agreed_by\": \"JO\""));
  const QByteArray pie = made("fish-pie", 2, "2026-11-02 09:00", input("cod", "2026-11-20") + "," + from_lot("dip", lot_of(dip)));
  const Batch batch = good(dip + pie, 1);
  CHECK(on("us", batch) == QStringLiteral("egg, fish (cod), sesame"));
  REQUIRE(batch.differences.size() == 1);
  CHECK(batch.differences[0].agreed_by == QStringLiteral("JO"));
}

TEST_CASE("an unknown declaration refuses, unless the record says that a known supplier item was used", "[batch][allergens]") {
  const Batch batch = run(made("puzzle", 1, "2026-06-01 09:00", input("butter", "2026-12-20"))).front();
  CHECK(batch.missing.front() == QStringLiteral("missing.allergens"));
  CHECK_FALSE(batch.declared.stated);
  CHECK(run(made("puzzle", 1, "2026-06-01 09:00", input("butter", "2026-12-20") + "," + input("salt", {}, "\"instead_of\": \"mystery-spice\""))).front().refused.empty());
}

TEST_CASE("an opened package's allergens are those of its supplier item", "[batch][allergens]") {
  CHECK(on("us", good("{\"ingredient\": \"sesame\", \"what\": \"opened\", \"number\": 1, \"made_at\": \"2026-10-01 08:00\", \"best_before\": \"2026-12-01\"}\n")) ==
        QStringLiteral("sesame"));
}
