// The size and number of the pages of a PDF, as its own text says them.
#include "printer/pdf_page.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace lardiner::printer {

namespace {

using problem::Code;
using problem::Error;

// A point is 1/72 in: ISO 32000-1:2008, 8.3.2.3; an inch is 2540 hundredths of a millimetre.
constexpr double kHundredthsPerPoint = 2540.0 / 72;
constexpr double kLeastSide = 1, kMostSide = 14400;  // points: the limits of ISO 32000-1, Annex C
constexpr int kSameSize = 10;                        // a tenth of a millimetre: what writers round
constexpr qsizetype kTail = 1024;                    // %%EOF stands in the last so many bytes

Error fault(Code code, const QString& file, const QString& what, const QString& hint) {
  return {code, what, {file, 0, 0, {}, 1, 1}, hint};
}

bool is_space(char c) { return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f' || c == '\0'; }

qsizetype past_spaces(const QByteArray& pdf, qsizetype at) {
  while (at < pdf.size() && is_space(pdf[at])) ++at;
  return at;
}

// "[ 0 0 141.5 141.5 ]" from `at` on.
std::optional<Size> box(const QByteArray& pdf, qsizetype at) {
  at = past_spaces(pdf, at);
  if (at >= pdf.size() || pdf[at] != '[') return std::nullopt;
  const qsizetype end = pdf.indexOf(']', at);
  if (end < 0 || end - at > 200) return std::nullopt;
  std::vector<double> corners;
  for (const QByteArray& word : pdf.mid(at + 1, end - at - 1).simplified().split(' ')) {
    bool good = false;
    corners.push_back(word.toDouble(&good));
    if (!good && !word.isEmpty()) return std::nullopt;
    if (word.isEmpty()) corners.pop_back();
  }
  if (corners.size() != 4) return std::nullopt;
  const double width = std::abs(corners[2] - corners[0]), height = std::abs(corners[3] - corners[1]);
  if (!(width >= kLeastSide && width <= kMostSide && height >= kLeastSide && height <= kMostSide)) return std::nullopt;
  return Size{static_cast<int>(std::lround(width * kHundredthsPerPoint)),
              static_cast<int>(std::lround(height * kHundredthsPerPoint))};
}

// Where the name ends, each time that it stands as a whole word.
std::vector<qsizetype> ends_of(const QByteArray& pdf, const QByteArray& name) {
  std::vector<qsizetype> out;
  for (qsizetype at = pdf.indexOf(name); at >= 0; at = pdf.indexOf(name, at + 1)) {
    const qsizetype end = at + name.size();
    if (end < pdf.size() && (is_space(pdf[end]) || pdf[end] == '[' || pdf[end] == '/')) out.push_back(end);
  }
  return out;
}

// The root of the page tree counts all pages: its /Count is the largest.
int page_count(const QByteArray& pdf) {
  int most = 0;
  for (const qsizetype end : ends_of(pdf, "/Count")) {
    const qsizetype at = past_spaces(pdf, end);
    qsizetype last = at;
    while (last < pdf.size() && pdf[last] >= '0' && pdf[last] <= '9') ++last;
    most = std::max(most, pdf.mid(at, last - at).toInt());
  }
  return most;
}

bool differ(Size a, Size b) {
  return std::abs(a.width - b.width) > kSameSize || std::abs(a.height - b.height) > kSameSize;
}

}  // namespace

problem::Expected<PdfPages> pages_of(const QByteArray& pdf, const QString& file) {
  if (!pdf.startsWith("%PDF-"))
    return tl::unexpected(fault(Code::Malformed, file, QStringLiteral("this is no PDF"),
                                QStringLiteral("print a .pdf that lardiner wrote")));
  if (!pdf.right(kTail).contains("%%EOF"))
    return tl::unexpected(fault(Code::Malformed, file, QStringLiteral("this PDF is cut off: its end is missing"),
                                QStringLiteral("make it again")));
  std::optional<Size> first;
  for (const qsizetype end : ends_of(pdf, "/MediaBox")) {
    const auto size = box(pdf, end);
    if (!size) continue;
    if (first && differ(*first, *size))
      return tl::unexpected(
          fault(Code::Conflict, file,
                QStringLiteral("its pages are not all of one size: %1 and %2").arg(text(*first), text(*size)),
                QStringLiteral("print a PDF for each medium")));
    if (!first) first = size;
  }
  if (!first)
    return tl::unexpected(fault(Code::Malformed, file, QStringLiteral("the size of its pages cannot be read"),
                                QStringLiteral("print a .pdf that lardiner wrote")));
  return PdfPages{*first, page_count(pdf)};
}

}  // namespace lardiner::printer
