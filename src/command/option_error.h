// What is wrong with the value of an option: its text begins with the option's name, and it stands in no file.
#pragma once

#include "problem/error.h"

namespace lardiner::command {

/// `error` as one of the value of the option `name` ("--give"). A word that the program does not know, as a unit, is
/// Malformed: Unknown and Missing are for what the book does not have.
problem::Error of_option(const QString& name, problem::Error error);

/// The same of the errors among `errors` that name no place in the book; with no `name` they stay as they are. Their
/// codes stay.
problem::Errors named_for(const QString& name, problem::Errors errors);

/// Whether the value of an option is at fault, not what the book has to say to it.
bool is_of_option(const problem::Error& error);

}  // namespace lardiner::command
