// A PDF as a job of a printer: sent as it is, followed to its end, found again by its name.
#include "printer/job.h"

#include <unistd.h>

#include <QElapsedTimer>
#include <algorithm>

#include "printer/attributes.h"
#include "printer/ipp.h"
#include "printer/reasons.h"

namespace lardiner::printer {

namespace {

using problem::Code;
using problem::Error;

constexpr int kPollsBetweenLooks = 5;         // looks at the printer come so many pauses apart
constexpr unsigned kPauseMicroseconds = 1e5;  // a tenth of a second
constexpr int kMostSilent = 4;                // looks without an answer, one after the other
constexpr const char* kPdf = "application/pdf";

void add_medium(ipp_t* request, const JobTerms& terms) {
  const Medium& medium = terms.medium.medium;
  if (!terms.by_media_size) {
    ippAddString(request, IPP_TAG_JOB, IPP_TAG_KEYWORD, "media", nullptr, medium.name.toUtf8().constData());
    return;
  }
  const Message size(ippNew()), media(ippNew());
  ippAddInteger(size.get(), IPP_TAG_ZERO, IPP_TAG_INTEGER, "x-dimension", medium.size.width);
  ippAddInteger(size.get(), IPP_TAG_ZERO, IPP_TAG_INTEGER, "y-dimension", medium.size.height);
  ippAddCollection(media.get(), IPP_TAG_ZERO, "media-size", size.get());
  ippAddCollection(request, IPP_TAG_JOB, "media-col", media.get());
}

// RFC 8011, 5.2; print-scaling: PWG 5100.16.
void add_terms(ipp_t* request, const JobTerms& terms) {
  ippAddInteger(request, IPP_TAG_JOB, IPP_TAG_INTEGER, "copies", terms.copies);
  add_medium(request, terms);
  if (terms.pages) ippAddRange(request, IPP_TAG_JOB, "page-ranges", terms.pages->first, terms.pages->last);
  if (terms.dots_per_inch)
    ippAddResolution(request, IPP_TAG_JOB, "printer-resolution", IPP_RES_PER_INCH, *terms.dots_per_inch,
                     *terms.dots_per_inch);
  if (terms.unscaled) ippAddString(request, IPP_TAG_JOB, IPP_TAG_KEYWORD, "print-scaling", nullptr, "none");
  if (terms.one_sided) ippAddString(request, IPP_TAG_JOB, IPP_TAG_KEYWORD, "sides", nullptr, "one-sided");
}

Message job_request(const Line& line, ipp_op_t operation, const JobTerms& terms) {
  Message out = line.request(operation);
  ippAddString(out.get(), IPP_TAG_OPERATION, IPP_TAG_NAME, "job-name", nullptr, terms.name.toUtf8().constData());
  ippAddString(out.get(), IPP_TAG_OPERATION, IPP_TAG_MIMETYPE, "document-format", nullptr, kPdf);
  ippAddBoolean(out.get(), IPP_TAG_OPERATION, "ipp-attribute-fidelity", 1);
  add_terms(out.get(), terms);
  return out;
}

// A printer that does not know Validate-Job refuses with Print-Job alone.
std::optional<Error> refused_beforehand(Line& line, const JobTerms& terms) {
  const auto answer = line.ask(job_request(line, IPP_OP_VALIDATE_JOB, terms));
  if (!answer) return answer.error();
  if (is_done(*answer) || ippGetStatusCode(answer->get()) == IPP_STATUS_ERROR_OPERATION_NOT_SUPPORTED)
    return std::nullopt;
  return refusal(*answer, line.shown());
}

Error not_known(const QString& name, const QString& printer) {
  return {Code::Machine,
          QStringLiteral("the printer at %1 was sent the job \"%2\" and did not answer: it is not known whether it "
                         "took it")
              .arg(printer, name),
          {},
          QStringLiteral("look at the printer before it is printed again")};
}

// RFC 8011, 5.3.7.
JobState job_state(std::optional<int> value) {
  switch (value.value_or(0)) {
    case IPP_JSTATE_PENDING:
      return JobState::Pending;
    case IPP_JSTATE_HELD:
      return JobState::Held;
    case IPP_JSTATE_PROCESSING:
      return JobState::Printing;
    case IPP_JSTATE_STOPPED:
      return JobState::Stopped;
    case IPP_JSTATE_CANCELED:
      return JobState::Canceled;
    case IPP_JSTATE_ABORTED:
      return JobState::Aborted;
    case IPP_JSTATE_COMPLETED:
      return JobState::Completed;
    default:
      return JobState::Unknown;
  }
}

JobStatus read_status(const Message& answer, int id) {
  JobStatus out;
  out.id = id;
  out.name = text_of(answer, "job-name");
  out.state = job_state(number_of(answer, "job-state"));
  out.reasons = in_words(texts_of(answer, "job-state-reasons"));
  out.impressions_completed = number_of(answer, "job-impressions-completed");
  out.sheets_completed = number_of(answer, "job-media-sheets-completed");
  return out;
}

problem::Expected<Message> job_attributes(Line& line, int id) {
  Message request = line.request(IPP_OP_GET_JOB_ATTRIBUTES);
  ippAddInteger(request.get(), IPP_TAG_OPERATION, IPP_TAG_INTEGER, "job-id", id);
  ask_for(request, {"job-id", "job-name", "job-state", "job-state-reasons", "job-impressions-completed",
                    "job-media-sheets-completed"});
  auto answer = line.ask(std::move(request));
  if (answer && !is_done(*answer)) return tl::unexpected(refusal(*answer, line.shown()));
  return answer;
}

State printer_state(std::optional<int> value) {
  return value == std::optional<int>(IPP_PSTATE_STOPPED) ? State::Stopped : State::Unknown;
}

problem::Expected<JobStatus> look(Line& line, int id) {
  const auto job = job_attributes(line, id);
  if (!job) return tl::unexpected(job.error());
  JobStatus out = read_status(*job, id);
  if (out.ended()) return out;
  Message request = line.request(IPP_OP_GET_PRINTER_ATTRIBUTES);
  ask_for(request, {"printer-state", "printer-state-reasons"});
  const auto printer = line.ask(std::move(request));
  if (!printer) return tl::unexpected(printer.error());
  out.printer_state = printer_state(number_of(*printer, "printer-state"));
  const QStringList reasons = texts_of(*printer, "printer-state-reasons");
  out.printer_reasons = in_words(reasons);
  out.printer_at_fault = std::any_of(reasons.begin(), reasons.end(), stops_printing);
  out.labels_out = std::any_of(reasons.begin(), reasons.end(), [](const QString& one) {
    return one.startsWith(QLatin1String("media-empty")) || one.startsWith(QLatin1String("media-needed"));
  });
  return out;
}

// False: the time is over, or nobody wants to know any more.
bool pause(const QElapsedTimer& timer, const Watch& watch) {
  for (int poll = 0; poll < kPollsBetweenLooks; ++poll) {
    if (timer.elapsed() >= qint64{1000} * watch.seconds || !watch.go_on()) return false;
    usleep(kPauseMicroseconds);
  }
  return true;
}

// The jobs of one kind ("completed", "not-completed"): number and name of each, the attributes between separators.
std::optional<int> latest_named(const Message& answer, const QByteArray& name) {
  std::optional<int> latest;
  int id = 0;
  bool named = false;
  const auto end_job = [&] {
    if (named && id > latest.value_or(0)) latest = id;
    id = 0;
    named = false;
  };
  for (ipp_attribute_t* one = ippFirstAttribute(answer.get()); one != nullptr; one = ippNextAttribute(answer.get())) {
    const QByteArray key(ippGetName(one));
    if (ippGetGroupTag(one) != IPP_TAG_JOB || key.isEmpty()) end_job();
    if (key == "job-id") id = ippGetInteger(one, 0);
    if (key == "job-name") named = name == ippGetString(one, 0, nullptr);
  }
  end_job();
  return latest;
}

problem::Expected<std::optional<int>> find_among(Line& line, const char* which, const QByteArray& name) {
  Message request = line.request(IPP_OP_GET_JOBS);
  ippAddString(request.get(), IPP_TAG_OPERATION, IPP_TAG_KEYWORD, "which-jobs", nullptr, which);
  ippAddBoolean(request.get(), IPP_TAG_OPERATION, "my-jobs", 0);
  ask_for(request, {"job-id", "job-name"});
  const auto answer = line.ask(std::move(request));
  if (!answer) return tl::unexpected(answer.error());
  if (!is_done(*answer)) return tl::unexpected(refusal(*answer, line.shown()));
  return latest_named(*answer, name);
}

}  // namespace

problem::Expected<int> send_job(const Printer& printer, const JobTerms& terms, const QByteArray& pdf) {
  auto line = Line::to(printer.address);
  if (!line) return tl::unexpected(line.error());
  if (const auto refused = refused_beforehand(*line, terms)) return tl::unexpected(*refused);
  bool taken_unknown = false;
  const auto answer = line->send(job_request(*line, IPP_OP_PRINT_JOB, terms), pdf, taken_unknown);
  if (!answer) return tl::unexpected(taken_unknown ? not_known(terms.name, line->shown()) : answer.error());
  if (!is_done(*answer)) return tl::unexpected(refusal(*answer, line->shown()));
  const auto id = number_of(*answer, "job-id");
  if (!id) return tl::unexpected(not_known(terms.name, line->shown()));
  return *id;
}

std::optional<Error> validate_job(const Printer& printer, const JobTerms& terms) {
  auto line = Line::to(printer.address);
  return line ? refused_beforehand(*line, terms) : line.error();
}

std::optional<Error> cancel_job(const QString& address, int id) {
  auto line = Line::to(address);
  if (!line) return line.error();
  Message request = line->request(IPP_OP_CANCEL_JOB);
  ippAddInteger(request.get(), IPP_TAG_OPERATION, IPP_TAG_INTEGER, "job-id", id);
  const auto answer = line->ask(std::move(request));
  if (!answer) return answer.error();
  if (is_done(*answer)) return std::nullopt;
  const auto now = look(*line, id);  // one that ended meanwhile cannot be cancelled
  if (!now) return now.error();
  return now->ended() ? std::nullopt : std::optional(refusal(*answer, line->shown()));
}

problem::Expected<JobStatus> follow_job(const QString& address, int id, const Watch& watch) {
  QElapsedTimer timer;
  timer.start();
  auto line = Line::to(address);
  if (!line) return tl::unexpected(line.error());
  std::optional<JobStatus> last;
  for (int silent = 0;;) {
    auto now = look(*line, id);
    if (!now && ++silent >= kMostSilent) return tl::unexpected(now.error());
    if (now) {
      silent = 0;
      if (last != *now) watch.changed(*now);
      last = *std::move(now);
      if (last->ended()) return *last;
    }
    if (!pause(timer, watch)) {
      if (last) return *last;
      return tl::unexpected(now.error());
    }
  }
}

problem::Expected<std::optional<JobStatus>> find_job(const QString& address, const QString& name) {
  auto line = Line::to(address);
  if (!line) return tl::unexpected(line.error());
  std::optional<int> latest;
  for (const char* which : {"not-completed", "completed"}) {
    const auto found = find_among(*line, which, name.toUtf8());
    if (!found) return tl::unexpected(found.error());
    if (*found && **found > latest.value_or(0)) latest = **found;
  }
  if (!latest) return std::optional<JobStatus>();
  const auto status = look(*line, *latest);
  if (!status) return tl::unexpected(status.error());
  return std::optional(*status);
}

}  // namespace lardiner::printer
