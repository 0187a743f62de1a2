// Where a job stands at a printer.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>

#include "printer/printers.h"

namespace lardiner::printer {

/// RFC 8011, 5.3.7.
enum class JobState { Unknown, Pending, Held, Printing, Stopped, Canceled, Aborted, Completed };

/// "waiting", "held", "printing", "stopped", "canceled", "aborted", "completed".
QString text(JobState state);

struct JobStatus {
  int id = 0;
  QString name;
  JobState state = JobState::Unknown;
  QStringList reasons;  ///< of the job, in plain words
  std::optional<int> impressions_completed, sheets_completed;
  State printer_state = State::Unknown;
  QStringList printer_reasons;
  bool labels_out = false;        ///< the printer has none left, or asks for others
  bool printer_at_fault = false;  ///< nothing comes out meanwhile, whatever its state

  /// It changes no more.
  bool ended() const;
  /// Nothing is printed until somebody does something at the printer.
  bool stopped() const;
  /// How many pages came out, as far as the printer says.
  std::optional<int> done() const;
  friend bool operator==(const JobStatus&, const JobStatus&) = default;
};

/// "printing, page 3 of 46"; "stopped: out of labels". `pages`: that the job prints in all; 0: not known.
QString text(const JobStatus& status, int pages);

/// The page to go on with when a job of the pages `first` to `last`, once each, ended after `done` of them: nothing
/// where all were printed.
std::optional<int> page_to_go_on_with(int first, int last, int done);

}  // namespace lardiner::printer
