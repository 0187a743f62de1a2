// Pads from the command line: labels to fill in by hand, the batch entered later, and its labels with the same codes.
#include <QJsonDocument>
#include <QJsonObject>
#include <QRegularExpression>

#include "small_kitchen.h"

using namespace lardiner;
using namespace lardiner::command;

namespace {

const char* const kPadTime = "2026-11-20T18:00";

struct PadKitchen {
  Folder folder;

  PadKitchen() { folder.copy_book(kDemoKitchen, "kitchen"); }

  Ran pad(const char* product, const char* in, const char* number,
          const QStringList& more = {"--out", "pad.pdf"}) const {
    return folder.lardiner(QStringList{"--kitchen", "kitchen", "--at", kPadTime, "pad", product, "--containers", in,
                                       "--number", number, "--medium", "case"} +
                           more);
  }
};

// Of the records of the demo day: the butter of number 3, as it would be entered from a pad.
QByteArray entry(const QByteArray& lot, const QByteArray& more = "2026-11-27 09:00") {
  return "row,product,number,quantity,made_at,by,containers,pad_day,recorded,item,lot,use_by,opened,at,core\n"
         ",chilli-lime-butter,901,2 kg,2026-11-25 07:15,MK,3 tub 500 g,2026-11-20," +
         more + ",," + lot +
         ",,,,\n"
         "input,,901,,,,,,,butter-unsalted,MB-5521,2027-03-15,2026-11-25,,\n"
         "input,,901,,,,,,,lime-zest,LZ-204,2026-12-10,,,\n"
         "cooled,,901,,,,,,,,,,,2026-11-25 08:30,40 °F\n";
}

QStringList codes_of(const std::vector<Page>& pages) {
  QStringList out;
  for (const Page& page : pages) out += page.codes;
  return out;
}

const QByteArray kLot = "A26324CLB901N";

}  // namespace

TEST_CASE("a pad has the labels of each batch, lots of the day of the run, and codes without a date",
          "[command][pad]") {
  const PadKitchen kitchen;
  const Ran ran = kitchen.pad("chilli-lime-butter", "2 tub 500 g", "901-902");
  CHECK(ran.err == "");
  CHECK(ran.status == 0);
  CHECK(ran.out ==
        "pad.pdf: 4 labels, pad_day 2026-11-20\n"
        "  number 901: lot A26324CLB901N\n"
        "  number 902: lot A26324CLB902L\n"
        "No other batch of chilli-lime-butter may have these numbers on that day.\n");
  const std::vector<Page> labels = pages(kitchen.folder, "pad.pdf");
  REQUIRE(labels.size() == 4);
  for (const Page& page : labels) {
    CHECK(page.text.contains("USE BY"));
    CHECK_FALSE(band(page));
    CHECK(unspaced(page.text).contains(unspaced("By the kitchen book of Fri 20 Nov 2026")));
    REQUIRE(page.codes.size() == 1);
    CHECK_FALSE(page.codes.front().contains("?"));
  }
  CHECK(labels[0].text.contains(kLot));
  CHECK(labels[0].codes.front().endsWith("/10/A26324CLB901N/21/A26324901-1"));
}

TEST_CASE("a batch entered from a pad gets labels with the pad's lot, serials and codes, and the date besides",
          "[command][pad][loop]") {
  const PadKitchen kitchen;
  REQUIRE(kitchen.pad("chilli-lime-butter", "3 tub 500 g", "901").status == 0);
  kitchen.folder.write("day.csv", entry(kLot));
  const Ran ran = kitchen.folder.lardiner(
      {"--kitchen", "kitchen", "--at", "2026-11-27T18:00", "labels", "day.csv", "--out", "labels.pdf"});
  CHECK(ran.err == "");
  REQUIRE(ran.status == 0);
  const QStringList pad = codes_of(pages(kitchen.folder, "pad.pdf"));
  const QStringList dated = codes_of(pages(kitchen.folder, "labels.pdf"));
  REQUIRE(pad.size() == 3);
  REQUIRE(dated.size() == 3);
  for (qsizetype i = 0; i < 3; ++i) CHECK(dated[i].startsWith(pad[i] + "?17=261201"));
}

TEST_CASE("dates tell when a batch from a pad was made and when it was recorded", "[command][pad][dates]") {
  const PadKitchen kitchen;
  kitchen.folder.write("day.csv", entry(kLot));
  const QStringList dates = {"--kitchen", "kitchen", "--at", "2026-11-28T18:00", "dates", "day.csv"};
  const Ran ran = kitchen.folder.lardiner(dates);
  CHECK(ran.err == "");
  CHECK(
      ran.out.startsWith("A26324CLB901N  chilli-lime-butter, made Wed 25 Nov 2026 07:15, on a pad of Fri 20 Nov 2026, "
                         "recorded Fri 27 Nov 2026 09:00\n"));
  const QJsonObject batch =
      QJsonDocument::fromJson(kitchen.folder.lardiner(QStringList{"--json"} + dates).out.toUtf8())["batches"][0]
          .toObject();
  CHECK(batch["made_at"].toString() == "2026-11-25T07:15:00-05:00");
  CHECK(batch["recorded_at"].toString() == "2026-11-27T09:00:00-05:00");
  CHECK(batch["pad_day"].toString() == "2026-11-20");
  kitchen.folder.write("day.csv", entry(kLot, ""));  // entered now
  CHECK(kitchen.folder.lardiner(dates).out.contains(", recorded Sat 28 Nov 2026 18:00\n"));
}

TEST_CASE("a record entered within a day, and from no pad, says no more than when it was made",
          "[command][pad][dates]") {
  const SmallKitchen kitchen;
  const auto first_line = [&](const QByteArray& recorded) {
    QByteArray records = kGoodRecords;
    records.replace("use_by,opened\n", "use_by,opened,recorded\n");
    records.replace("4 tub 500 g,,,,\n", "4 tub 500 g,,,,," + recorded + "\n");
    kitchen.folder.write("records.csv", records);
    const Ran ran =
        kitchen.folder.lardiner({"--kitchen", "kitchen", "--at", "2026-11-28T18:00", "dates", "records.csv"});
    CHECK(ran.err == "");
    return ran.out.section(u'\n', 0, 0);
  };
  const QString made = "A26329LBU01R  lime-butter, made Wed 25 Nov 2026 07:40";
  CHECK(first_line("").mid(13) == made.mid(13));
  CHECK(first_line("2026-11-26 07:40").mid(13) == made.mid(13));
  CHECK(first_line("2026-11-26 07:41").mid(13) == made.mid(13) + ", recorded Thu 26 Nov 2026 07:41");
}

TEST_CASE("a batch of which only the day of making is known is shown with no time", "[command][pad][dates]") {
  const SmallKitchen kitchen;
  const auto dates = [&](const QByteArray& made_at, const QStringList& options) {
    QByteArray records = kGoodRecords;
    records.replace("2026-11-25 07:40", made_at);
    kitchen.folder.write("records.csv", records);
    return kitchen.folder
        .lardiner(options + QStringList{"--kitchen", "kitchen", "--at", "2026-11-28T18:00", "dates", "records.csv"})
        .out;
  };
  CHECK(dates("2026-11-25", {}).section(u'\n', 0, 0).endsWith("  lime-butter, made Wed 25 Nov 2026"));
  CHECK(dates("2026-11-25", {"--json"}).contains("\"made_at\": \"2026-11-25\""));
  CHECK(dates("2026-11-25 07:40", {}).section(u'\n', 0, 0).endsWith(", made Wed 25 Nov 2026 07:40"));
  CHECK(dates("2026-11-25 07:40", {"--json"}).contains("\"made_at\": \"2026-11-25T07:40:00-05:00\""));
}

TEST_CASE("refused: a pad of an unknown product, medium, number and container, all at once",
          "[command][pad][refused]") {
  const PadKitchen kitchen;
  const Ran ran = kitchen.folder.lardiner({"--kitchen", "kitchen", "pad", "fish-cakes", "--containers", "2 crate 1 kg",
                                           "--number", "9-3", "--medium", "slide", "--out", "pad.pdf"});
  CHECK(ran.status == 1);
  for (const char* text : {"\"fish-cakes\" is not a product of the book", "did you mean fish-cake?",
                           "--medium: \"slide\" is not a medium of the book",
                           "--number: \"9-3\" is not a running number or a range of them",
                           "--containers: \"crate\" is not a kind of container"})
    CHECK(ran.err.contains(text));
  CHECK(kitchen.folder.entries() == QStringList{"kitchen"});
}

TEST_CASE("refused: a pad of what is for sale, and of what is kept frozen", "[command][pad][refused]") {
  const PadKitchen kitchen;
  const Ran sale = kitchen.pad("tomatillo-salsa", "2 jar 12 oz", "1");
  CHECK(sale.status == 1);
  CHECK(sale.err.contains("no pad of \"tomatillo-salsa\": its jar is for sale"));
  const Ran frozen = kitchen.pad("fish-cake", "2 case 60 pieces", "1");
  CHECK(frozen.err.contains("no pad of \"fish-cake\": its case is kept frozen"));
  CHECK(kitchen.pad("fish-cake", "2 tray 20 pieces", "1").status == 0);
}

TEST_CASE("refused: a pad of a product with a gap, as its label is", "[command][pad][refused]") {
  const SmallKitchen kitchen;
  kitchen.folder.put_fault("kitchen/ingredients.toml", "contains = [\"milk\"], ", "");
  const Ran ran = kitchen.folder.lardiner({"--kitchen", "kitchen", "pad", "lime-butter", "--containers", "2 tub 500 g",
                                           "--number", "1", "--medium", "side", "--out", "pad.pdf"});
  CHECK(ran.status == 1);
  CHECK(ran.err.contains("does not declare its allergens"));
  CHECK(kitchen.as_it_was());
}

TEST_CASE("a pad that does not fit names a medium that holds it, and is not written", "[command][pad][refused]") {
  const PadKitchen kitchen;
  const Ran ran = kitchen.folder.lardiner({"--kitchen", "kitchen", "pad", "chilli-lime-butter", "--containers",
                                           "2 tub 500 g", "--number", "1", "--medium", "lid", "--out", "pad.pdf"});
  CHECK(ran.status == 1);
  CHECK(ran.err.contains("does not fit on \"lid\""));
  CHECK(ran.err.contains("is the smallest medium of the book that holds it"));
  CHECK(kitchen.folder.entries() == QStringList{"kitchen"});
}

TEST_CASE("refused: a pad for two kinds of containers, which a record of fewer would number otherwise",
          "[command][pad][refused]") {
  const PadKitchen kitchen;
  const Ran ran = kitchen.pad("chilli-lime-butter", "2 tub 500 g + 1 tub 1 kg", "901");
  CHECK(ran.status == 2);
  CHECK(ran.err ==
        "--containers: a pad is for containers of one kind\n"
        "  make a pad for each kind, with running numbers of its own\n");
  CHECK(kitchen.folder.entries() == QStringList{"kitchen"});
  CHECK(kitchen.pad("chilli-lime-butter", "2 tub 500 g", "901").status == 0);
  CHECK(kitchen.pad("chilli-lime-butter", "2 crate 500 g", "902").status == 2);
  CHECK(kitchen.pad("chilli-lime-butter", "2 tub 500 g", "9-3").status == 2);
}

TEST_CASE("refused: a pad of more labels than one file holds, before any is made", "[command][pad][refused]") {
  const PadKitchen kitchen;
  const Ran ran = kitchen.pad("fish-cake", "9999 tray 20 pieces", "1-9999");
  CHECK(ran.status == 1);
  CHECK(ran.err ==
        "this pad has 99980001 labels, more than the 4000 of one file\n"
        "  write fewer in --number or --containers, and make the other labels in a pad of their own\n");
  CHECK(kitchen.folder.entries() == QStringList{"kitchen"});
  CHECK(kitchen.pad("fish-cake", "2001 tray 20 pieces", "1-2").status == 1);
  CHECK(kitchen.pad("fish-cake", "2000 tray 20 pieces", "1-2").status == 0);
}

TEST_CASE("a pad takes the place of an old one only when told", "[command][pad][refused]") {
  const PadKitchen kitchen;
  REQUIRE(kitchen.pad("fish-cake", "1 tray 20 pieces", "1").status == 0);
  const QByteArray first = kitchen.folder.read("pad.pdf");
  CHECK(kitchen.pad("fish-cake", "2 tray 20 pieces", "1").status == 1);
  CHECK(kitchen.folder.read("pad.pdf") == first);
  CHECK(kitchen.pad("fish-cake", "1 tray 20 pieces", "1", {"--out", "pad.pdf", "--replace"}).status == 0);
  CHECK(kitchen.folder.read("pad.pdf") == first);  // equal pads are equal byte for byte
  CHECK(kitchen.pad("fish-cake", "1 tray 20 pieces", "1", {"--out", "pad"}).status == 2);
}
