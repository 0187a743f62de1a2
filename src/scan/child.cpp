// Reads a file's codes in a child process: a library that does not come to its end, breaks down, or asks for all
// memory takes nothing with it but that file.
#include "scan/child.h"

#include <QProcess>
#include <new>

#include "scan/limits.h"
#include "scan/passes.h"
#include "scan/refusals.h"
#include "scan/report.h"

namespace lardiner::scan {

namespace {

enum class End { ByItself, OutOfTime, OutOfMemory, BrokenDown, NotStarted };

struct Ran {
  End end = End::ByItself;
  QByteArray out;
};

End end_of(const QProcess& process) {
  if (process.exitStatus() == QProcess::CrashExit) return End::BrokenDown;
  if (process.exitCode() == kOutOfMemory) return End::OutOfMemory;
  if (process.exitCode() == kOutOfTime) return End::OutOfTime;
  return process.exitCode() == 0 ? End::ByItself : End::BrokenDown;
}

Ran run(const Child& child, const QByteArray& bytes, int seconds) {
  constexpr int kMilliseconds = 1000;
  QProcess process;
  process.setStandardErrorFile(QProcess::nullDevice());
  process.start(child.program, child.arguments + QStringList{QString::number(seconds)});
  if (!process.waitForStarted()) return {End::NotStarted, {}};
  process.write(bytes);
  process.closeWriteChannel();
  const bool ended = process.waitForFinished((seconds + kGrace) * kMilliseconds);
  if (!ended) {
    process.kill();
    process.waitForFinished(-1);
  }
  return {ended ? end_of(process) : End::OutOfTime, process.readAllStandardOutput()};
}

Refusal refused(End end, const QString& name, const Bounds& bounds) {
  switch (end) {
    case End::OutOfTime:
      return refused_as_endless(name, bounds.seconds);
    case End::OutOfMemory:
      return refused_as_greedy(name, kMostMemory);
    case End::NotStarted:
      return refused_as_not_started(name);
    case End::ByItself:
    case End::BrokenDown:
      break;
  }
  return refused_as_breaking(name, kMostMemory);
}

// What there is of a file whose reading was cut off.
problem::Expected<Codes> part_of(Report report, const Refusal& why) {
  if (report.codes.codes.empty() && report.page <= 1) return why;
  report.codes.stopped = why.value().what;
  if (report.codes.pages > 1) report.codes.stopped += QStringLiteral(", at page %1").arg(report.page);
  return std::move(report.codes);
}

}  // namespace

problem::Expected<Codes> read_codes_in_child(const Child& child, const QByteArray& bytes, const QString& name,
                                             const Bounds& bounds) {
  const Ran ran = run(child, bytes, bounds.seconds);
  Report report = report_of(ran.out);
  put_in_order(report.codes.codes);
  if (!report.ended) return part_of(std::move(report), refused(ran.end, name, bounds));
  if (!report.error) return std::move(report.codes);
  report.error->place = {name, 0, 0, {}, 1, 1};
  return tl::unexpected(*report.error);
}

void read_for_parent(const QByteArray& bytes, int seconds, const std::function<void(const QByteArray&)>& tell) {
  limit_this_process(seconds + kGrace);
  Bounds bounds;
  bounds.seconds = seconds;
  const Listener listener{[&](int page, int pages) { tell(begun_message(page, pages)); },
                          [&](const Code& code) { tell(found_message(code)); }};
  try {
    tell(end_message(read_codes(bytes, {}, bounds, listener)));
  } catch (const std::bad_alloc&) {
    end_without_memory();
  }
}

}  // namespace lardiner::scan
