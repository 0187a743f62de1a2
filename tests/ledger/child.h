// The writer program as a child that is read from, waited for and killed.
#pragma once

#include <sys/types.h>

#include <QByteArray>
#include <QString>
#include <QStringList>
#include <utility>
#include <vector>

namespace lardiner::ledger {

class Child {
 public:
  /// Starts ledger_writer with `arguments`; `environment` is added to the own.
  explicit Child(const QStringList& arguments, const std::vector<std::pair<QByteArray, QByteArray>>& environment = {});
  ~Child();
  Child(const Child&) = delete;
  Child& operator=(const Child&) = delete;

  /// What it wrote until now, up to a whole line, waiting for more than `lines` of them or for its end.
  QByteArray read_lines(int lines);
  void kill();
  /// Waits for its end: what it wrote to standard output and standard error, and its exit status (-1: a signal).
  struct End {
    QByteArray out, err;
    int status = -1;
  };
  End wait();

 private:
  pid_t pid_ = -1;
  int out_ = -1, err_ = -1;
  QByteArray read_;
};

/// The last number that a writer told: events that it knows to be recorded.
qint64 acknowledged(const QByteArray& lines);

}  // namespace lardiner::ledger
