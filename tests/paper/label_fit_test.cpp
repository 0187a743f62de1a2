// Which labels fit on which media, what a refusal says, and what differs from label to label.
#include "label_runs.h"
#include "paper/label.h"

using namespace lardiner;
using namespace lardiner::paper;
using facts::FactId;

namespace {

constexpr book::Purpose kPurposes[] = {book::Purpose::Inside, book::Purpose::Finisher, book::Purpose::Sale};

bool fits(const facts::LabelRun& run, const book::Media& on) {
  return lay_out(run, template_of(run), on, shipped_faces()).has_value();
}

/// A tub of lime butter, three of them.
facts::LabelRun butter() {
  facts::LabelRun run;
  run.title = QStringLiteral("Lime butter A26329LBU01K");
  run.lot = QStringLiteral("A26329LBU01K");
  run.facts = {{FactId::Name, {said(QStringLiteral("Lime butter"), true)}},
               {FactId::DateCaption, {said(QStringLiteral("USE BY"))}},
               {FactId::Date, {said(QStringLiteral("TUE 01 DEC"))}},
               {FactId::Year, {said(QStringLiteral("2026"))}},
               {FactId::Contains, {said(QStringLiteral("CONTAINS milk"), true)}},
               {FactId::KeepAt, {said(QStringLiteral("Keep at 5\u00A0°C or below"))}},
               {FactId::Made, {said(QStringLiteral("Made Wed 25 Nov 2026 10:40"))}},
               {FactId::Lot, {said(run.lot + QStringLiteral(" · MK"), true)}},
               {FactId::ContainerOf, {said(QStringLiteral("Tub 3 of 3"))}},
               {FactId::Serial, {said(QStringLiteral("A2632901-3"))}}};
  for (int n = 1; n <= 3; ++n) {
    const QString serial = QStringLiteral("A2632901-%1").arg(n);
    run.containers.push_back(
        {QStringLiteral("Tub %1 of 3").arg(n), serial,
         "https://tl.test/01/00401000000015/10/A26329LBU01K/21/" + serial.toLatin1() + "?17=261201", n});
  }
  return run;
}

QString refused(const facts::LabelRun& run, const book::Media& on, const LabelTemplate& label) {
  const auto layout = lay_out(run, label, on, shipped_faces());
  return layout ? QString() : problem::text(layout.error());
}
QString refused(const facts::LabelRun& run, const book::Media& on) { return refused(run, on, template_of(run)); }

LabelTemplate template_from(const QByteArray& toml) {
  const auto label = read_label_template(toml, QStringLiteral("t.toml"));
  if (!label) FAIL(problem::text(label.error()).toStdString());
  return *label;
}

facts::Fact& fact(facts::LabelRun& run, FactId id) {
  return *std::find_if(run.facts.begin(), run.facts.end(), [&](const facts::Fact& one) { return one.id == id; });
}

/// The smallest part of its preferred size that a block came to; a frozen date stays on one line at any size.
double least_part(const LabelLayout& layout, bool frozen) {
  double least = 1;
  for (const BlockSize& block : layout.blocks)
    if (!frozen || block.fact != FactId::Date) least = std::min(least, block.size.value / block.preferred.value);
  return least;
}

}  // namespace

TEST_CASE("a wider or a higher medium never refuses what fitted on a smaller one", "[paper][label][property]") {
  Chance chance(11);
  for (int round = 0; round < 35; ++round) {
    const facts::LabelRun run = chance.run(kPurposes[round % 3], round % 7 == 6);
    const int height = 3000 + chance.below(8000);
    bool fitted = false;
    for (int width = 3000; width <= 14000; width += 150 + chance.below(900)) {
      const bool now = fits(run, medium(width, height));
      CAPTURE(round, width, height, run.title);
      CHECK((now || !fitted));
      fitted = now;
    }
    fitted = false;
    for (int higher = 2500; higher <= 14000; higher += 150 + chance.below(900)) {
      const bool now = fits(run, medium(height, higher));
      CAPTURE(round, height, higher, run.title);
      CHECK((now || !fitted));
      fitted = now;
    }
  }
}

TEST_CASE("a longer text never gives larger type, unless it takes room from the code", "[paper][label][property]") {
  // At nine tenths of the preferred sizes nothing is made smaller or run together. Below, a larger code, and facts left
  // apart in each of three trials, are worth a little type, as far as it is known when they are compared.
  constexpr double kNear = 0.91, kWorth = 0.1;
  Chance chance(12);
  for (int round = 0; round < 60; ++round) {
    facts::LabelRun run = chance.run(kPurposes[round % 3], round % 7 == 6);
    const book::Media on =
        medium(kSizes[static_cast<size_t>(round % 2)].first, kSizes[static_cast<size_t>(round % 2)].second);
    std::optional<double> before;
    Dots module;
    for (int words = 0; words < 12; ++words) {
      const auto layout = lay_out(run, template_of(run), on, shipped_faces());
      const Dots module_now = layout && layout->code ? layout->code->module : Dots{0};
      if (layout && before && module_now >= module) {
        CAPTURE(round, words, run.title, *before, least_part(*layout, run.frozen));
        CHECK(std::min(least_part(*layout, run.frozen), kNear) <= *before + kWorth);
      }
      if (words > 0 && layout) CHECK(before.has_value());  // what did not fit does not fit with more
      if (!layout) break;
      before = least_part(*layout, run.frozen);
      module = module_now;
      fact(run, FactId::Made).paragraphs.front().front().text += QStringLiteral(" again");
    }
  }
}

TEST_CASE("the smallest medium that fits is the smallest by area", "[paper][label][property]") {
  Chance chance(13);
  int found_one = 0;
  for (int round = 0; round < 30; ++round) {
    const facts::LabelRun run = chance.run(kPurposes[round % 3], round % 7 == 6);
    std::vector<book::Media> media;
    for (int i = 0; i < 6; ++i) {
      media.push_back(medium(2500 + chance.below(9000), 2500 + chance.below(9000), chance.one_in(2) ? 203 : 300));
      media.back().freezer = !chance.one_in(3);
    }
    const book::Media* found = smallest_that_fits(run, template_of(run), media, shipped_faces());
    const auto area = [](const book::Media& one) { return qint64{one.width} * one.height; };
    if (found) CHECK(fits(run, *found));
    found_one += found ? 1 : 0;
    for (const book::Media& one : media)
      if (fits(run, one)) {
        REQUIRE(found != nullptr);
        CHECK(area(*found) <= area(one));
      }
  }
  CHECK(found_one > 10);
  CHECK(smallest_that_fits(butter(), template_of(butter()), {}, shipped_faces()) == nullptr);
  CHECK(smallest_that_fits(butter(), template_of(butter()), {medium(1000, 1000)}, shipped_faces()) == nullptr);
}

TEST_CASE("a label without room says which fact lacks how much on which medium", "[paper][label][refused]") {
  CHECK(refused(butter(), medium(5000, 5000)).isEmpty());
  CHECK(refused(butter(), medium(5000, 2500)) ==
        "the label of Lime butter A26329LBU01K does not fit on \"lid\" (50 × 25 mm): date needs 2.5 mm more height\n");
  CHECK(refused(butter(), medium(2500, 5000)) ==
        "the label of Lime butter A26329LBU01K does not fit on \"lid\" (25 × 50 mm): lot needs 13.4 mm more width for "
        "\"A26329LBU01K ·\"\n");
  facts::LabelRun run = butter();
  fact(run, FactId::Name).paragraphs = {said(QStringLiteral("Llanfairpwllgwyngyllgogerychwyrndrobwll"))};
  CHECK(refused(run, medium(5000, 5000)) ==
        "the label of Lime butter A26329LBU01K does not fit on \"lid\" (50 × 50 mm): name needs 27.1 mm more width for "
        "\"Llanfairpwllgwyngyllgogerychwyrndrobwll\"\n");
}

TEST_CASE("the room that lacks is measured with the smallest code that the medium allows", "[paper][label][refused]") {
  Chance chance(14);
  int refusals = 0;
  for (int round = 0; round < 40; ++round) {
    const facts::LabelRun run = chance.run(kPurposes[round % 3], false);
    LabelTemplate small_code = template_of(run);
    small_code.code_share = 0.01;
    const book::Media on = medium(4000 + chance.below(4000), 3000 + chance.below(3000));
    const QString lacks = refused(run, on);
    if (lacks.isEmpty()) continue;
    ++refusals;
    CHECK(lacks == refused(run, on, small_code));
  }
  CHECK(refusals > 5);
}

TEST_CASE("a frozen container's label needs a medium made for freezers", "[paper][label][refused]") {
  facts::LabelRun run = butter();
  run.frozen = true;
  book::Media on = medium(5000, 5000);
  CHECK(refused(run, on).isEmpty());
  on.freezer = false;
  CHECK(refused(run, on) ==
        "Lime butter A26329LBU01K is frozen, and medium \"lid\" is not made for that\n"
        "  use a medium whose bears lists \"freezer\"\n");
}

TEST_CASE("hot food's label needs a medium made for heat", "[paper][label][refused]") {
  facts::LabelRun run = butter();
  run.hot = true;
  book::Media on = medium(5000, 5000);
  CHECK(refused(run, on).isEmpty());
  on.hot = false;
  CHECK(refused(run, on) ==
        "Lime butter A26329LBU01K is held hot, and medium \"lid\" is not made for that\n"
        "  use a medium whose bears lists \"hot\"\n");
}

TEST_CASE("a fact without a place in the template is refused, never left out", "[paper][label][refused]") {
  facts::LabelRun run = butter();
  run.facts.push_back({FactId::Finishing, {said(QStringLiteral("Oven, 15 min"))}});
  run.facts.push_back({FactId::Hold, {said(QStringLiteral("HOLD"))}});
  CHECK(refused(run, medium(10000, 10000)) ==
        "label template inside.toml has no place for \"finishing\", which this label must say\n"
        "  add \"finishing\" to the facts of one of its blocks\n"
        "label template inside.toml has no place for \"hold\", which this label must say\n"
        "  add \"hold\" to the facts of one of its blocks\n");
}

TEST_CASE("a character that the faces cannot print is refused", "[paper][label][refused]") {
  facts::LabelRun run = butter();
  fact(run, FactId::Name).paragraphs = {said(QStringLiteral("Butter \u9995"))};
  CHECK(refused(run, medium(5000, 5000)) ==
        "the name of this label cannot be printed: \"Butter 馕\" has 馕 (U+9995) as character 8, which the label faces "
        "do not have\n"
        "  write it otherwise, or add it to the Chinese faces with fonts/make-subsets\n");
}

TEST_CASE("what stands beside a name keeps clear of a code that reaches up to it", "[paper][label]") {
  const LabelTemplate label = template_from(
      "margin = \"1.5 mm\"\nleast_x_height = \"1.2 mm\"\ncode_share = 0.6\n"
      "[[block]]\nfacts = [\"made\"]\nsize = [24, 24, 24]\n"
      "[[block]]\nfacts = [\"name\"]\nbeside = \"count\"\nsize = [9, 9, 9]\n"
      "[foot]\nsize = [7, 7, 7]\n");
  facts::LabelRun run = butter();
  std::erase_if(run.facts, [](const facts::Fact& one) {
    return one.id == FactId::Date || one.id == FactId::DateCaption || one.id == FactId::Year ||
           one.id == FactId::Contains || one.id == FactId::KeepAt;
  });
  run.facts.push_back({FactId::Count, {said(QStringLiteral("24\u00A0pieces"), true)}});
  const auto layout = lay_out(run, label, medium(10000, 4000), shipped_faces());
  if (!layout) FAIL(problem::text(layout.error()).toStdString());
  REQUIRE(layout->code);
  const int around = symbol::kQuietZone * layout->code->module.value;
  const int side = symbol::modules(symbol::qr_version_for(run.containers.front().uri, symbol::ErrorCorrection::L)) *
                   layout->code->module.value;
  const Rect zone{double(layout->code->right.value - side - around), double(layout->code->bottom.value - side - around),
                  double(layout->code->right.value + around), double(layout->code->bottom.value + around)};
  bool below_the_top = false;
  for (const TextRun& text : layout->shared.texts) {
    below_the_top = below_the_top || (text.text.contains("24") && text.baseline.value > zone.top);
    CAPTURE(text.text, text.x.value, text.baseline.value, zone.left, zone.top);
    CHECK_FALSE(ink(text, layout->size.resolution).meets(zone));
  }
  CHECK(below_the_top);
}

TEST_CASE("only container, serial and code differ from label to label, and stand at the same places",
          "[paper][label]") {
  const facts::LabelRun run = butter();
  const auto layout = lay_out(run, template_of(run), medium(5000, 5000), shipped_faces());
  REQUIRE(layout);
  REQUIRE(layout->varying.size() == 2);
  REQUIRE(layout->code);
  for (const facts::ContainerFacts& container : run.containers) {
    const CodeImage image = code_image(container.uri);
    const Drawing own = own_drawing(*layout, container, image, shipped_faces());
    CHECK(own.boxes.empty());
    REQUIRE(own.texts.size() == 2);
    for (size_t i = 0; i < 2; ++i) {
      const Varying& place = layout->varying[i];
      CHECK(own.texts[i].text == (place.fact == FactId::Serial ? container.serial : container.container_of));
      CHECK(own.texts[i].x == place.line.x);
      CHECK(own.texts[i].baseline == place.line.baseline);
      CHECK(own.texts[i].size == place.line.size);
      CHECK(own.texts[i].face == face_of(Family::Atkinson, place.line.weight));
    }
    REQUIRE(own.codes.size() == 1);
    CHECK(own.codes[0].x + own.codes[0].module * image.modules == layout->code->right);
    CHECK(own.codes[0].y + own.codes[0].module * image.modules == layout->code->bottom);
    CHECK(own.codes[0].image.rows == image.rows);
  }
  for (const TextRun& text : layout->shared.texts) {
    CHECK_FALSE(text.text.contains("Tub"));
    CHECK_FALSE(text.text.contains("A2632901"));
  }
  CHECK(own_drawing(*layout, run.containers.front(), std::nullopt, shipped_faces()).codes.empty());
}

TEST_CASE("a HOLD label without a code has none, and more room", "[paper][label]") {
  Chance chance(15);
  facts::LabelRun run = chance.run(book::Purpose::Inside, true);
  const auto with = lay_out(run, template_of(run), medium(10000, 5000), shipped_faces());
  for (facts::ContainerFacts& container : run.containers) container.uri.clear();
  const auto without = lay_out(run, template_of(run), medium(10000, 5000), shipped_faces());
  REQUIRE(with);
  REQUIRE(without);
  CHECK(with->code);
  CHECK_FALSE(without->code);
  CHECK(without->scale >= with->scale);
}

TEST_CASE("no digit is wider than 0: room for zeros is room for every container's number", "[paper][label]") {
  const auto width = [](QChar digit, Weight weight) {
    return shipped_faces().width(QString(digit), face_of(Family::Atkinson, weight), Points{10}, Resolution{}).value;
  };
  for (const Weight weight : kWeights)
    for (const char digit : {'1', '2', '3', '4', '5', '6', '7', '8', '9'})
      CHECK(width(QLatin1Char(digit), weight) <= width(u'0', weight));
}

TEST_CASE("every container's number and serial keep apart from each other and clear of the code",
          "[paper][label][property]") {
  Chance chance(16);
  for (int round = 0; round < 40; ++round) {
    facts::LabelRun run = chance.run(kPurposes[round % 3], round % 7 == 6);
    const int count = 1 + chance.below(300);
    const QByteArray uri = run.containers.front().uri;
    run.containers.clear();
    for (int n = 1; n <= count; ++n)
      run.containers.push_back(
          {QStringLiteral("Tub %1 of %2").arg(n).arg(count), QStringLiteral("A2632901-%1").arg(n), uri, n});
    fact(run, FactId::ContainerOf).paragraphs = {said(run.containers.back().container_of)};
    fact(run, FactId::Serial).paragraphs = {said(run.containers.back().serial)};
    const auto layout = lay_out(run, template_of(run), medium(5000 + chance.below(6000), 5000), shipped_faces());
    if (!layout) continue;
    const int code = symbol::modules_with_quiet_zone(symbol::qr_version_for(uri, symbol::ErrorCorrection::L)) *
                     layout->code->module.value;
    const double code_left = layout->code->right.value + symbol::kQuietZone * layout->code->module.value - code;
    for (const facts::ContainerFacts& container : run.containers) {
      const Drawing own = own_drawing(*layout, container, std::nullopt, shipped_faces());
      for (const TextRun& text : own.texts) CHECK(ink(text, layout->size.resolution).right <= code_left + 0.01);
      REQUIRE(own.texts.size() == 2);
      CHECK_FALSE(ink(own.texts[0], layout->size.resolution).meets(ink(own.texts[1], layout->size.resolution)));
    }
  }
}
