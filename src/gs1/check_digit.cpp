// The mod-10 check digit of GS1 keys, and the GTIN of an item number under the kitchen's prefix.
#include "gs1/check_digit.h"

#include <algorithm>

namespace lardiner::gs1 {

namespace {

using problem::Code;
using problem::Error;

// Digits of a GTIN-13 without its check digit.
constexpr qsizetype kDigits = 12;
// GS1 General Specifications 1.4.2: company prefixes have 4 to 12 digits; with 12 there is no room for an item.
constexpr qsizetype kShortestCompanyPrefix = 4;

// GS1 General Specifications, figure 1.4-1: 02 and 20 to 29 restricted within a region, 04 within a company.
bool restricted_circulation(const QString& prefix) {
  return prefix.size() == 2 && (prefix == QLatin1String("02") || prefix == QLatin1String("04") || prefix[0] == u'2');
}

tl::unexpected<Error> refuse(Code code, QString what, QString hint) {
  return tl::make_unexpected(Error{code, std::move(what), {}, std::move(hint)});
}

}  // namespace

bool all_digits(QStringView text) {
  return !text.isEmpty() && std::all_of(text.begin(), text.end(), [](QChar c) { return c >= u'0' && c <= u'9'; });
}

QChar check_digit(QStringView digits) {
  int sum = 0;
  int weight = 3;
  for (auto at = digits.rbegin(); at != digits.rend(); ++at) {
    sum += weight * at->digitValue();
    weight = 4 - weight;
  }
  return QChar(u'0' + (10 - sum % 10) % 10);
}

bool check_digit_holds(QStringView digits) {
  return digits.size() >= 2 && all_digits(digits) && check_digit(digits.chopped(1)) == digits.back();
}

problem::Expected<QString> gtin14(const QString& prefix, const QString& item_number) {
  if (!all_digits(prefix) || (prefix.size() < kShortestCompanyPrefix && !restricted_circulation(prefix)))
    return refuse(Code::Malformed, QStringLiteral("\"%1\" is no prefix for item numbers").arg(prefix),
                  QStringLiteral("give the kitchen's GS1 company prefix (4 to 11 digits), or 04 for numbers that stay "
                                 "within the company"));
  if (!all_digits(item_number))
    return refuse(Code::Malformed, QStringLiteral("\"%1\" is no item number").arg(item_number),
                  QStringLiteral("write it with the digits 0 to 9 only"));
  const qsizetype room = kDigits - prefix.size();
  if (item_number.size() > room || room < 1)
    return refuse(Code::Range,
                  QStringLiteral("item number \"%1\" is too long for prefix \"%2\"").arg(item_number, prefix),
                  room < 1 ? QStringLiteral("the prefix leaves no digit for it")
                           : QStringLiteral("the prefix leaves %1 digits for it").arg(room));
  const QString body = prefix + item_number.rightJustified(room, u'0');
  return u'0' + body + check_digit(body);
}

}  // namespace lardiner::gs1
