// How much one address may ask of the station: a store of turns that is filled again at a steady pace.
#pragma once

#include <chrono>
#include <mutex>
#include <optional>
#include <string>
#include <unordered_map>

namespace lardiner::station {

/// Turns: a request takes one, one that may change something kPostTurns.
struct Rate {
  double a_second = 100;
  double at_once = 2000;
};

/// A form may ask for the slow hash of a PIN, or for a picture to be read.
constexpr int kPostTurns = 20;

/// Of a kitchen whose 50 phones stand behind one router: at the start of a shift each opens its first page (with style,
/// script and faces 9 requests) and signs in, 1,450 turns at once; then 100 pages a second, or five forms. At that pace
/// PINs cost less than one processor.
constexpr Rate kRate{};
/// Of this machine: a proxy on it stands for everybody. More than the station can serve.
constexpr Rate kLoopbackRate{20'000, 40'000};

/// May be called from several threads.
class Rates {
 public:
  using Clock = std::chrono::steady_clock;

  Rates(const Rate& rate, const Rate& loopback) : rate_(rate), loopback_(loopback) {}

  /// Takes the turns; where there are too few, takes none and says how long to wait. `address`: as numbers. Of IPv6 the
  /// first 64 bits count, which one client has to itself (RFC 4291 2.5.4).
  std::optional<std::chrono::seconds> take(const std::string& address, int turns, Clock::time_point now);

  size_t size() const { return stores_.size(); }

  static constexpr size_t kMost = 4096;  ///< addresses that are remembered: those who took least go first

 private:
  struct Store {
    double turns = 0;
    Clock::time_point filled;
  };
  void make_room(Clock::time_point now);
  double turns_of(const Store& store, const Rate& rate, Clock::time_point now) const;

  const Rate rate_, loopback_;
  std::mutex mutex_;
  std::unordered_map<std::string, Store> stores_;
};

}  // namespace lardiner::station
