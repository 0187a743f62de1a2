// How large the code of a label is printed: as large as leaves room for the type, within what reads better.
#include "label_runs.h"
#include "show.h"
#include "symbol/qr.h"

using namespace lardiner;
using namespace lardiner::paper;
using facts::FactId;

namespace {

facts::LabelRun salt() {
  facts::LabelRun run;
  run.title = QStringLiteral("Salt A26329SLT01K");
  run.lot = QStringLiteral("A26329SLT01K");
  run.facts = {{FactId::Name, {said(QStringLiteral("Smoked salt"), true)}},
               {FactId::DateCaption, {said(QStringLiteral("BEST BEFORE"))}},
               {FactId::Date, {said(QStringLiteral("TUE 25 MAY"))}},
               {FactId::Year, {said(QStringLiteral("2027"))}},
               {FactId::Made, {said(QStringLiteral("Made Wed 25 Nov 2026 10:40"))}},
               {FactId::Lot, {said(run.lot + QStringLiteral(" · MK"), true)}},
               {FactId::ContainerOf, {said(QStringLiteral("Tub 1 of 1"))}},
               {FactId::Serial, {said(QStringLiteral("A2632901-1"))}}};
  run.containers.push_back({QStringLiteral("Tub 1 of 1"), QStringLiteral("A2632901-1"),
                            "https://salt.example/01/00417000000015/10/A26329SLT01K/21/A2632901-1?15=270525", 1});
  return run;
}

int module_on(const book::Media& medium) {
  const facts::LabelRun run = salt();
  const auto layout = lay_out(run, template_of(run), medium, shipped_faces());
  if (!layout) FAIL(problem::text(layout.error()).toStdString());
  REQUIRE(layout->code);
  return layout->code->module.value;
}

book::Media large(int dots_per_inch, int module_dots) {
  book::Media out = medium(10000, 15000);
  out.dots_per_inch = dots_per_inch;
  out.module_dots = module_dots;
  return out;
}

}  // namespace

TEST_CASE("where there is room a module is as many dots as are 0.65 mm, and no more", "[paper][label][code]") {
  CHECK(module_on(large(203, 3)) == 5);
  CHECK(module_on(large(300, 3)) == 7);
  CHECK(module_on(large(600, 3)) == 15);
}

TEST_CASE("a medium may ask for larger modules than 0.65 mm", "[paper][label][code]") {
  CHECK(module_on(large(203, 8)) == 8);
}

TEST_CASE("on a lid of 50 mm at 203 dpi the code is as large as what must be said leaves room for",
          "[paper][label][code]") {
  facts::LabelRun run = salt();
  const book::Media lid = medium(5000, 5000);
  const auto module = [&] { return lay_out(run, template_of(run), lid, shipped_faces())->code->module.value; };
  CHECK(module() == 5);
  facts::Fact& lot = run.facts[5];
  lot.paragraphs = {said(QStringLiteral("A26329SMOKED01K · MK"), true)};
  CHECK(module() == 4);
}

TEST_CASE("initials that do not fit beside the lot stand beneath it, none is left out", "[paper][label]") {
  facts::LabelRun run = salt();
  const auto texts = [&](const QString& by) {
    run.facts[5].paragraphs = {said(run.lot + QStringLiteral(" · ") + by, true)};
    const auto layout = lay_out(run, template_of(run), medium(5000, 5000), shipped_faces());
    QStringList out;
    for (const TextRun& text : layout.value().shared.texts) out += text.text;
    return out;
  };
  const QStringList short_ones = texts(QStringLiteral("M"));
  const QStringList long_ones = texts(QStringLiteral("MWMW"));
  CHECK(short_ones.contains(QStringLiteral("A26329SLT01K · M")) != short_ones.contains(QStringLiteral("M")));
  CHECK(long_ones.contains(QStringLiteral("A26329SLT01K ·")));
  CHECK(long_ones.contains(QStringLiteral("MWMW")));
}
