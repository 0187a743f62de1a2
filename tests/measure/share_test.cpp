// Parts add up to the whole.
#include "measure/share.h"

#include <algorithm>
#include <numeric>
#include <random>

#include "make.h"

using namespace lardiner::measure;

namespace {

using Steps = std::vector<std::int64_t>;

std::int64_t sum(const Steps& parts) { return std::accumulate(parts.begin(), parts.end(), std::int64_t{0}); }

Steps random_weights(std::mt19937_64& random) {
  std::uniform_int_distribution<int> count(1, 12);
  std::uniform_int_distribution<std::int64_t> weight(0, 5'000'000'000'000);
  Steps weights(static_cast<std::size_t>(count(random)));
  std::generate(weights.begin(), weights.end(), [&] { return weight(random); });
  weights.front() += 1;
  return weights;
}

}  // namespace

TEST_CASE("a mix of light and dark seeds at three to one", "[measure][share][src:practice]") {
  CHECK((share_out(1000, {3, 1}) == Steps{750, 250}));
}

TEST_CASE("equal parts by weight are equal", "[measure][share][src:practice]") {
  CHECK((share_out(108, {1, 1}) == Steps{54, 54}));
}

TEST_CASE("the residue of rounding goes to the largest line alone", "[measure][share]") {
  CHECK((share_out(100, {1, 1, 1}) == Steps{34, 33, 33}));
  CHECK((share_out(10, {1, 6, 1, 1}) == Steps{1, 7, 1, 1}));
  CHECK((share_out(200, {1, 1, 1}) == Steps{66, 67, 67}));
}

TEST_CASE("nothing shared out is nothing each, and a line without weight gets nothing", "[measure][share]") {
  CHECK((share_out(0, {5, 2}) == Steps{0, 0}));
  CHECK((share_out(7, {0, 2, 0}) == Steps{0, 7, 0}));
}

TEST_CASE("no part is less than nothing, even with more lines than steps", "[measure][share]") {
  const Steps parts = share_out(600, Steps(1000, 1));
  CHECK(sum(parts) == 600);
  CHECK(*std::min_element(parts.begin(), parts.end()) == 0);
}

TEST_CASE("parts sum to the whole, and every line but the largest is its exact share rounded", "[measure][share]") {
  std::mt19937_64 random(3);
  std::uniform_int_distribution<std::int64_t> some(100, 4'000'000'000'000'000'000);
  for (int i = 0; i < 5'000; ++i) {
    const Steps weights = random_weights(random);
    const std::int64_t total = some(random);
    const Steps parts = share_out(total, weights);
    REQUIRE(sum(parts) == total);
    const auto largest = std::max_element(weights.begin(), weights.end()) - weights.begin();
    for (std::size_t line = 0; line < weights.size(); ++line) {
      const Quantity exact = scaled({Dimension::Mass, total}, Ratio(weights[line], sum(weights)));
      if (line != static_cast<std::size_t>(largest)) REQUIRE(parts[line] == exact.amount);
    }
  }
}

TEST_CASE("the order of the lines does not matter when one is the largest", "[measure][share]") {
  std::mt19937_64 random(5);
  for (int i = 0; i < 2'000; ++i) {
    Steps weights = random_weights(random);
    weights.push_back(6'000'000'000'000);
    const Steps parts = share_out(123'457, weights);
    std::vector<std::size_t> order(weights.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::shuffle(order.begin(), order.end(), random);
    Steps turned(weights.size());
    Steps expected(weights.size());
    for (std::size_t at = 0; at < order.size(); ++at) {
      turned[at] = weights[order[at]];
      expected[at] = parts[order[at]];
    }
    REQUIRE(share_out(123'457, turned) == expected);
  }
}
