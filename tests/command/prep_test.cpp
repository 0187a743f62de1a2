// Prep sheets from the command line: what shall come out, the lot, the lots drawn, as text, JSON and PDF.
#include "work_kitchen.h"

using namespace lardiner::command;

namespace {

// "lime-zest 30 g" of each line of the only bowl.
QStringList weighed(const QJsonObject& prep) {
  QStringList out;
  for (const QJsonValue& line : prep["bowls"].toArray().at(0)["lines"].toArray())
    out << line["item"].toString() + u' ' + line["weighed"]["amount"].toString();
  return out;
}

QString filled(const QJsonObject& sheet) {
  QStringList out;
  for (const QJsonValue& group : sheet["fill"].toArray())
    out << QStringLiteral("%1 %2 %3")
               .arg(group["count"].toInt())
               .arg(group["kind"].toString(), group["holds"]["amount"].toString());
  return out.join(" + ");
}

QString drawn(const QJsonObject& sheet) {
  QStringList out;
  for (const QJsonValue& lot : sheet["drawn"].toArray())
    out << lot["item"].toString() + u' ' + lot["lot"].toString() + u' ' + lot["quantity"]["amount"].toString();
  return out.join(", ");
}

void check_refused(const QStringList& arguments, const QString& said, int status = 1) {
  const WorkKitchen kitchen;
  const Ran ran = kitchen.run(QStringList{"prep"} + arguments);
  INFO(arguments.join(u' ').toStdString());
  CHECK(ran.status == status);
  CHECK(ran.out == "");
  CHECK(ran.err == said);
  CHECK(kitchen.folder.entries() == QStringList{"kitchen"});
}

// The value of an option, of lime butter unless told otherwise.
void check_wrong(const QStringList& option, const QString& said, const QString& product = "lime-butter") {
  check_refused(QStringList{product} + option, said, 2);
}

}  // namespace

TEST_CASE("a prep sheet of the formula as written, where nothing else is asked", "[command][prep]") {
  const WorkKitchen kitchen;
  const QJsonObject sheet = kitchen.json({"prep", "lime-butter"});
  CHECK(weighed(sheet) == QStringList{"butter 1 kg", "lime-zest 30 g"});
  CHECK(sheet["makings"].toDouble() == 1);
  CHECK(sheet["input"]["grams"].toDouble() == 1030);
  CHECK(sheet["output"] == QJsonObject{{"amount", "1.03 kg"}, {"grams", 1030}});
  CHECK(sheet["day"].toString() == "2026-11-25");
  CHECK_FALSE(sheet.contains("lot"));
  CHECK(filled(sheet) == "2 tub 500 g + 1 tub 30 g");
}

TEST_CASE("what a prep sheet is scaled to: an output, containers, an item that is there, times", "[command][prep]") {
  const WorkKitchen kitchen;
  const auto prep = [&](const QStringList& more) { return kitchen.json(QStringList{"prep", "lime-butter"} + more); };
  CHECK(weighed(prep({"--give", "2.06 kg"})) == QStringList{"butter 2 kg", "lime-zest 60 g"});
  CHECK(weighed(prep({"--from", "lime-zest=15 g"})) == QStringList{"butter 500 g", "lime-zest 15 g"});
  CHECK(weighed(prep({"--times", "2.5"})) == QStringList{"butter 2.5 kg", "lime-zest 75 g"});
  const QJsonObject tubs = prep({"--give", "4 tub 500 g + 1 tub 60 g"});
  CHECK(weighed(tubs) == QStringList{"butter 2 kg", "lime-zest 60 g"});
  CHECK(filled(tubs) == "4 tub 500 g + 1 tub 60 g");
  const QJsonObject pounds = prep({"--give", "1 lb 8 oz"});
  CHECK(pounds["output"]["grams"].toDouble() == Approx(680.389));
}

TEST_CASE("with a number the lot of the day is on the sheet, without one it is written in", "[command][prep]") {
  const WorkKitchen kitchen;
  CHECK(kitchen.json({"prep", "lime-butter", "--number", "7"})["lot"].toString().startsWith("A26329LBU07"));
  const Ran numbered = kitchen.run({"prep", "lime-butter", "--number", "7"});
  CHECK(numbered.out.contains("A26329LBU07"));
  CHECK_FALSE(kitchen.run({"prep", "lime-butter"}).out.contains("A26329LBU"));
}

TEST_CASE("lots on hand are drawn, the first to expire first, and only what is good all day", "[command][prep]") {
  const WorkKitchen kitchen;
  kitchen.folder.write("walk-in.csv",
                       "product,lot,quantity,use_by,place\n"
                       "butter,MB-2,5 kg,2026-12-20,walk-in 1\n"
                       "butter,MB-1,400 g,2026-12-01,walk-in 1\n"
                       "butter,MB-0,9 kg,2026-11-24,walk-in 1\n"
                       "lime-zest,LZ-1,10 g,2026-11-30,\n");
  const QStringList prep = {"prep", "lime-butter", "--on-hand", "walk-in.csv"};
  CHECK(drawn(kitchen.json(prep)) == "butter MB-1 400 g, butter MB-2 600 g, lime-zest LZ-1 10 g");
  const Ran ran = kitchen.run(prep);
  CHECK(ran.out.contains("MB-1"));
  CHECK_FALSE(ran.out.contains("MB-0"));
}

TEST_CASE("the PDF of a prep sheet says what the terminal says, and is the same each time", "[command][prep][pdf]") {
  const WorkKitchen kitchen;
  const QStringList prep = {"prep", "lime-butter", "--number", "7"};
  const QString text = kitchen.run(prep).out;
  const Ran ran = kitchen.run(prep + QStringList{"--out", "prep.pdf"});
  CHECK(ran.err == "");
  CHECK(ran.status == 0);
  CHECK(ran.out == "prep.pdf: 1 page\n");
  CHECK(missing_words(text, page_texts(kitchen.folder, "prep.pdf")) == QStringList());
  const QByteArray first = kitchen.folder.read("prep.pdf");
  CHECK(kitchen.run(prep + QStringList{"--out", "prep.pdf"}).status == 1);
  CHECK(kitchen.run(prep + QStringList{"--out", "prep.pdf", "--replace"}).status == 0);
  CHECK((kitchen.folder.read("prep.pdf") == first));
}

TEST_CASE("a metric kitchen's sheets are on A4, a customary one's on Letter, unless told otherwise",
          "[command][prep][pdf]") {
  const WorkKitchen kitchen;
  const auto size = [&](const QStringList& more) {
    REQUIRE(kitchen.run(QStringList{"prep", "lime-butter", "--out", "p.pdf", "--replace"} + more).status == 0);
    const QString info = kitchen.folder.run("pdfinfo", {"p.pdf"}).out;
    return info.contains("(letter)") ? "letter" : info.contains("(A4)") ? "a4" : "neither";
  };
  CHECK(size({}) == QString("a4"));
  CHECK(size({"--paper", "letter"}) == QString("letter"));
  kitchen.folder.put_fault("kitchen/kitchen.toml", "units = \"metric\"", "units = \"customary\"");
  CHECK(size({}) == QString("letter"));
  CHECK(size({"--paper", "a4"}) == QString("a4"));
}

TEST_CASE("with --json the file that was written is told with the figures", "[command][prep][pdf]") {
  const WorkKitchen kitchen;
  const QJsonObject sheet = kitchen.json({"prep", "lime-butter", "--out", "prep.pdf"});
  CHECK(sheet["file"].toString() == "prep.pdf");
  CHECK(sheet["pages"].toInt() == 1);
  CHECK(sheet["product"].toString() == "lime-butter");
}

TEST_CASE("two targets, or an empty one, are wrong usage", "[command][prep][refused]") {
  const WorkKitchen kitchen;
  const auto status = [&](const QStringList& more) {
    return kitchen.run(QStringList{"prep", "lime-butter"} + more).status;
  };
  CHECK(status({"--give", "1 kg"}) == 0);
  CHECK(status({"--give", "1 kg", "--times", "2"}) == 2);
  CHECK(status({"--from", "butter=1 kg", "--fill-vessel"}) == 2);
  CHECK(status({"--give", ""}) == 2);
  CHECK(status({"--out", "prep.txt"}) == 2);
  CHECK(status({"--paper", "a5"}) == 2);
}

TEST_CASE("refused: a product or an item that is not in the book, with the nearest", "[command][prep][refused]") {
  check_refused({"lime-buter"},
                "\"lime-buter\" is not a product of the book\n"
                "  did you mean lime-butter?\n");
  check_refused({"lime-butter", "--from", "buter=1 kg"},
                "--from: \"buter\" is not an ingredient or product of the book\n"
                "  did you mean butter?\n");
  check_refused({"lime-butter", "--from", "cod=1 kg"},
                "--from: \"cod\" is not in the formula of product \"lime-butter\"\n"
                "  write the id of an item of its formula\n");
}

TEST_CASE("the value of an option that cannot be read is wrong usage", "[command][prep][usage][refused]") {
  check_wrong({"--from", "1 kg"},
              "--from: \"1 kg\" does not say how much of what\n"
              "  write an item and its amount, as in \"butter=3.2 kg\"\n");
  check_wrong({"--give", "0.5 pieces"},
              "--give: this is less than one piece of product \"cod-parcel\"\n"
              "  ask for what gives 1 piece or more\n",
              "cod-parcel");
  const QString units = "mg, g, kg, oz, lb, mL, L, tsp, tbsp, fl oz, cup, pint, quart, gallon, piece\n";
  check_wrong({"--give", "4"}, "--give: \"4\" has no unit\n  write the unit after the number: " + units);
  check_wrong({"--give", "4 tuns"}, "--give: \"4 tuns\" has an unknown unit, \"tuns\"\n  the units are " + units);
  check_wrong({"--give", "0 kg"}, "--give: \"0 kg\" is zero\n  write an amount above zero\n");
  check_wrong({"--number", "0"},
              "--number: \"0\" is not a running number\n"
              "  write a number from 1 to 9999\n");
  check_wrong({"--times", "two"}, "--times: \"two\" is not a number\n  write it as 12 or 0.61\n");
  check_wrong({"--times", "-1"}, "--times: \"-1\" is negative\n  write a number without a sign\n");
}

TEST_CASE("containers without what each holds are told how to write them", "[command][prep][usage][refused]") {
  for (const QString text : {"12 tub", "12 tubs", "1.5 tub 500 g", "12tub"})
    check_wrong({"--give", text}, "--give: \"" + text +
                                      "\" is not a number of containers, their kind and what each holds\n"
                                      "  write it as 24 tub 500 g, or 24 tub 500 g + 1 tub 300 g\n");
  check_wrong({"--give", "2 tubz 500 g"}, "--give: \"tubz\" is not a kind of container\n  did you mean tub?\n");
  check_refused({"lime-butter", "--give", "2 bag 500 g"},
                "--give: \"lime-butter\" is not put up in a bag by the book\n"
                "  it has: tub; or add the container to the book\n");
}

TEST_CASE("refused: more than a kitchen makes, whichever way it is asked for", "[command][prep][usage][refused]") {
  const QString most = "  at most 20 tonnes, 20000 litres or 200000 pieces\n";
  check_wrong({"--give", "20001 kg"}, "--give: \"20001 kg\" is more than a kitchen makes\n" + most);
  check_wrong({"--give", "200001 pieces"}, "--give: \"200001 pieces\" is more than a kitchen makes\n" + most,
              "cod-parcel");
  // 1.03 kg a time.
  check_wrong({"--times", "19418"}, "--times: this is more than a kitchen makes\n" + most);
  check_wrong({"--times", "99999999999"}, "--times: this is more than a kitchen makes\n" + most);
  check_wrong({"--from", "butter=19999 kg"}, "--from: this is more than a kitchen makes\n" + most);
  const WorkKitchen kitchen;
  CHECK(kitchen.run({"prep", "lime-butter", "--times", "19417"}).status == 0);
  CHECK(kitchen.run({"prep", "lime-butter", "--give", "20000 kg"}).status == 0);
}

TEST_CASE("with --json a wrong value is told as every problem is", "[command][prep][usage][refused]") {
  const WorkKitchen kitchen;
  const Ran ran = kitchen.run({"--json", "prep", "lime-butter", "--give", "0 kg"});
  CHECK(ran.status == 2);
  CHECK(QJsonDocument::fromJson(ran.out.toUtf8()).object()["problems"].toArray() ==
        QJsonArray{QJsonObject{{"file", ""},
                               {"line", 0},
                               {"column", 0},
                               {"what", "--give: \"0 kg\" is zero"},
                               {"hint", "write an amount above zero"}}});
}

TEST_CASE("a fault of a file beside one of an option is the file's", "[command][prep][usage][refused]") {
  const WorkKitchen kitchen;
  kitchen.folder.write("walk-in.csv", "product,quantity\nbuter,1 kg\n");
  const QStringList prep = {"prep", "lime-butter", "--on-hand", "walk-in.csv"};
  CHECK(kitchen.run(prep + QStringList{"--number", "0"}).status == 1);
}

TEST_CASE("refused: a lot on hand with a letter that no face has, at its row, where a PDF is asked for",
          "[command][prep][pdf][refused]") {
  const WorkKitchen kitchen;
  kitchen.folder.write("walk-in.csv", "product,lot,quantity,use_by,place\nbutter,MB,2 kg,2026-12-20,\u05d0\n");
  const QStringList prep = {"prep", "lime-butter", "--on-hand", "walk-in.csv"};
  const Ran ran = kitchen.run(prep + QStringList{"--out", "prep.pdf"});
  CHECK(ran.status == 1);
  CHECK(ran.err ==
        "walk-in.csv:2:1: place \"\u05d0\" has \u05d0 (U+05D0) as character 1, and Hebrew script cannot be set on "
        "labels\n"
        "  butter,MB,2 kg,2026-12-20,\u05d0\n"
        "  ^^^^^^\n"
        "  write it in Latin, Greek, Cyrillic or Chinese characters, digits and common signs\n");
  CHECK(kitchen.folder.entries() == QStringList{"kitchen", "walk-in.csv"});
  CHECK(kitchen.run(prep).status == 0);
}

TEST_CASE("what is there already, and a folder for a file, are told as what they are", "[command][prep][refused]") {
  const WorkKitchen kitchen;
  kitchen.folder.write("prep.pdf", "of yesterday");
  CHECK(kitchen.run({"prep", "lime-butter", "--out", "prep.pdf"}).err ==
        "prep.pdf: there is something of that name already\n"
        "  name a new file, or say --replace to let the new one take its place\n");
  const Ran folder = kitchen.run({"prep", "lime-butter", "--on-hand", "kitchen"});
  CHECK(folder.status == 1);
  CHECK(folder.err == "kitchen: this is a folder, and a file is needed\n  name a file in it\n");
}

TEST_CASE("refused: a vessel that the book does not state, at the product", "[command][prep][refused]") {
  const WorkKitchen kitchen;
  const Ran ran = kitchen.run({"prep", "lime-butter", "--fill-vessel"});
  CHECK(ran.status == 1);
  CHECK(ran.err.contains("kitchen/products.toml:1:1: product \"lime-butter\" does not say what its vessel takes\n"));
  CHECK(ran.err.contains("state vessel and vessel_takes"));
}

TEST_CASE("refused: a spoon of what no measure weighs, at its line", "[command][prep][refused]") {
  const WorkKitchen kitchen;
  kitchen.folder.put_fault("kitchen/products.toml", "{ item = \"butter\", amount = \"1 kg\" },",
                           "{ item = \"butter\", amount = \"1 kg\" },\n  { item = \"pepper\", amount = \"1 tbsp\" },");
  const Ran ran = kitchen.run({"prep", "lime-butter"});
  CHECK(ran.status == 1);
  CHECK(ran.err.startsWith("kitchen/products.toml:13:"));
  CHECK(ran.out == "");
  CHECK(kitchen.run({"prep", "seed-rub"}).status == 0);
}

TEST_CASE("refused: every fault of what is on hand, at its cell", "[command][prep][refused]") {
  const WorkKitchen kitchen;
  kitchen.folder.write("walk-in.csv", "product,quantity,use_by\nbuter,1 kg,2026-12-01\nbutter,1,2026-31-31\n");
  const Ran ran = kitchen.run({"prep", "lime-butter", "--on-hand", "walk-in.csv"});
  CHECK(ran.status == 1);
  CHECK(ran.err.contains("walk-in.csv:2:1: "));
  CHECK(ran.err.contains("walk-in.csv:3:8: "));
  CHECK(ran.err.contains("walk-in.csv:3:10: "));
}
