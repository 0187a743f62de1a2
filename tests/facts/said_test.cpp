// What each purpose of a label says, in which languages, and for which containers.
#include "facts/fact_names.h"
#include "kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::tray;

namespace {

// The facts said, by name and in the alphabet's order.
QStringList said(const LabelRun& run) {
  QStringList out;
  for (const Fact& fact : run.facts) {
    CHECK_FALSE(fact.paragraphs.empty());
    out << name(fact.id);
  }
  out.sort();
  return out;
}

batch::Batch two_languages() {
  batch::Batch out =
      batch_of(QStringLiteral("lime-butter"), QStringLiteral("bag"), amount(10, measure::Unit::Kilogram));
  out.record.site = QStringLiteral("harbour");
  out.record.order = QStringLiteral("118");
  return out;
}

// The place of a container in products.toml stands before every error of its languages.
QString without_place(QString text) { return text.mid(text.indexOf(QStringLiteral(": ")) + 2); }

}  // namespace

TEST_CASE("a tub's label for the kitchen says what it is, until when, with what in it, how to keep it and whose it is",
          "[facts][purpose]") {
  const LabelRun run = run_of(butter());
  CHECK(said(run) == QStringList{"container-of", "contains", "date", "date-caption", "keep-at", "lot", "made", "name",
                                 "net", "serial", "used-for", "year"});
  CHECK(words_of(run, FactId::Name) == "Lime butter");
  CHECK(words_of(run, FactId::KeepAt) == "Keep at 5 °C (41 °F) or below");
  CHECK(words_of(run, FactId::Made) == "Made Wed 25 Nov 2026 10:40");
  CHECK(words_of(run, FactId::Net) == "500 g (1 lb 1.6 oz)");
  CHECK(words_of(run, FactId::UsedFor) == "for fish cakes");
  CHECK(words_of(run, FactId::Lot) == butter().lot + QStringLiteral(" · MK"));
  CHECK(run.purpose == book::Purpose::Inside);
  CHECK(run.media == "lid");
  CHECK_FALSE(run.hold);
}

TEST_CASE("inside the kitchen only what is not ready to eat says so; the finisher is always told", "[facts][purpose]") {
  const auto readiness = [](batch::Batch batch, book::Readiness is) {
    batch.readiness = is;
    return words_of(run_of(batch), FactId::Readiness);
  };
  for (const auto ready : {book::Readiness::CookedReadyToEat, book::Readiness::ReadyToEatUncooked}) {
    CHECK(readiness(parcels("bag"), ready).isEmpty());
    CHECK(readiness(parcels("tray"), ready) == "READY TO EAT");
  }
  for (const char* kind : {"bag", "tray", "case"}) {
    CHECK(readiness(parcels(kind), book::Readiness::MustBeCooked) == "RAW: COOK BEFORE SERVING");
    CHECK(readiness(parcels(kind), book::Readiness::NotFullyCooked) == "NOT FULLY COOKED: COOK BEFORE SERVING");
  }
}

TEST_CASE("whether it must be cooked is never left open", "[facts][purpose][refused]") {
  batch::Batch batch = butter();
  batch.readiness = book::Readiness::Unknown;
  CHECK(refused(batch) ==
        "whether \"lime-butter\" must be cooked is not known\n"
        "  state must_be_cooked for each of its ingredients\n");
}

TEST_CASE("a food without a date gets no dated label", "[facts][purpose][refused]") {
  batch::Batch batch = butter();
  batch.use_bys.front().form = batch::UseBy::Form::None;
  CHECK(refused(batch) ==
        "no shelf-life rule gives \"lime-butter\" a date\n"
        "  add a shelf_life for its state to the book\n");
}

TEST_CASE("how to finish it is told to those who do, not inside the kitchen", "[facts][purpose][finishing]") {
  CHECK_FALSE(says(run_of(parcels("bag")), FactId::Finishing));
  CHECK_FALSE(says(run_of(parcels("bag")), FactId::HoldFinished));
  CHECK_FALSE(says(run_of(parcels("bag")), FactId::RemoveLabel));
  const LabelRun run = run_of(parcels("tray"));
  CHECK(said(run) == QStringList{"container-of", "contains", "count", "date", "date-caption", "finishing",
                                 "hold-finished", "keep-at", "lot", "made", "name", "readiness", "remove-label",
                                 "serial", "year"});
  CHECK(words_of(run, FactId::Count) == "24 pieces");
  CHECK(words_of(run, FactId::HoldFinished) == "Hold at most 45 min. Finished _______ discard by _______");
  CHECK(words_of(run, FactId::RemoveLabel) == "Remove label before the oven");
  CHECK(says(run_of(parcels("case")), FactId::Finishing));
}

TEST_CASE("only the steps that apply to the container's state are told", "[facts][finishing]") {
  batch::Batch batch = parcels();
  const QString oven =
      "Oven, from chilled: 190 °C (375 °F), 16 to 18 min, COOK TO 74 °C (165 °F) for 15 s. Golden. Rest 2 min.";
  const QString fryer = "Fryer, from frozen: 177 °C (350 °F), 22 min, COOK TO 74 °C (165 °F) for 15 s.";
  CHECK(words_of(run_of(batch), FactId::Finishing) == oven);

  happens(batch, batch::Happening::Frozen, at(2026, 11, 25, 12));
  batch.use_bys = {frozen_with(QDate(2026, 11, 25), 2)};
  CHECK(words_of(run_of(batch), FactId::Finishing) == oven + u'\n' + fryer);
  CHECK(words_of(run_of(batch), FactId::HoldFinished).startsWith("Hold at most 30 min."));  // the shorter of the two

  happens(batch, batch::Happening::Thawed, at(2026, 11, 27, 8));
  batch.use_bys = {until(QDate(2026, 11, 28))};
  CHECK(words_of(run_of(batch), FactId::Finishing) == oven);
}

TEST_CASE("what is hot, finished or on time control is not cooked again, and no step is missed", "[facts][finishing]") {
  for (const auto what : {batch::Happening::HotHeld, batch::Happening::Finished, batch::Happening::TimeControl}) {
    batch::Batch batch = parcels();
    batch.readiness = book::Readiness::CookedReadyToEat;
    batch.use_bys = {until_time(at(2026, 11, 25, 18))};
    happens(batch, what, at(2026, 11, 25, 14));
    CHECK_FALSE(says(run_of(batch), FactId::Finishing));
    CHECK(says(run_of(batch), FactId::KeepAt) == (what == batch::Happening::HotHeld));
  }
}

TEST_CASE("food to be finished without a step for its state is refused", "[facts][finishing][refused]") {
  book::Book book = kitchen();
  book.products[static_cast<size_t>(book.product_index["parcel"])].finishing.erase(
      book.products[static_cast<size_t>(book.product_index["parcel"])].finishing.begin());
  CHECK(without_place(refused(parcels(), book))
            .startsWith("product \"parcel\" has no finishing step for a container in this state\n"));
}

TEST_CASE("what is cooked already is reheated, what is raw is cooked", "[facts][finishing]") {
  batch::Batch batch = parcels();
  batch.readiness = book::Readiness::CookedReadyToEat;
  CHECK(words_of(run_of(batch), FactId::Finishing).contains("REHEAT TO 74 °C (165 °F)"));
  CHECK_FALSE(words_of(run_of(batch), FactId::Finishing).contains("COOK TO"));
}

TEST_CASE("a label for sale adds ingredients, the declared net quantity and the business",
          "[facts][purpose][src:21-cfr-101/101.4]") {
  const LabelRun run = run_of(butter_for_sale());
  CHECK(said(run) == QStringList{"business", "container-of", "contains", "date", "date-caption", "ingredients",
                                 "keep-at", "lot", "made", "name", "net-declared", "serial", "year"});
  CHECK(words_of(run, FactId::Ingredients) == "Ingredients: Butter, Lime, Apricots (sulphites).");
  CHECK(words_of(run, FactId::Business) == "Made by Test Lane Commissary, 1 Test Lane, Testford, NY 10001");
}

TEST_CASE("what is only read has all that the label says, without its code", "[facts][purpose]") {
  LabelWish wish;
  wish.to_be_read = true;
  for (const batch::Batch& batch : {butter_for_sale(), butter()}) {
    const LabelRun printed = run_of(batch), read = run_of(batch, kitchen(), wish);
    CHECK(said(read) == said(printed));
    CHECK_FALSE(printed.containers.front().uri.isEmpty());
    CHECK(read.containers.front().uri.isEmpty());
  }
}

TEST_CASE("the declared net quantity is rounded down, so that it never overstates",
          "[facts][purpose][src:16-cfr-500/500.19]") {
  CHECK(words_of(run_of(butter_for_sale()), FactId::NetDeclared) == "Net Wt 7 oz (199 g)");  // 199.6 g is 7.04 oz
}

TEST_CASE("only raw meat or poultry for sale carries the safe handling instructions", "[facts][purpose]") {
  CHECK(words_of(run_of(parcels("case")), FactId::SafeHandling).startsWith("Safe Handling Instructions."));
  for (const char* kind : {"tray", "bag"}) CHECK_FALSE(says(run_of(parcels(kind)), FactId::SafeHandling));
  CHECK_FALSE(says(run_of(butter_for_sale()), FactId::SafeHandling));
}

TEST_CASE("the safety of a label in two languages is told in both, its figures once", "[facts][languages]") {
  const LabelRun run = run_of(two_languages(), bilingual_kitchen());
  CHECK(run.language == "en");
  CHECK(words_of(run, FactId::Name) == "Lime butter\nMantequilla de limón");
  CHECK(words_of(run, FactId::Readiness) == "READY TO EAT\nLISTO PARA COMER");
  CHECK(words_of(run, FactId::DateCaption) == "USE BY\nUSAR HASTA");
  CHECK(words_of(run, FactId::Date) == "TUE 01 DEC\nMAR 01 DIC");
  CHECK(words_of(run, FactId::Year) == "2026");
  CHECK(words_of(run, FactId::Contains) == "CONTAINS milk\nCONTIENE leche");
  CHECK(words_of(run, FactId::KeepAt) == "Keep at 5 °C (41 °F) or below\nMantener a 5 °C (41 °F) o menos");
  CHECK(words_of(run, FactId::Made) == "Made Wed 25 Nov 2026 10:40");
  CHECK(words_of(run, FactId::Net) == "1 kg (2 lb 3.3 oz)");
  CHECK(words_of(run, FactId::Site) == "For Harbour Street, order 118");
  CHECK(words_of(run, FactId::ContainerOf) == "Bag 1 of 3");
}

TEST_CASE("words that nobody reviewed are not printed", "[facts][languages][refused]") {
  CHECK(without_place(refused(two_languages())) ==
        "the safety words of language \"es\" are not reviewed\n"
        "  [[product.container]]\n"
        "  ^^^^^^^^^^^^^^^^^^^^^\n"
        "  have somebody who speaks it read templates/words/es.toml, and name them in kitchen.toml: words_reviewed_by "
        "= { es = \"…\" }\n");
  CHECK(refused(two_languages(), bilingual_kitchen()).isEmpty());
}

TEST_CASE("a language without words is refused", "[facts][languages][refused]") {
  const auto runs = label_runs(bilingual_kitchen(), two_languages(), {languages().front()}, {});
  REQUIRE_FALSE(runs);
  CHECK(without_place(problem::text(runs.error())) ==
        "there are no words for language \"es\"\n"
        "  [[product.container]]\n"
        "  ^^^^^^^^^^^^^^^^^^^^^\n"
        "  add templates/words/es.toml, or use a language that is there\n");
}

TEST_CASE("a text that is not written in a language of the label is refused, never replaced",
          "[facts][languages][refused]") {
  batch::Batch batch = two_languages();
  batch.record.site = QStringLiteral("windsor");
  CHECK(refused(batch, bilingual_kitchen()) ==
        "places.toml:16:1: site \"windsor\" has no text in \"es\", a language of its label\n"
        "  [[site]]\n"
        "  ^^^^^^^^\n"
        "  write it as { en = \"…\", es = \"…\" }, or take \"es\" out of the container's languages\n");
}

TEST_CASE("containers of one batch and date share a run, each with its own number, serial and code",
          "[facts][containers]") {
  const LabelRun run =
      run_of(batch_of(QStringLiteral("lime-butter"), QStringLiteral("tub"), amount(5000, measure::Unit::Gram), 12));
  REQUIRE(run.containers.size() == 12);
  for (int n = 1; n <= 12; ++n) {
    const ContainerFacts& container = run.containers[static_cast<size_t>(n - 1)];
    CHECK(container.number == n);
    CHECK(container.container_of == QStringLiteral("Tub %1 of 12").arg(n));
    CHECK(container.serial == QStringLiteral("A2632901-%1").arg(n));
    CHECK(container.uri.contains(("/21/" + container.serial.toLatin1() + "?").constData()));
  }
  // The widest forms make room for all of them.
  CHECK(words_of(run, FactId::ContainerOf) == "Tub 10 of 12");
  CHECK(words_of(run, FactId::Serial) == "A2632901-10");
}

TEST_CASE("a discarded container gets no label", "[facts][containers]") {
  batch::Batch batch = butter();
  batch.containers[1].discarded = true;
  const LabelRun run = run_of(batch);
  REQUIRE(run.containers.size() == 2);
  CHECK(run.containers[1].container_of == "Tub 3 of 3");
}

TEST_CASE("containers with another date, or of another group, are a run of their own", "[facts][containers]") {
  batch::Batch batch = butter();
  batch.use_bys.push_back(until(QDate(2026, 11, 27)));
  batch.containers[2].use_by = 1;
  batch.record.containers.push_back({1, QStringLiteral("jar"), amount(1996, measure::Unit::Gram), {}});
  batch.containers.push_back({4, 4, 1, QStringLiteral("A2632901-4"), 0, false});
  const auto runs = label_runs(kitchen(), batch, languages(), {});
  REQUIRE(runs);
  REQUIRE(runs->size() == 3);
  CHECK(words_of((*runs)[0], FactId::Date) == "TUE 01 DEC");
  CHECK((*runs)[0].containers.size() == 2);
  CHECK(words_of((*runs)[1], FactId::Date) == "FRI 27 NOV");
  CHECK((*runs)[2].purpose == book::Purpose::Sale);
  CHECK((*runs)[2].containers.front().container_of == "Container 4 of 4");  // tubs and jars are counted together
}

TEST_CASE(
    "the document is titled by name and lot, and a medium that is wished for stands instead of the container's own",
    "[facts][containers]") {
  CHECK(run_of(butter()).title == QStringLiteral("Lime butter ") + butter().lot);
  LabelWish wish;
  wish.media = QStringLiteral("case");
  CHECK(run_of(butter(), kitchen(), wish).media == "case");
}

TEST_CASE("a labelled ingredient says what was done to it, its supplier's lot, and how to keep it",
          "[facts][purpose]") {
  batch::Batch batch = batch_of(QStringLiteral("butter"), QStringLiteral("tub"), {}, 1);
  batch.record.deed = batch::Deed::Opened;
  batch.record.supplier_lot = QStringLiteral("L 4471");
  const LabelRun run = run_of(batch);
  CHECK(said(run) == QStringList{"container-of", "contains", "date", "date-caption", "keep-at", "lot", "made", "name",
                                 "serial", "supplier-lot", "year"});
  CHECK(words_of(run, FactId::Made) == "Opened Wed 25 Nov 2026 10:40");
  CHECK(words_of(run, FactId::SupplierLot) == "Supplier lot L 4471");
  CHECK(run.media == "lid");
}

TEST_CASE("every fact has a name in templates, and is found by it", "[facts][names]") {
  CHECK(fact_names().size() == static_cast<int>(FactId::BookDay) + 1);
  for (const QString& word : fact_names()) CHECK(name(fact_named(word).value()) == word);
  CHECK_FALSE(fact_named(QStringLiteral("keepat")));
}
