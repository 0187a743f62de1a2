// Which family sets which stretch of a text: the fallback between the shipped faces, decided here alone.
#include "paper/spans.h"

#include <algorithm>

namespace lardiner::paper {

namespace {

// Punctuation and forms that stand in squares as ideographs do, though Unicode's script of them is "Common": the blocks
// CJK Symbols and Punctuation, Halfwidth and Fullwidth Forms.
bool is_square(QChar c) { return (c >= u'\u3000' && c <= u'\u303F') || (c >= u'\uFF00' && c <= u'\uFFEF'); }

// Common stands for "of no script of its own"; Inherited for a space, which ends a word.
constexpr QChar::Script kNoScript = QChar::Script_Common;
constexpr QChar::Script kSpace = QChar::Script_Inherited;

QChar::Script own_script(QChar c) {
  if (is_square(c)) return QChar::Script_Han;
  if (c.isSpace()) return kSpace;
  const QChar::Script script = c.script();
  if (script > QChar::Script_Common) return script;
  return c.isNumber() ? QChar::Script_Latin : kNoScript;
}

bool opens(QChar c) {
  return c.category() == QChar::Punctuation_Open || c.category() == QChar::Punctuation_InitialQuote;
}

// The script of each unit, where signs have taken that of the letters beside them (as Unicode advises, UAX #24, 5.1).
std::vector<QChar::Script> scripts(QStringView text) {
  std::vector<QChar::Script> all;
  for (QChar c : text) all.push_back(own_script(c));
  const auto next_to = [&](std::size_t at, int step) {
    std::size_t other = at;
    while (other < all.size() && all[other] == kNoScript) other += static_cast<std::size_t>(step);  // wraps below 0
    return other < all.size() && all[other] != kSpace ? all[other] : kNoScript;
  };
  const std::vector<QChar::Script> own = all;
  for (std::size_t at = 0; at < all.size(); ++at) {
    if (own[at] != kNoScript) continue;
    const QChar::Script before = next_to(at, -1), behind = next_to(at, 1);
    const bool leans_back = before != kNoScript && !(opens(text[static_cast<qsizetype>(at)]) && behind != kNoScript);
    all[at] = leans_back ? before : behind;
  }
  return all;
}

class Divider {
 public:
  Divider(const Faces& faces, QStringView text) : faces_(faces), text_(text) {}

  std::vector<Span> spans() {
    if (covered(Family::Atkinson, 0, text_.size()) == text_.size()) {
      add(Family::Atkinson, 0, text_.size());
      return std::move(spans_);
    }
    const std::vector<QChar::Script> script = scripts(text_);
    for (qsizetype start = 0, end = 0; start < text_.size(); start = end) {
      for (end = start + 1; end < text_.size() && same(script, start, end);) ++end;
      if (script[static_cast<std::size_t>(start)] == kSpace && !spans_.empty() &&
          covered(spans_.back().family, start, end) == end)
        add(spans_.back().family, start, end);
      else
        divide(start, end);
    }
    return std::move(spans_);
  }

 private:
  static bool same(const std::vector<QChar::Script>& script, qsizetype one, qsizetype other) {
    return script[static_cast<std::size_t>(one)] == script[static_cast<std::size_t>(other)];
  }

  // How far the family has every character from `start` on.
  qsizetype covered(Family family, qsizetype start, qsizetype end) const {
    return start + faces_.covered(family, text_.mid(start, end - start));
  }

  void divide(qsizetype start, qsizetype end) {
    while (start < end) {
      Family best = Family::Atkinson;
      qsizetype reached = start;
      for (Family family : kFamilies) {
        const qsizetype reach = covered(family, start, end);
        if (reach > reached) {
          best = family;
          reached = reach;
        }
        if (reached == end) break;  // the families behind are not even read
      }
      add(best, start, std::max(reached, start + 1));
      start = std::max(reached, start + 1);
    }
  }

  void add(Family family, qsizetype start, qsizetype end) {
    if (start == end) return;
    if (!spans_.empty() && spans_.back().family == family)
      spans_.back().size += end - start;
    else
      spans_.push_back({family, start, end - start});
  }

  const Faces& faces_;
  QStringView text_;
  std::vector<Span> spans_;
};

}  // namespace

std::vector<Span> spans(const Faces& faces, QStringView text) { return Divider(faces, text).spans(); }

}  // namespace lardiner::paper
