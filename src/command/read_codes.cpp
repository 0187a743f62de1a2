// lardiner read-codes: the part of `scan` that runs in a process of its own: a file from standard input, what is found
// in it to standard output, for the program that started it.
#include <cstdio>

#include "command/commands.h"
#include "command/files.h"
#include "scan/child.h"

namespace lardiner::command {

ExitStatus read_codes_for_scan(int seconds) {
  const auto bytes = read_file(QStringLiteral("-"));
  if (!bytes) return kMachineFailed;
  scan::read_for_parent(*bytes, seconds, [](const QByteArray& message) {
    std::fwrite(message.constData(), 1, static_cast<size_t>(message.size()), stdout);
    std::fflush(stdout);
  });
  return kDone;
}

}  // namespace lardiner::command
