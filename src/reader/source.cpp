// The bytes of one file, and where in it an offset stands for a person.
#include "reader/source.h"

#include <algorithm>

#include "reader/quote.h"

namespace lardiner::reader {

namespace {

constexpr qsizetype kMostShown = 160;   // code points of a line that an error repeats
constexpr qsizetype kShownBefore = 80;  // of these at most so many before the column

bool continues(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U; }

// Length of the well-formed sequence at `at`, or 0. Source: The Unicode Standard, table 3-7.
qsizetype sequence_length(QByteArrayView bytes, qsizetype at) {
  const auto byte = [&](qsizetype i) -> unsigned {
    return i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0U;
  };
  const auto within = [&](qsizetype i, unsigned least, unsigned most) { return byte(i) >= least && byte(i) <= most; };
  const auto tail = [&](qsizetype i) { return within(i, 0x80, 0xBF); };
  const unsigned lead = byte(at);
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return tail(at + 1) ? 2 : 0;
  if (lead >= 0xE0 && lead <= 0xEF) {
    const bool second = within(at + 1, lead == 0xE0 ? 0xA0 : 0x80, lead == 0xED ? 0x9F : 0xBF);
    return second && tail(at + 2) ? 3 : 0;
  }
  if (lead < 0xF0 || lead > 0xF4) return 0;
  const bool second = within(at + 1, lead == 0xF0 ? 0x90 : 0x80, lead == 0xF4 ? 0x8F : 0xBF);
  return second && tail(at + 2) && tail(at + 3) ? 4 : 0;
}

bool begins_with_utf16_mark(QByteArrayView bytes) {
  return bytes.startsWith(QByteArrayView("\xFF\xFE", 2)) || bytes.startsWith(QByteArrayView("\xFE\xFF", 2));
}

}  // namespace

qsizetype first_malformed(QByteArrayView bytes) {
  for (qsizetype at = 0; at < bytes.size();) {
    const qsizetype length = sequence_length(bytes, at);
    if (length == 0) return at;
    at += length;
  }
  return -1;
}

Source::Source(const QByteArray& bytes, QString file) : bytes_(bytes), file_(std::move(file)) {
  if (bytes_.startsWith("\xEF\xBB\xBF")) begin_ = 3;
  line_starts_.push_back(static_cast<quint32>(begin_));
  if (bytes_.size() > std::numeric_limits<qint32>::max()) return;  // `unreadable` refuses it
  for (qsizetype at = bytes_.indexOf('\n'); at >= 0; at = bytes_.indexOf('\n', at + 1))
    line_starts_.push_back(static_cast<quint32>(at + 1));
  cursor_.offset = begin_;
}

std::optional<problem::Error> Source::unreadable(qsizetype most) {
  using problem::Code;
  if (bytes_.size() > most)
    return problem::Error{
        Code::Range,
        QStringLiteral("the file has %1 bytes, more than the %2 that are read").arg(bytes_.size()).arg(most),
        file_place(), QStringLiteral("split it into several files")};
  if (begins_with_utf16_mark(bytes_))
    return problem::Error{Code::Syntax, QStringLiteral("the file is in UTF-16"), file_place(),
                          QStringLiteral("save it as UTF-8")};
  const qsizetype malformed = first_malformed(bytes_);
  if (malformed >= 0)
    return problem::Error{Code::Syntax, QStringLiteral("this byte is not UTF-8 text"), place_of_malformed(malformed),
                          QStringLiteral("save the file as UTF-8")};
  const qsizetype nul = bytes_.indexOf('\0');
  if (nul >= 0)
    return problem::Error{Code::Syntax, QStringLiteral("a NUL byte stands in the text"), place(nul, nul + 1),
                          QStringLiteral("remove it, or save the file as plain UTF-8 text")};
  return std::nullopt;
}

// The line is shown as far as it can be read, with U+FFFD for the byte at fault.
problem::Place Source::place_of_malformed(qsizetype at) const {
  const QByteArray readable = bytes_.first(at) + QByteArray("\xEF\xBF\xBD");
  return Source(readable, file_).place(at, readable.size());
}

void Source::move_to_line(qsizetype line) {
  cursor_ = Cursor{line, static_cast<qsizetype>(line_starts_[static_cast<size_t>(line)]), 1};
}

void Source::move_to(qsizetype offset) {
  const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), static_cast<quint32>(offset));
  const qsizetype line = std::max<qsizetype>(0, after - line_starts_.begin() - 1);
  if (line != cursor_.line || offset < cursor_.offset) move_to_line(line);
  for (; cursor_.offset < offset; ++cursor_.offset)
    if (cursor_.offset + 1 >= bytes_.size() || !continues(bytes_[cursor_.offset + 1])) ++cursor_.column;
}

qsizetype Source::line_end(qsizetype offset) const {
  const qsizetype newline = bytes_.indexOf('\n', offset);
  const qsizetype end = newline < 0 ? bytes_.size() : newline;
  return newline >= 0 && end > offset && bytes_[end - 1] == '\r' ? end - 1 : end;
}

problem::Place Source::place(qsizetype begin, qsizetype end) {
  const bool at_newline = begin < bytes_.size() && bytes_[begin] == '\n';
  if (at_newline && begin > 0 && bytes_[begin - 1] == '\r') --begin;  // both are the end of the line
  move_to(begin);
  problem::Place place{file_, static_cast<int>(cursor_.line + 1), static_cast<int>(cursor_.column), {}, 0, 1};
  const auto ends_line = [&](qsizetype at) {
    return bytes_[at] == '\n' || (bytes_[at] == '\r' && at + 1 < bytes_.size() && bytes_[at + 1] == '\n');
  };
  for (qsizetype at = begin; at < std::min(end, bytes_.size()) && !ends_line(at) && place.width < kMostShown; ++at)
    if (!continues(bytes_[at])) ++place.width;
  place.width = std::max(1, place.width);
  show_line(place);
  return place;
}

problem::Place Source::line_place(qsizetype offset) {
  move_to(offset);
  problem::Place place{file_, static_cast<int>(cursor_.line + 1), 0, {}, 1, 1};
  show_line(place);
  return place;
}

qsizetype Source::offset(qsizetype line, qsizetype column) {
  line = std::clamp<qsizetype>(line - 1, 0, static_cast<qsizetype>(line_starts_.size()) - 1);
  if (line != cursor_.line || column < cursor_.column) move_to_line(line);
  while (cursor_.column < column && cursor_.offset < bytes_.size() && bytes_[cursor_.offset] != '\n') {
    ++cursor_.offset;
    if (cursor_.offset >= bytes_.size() || !continues(bytes_[cursor_.offset])) ++cursor_.column;
  }
  return cursor_.offset;
}

qsizetype Source::after(qsizetype begin, qsizetype letters) const {
  qsizetype at = begin;
  for (; letters > 0 && at < bytes_.size(); --letters) {
    ++at;
    while (at < bytes_.size() && continues(bytes_[at])) ++at;
  }
  return at;
}

void Source::show_line(problem::Place& place) {
  if (cursor_.line == short_line_) {
    place.source_line = short_text_;
    return;
  }
  const qsizetype start = line_starts_[static_cast<size_t>(cursor_.line)];
  qsizetype letters = 0;
  qsizetype at = start;
  for (; at < bytes_.size() && bytes_[at] != '\n' && letters <= kMostShown; ++at)
    if (!continues(bytes_[at])) ++letters;
  if (letters <= kMostShown) {
    if (at > start && at < bytes_.size() && bytes_[at - 1] == '\r') --at;
    short_text_ = printable(QString::fromUtf8(bytes_.constData() + start, at - start));
    short_line_ = cursor_.line;
    place.source_line = short_text_;
    return;
  }
  place.shown_from = static_cast<int>(std::max<qsizetype>(1, place.column - kShownBefore));
  place.source_line = window(place.shown_from, place.column);
  place.width = std::min(place.width, place.shown_from + static_cast<int>(kMostShown) - std::max(1, place.column));
}

// kMostShown code points from the column `from`, walking back from the cursor, which stands at `column`.
QString Source::window(qsizetype from, qsizetype column) {
  qsizetype begin =
      from == 1 ? static_cast<qsizetype>(line_starts_[static_cast<size_t>(cursor_.line)]) : cursor_.offset;
  for (qsizetype left = from == 1 ? 0 : column - from; left > 0; --left) do
      --begin;
    while (continues(bytes_[begin]));
  qsizetype end = begin;
  for (qsizetype letters = 0; end < bytes_.size() && bytes_[end] != '\n'; ++end)
    if (!continues(bytes_[end]) && ++letters > kMostShown) break;
  QList<uint> shown = QString::fromUtf8(bytes_.constData() + begin, end - begin).toUcs4();
  const bool goes_on = end < bytes_.size() && bytes_[end] != '\n';
  if (from > 1) shown.first() = U'…';
  if (goes_on) shown.last() = U'…';
  return printable(QString::fromUcs4(reinterpret_cast<const char32_t*>(shown.constData()), shown.size()));
}

}  // namespace lardiner::reader
