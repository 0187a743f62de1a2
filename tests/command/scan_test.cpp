// A picture of a label opens the history of its lot, however the label has fared.
#include <QJsonDocument>
#include <set>

#include "demo_day.h"
#include "pictures.h"
#include "recorded_day.h"

using namespace lardiner;
using namespace lardiner::command;
using namespace Qt::StringLiterals;

namespace {

// The day in the ledger, and its labels; made once for all tests, which add nothing to it.
const RecordedDay& recorded() {
  static const RecordedDay kDay;
  return kDay;
}

// A page of a PDF as a printer of 203 dots per inch sets it, every dot a pixel.
symbol::Grey raster(const Folder& folder, const QString& pdf, int page) {
  const QString number = QString::number(page);
  const Ran ran =
      folder.run("pdftoppm", {"-gray", "-r", "203", "-f", number, "-l", number, "-singlefile", "-png", pdf, "page"});
  REQUIRE(ran.status == 0);
  QImage image;
  REQUIRE(image.loadFromData(folder.read("page.png"), "png"));
  return scan::grey_of(image);
}

// What befalls the labels, each in turn; the sizes are those of the printed codes, 3 to 5 pixels a module.
const scan::Damage kDamages[] = {
    {},
    {.blur = 1},                                          // out of focus
    {.noise = 70},                                        // in the dark
    {.dark = 150, .light = 190, .noise = 4},              // faded
    {.smear = 4},                                         // a thumb
    {.specks = 40},                                       // frost
    {.shade = 150, .noise = 20},                          // half in the shade
    {.lost = 25, .noise = 10},                            // a burnt head
    {.smear = 2, .dark = 60, .light = 200, .noise = 15},  // several
};

struct File {
  const char* ending;
  int quality;
};
const File kFiles[] = {{"png", -1}, {"jpeg", 60}, {"webp", 50}};

struct Answers {
  int status = -1;
  QString err;
  QJsonArray codes;
};

Answers scan_of(const RecordedDay& day, const QStringList& words) {
  const Ran ran = day.evening(QStringList{"--json", "scan"} + words);
  return {ran.status, ran.err, QJsonDocument::fromJson(ran.out.toUtf8())["codes"_L1].toArray()};
}

// Of each lot a label on each medium.
std::vector<Labelled> some_labels() {
  std::map<QString, int> taken;
  std::vector<Labelled> out;
  for (const Labelled& label : labelled(demo_day()))
    if (taken[label.lot + label.page->file]++ == 0) out.push_back(label);
  return out;
}

void save(const RecordedDay& day, const QString& name, const symbol::Grey& grey) {
  day.folder.write(name, scan::png(grey));
}

const QString kNoCode = QStringLiteral(
    "%1: no code is found in it\n  take the picture nearer and straight on, in even light; or type the lot\n");

}  // namespace

TEST_CASE("a damaged picture of each lot's label opens that lot", "[command][scan][damaged][once][src:practice/scan]") {
  const RecordedDay& day = recorded();
  const std::vector<Labelled> labels = some_labels();
  REQUIRE(labels.size() >= 20);
  QStringList names;
  for (size_t at = 0; at < labels.size(); ++at) {
    const File& file = kFiles[at % std::size(kFiles)];
    const symbol::Grey page = raster(demo_day().folder, "labels/"_L1 + labels[at].page->file, labels[at].page->number);
    names << QStringLiteral("%1.%2").arg(at).arg(QLatin1String(file.ending));
    day.folder.write(
        names.back(),
        scan::file_of(scan::image_of(scan::damaged(page, kDamages[at % std::size(kDamages)], unsigned(at))),
                      file.ending, file.quality));
  }
  const Answers answers = scan_of(day, names);
  CHECK(answers.err == "");
  CHECK(answers.status == 0);
  REQUIRE(answers.codes.size() == names.size());
  for (size_t at = 0; at < labels.size(); ++at) {
    const QJsonObject answer = answers.codes[qsizetype(at)].toObject();
    INFO(labels[at].page->name().toStdString() << ", damage " << at % std::size(kDamages));
    CHECK(answer["from"_L1].toString() == names[qsizetype(at)]);
    CHECK(answer["what"_L1].toString() ==
          QStringLiteral("a label of lot %1, container %2").arg(labels[at].lot).arg(labels[at].number));
    CHECK(answer["container"_L1].toInt() == labels[at].number);
    CHECK(answer["history"_L1]["lot"_L1].toString() == labels[at].lot);
    CHECK(answer["history"_L1]["item"_L1] == labels[at].batch["item"_L1]);
  }
}

TEST_CASE("a sheet of labels gives as many answers, from the PDF and from a picture of it",
          "[command][scan][src:practice/scan]") {
  const RecordedDay day;
  const QString trays = kDemoKitchen + "/records/trays.csv";
  REQUIRE(day.evening({"record", trays}).status == 0);
  REQUIRE(day.evening({"labels", trays, "--medium", "sheet", "--out", "sheets.pdf"}).status == 0);
  save(day, "first.png", raster(day.folder, "sheets.pdf", 1));
  const auto containers = [](const QJsonArray& codes, const QString& from) {
    std::set<QString> out;
    for (const QJsonValue& code : codes)
      if (code["from"_L1].toString().startsWith(from) && code["known"_L1].toBool())
        out.insert(code["what"_L1].toString());
    return out;
  };
  const Answers answers = scan_of(day, {"sheets.pdf", "first.png"});
  CHECK(answers.status == 0);
  CHECK(answers.codes.size() == 16 + 8);
  CHECK(containers(answers.codes, "sheets.pdf").size() == 16);
  CHECK(containers(answers.codes, "sheets.pdf, page 2").size() == 8);
  CHECK(containers(answers.codes, "first.png") == containers(answers.codes, "sheets.pdf, page 1"));
}

TEST_CASE("a picture of a code that is not ours is named for what it is", "[command][scan][src:practice/scan]") {
  const RecordedDay& day = recorded();
  save(day, "menu.png", scan::damaged(scan::drawn("https://example.org/menu", 4), {.noise = 30}, 1));
  save(day, "theirs.png", scan::drawn("https://id.example.org/01/04006381333931/10/HW-1", 4));
  const Answers answers = scan_of(day, {"menu.png", "theirs.png"});
  CHECK(answers.status == 0);
  CHECK(answers.err == "");
  REQUIRE(answers.codes.size() == 2);
  CHECK(answers.codes[0]["what"_L1] == "an address that is no label of this kitchen: https://example.org/menu");
  CHECK(answers.codes[1]["what"_L1] ==
        "a GS1 Digital Link of https://id.example.org: item number 04006381333931, lot HW-1");
  for (const QJsonValue& answer : answers.codes) CHECK_FALSE(answer["known"_L1].toBool());
}

TEST_CASE("a label of a lot that is not recorded is told, with the lots near it", "[command][scan]") {
  const RecordedDay& day = recorded();
  REQUIRE(
      day.evening({"labels", kDemoKitchen + "/records/trays.csv", "--medium", "side", "--out", "late.pdf"}).status ==
      0);
  const Page page = pages(day.folder, "late.pdf").back();
  REQUIRE(page.codes.size() == 1);
  const QString lot = page.codes[0].section("/10/", 1).section(u'/', 0, 0);
  CHECK(lot.startsWith("A26329CLB22"));
  save(day, "late.png", scan::damaged(raster(day.folder, "late.pdf", page.number), {.blur = 1}, 1));
  const Ran ran = day.evening({"scan", "late.png"});
  CHECK(ran.status == 1);
  CHECK(ran.out == QStringLiteral("late.png: lot %1 is not recorded\n").arg(lot));
  CHECK(ran.err == QStringLiteral("lot %1 is not recorded\n").arg(lot));
  // One letter away from a lot that is recorded: a damaged label, typed off wrongly and printed again.
  const QString slip = QString(page.codes[0]).replace(lot, "A26329CLB03M");
  save(day, "slip.png", scan::drawn(slip.toLatin1(), 4));
  CHECK(day.evening({"scan", "slip.png"}).out ==
        "slip.png: A26329CLB03M is no lot of ours: its check character does not hold; near it: A26329CLB03L\n");
}

TEST_CASE("a picture without a code, or one beyond reading, gives its error beside the others' answers",
          "[command][scan][src:practice/scan]") {
  const RecordedDay& day = recorded();
  const symbol::Grey page = raster(demo_day().folder, "labels/lid.pdf", 1);
  save(day, "wall.png", scan::white(600, 400));
  save(day, "blurred.png", scan::damaged(page, {.blur = 12}, 1));
  save(day, "lid.png", page);
  day.folder.write("torn.png", day.folder.read("lid.png").chopped(40));
  const Answers answers = scan_of(day, {"wall.png", "blurred.png", "torn.png", "lid.png", "none.png"});
  CHECK(answers.status == 1);
  CHECK(answers.err ==
        kNoCode.arg("blurred.png") +
            "none.png: there is no such file\n  see that the path is right, seen from the current folder\n" +
            "torn.png: the file ends before its end\n  copy or send it again\n" + kNoCode.arg("wall.png"));
  REQUIRE(answers.codes.size() == 1);
  CHECK(answers.codes[0]["from"_L1] == "lid.png");
  CHECK(answers.codes[0]["known"_L1].toBool());
}
