// Amounts as people write and read them.
#include "measure/text.h"

#include <random>

#include "make.h"

using namespace lardiner;
using namespace lardiner::measure;

namespace {

Quantity read(const char* text) { return parse_quantity(QString::fromUtf8(text)).value(); }

QString refusal(const char* text, Zero zero = Zero::Refused, bool decimal_comma = false) {
  const auto got = parse_quantity(QString::fromUtf8(text), zero, decimal_comma);
  return got ? QStringLiteral("read") : problem::text(got.error());
}

QString number_refusal(const char* text, bool decimal_comma = false) {
  const auto got = parse_decimal(QString::fromUtf8(text), decimal_comma);
  return got ? QStringLiteral("read") : problem::text(got.error());
}

const QString kUnits = QStringLiteral("mg, g, kg, oz, lb, mL, L, tsp, tbsp, fl oz, cup, pint, quart, gallon, piece");

}  // namespace

TEST_CASE("an amount is read with its unit", "[measure][parse]") {
  CHECK(read("500 g") == grams(500));
  CHECK(read("500g") == grams(500));
  CHECK(read("2.5 kg") == grams(2500));
  CHECK(read("1 lb 1.6 oz") == pounds(1) + scaled(ounces(1), Ratio(16, 10)));
  CHECK(read("2 lbs. 4 oz.") == ounces(36));
  CHECK(read("1 1/2 cup") == quantity(Ratio(3, 2), Unit::Cup));
  CHECK(read("3/4 tsp") == quantity(Ratio(3, 4), Unit::Teaspoon));
  CHECK(read("24 pieces") == quantity(Ratio(24, 1), Unit::Piece));
  CHECK(read("12 each") == quantity(Ratio(12, 1), Unit::Piece));
  CHECK(read("16 fl oz") == quantity(Ratio(16, 1), Unit::FluidOunce));
  CHECK(read("16 fl. oz.") == quantity(Ratio(16, 1), Unit::FluidOunce));
  CHECK(read(" 750  mL ") == millilitres(750));
  CHECK(read("0.000000001 g").amount == 1);
  CHECK(read("4000000 kg").amount == kMostNanograms);
}

TEST_CASE("an amount without a unit is refused", "[measure][parse]") {
  CHECK(refusal("500") == QStringLiteral("\"500\" has no unit\n  write the unit after the number: ") + kUnits);
  CHECK(refusal("1 lb 6") == QStringLiteral("\"1 lb 6\" has no unit\n  write the unit after the number: ") + kUnits);
}

TEST_CASE("a unit without an amount is refused", "[measure][parse]") {
  const QString hint = QStringLiteral("\n  write a number and a unit, such as 500 g");
  CHECK(refusal("kg") == QStringLiteral("\"kg\" is not an amount") + hint);
  CHECK(refusal("") == QStringLiteral("\"\" is not an amount") + hint);
  CHECK(refusal("some salt") == QStringLiteral("\"some salt\" is not an amount") + hint);
}

TEST_CASE("a negative or zero amount is refused, zero is read where it is allowed", "[measure][parse]") {
  CHECK(refusal("-5 kg") == QStringLiteral("\"-5 kg\" is negative\n  write an amount above zero"));
  CHECK(refusal("\u22125 kg") == QStringLiteral("\"\u22125 kg\" is negative\n  write an amount above zero"));
  CHECK(refusal("0 g") == QStringLiteral("\"0 g\" is zero\n  write an amount above zero"));
  CHECK(refusal("0 lb 0.0 oz") == QStringLiteral("\"0 lb 0.0 oz\" is zero\n  write an amount above zero"));
  CHECK(parse_quantity(QStringLiteral("0 g"), Zero::Allowed).value() == grams(0));
  CHECK(refusal("-5 kg", Zero::Allowed) == QStringLiteral("\"-5 kg\" is negative\n  write an amount above zero"));
}

TEST_CASE("an absurd amount is refused", "[measure][parse]") {
  const QString what = QStringLiteral(
      " is more than a kitchen can hold\n"
      "  write at most 4000 tonnes, 40000 litres or 1000000 pieces");
  CHECK(refusal("4000001 kg") == QStringLiteral("\"4000001 kg\"") + what);
  CHECK(refusal("40001 L") == QStringLiteral("\"40001 L\"") + what);
  CHECK(refusal("1000001 pieces") == QStringLiteral("\"1000001 pieces\"") + what);
  CHECK(refusal("999999999999999999 kg 999999999999999999 g") ==
        QStringLiteral("\"999999999999999999 kg 999999999999999999 g\"") + what);
  CHECK(refusal("1234567890123456789 g") ==
        QStringLiteral("\"1234567890123456789 g\" has too many digits\n  write at most 18 digits"));
  CHECK(refusal("0.0000000001 g") ==
        QStringLiteral("\"0.0000000001 g\" is too small to measure\n  write at least a millionth of a gram"));
}

TEST_CASE("a thousands mark is refused, since a comma may be a decimal mark", "[measure][parse]") {
  CHECK(refusal("1,234 kg") == QStringLiteral("\"1,234 kg\" has a thousands mark\n  write it as 1234 kg"));
  CHECK(refusal("1,234.5 g") == QStringLiteral("\"1,234.5 g\" has a thousands mark\n  write it as 1234.5 g"));
  CHECK(refusal("12 500 g") == QStringLiteral("\"12 500 g\" has a thousands mark\n  write the number as 12500"));
  CHECK(refusal("2,5 kg") ==
        QStringLiteral("\"2,5 kg\" has a comma in its number\n  write the decimal mark as a point: 2.5"));
}

TEST_CASE("with a decimal comma both marks are read, and what may be one or a thousand is refused",
          "[measure][parse]") {
  CHECK(parse_quantity(QStringLiteral("2,5 kg"), Zero::Refused, true).value() == grams(2500));
  CHECK(parse_quantity(QStringLiteral("2.5 kg"), Zero::Refused, true).value() == grams(2500));
  CHECK(parse_quantity(QStringLiteral("1,234 kg"), Zero::Refused, true).value() == grams(1234));
  CHECK(refusal("1.234 kg", Zero::Refused, true) ==
        QStringLiteral("\"1.234 kg\" may be one or a thousand\n  write the number as 1,234 or 1234"));
  CHECK(refusal("1.234,5 kg", Zero::Refused, true) ==
        QStringLiteral("\"1.234,5 kg\" has a thousands mark\n  write the number with its decimal comma only"));
}

TEST_CASE("a fraction is read, and one that divides by zero is refused", "[measure][parse]") {
  CHECK(refusal("1/0 lb") == QStringLiteral("\"1/0 lb\" divides by zero\n  write a fraction such as 1/2"));
  CHECK(refusal("1/2/3 lb") ==
        QStringLiteral("\"1/2/3 lb\" has a fraction that cannot be read\n  write it as 1/2 or 1 1/2"));
  CHECK(refusal("1.5 1/2 lb") ==
        QStringLiteral("\"1.5 1/2 lb\" has a fraction that cannot be read\n  write it as 1/2 or 1 1/2"));
}

TEST_CASE("an unknown unit is refused with the nearest known one", "[measure][parse]") {
  CHECK(refusal("500 grms") == QStringLiteral("\"500 grms\" has an unknown unit, \"grms\"\n"
                                              "  did you mean \"grams\"? the units are ") +
                                   kUnits);
  CHECK(refusal("3 teaspons") == QStringLiteral("\"3 teaspons\" has an unknown unit, \"teaspons\"\n"
                                                "  did you mean \"teaspoons\"? the units are ") +
                                     kUnits);
  CHECK(refusal("5 cl") == QStringLiteral("\"5 cl\" has an unknown unit, \"cl\"\n  the units are ") + kUnits);
  CHECK(refusal("5 T") == QStringLiteral("\"5 T\" has an unknown unit, \"t\"\n  the units are ") + kUnits);
}

TEST_CASE("units that do not add up are refused", "[measure][parse]") {
  const QString hint = QStringLiteral(
      " mixes units that do not add up\n"
      "  write the larger unit first, each once: 1 lb 1.6 oz");
  CHECK(refusal("1 oz 2 lb") == QStringLiteral("\"1 oz 2 lb\"") + hint);
  CHECK(refusal("1 lb 2 lb") == QStringLiteral("\"1 lb 2 lb\"") + hint);
  CHECK(refusal("1 lb 2 mL") == QStringLiteral("\"1 lb 2 mL\"") + hint);
}

TEST_CASE("a decimal point is never lost", "[measure][parse]") {
  CHECK(refusal(".5 kg") == QStringLiteral("\".5 kg\" has nothing before its decimal point\n  write it as 0.5"));
  CHECK(refusal("5. kg") == QStringLiteral("\"5. kg\" is not a number\n  write it as 12 or 0.61"));
  CHECK(refusal("1 lb .5 oz") ==
        QStringLiteral("\"1 lb .5 oz\" has an unknown unit, \"lb .\"\n  the units are ") + kUnits);
  CHECK(refusal("1 lb.5 oz") ==
        QStringLiteral("\"1 lb.5 oz\" has an unknown unit, \"lb.\"\n  did you mean \"lb\"? the units are ") + kUnits);
}

TEST_CASE("a plain decimal is read exactly", "[measure][parse]") {
  CHECK(parse_decimal(QStringLiteral("12")).value() == Ratio(12, 1));
  CHECK(parse_decimal(QStringLiteral("0.61")).value() == Ratio(61, 100));
  CHECK(parse_decimal(QStringLiteral("1,5"), true).value() == Ratio(3, 2));
  CHECK(parse_decimal(QStringLiteral("0")).value() == Ratio());
  CHECK(parse_decimal(QStringLiteral("28.349523125")).value() == in_unit(one(Unit::Ounce), Unit::Gram));
}

TEST_CASE("a decimal that cannot be read is refused", "[measure][parse]") {
  CHECK(number_refusal("-1") == QStringLiteral("\"-1\" is negative\n  write a number without a sign"));
  for (const char* text : {"+1", "1e3", "", "x", "1/2", "1.", "1.2.3", "0x10", "\u0661"}) {
    CHECK(number_refusal(text) ==
          u'"' + QString::fromUtf8(text) + QStringLiteral("\" is not a number\n  write it as 12 or 0.61"));
  }
}

TEST_CASE("54 g and 54 g make 108 g or 3.8 oz", "[measure][display][src:practice]") {
  const Quantity both = grams(54) + grams(54);
  CHECK(display(both, System::Metric) == QStringLiteral("108 g"));
  CHECK(display(both, System::Customary) == QStringLiteral("3.8 oz"));
}

TEST_CASE("an amount is shown with a language's decimal mark and its own way with a unit", "[measure][display]") {
  const Notation cyrillic{u',', [](const QString& figure, Unit unit) -> QString {
                            return unit == Unit::Kilogram ? figure + QStringLiteral(" кг")
                                                          : figure + QStringLiteral(" г");
                          }};
  CHECK(display(grams(1250), System::Metric, cyrillic) == QStringLiteral("1,25 кг"));
  CHECK(display(grams(500), System::Metric, cyrillic) == QStringLiteral("500 г"));
  CHECK(display(grams(0), System::Metric, cyrillic) == QStringLiteral("0 г"));
  CHECK(declared(grams(2265), System::Metric, cyrillic) == QStringLiteral("2,26 кг"));
  CHECK(display(read("2 1/2 pieces"), System::Metric, cyrillic) == QStringLiteral("2,5"));
}

TEST_CASE("an amount is shown in the kitchen's working unit", "[measure][display]") {
  CHECK(display(grams(500), System::Metric) == QStringLiteral("500 g"));
  CHECK(display(grams(500), System::Customary) == QStringLiteral("1 lb 1.6 oz"));
  CHECK(display(grams(1250), System::Metric) == QStringLiteral("1.25 kg"));
  CHECK(display(grams(1000), System::Metric) == QStringLiteral("1 kg"));
  CHECK(display(read("3.14 g"), System::Metric) == QStringLiteral("3.1 g"));
  CHECK(display(pounds(2), System::Customary) == QStringLiteral("2 lb"));
  CHECK(display(millilitres(750), System::Metric) == QStringLiteral("750 mL"));
  CHECK(display(read("1.5 L"), System::Metric) == QStringLiteral("1.5 L"));
  CHECK(display(read("1 1/2 tsp"), System::Customary) == QStringLiteral("1.5 tsp"));
  CHECK(display(read("1 cup"), System::Customary) == QStringLiteral("8 fl oz"));
  CHECK(display(read("1 cup"), System::Metric) == QStringLiteral("237 mL"));
  CHECK(display(read("5 cup"), System::Customary) == QStringLiteral("1 qt 8 fl oz"));
  CHECK(display(read("2 gallon 1 cup"), System::Customary) == QStringLiteral("2 gal 8 fl oz"));
  CHECK(display(read("24 pieces"), System::Metric) == QStringLiteral("24"));
  CHECK(display(read("2.5 pieces"), System::Metric) == QStringLiteral("2.5"));
}

TEST_CASE("an amount just under the next unit is not shown as a thousand of the smaller", "[measure][display]") {
  CHECK(display(read("999.6 g"), System::Metric) == QStringLiteral("1 kg"));
  CHECK(display(read("9.96 g"), System::Metric) == QStringLiteral("10 g"));
  CHECK(display(read("15.96 oz"), System::Customary) == QStringLiteral("1 lb"));
  CHECK(display(read("1 lb 15.96 oz"), System::Customary) == QStringLiteral("2 lb"));
}

TEST_CASE("a little is never shown as nothing", "[measure][display]") {
  CHECK(display(read("0.04 g"), System::Metric) == QStringLiteral("40 mg"));
  CHECK(display(read("0.0001 g"), System::Metric) == QStringLiteral("<1 mg"));
  CHECK(display(read("1 g"), System::Customary) == QStringLiteral("0.04 oz"));
  CHECK(display(read("0.02 mL"), System::Metric) == QStringLiteral("0.02 mL"));
  CHECK(display(read("0.01 tsp"), System::Customary) == QStringLiteral("0.01 tsp"));
  CHECK(display(grams(0), System::Metric) == QStringLiteral("0 g"));
  CHECK(display(grams(1) - grams(501), System::Metric) == QStringLiteral("\u2212500 g"));
}

TEST_CASE("what is shown, read again, is within half a step of what was meant", "[measure][display]") {
  std::mt19937_64 random(17);
  std::uniform_int_distribution<std::int64_t> milligrams(100'000, 50'000'000);
  for (int i = 0; i < 5'000; ++i) {
    const Quantity q = quantity(Ratio(milligrams(random), 1), Unit::Milligram);
    const auto off = [&](System system) { return std::abs((parse_quantity(display(q, system)).value() - q).amount); };
    REQUIRE(off(System::Metric) <= one(Unit::Gram).amount / 2);
    REQUIRE(off(System::Customary) <= one(Unit::Ounce).amount / 20 + 1);
  }
}

TEST_CASE("an amount is rounded to the step of the scale, half up", "[measure][rounding]") {
  CHECK(rounded_to_step(grams(502), grams(5)) == grams(500));
  CHECK(rounded_to_step(read("502.5 g"), grams(5)) == grams(505));
  CHECK(display(rounded_to_step(scaled(pounds(3), Ratio(119, 100)), ounces(1)), System::Customary) ==
        QStringLiteral("3 lb 9 oz"));
}

TEST_CASE("2 lb of diced watermelon at 0.61 edible are 3.28 lb, bought as 3.5 lb",
          "[measure][rounding][src:usda-fbg/appendix-b]") {
  const Quantity bought = scaled(pounds(2), Ratio(1, 1) / Ratio(61, 100));
  CHECK(in_unit(rounded_to_step(bought, scaled(pounds(1), Ratio(1, 100))), Unit::Pound) == Ratio(328, 100));
  CHECK(rounded_up_to_step(bought, quantity(Ratio(1, 2), Unit::Pound)) == quantity(Ratio(7, 2), Unit::Pound));
}

TEST_CASE("10 lb of edible onion at 90 in the hundred are bought as 11.2 lb, rounded up",
          "[measure][rounding][src:usda-sr28/FOOD_DES]") {
  const Quantity bought = scaled(pounds(10), Ratio(100, 90));
  CHECK(rounded_up_to_step(bought, quantity(Ratio(1, 10), Unit::Pound)) == quantity(Ratio(112, 10), Unit::Pound));
  CHECK(rounded_up_to_step(pounds(10), pounds(5)) == pounds(10));
}

TEST_CASE("a declared quantity is rounded down where rounding would overstate",
          "[measure][declared][src:16-cfr-500/500.19]") {
  CHECK(declared(pounds(1), System::Metric) == QStringLiteral("453 g"));
  CHECK(declared(pounds(5), System::Metric) == QStringLiteral("2.26 kg"));
  CHECK(declared(read("16 fl oz"), System::Metric) == QStringLiteral("473 mL"));
  CHECK(declared(ounces(24), System::Metric) == QStringLiteral("680 g"));
  CHECK(declared(grams(500), System::Customary) == QStringLiteral("17.6 oz"));
}

TEST_CASE("a declared quantity has three digits, or two", "[measure][declared][src:nist-hb130/uplr]") {
  CHECK(declared(pounds(1), System::Customary) == QStringLiteral("16 oz"));
  CHECK(declared(grams(108), System::Customary) == QStringLiteral("3.8 oz"));
  CHECK(declared(read("99.9 g"), System::Metric) == QStringLiteral("99 g"));
  CHECK(declared(read("9.99 g"), System::Metric) == QStringLiteral("9.9 g"));
  CHECK(declared(read("0.999 g"), System::Metric) == QStringLiteral("0.99 g"));
  CHECK(declared(read("999.9 g"), System::Metric) == QStringLiteral("999 g"));
  CHECK(declared(read("12.399 kg"), System::Metric) == QStringLiteral("12.3 kg"));
  CHECK(declared(read("123.9 kg"), System::Metric) == QStringLiteral("123 kg"));
  CHECK(declared(grams(2268), System::Customary) == QStringLiteral("5 lb"));
  CHECK(declared(read("500 mL"), System::Customary) == QStringLiteral("16.9 fl oz"));
  CHECK(declared(read("5 L"), System::Customary) == QStringLiteral("1.32 gal"));
  CHECK(declared(read("24 pieces"), System::Metric) == QStringLiteral("24"));
}

TEST_CASE("a declared quantity never overstates, in either system", "[measure][declared][src:16-cfr-500/500.19]") {
  std::mt19937_64 random(23);
  std::uniform_int_distribution<std::int64_t> milligrams(1'000, 200'000'000);
  for (int i = 0; i < 5'000; ++i) {
    const Quantity q = quantity(Ratio(milligrams(random), 1), Unit::Milligram);
    for (const System system : {System::Metric, System::Customary}) {
      const Quantity stated = parse_quantity(declared(q, system)).value();
      REQUIRE_FALSE(less(q, stated));
      REQUIRE(less(q, scaled(stated, Ratio(113, 100))));
    }
  }
}

TEST_CASE("5 lb of 21 to 25 to the pound are 105 to 125 pieces", "[measure][scaling][src:practice]") {
  CHECK(scaled(quantity(Ratio(21, 1), Unit::Piece), Ratio(5, 1)) == quantity(Ratio(105, 1), Unit::Piece));
  CHECK(scaled(quantity(Ratio(25, 1), Unit::Piece), Ratio(5, 1)) == quantity(Ratio(125, 1), Unit::Piece));
}

TEST_CASE("a scale's reading has the decimals of its step, and no zeros behind", "[measure][display]") {
  const auto shown = [](const char* weight, const char* step, System system = System::Metric) {
    return display_in_steps(read(weight), read(step), system);
  };
  CHECK(shown("13.4 g", "0.1 g") == QStringLiteral("13.4 g"));
  CHECK(shown("13 g", "0.1 g") == QStringLiteral("13 g"));
  CHECK(shown("4 mg", "1 mg") == QStringLiteral("0.004 g"));
  CHECK(shown("999 g", "1 g") == QStringLiteral("999 g"));
  CHECK(shown("1250 g", "1 g") == QStringLiteral("1.25 kg"));
  CHECK(shown("12345 g", "1 g") == QStringLiteral("12.345 kg"));
  CHECK(shown("12.34 kg", "20 g") == QStringLiteral("12.34 kg"));
  CHECK(shown("1000.5 g", "0.5 g") == QStringLiteral("1.0005 kg"));
  CHECK(shown("15.95 oz", "0.05 oz", System::Customary) == QStringLiteral("15.95 oz"));
  CHECK(shown("2 lb 3.5 oz", "0.1 oz", System::Customary) == QStringLiteral("2 lb 3.5 oz"));
  CHECK(shown("1 lb", "0.05 oz", System::Customary) == QStringLiteral("1 lb"));
}

TEST_CASE("no reading that a scale can show is shown as another", "[measure][display]") {
  std::mt19937_64 random(31);
  std::uniform_int_distribution<std::int64_t> steps(1, 60'000);
  for (const char* step : {"1 mg", "0.1 g", "0.5 g", "1 g", "5 g", "20 g"})
    for (int i = 0; i < 500; ++i) {
      const Quantity q = scaled(read(step), Ratio(steps(random), 1));
      REQUIRE(parse_quantity(display_in_steps(q, read(step), System::Metric)).value() == q);
    }
}
