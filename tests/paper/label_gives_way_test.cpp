// What a layout gives up where room is short, and that it says so; what the medium keeps free.
#include "label_runs.h"
#include "paper/label.h"
#include "paper/sheet.h"

using namespace lardiner;
using namespace lardiner::paper;
using facts::FactId;

namespace {

LabelTemplate template_from(const QByteArray& toml) {
  const auto label = read_label_template(toml, QStringLiteral("t.toml"));
  if (!label) FAIL(problem::text(label.error()).toStdString());
  return *label;
}

// Name over made, net and where it goes, without a date or code; `how` goes to the block of those.
LabelTemplate plain(const QByteArray& how) {
  return template_from(
      "margin = \"0 mm\"\nleast_x_height = \"1.2 mm\"\n"
      "[[block]]\nfacts = [\"name\"]\nsize = [10, 16, 16]\n"
      "[[block]]\nfacts = [\"made\", \"net\", \"site\"]\nsize = [7.5, 10, 10]\n" +
      how + "[foot]\nsize = [7.5, 8, 8]\n");
}

facts::LabelRun three_facts() {
  facts::LabelRun run;
  run.title = QStringLiteral("Rub A1");
  run.facts = {
      {FactId::Name, {said(QStringLiteral("Seasoning"))}}, {FactId::Made, {said(QStringLiteral("Made Wed"))}},
      {FactId::Net, {said(QStringLiteral("500 g"))}},      {FactId::Site, {said(QStringLiteral("Harbour"))}},
      {FactId::Lot, {said(QStringLiteral("A1"))}},         {FactId::ContainerOf, {said(QStringLiteral("1 of 1"))}},
      {FactId::Serial, {said(QStringLiteral("1"))}}};
  run.containers = {{QStringLiteral("1 of 1"), QStringLiteral("1"), {}, 1}};
  return run;
}

book::Media plain_medium(int width, int height) {
  book::Media on = medium(width, height, 600);
  on.margin = {};
  return on;
}

LabelLayout laid_out(const LabelTemplate& label, const book::Media& on) {
  auto layout = lay_out(three_facts(), label, on, shipped_faces());
  if (!layout) FAIL(problem::text(layout.error()).toStdString());
  return *layout;
}

}  // namespace

TEST_CASE("a layout says of each block its size, and what gave way", "[paper][label]") {
  const LabelLayout roomy = laid_out(plain("gives_way = \"first\"\n"), plain_medium(5000, 4000));
  REQUIRE(roomy.blocks.size() == 3);
  CHECK(roomy.blocks[0].fact == FactId::Name);
  CHECK(roomy.blocks[0].size == Points{16});
  CHECK(roomy.blocks[0].preferred == Points{16});
  CHECK(roomy.blocks[0].least == Points{10});
  CHECK(roomy.blocks[1].fact == FactId::Made);
  CHECK(roomy.blocks[2].fact == FactId::Lot);
  CHECK(roomy.blocks[2].size == Points{8});
  for (const BlockSize& block : roomy.blocks) {
    CHECK_FALSE(block.is_shrunk());
    CHECK_FALSE(block.run_together);
  }
  CHECK(roomy.scale >= 1);
  CHECK(roomy.trial == 0);
  CHECK(roomy.largest_module == Dots{0});  // no code
}

TEST_CASE("what gives way first shrinks while the rest keeps its preferred size", "[paper][label]") {
  const book::Media low = plain_medium(5000, 2150);
  const LabelLayout first = laid_out(plain("gives_way = \"first\"\n"), low);
  CHECK(first.blocks[0].size == Points{16});
  CHECK(first.blocks[1].is_shrunk());
  const LabelLayout last = laid_out(plain("gives_way = \"last\"\n"), low);
  CHECK(last.blocks[0].is_shrunk());
  CHECK(last.blocks[1].size == Points{10});
  const LabelLayout rest = laid_out(plain(""), low);
  CHECK(rest.blocks[0].is_shrunk());
  CHECK(rest.blocks[1].is_shrunk());
}

TEST_CASE("facts are run together, those alone excepted, before anything shrinks much", "[paper][label]") {
  const book::Media low = plain_medium(5000, 2150);
  const LabelLayout apart = laid_out(plain(""), low);
  const LabelLayout together = laid_out(plain("run_together = 1\n"), low);
  CHECK(apart.trial == 0);
  CHECK(together.trial == 1);
  CHECK(together.blocks[1].run_together);
  CHECK_FALSE(together.blocks[0].run_together);
  CHECK(together.blocks[0].size > apart.blocks[0].size);
  const auto line = [](const LabelLayout& layout, const char* starts) {
    for (const TextRun& text : layout.shared.texts)
      if (QString(text.text).remove(QChar(0x2060)).startsWith(QString::fromUtf8(starts))) return text.baseline.value;
    return -1.0;
  };
  CHECK(line(together, "Made Wed\u00A0· 500") > 0);
  const LabelLayout alone = laid_out(plain("run_together = 1\nalone = [\"net\"]\n"), plain_medium(5000, 1750));
  CHECK(line(alone, "500 g") > line(alone, "Made Wed"));
  CHECK(line(alone, "Harbour") > line(alone, "500 g"));
}

TEST_CASE("nothing is run together where there is room", "[paper][label]") {
  CHECK(laid_out(plain("run_together = 1\n"), plain_medium(5000, 4000)).trial == 0);
}

TEST_CASE("a code that is smaller than the template allows is told", "[paper][label]") {
  Chance chance(19);
  int smaller = 0, largest = 0;
  for (int round = 0; round < 30; ++round) {
    const book::Media on = round % 2 == 0 ? medium(5000, 5000) : medium(10000, 15000);
    const auto layout =
        lay_out(chance.run(book::Purpose::Inside, false), shipped_template("inside"), on, shipped_faces());
    if (!layout) continue;
    CHECK(layout->code->module <= layout->largest_module);
    (layout->code->module < layout->largest_module ? smaller : largest) += 1;
  }
  CHECK(smaller > 0);
  CHECK(largest > 0);
}

TEST_CASE("nothing but paper lies in the medium's margin, whichever sides have one, turned or not",
          "[paper][label][property]") {
  Chance chance(18);
  constexpr book::Purpose kPurposes[] = {book::Purpose::Inside, book::Purpose::Finisher, book::Purpose::Sale};
  int fitted = 0;
  for (int round = 0; round < 60; ++round) {
    const facts::LabelRun run = chance.run(kPurposes[round % 3], round % 7 == 6);
    book::Media on = medium(6000 + chance.below(6000), 5000 + chance.below(6000));
    on.margin = {chance.below(400), chance.below(400), chance.below(400), chance.below(400)};
    on.turned = chance.one_in(2);
    const auto layout = lay_out(run, template_of(run), on, shipped_faces());
    if (!layout) continue;
    ++fitted;
    const Sheet sheet = sheet_of(on);
    REQUIRE(layout->size == sheet.label);
    const Rect printable{double(sheet.margin.left.value), double(sheet.margin.top.value),
                         double((layout->size.width - sheet.margin.right).value),
                         double((layout->size.height - sheet.margin.bottom).value)};
    const Drawing own =
        own_drawing(*layout, run.containers.front(), code_image(run.containers.front().uri), shipped_faces());
    CAPTURE(round, run.title, on.turned);
    for (const auto& texts : {layout->shared.texts, own.texts})
      for (const TextRun& text : texts) CHECK(ink(text, layout->size.resolution).within(printable));
    for (const Box& box : layout->shared.boxes)
      CHECK(Rect{double(box.x.value), double(box.y.value), double((box.x + box.width).value),
                 double((box.y + box.height).value)}
                .within(printable));
    for (const Code& code : own.codes) {
      const Dots side = code.module * code.image.modules;
      CHECK(
          Rect{double(code.x.value), double(code.y.value), double((code.x + side).value), double((code.y + side).value)}
              .within(printable));
    }
  }
  CHECK(fitted > 20);
}
