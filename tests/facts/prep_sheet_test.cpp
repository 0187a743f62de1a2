// What a prep sheet says: amounts as the scale reads them, allergens beside their lines, limits with room for readings.
#include "facts/prep_sheet.h"

#include "sheet_kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::sheets;

namespace {

WorkSheet prep_of(const char* product, std::int64_t times, const SheetSetting& setting = in_english(),
                  const Ahead& ahead = sheets::ahead()) {
  book::Weighing weighing(setting.book);
  return must(prep_sheet(setting,
                         plan::prep(setting.book, must(plan::scaled(setting.book, weighing,
                                                                    *setting.book.product(QString::fromLatin1(product)),
                                                                    measure::Ratio(times, 1)))),
                         ahead));
}

}  // namespace

TEST_CASE("a prep sheet says what is made, how much, and leaves room for who and when", "[facts][sheet][prep]") {
  const WorkSheet sheet = prep_of("stew", 2);
  CHECK(sheet.kind == "Prep sheet");
  CHECK(sheet.title == "Chicken stew");
  CHECK(QString(sheet.amount).replace(QChar(0x00A0), u' ') == "9 kg");
  CHECK(head(sheet) == QStringList{"9.985 kg (22 lb 0.2 oz) into a pull, 9 kg (19 lb 13.5 oz) out of it"});
  QStringList fields;
  for (const Cell& cell : sheet.fields) fields << said(cell);
  CHECK(fields == QStringList{"Lot; __", "Thu 26 Nov 2026", "Begun; __", "Ended; __", "By; __"});
  CHECK(QString(sheet.running).replace(QChar(0x00A0), u' ') == "Chicken stew · Thu 26 Nov 2026");
}

TEST_CASE("each line: what is pulled, what is weighed, what the scale then reads; the bowl tared",
          "[facts][sheet][prep]") {
  const WorkSheet sheet = prep_of("stew", 2);
  CHECK(rows(sheet, "Into Kettle · Empty: 3.2 kg") ==
        QStringList{"[] | Chicken; 20 mm dice; RAW: keep apart, clean down after | 8 kg; 17 lb 10.2 oz | 8 kg; 17 lb "
                    "10.2 oz | 8 kg | __",
                    "[] | Onions | 2 kg; 4 lb 6.5 oz | 1.8 kg; 3 lb 15.5 oz | 9.8 kg | __"});
}

TEST_CASE("allergens stand beside the line that brings them, and what is not known is said", "[facts][sheet][prep]") {
  const WorkSheet sheet = prep_of("stew", 1);
  CHECK(
      rows(sheet, "Bowl: small bowl") ==
      QStringList{"[] | Butter; MILK | 80 g; 2.8 oz | 80 g; 2.8 oz | 80 g | __",
                  "[] | Spice; Allergens not known: ask the chef | 12.5 g; 0.4 oz | 12.5 g; 0.4 oz | fine scale | __"});
}

TEST_CASE("a spoon or cup is said where the book knows one, with its source in the foot", "[facts][sheet][prep]") {
  book::Book book = read_kitchen();
  book.products[static_cast<size_t>(book.product_index.value(QStringLiteral("stew")))].formula[1].amount =
      quantity("80 g");
  const WorkSheet sheet = prep_of("stew", 1, in_english(book));
  CHECK(rows(sheet, "Into Kettle · Empty: 3.2 kg").value(1) ==
        "[] | Onions | 89 g; 3.1 oz | 80 g; 2.8 oz; ≈ ½ cup | 4.08 kg | __");
  CHECK(sheet.foot.front() == "Spoons and cups by USDA SR28 11282");
  CHECK(prep_of("stew", 4).foot.size() == 1);
}

TEST_CASE("the cook's and the cooling's limits of the adopted code, with lines for readings", "[facts][sheet][prep]") {
  // Food Code 2022 3-401.11(A)(3), poultry; 3-501.14(A)
  CHECK(rows(prep_of("stew", 1), "Critical limits") ==
        QStringList{"COOK TO 74 °C (165 °F) | __ | __ | __", "Cooling from 57 °C (135 °F) | __ | __ | __",
                    "to 21 °C (70 °F) within 2 h | __ | __ | __", "to 5 °C (41 °F) within 6 h | __ | __ | __"});
  CHECK(rows(prep_of("lime-butter", 1), "Critical limits").isEmpty());
}

TEST_CASE("a cook whose minimum is not known is never a cook without one", "[facts][sheet][prep]") {
  book::Book book = read_kitchen();
  book.products[static_cast<size_t>(book.product_index.value(QStringLiteral("lime-butter")))].process =
      book::Process::Cook;
  CHECK(rows(prep_of("lime-butter", 1, in_english(book)), "Critical limits").value(0) ==
        "Cook temperature not known: ask the chef | __ | __ | __");
}

TEST_CASE("lots that are drawn stand in the place of the line; what is filled is told with its labels",
          "[facts][sheet][prep]") {
  Ahead known = ahead();
  known.lot = QStringLiteral("A26330STW01X");
  known.drawn = {{QStringLiteral("butter"), QStringLiteral("MB-1"), QStringLiteral("walk-in 1"), quantity("50 g")},
                 {QStringLiteral("butter"), QStringLiteral("MB-2"), {}, quantity("30 g")}};
  known.fill = plan::filling(*kitchen().product(QStringLiteral("stew")), quantity("4.5 kg"));
  known.whom = QStringList{QStringLiteral("Harbour Street 118")};
  const WorkSheet sheet = prep_of("stew", 1, in_english(), known);
  CHECK(rows(sheet, "Bowl: small bowl").value(0).endsWith("| MB-1; 50 g · walk-in 1; MB-2 · 30 g"));
  CHECK(head(sheet).last() == "Fill and label: 2 tubs of 2 kg (4 lb 6.5 oz), 1 tub of 500 g (1 lb 1.6 oz)");
  CHECK(said(sheet.fields.front()) == "Lot A26330STW01X");
  CHECK(head(sheet).front() == "For Harbour Street 118");
  CHECK(sheet.running.contains(QStringLiteral("A26330STW01X")));
}

TEST_CASE("equal pulls have a box each; the amounts are those of one", "[facts][sheet][prep]") {
  book::Book book = read_kitchen();
  book::Product& stew = book.products[static_cast<size_t>(book.product_index.value(QStringLiteral("stew")))];
  stew.vessel_takes = quantity("6 kg");
  const WorkSheet sheet = prep_of("stew", 2, in_english(book));
  CHECK(head(sheet).front().startsWith("2 pulls, 4.993 kg"));
  CHECK(QString(sheet.amount).replace(QChar(0x00A0), u' ') == "9 kg");
  CHECK(rows(sheet, "Into Kettle · Empty: 3.2 kg").value(0).startsWith("[] | [] | Chicken"));
}

TEST_CASE("in two languages the second stands beneath, headings and allergens in both", "[facts][sheet][prep]") {
  const WorkSheet sheet = prep_of("stew", 1, in_both());
  CHECK(head(sheet).front() == "Guiso de pollo");
  const QString butter = rows(sheet, "Bowl: small bowl / Tazón: tazón").value(0);
  CHECK(butter.contains("Butter; Mantequilla; MILK / LECHE"));
  CHECK(sheet.foot.size() == 2);
}

TEST_CASE("a text that is lacking in a language of the sheet is refused, with its place", "[facts][sheet][prep]") {
  book::Book book = read_kitchen();
  book::Ingredient& onion = book.ingredients[static_cast<size_t>(book.ingredient_index.value(QStringLiteral("onion")))];
  onion.name.texts.pop_back();
  book::Weighing weighing(book);
  const plan::Prep prep =
      plan::prep(book, must(plan::scaled(book, weighing, *book.product(QStringLiteral("stew")), measure::Ratio(1, 1))));
  CHECK(prep_sheet(in_english(book), prep, ahead()));
  const auto refused = prep_sheet(in_both(book), prep, ahead());
  REQUIRE_FALSE(refused);
  REQUIRE(refused.error().size() == 1);
  CHECK(refused.error()[0].place.file == "more.toml");
  CHECK(refused.error()[0].what.contains(QStringLiteral("the name of ingredient \"onion\" has no text in \"es\"")));
}

TEST_CASE("what the drawn lots are not enough for is told, with room for its lot", "[facts][sheet][prep]") {
  Ahead known = ahead();
  const auto lots_of_butter = [&](const char* amount, const char* lot) {
    known.drawn = {{QStringLiteral("butter"), QString::fromLatin1(lot), QStringLiteral("walk-in 1"), quantity(amount)}};
    return rows(prep_of("stew", 1, in_english(), known), "Bowl: small bowl")
        .value(0)
        .section(QStringLiteral(" | "), -1);
  };
  CHECK(lots_of_butter("50 g", "MB-1") == "MB-1; 50 g · walk-in 1; 30 g · ____________");
  CHECK(lots_of_butter("80 g", "MB-1") == "MB-1; 80 g · walk-in 1");
  CHECK(lots_of_butter("80 g", "") == "____________; 80 g · walk-in 1");
}

TEST_CASE("raw animal food is told apart, and what nobody said is not raw; plants are not", "[facts][sheet][prep]") {
  book::Book book = read_kitchen();
  const auto chicken = [&](std::optional<bool> must_be_cooked, const char* food) {
    book::Ingredient& one =
        book.ingredients[static_cast<size_t>(book.ingredient_index.value(QStringLiteral("chicken")))];
    one.must_be_cooked = must_be_cooked;
    one.food = QString::fromLatin1(food);
    return rows(prep_of("stew", 1, in_english(book)), "Into Kettle · Empty: 3.2 kg")
        .value(0)
        .contains("RAW: keep apart");
  };
  CHECK(chicken(true, "poultry"));
  CHECK(chicken(std::nullopt, ""));
  CHECK_FALSE(chicken(true, "plant-hot-held"));
  CHECK_FALSE(chicken(false, "poultry"));
}

TEST_CASE("of many whom it is for the first few are named, and how many more", "[facts][sheet][prep]") {
  Ahead known = ahead();
  for (int i = 1; i <= 100; ++i) known.whom << QStringLiteral("Site %1").arg(i);
  CHECK(head(prep_of("stew", 1, in_english(), known)).front() ==
        "For Site 1, Site 2, Site 3, Site 4, Site 5, Site 6, +94");
}
