// The demo day's labels, printed once for all tests: the PDFs, their pages, and what the records say on their own.
#include "demo_day.h"

#include <QJsonDocument>
#include <QRegularExpression>

namespace lardiner::command {

using namespace Qt::StringLiterals;

namespace {

int containers_of(const QJsonObject& record) {
  if (!record.contains("containers"_L1)) return 1;
  int count = 0;
  for (const QJsonValue& group : record["containers"_L1].toArray()) count += group.toObject()["count"_L1].toInt();
  return count;
}

std::vector<Making> makings() {
  std::vector<Making> out;
  for (const QByteArray& line : bytes_of(kDemoDayJson).trimmed().split('\n')) {
    const QJsonObject record = QJsonDocument::fromJson(line).object();
    REQUIRE_FALSE(record.isEmpty());
    const bool ingredient = record.contains("ingredient"_L1);
    const QLatin1String key = ingredient ? "ingredient"_L1 : "product"_L1;
    out.push_back({record[key].toString(), containers_of(record), ingredient});
  }
  return out;
}

DemoDay* print_day() {
  auto* day = new DemoDay;
  day->made = makings();
  day->ran = day->folder.lardiner({"--kitchen", kDemoKitchen, "labels", kDemoDay, "--out", "labels"});
  day->files = day->folder.entries("labels");
  for (const QString& file : day->files)
    for (Page& page : pages(day->folder, "labels/"_L1 + file)) day->pages.push_back(std::move(page));
  const Ran dates = day->folder.lardiner({"--kitchen", kDemoKitchen, "--json", "dates", kDemoDay});
  REQUIRE(dates.status == 0);
  day->batches = QJsonDocument::fromJson(dates.out.toUtf8())["batches"_L1].toArray();
  return day;
}

bool has_word(const QString& text, const QString& word) {
  return QRegularExpression(QStringLiteral("(?<!\\S)%1(?!\\S)").arg(QRegularExpression::escape(word)))
      .match(text)
      .hasMatch();
}

QJsonObject date_of(const QJsonObject& batch, int number) {
  QJsonObject out;
  int found = 0;
  for (const QJsonValue& date : batch["dates"_L1].toArray()) {
    if (!date.toObject()["containers"_L1].toArray().contains(number)) continue;
    out = date.toObject();
    ++found;
  }
  REQUIRE(found == 1);
  return out;
}

Labelled labelled_page(const DemoDay& day, const Page& page) {
  INFO(page.name().toStdString() << ": " << page.text.toStdString());
  Labelled out{&page, {}, 0, 0, {}, {}};
  for (const QJsonValue& batch : day.batches) {
    const QString lot = batch["lot"_L1].toString();
    if (!has_word(page.text, lot)) continue;
    REQUIRE(out.lot.isEmpty());
    out.lot = lot;
    out.batch = batch.toObject();
  }
  REQUIRE_FALSE(out.lot.isEmpty());
  static const QRegularExpression kContainer(
      QStringLiteral("\\b(?:Tub|Tray|Bag|Case|Jar|Pan|Bottle|Pack|Container) (\\d+) of (\\d+)\\b"));
  const auto container = kContainer.match(page.text);
  REQUIRE(container.hasMatch());
  out.number = container.captured(1).toInt();
  out.of = container.captured(2).toInt();
  out.date = date_of(out.batch, out.number);
  return out;
}

}  // namespace

const DemoDay& demo_day() {
  static const std::unique_ptr<const DemoDay> kDay(print_day());
  return *kDay;
}

std::vector<Labelled> labelled(const DemoDay& day) {
  std::vector<Labelled> out;
  for (const Page& page : day.pages) out.push_back(labelled_page(day, page));
  return out;
}

}  // namespace lardiner::command
