// A fixed number of threads that do tasks in the order in which they were given.
#pragma once

#include <condition_variable>
#include <cstddef>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace lardiner::command {

class Pool {
 public:
  /// `most`: tasks in hand, begun or not, so that what they hold stays bounded. REQUIRES: both at least 1.
  Pool(int threads, std::size_t most);
  /// Drops the tasks that were not begun and waits for those that were.
  ~Pool();
  Pool(const Pool&) = delete;
  Pool& operator=(const Pool&) = delete;

  /// Waits for room first. REQUIRES: the task throws nothing; it waits for no later task of this pool.
  void give(std::function<void()> task);
  /// Waits until all that was given is done.
  void wait();

 private:
  void work();

  std::size_t most_;
  std::mutex mutex_;
  std::condition_variable given_, done_;
  std::deque<std::function<void()>> waiting_;
  std::size_t begun_ = 0;
  bool closed_ = false;
  std::vector<std::jthread> threads_;  // last: they end before what they use
};

}  // namespace lardiner::command
