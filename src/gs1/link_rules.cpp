// What may stand where in a GTIN's address; for this layer alone.
#include "gs1/link_rules.h"

#include "gs1/element.h"
#include "gs1/identifier.h"
#include "gs1/uri.h"

namespace lardiner::gs1 {

using problem::Code;
using problem::Error;

namespace {

// GS1 Digital Link, section 4: what qualifies the key stands in the path and nowhere else.
bool key_or_qualifier(const QString& ai) {
  static const QString kKey = QStringLiteral("01");
  static const QStringList kQualifiers = identifier(kKey)->qualifiers.join(u',').split(u',');
  return ai == kKey || kQualifiers.contains(ai);
}

}  // namespace

std::optional<Error> attribute_fault(const QString& ai) {
  const Identifier* entry = identifier(ai);
  if (entry == nullptr)
    return Error{Code::Unknown,
                 QStringLiteral("\"%1\" is no application identifier").arg(ai),
                 {},
                 QStringLiteral("keys of digits alone are GS1's; name others with a letter")};
  if (key_or_qualifier(ai))
    return Error{Code::Malformed,
                 QStringLiteral("(%1) %2 stands behind the question mark").arg(ai, entry->title),
                 {},
                 QStringLiteral("it belongs in the path, before the question mark")};
  if (!entry->attribute)
    return Error{Code::Malformed,
                 QStringLiteral("(%1) %2 is no attribute of a GTIN").arg(ai, entry->title),
                 {},
                 QStringLiteral("leave it out of the address")};
  return {};
}

std::optional<Error> address_fault(const QString& address) {
  if (const auto fault = web_address_fault(address)) return fault;
  const QStringList segments = address.split(u'/').mid(3);  // behind the scheme, nothing and the host
  const qsizetype key = primary_key_at(segments);
  if (key < 0 || value_fault({segments[key], segments[key + 1]})) return {};
  return Error{Code::Duplicate,
               QStringLiteral("\"%1\" names an item already, with (%2)").arg(address, segments[key]),
               {},
               QStringLiteral("one address names one item: leave one of them out")};
}

qsizetype primary_key_at(const QStringList& segments) {
  for (qsizetype at = segments.size() - 2; at >= 0; at -= 2) {
    const Identifier* entry = identifier(segments[at]);
    if (entry != nullptr && entry->primary_key) return at;
  }
  return -1;
}

Error given_twice(const QString& ai) {
  return Error{Code::Duplicate, QStringLiteral("(%1) is given twice").arg(ai), {}, QStringLiteral("give it once")};
}

}  // namespace lardiner::gs1
