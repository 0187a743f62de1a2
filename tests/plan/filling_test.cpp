// Containers that an output fills: full ones, one with the rest, and never more than came out.
#include "plan/filling.h"

#include "plan/counted.h"
#include "plan_kitchen.h"

using namespace lardiner;
using namespace lardiner::plan;
using kitchen::amount;

namespace {

struct Put {
  const char* kind;
  const char* holds;
};

book::Product put_up_in(const std::vector<Put>& containers) {
  book::Product product;
  for (const Put& put : containers) {
    book::ContainerSpec container;
    container.kind = QString::fromLatin1(put.kind);
    container.holds = amount(put.holds);
    product.containers.push_back(container);
  }
  return product;
}

// "24 tub 500 g + 1 tub 300 g"
QString text(const std::vector<Filled>& filled) {
  QStringList parts;
  for (const Filled& group : filled)
    parts << QStringLiteral("%1 %2 %3")
                 .arg(group.count)
                 .arg(group.container->kind, measure::display(group.holds, measure::System::Metric));
  return parts.join(QStringLiteral(" + "));
}

}  // namespace

TEST_CASE("an output fills whole containers, and one more with the rest", "[plan][filling]") {
  const book::Product butter = put_up_in({{"tub", "500 g"}, {"jar", "250 g"}});
  CHECK(text(filling(butter, amount("12.3 kg"))) == "24 tub 500 g + 1 tub 300 g");
  CHECK(text(filling(butter, amount("12 kg"))) == "24 tub 500 g");
  CHECK(text(filling(butter, amount("300 g"))) == "1 tub 300 g");
  const book::Product cakes = put_up_in({{"tray", "24 pieces"}});
  CHECK(text(filling(cakes, amount("121 pieces"))) == "5 tray 24 + 1 tray 1");
}

TEST_CASE("what the rounding of weights leaves neither empties a container nor fills one more", "[plan][filling]") {
  const book::Product butter = put_up_in({{"tub", "500 g"}});
  const measure::Quantity nanogram{measure::Dimension::Mass, 1};
  CHECK(text(filling(butter, amount("1 kg") - nanogram)) == "2 tub 500 g");
  CHECK(text(filling(butter, amount("1 kg") + nanogram)) == "2 tub 500 g");
}

TEST_CASE("an output goes into the first kind that is measured as it is; without one into none", "[plan][filling]") {
  const book::Product salsa = put_up_in({{"tray", "12 pieces"}, {"jar", "12 fl oz"}, {"tub", "1 kg"}});
  CHECK(text(filling(salsa, amount("2 kg"))) == "2 tub 1 kg");
  CHECK(text(filling(salsa, amount("13 pieces"))) == "1 tray 12 + 1 tray 1");
  CHECK(filling(put_up_in({{"tray", "12 pieces"}}), amount("2 kg")).empty());
  CHECK(filling(put_up_in({}), amount("2 kg")).empty());
  CHECK(filling(salsa, amount("0 g")).empty());
}

TEST_CASE("more than 100,000 containers are not filled", "[plan][filling]") {
  const book::Product seeds = put_up_in({{"bag", "1 g"}});
  CHECK(text(filling(seeds, amount("100 kg"))) == "100000 bag 1 g");
  CHECK(filling(seeds, amount("100.001 kg")).empty());
}

TEST_CASE("what the count loses is made and not put up", "[plan][filling]") {
  book::Product cakes;
  cakes.make_over = {3, 100};
  const book::Kitchen& kitchen = kitchen::small().kitchen;
  for (const std::int64_t wanted : {1, 33, 34, 41, 100, 120, 9999}) {
    const measure::Quantity made = measure::quantity({units_to_make(cakes, {wanted, 1}), 1}, measure::Unit::Piece);
    CHECK(put_up(kitchen, cakes, made) == measure::quantity({wanted, 1}, measure::Unit::Piece));
  }
  CHECK(put_up(kitchen, cakes, amount("48 pieces")) == amount("46 pieces"));  // 47 would need 49
}

TEST_CASE("a weight is put up to the step of the scale", "[plan][filling]") {
  const book::Kitchen& kitchen = kitchen::small().kitchen;
  CHECK(put_up(kitchen, {}, amount("12.3004 kg")) == amount("12.3 kg"));
  CHECK(put_up(kitchen, {}, amount("12.3 kg") - measure::Quantity{measure::Dimension::Mass, 1}) == amount("12.3 kg"));
  CHECK(put_up(kitchen, {}, amount("4 L")) == amount("4 L"));
}
