// Reports to standard output, problems to standard error.
#pragma once

#include <QJsonArray>
#include <QJsonObject>
#include <QString>

#include "command/exit_status.h"
#include "problem/error.h"

namespace lardiner::command {

/// Writes UTF-8 whole; false when standard output is closed or full.
bool print(const QString& text);
bool print(const QJsonObject& json);

/// The errors in their order of place, each once.
void print_problems(problem::Errors errors);

/// `status`, unless the report could not be written: then the machine failed, and that is said.
ExitStatus reported(bool printed, ExitStatus status);

/// Prints the problems (and, with `json`, an object that holds them) of a command that did nothing.
ExitStatus refuse(const problem::Errors& errors, bool as_json);

/// The same of options that do not go together.
ExitStatus wrong_usage(const problem::Error& error, bool as_json);

/// {"file", "line", "column", "what", "hint"} of each.
QJsonArray json(const problem::Errors& errors);

}  // namespace lardiner::command
