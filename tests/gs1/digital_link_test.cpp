// Digital Link addresses, written and read back.
#include "gs1/digital_link.h"

#include <random>

#include "show.h"

using namespace lardiner::gs1;
using lardiner::problem::text;

namespace {

const char* const kGtin = "09520123456788";

Link link_of(const char* lot, const char* serial) {
  return {QString::fromLatin1(kGtin),
          QString::fromUtf8(lot),
          QString::fromUtf8(serial),
          {},
          QStringLiteral("https://id.example"),
          {}};
}

Link with_attributes(std::vector<std::pair<QString, QString>> attributes) {
  Link made = link_of("A", "1");
  made.attributes = std::move(attributes);
  return made;
}

QString written(const Link& wanted) {
  const auto uri = digital_link(wanted);
  return uri ? *uri : text(uri.error());
}

// The refusal of `https://id.example/01/09520123456788` + rest.
QString refusal(const char* rest) {
  const auto read =
      parse_digital_link(QStringLiteral("https://id.example/01/09520123456788") + QString::fromUtf8(rest));
  return read ? QStringLiteral("accepted") : text(read.error());
}

QString refusal_of(const char* uri) {
  const auto read = parse_digital_link(QString::fromUtf8(uri));
  return read ? QStringLiteral("accepted") : text(read.error());
}

QString random_value(std::mt19937& random) {
  static const QString kSet82 =
      QStringLiteral("!\"%&'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz");
  std::uniform_int_distribution<int> letter(0, static_cast<int>(kSet82.size()) - 1);
  QString value;
  for (int left = std::uniform_int_distribution<int>(1, 20)(random); left > 0; --left) value += kSet82[letter(random)];
  return value == QLatin1String(".") || value == QLatin1String("..") ? QStringLiteral("A") : value;
}

}  // namespace

TEST_CASE("the address of the standard's example is written and read", "[gs1][digital-link][src:gs1-dl/4]") {
  const Link example{QString::fromLatin1(kGtin),
                     QStringLiteral("ABC1"),
                     QStringLiteral("12345"),
                     {{QStringLiteral("17"), QStringLiteral("180426")}},
                     QStringLiteral("https://id.gs1.org"),
                     {}};
  const auto uri = QStringLiteral("https://id.gs1.org/01/09520123456788/10/ABC1/21/12345?17=180426");
  CHECK(digital_link(example) == uri);
  CHECK(parse_digital_link(uri) == example);
  CHECK(attribute(example, u"17") == QStringLiteral("180426"));
  CHECK(attribute(example, u"15").isEmpty());
}

TEST_CASE("variant, lot and serial stand in this order, and what is empty is left out",
          "[gs1][digital-link][src:gs1-dl/4]") {
  Link full = link_of("LOT", "7");
  full.variant = QStringLiteral("2A");
  CHECK(written(full) == QStringLiteral("https://id.example/01/09520123456788/22/2A/10/LOT/21/7"));
  CHECK(written(link_of("", "7")) == QStringLiteral("https://id.example/01/09520123456788/21/7"));
  CHECK(written(link_of("", "")) == QStringLiteral("https://id.example/01/09520123456788"));
  for (const Link& each : {full, link_of("", "7"), link_of("L", ""), link_of("", "")})
    CHECK(parse_digital_link(written(each)) == each);
}

TEST_CASE("attributes stand in ascending order, whatever order they came in", "[gs1][digital-link][src:gs1-dl/4]") {
  const std::pair<QString, QString> use_by{QStringLiteral("7003"), QStringLiteral("2612011040")};
  const std::pair<QString, QString> made{QStringLiteral("11"), QStringLiteral("261125")};
  const std::pair<QString, QString> weight{QStringLiteral("3103"), QStringLiteral("000189")};
  const auto uri =
      QStringLiteral("https://id.example/01/09520123456788/10/A/21/1?11=261125&3103=000189&7003=2612011040");
  CHECK(written(with_attributes({use_by, made, weight})) == uri);
  CHECK(written(with_attributes({made, weight, use_by})) == uri);
  CHECK(parse_digital_link(uri) == with_attributes({made, weight, use_by}));
}

TEST_CASE("all but letters, digits and - . _ is percent-encoded", "[gs1][digital-link][src:gs1-dl/4]") {
  CHECK(written(link_of("ABC+123", "a/b?c")) ==
        QStringLiteral("https://id.example/01/09520123456788/10/ABC%2B123/21/a%2Fb%3Fc"));
  CHECK(written(link_of("A-b._9", "%41")) == QStringLiteral("https://id.example/01/09520123456788/10/A-b._9/21/%2541"));
  CHECK(written(with_attributes({{QStringLiteral("98"), QStringLiteral("X&Y=;+")}}))
            .endsWith(QStringLiteral("?98=X%26Y%3D%3B%2B")));
}

TEST_CASE("percent-encoding is read in either case", "[gs1][digital-link][src:gs1-dl/4]") {
  const auto read =
      parse_digital_link(QStringLiteral("https://example.com/01/09520123456788/22/ABC%2d123?98=XYZ%2f987"));
  REQUIRE(read);
  CHECK(read->variant == QStringLiteral("ABC-123"));
  CHECK(attribute(*read, u"98") == QStringLiteral("XYZ/987"));
  CHECK(read->address == QStringLiteral("https://example.com"));
}

TEST_CASE("any resolver's path may stand before the GTIN", "[gs1][digital-link][src:gs1-dl/4]") {
  for (const char* address : {"http://example.org", "HTTPS://Example.org:8443", "https://example.org/some/other/path",
                              "https://example.org/odd", "https://10.0.0.7/r/10"}) {
    const auto read = parse_digital_link(QString::fromLatin1(address) + QStringLiteral("/01/09520123456788/10/L"));
    REQUIRE(read);
    CHECK(read->address == QString::fromLatin1(address));
    CHECK(read->lot == QStringLiteral("L"));
  }
}

TEST_CASE("the fragment and keys with letters are ignored", "[gs1][digital-link][src:gs1-dl/4]") {
  for (const char* extra : {"#17=991231", "?linkType=all", "?s4t&x=1", "?", "?a1=2&17a=3", "?&&"})
    CHECK(parse_digital_link(written(link_of("A", "1")) + QString::fromLatin1(extra)) == link_of("A", "1"));
  const auto mixed = parse_digital_link(written(link_of("A", "1")) + QStringLiteral("?k=v;17=261201&z#10=B"));
  REQUIRE(mixed);
  CHECK(mixed->attributes == with_attributes({{QStringLiteral("17"), QStringLiteral("261201")}}).attributes);
}

TEST_CASE("qualifiers out of order, twice or unknown are refused", "[gs1][digital-link][src:gs1-dl/4]") {
  CHECK(refusal("/10/A/21/1") == QStringLiteral("accepted"));
  CHECK(refusal("/21/1/10/A") ==
        QStringLiteral("(10) stands out of order\n  behind the GTIN come 22, 10 and 21 in this order"));
  CHECK(refusal("/10/A/22/B") ==
        QStringLiteral("(22) stands out of order\n  behind the GTIN come 22, 10 and 21 in this order"));
  CHECK(refusal("/10/A/10/A") == QStringLiteral("(10) is given twice\n  give it once"));
  CHECK(refusal("/17/261201") == QStringLiteral("\"17\" is no qualifier of a GTIN that is read here\n"
                                                "  behind the GTIN come 22, 10 and 21, each with its value"));
  CHECK(refusal("/235/TPX1").startsWith(QStringLiteral("\"235\" is no qualifier of a GTIN that is read here")));
  CHECK(refusal("/lot/A").startsWith(QStringLiteral("\"lot\" is no qualifier of a GTIN that is read here")));
}

TEST_CASE("a qualifier or the GTIN in the query is refused", "[gs1][digital-link][src:gs1-dl/4]") {
  const auto hint = QStringLiteral("\n  it belongs in the path, before the question mark");
  CHECK(refusal("?10=A") == QStringLiteral("(10) BATCH/LOT stands behind the question mark") + hint);
  CHECK(refusal("?21=1") == QStringLiteral("(21) SERIAL stands behind the question mark") + hint);
  CHECK(refusal("?22=1") == QStringLiteral("(22) CPV stands behind the question mark") + hint);
  CHECK(refusal("?235=1") == QStringLiteral("(235) TPX stands behind the question mark") + hint);
  CHECK(refusal("?01=09520123456788") == QStringLiteral("(01) GTIN stands behind the question mark") + hint);
  CHECK(refusal("?254=1") == QStringLiteral("(254) GLN EXTENSION COMPONENT is no attribute of a GTIN\n"
                                            "  leave it out of the address"));
}

TEST_CASE("an attribute given twice, without a value or unknown is refused", "[gs1][digital-link][src:gs1-dl/4]") {
  CHECK(refusal("?17=261201") == QStringLiteral("accepted"));
  CHECK(refusal("?17=261201&17=261201") == QStringLiteral("(17) is given twice\n  give it once"));
  CHECK(refusal("?17=") == QStringLiteral("(17) USE BY or EXPIRY has no value\n  it takes 6 characters"));
  CHECK(refusal("?17") == QStringLiteral("(17) USE BY or EXPIRY has no value\n  it takes 6 characters"));
  CHECK(refusal("?05=1") == QStringLiteral("\"05\" is no application identifier\n"
                                           "  keys of digits alone are GS1's; name others with a letter"));
  CHECK(refusal("?999=1").startsWith(QStringLiteral("\"999\" is no application identifier")));
  CHECK(refusal("?17=261301").startsWith(QStringLiteral("\"261301\" is no date")));
  CHECK(refusal("?17=2612") == QStringLiteral("\"2612\" has 4 characters for (17) USE BY or EXPIRY\n"
                                              "  it takes 6 characters"));
}

TEST_CASE("an empty value, a slash at the end or half a pair is refused", "[gs1][digital-link][src:gs1-dl/4]") {
  CHECK(refusal("/10//21/1") == QStringLiteral("(10) BATCH/LOT has no value\n  it takes 1 to 20 characters"));
  CHECK(refusal("/10/A/") == QStringLiteral("\"https://id.example/01/09520123456788/10/A/\" ends in a slash\n"
                                            "  something behind it was cut off, or the slash is one too many"));
  CHECK(refusal("/?17=261201")
            .startsWith(QStringLiteral("\"https://id.example/01/09520123456788/?17=261201\" ends in a slash")));
  CHECK(refusal("/10") ==
        QStringLiteral("\"https://id.example/01/09520123456788/10\" names no GTIN\n"
                       "  a label's address holds /01/, a GTIN of 14 digits, and pairs of identifier and value"));
}

TEST_CASE("a wrong value in the path is refused", "[gs1][digital-link][src:gs1-dl/4]") {
  CHECK(refusal("/10/A%20B") ==
        QStringLiteral("\"A B\" has a space, which (10) BATCH/LOT cannot hold\n"
                       "  use A to Z, a to z, 0 to 9 and ! \" % & ' ( ) * + , - . / : ; < = > ? _"));
  CHECK(refusal("/10/A@B").startsWith(QStringLiteral("\"A@B\" has \"@\"")));
  CHECK(refusal("/10/caf%C3%A9").startsWith(QStringLiteral("\"cafÃ©\" has \"Ã\"")));
  CHECK(refusal("?98=A+B").startsWith(QStringLiteral("\"A B\" has a space")));
  CHECK(refusal("/10/A+B") == QStringLiteral("accepted"));  // in a path a plus sign is itself
  for (const char* broken : {"/10/A%", "/10/A%4", "/10/A%G1", "/10/A%+1", "?98=%4+"})
    CHECK(refusal(broken).endsWith(QStringLiteral("is no percent-encoding\n  write two hexadecimal digits behind %")));
  CHECK(refusal("/10/A%4") == QStringLiteral("\"%4\" is no percent-encoding\n  write two hexadecimal digits behind %"));
  CHECK(refusal("/10/123456789012345678901").startsWith(QStringLiteral("\"123456789012345678901\" has 21 characters")));
  CHECK(refusal_of("https://id.example/01/09520123456789") ==
        QStringLiteral("\"09520123456789\" does not end in its check digit\n"
                       "  behind those digits belongs 8; check each digit"));
  CHECK(refusal_of("https://id.example/01/9520123456788") ==
        QStringLiteral("\"9520123456788\" has 13 characters for (01) GTIN\n  it takes 14 characters"));
}

TEST_CASE("what is no address of goods is refused", "[gs1][digital-link][src:gs1-dl/4]") {
  const auto no_address = QStringLiteral(
      "\"%1\" is no web address\n"
      "  a label's address begins with https:// and has no spaces");
  for (const char* wrong : {"", "09520123456788", "ftp://id.example/01/09520123456788", "https:/id.example/01/x",
                            "https://id.example/01/09520123456788/10/A B", "https://id.example/01/09520123456788/10/é",
                            "https://id.example/01/09520123456788/10/A\"", "https://id.example/01/09520123456788\n"})
    CHECK(refusal_of(wrong) == no_address.arg(QString::fromUtf8(wrong)));
  const auto no_gtin = QStringLiteral(
      "\"%1\" names no GTIN\n"
      "  a label's address holds /01/, a GTIN of 14 digits, and pairs of identifier and value");
  for (const char* wrong : {"https://id.example", "https://id.example/about", "https://id.example/10/ABC",
                            "https://id.example/gtin/09520123456788"})
    CHECK(refusal_of(wrong) == no_gtin.arg(QString::fromUtf8(wrong)));
  CHECK(refusal_of("https://id.example/00/376104250021234569") ==
        QStringLiteral("\"https://id.example/00/376104250021234569\" is identified by (00) SSCC and by no GTIN\n"
                       "  only addresses of goods, with /01/ and a GTIN, are read here"));
  CHECK(refusal_of("https://somebody@id.example/01/09520123456788") ==
        QStringLiteral("\"https://somebody@id.example\" is no web address for labels\n"
                       "  write it as https://id.example, without a slash at the end"));
  CHECK(refusal_of("https:///01/09520123456788").contains(QStringLiteral("no web address for labels")));
}

TEST_CASE("an address that names two items is refused", "[gs1][digital-link][src:gs1-dl/4]") {
  const auto twice = QStringLiteral(
      "\"https://id.example/01/09520123456788\" names an item already, with (01)\n"
      "  one address names one item: leave one of them out");
  CHECK(refusal("/01/09520123456788") == twice);
  Link nested = link_of("A", "1");
  nested.address = QStringLiteral("https://id.example/01/09520123456788");
  CHECK(written(nested) == twice);
}

TEST_CASE("an address is not written from wrong facts", "[gs1][digital-link][src:gs1-dl/4]") {
  const auto no_address = QStringLiteral(
      "\"%1\" is no web address for labels\n"
      "  write it as https://id.example, without a slash at the end");
  for (const char* wrong : {"", "id.example", "https://", "https://id.example/", "https://id.example?x=1",
                            "https://id.example#a", "https://id example", "ftp://id.example"}) {
    Link bad = link_of("A", "1");
    bad.address = QString::fromLatin1(wrong);
    CHECK(written(bad) == no_address.arg(bad.address));
  }
  Link no_gtin = link_of("A", "1");
  no_gtin.gtin.clear();
  CHECK(written(no_gtin) == QStringLiteral("(01) GTIN has no value\n  it takes 14 characters"));
  CHECK(
      written(link_of("A B", "1")).startsWith(QStringLiteral("\"A B\" has a space, which (10) BATCH/LOT cannot hold")));
  CHECK(written(link_of("A", "..")) ==
        QStringLiteral("(21) \"..\" cannot stand in an address\n"
                       "  browsers take . and .. out of an address; use other characters"));
  CHECK(written(link_of(".", "1")).startsWith(QStringLiteral("(10) \".\" cannot stand in an address")));
  CHECK(written(link_of("...", "1")).startsWith(QStringLiteral("https://")));
}

TEST_CASE("an attribute that cannot be one is not written", "[gs1][digital-link][src:gs1-dl/4]") {
  const auto one = [](const char* ai, const char* value) {
    return written(with_attributes({{QString::fromLatin1(ai), QString::fromLatin1(value)}}));
  };
  CHECK(one("17", "261201").endsWith(QStringLiteral("?17=261201")));
  CHECK(one("17", "261301").startsWith(QStringLiteral("\"261301\" is no date")));
  CHECK(one("10", "A").startsWith(QStringLiteral("(10) BATCH/LOT stands behind the question mark")));
  CHECK(one("05", "A").startsWith(QStringLiteral("\"05\" is no application identifier")));
  CHECK(one("37", "5").contains(QStringLiteral("cannot stand together")));
  CHECK(written(with_attributes(
            {{QStringLiteral("17"), QStringLiteral("261201")}, {QStringLiteral("17"), QStringLiteral("261202")}})) ==
        QStringLiteral("(17) is given twice\n  give it once"));
}

TEST_CASE("every lot and serial of set 82 comes back from its address", "[gs1][digital-link][src:gs1-dl/4]") {
  std::mt19937 random(8282);
  for (int run = 0; run < 3000; ++run) {
    Link wanted = link_of("", "");
    wanted.lot = random_value(random);
    wanted.serial = random_value(random);
    wanted.variant = run % 3 == 0 ? random_value(random) : QString();
    wanted.attributes = {{QStringLiteral("17"), QStringLiteral("261201")},
                         {QStringLiteral("98"), random_value(random)}};
    const auto uri = digital_link(wanted);
    REQUIRE(uri);
    INFO(uri->toStdString());
    REQUIRE(parse_digital_link(*uri) == wanted);
  }
}

TEST_CASE("an address damaged in any way is refused or read as something that can be written again",
          "[gs1][digital-link][src:practice/robustness]") {
  const QString whole =
      QStringLiteral("https://id.example/r/01/09520123456788/22/2A/10/A%2B1/21/7?17=261201&98=X%2FY&k=v#f");
  const QString letters = QStringLiteral("/%?&=#;+.0127AZaz~ \x1d\u00e9");
  std::mt19937 random(99);
  const auto any = [&](qsizetype below) { return std::uniform_int_distribution<qsizetype>(0, below - 1)(random); };
  int accepted = 0;
  for (int run = 0; run < 20000; ++run) {
    QString damaged = whole;
    for (qsizetype change = any(3); change >= 0; --change) {
      const qsizetype at = any(damaged.size());
      if (any(2) == 0)
        damaged[at] = letters[any(letters.size())];
      else
        damaged.remove(at, any(6));
    }
    const auto read = parse_digital_link(damaged);
    if (!read) continue;
    INFO(damaged.toStdString());
    ++accepted;
    const auto again = digital_link(*read);
    if (again) REQUIRE(parse_digital_link(*again) == *read);
  }
  CHECK(accepted > 1000);
}
