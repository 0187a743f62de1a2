// How the prints of a station stand, told by the threads that print to those that answer.
#include "command/print_board.h"

#include <chrono>

namespace lardiner::command {

void PrintBoard::set(const QString& print, const station::PrintStanding& standing) {
  const std::lock_guard lock(mutex_);
  standings_.insert(print, standing);
}

std::optional<station::PrintStanding> PrintBoard::get(const QString& print) const {
  const std::lock_guard lock(mutex_);
  const auto found = standings_.constFind(print);
  return found == standings_.constEnd() ? std::nullopt : std::optional(*found);
}

void PrintBoard::forget(const QString& print) {
  const std::lock_guard lock(mutex_);
  standings_.remove(print);
}

void PrintBoard::sending(const QString& print, bool is) {
  const std::lock_guard lock(mutex_);
  if (is)
    sending_.insert(print);
  else
    sending_.remove(print);
}

bool PrintBoard::is_sending(const QString& print) const {
  const std::lock_guard lock(mutex_);
  return sending_.contains(print);
}

void PrintBoard::tested(const QString& printer, const QString& medium) {
  const std::lock_guard lock(mutex_);
  tested_.insert(printer, medium);
}

bool PrintBoard::take_tested(const QString& printer, const QString& medium) {
  const std::lock_guard lock(mutex_);
  const auto found = tested_.constFind(printer);
  if (found == tested_.constEnd() || *found != medium) return false;
  tested_.erase(found);
  return true;
}

void PrintBoard::wake() {
  const std::lock_guard lock(mutex_);
  ++wakes_;
  woken_.notify_all();
}

void PrintBoard::stop() {
  const std::lock_guard lock(mutex_);
  stopping_ = true;
  woken_.notify_all();
}

bool PrintBoard::stopping() const {
  const std::lock_guard lock(mutex_);
  return stopping_;
}

void PrintBoard::wait(int seconds) {
  std::unique_lock lock(mutex_);
  const unsigned before = wakes_;
  woken_.wait_for(lock, std::chrono::seconds(seconds), [&] { return stopping_ || wakes_ != before; });
}

}  // namespace lardiner::command
