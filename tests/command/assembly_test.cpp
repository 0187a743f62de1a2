// Assembly sheets from the command line: units, what is there, trays, as text, JSON and PDF.
#include "work_kitchen.h"

using namespace lardiner::command;

TEST_CASE("an assembly sheet has each unit and all of them, with what the count loses", "[command][assembly]") {
  const WorkKitchen kitchen;
  const QJsonObject sheet = kitchen.json({"assembly", "cod-parcel", "--units", "30", "--number", "4"});
  CHECK(sheet["wanted"].toInt() == 30);
  CHECK(sheet["make"].toInt() == 32);
  CHECK(sheet["lot"].toString().startsWith("A26329CPA04"));
  const QJsonArray lines = sheet["lines"].toArray();
  REQUIRE(lines.size() == 2);
  CHECK(lines[0]["item"].toString() == "cod");
  CHECK(lines[0]["each"]["grams"].toDouble() == 90);
  CHECK(lines[0]["total"]["grams"].toDouble() == 2880);
  CHECK(lines[0]["to_pull"]["grams"].toDouble() == 3600);
  CHECK(sheet["trays"] ==
        QJsonObject{{"whole", 2}, {"odd", 6}, {"holds", QJsonObject{{"amount", "12 pieces"}, {"pieces", 12}}}});
  CHECK(sheet["fill"].toArray().size() == 2);
  CHECK(kitchen.json({"assembly", "cod-parcel", "--units", "30 pieces"})["make"].toInt() == 32);
}

TEST_CASE("what is there says how many units it gives, and without a number decides it, at its worst",
          "[command][assembly]") {
  const WorkKitchen kitchen;
  // 2.25 kg of cod as purchased are 1.8 kg, for 20 units: 19 wanted, since 20 would need 21. Butter is for 30.
  const QStringList there = {"assembly", "cod-parcel", "--there", "lime-butter=300 g", "--there", "cod=2.25 kg"};
  const QJsonObject sheet = kitchen.json(there);
  const QJsonArray suffices = sheet["suffices"].toArray();
  REQUIRE(suffices.size() == 2);
  CHECK(suffices[0] == QJsonObject{{"item", "cod"}, {"worst", 20}, {"likely", 20}, {"best", 20}});
  CHECK(suffices[1]["worst"].toInt() == 30);
  CHECK(sheet["wanted"].toInt() == 19);
  CHECK(sheet["make"].toInt() == 20);
  CHECK(kitchen.json(there + QStringList{"--units", "7"})["wanted"].toInt() == 7);
}

TEST_CASE("the PDF of an assembly sheet says what the terminal says", "[command][assembly][pdf]") {
  const WorkKitchen kitchen;
  const QStringList assembly = {"assembly", "cod-parcel", "--units", "30", "--there", "cod=2.25 kg"};
  const QString text = kitchen.run(assembly).out;
  CHECK(text.contains("Cod parcel"));
  const Ran ran = kitchen.run(assembly + QStringList{"--out", "assembly.pdf"});
  CHECK(ran.err == "");
  CHECK(ran.status == 0);
  CHECK(missing_words(text, page_texts(kitchen.folder, "assembly.pdf")) == QStringList());
}

TEST_CASE("what is there of one item in two places adds up", "[command][assembly]") {
  const WorkKitchen kitchen;
  const auto there = [&](const QStringList& amounts) {
    QStringList words = {"assembly", "cod-parcel"};
    for (const QString& amount : amounts) words += {"--there", amount};
    return kitchen.run(words);
  };
  CHECK(there({"cod=1.25 kg", "lime-butter=300 g", "cod=1 kg"}).out == there({"cod=2.25 kg", "lime-butter=300 g"}).out);
  const Ran ran = there({"cod=1 kg", "cod=3 pieces"});
  CHECK(ran.status == 2);
  CHECK(ran.out == "");
  CHECK(ran.err ==
        "--there: \"cod=1 kg\" and \"cod=3 pieces\" do not add up\n"
        "  write both in the same kind of unit, or name the item once\n");
}

TEST_CASE("wrong usage: no units, none, parts of one, more than a kitchen makes",
          "[command][assembly][usage][refused]") {
  const WorkKitchen kitchen;
  const auto said = [&](const QStringList& more) {
    const Ran ran = kitchen.run(QStringList{"assembly", "cod-parcel"} + more);
    CHECK(ran.status == 2);
    CHECK(ran.out == "");
    return ran.err;
  };
  CHECK(said({}) ==
        "nothing says how many units\n"
        "  write --units 120, or what there is of an item with --there\n");
  for (const QString units : {"0", "1.5", "1.5 pieces", "x", "3 kg"})
    CHECK(said({"--units", units}) == "--units: \"" + units + "\" is not a number of whole units\n  write it as 120\n");
  CHECK(said({"--units", "-1"}) == "--units: \"-1\" is negative\n  write an amount above zero\n");
  for (const QString units : {"200001", "99999999999", "99999999999999999999999"})
    CHECK(said({"--units", units}) ==
          "--units: \"" + units + "\" is more than a kitchen makes\n  at most 200000 pieces\n");
  CHECK(said({"--units", "200001 pieces"}) ==
        "--units: \"200001 pieces\" is more than a kitchen makes\n"
        "  at most 20 tonnes, 20000 litres or 200000 pieces\n");
  CHECK(said({"--there", "lime-butter=19999 kg"}) ==
        "--there: what there is of \"lime-butter\" is enough for more than a kitchen makes\n"
        "  at most 200000 pieces\n");
  CHECK(said({"--there", "cod=50 g"}) ==
        "--there: what there is of \"cod\" is not enough for one unit for sure\n"
        "  say with --units how many to make\n");
  CHECK(kitchen.run({"assembly", "cod-parcel", "--units", "200000"}).status == 0);
  CHECK(kitchen.folder.entries() == QStringList{"kitchen"});
}

TEST_CASE("refused: a product that is not made in units, or not in the book", "[command][assembly][refused]") {
  const WorkKitchen kitchen;
  const auto said = [&](const QStringList& more) {
    const Ran ran = kitchen.run(QStringList{"assembly"} + more);
    CHECK(ran.status == 1);
    CHECK(ran.out == "");
    return ran.err;
  };
  const QString butter = said({"lime-butter", "--units", "10"});
  CHECK(butter.contains("product \"lime-butter\" is not made in pieces\n"));
  CHECK(butter.contains(
      "state makes in pieces, or unit_weight; of what is made by weight ask for the sheet with prep\n"));
  CHECK(said({"cod-parcle", "--units", "10"}).contains("did you mean cod-parcel?"));
  CHECK(said({"cod-parcel", "--there", "butter=1 kg"}) ==
        "--there: \"butter\" is not in the formula of product \"cod-parcel\"\n"
        "  write the id of an item of its formula\n");
}
