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
  called_.notify_all();
  for (std::thread& thread : threads_) thread.join();
}

Reply Desks::ask(const Work& work, const Failed& failed) {
  Asked one{work, failed, {}};
  std::future<Reply> reply = one.reply.get_future();
  {
    const std::lock_guard lock(mutex_);
    asked_.push_back(std::move(one));
  }
  called_.notify_one();
  return reply.get();
}

// What has waited longest; nothing: the desks close, and all is answered.
std::optional<Desks::Asked> Desks::next() {
  std::unique_lock lock(mutex_);
  called_.wait(lock, [&] { return closing_ || !asked_.empty(); });
  if (asked_.empty()) return std::nullopt;
  Asked one = std::move(asked_.front());
  asked_.pop_front();
  return one;
}

void Desks::serve() {
  std::unique_ptr<Desk> desk;
  while (std::optional<Asked> one = next()) {
    try {
      problem::Errors errors;
      if (!desk) {
        auto made = make_();
        if (made)
          desk = std::move(*made);
        else
          errors = made.error();
      }
      one->reply.set_value(desk ? one->work(*desk) : one->failed(errors));
    } catch (...) {
      one->reply.set_exception(std::current_exception());
    }
  }
}

}  // namespace lardiner::station
