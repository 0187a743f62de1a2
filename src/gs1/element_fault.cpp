// What is wrong with one element's value, or with elements that stand together.
#include <algorithm>

#include "gs1/check_digit.h"
#include "gs1/element.h"
#include "gs1/identifier.h"
#include "gs1/value.h"

namespace lardiner::gs1 {

namespace {

using problem::Code;
using problem::Error;
using problem::Errors;

QString named(const QString& ai, const Identifier& entry) {
  return entry.title.isEmpty() ? QStringLiteral("(%1)").arg(ai) : QStringLiteral("(%1) %2").arg(ai, entry.title);
}

Error fault(Code code, QString what, QString hint) { return {code, std::move(what), {}, std::move(hint)}; }

QString length_text(const Identifier& entry) {
  const QString unit = entry.longest() == 1 ? QStringLiteral("character") : QStringLiteral("characters");
  if (entry.shortest() == entry.longest()) return QStringLiteral("%1 %2").arg(entry.longest()).arg(unit);
  return QStringLiteral("%1 to %2 %3").arg(entry.shortest()).arg(entry.longest()).arg(unit);
}

Error wrong_length(const Element& element, const Identifier& entry) {
  return fault(Code::Malformed,
               QStringLiteral("\"%1\" has %2 characters for %3")
                   .arg(element.value, QString::number(element.value.size()), named(element.ai, entry)),
               QStringLiteral("it takes %1").arg(length_text(entry)));
}

QString alphabet_text(CharacterSet characters) {
  switch (characters) {
    case CharacterSet::Digits:
      return QStringLiteral("use the digits 0 to 9");
    case CharacterSet::Set82:
      return QStringLiteral("use A to Z, a to z, 0 to 9 and ! \" % & ' ( ) * + , - . / : ; < = > ? _");
    case CharacterSet::Set39:
      return QStringLiteral("use A to Z, 0 to 9 and # - /");
    case CharacterSet::Set64:
      return QStringLiteral("use A to Z, a to z, 0 to 9 and - _ =");
  }
  return {};
}

// Of the first character that the component cannot hold.
std::optional<Error> wrong_character(const Element& element, QStringView part, const Component& component,
                                     const Identifier& entry) {
  for (const QChar letter : part) {
    if (in_set(letter, component.characters)) continue;
    const QString shown = letter == u' ' ? QStringLiteral("a space") : QStringLiteral("\"%1\"").arg(letter);
    return fault(
        Code::Malformed,
        QStringLiteral("\"%1\" has %2, which %3 cannot hold").arg(element.value, shown, named(element.ai, entry)),
        alphabet_text(component.characters));
  }
  return {};
}

std::optional<Error> wrong_content(const Element& element, QStringView part, const Component& component,
                                   const Identifier& entry) {
  for (const QString& name : component.checks) {
    const ContentCheck* check = content_check(name);
    if (check->passes(part)) continue;
    const QString hint =
        name == QLatin1String("csum")
            ? QStringLiteral("behind those digits belongs %1; check each digit").arg(check_digit(part.chopped(1)))
            : QStringLiteral("write %1 as the GS1 General Specifications have it").arg(named(element.ai, entry));
    return fault(Code::Malformed, QStringLiteral("\"%1\" %2").arg(part, QLatin1String(check->fault)), hint);
  }
  return {};
}

// Components take what they are long, the last one what is left.
std::optional<Error> wrong_part(const Element& element, const Identifier& entry) {
  QStringView rest(element.value);
  for (const Component& component : entry.components) {
    if (rest.isEmpty() && component.optional) continue;
    const QStringView part = rest.first(std::min<qsizetype>(component.longest, rest.size()));
    rest = rest.mid(part.size());
    if (const auto wrong = wrong_character(element, part, component, entry)) return wrong;
    if (part.size() < component.shortest) return wrong_length(element, entry);
    if (const auto wrong = wrong_content(element, part, component, entry)) return wrong;
  }
  if (!rest.isEmpty()) return wrong_length(element, entry);
  return {};
}

// "310n": any digit for n.
bool matches(const QString& ai, const QString& pattern) {
  return std::equal(ai.begin(), ai.end(), pattern.begin(), pattern.end(),
                    [](QChar digit, QChar wanted) { return wanted == u'n' || digit == wanted; });
}

bool holds(const Elements& elements, const QString& pattern) {
  return std::any_of(elements.begin(), elements.end(), [&](const Element& e) { return matches(e.ai, pattern); });
}

// "01+21,02": one of the groups, all of it.
bool holds_a_group(const Elements& elements, const QString& groups) {
  const QStringList each = groups.split(u',');
  return std::any_of(each.begin(), each.end(), [&](const QString& group) {
    const QStringList all = group.split(u'+');
    return std::all_of(all.begin(), all.end(), [&](const QString& pattern) { return holds(elements, pattern); });
  });
}

QString spoken(QString groups) {
  return groups.replace(u'+', QLatin1String(" with ")).replace(u',', QLatin1String(" or "));
}

void add_missing_company(const Element& element, const Identifier& entry, const Elements& elements, Errors& faults) {
  for (const QString& groups : entry.needs.split(u';', Qt::SkipEmptyParts)) {
    if (holds_a_group(elements, groups)) continue;
    faults.push_back(fault(Code::Missing,
                           QStringLiteral("%1 stands without %2").arg(named(element.ai, entry), spoken(groups)),
                           QStringLiteral("add it, or leave %1 out").arg(named(element.ai, entry))));
  }
}

void add_conflicts(const Element& element, const Identifier& entry, const Elements& elements, Errors& faults) {
  const QStringList patterns = entry.excludes.split(u',', Qt::SkipEmptyParts);
  for (const Element& other : elements) {
    const bool again = other.ai == element.ai && other.value != element.value;
    const bool excluded =
        other.ai != element.ai && std::any_of(patterns.begin(), patterns.end(),
                                              [&](const QString& pattern) { return matches(other.ai, pattern); });
    if (again)
      faults.push_back(fault(Code::Duplicate, QStringLiteral("(%1) is given twice").arg(element.ai),
                             QStringLiteral("give it once")));
    if (excluded)
      faults.push_back(fault(Code::Conflict,
                             QStringLiteral("(%1) and (%2) cannot stand together").arg(element.ai, other.ai),
                             QStringLiteral("leave one of them out")));
  }
}

}  // namespace

std::optional<Error> value_fault(const Element& element) {
  const Identifier* entry = identifier(element.ai);
  if (entry == nullptr)
    return fault(Code::Unknown, QStringLiteral("\"%1\" is no application identifier").arg(element.ai),
                 QStringLiteral("the GS1 General Specifications, section 3, list all of them"));
  if (element.value.isEmpty())
    return fault(Code::Missing, QStringLiteral("%1 has no value").arg(named(element.ai, *entry)),
                 QStringLiteral("it takes %1").arg(length_text(*entry)));
  return wrong_part(element, *entry);
}

Errors together_faults(const Elements& elements) {
  Errors faults;
  for (const Element& element : elements) {
    const Identifier* entry = identifier(element.ai);
    if (entry == nullptr) continue;
    add_missing_company(element, *entry, elements, faults);
    add_conflicts(element, *entry, elements, faults);
  }
  problem::sort(faults);
  return faults;
}

}  // namespace lardiner::gs1
