// The exit statuses of the command line: documented, never renumbered.
#pragma once

#include <algorithm>

#include "problem/error.h"

namespace lardiner::command {

enum ExitStatus : int {
  kDone = 0,
  kInputAtFault = 1,  ///< the book or the records are wrong; nothing was written
  kWrongUsage = 2,
  kDoneInPart = 3,    ///< as asked: --keep-going or --hold-labels; a plan that cannot meet every order
  kMachineFailed = 4  ///< disk, database or printer
};

/// 4 when the machine is at fault anywhere, else 1.
inline ExitStatus exit_status(const problem::Errors& errors) {
  const bool machine = std::any_of(errors.begin(), errors.end(),
                                   [](const problem::Error& error) { return error.code == problem::Code::Machine; });
  return machine ? kMachineFailed : kInputAtFault;
}

}  // namespace lardiner::command
