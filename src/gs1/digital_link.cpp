// GS1 Digital Link addresses written: what the code on a label holds.
#include "gs1/digital_link.h"

#include <algorithm>

#include "gs1/element.h"
#include "gs1/link_rules.h"
#include "gs1/uri.h"

namespace lardiner::gs1 {

namespace {

using problem::Code;
using problem::Error;
using problem::Expected;

std::optional<Error> dot_fault(const Element& element) {
  if (element.value != QLatin1String(".") && element.value != QLatin1String("..")) return {};
  return Error{Code::Malformed,
               QStringLiteral("(%1) \"%2\" cannot stand in an address").arg(element.ai, element.value),
               {},
               QStringLiteral("browsers take . and .. out of an address; use other characters")};
}

// What stands in the path, in the order of GS1 Digital Link, section 4.
Elements path_elements(const Link& link) {
  Elements elements{{QStringLiteral("01"), link.gtin}};
  if (!link.variant.isEmpty()) elements.push_back({QStringLiteral("22"), link.variant});
  if (!link.lot.isEmpty()) elements.push_back({QStringLiteral("10"), link.lot});
  if (!link.serial.isEmpty()) elements.push_back({QStringLiteral("21"), link.serial});
  return elements;
}

Elements query_elements(const Link& link) {
  Elements elements;
  for (const auto& [ai, value] : link.attributes) elements.push_back({ai, value});
  std::stable_sort(elements.begin(), elements.end(), [](const Element& a, const Element& b) { return a.ai < b.ai; });
  return elements;
}

std::optional<Error> link_fault(const Link& link, const Elements& path, const Elements& query) {
  if (const auto fault = address_fault(link.address)) return fault;
  Elements all = path;
  all.insert(all.end(), query.begin(), query.end());
  for (const Element& element : all)
    if (const auto fault = value_fault(element)) return fault;
  for (const Element& element : path)
    if (const auto fault = dot_fault(element)) return fault;
  for (const Element& element : query)
    if (const auto fault = attribute_fault(element.ai)) return fault;
  const auto same_ai = [](const Element& a, const Element& b) { return a.ai == b.ai; };
  const auto twice = std::adjacent_find(query.begin(), query.end(), same_ai);
  if (twice != query.end()) return given_twice(twice->ai);
  const problem::Errors together = together_faults(all);
  if (!together.empty()) return together.front();
  return {};
}

}  // namespace

Expected<QString> digital_link(const Link& link) {
  const Elements path = path_elements(link);
  const Elements query = query_elements(link);
  if (const auto fault = link_fault(link, path, query)) return tl::make_unexpected(*fault);
  QString uri = link.address;
  for (const Element& element : path) uri += u'/' + element.ai + u'/' + percent_encoded(element.value);
  QChar joint = u'?';
  for (const Element& element : query) {
    uri += joint + element.ai + u'=' + percent_encoded(element.value);
    joint = u'&';
  }
  return uri;
}

QString attribute(const Link& link, QStringView ai) {
  for (const auto& [name, value] : link.attributes)
    if (name == ai) return value;
  return {};
}

}  // namespace lardiner::gs1
