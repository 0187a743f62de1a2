// The GS1 application identifiers: format of each, whether a separator follows, and its place in a Digital Link.
#include "gs1/identifier.h"

#include <algorithm>
#include <numeric>

#include "gs1/identifier_table.h"

namespace lardiner::gs1 {

namespace {

CharacterSet character_set(QChar type) {
  switch (type.unicode()) {
    case 'N':
      return CharacterSet::Digits;
    case 'X':
      return CharacterSet::Set82;
    case 'Y':
      return CharacterSet::Set39;
    default:
      return CharacterSet::Set64;
  }
}

// "N6,yymmd0", "[X..17]": type, length or greatest length, checks.
Component component(QString text) {
  Component part;
  part.checks = text.split(u',');
  QString shape = part.checks.takeFirst();
  part.optional = shape.startsWith(u'[');
  if (part.optional) shape = shape.mid(1, shape.size() - 2);
  part.characters = character_set(shape[0]);
  const bool variable = shape.contains(QLatin1String(".."));
  part.longest = shape.mid(variable ? 3 : 1).toInt();
  part.shortest = variable ? 1 : part.longest;
  return part;
}

Identifier identifier_of(const IdentifierRow& row) {
  Identifier made;
  const QStringList range = QString::fromUtf8(row.identifiers).split(u'-');
  made.first = range.first();
  made.last = range.last();
  made.title = QString::fromUtf8(row.title);
  const QString flags = QString::fromUtf8(row.flags);
  made.fixed_length = flags.contains(u'*');
  made.attribute = flags.contains(u'?');
  made.primary_key = row.qualifiers != nullptr;
  made.qualifiers = QString::fromUtf8(row.qualifiers).split(u'|', Qt::SkipEmptyParts);
  for (const QString& part : QString::fromUtf8(row.format).split(u' ')) made.components.push_back(component(part));
  made.needs = QString::fromUtf8(row.needs);
  made.excludes = QString::fromUtf8(row.excludes);
  return made;
}

bool is_digit(QChar letter) { return letter >= u'0' && letter <= u'9'; }
bool is_capital(QChar letter) { return letter >= u'A' && letter <= u'Z'; }
bool is_small(QChar letter) { return letter >= u'a' && letter <= u'z'; }

}  // namespace

int Identifier::shortest() const {
  return std::accumulate(components.begin(), components.end(), 0,
                         [](int sum, const Component& part) { return sum + (part.optional ? 0 : part.shortest); });
}

int Identifier::longest() const {
  return std::accumulate(components.begin(), components.end(), 0,
                         [](int sum, const Component& part) { return sum + part.longest; });
}

const std::vector<Identifier>& identifiers() {
  static const std::vector<Identifier> kAll = [] {
    std::vector<Identifier> all;
    for (const IdentifierRow& row : identifier_rows()) all.push_back(identifier_of(row));
    return all;
  }();
  return kAll;
}

const Identifier* identifier(QStringView ai) {
  const std::vector<Identifier>& all = identifiers();
  const auto after = std::upper_bound(all.begin(), all.end(), ai,
                                      [](QStringView wanted, const Identifier& entry) { return wanted < entry.first; });
  if (after == all.begin()) return nullptr;
  const Identifier& entry = *std::prev(after);
  const bool digits = std::all_of(ai.begin(), ai.end(), is_digit);
  return digits && ai.size() == entry.first.size() && ai <= entry.last ? &entry : nullptr;
}

// GS1 General Specifications, figures 7.11-1 (82 characters), 7.11-2 (39) and 7.11-3 (64).
bool in_set(QChar letter, CharacterSet characters) {
  if (is_digit(letter)) return true;
  switch (characters) {
    case CharacterSet::Digits:
      return false;
    case CharacterSet::Set82:
      return is_capital(letter) || is_small(letter) || QStringView(u"!\"%&'()*+,-./:;<=>?_").contains(letter);
    case CharacterSet::Set39:
      return is_capital(letter) || QStringView(u"#-/").contains(letter);
    case CharacterSet::Set64:
      return is_capital(letter) || is_small(letter) || QStringView(u"-_=").contains(letter);
  }
  return false;
}

}  // namespace lardiner::gs1
