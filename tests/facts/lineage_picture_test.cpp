// What the picture of a lineage says: names, lots, days, and what is only assumed.
#include "facts/lineage_picture.h"

#include "sheet_kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::sheets;

namespace {

Lineage lineage() {
  Lineage out;
  out.lots = {{QStringLiteral("butter"), QStringLiteral("S-7"), QDate(2026, 11, 20)},
              {QStringLiteral("lime-butter"), QStringLiteral("L1"), QDate(2026, 11, 25)},
              {QStringLiteral("stew"), QStringLiteral("L2"), QDate()}};
  out.into = {{0, 1, false}, {0, 1, true}, {0, 2, true}};
  out.asked = 1;
  return out;
}

}  // namespace

TEST_CASE("a lineage names its lots, and says in words which inputs are assumed", "[facts][lineage]") {
  const LineagePicture picture = must(lineage_picture(in_english(), lineage()));
  CHECK(picture.nodes[0].name == "Butter");
  CHECK(picture.nodes[0].lot == "S-7");
  CHECK(QString(picture.nodes[0].day).replace(QChar(0x00A0), u' ') == "Fri 20 Nov 2026");
  CHECK(picture.nodes[2].day.isEmpty());
  REQUIRE(picture.edges.size() == 2);
  CHECK_FALSE(picture.edges[0].assumed);
  CHECK(picture.edges[1].assumed);
  CHECK(picture.notes.value(1) == "A dashed line is assumed, since nobody confirmed that lot: S-7 in L2");
  CHECK(picture.more(212) == "More lots: 212");
  Lineage unwritten = lineage();
  unwritten.lots[0].lot.clear();
  CHECK(must(lineage_picture(in_english(), unwritten)).notes.value(1).endsWith(": Butter in L2"));
}

TEST_CASE("where nothing is assumed the picture speaks of no dashed line", "[facts][lineage]") {
  Lineage sure = lineage();
  sure.into = {{0, 1, false}};
  CHECK(must(lineage_picture(in_english(), sure)).notes.size() == 1);
}

TEST_CASE("a lineage without a lot is refused", "[facts][lineage]") {
  const auto refused = lineage_picture(in_english(), {});
  REQUIRE_FALSE(refused);
  CHECK(problem::text(refused.error()) == "there is no lot to draw\n  name a lot that the ledger knows\n");
}
