// What holds of every formula that is scaled: sums, shares, pulls, mass, and the way back.
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <random>

#include "measure/text.h"
#include "plan/scaling.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::plan;
using measure::Quantity;
using measure::Ratio;
using measure::Unit;

namespace {

constexpr int kFormulas = 3'000;

Quantity milligrams(std::int64_t count) { return measure::quantity(Ratio(count, 1), Unit::Milligram); }

std::int64_t off(Quantity a, Quantity b) { return std::abs(a.amount - b.amount); }

/// From `least` to `most`, as many small as large.
std::int64_t any_size(std::mt19937_64& random, double least, double most) {
  std::uniform_real_distribution<double> exponent(std::log(least), std::log(most));
  return static_cast<std::int64_t>(std::exp(exponent(random)));
}

/// One product of 1 to 12 ingredients from 500 mg to 20 kg, some of them trimmed, some with a maximum by law.
book::Book formula(std::mt19937_64& random) {
  const auto up_to = [&](int most) { return std::uniform_int_distribution<int>(1, most)(random); };
  book::Book book;
  book.kitchen.scale_step = milligrams(std::array{500, 1'000, 2'000, 5'000}[static_cast<size_t>(up_to(4) - 1)]);
  if (up_to(3) > 1) book.kitchen.fine_scale_step = milligrams(std::array{10, 100}[static_cast<size_t>(up_to(2) - 1)]);
  book::Product product;
  product.id = QStringLiteral("p");
  product.cook_yield = Ratio(50 + up_to(60), 100);
  const int lines = up_to(12);
  for (int i = 0; i < lines; ++i) {
    book::Ingredient ingredient;
    ingredient.id = QStringLiteral("i%1").arg(i);
    if (up_to(3) == 1) ingredient.edible = Ratio(40 + up_to(60), 100);
    if (up_to(6) == 1) ingredient.most_percent = Ratio(1, 2);
    book.ingredient_index.insert(ingredient.id, i);
    book.ingredients.push_back(ingredient);
    book::FormulaLine line;
    line.item = ingredient.id;
    line.amount = milligrams(any_size(random, 500, 20'000'000));
    product.formula.push_back(line);
  }
  book.product_index.insert(product.id, 0);
  book.products.push_back(product);
  return book;
}

Ratio any_makings(std::mt19937_64& random) {
  return Ratio(any_size(random, 97, 10'000), std::uniform_int_distribution<int>(1, 97)(random));
}

Scaled scale(const book::Book& book, Ratio makings) {
  book::Weighing weighing(book);
  const auto out = plan::scaled(book, weighing, book.products[0], makings);
  if (!out) FAIL(problem::text(out.error()).toStdString());
  return *out;
}

Ratio makings(const book::Book& book, const Target& target) {
  book::Weighing weighing(book);
  const auto out = plan::makings(book, weighing, book.products[0], target);
  if (!out) FAIL(problem::text(out.error()).toStdString());
  return *out;
}

Quantity sum(const Scaled& scaled, Quantity ScaledLine::*what) {
  return std::accumulate(scaled.lines.begin(), scaled.lines.end(), Quantity{},
                         [&](Quantity all, const ScaledLine& line) { return all + line.*what; });
}

/// The line that may bear the residue.
const ScaledLine* largest(const Scaled& scaled) {
  const ScaledLine* found = nullptr;
  for (const ScaledLine& line : scaled.lines)
    if (!line.fine && !line.restricted && (!found || measure::less(found->net, line.net))) found = &line;
  return found;
}

/// Makings small enough to have fine lines, large enough to leave a milligram of each.
template <class Check>
void for_all(unsigned seed, Check check) {
  std::mt19937_64 random(seed);
  for (int i = 0; i < kFormulas; ++i) {
    book::Book book = formula(random);
    const Ratio times = Ratio(any_size(random, 1, 20), 1) / Ratio(std::uniform_int_distribution<int>(1, 50)(random), 1);
    check(book, times, random);
  }
}

bool same_figures(const Scaled& a, const Scaled& b) {
  return std::equal(a.lines.begin(), a.lines.end(), b.lines.begin(), b.lines.end(),
                    [](const ScaledLine& x, const ScaledLine& y) {
                      return x.weighed == y.weighed && x.to_pull == y.to_pull && x.step == y.step;
                    }) &&
         a.input == b.input && a.output == b.output;
}

}  // namespace

TEST_CASE("the printed lines add up to the printed total, which is the exact one to the scale's step",
          "[plan][scaling]") {
  int with_bearer = 0;
  for_all(11, [&](const book::Book& book, Ratio times, auto&) {
    const Scaled scaled = scale(book, times);
    REQUIRE(sum(scaled, &ScaledLine::weighed) == scaled.input);
    if (!largest(scaled)) return;
    ++with_bearer;
    REQUIRE(off(scaled.input, sum(scaled, &ScaledLine::net)) <= book.kitchen.scale_step.amount);
  });
  CHECK(with_bearer > kFormulas / 2);
}

TEST_CASE("no line reads 0, each is in its own steps, and only the largest is off by more than half of one",
          "[plan][scaling]") {
  int fine = 0;
  for_all(12, [&](const book::Book& book, Ratio times, auto&) {
    const Scaled scaled = scale(book, times);
    for (const ScaledLine& line : scaled.lines) {
      fine += line.fine ? 1 : 0;
      REQUIRE(line.weighed.amount > 0);
      REQUIRE(line.weighed.amount % line.step.amount == 0);
      REQUIRE(line.step.amount <= book.kitchen.scale_step.amount);
      if (!line.restricted && &line != largest(scaled)) REQUIRE(2 * off(line.weighed, line.net) <= line.step.amount);
    }
  });
  CHECK(fine > kFormulas / 10);
}

TEST_CASE("a line with a maximum by law is never above its exact weight, nor more than a step below",
          "[plan][scaling]") {
  int restricted = 0;
  for_all(13, [&](const book::Book& book, Ratio times, auto&) {
    for (const ScaledLine& line : scale(book, times).lines) {
      if (!line.restricted) continue;
      ++restricted;
      REQUIRE(line.weighed.amount <= line.net.amount);
      REQUIRE(line.net.amount - line.weighed.amount < line.step.amount);
    }
  });
  CHECK(restricted > kFormulas / 10);
}

TEST_CASE("what goes in times the cook yield comes out", "[plan][scaling]") {
  for_all(14, [](const book::Book& book, Ratio times, auto&) {
    const Scaled scaled = scale(book, times);
    const Quantity exact = measure::scaled(sum(scaled, &ScaledLine::net), book.products[0].cook_yield);
    REQUIRE(off(scaled.output, exact) <= 2 * static_cast<std::int64_t>(scaled.lines.size()));
    if (!largest(scaled)) return;
    const Quantity printed = measure::scaled(scaled.input, book.products[0].cook_yield);
    REQUIRE(off(printed, scaled.output) <= 2 * book.kitchen.scale_step.amount);
  });
}

TEST_CASE("scaling up and back gives the same printed figures", "[plan][scaling]") {
  for_all(15, [](const book::Book& book, Ratio times, auto& random) {
    const Ratio up = any_makings(random);
    const Scaled there = scale(book, times);
    REQUIRE(same_figures(there, scale(book, times * up / up)));
    // By way of the weights of the scaled batch: all that is left to differ is the nanogram to which they are told.
    const Ratio back = makings(book, Give{scale(book, times * up).output}) / up;
    const Scaled again = scale(book, back);
    for (size_t i = 0; i < there.lines.size(); ++i)
      REQUIRE(off(there.lines[i].net, again.lines[i].net) <= 2 + there.lines[i].net.amount / 1'000'000);
  });
}

TEST_CASE("pulls are equal, each fits the vessel as printed, and none is more than needed", "[plan][scaling]") {
  int several = 0;
  for_all(16, [&](book::Book& book, Ratio times, auto& random) {
    const Quantity whole = sum(scale(book, times), &ScaledLine::net);
    const Quantity takes = measure::scaled(whole, Ratio(any_size(random, 20, 200), 100));
    book.products[0].vessel_takes = takes;
    const Scaled pull = scale(book, times);
    several += pull.pulls > 1 ? 1 : 0;
    REQUIRE(pull.makings * Ratio(pull.pulls, 1) == times);
    REQUIRE(pull.input.amount <= takes.amount);
    REQUIRE((pull.pulls - 1) * takes.amount < whole.amount);
  });
  CHECK(several > kFormulas / 4);
}

TEST_CASE("a full vessel is one pull, within a few steps of what it takes and never more", "[plan][scaling]") {
  for_all(17, [](book::Book& book, Ratio times, auto&) {
    const Quantity takes = sum(scale(book, times), &ScaledLine::net);
    book.products[0].vessel_takes = takes;
    const Scaled pull = scale(book, makings(book, FillVessel{}));
    REQUIRE(pull.pulls == 1);
    REQUIRE(pull.input.amount <= takes.amount);
    if (largest(pull)) REQUIRE(takes.amount - pull.input.amount <= 2 * book.kitchen.scale_step.amount);
  });
}

TEST_CASE("the order of the lines does not change what is weighed", "[plan][scaling]") {
  for_all(18, [](book::Book& book, Ratio times, auto& random) {
    const Scaled before = scale(book, times);
    QHash<QString, qint64> weighed;
    for (const ScaledLine& line : before.lines) weighed.insert(line.line->item, line.weighed.amount);
    const Quantity input = before.input;
    std::shuffle(book.products[0].formula.begin(), book.products[0].formula.end(), random);
    const Scaled after = scale(book, times);
    REQUIRE(after.input == input);
    for (const ScaledLine& line : after.lines) REQUIRE(line.weighed.amount == weighed.value(line.line->item));
  });
}

TEST_CASE("what is pulled is enough, and using it up gives the same makings to the step", "[plan][scaling]") {
  for_all(19, [](const book::Book& book, Ratio times, auto&) {
    const Scaled scaled = scale(book, times);
    for (const ScaledLine& line : scaled.lines) {
      REQUIRE(line.to_pull.amount >= line.weighed.amount);
      const bool trimmed = line.pull != line.net;
      if (trimmed) REQUIRE(line.to_pull.amount >= line.pull.amount);
      REQUIRE(line.to_pull.amount % line.step.amount == 0);
      const Ratio again = makings(book, UseUp{line.line->item, line.to_pull});
      const Quantity net = measure::scaled(measure::scaled(line.net, Ratio(1, 1) / times), again);
      if (trimmed) REQUIRE(net.amount + 1'000 >= line.net.amount);
      if (&line != largest(scaled)) REQUIRE(net.amount + line.step.amount >= line.net.amount);
      if (&line != largest(scaled)) REQUIRE(net.amount - line.net.amount <= 2 * line.step.amount);
    }
  });
}
