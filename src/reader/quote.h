// What a person wrote, as it is repeated in an error.
#pragma once

#include <QString>

namespace lardiner::reader {

/// `text` in double quotes, cut with … after 60 letters, control characters replaced by U+FFFD: "31/02".
QString quoted(QStringView text);

/// `letters` with every control character except a tab, and every code that turns the direction of writing, replaced by
/// U+FFFD, so that a file cannot command the terminal that shows an error. As many code points as before.
QString printable(QStringView letters);

}  // namespace lardiner::reader
