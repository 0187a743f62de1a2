// The table of identifiers, whole, against the GS1 Barcode Syntax Dictionary as GS1 publishes it.
#include <QFile>
#include <QRegularExpression>
#include <QSet>

#include "gs1/identifier.h"
#include "gs1/identifier_table.h"
#include "gs1/value.h"
#include "show.h"

using namespace lardiner::gs1;

namespace {

// Checks that need the lists of other bodies, or that belong to coupons and banks; the table leaves them out.
const QSet<QString> kLeftOut = {
    QStringLiteral("iso4217"),       QStringLiteral("iso3166"),     QStringLiteral("iso3166999"),
    QStringLiteral("iso3166alpha2"), QStringLiteral("packagetype"), QStringLiteral("iban"),
    QStringLiteral("csumalpha"),     QStringLiteral("couponcode"),  QStringLiteral("couponposoffer")};

QString without_left_out(const QString& component) {
  QStringList kept;
  for (const QString& part : component.split(u','))
    if (!kLeftOut.contains(part)) kept += part;
  return kept.join(u',');
}

// One line of the dictionary, or of our table, in one notation.
QString entry(const QString& line) {
  static const QRegularExpression kSpace(QStringLiteral("\\s+"));
  static const QRegularExpression kFlags(QStringLiteral("^[*?]+$"));
  QStringList words = line.section(u'#', 0, 0).split(kSpace, Qt::SkipEmptyParts);
  QString out = words.takeFirst();
  out += u'|' + (kFlags.match(words.first()).hasMatch() ? words.takeFirst() : QString()) + u'|';
  QStringList format, needs, excludes;
  QString key = QStringLiteral("none");
  for (const QString& word : words) {
    if (word.startsWith(QLatin1String("req=")))
      needs += word.mid(4);
    else if (word.startsWith(QLatin1String("ex=")))
      excludes += word.mid(3);
    else if (word.startsWith(QLatin1String("dlpkey")))
      key = word.mid(7);
    else
      format += without_left_out(word);
  }
  return out + format.join(u' ') + u'|' + key + u'|' + needs.join(u';') + u'|' + excludes.join(u';') + u'|' +
         line.section(u'#', 1).trimmed();
}

QString entry(const IdentifierRow& row) {
  const QStringList fields = {
      QString::fromUtf8(row.identifiers), QString::fromUtf8(row.flags),
      QString::fromUtf8(row.format),      row.qualifiers ? QString::fromUtf8(row.qualifiers) : QStringLiteral("none"),
      QString::fromUtf8(row.needs),       QString::fromUtf8(row.excludes),
      QString::fromUtf8(row.title)};
  return fields.join(u'|');
}

}  // namespace

TEST_CASE("the table of identifiers is the published one, line by line", "[gs1][identifier][src:gs1-dictionary/all]") {
  QFile dictionary(QStringLiteral(LARDINER_OPEN_DATA "/gs1/gs1-syntax-dictionary.txt"));
  if (!dictionary.open(QIODevice::ReadOnly)) {
    WARN("skipped: no open data");
    return;
  }
  size_t row = 0;
  for (const QString& line : QString::fromUtf8(dictionary.readAll()).split(u'\n', Qt::SkipEmptyParts)) {
    if (line.startsWith(u'#')) continue;
    REQUIRE(row < identifier_rows().size());
    CHECK(entry(identifier_rows()[row]) == entry(line));
    ++row;
  }
  CHECK(row == identifier_rows().size());
}

TEST_CASE("every check that the table names is one that is made", "[gs1][identifier][src:gs1-dictionary/all]") {
  for (const Identifier& each : identifiers())
    for (const Component& component : each.components)
      for (const QString& name : component.checks) {
        INFO(each.first.toStdString() << " " << name.toStdString());
        CHECK(content_check(name) != nullptr);
      }
  CHECK(content_check(u"iso4217") == nullptr);
}

TEST_CASE("an identifier is found by its digits, alone or in a range", "[gs1][identifier][src:gs1-genspecs/3]") {
  for (const Identifier& each : identifiers()) {
    CHECK(identifier(each.first) == &each);
    CHECK(identifier(each.last) == &each);
  }
  CHECK(identifier(u"3103")->title == QStringLiteral("NET WEIGHT (kg)"));
  CHECK(identifier(u"95")->longest() == 90);
  CHECK(identifier(u"01")->qualifiers == QStringList{QStringLiteral("22,10,21"), QStringLiteral("235")});
  for (const QString& none : {QStringLiteral("05"), QStringLiteral("3106"), QStringLiteral("310"), QStringLiteral("1"),
                              QString(), QStringLiteral("010"), QStringLiteral("9X"), QStringLiteral("99999")})
    CHECK(identifier(none) == nullptr);
}

TEST_CASE("set 82 has 82 characters, set 39 has 39, set 64 has 64 and a filler",
          "[gs1][identifier][src:gs1-genspecs/7.11]") {
  const auto count = [](CharacterSet set) {
    int found = 0;
    for (ushort code = 0; code < 0x250; ++code) found += in_set(QChar(code), set) ? 1 : 0;
    return found;
  };
  CHECK(count(CharacterSet::Set82) == 82);
  CHECK(count(CharacterSet::Set39) == 39);
  CHECK(count(CharacterSet::Set64) == 65);
  CHECK(count(CharacterSet::Digits) == 10);
}
