// How the prints of a station stand, told by the threads that print to those that answer.
#pragma once

#include <QHash>
#include <QSet>
#include <QString>
#include <condition_variable>
#include <mutex>
#include <optional>

#include "station/printing.h"

namespace lardiner::command {

/// A printer that the station was given: the name that the kitchen calls it by, and its address.
struct NamedPrinter {
  QString name, address;
};

class PrintBoard {
 public:
  void set(const QString& print, const station::PrintStanding& standing);
  std::optional<station::PrintStanding> get(const QString& print) const;
  void forget(const QString& print);

  /// From before a print is recorded as sent until its printer has it, or has it not: a printer that is asked for it
  /// meanwhile knows none.
  void sending(const QString& print, bool is);
  bool is_sending(const QString& print) const;

  /// A test label of a medium was given to a printer; and whether one was, since it was last told what is in it.
  void tested(const QString& printer, const QString& medium);
  bool take_tested(const QString& printer, const QString& medium);

  /// For who answers a page and has to ask a printer for it: one at a time, since a silent printer holds them up. Not
  /// owned: somebody else does.
  std::unique_lock<std::mutex> speak() { return {speaking_, std::try_to_lock}; }

  /// Something was asked for, or ended: who waits looks at once.
  void wake();
  void stop();
  bool stopping() const;
  /// Until it is woken or told to stop, so many seconds at the most.
  void wait(int seconds);

 private:
  std::mutex speaking_;
  mutable std::mutex mutex_;
  std::condition_variable woken_;
  unsigned wakes_ = 0;
  bool stopping_ = false;
  QHash<QString, station::PrintStanding> standings_;
  QSet<QString> sending_;
  QHash<QString, QString> tested_;  // medium by printer
};

}  // namespace lardiner::command
