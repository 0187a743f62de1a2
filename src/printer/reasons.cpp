// What keeps a printer or a job, in plain words.
#include "printer/reasons.h"

#include <algorithm>
#include <array>

namespace lardiner::printer {

namespace {

struct Reason {
  const char* keyword;
  const char* words;  ///< empty: nothing to tell
};

constexpr std::array kReasons{
    // RFC 8011, 5.4.12: of the printer
    Reason{"none", ""},
    Reason{"connecting-to-device", "it is being connected"},
    Reason{"cover-open", "the cover is open"},
    Reason{"door-open", "a door is open"},
    Reason{"interlock-open", "a lock is open"},
    Reason{"input-tray-missing", "the tray is missing"},
    Reason{"marker-supply-empty", "out of ribbon or ink"},
    Reason{"marker-supply-low", "ribbon or ink is low"},
    Reason{"media-empty", "out of labels"},
    Reason{"media-jam", "labels are jammed"},
    Reason{"media-low", "few labels are left"},
    Reason{"media-needed", "it asks for other labels"},
    Reason{"moving-to-paused", "it is being paused"},
    Reason{"other", "something is wrong that it does not name"},
    Reason{"output-area-full", "the output is full"},
    Reason{"output-tray-missing", "the output tray is missing"},
    Reason{"paused", "paused"},
    Reason{"shutdown", "switched off"},
    Reason{"spool-area-full", "its memory is full"},
    Reason{"stopped-partly", "a part of it is stopped"},
    Reason{"stopping", "it is stopping"},
    Reason{"timed-out", "it does not answer"},
    Reason{"toner-empty", "out of toner"},
    Reason{"toner-low", "toner is low"},
    // CUPS and PWG 5100.9
    Reason{"offline", "offline"},
    Reason{"cutter-jam", "the cutter is jammed"},
    Reason{"printer-head-overheated", "the print head is too hot"},
    Reason{"hold-new-jobs", "new jobs are held"},
    // What CUPS says of the printer behind it
    Reason{"cups-waiting-for-job-completed", ""},
    Reason{"cups-remote-pending", ""},
    Reason{"cups-remote-processing", ""},
    Reason{"cups-remote-completed", ""},
    Reason{"cups-remote-stopped", "the printer is stopped"},
    Reason{"cups-remote-canceled", "canceled at the printer"},
    Reason{"cups-remote-aborted", "the printer gave it up"},
    // RFC 8011, 5.3.8: of the job
    Reason{"job-incoming", ""},
    Reason{"job-outgoing", ""},
    Reason{"job-queued", ""},
    Reason{"job-printing", ""},
    Reason{"job-spooling", ""},
    Reason{"job-transforming", ""},
    Reason{"job-interpreting", ""},
    Reason{"job-fetchable", ""},
    Reason{"job-restartable", ""},
    Reason{"job-data-insufficient", ""},
    Reason{"job-completed-successfully", ""},
    Reason{"job-completed-with-warnings", "printed with warnings"},
    Reason{"job-completed-with-errors", "printed with errors"},
    Reason{"job-canceled-by-user", "canceled by who sent it"},
    Reason{"job-canceled-by-operator", "canceled by an operator"},
    Reason{"job-canceled-at-device", "canceled at the printer"},
    Reason{"aborted-by-system", "the printer gave it up"},
    Reason{"document-format-error", "the printer cannot read the PDF"},
    Reason{"unsupported-document-format", "the printer does not take PDF"},
    Reason{"document-access-error", "the printer lost the PDF"},
    Reason{"job-hold-until-specified", "held until it is released"},
    Reason{"printer-stopped", "the printer is stopped"},
    Reason{"printer-stopped-partly", "a part of the printer is stopped"},
    Reason{"processing-to-stop-point", "it is being stopped"},
    Reason{"resources-are-not-ready", "what it needs is not there"},
    Reason{"service-off-line", "the printer is offline"},
    Reason{"queued-in-device", "it waits in the printer"},
    Reason{"account-authorization-failed", "the printer asks for a sign-in"},
};

// RFC 8011, 5.4.12: a keyword may end in how bad it is.
QString without_severity(QString keyword) {
  for (const char* severity : {"-error", "-warning", "-report"}) {
    const QLatin1String end(severity);
    if (keyword.endsWith(end)) return keyword.chopped(end.size());
  }
  return keyword;
}

const Reason* known(const QString& keyword) {
  const auto* found = std::find_if(kReasons.begin(), kReasons.end(),
                                   [&](const Reason& one) { return keyword == QLatin1String(one.keyword); });
  return found == kReasons.end() ? nullptr : found;
}

// Keywords that end so by themselves ("document-format-error") are found whole.
QString words_of(const QString& keyword) {
  const Reason* reason = known(keyword);
  if (reason == nullptr) reason = known(without_severity(keyword));
  return reason == nullptr ? keyword : QString::fromLatin1(reason->words);
}

}  // namespace

QStringList in_words(const QStringList& reasons) {
  QStringList out;
  for (const QString& keyword : reasons)
    if (const QString words = words_of(keyword); !words.isEmpty() && !out.contains(words)) out << words;
  return out;
}

bool stops_printing(const QString& reason) {
  static constexpr std::array kStops{"media-empty",         "media-needed", "media-jam",        "cover-open",
                                     "door-open",           "paused",       "interlock-open",   "input-tray-missing",
                                     "marker-supply-empty", "shutdown",     "output-area-full", "output-tray-missing",
                                     "toner-empty",         "offline",      "cutter-jam"};
  const QString keyword = without_severity(reason);
  return std::any_of(kStops.begin(), kStops.end(), [&](const char* one) { return keyword == QLatin1String(one); });
}

}  // namespace lardiner::printer
