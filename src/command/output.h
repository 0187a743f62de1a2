// Reports to standard output, problems to standard error.
#pragma once

#include <QJsonArray>
#include <QJsonObject>
#include <QString>

#include "problem/error.h"

namespace lardiner::command {

/// Writes UTF-8 whole; false when standard output is closed or full.
bool print(const QString& text);
bool print(const QJsonObject& json);

/// The errors in their order of place, each once.
void print_problems(problem::Errors errors);

/// {"file", "line", "column", "what", "hint"} of each.
QJsonArray json(const problem::Errors& errors);

}  // namespace lardiner::command
