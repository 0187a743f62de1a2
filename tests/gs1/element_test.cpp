// Elements in brackets and with FNC1, and what is wrong with a value.
#include "gs1/element.h"

#include <random>

#include "show.h"

using namespace lardiner::gs1;
using lardiner::problem::text;

namespace {

QString refusal(const char* ai, const char* value) {
  const auto fault = value_fault({QString::fromLatin1(ai), QString::fromUtf8(value)});
  return fault ? text(*fault) : QStringLiteral("accepted");
}

Elements read(const char* bracketed) { return read_bracketed(QString::fromLatin1(bracketed)).value_or(Elements{}); }

QString fnc1_of(const char* bracketed) { return fnc1_string(read(bracketed)).value_or(QStringLiteral("refused")); }

}  // namespace

TEST_CASE("FNC1 stands first and behind every element of no predefined length",
          "[gs1][element][src:gs1-genspecs/7.8]") {
  CHECK(fnc1_of("(01)12345678901231(10)12345") == QStringLiteral("^01123456789012311012345"));
  CHECK(fnc1_of("(10)12345(11)991225") == QStringLiteral("^1012345^11991225"));
  // Fixed by their format, but not of the predefined lengths: a separator follows.
  CHECK(fnc1_of("(7003)2612011040(10)A") == QStringLiteral("^70032612011040^10A"));
  CHECK(fnc1_of("(7006)261201(10)A") == QStringLiteral("^7006261201^10A"));
  CHECK(fnc1_of("(8008)26112507(10)A") == QStringLiteral("^800826112507^10A"));
  CHECK(fnc1_of("(3103)000189(10)A") == QStringLiteral("^310300018910A"));
}

TEST_CASE("an element string is read with FNC1 as scanners send it, and without the first",
          "[gs1][element][src:gs1-genspecs/7.8]") {
  const Elements wanted = read("(10)12345(11)991225");
  REQUIRE(wanted.size() == 2);
  for (const QString& sent : {QStringLiteral("^1012345^11991225"), QStringLiteral("1012345^11991225"),
                              QStringLiteral("\x1d"
                                             "1012345\x1d"
                                             "11991225"),
                              QStringLiteral("1012345\x1d"
                                             "11991225^")})
    CHECK(read_fnc1_string(sent) == wanted);
  CHECK(read_fnc1_string(QStringLiteral("01123456789012311012345")) == read("(01)12345678901231(10)12345"));
}

TEST_CASE("a broken element string is refused", "[gs1][element][src:gs1-genspecs/7.8]") {
  const auto read_refusal = [](const char* sent) { return text(read_fnc1_string(QString::fromLatin1(sent)).error()); };
  CHECK(read_refusal("^05123") == QStringLiteral("\"05123\" begins with no application identifier\n"
                                                 "  the code is damaged or not of GS1's making"));
  CHECK(read_refusal("^1726120") == QStringLiteral("\"26120\" has 5 characters for (17) USE BY or EXPIRY\n"
                                                   "  it takes 6 characters"));
  CHECK(read_refusal("^10^17261201") == QStringLiteral("(10) BATCH/LOT has no value\n  it takes 1 to 20 characters"));
  CHECK(read_refusal("^") == QStringLiteral("there is no element\n  scan the code again"));
  CHECK(read_refusal("^10A^^11991225") == QStringLiteral("\"^11991225\" begins with no application identifier\n"
                                                         "  the code is damaged or not of GS1's making"));
}

TEST_CASE("brackets name the identifiers, and a bracket in a value is escaped",
          "[gs1][element][src:gs1-genspecs/7.8]") {
  const Elements elements = {{QStringLiteral("10"), QStringLiteral("A(10)B")},
                             {QStringLiteral("21"), QStringLiteral("7")}};
  CHECK(bracketed(elements) == QStringLiteral("(10)A\\(10)B(21)7"));
  CHECK(read_bracketed(bracketed(elements)) == elements);
  const auto read_refusal = [](const char* wrong) { return text(read_bracketed(QString::fromLatin1(wrong)).error()); };
  const auto hint =
      QStringLiteral("\n  write each identifier in brackets before its value, as (01)09520123456788(10)ABC1");
  CHECK(read_refusal("10)A") == QStringLiteral("\"10)A\" is no list of elements") + hint);
  CHECK(read_refusal("(10A") == QStringLiteral("\"(10A\" is no list of elements") + hint);
  CHECK(read_refusal("") == QStringLiteral("there is no element") + hint);
  CHECK(read_refusal("(1)A").startsWith(QStringLiteral("\"1\" is no application identifier")));
}

TEST_CASE("a value has the length and the characters of its format", "[gs1][element][src:gs1-genspecs/3]") {
  CHECK(refusal("10", "ABC+123-_/%&") == QStringLiteral("accepted"));
  CHECK(refusal("10", "12345678901234567890") == QStringLiteral("accepted"));
  CHECK(
      refusal("10", "123456789012345678901") ==
      QStringLiteral("\"123456789012345678901\" has 21 characters for (10) BATCH/LOT\n  it takes 1 to 20 characters"));
  CHECK(refusal("10", "%2%3%2%3%2%3%2%3%2%3%2%3") ==
        QStringLiteral("\"%2%3%2%3%2%3%2%3%2%3%2%3\" has 24 characters for (10) BATCH/LOT\n"
                       "  it takes 1 to 20 characters"));
  CHECK(refusal("21", "A B") ==
        QStringLiteral("\"A B\" has a space, which (21) SERIAL cannot hold\n"
                       "  use A to Z, a to z, 0 to 9 and ! \" % & ' ( ) * + , - . / : ; < = > ? _"));
  for (const char* outside : {"#", "$", "@", "[", "]", "\\", "^", "`", "{", "|", "}", "~", "é", "\x1d"})
    CHECK(refusal("21", outside)
              .startsWith(
                  QStringLiteral("\"%1\" has \"%1\", which (21) SERIAL cannot hold").arg(QString::fromUtf8(outside))));
  CHECK(refusal("3103", "00018X") ==
        QStringLiteral("\"00018X\" has \"X\", which (3103) NET WEIGHT (kg) cannot hold\n  use the digits 0 to 9"));
  CHECK(refusal("8010", "9520abc") == QStringLiteral("\"9520abc\" has \"a\", which (8010) CPID cannot hold\n"
                                                     "  use A to Z, 0 to 9 and # - /"));
  CHECK(refusal("8010", "9520#A-/") == QStringLiteral("accepted"));
  CHECK(refusal("8030", "aZ09-_=") == QStringLiteral("accepted"));
  CHECK(refusal("8030", "a+b").endsWith(QStringLiteral("use A to Z, a to z, 0 to 9 and - _ =")));
  CHECK(refusal("21", "") == QStringLiteral("(21) SERIAL has no value\n  it takes 1 to 20 characters"));
  CHECK(refusal("90", "") == QStringLiteral("(90) INTERNAL has no value\n  it takes 1 to 30 characters"));
  CHECK(refusal("05", "1") == QStringLiteral("\"05\" is no application identifier\n"
                                             "  the GS1 General Specifications, section 3, list all of them"));
}

TEST_CASE("a GTIN ends in its check digit", "[gs1][element][src:gs1-genspecs/7.9]") {
  CHECK(refusal("01", "09520123456788") == QStringLiteral("accepted"));
  CHECK(refusal("01", "09520123456789") == QStringLiteral("\"09520123456789\" does not end in its check digit\n"
                                                          "  behind those digits belongs 8; check each digit"));
  CHECK(refusal("00", "376104250021234569") == QStringLiteral("accepted"));
  CHECK(refusal("00", "376104250021234560") != QStringLiteral("accepted"));
}

TEST_CASE("dates and times of elements exist", "[gs1][element][src:gs1-genspecs/3.4]") {
  for (const char* ai : {"11", "13", "15", "17"}) {
    CHECK(refusal(ai, "261200") == QStringLiteral("accepted"));
    CHECK(refusal(ai, "240229") == QStringLiteral("accepted"));
    CHECK(refusal(ai, "261332")
              .startsWith(QStringLiteral("\"261332\" is no date (two digits each of year, month and day)")));
    CHECK(refusal(ai, "250229") != QStringLiteral("accepted"));
  }
  CHECK(refusal("7003", "2612011040") == QStringLiteral("accepted"));
  CHECK(refusal("7003", "2612001040").startsWith(QStringLiteral("\"261200\" is no date")));
  CHECK(refusal("7003", "2612012440") ==
        QStringLiteral("\"2440\" is no time (two digits each of hour and minute)\n"
                       "  write (7003) EXPIRY TIME as the GS1 General Specifications have it"));
  CHECK(refusal("7006", "261200").startsWith(QStringLiteral("\"261200\" is no date")));
  CHECK(refusal("7006", "261201") == QStringLiteral("accepted"));
  for (const char* made : {"26112507", "2611250705", "261125070509"})
    CHECK(refusal("8008", made) == QStringLiteral("accepted"));
  CHECK(refusal("8008", "261125") ==
        QStringLiteral("\"261125\" has 6 characters for (8008) PROD TIME\n  it takes 8 to 12 characters"));
  CHECK(refusal("8008", "261125070").startsWith(QStringLiteral("\"261125070\" has 9 characters")));
  CHECK(refusal("8008", "26110007") != QStringLiteral("accepted"));
}

TEST_CASE("a weight has as many decimals as the last digit of its identifier says",
          "[gs1][element][src:gs1-genspecs/3.6.2]") {
  CHECK(measure({QStringLiteral("3103"), QStringLiteral("000189")}) == Measure{189, 3});
  CHECK(measure({QStringLiteral("3202"), QStringLiteral("001250")}) == Measure{1250, 2});
  CHECK(text(measure({QStringLiteral("10"), QStringLiteral("000189")}).error()) ==
        QStringLiteral("(10) is no measure\n  measures have the identifiers 3100 to 3699"));
  CHECK_FALSE(measure({QStringLiteral("3106"), QStringLiteral("000189")}));
  CHECK_FALSE(measure({QStringLiteral("3103"), QStringLiteral("189")}));
}

TEST_CASE("a net weight is written in grams and never overstated", "[gs1][element][src:gs1-genspecs/3.6.2]") {
  CHECK(net_weight(189) == Element{QStringLiteral("3103"), QStringLiteral("000189")});
  CHECK(net_weight(999'999) == Element{QStringLiteral("3103"), QStringLiteral("999999")});
  CHECK(net_weight(1'000'009) == Element{QStringLiteral("3102"), QStringLiteral("100000")});
  CHECK(net_weight(999'999'999) == Element{QStringLiteral("3100"), QStringLiteral("999999")});
  CHECK(text(net_weight(0).error()) ==
        QStringLiteral("0 g is no net weight that a code can hold\n  give 1 g to 999,999 kg"));
  CHECK_FALSE(net_weight(-5));
  CHECK_FALSE(net_weight(1'000'000'000));
}

TEST_CASE("lot and serial need the GTIN beside them", "[gs1][element][src:gs1-dictionary/req]") {
  CHECK(together_faults(read("(01)09520123456788(10)ABC1(21)7(17)261201(7003)2612011040(3103)000189")).empty());
  CHECK(text(together_faults(read("(10)ABC1(21)7"))) ==
        QStringLiteral("(10) BATCH/LOT stands without 01 or 02 or 03 or 8006 or 8026\n"
                       "  add it, or leave (10) BATCH/LOT out\n"
                       "(21) SERIAL stands without 01 or 03 or 8006\n"
                       "  add it, or leave (21) SERIAL out\n"));
  CHECK(text(together_faults(read("(01)09520123456788(10)A(10)B"))) ==
        QStringLiteral("(10) is given twice\n  give it once\n"));
  CHECK(together_faults(read("(01)09520123456788(10)A(10)A")).empty());
  CHECK(text(together_faults(read("(01)09520123456788(37)5(02)09520123456788")))
            .contains(QStringLiteral("(01) and (37) cannot stand together")));
  CHECK(text(together_faults(read("(01)09520123456788(3103)000189(3102)000019")))
            .contains(QStringLiteral("(3103) and (3102) cannot stand together")));
  CHECK(
      text(together_faults(read("(01)09520123456788(250)A")))
          .contains(QStringLiteral("(250) SECONDARY SERIAL stands without 01 with 21 or 03 with 21 or 8006 with 21")));
}

TEST_CASE("an element string damaged in any way is refused or written back as the same elements",
          "[gs1][element][src:practice/robustness]") {
  const QString whole =
      QStringLiteral("^010952012345678810ABC1^17261201310300018921X^7003261201104042312345^80082611250705");
  const QString letters = QStringLiteral("^0123789AZ( \x1d");
  std::mt19937 random(77);
  const auto any = [&](qsizetype below) { return std::uniform_int_distribution<qsizetype>(0, below - 1)(random); };
  int accepted = 0;
  for (int run = 0; run < 20000; ++run) {
    QString damaged = whole;
    const qsizetype at = any(damaged.size());
    if (any(2) == 0)
      damaged[at] = letters[any(letters.size())];
    else
      damaged.remove(at, any(40));
    const auto read = read_fnc1_string(damaged);
    if (!read) continue;
    INFO(damaged.toStdString());
    ++accepted;
    REQUIRE(read_fnc1_string(fnc1_string(*read).value()) == *read);
    REQUIRE(read_bracketed(bracketed(*read)) == *read);
  }
  CHECK(accepted > 400);
}
