// The kitchen's book while the station runs: taken anew, whole, when its files have changed and are without fault.
#pragma once

#include <chrono>
#include <memory>
#include <mutex>

#include "command/kitchen.h"

namespace lardiner::command {

/// What all desks go by.
struct TakenBook {
  book::Book book;
  std::vector<words::Language> languages;  ///< with safety words that somebody reviewed, the kitchen's first in front
  std::optional<problem::Error> fault;     ///< of the files as they are now: `book` is what they said before
};

/// One for all threads, so that no two pages go by different books.
class KeptBook {
 public:
  /// Errors: the book's; no language of it whose safety words were reviewed.
  static problem::ExpectedAll<std::unique_ptr<KeptBook>> open(const Options& options,
                                                              std::vector<words::Language> packs);

  /// The book now. Looks at the folder at most once a second, and reads it once it was the same at two looks: somebody
  /// may be in the middle of saving. A book of another station is at fault: its ledger is another file.
  std::shared_ptr<const TakenBook> now();

  const std::vector<words::Language>& packs() const { return packs_; }

 private:
  using Clock = std::chrono::steady_clock;

  KeptBook(Options options, std::vector<words::Language> packs);
  problem::ExpectedAll<TakenBook> read() const;
  void take();

  const Options options_;
  const std::vector<words::Language> packs_;
  std::mutex mutex_;  // of all below
  std::shared_ptr<const TakenBook> taken_;
  QByteArray read_, seen_;  // the folder when it was read, and when it was looked at
  Clock::time_point looked_;
};

}  // namespace lardiner::command
