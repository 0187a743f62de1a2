// What a correction, a hold or a recall says of a lot reaches its own labels and whatever is made of it afterwards.
#include "recorded_day.h"

using namespace lardiner::command;

namespace {

const QString kTrays = kDemoKitchen + QStringLiteral("/records/trays.csv");
const QString kMade = QStringLiteral("A26329CLB22F");  // of trays.csv, of the butter MB-5521

struct Evening : RecordedDay {
  Ran now(const QStringList& rest) const { return at("2026-11-25T22:30", rest); }
  void correct(const QStringList& words) const {
    REQUIRE(
        now(QStringList{"record", "by=MK", "at=2026-11-25 22:00", "reason=letter of the supplier"} + words).status ==
        0);
  }
  // What a label of the lot says.
  QString label(const QString& lot, const QString& containers) const {
    const Ran ran = now({"labels", "--lot", lot, "--containers", containers, "--medium", "side", "--out", "label.pdf"});
    INFO(ran.err.toStdString());
    REQUIRE(ran.status == 0);
    REQUIRE(folder.run("rm", {"-f", "words.txt"}).status == 0);
    REQUIRE(folder.run("pdftotext", {"label.pdf", "words.txt"}).status == 0);
    REQUIRE(folder.run("rm", {"label.pdf"}).status == 0);
    return QString::fromUtf8(folder.read("words.txt")).simplified();
  }
};

}  // namespace

TEST_CASE("the corrected date of a lot stands on its labels, chilled and frozen, and in its history",
          "[command][ledger][corrected]") {
  const Evening day;
  CHECK(day.label("A26329CLB03L", "4").contains("TUE 01 DEC"));
  day.correct({"event=correction", "lot=A26329CLB03L", "use_by=2026-11-28"});
  const QString chilled = day.label("A26329CLB03L", "4");
  CHECK(chilled.contains("SAT 28 NOV"));
  CHECK_FALSE(chilled.contains("TUE 01 DEC"));
  CHECK(day.label("A26329CLB03L", "25").contains("Never past Sat 28 Nov 2026"));
  CHECK(day.now({"history", "A26329CLB03L"}).out.contains("use by Sat 28 Nov 2026"));
}

TEST_CASE("the corrected date of a supplier's lot counts in a batch recorded afterwards",
          "[command][ledger][corrected]") {
  const Evening day;
  day.correct({"event=correction", "lot=MB-5521", "item=butter-unsalted", "use_by=2026-11-27"});
  REQUIRE(day.now({"record", kTrays}).status == 0);
  CHECK(day.now({"history", kMade}).out.contains("use by Fri 27 Nov 2026"));
}

TEST_CASE("the corrected date of a supplier's lot reaches what was made of it before, which is told",
          "[command][ledger][corrected]") {
  const Evening day;
  REQUIRE(day.now({"record", kTrays}).status == 0);
  const Ran ran = day.now({"record", "event=correction", "by=MK", "at=2026-11-25 22:10", "lot=MB-5521",
                           "item=butter-unsalted", "use_by=2026-11-27", "reason=letter of the supplier"});
  REQUIRE(ran.status == 0);
  INFO(ran.out.toStdString());
  CHECK(ran.out.contains("touches Chilli-lime butter, lot " + kMade));
  CHECK(ran.out.contains("new label needed: lot " + kMade));
  CHECK(day.now({"history", kMade}).out.contains("use by Fri 27 Nov 2026"));
  CHECK(day.label(kMade, "1").contains("FRI 27 NOV"));
  CHECK(day.now({"verify", "--rebuild"}).status == 0);
  CHECK(day.now({"history", kMade}).out.contains("use by Fri 27 Nov 2026"));
}

TEST_CASE("a lot of ours that is past its corrected date is refused as an input", "[command][ledger][corrected]") {
  const Evening day;
  day.correct({"event=correction", "lot=A26329SPS018", "use_by=2026-11-24"});
  const Ran ran = day.now({"record", kTrays});
  CHECK(ran.status == 1);
  CHECK(ran.err.contains("A26329SPS018"));
}

TEST_CASE("an allergen that a correction adds is declared by a batch recorded afterwards",
          "[command][ledger][corrected]") {
  const Evening day;
  const QStringList sesame{"event=correction", "item=butter-unsalted", "supplier_item=meadowfold-butter-25",
                           "adds=sesame"};
  day.correct(sesame);
  REQUIRE(day.now({"record", kTrays}).status == 0);
  CHECK(day.label(kMade, "1").contains("CONTAINS milk, sesame"));
}

TEST_CASE("a package that comes after its supplier's correction is told of, and so is what is made of it",
          "[command][ledger][corrected]") {
  const Evening day;
  day.correct({"event=correction", "item=butter-unsalted", "supplier_item=meadowfold-butter-25", "adds=sesame"});
  const auto receive = [&](const QString& lot) {
    return day.now({"record", "event=received", "by=MK", "at=2026-11-25 22:20", "item=butter-unsalted",
                    "supplier_item=meadowfold-butter-25", "lot=" + lot, "quantity=20 kg", "temperature=38 °F"});
  };
  const Ran came = receive("MB-9000");
  REQUIRE(came.status == 0);
  CHECK(
      came.err.contains("lot MB-9000 contains sesame besides what its supplier's item declares, as a correction says"));
  CHECK(day.now({"history", "MB-9000"}).out.contains("  contains: milk, sesame\n"));
  // Once somebody has read the declaration anew the book knows better.
  const QString book = "kitchen/ingredients-dairy.toml";
  QByteArray text = day.folder.read(book);
  REQUIRE(text.contains("2026-02-11, source = \"specification sheet, revision 6\""));
  text.replace("2026-02-11, source", "2026-11-26, source");
  day.folder.write(book, text);
  const Ran later = day.at(
      "2026-11-26T08:00", {"record", "event=received", "by=MK", "at=2026-11-26 07:20", "item=butter-unsalted",
                           "supplier_item=meadowfold-butter-25", "lot=MB-9001", "quantity=20 kg", "temperature=38 °F"});
  REQUIRE(later.status == 0);
  CHECK_FALSE(later.err.contains("sesame"));
  CHECK(day.at("2026-11-26T08:00", {"history", "MB-9001"}).out.contains("  contains: milk\n"));
}

TEST_CASE("a correction reaches what the formula has and no record names, before and afterwards",
          "[command][ledger][corrected]") {
  const Evening day;
  const Ran ran = day.now({"record", "event=correction", "by=MK", "at=2026-11-25 22:10", "item=salt-fine",
                           "supplier_item=kestrel-salt-25", "adds=mustard", "reason=letter"});
  REQUIRE(ran.status == 0);
  CHECK(ran.out.contains("touches Smoked-pepper seasoning, lot A26329SPS018"));
  CHECK(ran.out.contains("touches Chilli-lime butter, lot A26329CLB03L"));  // of the seasoning
  REQUIRE(day.now({"record", kTrays}).status == 0);
  CHECK(day.now({"history", kMade}).out.contains("mustard"));
}

TEST_CASE("labels of a file are not printed of a batch whose lots nobody wrote, where a correction adds to them",
          "[command][ledger][corrected]") {
  const Evening day;
  day.folder.write("salsa.csv",
                   "product,number,quantity,made_at,by,containers\n"
                   "smoked-pepper-seasoning,77,2 kg,2026-11-25 21:00,MK,2 tub 1 kg\n");
  const Ran before = day.now({"labels", "salsa.csv", "--out", "before"});
  INFO(before.err.toStdString());
  REQUIRE(before.status == 0);
  day.correct({"event=correction", "item=salt-fine", "supplier_item=kestrel-salt-25", "adds=mustard"});
  const Ran after = day.now({"labels", "salsa.csv", "--out", "after"});
  CHECK(after.status == 1);
  CHECK(after.err.contains("is without mustard, which a correction adds to what went into it"));
}

TEST_CASE("an allergen with its species that a correction adds stands on labels as the book would have it",
          "[command][ledger][corrected]") {
  const Evening day;
  day.correct({"event=correction", "item=butter-unsalted", "supplier_item=meadowfold-butter-25", "adds=fish:cod"});
  CHECK(day.label("A26329CLB03L", "4").contains("CONTAINS milk, fish (cod)"));
  REQUIRE(day.now({"record", kTrays}).status == 0);
  CHECK(day.label(kMade, "1").contains("CONTAINS milk, fish (cod)"));
}

TEST_CASE("labels of a file are not printed of a batch whose input is recalled, held or corrected",
          "[command][ledger][corrected]") {
  const Evening day;
  REQUIRE(day.now({"labels", kTrays, "--out", "before"}).status == 0);
  day.correct({"event=correction", "lot=MB-5521", "item=butter-unsalted", "use_by=2026-11-27"});
  const Ran corrected = day.now({"labels", kTrays, "--out", "corrected"});
  CHECK(corrected.status == 1);
  CHECK(corrected.err.contains("lot MB-5521, which went into it, has changed since it came"));
  day.correct({"event=recall", "lot=MB-5521", "item=butter-unsalted"});
  const Ran recalled = day.now({"labels", kTrays, "--out", "recalled"});
  CHECK(recalled.status == 1);
  CHECK(recalled.err.contains("lot MB-5521, which went into it, is in a recall"));
}

TEST_CASE("a receipt recorded after what was made of it shortens that too, and it is told",
          "[command][ledger][corrected]") {
  const Evening day;
  CHECK(day.now({"history", "A26329EMD06M"}).out.contains("use by Fri 27 Nov 2026"));
  const Ran late =
      day.now({"record", "event=received", "lot=SE-4417", "item=egg-liquid", "supplier_item=stonebarn-liquid-2",
               "quantity=20 lb", "use_by=2026-11-26", "temperature=38 °F", "by=MK", "at=2026-11-24 09:00"});
  REQUIRE(late.status == 0);
  CHECK(late.out.contains("lot A26329EMD06M"));
  CHECK(late.out.contains("new label needed: lot A26329EMD06M"));
  CHECK(day.now({"history", "A26329EMD06M"}).out.contains("use by Thu 26 Nov 2026"));
  REQUIRE(day.now({"verify", "--rebuild"}).status == 0);
  CHECK(day.now({"history", "A26329EMD06M"}).out.contains("use by Thu 26 Nov 2026"));
}

TEST_CASE("the sites that have what was corrected are named, and its arrival is warned of",
          "[command][ledger][corrected][warned]") {
  const Evening day;
  REQUIRE(day.now({"record", kDemoKitchen + "/events/evening.csv"}).status == 0);
  const Ran ran = day.now({"record", "event=correction", "by=MK", "at=2026-11-25 22:10", "lot=A26329CTN081",
                           "use_by=2026-11-25", "reason=a letter"});
  REQUIRE(ran.status == 0);
  CHECK(ran.out.contains(
      "call orchard-hill-school: it has lot A26329CTN081, containers 7-9, whose labels do not say so"));
  const Ran arrived = day.at("2026-11-26T08:30", {"record", "event=arrived", "note=DN-312", "accepted=yes",
                                                  "temperature=40 °F", "by=JO", "at=2026-11-26 08:20"});
  CHECK(arrived.status == 0);
  CHECK(arrived.err.contains(
      "container 7 of lot A26329CTN081 arrived at orchard-hill-school, and must not be served: past"));
  const Ran due = day.at("2026-11-25T22:30", {"due"});
  CHECK_FALSE(due.out.contains("NOT TO BE USED"));
}

TEST_CASE("the record of a day has the corrections of that day, with who and why", "[command][ledger][corrected]") {
  const Evening day;
  day.correct({"event=correction", "lot=A26329CLB03L", "use_by=2026-11-28"});
  day.correct({"event=correction", "item=butter-unsalted", "supplier_item=meadowfold-butter-25", "adds=sesame"});
  const QString record = day.now({"--json", "day-record", "2026-11-25"}).out.simplified();
  CHECK(record.contains("Corrections of dates and allergens"));
  CHECK(record.contains("CORRECTED"));
  CHECK(record.contains("Sat 28 Nov 2026"));
  CHECK(record.contains("sesame"));
  CHECK(record.contains("letter of the supplier"));
}

TEST_CASE("labels of what is past its date are warned of", "[command][ledger][corrected]") {
  const Evening day;
  day.correct({"event=correction", "lot=A26329CLB03L", "use_by=2026-11-24"});
  const Ran past =
      day.now({"labels", "--lot", "A26329CLB03L", "--containers", "4", "--medium", "side", "--out", "p.pdf"});
  CHECK(past.err.contains("warning: lot A26329CLB03L, containers 4: past their date; discard them"));
  const Ran good = day.now({"labels", "--lot", "A26329CTN081", "--containers", "1", "--out", "g"});
  CHECK_FALSE(good.err.contains("past their date"));
}
