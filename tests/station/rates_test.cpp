// How much one address may ask of the station.
#include "station/rates.h"

#include "show.h"

using namespace lardiner::station;
using namespace std::chrono_literals;

namespace {

const Rates::Clock::time_point kBegin{};

// How many of `tries` requests are answered, all at once.
int answered(Rates& rates, const std::string& address, int tries, Rates::Clock::time_point now) {
  int count = 0;
  for (int i = 0; i < tries; ++i) count += rates.take(address, 1, now) ? 0 : 1;
  return count;
}

}  // namespace

TEST_CASE("50 phones behind one router begin their shift, and work", "[station][rates]") {
  Rates rates(kRate, kLoopbackRate);
  const std::string router = "192.0.2.1";
  for (int phone = 0; phone < 50; ++phone) {
    for (int file = 0; file < 9; ++file) CHECK_FALSE(rates.take(router, 1, kBegin));
    CHECK_FALSE(rates.take(router, kPostTurns, kBegin));
  }
  for (int second = 1; second < 600; ++second)
    for (int page = 0; page < 50; ++page) CHECK_FALSE(rates.take(router, 1, kBegin + second * 1s));
}

TEST_CASE("who floods is told how long to wait, and nobody else is", "[station][rates]") {
  Rates rates({10, 30}, kLoopbackRate);
  CHECK(answered(rates, "192.0.2.1", 100, kBegin) == 30);
  CHECK(rates.take("192.0.2.1", 1, kBegin) == 1s);
  CHECK(rates.take("192.0.2.1", kPostTurns, kBegin) == 2s);
  CHECK(answered(rates, "192.0.2.2", 100, kBegin) == 30);
  CHECK(answered(rates, "192.0.2.1", 100, kBegin + 1s) == 10);
  CHECK(answered(rates, "192.0.2.1", 100, kBegin + 1h) == 30);
}

TEST_CASE("a client that changes its IPv6 address within its network is one client", "[station][rates]") {
  Rates rates({10, 30}, kLoopbackRate);
  int count = 0;
  for (int i = 0; i < 100; ++i) count += answered(rates, "2001:db8:1:2::" + std::to_string(i), 1, kBegin);
  CHECK(count == 30);
  CHECK(answered(rates, "2001:db8:1:3::1", 100, kBegin) == 30);
  CHECK(answered(rates, "192.0.2.1", 20, kBegin) == 20);
  CHECK(answered(rates, "::ffff:192.0.2.1", 20, kBegin) == 10);
}

TEST_CASE("this machine, where a proxy may stand for everybody, has a rate of its own", "[station][rates]") {
  Rates rates({10, 30}, {100, 300});
  for (const char* address : {"127.0.0.1", "::1"}) CHECK(answered(rates, address, 1000, kBegin) == 300);
}

TEST_CASE("however many addresses come, the table of them stays bounded, and a flood stays in it", "[station][rates]") {
  Rates rates({10, 30}, kLoopbackRate);
  CHECK(answered(rates, "192.0.2.1", 100, kBegin) == 30);
  for (int i = 0; i < 20'000; ++i) {
    const std::string address =
        "10." + std::to_string(i / 65536) + '.' + std::to_string(i / 256 % 256) + '.' + std::to_string(i % 256);
    CHECK(answered(rates, address, 1, kBegin) == 1);
  }
  CHECK(rates.size() <= Rates::kMost);
  CHECK(answered(rates, "192.0.2.1", 100, kBegin) == 0);
}
