// A few threads, each with a desk of its own, that do what the many connections ask for.
#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <future>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "station/desk.h"
#include "station/exchange.h"

namespace lardiner::station {

/// A ledger's connection belongs to the thread that opened it, and costs memory: there are few, and connections wait
/// their turn.
class Desks {
 public:
  /// Makes a desk in its thread; an error is answered to whoever asks.
  using Make = std::function<problem::ExpectedAll<std::unique_ptr<Desk>>()>;
  using Work = std::function<Reply(Desk&)>;
  using Failed = std::function<Reply(const problem::Errors&)>;

  Desks(int count, Make make);
  ~Desks();
  Desks(const Desks&) = delete;
  Desks& operator=(const Desks&) = delete;

  /// What `work` replies, done at one of the desks; `failed` where that has none. What they throw comes out here.
  Reply ask(const Work& work, const Failed& failed);

 private:
  struct Asked {
    const Work& work;
    const Failed& failed;
    std::promise<Reply> reply;
  };
  void serve();
  std::optional<Asked> next();

  Make make_;
  std::mutex mutex_;
  std::condition_variable called_;
  std::deque<Asked> asked_;
  bool closing_ = false;
  std::vector<std::thread> threads_;  // last: they use all of the above
};

}  // namespace lardiner::station
