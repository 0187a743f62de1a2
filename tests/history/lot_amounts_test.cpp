// Amounts of a lot: counting, dividing, taking, and whether all of it is accounted for.
#include "lots.h"

using namespace lardiner;
using namespace lardiner::history;
using namespace lardiner::history::lots;

TEST_CASE("a container is divided into further ones that never get a later date", "[history][lot][split]") {
  Lot lot = begun(butter(2));
  Event divided = event(Kind::Split, "11 09:00", {2});
  divided.count = 3;
  divided.container_kind = QStringLiteral("jar");
  CHECK(told(lot, divided) == QString());
  REQUIRE(lot.holders.size() == 5);
  CHECK(lot.holders[1].where == Where::Used);
  CHECK(lot.holders[2].serial == QStringLiteral("A2631401-3"));
  CHECK(lot.holders[4].kind == QStringLiteral("jar"));
  CHECK(lot.holders[2].left + lot.holders[3].left + lot.holders[4].left == grams(500));
  CHECK(end(lot, 5) == end_of(16));
  CHECK(told(lot, event(Kind::Frozen, "11 10:00", {4})) == QString());
  CHECK(lot.holders[3].frozen);
  CHECK_FALSE(lot.holders[4].frozen);
}

TEST_CASE("a container is divided alone, and into no more than it holds", "[history][lot][split]") {
  Lot lot = begun(butter(2));
  Event divided = event(Kind::Split, "11 09:00");
  divided.count = 2;
  divided.container_kind = QStringLiteral("jar");
  CHECK(told(lot, divided) ==
        QStringLiteral("2 containers are divided at once\n  name one container, and write an event for each"));
  divided.containers = {1};
  divided.quantity = grams(251);
  CHECK(told(lot, divided) ==
        QStringLiteral("the parts hold more than what is left in container 1 of lot A26314CLB01X\n"
                       "  correct the quantity or the count, or count the container first"));
  divided.quantity = measure::quantity({1, 1}, measure::Unit::Piece);
  CHECK(told(lot, divided) ==
        QStringLiteral("lot A26314CLB01X is not recorded in such a unit\n"
                       "  write the quantity as it was made or received: by weight, by volume or in pieces"));
  divided.quantity = grams(200);
  CHECK(told(lot, divided) == QString());
  CHECK(lot.holders[0].left == grams(100));
}

TEST_CASE("what goes into a batch is taken from begun containers first, then by number", "[history][lot][amounts]") {
  Lot lot = begun(butter(3));
  CHECK(take(lot, grams(100), {2}, at("11 09:00")) == grams(0));
  CHECK(take(lot, grams(600), {}, at("11 10:00")) == grams(0));
  CHECK(lot.holders[1].where == Where::Used);
  CHECK(lot.holders[0].left == grams(300));
  CHECK(take(lot, grams(900), {}, at("11 11:00")) == grams(100));
}

TEST_CASE("a count sets what is left, and what is not seen is missing until it is", "[history][lot][amounts]") {
  Lot lot = begun(butter(2));
  Event counted = event(Kind::Counted, "11 21:00", {1});
  counted.left_percent = 25;
  CHECK(told(lot, counted) == QString());
  CHECK(lot.holders[0].left == grams(125));
  counted.left_percent = 0;
  CHECK(told(lot, counted) == QString());
  CHECK(lot.holders[0].where == Where::Missing);
  CHECK(balance(lot, grams(0)).missing == grams(125));
  counted.left_percent = 25;
  CHECK(told(lot, counted) == QString());
  CHECK(lot.holders[0].where == Where::Here);
}

TEST_CASE("what was made is used, dispatched, discarded, missing, on hand, or nobody accounts for it",
          "[history][lot][amounts]") {
  Lot lot = begun(butter(4));
  Event used = event(Kind::Used, "11 09:00", {1});
  used.quantity = grams(200);
  CHECK(told(lot, used) == QString());
  CHECK(told(lot, event(Kind::Dispatched, "11 09:30", {2})) == QString());
  CHECK(told(lot, event(Kind::Discarded, "11 09:40", {3})) == QString());
  CHECK(take(lot, grams(50), {4}, at("11 10:00")) == grams(0));
  const Balance sum = balance(lot, grams(50));
  CHECK(sum.made == grams(2100));
  CHECK(sum.used == grams(250));
  CHECK(sum.dispatched == grams(500));
  CHECK(sum.discarded == grams(500));
  CHECK(sum.on_hand == grams(750));
  CHECK(sum.difference == grams(100));
}

TEST_CASE("use without an amount, or in another unit, is refused", "[history][lot][amounts]") {
  Lot lot = begun(butter(1));
  CHECK(told(lot, event(Kind::Used, "11 09:00")) ==
        QStringLiteral("how much of lot A26314CLB01X was used is not written\n  write its quantity"));
  Event used = event(Kind::Used, "11 09:00");
  used.quantity = measure::quantity({1, 1}, measure::Unit::Piece);
  CHECK(told(lot, used) ==
        QStringLiteral("lot A26314CLB01X is not recorded in such a unit\n"
                       "  write the quantity as it was made or received: by weight, by volume or in pieces"));
}
