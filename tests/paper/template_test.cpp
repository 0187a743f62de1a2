// Label templates: the shipped ones read, and everything that would misplace a fact is refused.
#include "paper/template.h"

#include <QFile>

#include "facts/fact_names.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::paper;
using facts::FactId;

namespace {

QByteArray shipped(const char* name) {
  QFile file(QStringLiteral(LARDINER_SOURCE_DIR "/templates/labels/") + QLatin1String(name));
  REQUIRE(file.open(QIODevice::ReadOnly));
  return file.readAll();
}

const QByteArray kFoot = "[foot]\nsize = [6, 7, 8]\n";

QByteArray block(const QByteArray& lines) { return "[[block]]\n" + lines + "\n"; }

const QByteArray kName = block("facts = [\"name\"]\nsize = [8, 10, 20]");

/// All that is wrong with a template; empty when it reads.
QString refused(const QByteArray& toml) {
  const auto read = read_label_template(toml, QStringLiteral("t.toml"));
  return read ? QString() : problem::text(read.error());
}

}  // namespace

TEST_CASE("the shipped templates read, and give every dated label's facts a place", "[paper][template]") {
  for (const char* name : {"inside.toml", "finisher.toml", "sale.toml", "hold.toml"}) {
    CAPTURE(name);
    const auto read = read_label_template(shipped(name), QLatin1String(name));
    if (!read) FAIL(problem::text(read.error()).toStdString());
    CHECK(read->least_x_height.value >= 1.2);
    const bool hold = QLatin1String(name) == QLatin1String("hold.toml");
    for (const FactId id :
         {FactId::Lot, FactId::ContainerOf, FactId::Serial, FactId::Name, FactId::Made, FactId::SupplierLot})
      CHECK(has_place(*read, id));
    for (const FactId id :
         {FactId::DateCaption, FactId::Date, FactId::Year, FactId::Time, FactId::DaysLeft, FactId::FrozenLimits,
          FactId::WriteDates, FactId::Readiness, FactId::Contains, FactId::MayContain, FactId::PreviouslyFrozen,
          FactId::TimeControl, FactId::ReducedOxygen, FactId::KeepAt, FactId::Difference, FactId::Count})
      CHECK(has_place(*read, id) == !hold);
    for (const FactId id : {FactId::Hold, FactId::DoNotUse, FactId::Missing}) CHECK(has_place(*read, id) == hold);
  }
}

TEST_CASE("each purpose's template has a place for what that purpose says", "[paper][template]") {
  const auto places = [](const char* name, const std::vector<FactId>& ids) {
    const LabelTemplate label = read_label_template(shipped(name), QLatin1String(name)).value();
    for (const FactId id : ids) {
      CAPTURE(name, facts::name(id));
      CHECK(has_place(label, id));
    }
  };
  places("inside.toml", {FactId::UsedFor, FactId::Net, FactId::Site});
  places("finisher.toml", {FactId::Finishing, FactId::HoldFinished, FactId::RemoveLabel, FactId::Net, FactId::Site});
  places("sale.toml", {FactId::Finishing, FactId::HoldFinished, FactId::RemoveLabel, FactId::Ingredients,
                       FactId::NetDeclared, FactId::Business, FactId::SafeHandling, FactId::Site});
}

TEST_CASE("a template says facts, weight and sizes block by block, from the top", "[paper][template]") {
  const auto read = read_label_template(
      "margin = \"1.5 mm\"\nframe = \"1 mm\"\ncode_share = 0.3\n" +
          block("facts = [\"name\", \"made\"]\nbeside = \"count\"\nweight = \"bold\"\nsize = [8, 10.5, 20]") +
          block("band = true\nsize = [12, 17, 44]") + kFoot,
      QStringLiteral("t.toml"));
  REQUIRE(read);
  CHECK(read->margin == Millimetres{1.5});
  CHECK(read->frame == Millimetres{1});
  CHECK(read->code_share == 0.3);
  REQUIRE(read->blocks.size() == 2);
  CHECK(read->blocks[0].facts == std::vector{FactId::Name, FactId::Made});
  CHECK(read->blocks[0].beside == FactId::Count);
  CHECK(read->blocks[0].weight == Weight::Bold);
  CHECK(read->blocks[0].sizes.preferred == Points{10.5});
  CHECK(read->blocks[1].band);
  CHECK(read->blocks[1].facts == std::vector{FactId::DateCaption, FactId::Date, FactId::Year, FactId::Time});
  CHECK(read->foot.most == Points{8});
  CHECK_FALSE(has_place(*read, FactId::Contains));
}

TEST_CASE("a fact that is not known is refused, with the nearest that is", "[paper][template][refused]") {
  CHECK(refused(block("facts = [\"contain\"]\nsize = [8, 10, 20]") + kFoot) ==
        "t.toml:2:9: \"contain\" is not a fact of labels\n"
        "  facts = [\"contain\"]\n"
        "          ^^^^^^^^^^^\n"
        "  did you mean \"contains\"?\n");
  CHECK(refused(block("facts = [\"name\"]\nbeside = \"zzz\"\nsize = [8, 10, 20]") + kFoot) ==
        "t.toml:3:10: \"zzz\" is not a fact of labels\n"
        "  beside = \"zzz\"\n"
        "           ^^^^^\n"
        "  the facts are: " +
            facts::fact_names().join(QStringLiteral(", ")) + QStringLiteral("\n"));
}

TEST_CASE("a fact in two blocks is refused: it would be printed twice", "[paper][template][refused]") {
  CHECK(refused(kName + block("facts = [\"made\", \"name\"]\nsize = [8, 10, 20]") + kFoot) ==
        "t.toml:5:9: fact \"name\" has two places\n"
        "  facts = [\"made\", \"name\"]\n"
        "          ^^^^^^^^^^^^^^^^\n"
        "  name it in one block only; a band has the date's own, the foot lot, container-of and serial\n");
  CHECK_FALSE(refused(block("facts = [\"name\"]\nbeside = \"name\"\nsize = [8, 10, 20]") + kFoot).isEmpty());
}

TEST_CASE("what the foot or the band places by itself is refused in a block", "[paper][template][refused]") {
  for (const char* fact : {"lot", "container-of", "serial"})
    CHECK_FALSE(refused(kName + block("facts = [\"" + QByteArray(fact) + "\"]\nsize = [8, 10, 20]") + kFoot).isEmpty());
  const QByteArray band = block("band = true\nsize = [12, 17, 44]");
  CHECK(refused(kName + band + kFoot).isEmpty());
  CHECK_FALSE(refused(kName + band + band + kFoot).isEmpty());
  for (const char* fact : {"date", "date-caption", "year", "time"})
    CHECK_FALSE(refused(block("facts = [\"" + QByteArray(fact) + "\"]\nsize = [8, 10, 20]") + band + kFoot).isEmpty());
}

TEST_CASE("sizes are three, in order, and of a sensible height", "[paper][template][refused]") {
  CHECK(refused(block("facts = [\"name\"]\nsize = [10, 8, 20]") + kFoot) ==
        "t.toml:3:8: a block has no size that can be used\n"
        "  size = [10, 8, 20]\n"
        "         ^^^^^^^^^^^\n"
        "  write size = [least, preferred, most] in points, each from 1 to 200 and none smaller than the one before\n");
  CHECK(refused(kName + "[foot]\nsize = [6, 9, 8]\n") ==
        "t.toml:5:8: the foot has no size that can be used\n"
        "  size = [6, 9, 8]\n"
        "         ^^^^^^^^^\n"
        "  write size = [least, preferred, most] in points, each from 1 to 200 and none smaller than the one before\n");
  for (const char* size : {"[8, 10]", "[8, 10, 20, 30]", "[0, 10, 20]", "[8, 10, 201]", "[\"8\", 10, 20]", "8"})
    CHECK_FALSE(refused(block("facts = [\"name\"]\nsize = " + QByteArray(size)) + kFoot).isEmpty());
  CHECK_FALSE(refused(block("facts = [\"name\"]") + kFoot).isEmpty());
  CHECK(refused(block("facts = [\"name\"]\nsize = [1, 1, 200]") + "[foot]\nsize = [1, 1, 200]\n").isEmpty());
}

TEST_CASE("no template goes below an x-height of 0.9 mm, and one that says none has 1.2 mm",
          "[paper][template][refused][src:eu-1169-2011/13]") {
  const auto read = [](const QByteArray& toml) { return read_label_template(toml + kName + kFoot, "t.toml"); };
  CHECK(read("").value().least_x_height == Millimetres{1.2});
  CHECK(read("least_x_height = \"0.9 mm\"\n").value().least_x_height == Millimetres{0.9});
  CHECK(refused("least_x_height = \"0.8 mm\"\n" + kName + kFoot) ==
        "t.toml:1:18: a least_x_height of 0.8 mm cannot be read\n"
        "  least_x_height = \"0.8 mm\"\n"
        "                   ^^^^^^^^\n"
        "  write at least \"0.9 mm\"; \"1.2 mm\" is read at arm's length\n");
  CHECK(refused("least_x_height = \"0.8\"\n" + kName + kFoot).count(QStringLiteral("t.toml:")) == 1);
}

TEST_CASE("a block that is larger at the preferred sizes may nowhere be smaller", "[paper][template][refused]") {
  const auto two = [](const QByteArray& large, const QByteArray& small) {
    return refused(block("facts = [\"made\"]\nsize = " + small) + block("facts = [\"name\"]\nsize = " + large) + kFoot);
  };
  CHECK(two("[8, 12, 24]", "[8, 11, 24]").isEmpty());
  CHECK(two("[8, 12, 24]", "[9, 11, 24]") ==
        "t.toml:3:8: a block of 11 pt could become larger than the one of 12 pt in line 6\n"
        "  size = [9, 11, 24]\n"
        "         ^^^^^^^^^^^\n"
        "  write its least and most no larger than 8 and 24\n");
  CHECK(two("[8, 12, 24]", "[8, 11, 25]").contains("could become larger"));
  CHECK(two("[9, 12, 24]", "[8, 12, 30]").isEmpty());  // of blocks of one size either may be larger
  CHECK(refused(kName + "[foot]\nsize = [9, 9, 9]\n").contains("could become larger than the one of 10 pt"));
}

TEST_CASE("a block says when it gives way, and from which trial on its facts are run together", "[paper][template]") {
  const auto read = read_label_template(
      block("facts = [\"made\", \"net\", \"keep-at\"]\nsize = [6, 7, 8]\ngives_way = \"first\"\nrun_together = 2\n"
            "alone = [\"net\"]") +
          block("band = true\nsize = [12, 17, 44]\ngives_way = \"last\"") + kName + kFoot,
      QStringLiteral("t.toml"));
  REQUIRE(read);
  CHECK(read->blocks[0].gives_way == GivesWay::First);
  CHECK(read->blocks[0].run_together == 2);
  CHECK(read->blocks[0].alone == std::vector{FactId::Net});
  CHECK(read->blocks[1].gives_way == GivesWay::Last);
  CHECK(read->blocks[2].gives_way == GivesWay::WithTheRest);
  CHECK(read->blocks[2].run_together == 0);
  CHECK(read->trials() == 3);
  CHECK(read_label_template(kName + kFoot, QStringLiteral("t.toml"))->trials() == 0);
}

TEST_CASE("how a block gives way is refused where nobody could follow it", "[paper][template][refused]") {
  const auto with = [](const QByteArray& lines) {
    return refused(block("facts = [\"made\", \"net\"]\nsize = [6, 7, 8]\n" + lines) + kFoot);
  };
  CHECK(with("gives_way = \"first\"\nrun_together = 3\nalone = [\"net\"]") == "");
  CHECK(with("gives_way = \"never\"") ==
        "t.toml:4:13: a block cannot give way \"never\"\n"
        "  gives_way = \"never\"\n"
        "              ^^^^^^^\n"
        "  write \"first\" or \"last\", or leave it out: with the rest\n");
  CHECK(with("run_together = 4") ==
        "t.toml:4:16: a block: run_together is 4\n"
        "  run_together = 4\n"
        "                 ^\n"
        "  write a whole number from 1 to 3\n");
  CHECK(with("run_together = 1\nalone = [\"name\"]") ==
        "t.toml:5:9: \"name\" is not a fact of this block\n"
        "  alone = [\"name\"]\n"
        "          ^^^^^^^^\n"
        "  name some of its facts, which keep lines of their own\n");
  CHECK(with("alone = [\"net\"]") ==
        "t.toml:4:9: a block that is not run together has all facts alone\n"
        "  alone = [\"net\"]\n"
        "          ^^^^^^^\n"
        "  state run_together = 1, or leave alone out\n");
}

TEST_CASE("a length is written in millimetres", "[paper][template][refused]") {
  CHECK(refused("margin = \"2 cm\"\n" + kName + kFoot) ==
        "t.toml:1:10: \"2 cm\" is not a length of a label\n"
        "  margin = \"2 cm\"\n"
        "           ^^^^^^\n"
        "  write it in millimetres, as \"1.5 mm\"\n");
  for (const char* length : {"\"-1 mm\"", "\"51 mm\"", "\"nan mm\"", "\"mm\"", "2"})
    CHECK_FALSE(refused("frame = " + QByteArray(length) + "\n" + kName + kFoot).isEmpty());
  CHECK(refused("frame = \"0 mm\"\n" + kName + kFoot).isEmpty());
}

TEST_CASE("the code's share is a part of the shorter side", "[paper][template][refused]") {
  CHECK(refused("code_share = 1.5\n" + kName + kFoot) ==
        "t.toml:1:14: code_share is not a part of the label's shorter side\n"
        "  code_share = 1.5\n"
        "               ^^^\n"
        "  write a number above 0 and up to 1\n");
}

TEST_CASE("a template without a block or without a foot is refused", "[paper][template][refused]") {
  CHECK(refused(kFoot) == "t.toml: the label template has no block\n  add a [[block]] with facts and size\n");
  CHECK(refused(kName) ==
        "t.toml: the label template has no foot\n  add a [foot] with a size for lot, container and serial\n");
}

TEST_CASE("a block without facts is refused: it would take no place", "[paper][template][refused]") {
  CHECK(refused(block("size = [8, 10, 20]") + kFoot) ==
        "t.toml:1:1: a block has no facts\n"
        "  [[block]]\n"
        "  ^^^^^^^^^\n"
        "  add facts = [\"…\"], or band = true\n");
}

TEST_CASE("a pad's template has lines to write on, and a place for what a hand is told", "[paper][template]") {
  const LabelTemplate label = read_label_template(shipped("pad.toml"), QStringLiteral("pad.toml")).value();
  for (const FactId id :
       {FactId::Name,        FactId::Readiness,  FactId::BlankMade, FactId::BlankDate,    FactId::BlankBy,
        FactId::BlankFrozen, FactId::DateRule,   FactId::Release,   FactId::Readings,     FactId::BookDay,
        FactId::Contains,    FactId::MayContain, FactId::Finishing, FactId::HoldFinished, FactId::ReducedOxygen,
        FactId::KeepAt,      FactId::Net,        FactId::Count,     FactId::UsedFor,      FactId::RemoveLabel}) {
    CAPTURE(facts::name(id));
    CHECK(has_place(label, id));
  }
  for (const Block& block : label.blocks) {
    const bool blank = block.facts.front() == FactId::BlankDate || block.facts.front() == FactId::BlankMade;
    if (blank) CHECK(block.write.value().preferred.value >= 8);  // a marker in a cold hand
  }
}

TEST_CASE("a writing line has three heights, none smaller than the one before", "[paper][template][refused]") {
  const auto with = [](const QByteArray& write) {
    return block("facts = [\"name\"]\nsize = [8, 10, 20]\nwrite = " + write) + kFoot;
  };
  CHECK(refused(with("[\"7 mm\", \"8 mm\", \"8 mm\"]")).isEmpty());
  const QString hint =
      QStringLiteral("write it as [least, preferred, most], each as \"8 mm\" and none smaller than the one before");
  for (const char* write : {"[\"8 mm\", \"7 mm\", \"9 mm\"]", "[\"8 mm\", \"9 mm\"]", "[\"8\", \"9\", \"10\"]",
                            "[\"0 mm\", \"9 mm\", \"10 mm\"]"}) {
    CAPTURE(write);
    CHECK(refused(with(write)).contains(QStringLiteral("t.toml:4:9: a block has no writing line that can be used")));
    CHECK(refused(with(write)).contains(hint));
  }
}

TEST_CASE("a weight is one of the face's", "[paper][template][refused]") {
  CHECK(refused(block("facts = [\"name\"]\nweight = \"heavy\"\nsize = [8, 10, 20]") + kFoot) ==
        "t.toml:3:10: \"heavy\" is not a weight\n"
        "  weight = \"heavy\"\n"
        "           ^^^^^^^\n"
        "  write \"regular\", \"bold\" or \"extra-bold\"\n");
}

TEST_CASE("a key that a template cannot have is refused, with the nearest that it can", "[paper][template][refused]") {
  CHECK(refused("margn = \"2 mm\"\n" + kName + kFoot) ==
        "t.toml:1:1: the label template cannot have \"margn\"\n"
        "  margn = \"2 mm\"\n"
        "  ^^^^^\n"
        "  did you mean margin?\n");
  CHECK(refused(block("facts = [\"name\"]\nsize = [8, 10, 20]\ncolour = \"red\"") + kFoot) ==
        "t.toml:4:1: a block cannot have \"colour\"\n"
        "  colour = \"red\"\n"
        "  ^^^^^^\n"
        "  what it can have: band, size, facts, beside, weight, run_together, alone, write, dark, gives_way\n");
  CHECK_FALSE(refused(block("band = true\nfacts = [\"name\"]\nsize = [8, 10, 20]") + kFoot).isEmpty());
}

TEST_CASE("all that is wrong with a template is told at once", "[paper][template][refused]") {
  CHECK(refused("margin = \"x\"\n" + block("facts = [\"nam\"]\nsize = [3, 2, 1]")).count(QStringLiteral("t.toml:")) ==
        4);
}

TEST_CASE("a file that is no TOML is refused at its fault", "[paper][template][refused]") {
  CHECK(refused("margin = ").startsWith("t.toml:1:"));
}
