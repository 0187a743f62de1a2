// Labels on sheets: places are filled in order, a part-used sheet is used up, and the next run is told where to go on.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "small_kitchen.h"

using namespace lardiner::command;

namespace {

// Eight tray sides on a Letter sheet, in hundredths of a millimetre from the paper's top left.
constexpr int kLeft = 650, kTop = 1600, kWidth = 10000, kHeight = 6000, kAcross = 290, kDown = 240;

const QByteArray kSheet =
    "[[media]]\nid = \"sheet\"\nname = \"sheet of tray sides\"\nform = \"sheet\"\npaper = \"Letter\"\n"
    "columns = 2\nrows = 4\nwidth = \"100 mm\"\nheight = \"60 mm\"\nleft = \"6.5 mm\"\ntop = \"16 mm\"\n"
    "gap_across = \"2.9 mm\"\ngap_down = \"2.4 mm\"\ndots_per_inch = 600\nbears = [\"chilled\"]\nmargin = \"1.5 mm\"\n";

struct SheetKitchen : SmallKitchen {
  SheetKitchen() { folder.write("kitchen/sheet.toml", kSheet); }

  Ran print(const QStringList& more) const {
    return labels(QStringList{"records.csv", "--out", "labels", "--medium", "sheet"} + more);
  }

  /// What stands at a place of a page, both from 1.
  QString text_at(const QString& pdf, int page, int place) const {
    const auto points = [](int hundredths) { return QString::number(hundredths * 72 / 2540); };
    const int x = kLeft + (place - 1) % 2 * (kWidth + kAcross);
    const int y = kTop + (place - 1) / 2 * (kHeight + kDown);
    const QString number = QString::number(page);
    return folder
        .run("pdftotext", {"-f", number, "-l", number, "-x", points(x), "-y", points(y), "-W", points(kWidth), "-H",
                           points(kHeight), pdf, "-"})
        .out.simplified();
  }
};

}  // namespace

TEST_CASE("the labels of several batches fill a sheet by rows from the top left", "[command][sheets][src:practice]") {
  const SheetKitchen kitchen;
  const Ran ran = kitchen.print({});
  CHECK(ran.err == "");
  CHECK(ran.out == "labels/sheet.pdf: 8 labels\n");
  REQUIRE(page_texts(kitchen.folder, "labels/sheet.pdf").size() == 1);
  for (int place = 1; place <= 8; ++place) {
    const QString text = kitchen.text_at("labels/sheet.pdf", 1, place);
    INFO(place << ": " << text.toStdString());
    CHECK(text.contains(QStringLiteral("Tub %1 of 4").arg((place - 1) % 4 + 1)));
    CHECK(text.contains(place <= 4 ? "A26329LBU01C" : "A26329RUB02S"));
  }
}

TEST_CASE("--start begins at that place of a part-used sheet, and the report says where to go on",
          "[command][sheets][src:practice]") {
  const SheetKitchen kitchen;
  CHECK(kitchen.print({"--start", "7"}).out ==
        "labels/sheet.pdf: 8 labels, 2 places left on the last sheet: next start 7\n");
  REQUIRE(page_texts(kitchen.folder, "labels/sheet.pdf").size() == 2);
  for (int place = 1; place <= 6; ++place) CHECK(kitchen.text_at("labels/sheet.pdf", 1, place) == "");
  CHECK(kitchen.text_at("labels/sheet.pdf", 1, 7).contains("Tub 1 of 4"));
  CHECK(kitchen.text_at("labels/sheet.pdf", 1, 8).contains("Tub 2 of 4"));
  CHECK(kitchen.text_at("labels/sheet.pdf", 2, 1).contains("Tub 3 of 4"));
  CHECK(kitchen.text_at("labels/sheet.pdf", 2, 6).contains("Tub 4 of 4"));
  CHECK(kitchen.text_at("labels/sheet.pdf", 2, 7) == "");

  const Ran json =
      kitchen.folder.lardiner(words("--json --kitchen kitchen labels records.csv --out again.pdf "
                                    "--medium sheet --start 8"));
  const QJsonObject file =
      QJsonDocument::fromJson(json.out.toUtf8()).object().value("files").toArray().first().toObject();
  CHECK(file.value("places_left").toInt() == 1);
  CHECK(file.value("next_start").toInt() == 8);
}

TEST_CASE("without --medium --start is of the book's only sheet, and labels on rolls begin as ever",
          "[command][sheets][src:practice]") {
  const SheetKitchen kitchen;
  CHECK(kitchen.labels({"records.csv", "--out", "labels", "--start", "3"}).out == "labels/lid.pdf: 8 labels\n");
}

TEST_CASE("--start is wrong usage where there is no such place, or nobody knows on which sheet",
          "[command][sheets][usage][src:practice]") {
  const SheetKitchen kitchen;
  for (const QString place : {"0", "9", "-1"}) {
    const Ran ran = kitchen.print({"--start=" + place});
    CHECK(ran.status == 2);
    CHECK(ran.err == "--start: \"sheet\" has 8 places, and no place " + place +
                         "\n  count its places by rows from the top left, the first is 1\n");
  }
  const Ran roll = kitchen.labels({"records.csv", "--out", "labels", "--medium", "lid", "--start", "2"});
  CHECK(roll.status == 2);
  CHECK(roll.err == "--start: \"lid\" is a roll, not a sheet of labels\n  leave --start out\n");
  CHECK(kitchen.labels({"records.csv", "--out", "labels", "--start", "second"}).status == 2);

  kitchen.folder.write("kitchen/more.toml", QByteArray(kSheet).replace("id = \"sheet\"", "id = \"other\""));
  const Ran several = kitchen.labels({"records.csv", "--out", "labels", "--start", "2"});
  CHECK(several.status == 2);
  CHECK(several.err.startsWith("--start: the book has several sheets of labels\n  name one with --medium: "));

  const SmallKitchen rolls;
  const Ran none = rolls.labels({"records.csv", "--out", "labels", "--start", "2"});
  CHECK(none.status == 2);
  CHECK(none.err == "--start: no medium of the book is a sheet of labels\n  leave --start out\n");
  CHECK(rolls.as_it_was());
}

TEST_CASE("a PDF of sheets ends with a whole sheet, also where the first was used in part",
          "[command][sheets][many][src:practice]") {
  const SheetKitchen kitchen;
  kitchen.folder.write("records.csv",
                       "product,number,quantity,made_at,by,containers\n"
                       "seed-rub,2,410 kg,2026-11-25 08:00,MK,3995 tub 100 g\n");
  CHECK(kitchen.print({"--start", "7"}).out ==
        "labels/sheet-0001.pdf: 3994 labels\n"
        "labels/sheet-0002.pdf: 1 label, 7 places left on the last sheet: next start 2\n");
  CHECK(page_texts(kitchen.folder, "labels/sheet-0001.pdf").size() == 500);
  CHECK(kitchen.text_at("labels/sheet-0002.pdf", 1, 1).contains("Tub 3995 of 3995"));
}
