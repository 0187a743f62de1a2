// GS1 Digital Link addresses read back, with what makes one no label's address.
#include <QRegularExpression>
#include <algorithm>

#include "gs1/check_digit.h"
#include "gs1/digital_link.h"
#include "gs1/element.h"
#include "gs1/identifier.h"
#include "gs1/link_rules.h"
#include "gs1/uri.h"

namespace lardiner::gs1 {

namespace {

using problem::Code;
using problem::Error;
using problem::Expected;

const QString kGtin = QStringLiteral("01");

tl::unexpected<Error> refuse(Code code, QString what, QString hint) {
  return tl::make_unexpected(Error{code, std::move(what), {}, std::move(hint)});
}

// The parts of an address as they stand in it.
struct Parts {
  QString address;      // up to the primary key
  QStringList path;     // primary key, value, qualifier, value …
  QStringList queries;  // key=value
};

Expected<Element> decoded(const QString& ai, const QString& encoded) {
  const auto value = percent_decoded(encoded);
  if (!value) return tl::make_unexpected(value.error());
  Element element{ai, *value};
  if (const auto fault = value_fault(element)) return tl::make_unexpected(*fault);
  return element;
}

Expected<Parts> parts_of(const QString& uri) {
  const QString whole = uri.section(u'#', 0, 0);
  const QString before = whole.section(u'?', 0, 0);
  if (before.endsWith(u'/'))
    return refuse(Code::Malformed, QStringLiteral("\"%1\" ends in a slash").arg(uri),
                  QStringLiteral("something behind it was cut off, or the slash is one too many"));
  const qsizetype host = before.indexOf(QLatin1String("://")) + 3;
  QStringList segments = before.mid(host).split(u'/');
  const QString authority = segments.takeFirst();
  const qsizetype key = primary_key_at(segments);
  if (key < 0)
    return refuse(
        Code::Missing, QStringLiteral("\"%1\" names no GTIN").arg(uri),
        QStringLiteral("a label's address holds /01/, a GTIN of 14 digits, and pairs of identifier and value"));
  Parts parts{before.left(host) + authority, segments.mid(key), {}};
  for (const QString& segment : segments.first(key)) parts.address += u'/' + segment;
  while (parts.address.endsWith(u'/')) parts.address.chop(1);
  static const QRegularExpression kDelimiter(QStringLiteral("[&;]"));
  parts.queries = whole.section(u'?', 1).split(kDelimiter, Qt::SkipEmptyParts);
  return parts;
}

Expected<Link> with_path(const Parts& parts) {
  Link link;
  link.address = parts.address;
  const std::vector<std::pair<QString, QString*>> order = {{kGtin, &link.gtin},
                                                           {QStringLiteral("22"), &link.variant},
                                                           {QStringLiteral("10"), &link.lot},
                                                           {QStringLiteral("21"), &link.serial}};
  size_t next = 0;
  for (qsizetype at = 0; at < parts.path.size(); at += 2) {
    const QString& ai = parts.path[at];
    const auto named = [&](const auto& field) { return field.first == ai; };
    const auto field = std::find_if(order.begin(), order.end(), named);
    if (field == order.end())
      return refuse(Code::Unknown, QStringLiteral("\"%1\" is no qualifier of a GTIN that is read here").arg(ai),
                    QStringLiteral("behind the GTIN come 22, 10 and 21, each with its value"));
    const auto place = static_cast<size_t>(field - order.begin());
    if (!field->second->isEmpty()) return tl::make_unexpected(given_twice(ai));
    if (place < next)
      return refuse(Code::Malformed, QStringLiteral("(%1) stands out of order").arg(ai),
                    QStringLiteral("behind the GTIN come 22, 10 and 21 in this order"));
    const auto element = decoded(ai, parts.path[at + 1]);
    if (!element) return tl::make_unexpected(element.error());
    *field->second = element->value;
    next = place + 1;
  }
  return link;
}

// A plus sign in a query stands for a space, as HTML forms write it.
QString without_plus(QString encoded) { return encoded.replace(u'+', u' '); }

}  // namespace

Expected<Link> parse_digital_link(const QString& uri) {
  if (!looks_like_uri(uri))
    return refuse(Code::Malformed, QStringLiteral("\"%1\" is no web address").arg(uri),
                  QStringLiteral("a label's address begins with https:// and has no spaces"));
  const auto parts = parts_of(uri);
  if (!parts) return tl::make_unexpected(parts.error());
  if (const auto fault = address_fault(parts->address)) return tl::make_unexpected(*fault);
  if (parts->path.first() != kGtin)
    return refuse(Code::Unknown,
                  QStringLiteral("\"%1\" is identified by (%2) %3 and by no GTIN")
                      .arg(uri, parts->path.first(), identifier(parts->path.first())->title),
                  QStringLiteral("only addresses of goods, with /01/ and a GTIN, are read here"));
  auto link = with_path(*parts);
  for (qsizetype at = 0; link && at < parts->queries.size(); ++at) {
    const QString ai = parts->queries[at].section(u'=', 0, 0);
    if (!all_digits(ai)) continue;
    if (const auto fault = attribute_fault(ai)) return tl::make_unexpected(*fault);
    if (!attribute(*link, ai).isEmpty()) return tl::make_unexpected(given_twice(ai));
    const auto element = decoded(ai, without_plus(parts->queries[at].section(u'=', 1)));
    if (!element) return tl::make_unexpected(element.error());
    link->attributes.emplace_back(element->ai, element->value);
  }
  return link;
}

}  // namespace lardiner::gs1
