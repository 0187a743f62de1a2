// A body without the fixed facts of its batch, so that lists need not read them.
#include "history/without_facts.h"

#include <QByteArrayView>
#include <cstring>

namespace lardiner::history {

namespace {

constexpr QByteArrayView kKey("\"facts\":{");

// Past the string that begins at `at`.
qsizetype past_string(const QByteArray& json, qsizetype at) {
  const char* const begin = json.constData();
  for (qsizetype i = at + 1; i < json.size(); ++i) {
    if (begin[i] == '\\')
      ++i;
    else if (begin[i] == '"')
      return i + 1;
  }
  return json.size();
}

// Past the object or list that begins at `at`.
qsizetype past_value(const QByteArray& json, qsizetype at) {
  int depth = 0;
  for (qsizetype i = at; i < json.size();) {
    const char letter = json.at(i);
    if (letter == '"') {
      i = past_string(json, i);
      continue;
    }
    ++i;
    if (letter == '{' || letter == '[') ++depth;
    if ((letter == '}' || letter == ']') && --depth == 0) return i;
  }
  return json.size();
}

}  // namespace

std::optional<QByteArray> without_facts(const QByteArray& body) {
  for (qsizetype i = 1; i < body.size();) {
    const char letter = body.at(i);
    if (letter == '"' && QByteArrayView(body).sliced(i).startsWith(kKey)) {
      const qsizetype past = past_value(body, i + kKey.size() - 1);
      if (past >= body.size() || body.at(past) != ',') return std::nullopt;
      return body.left(i) + body.mid(past + 1);
    }
    if (letter == '"')
      i = past_string(body, i);
    else if (letter == '{' || letter == '[')
      i = past_value(body, i);
    else
      ++i;
  }
  return std::nullopt;
}

}  // namespace lardiner::history
