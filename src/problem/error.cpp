// What can be wrong with what a person wrote, where, and how to mend it.
#include "problem/error.h"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace lardiner::problem {

namespace {

// A caret under each faulty code point; tabs are kept so that the caret stands under its letter in any terminal.
QString caret_line(const Place& place) {
  QString line;
  const QList<uint> letters = place.source_line.toUcs4();
  for (int i = 0; i + place.shown_from < place.column; ++i) line += (i < letters.size() && letters[i] == '\t') ? u'\t' : u' ';
  return line + QString(std::max(1, place.width), u'^');
}

QString position(const Place& place) {
  QString prefix = place.file;
  if (place.line > 0) prefix += u':' + QString::number(place.line);
  if (place.line > 0 && place.column > 0) prefix += u':' + QString::number(place.column);
  return prefix.isEmpty() ? prefix : prefix + QStringLiteral(": ");
}

int edit_distance(const QString& a, const QString& b) {
  std::vector<int> row(static_cast<size_t>(b.size()) + 1);
  std::iota(row.begin(), row.end(), 0);
  for (qsizetype i = 0; i < a.size(); ++i) {
    int diagonal = row[0];
    row[0] = static_cast<int>(i) + 1;
    for (qsizetype j = 0; j < b.size(); ++j) {
      const size_t at = static_cast<size_t>(j) + 1;
      const int changed = diagonal + (a[i] == b[j] ? 0 : 1);
      diagonal = row[at];
      row[at] = std::min({changed, row[at] + 1, row[at - 1] + 1});
    }
  }
  return row.back();
}

}  // namespace

QString text(const Error& error) {
  QString out = position(error.place) + error.what;
  if (!error.place.source_line.isEmpty()) {
    out += QStringLiteral("\n  ") + error.place.source_line;
    if (error.place.column > 0) out += QStringLiteral("\n  ") + caret_line(error.place);
  }
  if (!error.hint.isEmpty()) out += QStringLiteral("\n  ") + error.hint;
  return out;
}

QString text(const Errors& errors) {
  QString out;
  for (const Error& error : errors) out += text(error) + u'\n';
  return out;
}

void sort(Errors& errors) {
  const auto key = [](const Error& e) { return std::tie(e.place.file, e.place.line, e.place.column, e.what, e.hint); };
  std::stable_sort(errors.begin(), errors.end(), [&](const Error& a, const Error& b) { return key(a) < key(b); });
  errors.erase(std::unique(errors.begin(), errors.end()), errors.end());
}

QString nearest(const QString& word, const QStringList& known) {
  QString best;
  int best_distance = std::max(1, static_cast<int>(word.size()) / 3) + 1;
  for (const QString& candidate : known) {
    const int distance = edit_distance(word, candidate);
    if (distance < best_distance) {
      best = candidate;
      best_distance = distance;
    }
  }
  return best;
}

}  // namespace lardiner::problem
