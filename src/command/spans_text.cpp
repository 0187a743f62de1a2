// Start windows as plain text: a bar of letters for each.
#include "command/spans_text.h"

#include <algorithm>

#include "command/text_columns.h"

namespace lardiner::command {

namespace {

constexpr int kAxis = 60;  // letters
constexpr int kWidestLine = 100;
constexpr int kWidestName = 40;

// Where a time stands on the axis, from 0.
int letter_at(const facts::Spans& spans, int at) {
  const qint64 length = std::max(1, spans.length);
  return static_cast<int>(std::clamp<qint64>(at * qint64{kAxis - 1} / length, 0, kAxis - 1));
}

QString bar(const facts::Spans& spans, const facts::Spans::Span& span) {
  QString letters(kAxis, u' ');
  const int from = letter_at(spans, span.from), to = letter_at(spans, span.to), end = letter_at(spans, span.end);
  for (int i = to; i <= end; ++i) letters[i] = u'-';
  for (int i = from; i <= to; ++i) letters[i] = u'=';
  if (span.open) letters[from] = u'<';
  letters[letter_at(spans, span.start)] = u'*';
  return letters;
}

// Marks in as few lines as hold them side by side, each beginning at its time.
QStringList mark_lines(const facts::Spans& spans) {
  QStringList lines;
  for (const facts::Spans::Mark& mark : spans.marks) {
    const int at = letter_at(spans, mark.at);
    const QString text = u'|' + mark.text;
    const auto free = std::find_if(lines.begin(), lines.end(),
                                   [at](const QString& line) { return columns_of(line) < at || line.isEmpty(); });
    if (free == lines.end())
      lines << QString(at, u' ') + text;
    else
      *free = padded(*free, at) + text;
  }
  return lines;
}

}  // namespace

QString bar_key() {
  return QStringLiteral("= it can start   * it does   - until it is ready   < it could have started before");
}

QString text(const facts::Spans& spans) {
  int width = 0;
  for (const facts::Spans::Span& span : spans.spans) width = std::max(width, columns_of(span.text));
  width = std::min(width, kWidestName);
  QString out = spans.caption.isEmpty() ? QString() : spans.caption + u'\n';
  for (const QString& line : mark_lines(spans)) out += QString(width + 2, u' ') + line + u'\n';
  for (const facts::Spans::Span& span : spans.spans) {
    const QStringList names = broken(span.text, width);
    QString line = padded(names.front(), width) + QStringLiteral("  ") + bar(spans, span);
    while (line.endsWith(u' ')) line.chop(1);
    out += line + u'\n';
    for (qsizetype i = 1; i < names.size(); ++i) out += names[i] + u'\n';
  }
  if (!spans.spans.empty()) out += bar_key() + u'\n';
  for (const QString& note : spans.notes) out += broken(note, kWidestLine).join(u'\n') + u'\n';
  return out;
}

}  // namespace lardiner::command
