// What an assembly sheet says: per unit, for all, by the tray; and what is checked.
#include "facts/assembly_sheet.h"

#include "sheet_kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::sheets;

namespace {

WorkSheet assembly_of(std::int64_t wanted, const SheetSetting& setting = in_english(),
                      const std::vector<plan::Suffices>& suffices = {}) {
  book::Weighing weighing(setting.book);
  Ahead filled = ahead();
  const book::Product& product = *setting.book.product(QStringLiteral("cod-tray"));
  filled.fill = plan::filling(product, measure::quantity(measure::Ratio(wanted, 1), measure::Unit::Piece));
  return must(assembly_sheet(setting, must(plan::assembly(setting.book, weighing, product, wanted)), suffices, filled));
}

}  // namespace

TEST_CASE("an assembly sheet says how many with the make-over, and what one weighs, from least to most",
          "[facts][sheet][assembly]") {
  const WorkSheet sheet = assembly_of(60);
  CHECK(QString(sheet.amount).replace(QChar(0x00A0), u' ') == "62 pieces");
  CHECK(head(sheet).mid(0, 2) == QStringList{"62 pieces for 60 pieces", "One weighs 80 g (2.8 oz), 76 g to 84 g"});
}

TEST_CASE("each line: pieces or weight in one, for all, and what is pulled; raw is told apart",
          "[facts][sheet][assembly]") {
  // 6 to 8 to the pound: 62 pieces are sure to be in 62/6 lb = 4.687 kg, at worst.
  const QStringList lines = rows(assembly_of(60), "");
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].startsWith("[] | Cod; FISH; RAW: keep apart, clean down after | 1 piece; "));
  CHECK(lines[0].contains("4.688 kg; 10 lb 5.4 oz; 62 pieces for sure"));
  // A US quart by the number: 946.352946 mL / 100.
  CHECK(
      lines[1] ==
      "[] | Lime butter; Disher no. 100, level (9.5 mL (1.9 tsp)); MILK | 12 g; 0.4 oz | 744 g; 1 lb 10.2 oz | 744 g; "
      "1 lb 10.2 oz | __");
  CHECK(lines[2].startsWith("[] | Butter; Brush: 48 g (1.7 oz) a tray; MILK | 2 g; 0.1 oz | 124 g; 4.4 oz"));
}

TEST_CASE("the bottle of what is brushed is weighed over the first whole trays", "[facts][sheet][assembly]") {
  CHECK(rows(assembly_of(60), "Weigh the bottle before and after") ==
        QStringList{"Butter: Before | __ | __", "Butter: After | __ | __"});
  CHECK(rows(assembly_of(23), "Weigh the bottle before and after").isEmpty());
}

TEST_CASE("how many leave the cold at a time, with lines for out and back", "[facts][sheet][assembly]") {
  CHECK(rows(assembly_of(60), "Take out for 60 pieces at a time; back in the cold within 30 min") ==
        QStringList{"1; __ | __ | 2; __ | __ |  | "});
  book::Book book = read_kitchen();
  book.products[static_cast<size_t>(book.product_index.value(QStringLiteral("cod-tray")))].units_per_hour =
      measure::Ratio(1, 1);
  CHECK(rows(assembly_of(60, in_english(book)), "Not one is assembled within 30 min: ask the chef").size() == 1);
}

TEST_CASE("check-weighing: the first five, then every twentieth, against the range", "[facts][sheet][assembly]") {
  CHECK(rows(assembly_of(60), "Check-weigh: 76 g to 84 g") ==
        QStringList{"1; __ | 2; __ | 3; __ | 4; __ | 5; __", "20; __ | 40; __ | 60; __ |  | "});
  CHECK(rows(assembly_of(2), "Check-weigh: 76 g to 84 g") == QStringList{"1; __ | 2; __ | 3; __ |  | "});
}

TEST_CASE("trays by rows and columns, and the odd one", "[facts][sheet][assembly]") {
  CHECK(head(assembly_of(60)).last() ==
        "Fill and label: 2 trays of 24 pieces (4 by 6 · Empty: 300 g), 1 tray of 12 pieces (4 by 6 · Empty: 300 g)");
}

TEST_CASE("what there is, at worst, likely and at best; what limits stands first, unknown is not a number",
          "[facts][sheet][assembly]") {
  const std::vector<plan::Suffices> there{{QStringLiteral("cod"), {std::nullopt, std::nullopt, 80}},
                                          {QStringLiteral("lime-butter"), {83, 83, 83}}};
  CHECK(rows(assembly_of(60, in_english(), there), "What there is gives") ==
        QStringList{"Cod; this limits | not known | not known | 80", "Lime butter | 83 | 83 | 83"});
}

TEST_CASE("an assembly sheet in two languages", "[facts][sheet][assembly]") {
  const QStringList lines = rows(assembly_of(60, in_both()), "");
  CHECK(lines[0].contains("Cod; Bacalao;"));
  CHECK(lines[0].contains("FISH / PESCADO"));
}

TEST_CASE("numbers of five digits leave room to write beside them", "[facts][sheet][assembly]") {
  const QStringList weights = rows(assembly_of(10'000), "Check-weigh: 76 g to 84 g");
  CHECK(weights.value(0) == "1; __ | 2; __ | 3; __ | 4; __");
}
