// `1 lb 1.6 oz` taken apart into its numbers and the words after them; shared by amounts of food and of time.
#include "measure/amounts.h"

#include <QRegularExpression>

namespace lardiner::measure {

namespace {

using problem::Code;

// 10^18 is the greatest power of ten that 64 bits hold.
constexpr int kMostDigits = 18;

bool is_digit(QChar c) { return c >= u'0' && c <= u'9'; }

bool is_number_part(QChar c) { return is_digit(c) || c == u'.' || c == u',' || c == u'/' || c == u' '; }

QString taken_number(const QString& text, qsizetype& at) {
  const qsizetype start = at;
  while (at < text.size() && is_number_part(text[at])) ++at;
  return text.mid(start, at - start).trimmed();
}

// Up to the next digit. A point after a letter ends an abbreviation, unless a digit follows at once: `1 lb.5 oz` must
// not lose its point.
QString taken_word(const QString& text, qsizetype& at) {
  QString word;
  for (; at < text.size() && !is_digit(text[at]); ++at) {
    const bool ends_here = at + 1 == text.size() || text[at + 1] == u' ';
    if (text[at] == u'.' && ends_here && !word.isEmpty() && word.back().isLetter()) continue;
    word += text[at].toLower();
  }
  return word.trimmed();
}

std::int64_t power_of_ten(qsizetype exponent) {
  std::int64_t power = 1;
  for (qsizetype i = 0; i < exponent; ++i) power *= 10;
  return power;
}

problem::Expected<Ratio> read_fraction(const QString& number, const QString& whole) {
  static const QRegularExpression form(QStringLiteral("^(?:([0-9]{1,9}) )?([0-9]{1,9})/([0-9]{1,9})$"));
  const auto match = form.match(number);
  if (!match.hasMatch()) {
    return tl::unexpected(fault(Code::Malformed, whole, QStringLiteral("has a fraction that cannot be read"),
                                QStringLiteral("write it as 1/2 or 1 1/2")));
  }
  const std::int64_t den = match.captured(3).toLongLong();
  if (den == 0) {
    return tl::unexpected(fault(Code::Malformed, whole, QStringLiteral("divides by zero"),
                                QStringLiteral("write a fraction such as 1/2")));
  }
  return Ratio(match.captured(1).toLongLong(), 1) + Ratio(match.captured(2).toLongLong(), den);
}

problem::Error comma_fault(const QString& number, const QString& whole) {
  static const QRegularExpression thousands(QStringLiteral("^[0-9]{1,3}(,[0-9]{3})+(\\.[0-9]+)?$"));
  QString plain = whole;
  if (thousands.match(number).hasMatch()) {
    return fault(Code::Malformed, whole, QStringLiteral("has a thousands mark"),
                 QStringLiteral("write it as ") + plain.remove(u','));
  }
  return fault(Code::Malformed, whole, QStringLiteral("has a comma in its number"),
               QStringLiteral("write the decimal mark as a point: 2.5"));
}

problem::Error form_fault(const QString& number, const QString& whole) {
  static const QRegularExpression bare_point(QStringLiteral("^\\.[0-9]+$"));
  static const QRegularExpression spaced(QStringLiteral("^[0-9]{1,3}( [0-9]{3})+$"));
  QString plain = whole;
  if (bare_point.match(number).hasMatch()) {
    return fault(Code::Malformed, whole, QStringLiteral("has nothing before its decimal point"),
                 QStringLiteral("write it as 0") + number);
  }
  if (spaced.match(number).hasMatch()) {
    return fault(Code::Malformed, whole, QStringLiteral("has a thousands mark"),
                 QStringLiteral("write the number as ") + QString(number).remove(u' '));
  }
  return fault(Code::Malformed, whole, QStringLiteral("is not a number"), QStringLiteral("write it as 12 or 0.61"));
}

// The number with its decimal mark as a point, or the fault of its commas.
problem::Expected<QString> with_point(const QString& number, const QString& whole, bool decimal_comma) {
  if (!decimal_comma) {
    if (number.contains(u',')) return tl::unexpected(comma_fault(number, whole));
    return number;
  }
  static const QRegularExpression doubtful(QStringLiteral("^[1-9][0-9]{0,2}\\.[0-9]{3}$"));
  if (doubtful.match(number).hasMatch()) {
    const QString one = QString(number).replace(u'.', u',');
    return tl::unexpected(
        fault(Code::Malformed, whole, QStringLiteral("may be one or a thousand"),
              QStringLiteral("write the number as ") + one + QStringLiteral(" or ") + QString(number).remove(u'.')));
  }
  if (number.contains(u',') && number.contains(u'.')) {
    return tl::unexpected(fault(Code::Malformed, whole, QStringLiteral("has a thousands mark"),
                                QStringLiteral("write the number with its decimal comma only")));
  }
  return QString(number).replace(u',', u'.');
}

}  // namespace

std::vector<Amount> amounts(const QString& text) {
  const QString simple = text.simplified();
  std::vector<Amount> found;
  qsizetype at = 0;
  while (at < simple.size()) {
    const QString number = taken_number(simple, at);
    found.push_back({number, taken_word(simple, at)});
  }
  return found;
}

problem::Expected<Ratio> read_number(const QString& number, const QString& whole, bool decimal_comma) {
  if (number.contains(u'/')) return read_fraction(number, whole);
  const auto plain = with_point(number, whole, decimal_comma);
  if (!plain) return tl::unexpected(plain.error());
  static const QRegularExpression form(QStringLiteral("^([0-9]+)(?:\\.([0-9]+))?$"));
  const auto match = form.match(*plain);
  if (!match.hasMatch()) return tl::unexpected(form_fault(*plain, whole));
  const QString decimals = match.captured(2);
  const QString digits = match.captured(1) + decimals;
  if (digits.size() > kMostDigits) {
    return tl::unexpected(
        fault(Code::Range, whole, QStringLiteral("has too many digits"), QStringLiteral("write at most 18 digits")));
  }
  return Ratio(digits.toLongLong(), power_of_ten(decimals.size()));
}

problem::Error fault(problem::Code code, const QString& text, const QString& clause, const QString& hint) {
  return {code, u'"' + text + QStringLiteral("\" ") + clause, {}, hint};
}

bool negative(const QString& text) {
  const QString trimmed = text.trimmed();
  return trimmed.startsWith(u'-') || trimmed.startsWith(u'\u2212') || trimmed.startsWith(u'\u2013');
}

}  // namespace lardiner::measure
