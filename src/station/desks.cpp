// A few threads, each with a desk of its own, that do what the many connections ask for.
#include "station/desks.h"

namespace lardiner::station {

Desks::Desks(int count, Make make) : make_(std::move(make)) {
  for (int i = 0; i < count; ++i) threads_.emplace_back([this] { serve(); });
}

Desks::~Desks() {
  {
    const std::lock_guard lock(mutex_);
    closing_ = true;
  }
  asked_.notify_all();
  for (std::thread& thread : threads_) thread.join();
}

Reply Desks::ask(const Work& work, const Failed& failed) {
  Waiting one{work, failed, {}, nullptr};
  std::unique_lock lock(mutex_);
  waiting_.push_back(&one);
  asked_.notify_one();
  one.told.wait(lock, [&] { return one.done; });
  if (one.thrown) std::rethrow_exception(one.thrown);
  return std::move(one.reply);
}

void Desks::serve() {
  std::unique_ptr<Desk> desk;
  std::unique_lock lock(mutex_);
  for (;;) {
    asked_.wait(lock, [&] { return closing_ || !waiting_.empty(); });
    if (waiting_.empty()) return;
    Waiting* one = waiting_.front();
    waiting_.pop_front();
    lock.unlock();
    try {
      problem::Errors errors;
      if (!desk) {
        auto made = make_();
        if (made)
          desk = std::move(*made);
        else
          errors = made.error();
      }
      one->reply = desk ? one->work(*desk) : one->failed(errors);
    } catch (...) {
      one->thrown = std::current_exception();
    }
    lock.lock();
    one->done = true;
    one->told.notify_one();  // with the lock held: it goes away as soon as its thread can look
  }
}

}  // namespace lardiner::station
