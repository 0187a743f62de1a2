// Exit statuses: wrong usage 2, the input's fault 1, and what is printed then; out is never overwritten unasked.
#include <QFile>
#include <QRegularExpression>

#include "small_kitchen.h"

using namespace lardiner::command;

TEST_CASE("wrong usage exits with 2 and says what was not understood", "[command][usage][src:practice]") {
  const SmallKitchen kitchen;
  const std::vector<std::pair<QStringList, QString>> cases = {
      {{"records.csv", "--out", "labels", "--wrong"}, "The following argument was not expected: --wrong"},
      {{"records.csv"}, "--out is required"},
      {{"records.csv", "--out", "labels", "--format", "xlsx"}, "--format: xlsx not in {csv,jsonl}"}};
  for (const auto& [arguments, said] : cases) {
    const Ran ran = kitchen.labels(arguments);
    INFO(arguments.join(u' ').toStdString());
    CHECK(ran.status == 2);
    CHECK(ran.out == "");
    CHECK(ran.err == said + "\nRun with --help for more information.\n");
    CHECK(kitchen.as_it_was());
  }
  const Ran nothing = kitchen.labels({"--out", "labels"});
  CHECK(nothing.status == 2);
  CHECK(nothing.err ==
        "nothing is named to print labels of\n  name a file of batch records, or a lot of the ledger with --lot\n");
  CHECK(kitchen.folder.lardiner({"print"}).status == 2);
  CHECK(kitchen.folder.lardiner({}).status == 2);
}

TEST_CASE("help exits with 0 and says what each exit status means", "[command][usage][src:practice]") {
  const SmallKitchen kitchen;
  const Ran ran = kitchen.folder.lardiner({"--help"});
  CHECK(ran.status == 0);
  CHECK(ran.err == "");
  CHECK(ran.out.contains("Exit status: 0 done; 1 the book or the records are at fault; 2 wrong usage;"));
}

TEST_CASE("a folder without a book, and records that are not there, are the input's fault",
          "[command][usage][src:practice]") {
  const SmallKitchen kitchen;
  const Ran book = kitchen.folder.lardiner({"--kitchen", "nowhere", "labels", "records.csv", "--out", "labels"});
  CHECK(book.status == 1);
  CHECK(book.err ==
        "nowhere: there is no kitchen book in this folder\n"
        "  name the folder that holds kitchen.toml: lardiner --kitchen DIR …\n");
  const Ran records = kitchen.labels({"nothing.csv", "--out", "labels"});
  CHECK(records.status == 1);
  CHECK(records.err ==
        "nothing.csv: there is no such file\n"
        "  see that the path is right, seen from the current folder\n");
  kitchen.folder.write("records.csv", kGoodRecords.split('\n').front() + '\n');
  const Ran empty = kitchen.labels({"records.csv", "--out", "labels"});
  CHECK(empty.status == 1);
  CHECK(empty.err ==
        "records.csv: there is no batch record in it\n"
        "  add a row for each batch under the header row\n");
  CHECK(kitchen.as_it_was());
}

TEST_CASE("an out folder that holds something is refused, and with --replace it is replaced whole",
          "[command][usage][src:practice]") {
  const SmallKitchen kitchen;
  REQUIRE(kitchen.labels({"records.csv", "--out", "labels"}).status == 0);
  kitchen.folder.write("labels/side.pdf", "of yesterday");
  const QByteArray lid = kitchen.folder.read("labels/lid.pdf");

  const Ran refused = kitchen.labels({"records.csv", "--out", "labels"});
  CHECK(refused.status == 1);
  CHECK(refused.err ==
        "labels: there is something of that name already\n"
        "  name a new folder, or say --replace to let the new one take its place\n");
  CHECK(kitchen.folder.entries("labels") == QStringList{"lid.pdf", "side.pdf"});

  kitchen.folder.write("labels/lid.pdf", "of yesterday");
  CHECK(kitchen.labels({"records.csv", "--out", "labels", "--replace"}).status == 0);
  CHECK(kitchen.folder.entries("labels") == QStringList{"lid.pdf"});
  CHECK((kitchen.folder.read("labels/lid.pdf") == lid));
  CHECK(kitchen.folder.entries() == QStringList{"kitchen", "labels", "records.csv"});
}

TEST_CASE("a refused run with --replace leaves what was there as it was", "[command][usage][src:practice]") {
  const SmallKitchen kitchen;
  REQUIRE(kitchen.labels({"records.csv", "--out", "labels"}).status == 0);
  const QByteArray lid = kitchen.folder.read("labels/lid.pdf");
  kitchen.folder.write("records.csv", QByteArray(kGoodRecords).replace("2026-11-25 08:00", "31/02"));
  CHECK(kitchen.labels({"records.csv", "--out", "labels", "--replace"}).status == 1);
  CHECK((kitchen.folder.read("labels/lid.pdf") == lid));
  CHECK(kitchen.folder.entries() == QStringList{"kitchen", "labels", "records.csv"});
}

TEST_CASE("one PDF may be named where one medium is used; with several it is refused, naming the remedy",
          "[command][usage][src:practice]") {
  const SmallKitchen kitchen;
  const Ran one = kitchen.labels({"records.csv", "--out", "labels.pdf"});
  CHECK(one.status == 0);
  CHECK(one.out == "labels.pdf: 8 labels\n");
  CHECK(kitchen.folder.entries() == QStringList{"kitchen", "labels.pdf", "records.csv"});

  const Folder folder;
  const Ran several = folder.lardiner({"--kitchen", kDemoKitchen, "labels", kDemoDay, "--out", "day.pdf"});
  CHECK(several.status == 1);
  CHECK(several.out == "");
  CHECK(several.err ==
        "day.pdf: these labels need 4 files: one for each medium, of at most 4000 labels\n"
        "  name a folder with --out, or one medium with --medium\n");
  CHECK(folder.entries().isEmpty());
}

TEST_CASE("--medium prints every label on that medium of the book", "[command][usage][src:practice]") {
  const SmallKitchen kitchen;
  CHECK(kitchen.labels({"records.csv", "--out", "labels", "--medium", "side"}).out == "labels/side.pdf: 8 labels\n");
}

TEST_CASE("a folder that is named by a link is replaced as well, and no draft is left",
          "[command][usage][src:practice]") {
  const SmallKitchen kitchen;
  REQUIRE(kitchen.labels({"records.csv", "--out", "real"}).status == 0);
  REQUIRE(QFile::link("real", kitchen.folder.path("labels")));
  CHECK(kitchen.labels({"records.csv", "--out", "labels", "--replace"}).status == 0);
  CHECK(kitchen.folder.entries("labels") == QStringList{"lid.pdf"});
  CHECK(kitchen.folder.entries() == QStringList{"kitchen", "labels", "real", "records.csv"});
}

TEST_CASE("the folder that one is in is refused as the place for labels", "[command][usage][src:practice]") {
  const SmallKitchen kitchen;
  const Ran ran = kitchen.folder.run("sh", {"-c", "mkdir out && cd out && '" LARDINER_PROGRAM
                                                  "' --kitchen ../kitchen --at 2026-11-25T18:00 labels ../records.csv "
                                                  "--out . --replace"});
  CHECK(ran.status == 1);
  CHECK(ran.err ==
        ".: this is the folder that you are in, or one above it\n"
        "  name a new folder in it\n");
  CHECK(kitchen.folder.entries("out").isEmpty());
}

TEST_CASE("--replace takes the place of earlier labels only: a kitchen book stays", "[command][usage][src:practice]") {
  const SmallKitchen kitchen;
  const QStringList book = kitchen.folder.entries("kitchen");
  const Ran ran = kitchen.labels({"records.csv", "--out", "kitchen", "--replace"});
  CHECK(ran.status == 1);
  CHECK(ran.err ==
        "kitchen: this folder holds other things than an earlier run wrote, which would be lost\n"
        "  name a new folder, or take the other things out of it\n");
  CHECK(kitchen.folder.entries("kitchen") == book);
  CHECK(kitchen.as_it_was());
}

TEST_CASE("a file is not replaced by a folder, nor a folder by a file", "[command][usage][src:practice]") {
  const SmallKitchen kitchen;
  const Ran over_file = kitchen.labels({"records.csv", "--out", "records.csv", "--replace"});
  CHECK(over_file.status == 1);
  CHECK(over_file.err ==
        "records.csv: this is a file, and a folder is needed\n"
        "  name another folder\n");
  REQUIRE(kitchen.folder.run("mkdir", {"day.pdf"}).status == 0);
  const Ran over_folder = kitchen.labels({"records.csv", "--out", "day.pdf", "--replace"});
  CHECK(over_folder.status == 1);
  CHECK(over_folder.err ==
        "day.pdf: this is a folder, and one file was asked for\n"
        "  name another file\n");
}

TEST_CASE("more than 4000 labels on a medium become numbered files", "[command][labels][many][src:practice]") {
  const SmallKitchen kitchen;
  kitchen.folder.write("records.csv",
                       "product,number,quantity,made_at,by,containers\n"
                       "seed-rub,2,410 kg,2026-11-25 08:00,MK,4001 tub 100 g\n");
  CHECK(kitchen.labels({"records.csv", "--out", "labels"}).out ==
        "labels/lid-0001.pdf: 4000 labels\nlabels/lid-0002.pdf: 1 label\n");
  CHECK(kitchen.folder.run("pdfinfo", {"labels/lid-0001.pdf"}).out.contains(QRegularExpression("Pages: +4000\\n")));
  const std::vector<Page> last = pages(kitchen.folder, "labels/lid-0002.pdf");
  REQUIRE(last.size() == 1);
  CHECK(last.front().text.contains("Tub 4001 of 4001"));
  REQUIRE(last.front().codes.size() == 1);
  CHECK(last.front().codes.front().contains("/10/A26329RUB02S/21/A2632902-4001?15=270225"));
}
