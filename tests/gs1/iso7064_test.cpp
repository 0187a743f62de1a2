// Check characters of ISO/IEC 7064.
#include "gs1/iso7064.h"

#include <random>

#include "show.h"

using namespace lardiner::gs1;
using lardiner::problem::text;

namespace {

QString check(CheckSystem system, const char* number) {
  return check_characters(system, QString::fromLatin1(number)).value_or(QStringLiteral("refused"));
}

QString random_lot(std::mt19937& random) {
  static const QString kLetters = QStringLiteral("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ");
  std::uniform_int_distribution<int> letter(0, 35);
  std::uniform_int_distribution<int> length(2, 19);
  QString lot;
  for (int left = length(random); left > 0; --left) lot += kLetters[letter(random)];
  return lot;
}

}  // namespace

TEST_CASE("MOD 37,36 gives M for the Global Release Identifier's example", "[gs1][iso7064][src:iso-7064/9]") {
  CHECK(check(CheckSystem::Mod37_36, "A12425GABC1234002") == QStringLiteral("M"));
  CHECK(check_characters_hold(CheckSystem::Mod37_36, u"A12425GABC1234002M"));
  CHECK_FALSE(check_characters_hold(CheckSystem::Mod37_36, u"A12425GABC1234002N"));
}

TEST_CASE("MOD 97-10 gives two digits", "[gs1][iso7064][src:iso-7064/7]") {
  CHECK(check(CheckSystem::Mod97_10, "794") == QStringLiteral("44"));
  CHECK(check(CheckSystem::Mod97_10, "5367") == QStringLiteral("02"));
  CHECK(check_characters_hold(CheckSystem::Mod97_10, u"536702"));
  CHECK_FALSE(check_characters_hold(CheckSystem::Mod97_10, u"536720"));
}

TEST_CASE("MOD 11-2 gives a digit or X", "[gs1][iso7064][src:iso-7064/7]") {
  CHECK(check(CheckSystem::Mod11_2, "0794") == QStringLiteral("0"));
  CHECK(check(CheckSystem::Mod11_2, "079") == QStringLiteral("X"));
  CHECK(check_characters_hold(CheckSystem::Mod11_2, u"079X"));
  CHECK_FALSE(check_characters_hold(CheckSystem::Mod11_2, u"0790"));
}

TEST_CASE("MOD 37-2 gives a letter or digit", "[gs1][iso7064][src:iso-7064/7]") {
  CHECK(check(CheckSystem::Mod37_2, "G123489654321") == QStringLiteral("Y"));
  CHECK(check(CheckSystem::Mod37_2, "G123498654321") == QStringLiteral("H"));
  CHECK(check_characters_hold(CheckSystem::Mod37_2, u"G123489654321Y"));
  CHECK_FALSE(check_characters_hold(CheckSystem::Mod37_2, u"G123498654321Y"));
}

TEST_CASE("MOD 37,36 finds every wrong character and nearly every swap of neighbours",
          "[gs1][iso7064][src:iso-7064/9]") {
  std::mt19937 random(37036);
  int swaps = 0;
  int missed = 0;
  for (int run = 0; run < 5000; ++run) {
    const QString lot = random_lot(random);
    const QString whole = lot + *check_characters(CheckSystem::Mod37_36, lot);
    REQUIRE(check_characters_hold(CheckSystem::Mod37_36, whole));
    const int at = std::uniform_int_distribution<int>(0, static_cast<int>(whole.size()) - 2)(random);
    QString wrong = whole;
    wrong[at] = wrong[at] == u'7' ? u'J' : u'7';
    REQUIRE_FALSE(check_characters_hold(CheckSystem::Mod37_36, wrong));
    QString swapped = whole;
    std::swap(swapped[at], swapped[at + 1]);
    if (swapped == whole) continue;
    ++swaps;
    missed += check_characters_hold(CheckSystem::Mod37_36, swapped) ? 1 : 0;
  }
  INFO(missed << " of " << swaps);
  CHECK(missed * 200 < swaps);  // fewer than one in two hundred: this system misses some, as the standard says
}

TEST_CASE("what the alphabet does not hold has no check character", "[gs1][iso7064][src:iso-7064/5]") {
  const auto refusal = [](CheckSystem system, const char* number) {
    return text(check_characters(system, QString::fromLatin1(number)).error());
  };
  CHECK(refusal(CheckSystem::Mod37_36, "CLB-07") ==
        QStringLiteral("\"CLB-07\" has \"-\", which its check character cannot cover\n"
                       "  use the digits 0 to 9 and the capitals A to Z only"));
  CHECK(refusal(CheckSystem::Mod37_36, "clb07") ==
        QStringLiteral("\"clb07\" has \"c\", which its check character cannot cover\n"
                       "  use the digits 0 to 9 and the capitals A to Z only"));
  CHECK(refusal(CheckSystem::Mod97_10, "79A") ==
        QStringLiteral("\"79A\" has \"A\", which its check character cannot cover\n  use the digits 0 to 9 only"));
  CHECK(refusal(CheckSystem::Mod37_36, "") == QStringLiteral("there is nothing to check\n  give the number"));
  CHECK_FALSE(check_characters_hold(CheckSystem::Mod37_36, u"M"));
  CHECK_FALSE(check_characters_hold(CheckSystem::Mod97_10, u"44"));
  CHECK_FALSE(check_characters_hold(CheckSystem::Mod37_36, u"CLB-07M"));
}
