// Where a job stands at a printer.
#include "printer/job_status.h"

#include <algorithm>

namespace lardiner::printer {

namespace {

QString page_text(const JobStatus& status, int pages) {
  const auto done = status.done();
  if (status.state != JobState::Printing || !done) return {};
  const int page = pages > 0 ? std::min(*done + 1, pages) : *done + 1;
  const QString out = QStringLiteral(", page %1").arg(page);
  return pages > 0 ? out + QStringLiteral(" of %1").arg(pages) : out;
}

}  // namespace

QString text(JobState state) {
  switch (state) {
    case JobState::Pending:
      return QStringLiteral("waiting");
    case JobState::Held:
      return QStringLiteral("held");
    case JobState::Printing:
      return QStringLiteral("printing");
    case JobState::Stopped:
      return QStringLiteral("stopped");
    case JobState::Canceled:
      return QStringLiteral("canceled");
    case JobState::Aborted:
      return QStringLiteral("aborted");
    case JobState::Completed:
      return QStringLiteral("completed");
    case JobState::Unknown:
      break;
  }
  return QStringLiteral("unknown");
}

bool JobStatus::ended() const {
  return state == JobState::Canceled || state == JobState::Aborted || state == JobState::Completed;
}

bool JobStatus::stopped() const { return state == JobState::Stopped || (!ended() && printer_state == State::Stopped); }

std::optional<int> JobStatus::done() const { return impressions_completed ? impressions_completed : sheets_completed; }

QString text(const JobStatus& status, int pages) {
  QStringList reasons = status.reasons;
  if (!status.ended()) reasons += status.printer_reasons;
  reasons.removeDuplicates();
  QString out = status.stopped() ? text(JobState::Stopped) : text(status.state) + page_text(status, pages);
  if (!reasons.isEmpty()) out += QStringLiteral(": ") + reasons.join(QStringLiteral(", "));
  return out;
}

std::optional<int> page_to_go_on_with(int first, int last, int done) {
  const int next = first + std::max(done, 0);
  return next > last ? std::nullopt : std::optional(next);
}

}  // namespace lardiner::printer
