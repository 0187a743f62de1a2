// The same records in every form in which they may come give the same bytes, or, in another order, the same labels.
#include <QRegularExpression>
#include <algorithm>

#include "demo_day.h"

using namespace lardiner::command;

namespace {

// As a spreadsheet of a country with a comma in its numbers saves it: BOM, CRLF, semicolons.
QByteArray as_spreadsheet(const QByteArray& csv) {
  QString text = QString::fromUtf8(csv);
  REQUIRE_FALSE(text.contains(u'"'));
  REQUIRE_FALSE(text.contains(u';'));
  text.replace(u',', u';');
  static const QRegularExpression kDecimal(QStringLiteral("(\\d)\\.(\\d)"));
  REQUIRE(text.contains(kDecimal));
  text.replace(kDecimal, QStringLiteral("\\1,\\2"));
  text.replace(u'\n', QStringLiteral("\r\n"));
  return "\xEF\xBB\xBF" + text.toUtf8();
}

// The lines behind the header, the last first.
QByteArray reversed(const QByteArray& lines, bool header) {
  QList<QByteArray> all = lines.trimmed().split('\n');
  std::reverse(all.begin() + (header ? 1 : 0), all.end());
  return all.join('\n') + '\n';
}

// Prints records into `out`, and says nothing but how many.
void print(const Folder& folder, const QString& records, const QString& out, const QByteArray& input = {}) {
  const Ran ran = folder.lardiner({"--kitchen", kDemoKitchen, "labels", records, "--out", out}, input);
  CHECK(ran.err == "");
  REQUIRE(ran.status == 0);
}

void check_same_bytes(const Folder& folder, const QString& out) {
  const DemoDay& day = demo_day();
  REQUIRE(folder.entries(out) == day.files);
  for (const QString& file : day.files) {
    INFO(file.toStdString());
    CHECK((folder.read(out + u'/' + file) == day.folder.read("labels/" + file)));
  }
}

}  // namespace

TEST_CASE("two runs on the same records write the same bytes", "[command][labels][forms][src:practice]") {
  const Folder folder;
  print(folder, kDemoDay, "again");
  check_same_bytes(folder, "again");
}

TEST_CASE("CSV and JSON Lines of the same day give the same bytes", "[command][labels][forms][src:practice]") {
  const Folder folder;
  print(folder, kDemoDayJson, "json");
  check_same_bytes(folder, "json");
}

TEST_CASE("a BOM, CRLF, semicolons and decimal commas change no byte of the labels",
          "[command][labels][forms][src:practice]") {
  const Folder folder;
  folder.write("day.csv", as_spreadsheet(bytes_of(kDemoDay)));
  print(folder, "day.csv", "spreadsheet");
  check_same_bytes(folder, "spreadsheet");
}

TEST_CASE("records may come on standard input, as CSV or JSON Lines", "[command][labels][forms][src:practice]") {
  const Folder folder;
  print(folder, "-", "csv", bytes_of(kDemoDay));
  check_same_bytes(folder, "csv");
  print(folder, "-", "json", bytes_of(kDemoDayJson));
  check_same_bytes(folder, "json");
}

TEST_CASE("the order of records decides nothing on any label", "[command][labels][forms][src:practice]") {
  const Folder folder;
  folder.write("day.csv", reversed(bytes_of(kDemoDay), true));
  folder.write("day.jsonl", reversed(bytes_of(kDemoDayJson), false));
  print(folder, "day.csv", "rows");
  print(folder, "day.jsonl", "lines");
  const QStringList expected = printed(demo_day().folder, "labels");
  CHECK(printed(folder, "rows") == expected);
  CHECK(printed(folder, "lines") == expected);
}
