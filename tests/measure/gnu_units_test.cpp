// An independent program, GNU units, agrees with every factor.
#include "gnu_units.h"

#include <cmath>

#include "make.h"

using namespace lardiner::measure;
using lardiner::test_support::gnu_units;

namespace {

struct Named {
  Unit unit;
  const char* name;
  Unit base;
  const char* base_name;
};

const Named kFactors[] = {
    {Unit::Milligram, "milligram", Unit::Gram, "gram"},   {Unit::Kilogram, "kilogram", Unit::Gram, "gram"},
    {Unit::Ounce, "ounce", Unit::Gram, "gram"},           {Unit::Pound, "pound", Unit::Gram, "gram"},
    {Unit::Litre, "litre", Unit::Millilitre, "mL"},       {Unit::Teaspoon, "ustsp", Unit::Millilitre, "mL"},
    {Unit::Tablespoon, "ustbsp", Unit::Millilitre, "mL"}, {Unit::FluidOunce, "usfloz", Unit::Millilitre, "mL"},
    {Unit::Cup, "uscup", Unit::Millilitre, "mL"},         {Unit::Pint, "uspint", Unit::Millilitre, "mL"},
    {Unit::Quart, "usquart", Unit::Millilitre, "mL"},     {Unit::Gallon, "usgallon", Unit::Millilitre, "mL"},
};

}  // namespace

TEST_CASE("GNU units agrees with every factor", "[measure][unit][src:nist-hb44/appendix-c]") {
  for (const Named& factor : kFactors) {
    INFO(factor.name);
    const Ratio ours = in_unit(one(factor.unit), factor.base);
    const double exact = static_cast<double>(ours.num()) / static_cast<double>(ours.den());
    const double theirs = gnu_units({QLatin1String(factor.name), QLatin1String(factor.base_name)});
    CHECK(std::abs(theirs - exact) <= exact * 1e-14);
  }
}

TEST_CASE("GNU units agrees with conversions of temperature to the degree", "[measure][temperature]") {
  for (int degrees = -40; degrees <= 700; degrees += 37) {
    const double theirs = gnu_units({QStringLiteral("tempF(%1)").arg(degrees), QStringLiteral("tempC")});
    const Temperature ours = converted({degrees * 10, Scale::Fahrenheit}, Scale::Celsius);
    CHECK(std::abs(theirs - ours.tenths / 10.0) <= 0.5 + 1e-9);
  }
}
