// The sizes of blocks along one scale: what gives way first, what last, and the order of importance.
#include "paper/label_sizes.h"

#include <random>

#include "show.h"

using namespace lardiner::paper;

namespace {

BlockBounds bounds(double least, double preferred, double most, GivesWay gives_way = GivesWay::WithTheRest) {
  return {{Points{least}, Points{preferred}, Points{most}}, gives_way};
}

std::vector<double> at(const std::vector<BlockBounds>& blocks, double scale) {
  std::vector<double> out;
  for (const Points size : sizes_at(blocks, scale)) out.push_back(size.value);
  return out;
}

}  // namespace

TEST_CASE("at 1 all stand at their preferred size, at 0 at their least, above 1 they grow up to their most",
          "[paper][label][sizes]") {
  const std::vector blocks{bounds(10, 15, 20), bounds(7, 8, 20, GivesWay::First), bounds(12, 18, 47, GivesWay::Last)};
  CHECK(at(blocks, 1) == std::vector{15.0, 8.0, 18.0});
  CHECK(at(blocks, 0) == std::vector{10.0, 7.0, 12.0});
  CHECK(at(blocks, 1.25) == std::vector{18.75, 10.0, 22.5});
  CHECK(at(blocks, 2) == std::vector{20.0, 16.0, 36.0});
  CHECK(largest_scale(blocks) == 47.0 / 18);
  CHECK(at(blocks, largest_scale(blocks)) == std::vector{20.0, 20.0, 47.0});
}

TEST_CASE("blocks that give way first are at their least before the rest shrinks, and the rest before the last",
          "[paper][label][sizes]") {
  const std::vector blocks{bounds(10, 16, 20), bounds(4, 8, 20, GivesWay::First), bounds(12, 18, 47, GivesWay::Last)};
  const double third = 1 / 3.0;
  CHECK(at(blocks, 5 * third / 2)[1] == Approx(6));
  CHECK(at(blocks, 5 * third / 2)[0] == Approx(16));
  CHECK(at(blocks, 2 * third)[1] == Approx(4));
  CHECK(at(blocks, 3 * third / 2)[0] == Approx(13));
  CHECK(at(blocks, 3 * third / 2)[2] == Approx(18));
  CHECK(at(blocks, third)[0] == Approx(10));
  CHECK(at(blocks, third / 2)[2] == Approx(15));
}

TEST_CASE("blocks that give way together shrink by one factor, each down to its least", "[paper][label][sizes]") {
  const std::vector blocks{bounds(8, 16, 20), bounds(9, 12, 20)};
  CHECK(at(blocks, 0.8)[0] == Approx(14.4));
  CHECK(at(blocks, 0.8)[1] == Approx(10.8));
  CHECK(at(blocks, 0.2)[0] == Approx(9.6));
  CHECK(at(blocks, 0.2)[1] == 9);
  CHECK(least_part(blocks, 0.2) == Approx(0.6));
  CHECK(least_part(blocks, 2) == 1);
}

TEST_CASE("groups that a label lacks, or that cannot shrink, take no part of the scale", "[paper][label][sizes]") {
  std::vector blocks{bounds(10, 16, 20), bounds(4, 8, 20, GivesWay::First), bounds(9, 9, 9, GivesWay::Last)};
  CHECK(at(blocks, 0.75)[1] == Approx(6));
  blocks[1].says_something = false;
  CHECK(at(blocks, 0.75)[0] == Approx(14.5));
}

TEST_CASE("what gives way first takes the less important with it, so that the order stays", "[paper][label][sizes]") {
  const std::vector blocks{bounds(9, 16, 20, GivesWay::First), bounds(8, 15, 20)};
  CHECK(at(blocks, 0.5) == std::vector{9.0, 9.0});
  std::vector unordered = blocks;
  unordered[0].ordered = false;
  CHECK(at(unordered, 0.5) == std::vector{9.0, 15.0});
}

TEST_CASE("no size falls as the scale rises, none leaves its bounds, and none overtakes a more important one",
          "[paper][label][sizes][property]") {
  std::mt19937 random(5);
  const auto some = [&](double least, double most) {
    return std::uniform_real_distribution<double>(least, most)(random);
  };
  for (int round = 0; round < 300; ++round) {
    // In order of importance, so that no bound is below that of a less important block.
    std::vector<BlockBounds> blocks;
    double least = 6, preferred = 6, most = 6;
    for (int n = 0; n < 6; ++n) {
      least = some(least, least + 3);
      preferred = std::max(least, some(preferred, preferred + 4));
      most = std::max(preferred, some(most, most + 20));
      blocks.push_back(bounds(least, preferred, most, static_cast<GivesWay>(random() % 3)));
      blocks.back().says_something = random() % 4 != 0;
    }
    std::vector<Points> before = sizes_at(blocks, 0);
    for (double scale = 0; scale <= 4; scale += 0.03) {
      const std::vector<Points> sizes = sizes_at(blocks, scale);
      CAPTURE(round, scale);
      for (std::size_t n = 0; n < blocks.size(); ++n) {
        CHECK(sizes[n].value >= before[n].value - 1e-9);
        CHECK(sizes[n] >= blocks[n].sizes.least);
        CHECK(sizes[n] <= blocks[n].sizes.most);
        for (std::size_t larger = n + 1; larger < blocks.size(); ++larger)
          if (blocks[larger].says_something) CHECK(sizes[larger].value >= sizes[n].value - 1e-9);
      }
      before = sizes;
    }
  }
}
