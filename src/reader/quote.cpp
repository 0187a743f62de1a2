// What a person wrote, as it is repeated in an error.
#include "reader/quote.h"

#include <QChar>
#include <algorithm>

namespace lardiner::reader {

namespace {

constexpr qsizetype kMostQuoted = 60;

bool commands_terminal(char32_t letter) {
  const bool turns_direction = (letter >= 0x202A && letter <= 0x202E) || (letter >= 0x2066 && letter <= 0x2069);
  return turns_direction || (letter != U'\t' && QChar::category(letter) == QChar::Other_Control);
}

}  // namespace

QString printable(QStringView letters) {
  QString out = letters.toString();
  for (QChar& letter : out)
    if (commands_terminal(letter.unicode())) letter = QChar(QChar::ReplacementCharacter);
  return out;
}

QString quoted(QStringView text) {
  qsizetype end = std::min(text.size(), kMostQuoted);
  if (end < text.size() && end > 0 && text[end - 1].isHighSurrogate()) --end;
  return u'"' + printable(text.first(end)) + (end < text.size() ? QStringLiteral("…\"") : QStringLiteral("\""));
}

}  // namespace lardiner::reader
