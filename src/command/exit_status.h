// The exit statuses of the command line: documented, never renumbered.
#pragma once

#include <algorithm>

#include "command/option_error.h"
#include "problem/error.h"

namespace lardiner::command {

enum ExitStatus : int {
  kDone = 0,
  kInputAtFault = 1,  ///< the book or the records are wrong; nothing was written
  kWrongUsage = 2,
  kDoneInPart = 3,    ///< as asked: --keep-going or --hold-labels; a plan that cannot meet every order
  kMachineFailed = 4  ///< disk, database or printer
};

/// 4 when the machine is at fault anywhere, 2 when nothing but values of options is, else 1.
inline ExitStatus exit_status(const problem::Errors& errors) {
  const bool machine = std::any_of(errors.begin(), errors.end(),
                                   [](const problem::Error& error) { return error.code == problem::Code::Machine; });
  if (machine) return kMachineFailed;
  const bool options_alone = !errors.empty() && std::all_of(errors.begin(), errors.end(), is_of_option);
  return options_alone ? kWrongUsage : kInputAtFault;
}

}  // namespace lardiner::command
