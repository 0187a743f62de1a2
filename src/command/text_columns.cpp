// Text in columns of fixed-width letters, where an ideograph is as wide as two.
#include "command/text_columns.h"

#include <algorithm>
#include <array>

namespace lardiner::command {

namespace {

struct Block {
  char32_t first, last;
};

// From memory of Unicode's EastAsianWidth.txt, whole blocks: Hangul, CJK and its forms, full-width forms.
constexpr std::array<Block, 9> kWide{{{0x1100, 0x115F},
                                      {0x2E80, 0x303E},
                                      {0x3041, 0xA4CF},
                                      {0xAC00, 0xD7A3},
                                      {0xF900, 0xFAFF},
                                      {0xFE30, 0xFE4F},
                                      {0xFF00, 0xFF60},
                                      {0xFFE0, 0xFFE6},
                                      {0x20000, 0x3FFFD}}};

int columns_of_letter(char32_t letter) {
  switch (QChar::category(letter)) {
    case QChar::Mark_NonSpacing:
    case QChar::Mark_Enclosing:
    case QChar::Other_Format:
      return 0;
    default:
      break;
  }
  const bool wide = std::any_of(kWide.begin(), kWide.end(),
                                [letter](Block block) { return letter >= block.first && letter <= block.last; });
  return wide ? 2 : 1;
}

// As much of `word` as `width` holds, at least one letter; the rest stays in `word`.
QString cut_off(QString& word, int width) {
  qsizetype end = 0;
  int used = 0;
  while (end < word.size()) {
    const qsizetype letters = word[end].isHighSurrogate() && end + 1 < word.size() ? 2 : 1;
    const int here = columns_of(word.mid(end, letters));
    if (end > 0 && used + here > width) break;
    used += here;
    end += letters;
  }
  const QString head = word.left(end);
  word.remove(0, end);
  return head;
}

}  // namespace

int columns_of(const QString& text) {
  int columns = 0;
  for (const char32_t letter : text.toUcs4()) columns += columns_of_letter(letter);
  return columns;
}

QString padded(const QString& text, int width, bool to_the_right) {
  const QString blanks(std::max(0, width - columns_of(text)), u' ');
  return to_the_right ? blanks + text : text + blanks;
}

QStringList broken(const QString& text, int width) {
  QStringList lines;
  QString line;
  for (QString word : text.split(u' ', Qt::SkipEmptyParts)) {
    if (!line.isEmpty() && columns_of(line) + 1 + columns_of(word) <= width) {
      line += u' ' + word;
      continue;
    }
    if (!line.isEmpty()) lines << line;
    while (columns_of(word) > width) lines << cut_off(word, width);
    line = word;
  }
  if (!line.isEmpty() || lines.isEmpty()) lines << line;
  return lines;
}

}  // namespace lardiner::command
