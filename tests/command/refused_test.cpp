// A run that is refused writes nothing and tells every problem once; in part only as asked, and exit status 3 says so.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QRegularExpression>

#include "small_kitchen.h"

using namespace lardiner::command;
using namespace Qt::StringLiterals;

namespace {

// Between two good batches: a package whose date is not written, and a date that is none.
const QByteArray kBadRecords =
    "row,product,number,quantity,made_at,by,containers,item,lot,use_by,opened\n"
    ",lime-butter,1,2 kg,2026-11-25 07:40,MK,4 tub 500 g,,,,\n"
    "input,,1,,,,,butter,MB-5521,2026-12-20,2026-11-25\n"
    ",lime-butter,2,1 kg,2026-11-25 09:40,MK,2 tub 500 g,,,,\n"
    "input,,2,,,,,butter,MB-5530,,2026-11-25\n"
    ",seed-rub,4,400 g,31/02,MK,4 tub 100 g,,,,\n"
    ",seed-rub,3,400 g,2026-11-25 08:00,MK,4 tub 100 g,,,,\n";

const QString kProblems = QStringLiteral(
    "records.csv:5:14: \"butter\", lot MB-5530, needs time and temperature control, and its date is not written\n"
    "  input,,2,,,,,butter,MB-5530,,2026-11-25\n"
    "               ^^^^^^\n"
    "  write use_by, as it stands on its package or label\n"
    "records.csv:6:19: \"31/02\" is not a date and time\n"
    "  ,seed-rub,4,400 g,31/02,MK,4 tub 100 g,,,,\n"
    "                    ^^^^^\n"
    "  write it as 2026-02-28 14:30; midnight is 00:00 of the next day\n");

struct BadDay : SmallKitchen {
  BadDay() { folder.write("records.csv", kBadRecords); }
};

}  // namespace

TEST_CASE("a run with bad records writes nothing, leaves no draft, and lists every problem once",
          "[command][refused][src:practice]") {
  const BadDay kitchen;
  const Ran ran = kitchen.labels({"records.csv", "--out", "labels"});
  CHECK(ran.status == 1);
  CHECK(ran.out == "");
  CHECK(ran.err == kProblems);
  CHECK(kitchen.as_it_was());
}

TEST_CASE("keep-going prints the good batches alone, tells the same problems, and exits with 3",
          "[command][refused][src:practice]") {
  const BadDay kitchen;
  const Ran ran = kitchen.labels({"records.csv", "--out", "labels", "--keep-going"});
  CHECK(ran.status == 3);
  CHECK(ran.err == kProblems);
  CHECK(ran.out == "labels/lid.pdf: 8 labels\n");
  const QStringList pages = printed(kitchen.folder, "labels");
  REQUIRE(pages.size() == 8);
  for (const QString& page : pages) {
    INFO(page.toStdString());
    CHECK((page.contains("A26329LBU01C") || page.contains("A26329RUB03Q")));
    CHECK_FALSE(page.contains("HOLD"));
  }
}

TEST_CASE("hold-labels prints HOLD labels for the refused: DO NOT USE, what is missing, its lot, and no date",
          "[command][refused][hold][src:practice]") {
  const BadDay kitchen;
  const Ran ran = kitchen.labels({"records.csv", "--out", "labels", "--hold-labels"});
  CHECK(ran.status == 3);
  CHECK(ran.err == kProblems);
  CHECK(ran.out == "labels/lid.pdf: 10 labels\n");
  int hold = 0;
  for (const Page& page : pages(kitchen.folder, "labels/lid.pdf")) {
    INFO(page.text.toStdString());
    if (!page.text.contains("HOLD")) {
      CHECK(band(page));
      continue;
    }
    ++hold;
    CHECK(page.text.startsWith("Lime butter HOLD DO NOT USE "));
    CHECK(page.text.contains("No date: the date of an ingredient is missing. Ask the chef."));
    CHECK(page.text.contains("Made Wed 25 Nov 2026 09:40"));
    CHECK(page.text.contains("A26329LBU02"));
    CHECK_FALSE(band(page));
    CHECK_FALSE(page.text.contains("use by", Qt::CaseInsensitive));
    CHECK_FALSE(page.text.contains("best before", Qt::CaseInsensitive));
    CHECK_FALSE(page.text.contains("contains", Qt::CaseInsensitive));
    for (const QString& code : page.codes) {
      CHECK_FALSE(code.contains("17="));
      CHECK_FALSE(code.contains("15="));
      CHECK_FALSE(code.contains("7003="));
    }
  }
  CHECK(hold == 2);
}

TEST_CASE("when no batch is good, keep-going writes nothing either and exits with 1",
          "[command][refused][src:practice]") {
  const SmallKitchen kitchen;
  kitchen.folder.write("records.csv",
                       "product,number,quantity,made_at,by,containers\n"
                       "seed-rub,4,400 g,31/02,MK,4 tub 100 g\n");
  const Ran ran = kitchen.labels({"records.csv", "--out", "labels", "--keep-going"});
  CHECK(ran.status == 1);
  CHECK(ran.out == "");
  CHECK(kitchen.as_it_was());
}

TEST_CASE("the problems of a run in part stand in its JSON as well", "[command][refused][json][src:practice]") {
  const BadDay kitchen;
  const Ran ran = kitchen.labels({"records.csv", "--out", "labels", "--keep-going", "--json"});
  CHECK(ran.status == 3);
  const QJsonObject report = QJsonDocument::fromJson(ran.out.toUtf8()).object();
  CHECK(report["labels"_L1].toInt() == 8);
  CHECK(report["hold_labels"_L1].toInt() == 0);
  CHECK(report["files"_L1].toArray() == QJsonArray{QJsonObject{{"file", "labels/lid.pdf"}, {"labels", 8}}});
  const QJsonArray problems = report["problems"_L1].toArray();
  REQUIRE(problems.size() == 2);
  for (const QJsonValue& problem : problems) {
    CHECK(problem["file"_L1].toString() == "records.csv");
    CHECK(problem["line"_L1].toInt() > 1);
    CHECK(problem["column"_L1].toInt() > 1);
    CHECK_FALSE(problem["what"_L1].toString().isEmpty());
    CHECK_FALSE(problem["hint"_L1].toString().isEmpty());
  }
}

TEST_CASE("the sample of refused records: every problem with its place, nothing written; HOLD labels bear no date",
          "[command][refused][hold][src:practice]") {
  const Folder folder;
  const QStringList labels = {"--kitchen", kDemoKitchen, "labels", kDemoKitchen + "/records/refused.csv",
                              "--out",     "labels"};
  const Ran refused = folder.lardiner(labels);
  CHECK(refused.status == 1);
  CHECK(refused.out == "");
  CHECK(folder.entries().isEmpty());
  static const QRegularExpression kPlace(QStringLiteral("^\\S+/refused\\.csv:\\d+:\\d+: .+$"),
                                         QRegularExpression::MultilineOption);
  QStringList problems;
  for (auto match = kPlace.globalMatch(refused.err); match.hasNext();) problems << match.next().captured();
  CHECK(problems.size() >= 8);
  CHECK(problems.removeDuplicates() == 0);

  const Ran held = folder.lardiner(labels + QStringList{"--hold-labels"});
  CHECK(held.status == 3);
  CHECK(held.err == refused.err);
  int hold = 0;
  for (const QString& file : folder.entries("labels"))
    for (const Page& page : page_texts(folder, "labels/" + file)) {
      INFO(page.name().toStdString() << ": " << page.text.toStdString());
      const bool is_hold = (page.text.contains(" HOLD ") && page.text.contains(" DO NOT USE "));
      CHECK(is_hold != band(page).has_value());
      if (is_hold) CHECK(page.text.contains(" Ask the chef."));
      hold += is_hold ? 1 : 0;
    }
  CHECK(hold > 0);
}
