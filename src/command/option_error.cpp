// What is wrong with the value of an option: its text begins with the option's name, and it stands in no file.
#include "command/option_error.h"

namespace lardiner::command {

using problem::Code;
using problem::Error;
using problem::Errors;

Error of_option(const QString& name, Error error) {
  error.what.prepend(name + QStringLiteral(": "));
  if (error.code == Code::Unknown) error.code = Code::Malformed;
  return error;
}

Errors named_for(const QString& name, Errors errors) {
  for (Error& error : errors)
    if (!name.isEmpty() && error.place.file.isEmpty()) error.what.prepend(name + QStringLiteral(": "));
  return errors;
}

bool is_of_option(const Error& error) {
  return error.place.file.isEmpty() && error.what.startsWith(QLatin1String("--")) && error.code != Code::Unknown &&
         error.code != Code::Missing;
}

}  // namespace lardiner::command
