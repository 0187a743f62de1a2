// GS1 elements (application identifier and value): written for people in brackets and for machines with FNC1.
#include "gs1/element.h"

#include <algorithm>

#include "gs1/identifier.h"

namespace lardiner::gs1 {

namespace {

using problem::Code;
using problem::Error;
using problem::Expected;

// What scanners send for FNC1 within the data (GS1 General Specifications 7.8.6).
constexpr QChar kGroupSeparator = u'\x1d';
constexpr int kLongestAi = 4;

tl::unexpected<Error> refuse(Code code, QString what, QString hint) {
  return tl::make_unexpected(Error{code, std::move(what), {}, std::move(hint)});
}

// The identifier that the text begins with; identifiers have two to four digits and none begins another.
const Identifier* leading_identifier(QStringView text) {
  for (qsizetype digits = 2; digits <= std::min<qsizetype>(kLongestAi, text.size()); ++digits)
    if (const Identifier* found = identifier(text.first(digits))) return found;
  return nullptr;
}

bool is_separator(QChar letter) { return letter == kFnc1 || letter == kGroupSeparator; }

// The end of a value: its fixed length, or the next separator.
qsizetype value_length(QStringView rest, const Identifier& entry) {
  if (entry.fixed_length) return std::min<qsizetype>(entry.longest(), rest.size());
  return std::find_if(rest.begin(), rest.end(), is_separator) - rest.begin();
}

// The value up to the next bracket that is not escaped; `at` moves there.
QString unescaped(const QString& text, qsizetype& at) {
  QString value;
  for (; at < text.size() && text[at] != u'('; ++at) {
    if (text[at] == u'\\' && at + 1 < text.size() && text[at + 1] == u'(') ++at;
    value += text[at];
  }
  return value;
}

}  // namespace

QString bracketed(const Elements& elements) {
  QString text;
  for (const Element& element : elements)
    text += u'(' + element.ai + u')' + QString(element.value).replace(u'(', QLatin1String("\\("));
  return text;
}

Expected<Elements> read_bracketed(const QString& text) {
  const auto hint = QStringLiteral("write each identifier in brackets before its value, as (01)09520123456788(10)ABC1");
  Elements elements;
  for (qsizetype at = 0; at < text.size();) {
    const qsizetype end = text.indexOf(u')', at);
    if (text[at] != u'(' || end < 0)
      return refuse(Code::Malformed, QStringLiteral("\"%1\" is no list of elements").arg(text), hint);
    Element element{text.mid(at + 1, end - at - 1), {}};
    at = end + 1;
    element.value = unescaped(text, at);
    if (const auto fault = value_fault(element)) return tl::make_unexpected(*fault);
    elements.push_back(std::move(element));
  }
  if (elements.empty()) return refuse(Code::Missing, QStringLiteral("there is no element"), hint);
  return elements;
}

Expected<QString> fnc1_string(const Elements& elements) {
  QString text;
  bool separate = true;  // the first FNC1 says that elements follow
  for (const Element& element : elements) {
    if (const auto fault = value_fault(element)) return tl::make_unexpected(*fault);
    if (separate) text += kFnc1;
    text += element.ai + element.value;
    separate = !identifier(element.ai)->fixed_length;
  }
  return text;
}

Expected<Elements> read_fnc1_string(const QString& text) {
  QStringView rest(text);
  Elements elements;
  if (!rest.isEmpty() && is_separator(rest.front())) rest = rest.mid(1);
  while (!rest.isEmpty()) {
    const Identifier* entry = leading_identifier(rest);
    if (entry == nullptr)
      return refuse(Code::Unknown, QStringLiteral("\"%1\" begins with no application identifier").arg(rest),
                    QStringLiteral("the code is damaged or not of GS1's making"));
    const qsizetype digits = entry->first.size();
    const qsizetype length = value_length(rest.mid(digits), *entry);
    Element element{rest.first(digits).toString(), rest.mid(digits, length).toString()};
    if (const auto fault = value_fault(element)) return tl::make_unexpected(*fault);
    elements.push_back(std::move(element));
    rest = rest.mid(digits + length);
    if (!rest.isEmpty() && is_separator(rest.front())) rest = rest.mid(1);
  }
  if (elements.empty())
    return refuse(Code::Missing, QStringLiteral("there is no element"), QStringLiteral("scan the code again"));
  return elements;
}

}  // namespace lardiner::gs1
