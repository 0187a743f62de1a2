// Label layouts: whatever is to be said is said whole, legible, in order of importance, clear of the code; or refused.
#include "paper/label.h"

#include <QRegularExpression>
#include <map>

#include "facts/fact_names.h"
#include "label_runs.h"

using namespace lardiner;
using namespace lardiner::paper;
using facts::FactId;

namespace {

constexpr book::Purpose kPurposes[] = {book::Purpose::Inside, book::Purpose::Finisher, book::Purpose::Sale};

// Everything that one container's label shows, as the page will be drawn.
struct Label {
  const facts::LabelRun& run;
  const LabelTemplate& how;
  const book::Media& medium;
  const LabelLayout& layout;
  const facts::ContainerFacts& container;
  Drawing own;
  std::vector<TextRun> texts;

  Label(const facts::LabelRun& of, const LabelTemplate& label, const book::Media& on, const LabelLayout& found,
        const facts::ContainerFacts& one)
      : run(of),
        how(label),
        medium(on),
        layout(found),
        container(one),
        own(own_drawing(found, one, code_image(one.uri), shipped_faces())),
        texts(found.shared.texts) {
    texts.insert(texts.end(), own.texts.begin(), own.texts.end());
  }

  Resolution resolution() const { return layout.size.resolution; }
  Rect page() const { return {0, 0, double(layout.size.width.value), double(layout.size.height.value)}; }
  const Box* band() const {
    const bool dated = !run.hold && !run.frozen;
    return dated && layout.shared.boxes.size() == 1 ? &layout.shared.boxes.front() : nullptr;
  }
};

Rect area(const Box& box) {
  return {double(box.x.value), double(box.y.value), double((box.x + box.width).value),
          double((box.y + box.height).value)};
}

Rect quiet_zone(const Code& code) {
  const int around = symbol::kQuietZone * code.module.value;
  const int side = code.image.modules * code.module.value;
  return {double(code.x.value - around), double(code.y.value - around), double(code.x.value + side + around),
          double(code.y.value + side + around)};
}

QString shown(const TextRun& run) { return QStringLiteral("\"%1\" (%2 pt)").arg(run.text).arg(run.size.value); }

void find_overlaps(const Label& label, QStringList& faults) {
  for (size_t i = 0; i < label.texts.size(); ++i)
    for (size_t j = i + 1; j < label.texts.size(); ++j)
      if (ink(label.texts[i], label.resolution()).meets(ink(label.texts[j], label.resolution())))
        faults << QStringLiteral("texts overlap: %1 and %2").arg(shown(label.texts[i]), shown(label.texts[j]));
}

void find_outside(const Label& label, QStringList& faults) {
  const double all = label.how.margin.value + label.medium.margin.left / 100.0;
  const double margin = fine_dots(Millimetres{all}, label.resolution()).value;
  const Rect page = label.page();
  const Rect inside{margin, margin, page.right - margin, page.bottom - margin};
  for (const TextRun& text : label.texts)
    if (const Rect letters = ink(text, label.resolution()); !letters.within(inside))
      faults << QStringLiteral("outside the margin by %1, %2, %3, %4 dots: %5")
                    .arg(inside.left - letters.left)
                    .arg(inside.top - letters.top)
                    .arg(letters.right - inside.right)
                    .arg(letters.bottom - inside.bottom)
                    .arg(shown(text));
}

void find_in_quiet_zone(const Label& label, QStringList& faults) {
  if (label.own.codes.size() != 1) {
    faults << QStringLiteral("no code");
    return;
  }
  const Code& code = label.own.codes.front();
  if (code.module.value < label.medium.module_dots) faults << QStringLiteral("modules below the medium's least");
  const Rect zone = quiet_zone(code);
  if (!zone.within(label.page())) faults << QStringLiteral("the quiet zone leaves the label");
  for (const TextRun& text : label.texts)
    if (ink(text, label.resolution()).meets(zone)) faults << QStringLiteral("in the quiet zone: %1").arg(shown(text));
  for (const Box& box : label.layout.shared.boxes)
    if (area(box).meets(zone)) faults << QStringLiteral("a box enters the quiet zone");
}

// Every paragraph of every fact stands in what is drawn, in one piece; the longest are looked for first and struck out.
void find_dropped(const Label& label, QStringList& faults) {
  QString drawn;
  for (const TextRun& text : label.texts) drawn += without_spaces(text.text);
  QStringList wanted;
  for (const facts::Fact& fact : label.run.facts)
    if (fact.id != FactId::ContainerOf && fact.id != FactId::Serial)
      for (const facts::Paragraph& paragraph : fact.paragraphs) wanted << words_of(paragraph);
  wanted << without_spaces(label.container.container_of) << without_spaces(label.container.serial);
  std::stable_sort(wanted.begin(), wanted.end(),
                   [](const QString& a, const QString& b) { return a.size() > b.size(); });
  for (const QString& words : wanted) {
    const qsizetype at = drawn.indexOf(words);
    if (at < 0)
      faults << QStringLiteral("dropped: ") + words;
    else
      drawn.replace(at, words.size(), QStringLiteral("|"));
  }
  drawn.remove(u'|').remove(u'·');
  drawn.remove(QStringLiteral("2026"));  // the year stands behind the other language's date too
  if (!drawn.isEmpty()) faults << QStringLiteral("nobody asked for: ") + drawn;
}

// By the x-height of its size, in whole dots: capitals and figures alone too.
void find_too_small(const Label& label, QStringList& faults) {
  const double least = whole_dots_covering(fine_dots(label.how.least_x_height, label.resolution())).value;
  for (const TextRun& text : label.texts) {
    const Face& face = shipped_faces()[text.face];
    const double height = fine_dots(text.size, label.resolution()).value * face.x_height;
    if (height < least - 0.01) faults << QStringLiteral("too small to read: %1").arg(shown(text));
  }
}

// The size in which a fact begins; nothing where its first words are not found at the start of a text.
std::optional<double> size_of(const Label& label, FactId id) {
  for (const facts::Fact& fact : label.run.facts) {
    if (fact.id != id) continue;
    const QString words = words_of(fact.paragraphs.front());
    for (const TextRun& text : label.layout.shared.texts) {
      const QString drawn = without_spaces(text.text);
      if (words.startsWith(drawn) || drawn.contains(words.left(9))) return text.size.value;
    }
  }
  return std::nullopt;
}

void find_disorder(const Label& label, QStringList& faults) {
  std::vector<std::pair<double, double>> blocks;  // preferred size, size found
  for (const Block& block : label.how.blocks) {
    const FactId first = block.band ? FactId::Date : FactId::Name;
    for (const FactId id : block.band ? std::vector{first} : block.facts) {
      const auto size = size_of(label, id);
      if (!size) continue;
      const double least = block.band && label.run.frozen ? 9 : block.sizes.least.value;
      if (*size < least - 1e-9)
        faults << QStringLiteral("below the template's least: %1 at %2").arg(facts::name(id)).arg(*size);
      if (!(block.band && label.run.frozen)) blocks.emplace_back(block.sizes.preferred.value, *size);
    }
  }
  for (const auto& [wanted, size] : blocks)
    for (const auto& [other_wanted, other] : blocks)
      if (wanted > other_wanted && size < other - 1e-9)
        faults << QStringLiteral("a block of %1 pt is %2 pt beside one of %3 pt at %4 pt")
                      .arg(wanted)
                      .arg(size)
                      .arg(other_wanted)
                      .arg(other);
}

void find_light_band(const Label& label, QStringList& faults) {
  if (label.run.hold || label.run.frozen) return;
  const Box* band = label.band();
  if (band == nullptr) {
    faults << QStringLiteral("a dated label without a band");
    return;
  }
  const symbol::Matrix code =
      symbol::encode_qr(label.container.uri, symbol::strongest_correction(label.container.uri)).value();
  int dark = 0;
  for (int y = 0; y < code.size; ++y)
    for (int x = 0; x < code.size; ++x) dark += code.dark(x, y) ? 1 : 0;
  const int module = label.layout.code->module.value;
  if (band->width.value * band->height.value < dark * module * module)
    faults << QStringLiteral("the code is darker than the band");
  for (const TextRun& text : label.texts) {
    const Rect letters = ink(text, label.resolution());
    if (text.ink == Ink::White && !letters.within(area(*band)))
      faults << QStringLiteral("white outside the band: %1").arg(shown(text));
    if (text.ink == Ink::Black && letters.meets(area(*band)))
      faults << QStringLiteral("black in the band: %1").arg(shown(text));
  }
}

QString faults_of(const Label& label) {
  QStringList faults;
  find_overlaps(label, faults);
  find_outside(label, faults);
  find_in_quiet_zone(label, faults);
  find_dropped(label, faults);
  find_too_small(label, faults);
  find_disorder(label, faults);
  find_light_band(label, faults);
  return faults.join(u'\n');
}

// An error of room names the fact, the medium and how much lacks.
void check_refusal(const problem::Errors& errors, const facts::LabelRun& run, const book::Media& medium) {
  REQUIRE(errors.size() == 1);
  CHECK(errors.front().code == problem::Code::NoRoom);
  static const QRegularExpression form(QStringLiteral(
      "^the label of (.+) does not fit on \"(.+)\" \\((.+) × (.+) mm\\): ([a-z-]+) needs ([0-9.]+) mm more "
      "(?:width|height)(?: for \"(.+)\")?$"));
  const auto match = form.match(errors.front().what);
  CAPTURE(errors.front().what);
  REQUIRE(match.hasMatch());
  CHECK(match.captured(1) == run.title);
  CHECK(match.captured(2) == medium.id);
  CHECK(match.captured(3).toDouble() == Approx(medium.width / 100.0));
  CHECK(match.captured(6).toDouble() > 0);
  const auto fact = facts::fact_named(match.captured(5));
  REQUIRE(fact);
  CHECK(std::any_of(run.facts.begin(), run.facts.end(), [&](const facts::Fact& one) { return one.id == *fact; }));
}

problem::ExpectedAll<LabelLayout> laid_out(const facts::LabelRun& run, const book::Media& on) {
  return lay_out(run, template_of(run), on, shipped_faces());
}

facts::LabelRun chance_run(Chance& chance, int round) { return chance.run(kPurposes[round % 3], round % 7 == 6); }

}  // namespace

TEST_CASE("whatever a label must say, on any medium, it is whole, legible, in order and clear of the code, or refused",
          "[paper][label][property]") {
  Chance chance(20261125);
  std::map<QString, int> fitted;
  QStringList all;
  for (int round = 0; round < 105; ++round) {
    const facts::LabelRun run = chance_run(chance, round);
    std::vector<std::pair<int, int>> sizes = kSizes;
    sizes.emplace_back(4000 + chance.below(12000), 2000 + chance.below(6000));
    for (const auto& [width, height] : sizes)
      for (const int dpi : {203, 300}) {
        const book::Media on = medium(width, height, dpi);
        const auto layout = laid_out(run, on);
        if (!layout) {
          check_refusal(layout.error(), run, on);
          continue;
        }
        if (std::find(kSizes.begin(), kSizes.end(), std::pair(width, height)) != kSizes.end())
          ++fitted[QStringLiteral("%1 at %2").arg(width).arg(dpi)];
        for (const facts::ContainerFacts& one : run.containers) {
          const QString faults = faults_of(Label(run, template_of(run), on, *layout, one));
          if (!faults.isEmpty())
            all << QStringLiteral("round %1, %2 mm at %3 dpi, scale %4, trial %5:\n")
                           .arg(round)
                           .arg(width / 100)
                           .arg(dpi)
                           .arg(layout->scale)
                           .arg(layout->trial) +
                       faults;
        }
      }
  }
  INFO(all.join(u'\n').toStdString());
  CHECK(all.isEmpty());
  for (const auto& [on, count] : fitted) {
    UNSCOPED_INFO(on.toStdString() << ": " << count << " fitted");
    CHECK(count > 5);
  }
  CHECK(fitted.size() == 6);
}

TEST_CASE("the checks above find a text that is dropped, moved, shrunk or out of order", "[paper][label]") {
  Chance chance(17);
  facts::LabelRun run = chance.run(book::Purpose::Finisher, false);
  while (run.frozen || run.facts.front().paragraphs.size() > 1) run = chance.run(book::Purpose::Finisher, false);
  const book::Media on = medium(10160, 15240);
  const LabelLayout layout = laid_out(run, on).value();
  const auto faults = [&](auto&& spoil) {
    LabelLayout spoilt = layout;
    spoil(spoilt);
    return faults_of(Label(run, template_of(run), on, spoilt, run.containers.front()));
  };
  CHECK(faults([](LabelLayout&) {}).isEmpty());
  for (size_t i = 0; i < layout.shared.texts.size(); ++i) {
    CAPTURE(layout.shared.texts[i].text);
    CHECK(faults([&](LabelLayout& l) {
            l.shared.texts.erase(l.shared.texts.begin() + static_cast<long>(i));
          }).contains("dropped: "));
    CHECK(faults([&](LabelLayout& l) { l.shared.texts[i].size = Points{3}; }).contains("too small"));
  }
  CHECK(faults([](LabelLayout& l) { l.shared.texts[0].baseline = l.shared.texts[1].baseline; }).contains("overlap"));
  CHECK(faults([](LabelLayout& l) { l.shared.texts[0].x = FineDots{0}; }).contains("outside the margin"));
  // The first text is the lot in the foot, the second the name.
  CHECK(faults([](LabelLayout& l) { l.shared.texts[1].size = Points{11.5}; }).contains("pt beside one of"));
  CHECK(faults([](LabelLayout& l) { l.code->bottom -= Dots{200}; }).contains("quiet zone"));
  CHECK(faults([](LabelLayout& l) { l.shared.boxes[0].height = Dots{8}; }).contains("darker than the band"));
  CHECK(faults([](LabelLayout& l) { l.shared.boxes.clear(); }).contains("without a band"));
}
