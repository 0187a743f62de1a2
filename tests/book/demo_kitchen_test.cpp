// The demo kitchen: sound, and its household measures as the open data has them.
#include <QDir>
#include <QRegularExpression>

#include "kitchen.h"
#include "measure/text.h"

using namespace lardiner;
using namespace lardiner::book;

namespace {

std::vector<SourceFile> demo_kitchen() {
  std::vector<SourceFile> files;
  const QDir folder(QStringLiteral(LARDINER_SOURCE_DIR "/samples/kitchen"));
  for (const QString& name : folder.entryList({QStringLiteral("*.toml")}, QDir::Files, QDir::Name)) {
    QFile file(folder.filePath(name));
    REQUIRE(file.open(QIODevice::ReadOnly));
    files.push_back({name, file.readAll()});
  }
  return files;
}

// Grams by "NDB grams", as the lines of WEIGHT.txt: NDB, number, amount, measure, grams.
QSet<QString> open_data() {
  QSet<QString> grams;
  QFile file(QStringLiteral(LARDINER_OPEN_DATA "/usda-sr28/WEIGHT.txt"));
  if (!file.open(QIODevice::ReadOnly)) return grams;
  for (const QByteArray& line : file.readAll().split('\n')) {
    const QList<QByteArray> fields = line.split('^');
    if (fields.size() < 5) continue;
    const measure::Ratio each = *measure::parse_decimal(QString::fromLatin1(fields[4])) /
                                *measure::parse_decimal(QString::fromLatin1(fields[2]));
    grams.insert(
        QStringLiteral("%1 %2/%3").arg(QString::fromLatin1(fields[0]).remove(u'~')).arg(each.num()).arg(each.den()));
  }
  return grams;
}

}  // namespace

TEST_CASE("the demo kitchen has neither errors nor gaps, and is as large as promised", "[book][demo]") {
  const Reading reading = book_test::read(demo_kitchen());
  CHECK(problem::text(reading.findings.errors) == QString());
  CHECK(problem::text(reading.findings.gaps) == QString());
  CHECK(reading.book.ingredients.size() >= 60);
  CHECK(reading.book.products.size() >= 14);
}

TEST_CASE("the demo kitchen's measures are those of the nutrient database they cite", "[book][demo][src:usda-sr28]") {
  const QSet<QString> known = open_data();
  if (known.isEmpty()) {
    WARN("skipped: no open data");
    return;
  }
  static const QRegularExpression cited(QStringLiteral("^USDA SR28, NDB ([0-9]{5})"));
  int checked = 0;
  for (const Ingredient& ingredient : book_test::read(demo_kitchen()).book.ingredients)
    for (const Measure& measure : ingredient.measures) {
      const auto match = cited.match(measure.source);
      if (!match.hasMatch()) continue;
      const measure::Ratio grams = measure::in_unit(measure.mass, measure::Unit::Gram);
      INFO(ingredient.id.toStdString() << ": " << measure.source.toStdString());
      CHECK(known.contains(QStringLiteral("%1 %2/%3").arg(match.captured(1)).arg(grams.num()).arg(grams.den())));
      ++checked;
    }
  CHECK(checked >= 20);
}
