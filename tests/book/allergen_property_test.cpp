// No order, depth, split or repetition loses an allergen.
#include <algorithm>
#include <random>

#include "rules.h"

using namespace lardiner;
using namespace lardiner::book;

namespace {

constexpr int kRounds = 400;

class Deck {
 public:
  explicit Deck(unsigned seed) : random_(seed) {}

  Declaration declaration() {
    Declaration one;
    one.substance = pick(law.substances);
    const QStringList species = law.species_of(one.substance);
    if (!species.isEmpty() && number(0, 3) > 0) one.species = pick(species);
    if (law.measured.contains(one.substance) && number(0, 4) > 0) one.mg_per_kg = measure::Ratio(number(0, 40), 2);
    if (number(0, 4) == 0) one.exemption = exemption();
    return one;
  }

  std::vector<Declaration> declarations() {
    std::vector<Declaration> all;
    for (int count = number(0, 6); count > 0; --count) all.push_back(declaration());
    return all;
  }

  Declared declared() { return {number(0, 9) > 0, gathered(declarations()), gathered(declarations())}; }
  const AllergenList& list() {
    return law.lists[static_cast<size_t>(number(0, static_cast<int>(law.lists.size()) - 1))];
  }
  int number(int least, int most) { return std::uniform_int_distribution<int>(least, most)(random_); }
  template <class List>
  void shuffle(List& all) {
    std::shuffle(all.begin(), all.end(), random_);
  }

  const AllergenLaw law = rules_test::allergen_law();

 private:
  QString pick(const QStringList& all) { return all[number(0, static_cast<int>(all.size()) - 1)]; }
  QString exemption() {
    const AllergenList& from = list();
    if (from.exemptions.empty()) return {};
    return from.exemptions[static_cast<size_t>(number(0, static_cast<int>(from.exemptions.size()) - 1))].id;
  }

  std::mt19937 random_;
};

// Whether `all` still says at least what `one` said.
bool kept(const Declaration& one, const std::vector<Declaration>& all) {
  return std::any_of(all.begin(), all.end(), [&](const Declaration& other) {
    const bool same =
        other.substance == one.substance && other.species == one.species && other.exemption == one.exemption;
    return same && (!other.mg_per_kg || (one.mg_per_kg && *other.mg_per_kg >= *one.mg_per_kg));
  });
}

}  // namespace

TEST_CASE("uniting does not depend on order or grouping, and repeats change nothing", "[book][allergen][property]") {
  Deck deck(1);
  for (int round = 0; round < kRounds; ++round) {
    const Declared a = deck.declared(), b = deck.declared(), c = deck.declared();
    REQUIRE(united(a, b) == united(b, a));
    REQUIRE(united(united(a, b), c) == united(a, united(b, c)));
    REQUIRE(united(a, a) == a);
    REQUIRE(united(a, Declared{true, {}, {}}) == a);
    REQUIRE(united(united(a, b), b) == united(a, b));
  }
}

TEST_CASE("uniting never loses a declaration and invents none", "[book][allergen][property]") {
  Deck deck(2);
  for (int round = 0; round < kRounds; ++round) {
    const Declared a = deck.declared(), b = deck.declared();
    const Declared both = united(a, b);
    for (const Declaration& one : a.contains) REQUIRE(kept(one, both.contains));
    for (const Declaration& one : b.contains) REQUIRE(kept(one, both.contains));
    for (const Declaration& one : a.may_contain) REQUIRE(kept(one, both.may_contain));
    for (const Declaration& one : both.contains) {
      const bool known = std::count(a.contains.begin(), a.contains.end(), one) > 0 ||
                         std::count(b.contains.begin(), b.contains.end(), one) > 0;
      REQUIRE(known);
    }
  }
}

TEST_CASE("a list names the same allergens in whatever order they were declared", "[book][allergen][property]") {
  Deck deck(3);
  for (int round = 0; round < kRounds; ++round) {
    std::vector<Declaration> all = deck.declarations();
    const AllergenList& list = deck.list();
    const auto before = listed(all, list);
    deck.shuffle(all);
    REQUIRE(listed(all, list) == before);
    REQUIRE(listed(gathered(all), list) == before);
  }
}

TEST_CASE("a list never loses an allergen when something more is declared", "[book][allergen][property]") {
  Deck deck(4);
  for (int round = 0; round < kRounds; ++round) {
    const Declared a = deck.declared(), b = deck.declared();
    const AllergenList& list = deck.list();
    const auto less = listed(a.contains, list);
    const auto more = listed(united(a, b).contains, list);
    for (const ListedAllergen& one : less) REQUIRE(std::count(more.begin(), more.end(), one) == 1);
  }
}

TEST_CASE("what is cooked in any depth of parts lists what its leaves list together", "[book][allergen][property]") {
  Deck deck(5);
  for (int round = 0; round < kRounds; ++round) {
    std::vector<Declared> parts;
    std::vector<Declaration> leaves;
    for (int count = deck.number(1, 7); count > 0; --count) {
      parts.push_back(deck.declared());
      leaves.insert(leaves.end(), parts.back().contains.begin(), parts.back().contains.end());
    }
    while (parts.size() > 1) {  // two at random become one, until one is left
      deck.shuffle(parts);
      const Declared last = parts.back();
      parts.pop_back();
      parts.back() = united(parts.back(), last);
    }
    const AllergenList& list = deck.list();
    REQUIRE(listed(parts.front().contains, list) == listed(leaves, list));
  }
}

TEST_CASE("an entry is named without species only by a declaration that names none", "[book][allergen][property]") {
  Deck deck(6);
  for (int round = 0; round < kRounds; ++round) {
    const Declaration one = deck.declaration();
    const AllergenList& list = deck.list();
    for (const ListedAllergen& named : listed({one}, list)) {
      if (lacks_species(one, list)) REQUIRE(named.species.isEmpty());
    }
    REQUIRE(listed({one}, list).size() <= 1);
  }
}
