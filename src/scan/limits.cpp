// What a process that reads foreign files may take of the machine.
#include "scan/limits.h"

#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/time.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <new>

namespace lardiner::scan {

namespace {

#if defined(__SANITIZE_ADDRESS__)
constexpr bool kAddressesHaveLimit = false;  // AddressSanitizer reserves terabytes of them
#else
constexpr bool kAddressesHaveLimit = true;
#endif

// What the process is told of at `told`, and does not get beyond `most`.
void limit(__rlimit_resource what, rlim_t told, rlim_t most) {
  rlimit now{};
  if (getrlimit(what, &now) != 0) return;
  now.rlim_max = std::min(now.rlim_max, most);
  now.rlim_cur = std::min({now.rlim_cur, now.rlim_max, told});
  setrlimit(what, &now);
}

void limit(__rlimit_resource what, rlim_t most) { limit(what, most, most); }

void end_without_time(int) { _exit(kOutOfTime); }

// With a second in which to say so: at the limit itself the system kills without a word.
void limit_processor_time(rlim_t seconds) {
  struct sigaction action {};
  action.sa_handler = end_without_time;
  sigaction(SIGXCPU, &action, nullptr);
  limit(RLIMIT_CPU, seconds, seconds + 1);
}

void look_at_memory(int) {
  constexpr qint64 kBytes = 1024;  // ru_maxrss counts so many
  rusage usage{};
  if (getrusage(RUSAGE_SELF, &usage) == 0 && usage.ru_maxrss * kBytes > kMostMemory) end_without_memory();
}

// A library whose request is refused may go on and leave out what it has no room for: the limit alone would give a page
// half drawn. So the process looks at itself while it still gets what it asks for.
void watch_memory() {
  constexpr suseconds_t kMicroseconds = 10'000;
  struct sigaction action {};
  action.sa_handler = look_at_memory;
  action.sa_flags = SA_RESTART;
  sigaction(SIGALRM, &action, nullptr);
  const itimerval often{{0, kMicroseconds}, {0, kMicroseconds}};
  setitimer(ITIMER_REAL, &often, nullptr);
}

}  // namespace

void limit_this_process(int seconds) {
  if (kAddressesHaveLimit) limit(RLIMIT_AS, static_cast<rlim_t>(2 * kMostMemory));
  limit_processor_time(static_cast<rlim_t>(seconds));
  limit(RLIMIT_CORE, 0);
  prctl(PR_SET_PDEATHSIG, SIGKILL);
  std::set_new_handler(end_without_memory);
  watch_memory();
}

void end_without_memory() { _exit(kOutOfMemory); }

}  // namespace lardiner::scan
