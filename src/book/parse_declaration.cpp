// Reads one declared substance as a specification sheet is copied into the book: "tree-nut:cashew", "sulphites 15
// mg/kg".
#include <QRegularExpression>

#include "book/allergen.h"
#include "measure/text.h"

namespace lardiner::book {

namespace {

using problem::Code;
using problem::Error;
using problem::Expected;

tl::unexpected<Error> fault(Code code, const QString& what, const QString& hint) {
  return tl::unexpected(Error{code, what, {}, hint});
}

QString nearest_or_all(const QString& word, const QStringList& known, const QString& plural) {
  const QString near = problem::nearest(word, known);
  if (!near.isEmpty()) return QStringLiteral("did you mean \"%1\"?").arg(near);
  return QStringLiteral("the %1 are %2").arg(plural, known.join(QStringLiteral(", ")));
}

Expected<Declaration> named_substance(const QString& substance, const QString& species, const AllergenLaw& law) {
  if (!law.substances.contains(substance)) {
    return fault(Code::Unknown, QStringLiteral("\"%1\" is not a substance of the allergen lists").arg(substance),
                 nearest_or_all(substance, law.substances, QStringLiteral("substances")));
  }
  const QStringList known = law.species_of(substance);
  if (species.isEmpty() || known.contains(species)) return Declaration{substance, species, {}, {}, {}};
  if (known.isEmpty()) {
    return fault(Code::Unknown, QStringLiteral("\"%1\" has no species").arg(substance),
                 QStringLiteral("write \"%1\"").arg(substance));
  }
  return fault(Code::Unknown, QStringLiteral("\"%1\" is not a known species of %2").arg(species, substance),
               nearest_or_all(species, known, QStringLiteral("known ones")));
}

// Reads the content into `declaration`, or says why not.
std::optional<Error> read_content(Declaration& declaration, const QString& content, const AllergenLaw& law) {
  const QString& substance = declaration.substance;
  if (!law.measured.contains(substance)) {
    if (content.isEmpty()) return std::nullopt;
    return Error{Code::Malformed,
                 QStringLiteral("\"%1\" has no threshold, so its content is not stated").arg(substance),
                 {},
                 QStringLiteral("leave \"%1\" out").arg(content)};
  }
  if (content == QLatin1String("unknown")) return std::nullopt;
  static const QRegularExpression form(QStringLiteral("^([0-9.,]+) ?(?:mg/kg|ppm)$"));
  const auto match = form.match(content);
  const auto number = measure::parse_decimal(match.captured(1));
  if (match.hasMatch() && number) {
    declaration.mg_per_kg = *number;
    return std::nullopt;
  }
  return Error{content.isEmpty() ? Code::Missing : Code::Malformed,
               content.isEmpty() ? QStringLiteral("\"%1\" does not say how much").arg(substance)
                                 : QStringLiteral("\"%1\" is not a content").arg(content),
               {},
               QStringLiteral("write it as \"%1 15 mg/kg\", or \"%1 unknown\", which counts as over every threshold")
                   .arg(substance)};
}

// Reads the exemption into `declaration`, or says why not: some list must know it for that substance.
std::optional<Error> read_exemption(Declaration& declaration, const QString& exemption, const AllergenLaw& law) {
  QStringList known;
  for (const AllergenList& list : law.lists) {
    for (const Exemption& one : list.exemptions) {
      if (one.substances.contains(declaration.substance) && !known.contains(one.id)) known += one.id;
    }
  }
  declaration.exemption = exemption;
  if (exemption.isEmpty() || known.contains(exemption)) return std::nullopt;
  if (known.isEmpty()) {
    return Error{Code::Unknown,
                 QStringLiteral("no list exempts anything made of %1").arg(declaration.substance),
                 {},
                 QStringLiteral("leave the exemption out")};
  }
  return Error{Code::Unknown,
               QStringLiteral("\"%1\" is not an exemption of %2").arg(exemption, declaration.substance),
               {},
               nearest_or_all(exemption, known, QStringLiteral("exemptions"))};
}

}  // namespace

Expected<Declaration> parse_declaration(const QString& text, const AllergenLaw& law) {
  static const QRegularExpression form(
      QStringLiteral("^([^ :]+)(?: ?: ?([^ :]+))?(?: (?!exempt\\b)([^:]+?))?(?: exempt ([^ :]+))?$"));
  const auto match = form.match(text.simplified());
  if (!match.hasMatch()) {
    return fault(Code::Malformed, QStringLiteral("\"%1\" is not a declared substance").arg(text),
                 QStringLiteral("write it as \"milk\", \"tree-nut:cashew\" or \"sulphites 15 mg/kg\""));
  }
  auto declaration = named_substance(match.captured(1), match.captured(2), law);
  if (!declaration) return declaration;
  if (const auto error = read_content(*declaration, match.captured(3), law)) return tl::unexpected(*error);
  if (const auto error = read_exemption(*declaration, match.captured(4), law)) return tl::unexpected(*error);
  return declaration;
}

}  // namespace lardiner::book
