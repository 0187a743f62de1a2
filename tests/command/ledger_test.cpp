// The ledger from the command line, on the demo kitchen's day: recorded, scanned, told, traced, verified, printed
// again.
#include <QFile>

#include "our_book.h"
#include "program.h"
#include "recorded_day.h"

using namespace lardiner::command;

TEST_CASE("a recorded day verifies, and its file is the station's in the kitchen's folder", "[command][ledger]") {
  const RecordedDay day;
  CHECK(QFile::exists(day.folder.path("kitchen/ledger/A.sqlite")));
  const Ran verified = day.evening({"verify"});
  CHECK(verified.status == 0);
  CHECK(verified.out.startsWith("station A: 35 entries, head A-35-"));
  CHECK(verified.err == "");
  CHECK(day.evening({"verify", "--rebuild"}).out == verified.out);
  const QString head = verified.out.trimmed().section(' ', -1);
  CHECK(day.evening({"verify", "--head", head}).status == 0);
  CHECK(day.evening({"verify", "--head", "A-35"}).status == 2);
}

TEST_CASE("what is recorded already is not recorded again, and nothing of the file is", "[command][ledger]") {
  const RecordedDay day;
  const Ran again = day.evening({"record", kDemoDay});
  CHECK(again.status == 1);
  CHECK(again.err.contains("lot A26329SPS018 was made and recorded before\n"));
  CHECK(day.evening({"verify"}).out.startsWith("station A: 35 entries"));
}

TEST_CASE("one event is recorded from words, and asks for a new label", "[command][ledger]") {
  const RecordedDay day;
  const Ran frozen =
      day.evening({"record", "event=frozen", "lot=A26329CLB03L", "containers=5-8", "by=JO", "at=2026-11-25 21:40"});
  CHECK(frozen.err == "");
  CHECK(frozen.out ==
        "A-36  Wed 25 Nov 2026 21:40  frozen, lot A26329CLB03L, containers 5-8, JO\n"
        "new label needed: lot A26329CLB03L, containers 5-8 (lardiner labels --lot A26329CLB03L)\n");
  CHECK(frozen.status == 0);
}

TEST_CASE("words that cannot be an event are refused, each", "[command][ledger]") {
  const RecordedDay day;
  const Ran ran = day.evening({"record", "event=frozen", "lot=A26329CLB03X", "by=JO", "at=2026-11-25 21:40"});
  CHECK(ran.status == 1);
  CHECK(ran.err.contains("A26329CLB03X"));
  CHECK(day.evening({"record", "event=frozen", "event=thawed"}).err == "\"event\" is given twice\n  leave one out\n");
  CHECK(day.evening({"record", "event=frozen", "x"}).err ==
        "\"x\" is neither a file nor KEY=VALUE\n  write it as event=frozen\n");
  CHECK(day.evening({"record", "no-such.csv"}).status == 1);
}

TEST_CASE("the label of a lid says that it is a reprint, in the place of the initials", "[command][ledger][label]") {
  const RecordedDay day;
  const QStringList lid{"labels", "--lot", "A26329CLB03L", "--containers", "4", "--medium", "lid", "--out"};
  REQUIRE(day.evening(lid + QStringList{"first.pdf"}).status == 0);
  CHECK_FALSE(day.folder.run("pdftotext", {"first.pdf", "-"}).out.contains("REPRINT"));
  const Ran again = day.evening(lid + QStringList{"again.pdf"});
  CHECK(again.err == "");
  REQUIRE(again.status == 0);
  CHECK(day.folder.run("pdftotext", {"again.pdf", "-"}).out.contains("REPRINT"));
}

TEST_CASE("a record of a file is not printed with another date than the ledger has, or without an allergen",
          "[command][ledger]") {
  Folder folder;
  folder.copy_book(kDemoKitchen, "kitchen");
  const auto run = [&](const QStringList& rest) {
    return folder.lardiner(QStringList{"--kitchen", "kitchen", "--at", "2026-11-25T20:00"} + rest);
  };
  const QByteArrayList lines = bytes_of(kDemoDayJson).split('\n');
  const QByteArray seasoning = lines.at(0) + '\n', butter = lines.at(2) + '\n';
  folder.write("recorded.jsonl", seasoning + QByteArray(butter).replace("2027-03-15", "2026-11-28"));
  folder.write("as-written.jsonl", seasoning + butter);
  REQUIRE(run({"record", "recorded.jsonl"}).status == 0);
  const Ran later = run({"labels", "as-written.jsonl", "--out", "later"});
  CHECK(later.status == 1);
  CHECK(later.err.contains("lot A26329CLB03L is recorded with another date\n"));
  CHECK(later.err.contains("  print what holds now: lardiner labels --lot A26329CLB03L\n"));
  CHECK(run({"labels", "recorded.jsonl", "--out", "same"}).status == 0);
  // The book has learnt of an allergen since: neither is printed before a correction says so.
  folder.put_fault("kitchen/ingredients-dairy.toml",
                   R"("meadowfold-butter-25", supplier = "Meadowfold Dairy", contains = ["milk"])",
                   R"("meadowfold-butter-25", supplier = "Meadowfold Dairy", contains = ["milk", "soy"])");
  const Ran more = run({"labels", "recorded.jsonl", "--out", "more"});
  CHECK(more.status == 1);
  CHECK(more.err.contains("lot A26329CLB03L is recorded without soy\n"));
  REQUIRE(run({"record", "event=correction", "by=MK", "at=2026-11-25 19:00", "item=butter-unsalted",
               "supplier_item=meadowfold-butter-25", "adds=soy", "reason=letter of the supplier"})
              .status == 0);
  CHECK(run({"labels", "recorded.jsonl", "--out", "more"}).err.contains("print what holds now"));
  REQUIRE(run({"labels", "--lot", "A26329CLB03L", "--medium", "side", "--out", "now.pdf"}).status == 0);
  CHECK(folder.run("pdftotext", {"now.pdf", "-"}).out.contains("SOY", Qt::CaseInsensitive));
}

TEST_CASE("the labels of a frozen tub are printed anew, then as a reprint, and the old one is superseded",
          "[command][ledger]") {
  const RecordedDay day;
  REQUIRE(day.evening({"labels", "--lot", "A26329CLB03L", "--containers", "5", "--medium", "side", "--out", "old.pdf"})
              .status == 0);
  REQUIRE(day.evening({"record", "event=frozen", "lot=A26329CLB03L", "containers=5", "by=JO", "at=2026-11-25 21:40"})
              .status == 0);
  // The record of the file would print what held before.
  const Ran stale = day.evening({"labels", kDemoDay, "--out", "labels"});
  CHECK(stale.status == 1);
  CHECK(stale.err.contains("lot A26329CLB03L has changed since it was recorded\n"));
  const Ran scanned = day.evening({"scan", "old.pdf"});
  CHECK(scanned.status == 0);
  CHECK(scanned.out.contains("old.pdf: a label of lot A26329CLB03L, container 5\n"));
  CHECK(
      scanned.out.contains("SUPERSEDED: this label shows use by Tue 01 Dec 2026, and since then frozen on Wed 25 Nov "
                           "2026 holds; it needs a new label\n"));
  REQUIRE(day.evening({"labels", "--lot", "A26329CLB03L", "--containers", "5", "--medium", "side", "--out", "new.pdf"})
              .status == 0);
  CHECK_FALSE(day.folder.run("pdftotext", {"new.pdf", "-"}).out.contains("REPRINT"));
  CHECK_FALSE(day.evening({"scan", "new.pdf"}).out.contains("SUPERSEDED"));
  CHECK(day.evening({"scan", "old.pdf"}).out.contains("SUPERSEDED"));
  REQUIRE(
      day.evening({"labels", "--lot", "A26329CLB03L", "--containers", "5", "--medium", "side", "--out", "again.pdf"})
          .status == 0);
  CHECK(day.folder.run("pdftotext", {"again.pdf", "-"}).out.contains("REPRINT"));
  const QString history = day.evening({"history", "A26329CLB03L"}).out;
  CHECK(history.count(" printed, lot") == 2);
  CHECK(history.count(" reprinted, lot") == 1);
}

TEST_CASE("a slip in a lot typed by hand is caught, and the lot offered", "[command][ledger]") {
  const RecordedDay day;
  const Ran slip = day.evening({"scan", "A26329CLB03M"});
  CHECK(slip.status == 1);
  CHECK(slip.out == "A26329CLB03M is no lot of ours: its check character does not hold; near it: A26329CLB03L\n");
  const Ran right = day.evening({"scan", "a26329clb03l"});
  CHECK(right.status == 0);
  CHECK(right.out.startsWith(
      "lot A26329CLB03L\nChilli-lime butter, lot A26329CLB03L, made Wed 25 Nov 2026 07:15 by MK\n"));
}

TEST_CASE("a code that is not ours is named for what it is", "[command][ledger]") {
  const RecordedDay day;
  CHECK(day.evening({"scan", "4006381333931"}).out ==
        "an item number (GTIN) 4006381333931: not a label of this kitchen\n");
  CHECK(day.evening({"scan", "https://example.org/menu"}).out ==
        "an address that is no label of this kitchen: https://example.org/menu\n");
  CHECK(day.evening({"scan", "https://id.example.org/01/04006381333931/10/HW-1"}).out ==
        "a GS1 Digital Link of https://id.example.org: item number 04006381333931, lot HW-1\n");
}

TEST_CASE("the evening's events are recorded, and due tells what is left to do", "[command][ledger]") {
  const RecordedDay day;
  REQUIRE(day.evening({"record", kDemoKitchen + "/events/evening.csv"}).status == 0);
  const Ran due = day.at("2026-11-27T06:00", {"due", "--days", "0"});
  CHECK(due.status == 0);
  CHECK(due.out.contains("Discard: past their date:\n"));
  CHECK(due.out.contains("  Thu 26 Nov 2026  Fish cakes, lot A26329FCK15Q, tray 1-6\n"));
  CHECK(due.out.contains("Last good day is today:\n"));
  CHECK(due.out.contains("  Fri 27 Nov 2026  Sesame slaw, lot A26329SSL12A, tub 1-4, walk-in 1\n"));
  CHECK_FALSE(due.out.contains("Use first"));
  CHECK(due.out.endsWith("On hand as recorded; last counted: walk-in 1 Wed 25 Nov 2026 21:20\n"));
}

TEST_CASE("the record of a day has each cooling reading with who took it", "[command][ledger]") {
  const RecordedDay day;
  REQUIRE(
      day.evening({"record", "event=cooled", "at=2026-11-25 14:05", "lot=A26329CTN081", "temperature=39 °F", "by=LV"})
          .status == 0);
  const QString record = day.evening({"day-record", "2026-11-25"}).out.replace(QChar(0x00A0), ' ');
  CHECK(record.contains("14:05 39 °F LV"));
  CHECK(record.contains("13:10 40 °F JO"));
}

TEST_CASE("a lot leads back to what it was made of, and its amounts balance", "[command][ledger]") {
  const RecordedDay day;
  const QString out = day.evening({"trace", "MB-5521"}).out;
  CHECK(out.contains(
      "  Chilli-lime butter, lot A26329CLB03L, 35 lb 4.4 oz\n    Fish cakes, lot A26329FCK15Q, 2 lb 10.3 oz\n"));
  CHECK(
      out.contains("Balance: made 75 lb = used 35 lb 4.4 oz + dispatched 0 oz + discarded 0 oz + missing 0 oz + on "
                   "hand 39 lb 11.6 oz; not balanced: nobody wrote how much 1 batch took\n"));
  const QString back = day.evening({"trace", "A26329FCK15Q"}).out;
  CHECK(back.contains("Unsalted butter, lot MB-5521"));
}

TEST_CASE("a recall stops labels, plan and use of all that holds the lot", "[command][ledger]") {
  const RecordedDay day;
  REQUIRE(day.evening({"record", "event=recall", "lot=MB-5521", "item=butter-unsalted", "by=MK", "at=2026-11-25 21:30",
                       "reason=the supplier called"})
              .status == 0);
  const Ran labels = day.evening({"labels", "--lot", "A26329FCK15Q", "--out", "labels"});
  CHECK(labels.status == 1);
  CHECK(labels.err.contains("lot A26329FCK15Q is in an open recall"));
  CHECK(day.evening({"scan", "A26329FCK15Q"}).out.contains("IN A RECALL"));
  const Ran plan = day.at("2026-11-26T05:30", {"--json", "plan", kDemoKitchen + "/orders/day.csv"});
  CHECK_FALSE(plan.out.contains("A26329CLB03L"));
  REQUIRE(
      day.evening({"record", "event=recall-closed", "of=A-36", "by=MK", "at=2026-11-25 21:40", "reason=another lot"})
          .status == 0);
  CHECK(day.evening({"labels", "--lot", "A26329FCK15Q", "--out", "labels"}).status == 0);
}

TEST_CASE("a correction of what a supplier declares lists every lot that it touches", "[command][ledger]") {
  const RecordedDay day;
  const Ran ran =
      day.evening({"record", "event=correction", "item=butter-unsalted", "supplier_item=meadowfold-butter-25",
                   "adds=sesame", "by=MK", "at=2026-11-25 21:30", "reason=letter of the supplier"});
  CHECK(ran.status == 0);
  for (const char* lot :
       {"Unsalted butter, lot MB-5521", "Chilli-lime butter, lot A26329CLB03L", "Mashed potato, lot A26329MPT13F",
        "Fish cakes, lot A26329FCK15Q", "Fish cakes, lot A26329FCK16O"})
    CHECK(ran.out.contains(QStringLiteral("  touches %1\n").arg(lot)));
  CHECK_FALSE(ran.out.contains("A26329TMS04I"));
  CHECK(ran.out.contains("new label needed: lot A26329CLB03L, containers 4-30 (lardiner labels --lot A26329CLB03L)\n"));
  CHECK(day.evening({"history", "A26329FCK15Q"}).out.contains("sesame"));
}

TEST_CASE("a batch of the next day takes dates and allergens of a lot that was recorded", "[command][ledger]") {
  const RecordedDay day;
  day.folder.write("next.csv", "row,product,number,quantity,made_at,by,containers,item,lot,quantity_used\n");
  day.folder.write("next.jsonl",
                   "{\"product\": \"roasted-vegetables\", \"number\": 31, \"quantity\": \"4 kg\", \"made_at\": "
                   "\"2026-11-26 07:00\", \"by\": \"LV\","
                   " \"containers\": \"2 bag 2 kg\", \"inputs\": [{\"item\": \"smoked-pepper-seasoning\", \"lot\": "
                   "\"A26329SPS018\"},"
                   " {\"item\": \"corn-frozen\", \"lot\": \"HW-80417\", \"best_before\": \"2027-10-31\"}, {\"item\": "
                   "\"soybean-oil\", \"lot\": \"HW-81100\", \"best_before\": \"2027-04-30\"}],"
                   " \"cooked\": [{\"at\": \"2026-11-26 08:00\", \"core\": \"170 °F\", \"held\": \"15 s\"}]}\n");
  const Ran ran = day.at("2026-11-26T08:30", {"record", "next.jsonl"});
  INFO(ran.err.toStdString());
  CHECK(ran.status == 0);
  CHECK(ran.out.contains("NOT RELEASED: not released, cooling is not shown yet"));
  CHECK(day.at("2026-11-26T08:30", {"due"}).out.contains("Cooling: the next temperature must be reached by:\n"));
  CHECK(day.at("2026-11-26T08:30", {"trace", "A26329SPS018"}).out.contains("Roasted vegetables, lot A26330RVG"));
}

TEST_CASE("a backup becomes a ledger again, and nothing is written over", "[command][ledger]") {
  const RecordedDay day;
  const Ran made = day.evening({"backup", "copy.sqlite"});
  CHECK(made.status == 0);
  CHECK(made.out.startsWith("copy.sqlite: verified\nstation A: 35 entries, head A-35-"));
  const Ran over = day.evening({"restore", "copy.sqlite"});
  CHECK(over.status == 1);
  CHECK(over.err == "kitchen/ledger/A.sqlite: there is a file already\n  name another; nothing is written over\n");
  CHECK(day.evening({"--ledger", "other.sqlite", "restore", "copy.sqlite"}).status == 0);
  CHECK(day.evening({"--ledger", "other.sqlite", "verify"}).out == day.evening({"verify"}).out);
}

TEST_CASE("without a ledger its reports say what to do", "[command][ledger]") {
  const Folder folder;
  folder.copy_book(kDemoKitchen, "kitchen");
  for (const char* command : {"due", "verify", "history A26329CLB03L", "trace A26329CLB03L", "scan A26329CLB03L"}) {
    const Ran ran = folder.lardiner(QStringList{"--kitchen", "kitchen"} + words(command));
    CHECK(ran.status == 1);
    CHECK(ran.err ==
          "kitchen/ledger/A.sqlite: there is no ledger yet\n  record something first (lardiner record), or name the "
          "file with --ledger\n");
  }
}

TEST_CASE("a code whose item number or serial is not that of the lot is no label of ours, and neither is another's",
          "[command][ledger][scan]") {
  const RecordedDay day;
  const QString address = "https://quarrylane.example", gtin = "/01/00417000001034", lot = "/10/A26329CLB03L";
  const auto said = [&](const QString& code) { return day.evening({"scan", code}); };
  CHECK(said(address + gtin + lot + "/21/A2632903-4?17=261201")
            .out.startsWith("a label of lot A26329CLB03L, container 4\n"));
  CHECK(
      said("HTTP://QuarryLane.EXAMPLE" + gtin + lot + "/21/A2632903-4").out.startsWith("a label of lot A26329CLB03L"));
  const Ran number = said(address + "/01/00417000004042" + lot + "/21/A2632903-4?17=261201");
  CHECK(number.status == 1);
  CHECK(number.out == "no label of this kitchen: item number 00417000004042 is not that of lot A26329CLB03L\n");
  const Ran serial = said(address + gtin + lot + "/21/ZZZ-4");
  CHECK(serial.status == 1);
  CHECK(serial.out == "no label of this kitchen: lot A26329CLB03L has no container with the serial ZZZ-4\n");
  CHECK(said(address + gtin).out == "no label of this kitchen: item number 00417000001034 without a lot\n");
  const Ran theirs = said("https://elsewhere.example" + gtin + lot + "/21/A2632903-4?17=301201");
  CHECK(theirs.out.endsWith("; it is not the label of our lot of that name\n"));
}

TEST_CASE("a lot is found in small letters and with blanks, also one with a stroke", "[command][ledger][scan]") {
  const RecordedDay day;
  for (const char* command : {"history", "trace", "scan"})
    CHECK(day.evening({command, "a26329 clb03l"}).out.contains("A26329CLB03L"));
  CHECK(day.evening({"history", "A26329CLB03L", "--item", "butter"})
            .err.contains("lot A26329CLB03L is of chilli-lime-butter, not of butter"));
  REQUIRE(day.evening({"record", "event=received", "by=MK", "at=2026-11-25 21:00", "item=salt-fine", "lot=MB/77",
                       "quantity=25 lb", "place=walk-in 1"})
              .status == 0);
  CHECK(day.evening({"scan", "MB/77"}).out.contains("Salt, lot MB/77, received"));
}

TEST_CASE("a balance of which some uses are not written does not balance, and says so", "[command][ledger][trace]") {
  const RecordedDay day;
  CHECK(day.evening({"trace", "MB-5521"}).out.contains("not balanced: nobody wrote how much 1 batch took"));
  CHECK_FALSE(day.evening({"trace", "A26329CTN081"}).out.contains("nobody wrote how much"));
}

TEST_CASE("what was not seen at the close of day is missing, and not good", "[command][ledger]") {
  const RecordedDay day;
  REQUIRE(day.evening({"record", "event=counted", "by=RT", "at=2026-11-25 21:20", "lot=A26329CLB03L", "containers=4-6",
                       "left=none"})
              .status == 0);
  CHECK(day.evening({"history", "A26329CLB03L"}).out.contains("containers 4-6: missing"));
}
