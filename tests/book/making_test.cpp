// How things are made, as a sound book says it, and the formulas of other sizes.
#include "book/roll_up.h"
#include "measure/text.h"
#include "refused.h"
#include "tables.h"

using namespace lardiner;
using namespace lardiner::book;

namespace {

measure::Quantity amount(const char* text) { return *measure::parse_quantity(QString::fromUtf8(text)); }

QByteArray assembled(const QByteArray& id, int number, const QByteArray& formula, const QByteArray& more) {
  return book_test::product(id, number, formula, more).replace("\"component\"", "\"assembled item\"");
}

// An assembled item without a formula of its own.
QByteArray size_of(const QByteArray& other, int number, const QByteArray& more) {
  QByteArray table = assembled("small", number, "", more);
  return table.replace("formula = []", "formula_of = \"" + other + "\"");
}

QString refusal(const QByteArray& tables) {
  const book_test::Reading reading = book_test::read_with(tables);
  QStringList all;
  for (const problem::Error& error : reading.findings.errors)
    all += QStringLiteral("%1: %2; %3").arg(error.place.line).arg(error.what, error.hint);
  return all.join(u'\n');
}

QStringList shown(const Book& book, const char* id) {
  QStringList all;
  for (const FormulaLine& line : book.product(QLatin1String(id))->formula)
    all += line.item + u' ' + measure::display(line.amount, measure::System::Metric);
  return all;
}

const QByteArray kBig =
    assembled("big", 1,
              "{ item = \"dough\", per_unit = \"60 g\", main = true, tool = \"cutter\" }, "
              "{ item = \"lime\", per_unit = \"1 piece\", tool = \"tongs\" }, "
              "{ item = \"butter\", per_unit = \"1 tbsp\", laying = \"brushed\", bowl = \"glaze\" }, "
              "{ item = \"water\", per_unit = \"50 g\", disher = 16 }, "
              "{ item = \"pepper\", per_main = \"5 g\", each = \"1 kg\" }",
              "makes = \"96 pieces\"\nunit_weight = \"110 g\"");

}  // namespace

TEST_CASE("how things are made is read as it is written", "[book][making]") {
  std::vector<book_test::SourceFile> files = book_test::kitchen();
  book_test::edit(book_test::file_of(files, QStringLiteral("kitchen.toml")), "", "scale_step = \"1 g\"",
                  "scale_step = \"1 g\"\nfine_scale_step = \"0.1 g\"\nout_of_cold = \"4 h\"");
  book_test::edit(book_test::file_of(files, QStringLiteral("places.toml")), "", "[[site]]",
                  "[[vessel]]\nid = \"kettle\"\nname = { en = \"Kettle\", es = \"Marmita\" }\ntare = \"14 kg\"\n"
                  "[[vessel]]\nid = \"pot\"\nname = \"Pot\"\n[[site]]");
  book_test::edit(book_test::file_of(files, QStringLiteral("pantry.toml")), "id = \"chicken\"", "animal = true",
                  "animal = true\ncount_grade = \"6/8 per kg\"\nbought_by = \"25 lb\"\nbought_as = { en = \"case\", es "
                  "= \"caja\" }\nreceived_at_most = \"45 °F (7 °C)\"\nreceived_source = \"a law\"");
  book_test::edit(book_test::file_of(files, QStringLiteral("pantry.toml")), "id = \"lime\"", "edible = \"80 %\"",
                  "edible = \"80 %\"\ncount_grade = \"U/10 per lb\"\nbought_by = \"12 pieces\"");
  book_test::SourceFile& products = book_test::file_of(files, QStringLiteral("products.toml"));
  book_test::edit(
      products, "id = \"tinga\"", "cooled_from = \"hot\"\n",
      "cooled_from = \"hot\"\nvessel = \"kettle\"\nvessel_takes = \"18 kg\"\nkeep_on_hand = \"10 "
      "kg\"\nmade_in = \"4.2 kg\"\nstep = [{ kind = \"cook\", text = { en = \"Simmer\", es = \"Hervir\" }, takes = "
      "\"12 to 15 min\", setting = \"212 °F (100 °C)\" }, { kind = \"cool\", text = \"Ice bath\" }, { kind "
      "= \"freeze\", text = \"Freeze\", takes = \"8 h\" }]\n");
  book_test::edit(products, "id = \"parcel\"", "unit_weight = \"90 g\"",
                  "unit_weight = \"90 g\"\nunit_least = \"90 g\"\nunit_most = \"94 g\"\nunits_per_hour = 180");
  book_test::edit(products, "id = \"parcel\"", "item = \"marinade\", per_unit = \"40 g\"",
                  "item = \"marinade\", per_unit = \"40 g\", disher = 100, bowl = { en = \"wet\", es = \"húmedo\" }");
  book_test::edit(products, "id = \"parcel\"", "holds = \"24 pieces\"",
                  "holds = \"24 pieces\"\nrows = 4\ncolumns = 6\ntare = \"1.2 kg\"");
  const book_test::Reading reading = book_test::read(files);
  CHECK(problem::text(reading.findings.errors) == QString());
  CHECK(problem::text(reading.findings.gaps) == QString());
  const Book& book = reading.book;
  CHECK(book.kitchen.fine_scale_step == amount("0.1 g"));
  CHECK(book.kitchen.out_of_cold_seconds == 14'400);
  CHECK(book.vessel(QStringLiteral("kettle"))->tare == amount("14 kg"));
  CHECK(book.vessel(QStringLiteral("kettle"))->name.in(QStringLiteral("es")) == QStringLiteral("Marmita"));
  CHECK_FALSE(book.vessel(QStringLiteral("pot"))->tare);
  const CountGrade& range = *book.ingredient(QStringLiteral("chicken"))->count_grade;
  CHECK(range.fewest == 6);
  CHECK(range.most == 8);
  CHECK(range.per == amount("1 kg"));
  CHECK(book.ingredient(QStringLiteral("chicken"))->bought_by == amount("25 lb"));
  CHECK(book.ingredient(QStringLiteral("chicken"))->bought_as.in(QStringLiteral("es")) == QStringLiteral("caja"));
  CHECK(book.ingredient(QStringLiteral("chicken"))->received_at_most->fahrenheit.tenths == 450);
  CHECK(book.ingredient(QStringLiteral("chicken"))->received_source == QStringLiteral("a law"));
  CHECK_FALSE(book.ingredient(QStringLiteral("lime"))->received_at_most);
  CHECK_FALSE(book.ingredient(QStringLiteral("lime"))->count_grade->fewest);
  CHECK(book.ingredient(QStringLiteral("lime"))->count_grade->per == amount("1 lb"));
  const Product& tinga = *book.product(QStringLiteral("tinga"));
  CHECK(tinga.vessel_takes == amount("18 kg"));
  CHECK(tinga.keep_on_hand == amount("10 kg"));
  CHECK(tinga.made_in == amount("4.2 kg"));
  REQUIRE(tinga.steps.size() == 3);
  CHECK(tinga.steps[0].kind == StepKind::Cook);
  CHECK(tinga.steps[0].seconds == std::pair(720, 900));
  CHECK(tinga.steps[0].setting->celsius.tenths == 1000);
  CHECK_FALSE(tinga.steps[1].seconds);
  CHECK(tinga.steps[2].kind == StepKind::Freeze);
  CHECK(tinga.steps[2].seconds == std::pair(28'800, 28'800));
  const Product& parcel = *book.product(QStringLiteral("parcel"));
  CHECK(parcel.unit_least == amount("90 g"));
  CHECK(parcel.unit_most == amount("94 g"));
  CHECK(parcel.units_per_hour == measure::Ratio(180, 1));
  CHECK(parcel.formula.back().disher == 100);
  CHECK(parcel.formula.back().bowl.in(QStringLiteral("es")) == QStringLiteral("húmedo"));
  CHECK(parcel.containers.front().rows == 4);
  CHECK(parcel.containers.front().columns == 6);
  CHECK(parcel.containers.front().tare == amount("1.2 kg"));
}

TEST_CASE("pieces of a graded ingredient weigh the middle of the grade, less what is trimmed off",
          "[book][making][weights]") {
  const auto pieces = [](const QByteArray& more) {
    const QByteArray fish = book_test::ingredient("portion", "\"none\"", "must_be_cooked = false\n" + more);
    const Book book =
        book_test::read_with(fish + book_test::product("p", 1, "{ item = \"portion\", amount = \"14 pieces\" }")).book;
    const auto lines = line_weights(book, *book.product(QStringLiteral("p")));
    return lines ? measure::display(lines->front(), measure::System::Metric) : lines.error().front().what;
  };
  const QString unknown = QStringLiteral(
      "the line \"portion\" of product \"p\" has no weight, which sheets need: nothing says what a piece of "
      "\"portion\" weighs");
  CHECK(pieces("count_grade = \"6/8 per kg\"") == QStringLiteral("2 kg"));
  CHECK(pieces("count_grade = \"7/7 per kg\"") == QStringLiteral("2 kg"));
  CHECK(pieces("count_grade = \"6/8 per kg\"\nedible = \"90 %\"") == QStringLiteral("1.8 kg"));
  CHECK(pieces("count_grade = \"U/10 per lb\"") == unknown);
  CHECK(pieces("") == unknown);
  const QByteArray measured = "measure = { amount = \"1 piece\", weighs = \"150 g\", source = \"weighed here\" }";
  CHECK(pieces("count_grade = \"U/10 per lb\"\n" + measured) == QStringLiteral("2.1 kg"));
  CHECK(pieces("count_grade = \"6/8 per kg\"\n" + measured) == QStringLiteral("2.1 kg"));
}

TEST_CASE("another size has the formula in proportion to the units' weights, and keeps its pieces",
          "[book][making][formula]") {
  const Book book =
      book_test::read_with(kBig + size_of("big", 2, "makes = \"192 pieces\"\nunit_weight = \"55 g\"")).book;
  CHECK(shown(book, "small") == QStringList{"dough 30 g", "lime 1", "butter 7.4 mL", "water 25 g", "pepper 5 g"});
  const std::vector<FormulaLine>& lines = book.product(QStringLiteral("small"))->formula;
  CHECK(lines[0].main);
  CHECK(lines[0].tool.empty());
  CHECK_FALSE(lines[1].tool.empty());
  CHECK(lines[2].laying == Laying::Brushed);
  CHECK_FALSE(lines[2].bowl.empty());
  CHECK_FALSE(lines[3].disher);
  CHECK(lines[4].per == amount("1 kg"));
  CHECK(book.product(QStringLiteral("big"))->formula[3].disher == 16);
}

TEST_CASE("a size of the same weight is the same formula, its tools too", "[book][making][formula]") {
  const Book book =
      book_test::read_with(kBig + size_of("big", 2, "makes = \"12 pieces\"\nunit_weight = \"110 g\"")).book;
  CHECK(shown(book, "small") == shown(book, "big"));
  CHECK(book.product(QStringLiteral("small"))->formula[3].disher == 16);
}

TEST_CASE("amounts of a whole making follow the number of units as well", "[book][making][formula]") {
  const Book book = book_test::book_with(
      assembled("big", 1, "{ item = \"water\", amount = \"1 kg\" }, { item = \"parcel\", amount = \"10 pieces\" }",
                "makes = \"10 pieces\"\nunit_weight = \"190 g\"") +
      size_of("big", 2, "makes = \"40 pieces\"\nunit_weight = \"95 g\""));
  CHECK(shown(book, "small") == QStringList{"water 2 kg", "parcel 40"});
}

TEST_CASE("allergens, readiness and weights of another size are those of its formula", "[book][making][formula]") {
  const Book book = book_test::book_with(
      assembled("big", 1, "{ item = \"dough\", per_unit = \"60 g\" }, { item = \"marinade\", per_unit = \"50 g\" }",
                "makes = \"96 pieces\"\nunit_weight = \"110 g\"") +
      size_of("big", 2, "makes = \"10 pieces\"\nunit_weight = \"55 g\""));
  const Product& small = *book.product(QStringLiteral("small"));
  CHECK(declared(book, QStringLiteral("small")) == declared(book, QStringLiteral("big")));
  CHECK(readiness(book, QStringLiteral("small")) == Readiness::MustBeCooked);
  CHECK(measure::display(*output_weight(book, small), measure::System::Metric) == QStringLiteral("550 g"));
  CHECK(measure::display((*line_weights(book, small))[0], measure::System::Metric) == QStringLiteral("300 g"));
}

TEST_CASE("a size is refused that is no other size of an assembled item", "[book][refused][making][formula]") {
  const QByteArray own = "makes = \"10 pieces\"\nunit_weight = \"55 g\"";
  CHECK(refusal(kBig + size_of("bigg", 2, own)) ==
        QStringLiteral("20: no product has the id \"bigg\"; did you mean \"big\"?"));
  CHECK(refusal(kBig + size_of("small", 2, own)) ==
        QStringLiteral("20: product \"small\" takes its formula of itself; name another product"));
  CHECK(refusal(kBig + size_of("dough", 2, own)) ==
        QStringLiteral("20: product \"small\" takes the formula of \"dough\", which is a component; name an assembled "
                       "item"));
  CHECK(refusal(kBig + size_of("big", 2, "makes = \"10 pieces\"")) ==
        QStringLiteral("20: product \"small\" has no unit_weight, which the formula of another size needs; state "
                       "unit_weight in both products"));
  CHECK(refusal(kBig + size_of("big", 2, own) + size_of("small", 3, own).replace("id = \"small\"", "id = \"tiny\"")) ==
        QStringLiteral("31: product \"tiny\" takes the formula of \"small\", which has none of its own; write "
                       "formula_of = \"big\""));
  CHECK(refusal(kBig + size_of("big", 2, own + "\nformula = [{ item = \"water\", amount = \"1 g\" }]")) ==
        QStringLiteral("20: product \"small\" has both formula and formula_of; write one of them"));
  CHECK(refusal(kBig + size_of("big", 2, own).replace("\"assembled item\"", "\"component\"")) ==
        QStringLiteral("20: product \"small\" has a formula_of, but a component has no sizes; write its formula, or "
                       "kind = \"assembled item\""));
  CHECK(refusal(
            assembled("big", 1, "{ item = \"water\", amount = \"1 kg\" }", "makes = \"1 L\"\nunit_weight = \"1 kg\"") +
            size_of("big", 2, own)) ==
        QStringLiteral("20: product \"small\" takes lines of a whole making of \"big\", but it is not known how many "
                       "units both make; state makes in pieces or as a weight in both, or write the lines per_unit"));
}

TEST_CASE("two sizes of each other are refused, and a size that contains its own source is a loop",
          "[book][refused][making][formula]") {
  const QByteArray own = "makes = \"10 pieces\"\nunit_weight = \"55 g\"";
  const QString loop = refusal(
      assembled("big", 1, "{ item = \"small\", per_unit = \"55 g\" }", "makes = \"1 piece\"\nunit_weight = \"55 g\"") +
      size_of("big", 2, own));
  CHECK(loop.contains(QStringLiteral("the formulas go round in a circle")));
  const QString round =
      refusal(size_of("tiny", 1, own) + size_of("small", 2, own).replace("id = \"small\"", "id = \"tiny\""));
  CHECK(round.contains(QStringLiteral("product \"small\" takes the formula of \"tiny\", which has none of its own")));
  CHECK(round.contains(QStringLiteral("product \"tiny\" takes the formula of \"small\", which has none of its own")));
}
