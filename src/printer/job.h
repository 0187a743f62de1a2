// A PDF as a job of a printer: sent as it is, followed to its end, found again by its name.
#pragma once

#include <QByteArray>
#include <QString>
#include <functional>
#include <optional>

#include "printer/job_request.h"
#include "printer/job_status.h"
#include "problem/error.h"

namespace lardiner::printer {

/// Sends the bytes unchanged (RFC 8011, Print-Job); the job's number. ipp-attribute-fidelity makes the printer refuse
/// what it cannot do as told; it is asked beforehand (Validate-Job), so that a refusal does not leave a part with it.
/// Errors (Machine): unreachable, asks for a sign-in, refused. Where the printer has all and gave no answer, the error
/// says that it is not known whether it took the job: look for it by its name before it is sent again.
problem::Expected<int> send_job(const Printer& printer, const JobTerms& terms, const QByteArray& pdf);

/// Whether the printer would take such a job (Validate-Job): nothing where it would, or does not know the question.
/// Errors (Machine): unreachable, asks for a sign-in, refused.
std::optional<problem::Error> validate_job(const Printer& printer, const JobTerms& terms);

/// Nothing more of it comes out: it is cancelled, or it had ended (RFC 8011, Cancel-Job). Errors (Machine): the printer
/// does not answer, or goes on with it.
std::optional<problem::Error> cancel_job(const QString& address, int id);

/// How a job is watched.
struct Watch {
  int seconds = 0;                                ///< at most so long
  std::function<void(const JobStatus&)> changed;  ///< at first, and when something is otherwise than before
  std::function<bool()> go_on;                    ///< asked several times a second; false: stop watching
};

/// Watches until the job ended, the time is over or `go_on` says no: how it stands then. A job that stopped is watched
/// on: it may go on when somebody puts in labels. A printer that is silent for a while is asked again; errors
/// (Machine) when it stays so.
problem::Expected<JobStatus> follow_job(const QString& address, int id, const Watch& watch);

/// The latest job of that name at the printer, ended or not, of any user; nothing where there is none that the printer
/// still knows. Errors: Machine.
problem::Expected<std::optional<JobStatus>> find_job(const QString& address, const QString& name);

}  // namespace lardiner::printer
