// Tasks on several threads: all are done, few are in hand at once, and what was not begun can be dropped.
#include "command/pool.h"

#include <atomic>
#include <future>
#include <memory>

#include "show.h"

using lardiner::command::Pool;

TEST_CASE("a pool has done all that was given when it has been waited for", "[command][pool][src:practice]") {
  for (const int threads : {1, 2, 5}) {
    std::atomic<int> sum = 0;
    Pool pool(threads, 3);
    for (int i = 1; i <= 200; ++i) pool.give([&sum, i] { sum += i; });
    pool.wait();
    CHECK(sum == 20100);
  }
}

TEST_CASE("one thread does tasks in the order in which they were given", "[command][pool][src:practice]") {
  std::vector<int> order;
  Pool pool(1, 8);
  for (int i = 0; i < 50; ++i) pool.give([&order, i] { order.push_back(i); });
  pool.wait();
  REQUIRE(order.size() == 50);
  for (int i = 0; i < 50; ++i) CHECK(order[static_cast<size_t>(i)] == i);
}

TEST_CASE("no more tasks are in hand than were allowed", "[command][pool][src:practice]") {
  std::atomic<int> given = 0, done = 0, most = 0;
  Pool pool(2, 4);
  for (int i = 0; i < 100; ++i) {
    pool.give([&done] { ++done; });
    most = std::max<int>(most, ++given - done);
  }
  pool.wait();
  CHECK(done == 100);
  CHECK(most <= 4);
}

TEST_CASE("what was not begun when a pool ends is dropped, with what it held", "[command][pool][src:practice]") {
  const auto held = std::make_shared<int>(0);
  std::promise<void> begun, go_on;
  std::atomic<int> done = 0;
  std::thread ending;
  {
    Pool pool(1, 4);
    pool.give([&] {
      begun.set_value();
      go_on.get_future().wait();
      ++done;
    });
    begun.get_future().wait();
    pool.give([&done, held] { done += 10; });
    REQUIRE(held.use_count() == 2);
    ending = std::thread([&] {
      while (held.use_count() > 1) std::this_thread::yield();
      go_on.set_value();
    });
  }
  ending.join();
  CHECK(done == 1);
}
