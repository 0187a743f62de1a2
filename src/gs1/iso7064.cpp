// Check characters of ISO/IEC 7064: they find a wrong character and nearly every swap in a number copied by hand.
#include "gs1/iso7064.h"

namespace lardiner::gs1 {

namespace {

using problem::Code;
using problem::Error;

constexpr QStringView kCharacters = u"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";

// How many of kCharacters the text may use.
int alphabet_size(CheckSystem system) {
  return system == CheckSystem::Mod11_2 || system == CheckSystem::Mod97_10 ? 10 : 36;
}

qsizetype check_length(CheckSystem system) { return system == CheckSystem::Mod97_10 ? 2 : 1; }

int value_of(QChar letter) { return static_cast<int>(kCharacters.indexOf(letter)); }

bool in_alphabet(QChar letter, CheckSystem system) {
  const int value = value_of(letter);
  return value >= 0 && value < alphabet_size(system);
}

// ISO/IEC 7064, clause 7.1: pure systems with one check character; radix 2.
QChar pure(QStringView text, int modulus) {
  int sum = 0;
  for (const QChar letter : text) sum = (sum + value_of(letter)) * 2 % modulus;
  const int check = (modulus + 1 - sum) % modulus;
  return modulus == 11 && check == 10 ? QChar(u'X') : kCharacters[check];
}

// ISO/IEC 7064, clause 7.2: pure system with two check characters, radix 10.
QString pure_97_10(QStringView text) {
  int sum = 0;
  for (const QChar letter : text) sum = (sum + value_of(letter)) * 10 % 97;
  sum = sum * 10 % 97;
  return QStringLiteral("%1").arg((98 - sum) % 97, 2, 10, QLatin1Char('0'));
}

// ISO/IEC 7064, clause 9: hybrid system, modulus 37 and 36.
QChar hybrid_37_36(QStringView text) {
  int product = 36;
  for (const QChar letter : text) {
    const int sum = (product + value_of(letter)) % 36;
    product = (sum == 0 ? 36 : sum) * 2 % 37;
  }
  return kCharacters[(37 - product) % 36];
}

QString computed(CheckSystem system, QStringView text) {
  switch (system) {
    case CheckSystem::Mod11_2:
      return QString(pure(text, 11));
    case CheckSystem::Mod37_2:
      return QString(pure(text, 37));
    case CheckSystem::Mod97_10:
      return pure_97_10(text);
    case CheckSystem::Mod37_36:
      return QString(hybrid_37_36(text));
  }
  return {};
}

}  // namespace

problem::Expected<QString> check_characters(CheckSystem system, const QString& text) {
  if (text.isEmpty())
    return tl::make_unexpected(
        Error{Code::Missing, QStringLiteral("there is nothing to check"), {}, QStringLiteral("give the number")});
  for (const QChar letter : text) {
    if (in_alphabet(letter, system)) continue;
    return tl::make_unexpected(
        Error{Code::Malformed,
              QStringLiteral("\"%1\" has \"%2\", which its check character cannot cover").arg(text, letter),
              {},
              alphabet_size(system) == 10 ? QStringLiteral("use the digits 0 to 9 only")
                                          : QStringLiteral("use the digits 0 to 9 and the capitals A to Z only")});
  }
  return computed(system, text);
}

bool check_characters_hold(CheckSystem system, QStringView text) {
  const qsizetype length = check_length(system);
  if (text.size() <= length) return false;
  const auto check = check_characters(system, text.chopped(length).toString());
  return check && text.last(length) == *check;
}

}  // namespace lardiner::gs1
