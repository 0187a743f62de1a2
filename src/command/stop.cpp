// Ctrl-C and SIGTERM: work in hand is put away before the program ends.
#include "command/stop.h"

#include <atomic>
#include <csignal>

namespace lardiner::command {

namespace {

std::atomic<int> asked_by = 0;  // a signal may come on any thread
static_assert(std::atomic<int>::is_always_lock_free);

void ask(int signal) { asked_by = signal; }

}  // namespace

void watch_for_stop() {
  std::signal(SIGINT, ask);
  std::signal(SIGTERM, ask);
}

bool stop_asked() { return asked_by != 0; }

void stop_if_asked() {
  if (asked_by == 0) return;
  std::signal(asked_by, SIG_DFL);
  std::raise(asked_by);
}

}  // namespace lardiner::command
