// A fixed number of threads that do tasks in the order in which they were given.
#include "command/pool.h"

#include <utility>

namespace lardiner::command {

Pool::Pool(int threads, std::size_t most) : most_(most) {
  for (int i = 0; i < threads; ++i) threads_.emplace_back([this] { work(); });
}

Pool::~Pool() {
  const std::lock_guard lock(mutex_);
  closed_ = true;
  waiting_.clear();
  given_.notify_all();
}

void Pool::give(std::function<void()> task) {
  std::unique_lock lock(mutex_);
  done_.wait(lock, [this] { return waiting_.size() + begun_ < most_; });
  waiting_.push_back(std::move(task));
  given_.notify_one();
}

void Pool::wait() {
  std::unique_lock lock(mutex_);
  done_.wait(lock, [this] { return waiting_.empty() && begun_ == 0; });
}

void Pool::work() {
  std::unique_lock lock(mutex_);
  while (true) {
    given_.wait(lock, [this] { return closed_ || !waiting_.empty(); });
    if (waiting_.empty()) return;
    std::function<void()> task = std::move(waiting_.front());
    waiting_.pop_front();
    ++begun_;
    lock.unlock();
    task();
    task = nullptr;  // what it held is free before it counts as done
    lock.lock();
    --begun_;
    done_.notify_all();
  }
}

}  // namespace lardiner::command
