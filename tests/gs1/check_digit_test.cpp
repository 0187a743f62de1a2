// The mod-10 check digit, and GTINs under a kitchen's prefix.
#include "gs1/check_digit.h"

#include <random>

#include "show.h"

using namespace lardiner::gs1;
using lardiner::problem::text;

TEST_CASE("check digits are those of the published examples", "[gs1][check-digit][src:gs1-genspecs/7.9]") {
  CHECK(check_digit(u"37610425002123456") == u'9');  // Table 7-9
  CHECK(check_digit(u"952123454321") == u'3');
  CHECK(check_digit(u"0952012345678") == u'8');
  CHECK(check_digit(u"123456789012") == u'8');
  CHECK(check_digit(u"1234567890123") == u'1');
}

TEST_CASE("the check digit of 629104150021 is 3", "[gs1][check-digit][src:memory/gtin]") {
  CHECK(check_digit(u"629104150021") == u'3');  // value from memory
}

TEST_CASE("a number ends in its check digit or is refused", "[gs1][check-digit][src:gs1-genspecs/7.9]") {
  CHECK(check_digit_holds(u"376104250021234569"));
  CHECK_FALSE(check_digit_holds(u"376104250021234568"));
  CHECK(check_digit_holds(u"09520123456788"));
  CHECK_FALSE(check_digit_holds(u"09520123456787"));
  CHECK_FALSE(check_digit_holds(u"0952012345678A"));
  CHECK_FALSE(check_digit_holds(u"٠٠"));  // digits of another script
  CHECK_FALSE(check_digit_holds(u"0"));
  CHECK_FALSE(check_digit_holds(u""));
}

TEST_CASE("one wrong digit is always found", "[gs1][check-digit][src:gs1-genspecs/7.9]") {
  std::mt19937 random(20261007);
  std::uniform_int_distribution<int> digit(0, 9);
  for (int run = 0; run < 500; ++run) {
    QString number;
    for (int i = 0; i < 13; ++i) number += QChar(u'0' + digit(random));
    number += check_digit(number);
    REQUIRE(check_digit_holds(number));
    const int at = run % 14;
    QString wrong = number;
    wrong[at] = QChar(u'0' + (number[at].digitValue() + 1 + digit(random) % 9) % 10);
    REQUIRE_FALSE(check_digit_holds(wrong));
  }
}

TEST_CASE("a GTIN is prefix, item number filled with zeros, check digit, and 0 before it",
          "[gs1][gtin][src:gs1-genspecs/3.3.2]") {
  CHECK(gtin14(QStringLiteral("952012"), QStringLiteral("345678")) == QStringLiteral("09520123456788"));
  CHECK(gtin14(QStringLiteral("04"), QStringLiteral("7")) == QStringLiteral("00400000000077"));
  CHECK(gtin14(QStringLiteral("04"), QStringLiteral("007")) == gtin14(QStringLiteral("04"), QStringLiteral("7")));
  CHECK(gtin14(QStringLiteral("04"), QStringLiteral("1234567890")).has_value());
  for (const char* prefix : {"02", "20", "29"})
    CHECK(check_digit_holds(*gtin14(QString::fromLatin1(prefix), QStringLiteral("118"))));
}

TEST_CASE("no GTIN is made of a wrong prefix or item number", "[gs1][gtin][src:gs1-genspecs/1.4.2]") {
  const auto refusal = [](const char* prefix, const char* item) {
    return text(gtin14(QString::fromLatin1(prefix), QString::fromLatin1(item)).error());
  };
  const auto no_prefix = QStringLiteral(
      "\"%1\" is no prefix for item numbers\n"
      "  give the kitchen's GS1 company prefix (4 to 11 digits), or 04 for numbers that stay within the company");
  for (const char* prefix : {"03", "30", "952", "95A2", "", "2"})
    CHECK(refusal(prefix, "1") == no_prefix.arg(QString::fromLatin1(prefix)));
  CHECK(refusal("04", "12A") == QStringLiteral("\"12A\" is no item number\n  write it with the digits 0 to 9 only"));
  CHECK(refusal("04", "") == QStringLiteral("\"\" is no item number\n  write it with the digits 0 to 9 only"));
  CHECK(refusal("952012345", "1234") == QStringLiteral("item number \"1234\" is too long for prefix \"952012345\"\n"
                                                       "  the prefix leaves 3 digits for it"));
  CHECK(refusal("952012345678", "1") == QStringLiteral("item number \"1\" is too long for prefix \"952012345678\"\n"
                                                       "  the prefix leaves no digit for it"));
}
