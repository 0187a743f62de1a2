// Labels in other scripts: accents and ideographs keep clear of the lines above and below, and Latin labels stay as
// they were.
#include <QDir>
#include <algorithm>

#include "label_runs.h"
#include "paper/label_stack.h"
#include "words/pack.h"

namespace lardiner::paper {

namespace {

using facts::FactId;

struct Words {
  const char* language;
  QString name, caption, date, contains, keep, tub;
};

const std::vector<Words>& languages() {
  static const std::vector<Words> all = {
      {"vi", QStringLiteral("BƠ ỚT CHANH VỚI ĐẬU PHỘNG"), QStringLiteral("SỬ DỤNG TRƯỚC"),
       QStringLiteral("THỨ BA 01 TH12"), QStringLiteral("CÓ CHỨA SỮA, ĐẬU PHỘNG, HẢI SẢN GIÁP XÁC, HẠT CÂY"),
       QStringLiteral("Giữ ở 5 °C (41 °F) hoặc thấp hơn"), QStringLiteral("Hộp 1 trên 24")},
      {"zh", QStringLiteral("辣椒青柠黄油"), QStringLiteral("此日期前食用"), QStringLiteral("12月01日 星期二"),
       QStringLiteral("含有：牛奶、鸡蛋、花生、大豆、芝麻、坚果"), QStringLiteral("冷藏5 °C（41 °F）以下"),
       QStringLiteral("第1桶 24桶")},
      {"ru", QStringLiteral("МАСЛО С ЧИЛИ И ЛАЙМОМ"), QStringLiteral("ГОДЕН ДО"), QStringLiteral("ВТ 01 ДЕК"),
       QStringLiteral("СОДЕРЖИТ МОЛОКО, ЙОГУРТ, ЯЙЦА, АРАХИС"), QStringLiteral("Хранить при 5 °C (41 °F) или ниже"),
       QStringLiteral("Контейнер 1 из 24")},
      {"el", QStringLiteral("ΒΟΎΤΥΡΟ ΜΕ ΤΣΊΛΙ ΚΑΙ ΛΆΙΜ"), QStringLiteral("ΑΝΆΛΩΣΗ ΈΩΣ"), QStringLiteral("ΤΡΊ 01 ΔΕΚ"),
       QStringLiteral("ΠΕΡΙΈΧΕΙ ΓΆΛΑ, ΑΥΓΌ, ΦΙΣΤΊΚΙΑ"), QStringLiteral("Διατηρείται στους 5 °C (41 °F) ή λιγότερο"),
       QStringLiteral("Δοχείο 1 από 24")}};
  return all;
}

facts::LabelRun run_in(const Words& words, bool also_english) {
  facts::LabelRun run;
  run.title = words.name;
  run.lot = QStringLiteral("A26329CLB7");
  run.language = QLatin1String(words.language);
  const auto add = [&](FactId id, const QString& own, const QString& english, bool strong) {
    run.facts.push_back({id, {said(own, strong)}});
    if (also_english) run.facts.back().paragraphs.push_back(said(english, strong));
  };
  add(FactId::Name, words.name, QStringLiteral("Chilli-lime butter"), true);
  add(FactId::DateCaption, words.caption, QStringLiteral("USE BY"), true);
  add(FactId::Date, words.date, QStringLiteral("TUE 01 DEC"), true);
  run.facts.push_back({FactId::Year, {said(QStringLiteral("2026"))}});
  add(FactId::Contains, words.contains, QStringLiteral("CONTAINS milk"), true);
  add(FactId::KeepAt, words.keep, QStringLiteral("Keep at 5 °C (41 °F) or below"), false);
  facts::ContainerFacts tub{words.tub, QStringLiteral("A2632901-1"), "https://tl.test/01/00401000000015/10/A26329CLB7",
                            1};
  run.containers = {tub};
  run.facts.push_back({FactId::Lot, {said(QStringLiteral("A26329CLB7 · MK"), true)}});
  run.facts.push_back({FactId::ContainerOf, {said(words.tub)}});
  run.facts.push_back({FactId::Serial, {said(tub.serial)}});
  return run;
}

std::vector<TextRun> texts_of(const LabelLayout& layout, const facts::LabelRun& run) {
  std::vector<TextRun> all = layout.shared.texts;
  const Drawing own = own_drawing(layout, run.containers.front(), std::nullopt, shipped_faces());
  all.insert(all.end(), own.texts.begin(), own.texts.end());
  return all;
}

// The packs of templates/words.
std::vector<words::Language> shipped_languages() {
  const QDir folder(QStringLiteral(LARDINER_SOURCE_DIR "/templates/words"));
  std::vector<words::Language> out;
  for (const QString& name : folder.entryList({QStringLiteral("*.toml")}, QDir::Files)) {
    QFile file(folder.filePath(name));
    REQUIRE(file.open(QIODevice::ReadOnly));
    const auto read = words::read_language(file.readAll(), name, name.chopped(5));
    REQUIRE(read);
    out.push_back(*read);
  }
  return out;
}

// A HOLD label for want of `missing`, as the facts say it.
facts::LabelRun held(const words::Language& language, const QString& missing) {
  facts::LabelRun run;
  run.hold = true;
  run.language = language.tag();
  run.lot = QStringLiteral("A26329CLB7");
  const auto word = [&](const char* key) { return language.word(QLatin1String(key)); };
  const auto sentence = [&](const char* key, const QStringList& values) {
    return language.sentence(QLatin1String(key), values);
  };
  const QString tub = sentence("container.tub", {QStringLiteral("24"), QStringLiteral("24")});
  const QString made = language.date_time(QDateTime(QDate(2026, 11, 25), QTime(7, 15)));
  run.facts = {{FactId::Name, {said(QStringLiteral("Smoked-pepper seasoning"), true)}},
               {FactId::Hold, {said(word("hold"), true)}},
               {FactId::DoNotUse, {said(word("do_not_use"), true)}},
               {FactId::Missing, {said(sentence("no_date", {language.word(missing)}))}},
               {FactId::Made, {said(sentence("made", {made}))}},
               {FactId::Lot, {said(QStringLiteral("A26329CLB7 · MK"), true)}},
               {FactId::ContainerOf, {said(tub)}},
               {FactId::Serial, {said(QStringLiteral("A2632901-24"))}}};
  run.containers = {{tub, QStringLiteral("A2632901-24"),
                     "https://quarrylane.example/01/00417000000013/10/A26329CLB7/21/A2632901-24", 24}};
  return run;
}

}  // namespace

TEST_CASE("the smallest lid holds a HOLD label with a name of two lines in every language, whatever is missing",
          "[paper][label][scripts]") {
  book::Media lid = medium(5000, 5000);
  lid.margin = {100, 100, 100, 100};
  for (const words::Language& language : shipped_languages())
    for (const QString& key : words::keys(language.code())) {
      if (!key.startsWith(QLatin1String("missing."))) continue;
      CAPTURE(language.code(), key);
      CHECK(lay_out(held(language, key), shipped_template("hold"), lid, shipped_faces()));
    }
}

TEST_CASE("in every script no ink overlaps, leaves the margin or the band, and all of the text is there",
          "[paper][label][scripts]") {
  for (const Words& words : languages())
    for (const bool also_english : {false, true})
      for (const auto& [width, height] : std::vector<std::pair<int, int>>{{5000, 5000}, {10000, 5000}, {6000, 9000}}) {
        const facts::LabelRun run = run_in(words, also_english);
        const book::Media on = medium(width, height);
        CAPTURE(words.language, also_english, width);
        const auto layout = lay_out(run, shipped_template("inside"), on, shipped_faces());
        if (!layout) {  // two languages are too much for the smallest
          CHECK(layout.error().front().code == problem::Code::NoRoom);
          CHECK((also_english && width == 5000));
          continue;
        }
        const Resolution resolution = layout->size.resolution;
        const double margin = fine_dots(Millimetres{1.5}, resolution).value - 1;
        const Rect inside{margin, margin, layout->size.width.value - margin, layout->size.height.value - margin};
        REQUIRE(layout->shared.boxes.size() == 1);
        const Box& box = layout->shared.boxes.front();
        const Rect band{double(box.x.value), double(box.y.value), double((box.x + box.width).value),
                        double((box.y + box.height).value)};
        const std::vector<TextRun> texts = texts_of(*layout, run);
        QString drawn;
        for (std::size_t one = 0; one < texts.size(); ++one) {
          CAPTURE(texts[one].text, texts[one].size.value);
          const Rect letters = ink(texts[one], resolution);
          drawn += without_spaces(texts[one].text);
          CHECK(letters.within(inside));
          if (texts[one].ink == Ink::White) CHECK(letters.within(band));
          if (texts[one].ink == Ink::Black) CHECK_FALSE(letters.meets(band));
          for (std::size_t other = one + 1; other < texts.size(); ++other) {
            CAPTURE(texts[other].text);
            CHECK_FALSE(letters.meets(ink(texts[other], resolution)));
          }
        }
        for (const QString& text : {words.name, words.caption, words.date, words.contains, words.keep, words.tub})
          CHECK(drawn.contains(without_spaces(text)));
      }
}

TEST_CASE("lines are taller only where their own paragraph needs it", "[paper][label][scripts]") {
  const auto pitch = [](const QString& contains) {
    facts::LabelRun run = run_in(languages().front(), false);
    for (facts::Fact& fact : run.facts)
      if (fact.id == FactId::Contains) fact.paragraphs = {said(contains, true)};
    const auto layout = lay_out(run, shipped_template("inside"), medium(10000, 15000), shipped_faces());
    REQUIRE(layout);
    std::vector<double> baselines;
    double size = 0;
    for (const TextRun& text : layout->shared.texts)
      if (without_spaces(contains).contains(without_spaces(text.text)) && text.text.size() > 1) {
        baselines.push_back(text.baseline.value);
        size = fine_dots(text.size, layout->size.resolution).value;
      }
    std::sort(baselines.begin(), baselines.end());
    baselines.erase(std::unique(baselines.begin(), baselines.end()), baselines.end());
    REQUIRE(baselines.size() >= 2);
    return (baselines[1] - baselines[0]) / size;
  };
  const QString list =
      QStringLiteral("CONTAINS %1, WHEAT, SESAME, MUSTARD, CELERY, FISH (COD, HAKE), TREE NUTS, EGGS, PEANUTS");
  CHECK(pitch(list.arg(QStringLiteral("MILK"))) == Approx(1.17));
  CHECK(pitch(list.arg(QStringLiteral("É Ñ Å Ç g"))) == Approx(1.17));
  CHECK(pitch(list.arg(QStringLiteral("Ắ"))) > 1.25);
}

}  // namespace lardiner::paper
