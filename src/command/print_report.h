// How a job ended, for the cook who has to go on: in words and as JSON.
#pragma once

#include <QJsonObject>
#include <QString>
#include <optional>

#include "printer/job_request.h"
#include "printer/job_status.h"
#include "problem/error.h"

namespace lardiner::command {

/// What was printed where.
struct PrintJob {
  QString file, printer;  ///< as named; the printer's name
  int id = 0;
  printer::PageRange pages;
  int page_count = 0;  ///< of the range; 0: the file does not say
  bool to_end = true;  ///< the range ends where the file does
  int copies = 1;

  int total() const { return page_count * copies; }
};

/// "printed: the printer counted 46 of 46 pages"; one that printed all and counted none does not count.
QString printed_text(const PrintJob& job, const printer::JobStatus& status);

/// The page to go on with; nothing where that cannot be said.
std::optional<int> page_to_go_on_with(const PrintJob& job, const printer::JobStatus& status);

/// Of a job that is not completed (Machine): how it stands, how many pages came out, and how to go on.
problem::Error not_printed(const PrintJob& job, const printer::JobStatus& status);

QJsonObject json(const PrintJob& job, const printer::JobStatus& status);

}  // namespace lardiner::command
