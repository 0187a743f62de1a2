// The moment by which one file must be done with.
#pragma once

#include <QElapsedTimer>

namespace lardiner::scan {

class Deadline {
 public:
  explicit Deadline(int seconds) : milliseconds_(qint64{seconds} * 1000) { timer_.start(); }

  bool passed() const { return timer_.elapsed() >= milliseconds_; }

 private:
  QElapsedTimer timer_;
  qint64 milliseconds_;
};

}  // namespace lardiner::scan
