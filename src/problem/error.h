// What can be wrong with what a person wrote, where, and how to mend it.
#pragma once

#include <QString>
#include <QStringList>
#include <tl/expected.hpp>
#include <vector>

namespace lardiner::problem {

/// The kind of fault; its exit status is the command line's, see `exit_status`.
enum class Code {
  Syntax,     ///< the file cannot be read as TOML, CSV or JSON
  Unknown,    ///< a key, id or word that is not known here
  Missing,    ///< something that the label or sheet needs is not stated
  Duplicate,  ///< said twice
  Malformed,  ///< a value that cannot be read (a date, a quantity, a lot)
  Range,      ///< a value that cannot be true (negative, absurd, in the future)
  Conflict,   ///< two statements that cannot both hold
  Unsafe,     ///< below a limit of the rule set or the kitchen
  NoRoom,     ///< text that does not fit its medium
  NoGlyph,    ///< a character or script that the shipped faces cannot print
  Machine     ///< disk, database or printer failed
};

/// Where the fault stands. Empty parts are left out when shown.
struct Place {
  QString file;         ///< as the user named it; "-" for standard input
  int line = 0;         ///< from 1; 0 when there is none
  int column = 0;       ///< in code points, from 1; 0 when there is none
  QString source_line;  ///< the line itself, for the caret; may be empty
  int width = 1;        ///< code points under which the caret line is drawn
  int shown_from = 1;   ///< the column at which source_line begins, when a long line is shown in part

  friend bool operator==(const Place&, const Place&) = default;
};

struct Error {
  Code code = Code::Malformed;
  QString what;  ///< what is wrong, as a clause without a full stop
  Place place;
  QString hint;  ///< what to do, as a clause without a full stop; may be empty

  friend bool operator==(const Error&, const Error&) = default;
};

using Errors = std::vector<Error>;

/// One value or one fault.
template <class T>
using Expected = tl::expected<T, Error>;

/// One value or all that is wrong with it (never an empty list).
template <class T>
using ExpectedAll = tl::expected<T, Errors>;

/// `file:line:column: what`, then the source line with a caret and the hint, each on a line of its own, indented by
/// two; ends without a newline.
QString text(const Error& error);

/// The texts of all errors, one after the other, each ended by a newline.
QString text(const Errors& errors);

/// Orders by file, line, column, then text, and drops repeats, so that a report does not depend on the order of work.
void sort(Errors& errors);

/// The entry of `known` nearest to `word` (at most a third of its letters changed), or an empty string.
QString nearest(const QString& word, const QStringList& known);

}  // namespace lardiner::problem
