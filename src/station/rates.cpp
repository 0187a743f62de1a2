// How much one address may ask of the station.
#include "station/rates.h"

#include <arpa/inet.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace lardiner::station {

namespace {

bool is_loopback(const std::string& address) { return address == "::1" || address.starts_with("127."); }

// "2001:db8:1:2::7" is one of those who share "2001:db8:1:2"; an IPv4 address that is written as IPv6 is itself.
std::string whose(const std::string& address) {
  constexpr std::string_view kMapped = "::ffff:";
  if (address.starts_with(kMapped) && address.find('.') != std::string::npos) return address.substr(kMapped.size());
  std::array<char, sizeof(in6_addr)> bytes{};
  const std::string plain = address.substr(0, address.find('%'));
  if (inet_pton(AF_INET6, plain.c_str(), bytes.data()) != 1 || is_loopback(plain)) return plain;
  return {bytes.data(), 8};
}

}  // namespace

std::optional<std::chrono::seconds> Rates::take(const std::string& address, int turns, Clock::time_point now) {
  const std::string key = whose(address);
  const Rate& rate = is_loopback(key) ? loopback_ : rate_;
  const std::lock_guard lock(mutex_);
  auto found = stores_.find(key);
  if (found == stores_.end()) {
    if (stores_.size() >= kMost) make_room(now);
    found = stores_.emplace(key, Store{rate.at_once, now}).first;
  }
  Store& store = found->second;
  store.turns = turns_of(store, rate, now);
  store.filled = now;
  if (store.turns < turns)
    return std::chrono::seconds(std::max(1L, std::lround(std::ceil((turns - store.turns) / rate.a_second))));
  store.turns -= turns;
  return std::nullopt;
}

double Rates::turns_of(const Store& store, const Rate& rate, Clock::time_point now) const {
  const std::chrono::duration<double> passed = now - store.filled;
  return std::min(rate.at_once, store.turns + passed.count() * rate.a_second);
}

// Whose store is full again is as if they had never come. Where nobody's is, the fullest is forgotten.
void Rates::make_room(Clock::time_point now) {
  const auto turns = [&](const auto& one) { return turns_of(one.second, rate_, now); };
  std::erase_if(stores_, [&](const auto& one) { return turns(one) >= rate_.at_once; });
  if (stores_.size() < kMost) return;
  stores_.erase(std::max_element(stores_.begin(), stores_.end(),
                                 [&](const auto& a, const auto& b) { return turns(a) < turns(b); }));
}

}  // namespace lardiner::station
