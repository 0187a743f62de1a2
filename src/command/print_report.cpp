// How a job ended, for the cook who has to go on: in words and as JSON.
#include "command/print_report.h"

#include <QJsonArray>

namespace lardiner::command {

namespace {

using printer::JobStatus;
using problem::Code;

// "12 of 46 pages".
QString pages_text(const PrintJob& job, int done) {
  if (job.total() == 0) return QStringLiteral("%1 pages").arg(done);
  return QStringLiteral("%1 of %2 pages").arg(done).arg(job.total());
}

QString how_far(const PrintJob& job, const JobStatus& status) {
  const auto done = status.done();
  return done ? QStringLiteral("after %1").arg(pages_text(job, *done))
              : QStringLiteral("and the printer does not say after how many pages");
}

QString how_to_go_on(const PrintJob& job, const JobStatus& status) {
  const auto page = page_to_go_on_with(job, status);
  const QString last = job.to_end ? QString() : QString::number(job.pages.last);
  return page ? QStringLiteral("look at the last good label; go on with --pages %1-%2").arg(*page).arg(last)
              : QStringLiteral("look at the last good label, and go on with --pages from the next page");
}

QJsonValue json_of(std::optional<int> value) { return value ? QJsonValue(*value) : QJsonValue(); }

}  // namespace

QString printed_text(const PrintJob& job, const JobStatus& status) {
  const auto done = status.done();
  if (done.value_or(0) == 0) return QStringLiteral("printed; the printer does not say how many pages\n");
  return QStringLiteral("printed: the printer counted %1\n").arg(pages_text(job, *done));
}

std::optional<int> page_to_go_on_with(const PrintJob& job, const JobStatus& status) {
  if (job.copies != 1 || !status.done() || status.state == printer::JobState::Completed) return std::nullopt;
  return printer::page_to_go_on_with(job.pages.first, job.pages.last, *status.done());
}

problem::Error not_printed(const PrintJob& job, const JobStatus& status) {
  const QString stands = text(status, job.total());
  if (status.ended())
    return {Code::Machine,
            QStringLiteral("job %1 at the printer \"%2\" was not printed to its end, %3; %4")
                .arg(job.id)
                .arg(job.printer, how_far(job, status), stands),
            {},
            how_to_go_on(job, status)};
  return {Code::Machine,
          QStringLiteral("job %1 still stands at the printer \"%2\", %3; %4")
              .arg(job.id)
              .arg(job.printer, how_far(job, status), stands),
          {},
          QStringLiteral("it goes on when the printer does; to begin anew, cancel it at the printer first, then ") +
              how_to_go_on(job, status)};
}

QJsonObject json(const PrintJob& job, const JobStatus& status) {
  return {{QStringLiteral("file"), job.file},
          {QStringLiteral("printer"), job.printer},
          {QStringLiteral("job"), job.id},
          {QStringLiteral("job_name"), status.name},
          {QStringLiteral("state"), status.stopped() ? text(printer::JobState::Stopped) : text(status.state)},
          {QStringLiteral("reasons"), QJsonArray::fromStringList(status.reasons + status.printer_reasons)},
          {QStringLiteral("pages"), job.total()},
          {QStringLiteral("pages_completed"), json_of(status.done())},
          {QStringLiteral("go_on_with_page"), json_of(page_to_go_on_with(job, status))}};
}

}  // namespace lardiner::command
