// The processor time of a piece of work: what a busy machine does meanwhile does not count.
#pragma once

#include <sys/resource.h>

namespace bench {

/// Seconds that this process has spent, in the system's calls too.
inline double cpu_seconds() {
  rusage spent{};
  getrusage(RUSAGE_SELF, &spent);
  const auto seconds = [](const timeval& t) {
    return static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_usec) / 1e6;
  };
  return seconds(spent.ru_utime) + seconds(spent.ru_stime);
}

template <class Work>
double timed(const Work& work) {
  const double start = cpu_seconds();
  work();
  return cpu_seconds() - start;
}

}  // namespace bench
