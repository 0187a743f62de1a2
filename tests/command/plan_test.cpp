// The day's plan from the command line: text, JSON, the folder with all sheets, and what cannot be met.
#include "command/spans_text.h"
#include "work_kitchen.h"

using namespace lardiner::command;

namespace {

const QByteArray kOrders =
    "site,order,product,quantity,due,life\n"
    "mill-road,MR-1,cod-parcel,30 pieces,2026-11-25 14:00,1 day\n"
    ",,lime-butter,2 kg,2026-11-26 09:00,\n"
    ",,seed-rub,400 g,2026-11-26 09:00,\n";

const QByteArray kWalkIn =
    "product,lot,quantity,state,use_by,place\n"
    "cod,C-1,6 kg,chilled,2026-11-27,walk-in 2\n"
    "butter,MB-1,2 kg,chilled,2026-12-20,walk-in 1\n"
    "butter,MB-0,2 kg,chilled,2026-11-20,walk-in 1\n";

struct PlanKitchen : WorkKitchen {
  PlanKitchen() {
    folder.write("orders.csv", kOrders);
    folder.write("walk-in.csv", kWalkIn);
  }
  Ran plan(const QStringList& more = {}) const {
    return run(QStringList{"plan", "orders.csv", "--on-hand", "walk-in.csv"} + more);
  }
  QJsonObject plan_json(const QStringList& more = {}) const {
    return json(QStringList{"plan", "orders.csv", "--on-hand", "walk-in.csv"} + more);
  }
  /// Nothing was written, and no draft was left behind.
  bool as_it_was() const { return folder.entries() == QStringList{"kitchen", "orders.csv", "walk-in.csv"}; }
};

const QJsonObject making_of(const QJsonObject& plan, const char* product) {
  for (const QJsonValue& making : plan["makings"].toArray())
    if (making["product"].toString() == product) return making.toObject();
  FAIL("no making of " << product);
  return {};
}

std::vector<QJsonObject> json_lines(const QByteArray& bytes) {
  std::vector<QJsonObject> out;
  for (const QByteArray& line : bytes.split('\n'))
    if (!line.isEmpty()) out.push_back(QJsonDocument::fromJson(line).object());
  return out;
}

}  // namespace

TEST_CASE("a plan tells what is made, pulled and bought", "[command][plan]") {
  const PlanKitchen kitchen;
  const QJsonObject plan = kitchen.plan_json();
  CHECK(plan["at"].toString() == "2026-11-25T06:00:00-05:00");
  CHECK(plan["orders"].toArray().size() == 3);
  CHECK(plan["makings"].toArray().size() == 3);
  CHECK(plan["unmet"].toArray().isEmpty());
  CHECK(plan["problems"].toArray().isEmpty());
  const QJsonObject parcel = making_of(plan, "cod-parcel");
  CHECK(parcel["output"]["pieces"].toInt() == 32);
  CHECK(parcel["put_up"]["pieces"].toInt() == 30);
  CHECK(parcel["latest"].toString() == "2026-11-25T13:40:00-05:00");
  CHECK(parcel["seconds"].toInt() == 1200);
  // 2 kg, and 320 g for 32 parcels.
  const QJsonObject butter = making_of(plan, "lime-butter");
  CHECK(butter["output"]["grams"].toDouble() == Approx(2320));
  CHECK(butter["wanted_by"].toArray().size() == 2);
  QStringList pulled;
  for (const QJsonValue& take : plan["takes"].toArray()) pulled << take["lot"].toString();
  CHECK(pulled.contains("C-1"));
  CHECK(pulled.contains("MB-1"));
  const QJsonArray passed = plan["passed_over"].toArray();
  REQUIRE(passed.size() == 1);
  CHECK(passed[0]["lot"].toString() == "MB-0");
  CHECK(passed[0]["why"].toString() == "past-date");
  QStringList bought;
  for (const QJsonValue& buy : plan["buys"].toArray()) bought << buy["item"].toString();
  CHECK(bought == QStringList{"butter", "lime-zest", "pepper", "sesame"});
}

TEST_CASE("batches are numbered in the order of work, from a number that may be given", "[command][plan]") {
  const PlanKitchen kitchen;
  const auto numbers = [](const QJsonObject& plan) {
    std::vector<int> out;
    for (const QJsonValue& making : plan["makings"].toArray()) out.push_back(making["number"].toInt());
    return out;
  };
  CHECK(numbers(kitchen.plan_json()) == std::vector<int>{1, 2, 3});
  const QJsonObject later = kitchen.plan_json({"--number", "41"});
  CHECK(numbers(later) == std::vector<int>{41, 42, 43});
  for (const QJsonValue& making : later["makings"].toArray()) {
    const QString start = making["start"].toString();
    const QString day = start.startsWith("2026-11-25") ? "26329" : "26330";
    CHECK(making["lot"].toString().startsWith(u'A' + day));
    CHECK(making["lot"].toString().chopped(1).endsWith(QString::number(making["number"].toInt())));
  }
  const Ran ran = kitchen.plan({"--number", "9998"});
  CHECK(ran.status == 1);
  CHECK(ran.err ==
        "this plan has 3 batches, and from number 9998 not all of them get a number\n"
        "  begin at a lower --number, or plan fewer orders at a time\n");
  CHECK(kitchen.plan({"--number", "9997"}).status == 0);
}

TEST_CASE("the folder of a plan has all its files, the same each time, and they say what the terminal says",
          "[command][plan][pdf]") {
  const PlanKitchen kitchen;
  const QString text = kitchen.plan().out.remove(bar_key());
  const Ran ran = kitchen.plan({"--out", "day"});
  CHECK(ran.err == "");
  CHECK(ran.status == 0);
  CHECK(ran.out.startsWith("day/plan.pdf: "));
  CHECK(ran.out.endsWith("day/windows.svg\nday/records.jsonl: 3 records\nday/plan.json\n"));
  CHECK(kitchen.folder.entries("day") == QStringList{"plan.json", "plan.pdf", "records.jsonl", "windows.svg"});
  const std::vector<Page> pages = page_texts(kitchen.folder, "day/plan.pdf");
  CHECK(missing_words(text, pages) == QStringList());
  REQUIRE(pages.size() >= 4);
  CHECK(kitchen.folder.read("day/windows.svg").startsWith("<svg"));
  QJsonObject written = QJsonDocument::fromJson(kitchen.folder.read("day/plan.json")).object();
  CHECK(written == kitchen.plan_json());

  REQUIRE(kitchen.plan({"--out", "again"}).status == 0);
  for (const QString& file : kitchen.folder.entries("day"))
    CHECK((kitchen.folder.read("day/" + file) == kitchen.folder.read("again/" + file)));
  CHECK(kitchen.plan({"--out", "day"}).status == 1);
  CHECK(kitchen.plan({"--out", "day", "--replace"}).status == 0);
  kitchen.folder.write("day/notes.txt", "mine");
  CHECK(kitchen.plan({"--out", "day", "--replace"}).status == 1);
  CHECK(kitchen.folder.entries("day").contains("notes.txt"));
}

TEST_CASE("the sheets of a plan stand in working order, each with its lot", "[command][plan][pdf]") {
  const PlanKitchen kitchen;
  REQUIRE(kitchen.plan({"--out", "day"}).status == 0);
  const std::vector<Page> pages = page_texts(kitchen.folder, "day/plan.pdf");
  size_t page = 1;
  for (const QJsonValue& making : kitchen.plan_json()["makings"].toArray()) {
    const QString lot = making["lot"].toString();
    while (page < pages.size() && !pages[page].text.contains(lot)) ++page;
    INFO(lot.toStdString());
    REQUIRE(page < pages.size());
  }
}

TEST_CASE("the records of a plan are read by dates and labels once the batches are made", "[command][plan][loop]") {
  const PlanKitchen kitchen;
  kitchen.folder.write("walk-in.csv", kWalkIn + "butter,MB-2,9 kg,chilled,2026-12-20,walk-in 1\n");
  REQUIRE(kitchen.plan({"--out", "day"}).status == 0);
  const std::vector<QJsonObject> records = json_lines(kitchen.folder.read("day/records.jsonl"));
  REQUIRE(records.size() == 3);
  for (const QJsonObject& record : records) {
    if (record["product"].toString() != "cod-parcel") continue;
    CHECK(record["quantity"].toString() == "30 pieces");
    CHECK(record["site"].toString() == "mill-road");
    CHECK(record["order"].toString() == "MR-1");
    CHECK(record["containers"].toArray().size() == 2);
    CHECK(record["inputs"].toArray().size() == 2);
    CHECK(record["inputs"][0]["use_by"].toString() == "2026-11-27");
  }
  const Ran dates =
      kitchen.folder.lardiner({"--kitchen", "kitchen", "--at", "2026-11-26T18:00", "dates", "day/records.jsonl"});
  CHECK(dates.err == "");
  CHECK(dates.status == 0);
  for (const QJsonObject& record : records) CHECK(dates.out.contains(record["lot"].toString()));
}

TEST_CASE("amounts of the records read back as they were planned, whatever their units", "[command][plan][loop]") {
  const PlanKitchen kitchen;
  const QString tubs = "holds = \"500 g\", media = \"lid\"";
  kitchen.folder.put_fault("kitchen/products.toml", tubs, "holds = \"12 oz\", media = \"lid\"");
  kitchen.folder.write("walk-in.csv", kWalkIn + "butter,MB-2,9 kg,chilled,2026-12-20,walk-in 1\n");
  REQUIRE(kitchen.plan({"--out", "day"}).status == 0);
  for (const QJsonObject& record : json_lines(kitchen.folder.read("day/records.jsonl")))
    if (record["product"].toString() == "lime-butter") {
      CHECK(record["containers"][0]["count"].toInt() == 6);
      CHECK(record["containers"][0]["holds"].toString() == "12 oz");
      CHECK(record["containers"][1]["holds"].toString() == "278.834335 g");
    }
  const Ran dates =
      kitchen.folder.lardiner({"--kitchen", "kitchen", "--at", "2026-11-26T18:00", "dates", "day/records.jsonl"});
  CHECK(dates.err == "");
}

TEST_CASE("the date of a frozen lot is left to the hands, who know when it was thawed", "[command][plan][loop]") {
  const PlanKitchen kitchen;
  kitchen.folder.put_fault("kitchen/parcel.toml", "edible = \"80 %\"\n",
                           "edible = \"80 %\"\nshelf_life = { state = \"thawed\", keeps = \"3 days\", authority = "
                           "\"kitchen rule\" }\n");
  kitchen.folder.put_fault("kitchen/parcel.toml", "kind = \"work\"", "kind = \"thaw\"");
  kitchen.folder.write("walk-in.csv",
                       "product,lot,quantity,state,use_by,best_before\n"
                       "cod,C-1,6 kg,frozen,,2027-04-30\n"
                       "butter,MB-1,9 kg,chilled,2026-12-20,\n");
  REQUIRE(kitchen.plan({"--out", "day"}).status == 0);
  const std::vector<QJsonObject> records = json_lines(kitchen.folder.read("day/records.jsonl"));
  const QJsonObject cod = records.back()["inputs"][0].toObject();
  CHECK(cod == QJsonObject{{"item", "cod"}, {"lot", "C-1"}, {"quantity", "2.88 kg"}});
  const Ran dates =
      kitchen.folder.lardiner({"--kitchen", "kitchen", "--at", "2026-11-26T18:00", "dates", "day/records.jsonl"});
  CHECK(dates.status == 1);
  CHECK(dates.err.contains("\"cod\", lot C-1, needs time and temperature control, and its date is not written\n"));
}

TEST_CASE("a start at a time that the clock shows twice has its offset in the record", "[command][plan][loop]") {
  const PlanKitchen kitchen;
  kitchen.folder.write("orders.csv", "product,quantity,due\nseed-rub,400 g,2026-11-01 14:00\n");
  const Ran ran = kitchen.folder.lardiner(
      {"--kitchen", "kitchen", "--at", "2026-11-01T01:30-05:00", "plan", "orders.csv", "--out", "day"});
  CHECK(ran.err == "");
  REQUIRE(ran.status == 0);
  const std::vector<QJsonObject> records = json_lines(kitchen.folder.read("day/records.jsonl"));
  REQUIRE(records.size() == 1);
  CHECK(records[0]["made_at"].toString() == "2026-11-01 01:30-05:00");
  CHECK(kitchen.folder.lardiner({"--kitchen", "kitchen", "dates", "day/records.jsonl"}).status == 0);
}

TEST_CASE("wrong usage: orders and what is on hand both from standard input", "[command][plan][refused]") {
  const PlanKitchen kitchen;
  const Ran ran = kitchen.run({"plan", "-", "--on-hand", "-"});
  CHECK(ran.status == 2);
  CHECK(ran.err ==
        "orders and what is on hand cannot both come from standard input\n"
        "  write one of them to a file\n");
}

TEST_CASE("what cannot be met is told with its row, why, and by how much; the rest is planned", "[command][plan]") {
  const PlanKitchen kitchen;
  kitchen.folder.write("orders.csv", kOrders + ",,cod-parcel,12 pieces,2026-11-25 06:05,\n");
  const Ran ran = kitchen.plan({"--out", "day"});
  CHECK(ran.status == 3);
  CHECK(
      ran.err ==
      "orders.csv:5:3: 12 pieces of \"cod-parcel\" for Wed 25 Nov 2026 06:05 cannot be met: its making would have had "
      "to start 15 min ago\n"
      "  ,,cod-parcel,12 pieces,2026-11-25 06:05,\n"
      "    ^^^^^^^^^^\n"
      "  agree a later time, or enter what is on hand\n");
  CHECK(kitchen.folder.entries("day").contains("plan.pdf"));
  const QJsonObject plan = kitchen.plan_json();
  CHECK(plan["makings"].toArray().size() == 3);
  REQUIRE(plan["unmet"].toArray().size() == 1);
  CHECK(plan["unmet"][0]["why"].toString() == "too-late");
  CHECK(plan["unmet"][0]["seconds"].toInt() == 900);
  CHECK(plan["problems"].toArray().size() == 1);
}

TEST_CASE("a life that nothing made here keeps is told, by how much", "[command][plan]") {
  const PlanKitchen kitchen;
  kitchen.folder.write("orders.csv", "product,quantity,due,life\ncod-parcel,12 pieces,2026-11-25 14:00,4 days\n");
  const Ran ran = kitchen.plan();
  CHECK(ran.status == 3);
  CHECK(ran.err.contains("made at the last moment it is over 48 h before it may be\n"));
}

TEST_CASE("refused: every fault of orders and of what is on hand, and nothing is written", "[command][plan][refused]") {
  const PlanKitchen kitchen;
  kitchen.folder.write("orders.csv",
                       "product,quantity,due\n"
                       "cod-parcle,12 pieces,2026-11-26 14:00\n"
                       "cod-parcel,12 pieces,2026-11-24 14:00\n"
                       "cod-parcel,0.5 pieces,2026-11-26 14:00\n");
  kitchen.folder.write("walk-in.csv", "product,quantity\nbuter,1 kg\n");
  const Ran ran = kitchen.plan({"--out", "day"});
  CHECK(ran.status == 1);
  CHECK(ran.out == "");
  CHECK(ran.err.contains("orders.csv:2:1: \"cod-parcle\" is not a product of the book\n"));
  CHECK(ran.err.contains("did you mean cod-parcel?"));
  CHECK(ran.err.contains("orders.csv:3:22: \"2026-11-24 14:00\" is in the past: it is now Wed 25 Nov 2026 06:00\n"));
  CHECK(ran.err.contains("orders.csv:4:12: "));
  CHECK(ran.err.contains("walk-in.csv:2:1: "));
  CHECK(kitchen.as_it_was());
}

TEST_CASE("refused: an order named with a letter that no face has, at its row, where a PDF is asked for",
          "[command][plan][pdf][refused]") {
  const PlanKitchen kitchen;
  kitchen.folder.write("orders.csv",
                       "order,product,quantity,due\n"
                       "MR-1,cod-parcel,12 pieces,2026-11-26 14:00\n"
                       "MR-\U0001F600,cod-parcel,12 pieces,2026-11-26 14:00\n");
  kitchen.folder.write("walk-in.csv", "product,quantity,use_by,lot\ncod,1 kg,2026-11-27,C-\u05d0\n");
  const Ran ran = kitchen.plan({"--out", "day"});
  CHECK(ran.status == 1);
  CHECK(ran.out == "");
  CHECK(
      ran.err.contains("orders.csv:3:6: order \"MR-\U0001F600\" has \U0001F600 (U+1F600) as character 4, which the "
                       "label faces do not have\n"));
  CHECK(ran.err.contains("walk-in.csv:2:1: lot \"C-\u05d0\" has \u05d0 (U+05D0) as character 3"));
  CHECK_FALSE(ran.err.contains("orders.csv:2"));
  CHECK(kitchen.as_it_was());
  CHECK(kitchen.plan().out.contains("MR-\U0001F600"));
}

TEST_CASE("a number of a plan that is none is wrong usage", "[command][plan][usage][refused]") {
  const PlanKitchen kitchen;
  CHECK(kitchen.plan({"--number", "0"}).status == 2);
  CHECK(kitchen.plan({"--number", "41"}).status == 0);
}

TEST_CASE("orders as JSON Lines give the same plan", "[command][plan]") {
  const PlanKitchen kitchen;
  kitchen.folder.write(
      "orders.jsonl",
      R"({"site": "mill-road", "order": "MR-1", "product": "cod-parcel", "quantity": "30 pieces", "due": "2026-11-25 14:00", "life": "1 day"}
{"product": "seed-rub", "quantity": "400 g", "due": "2026-11-26 09:00"}
{"product": "lime-butter", "quantity": "2 kg", "due": "2026-11-26 09:00"}
)");
  const QJsonObject lines = kitchen.json({"plan", "orders.jsonl", "--on-hand", "walk-in.csv"});
  const QJsonObject rows = kitchen.plan_json();
  for (const char* part : {"makings", "takes", "buys"})
    CHECK((lines[QLatin1String(part)] == rows[QLatin1String(part)]));
}

TEST_CASE("a plan is the same bytes whatever the machine's locale and zone", "[command][plan][locale]") {
  const PlanKitchen kitchen;
  const auto plan = [&](const QStringList& out, const std::vector<QPair<QString, QString>>& setting) {
    return kitchen.folder.lardiner(QStringList{"--kitchen", "kitchen", "--at", "2026-11-25T06:00", "plan", "orders.csv",
                                               "--on-hand", "walk-in.csv"} +
                                       out,
                                   {}, setting);
  };
  const std::vector<QPair<QString, QString>> here = {{"LC_ALL", "C.UTF-8"}, {"TZ", "UTC"}};
  const std::vector<QPair<QString, QString>> there = {
      {"LC_ALL", "tr_TR.UTF-8"}, {"LANGUAGE", "tr"}, {"TZ", "Pacific/Auckland"}};
  CHECK(plan({}, here).out == plan({}, there).out);
  REQUIRE(plan({"--out", "here"}, here).status == 0);
  REQUIRE(plan({"--out", "there"}, there).status == 0);
  for (const QString& file : kitchen.folder.entries("here"))
    CHECK((kitchen.folder.read("here/" + file) == kitchen.folder.read("there/" + file)));
}

TEST_CASE("no orders and no level that is kept is an empty plan", "[command][plan]") {
  const PlanKitchen kitchen;
  kitchen.folder.write("orders.csv", kOrders.split('\n').front() + '\n');
  CHECK(kitchen.plan_json()["makings"].toArray().isEmpty());
  const Ran ran = kitchen.plan({"--out", "day"});
  CHECK(ran.err == "");
  CHECK(ran.status == 0);
  CHECK(kitchen.folder.read("day/records.jsonl").isEmpty());
}

TEST_CASE("the demo day is planned wholly, and its records lack only what hands must write", "[command][plan][demo]") {
  const Folder folder;
  const QStringList plan = {"--kitchen", kDemoKitchen,
                            "plan",      kDemoKitchen + "/orders/day.csv",
                            "--on-hand", kDemoKitchen + "/on-hand/walk-in.csv",
                            "--number",  "31",
                            "--out",     "day"};
  const Ran ran = folder.lardiner(plan);
  CHECK(ran.err == "");
  CHECK(ran.status == 0);
  const Ran dates =
      folder.lardiner({"--kitchen", kDemoKitchen, "--at", "2026-11-29T18:00", "dates", "day/records.jsonl"});
  CHECK(dates.status == 1);
  static const QRegularExpression left_out(
      QStringLiteral("no cook reading is written$|: no reading$|its date is not written$|which went into this batch, "
                     "is refused itself$"));
  int told = 0;
  for (const QString& line : dates.err.split(u'\n')) {
    if (!line.startsWith("day/records.jsonl:")) continue;
    ++told;
    INFO(line.toStdString());
    CHECK(left_out.match(line).hasMatch());
  }
  CHECK(told > 0);
}
