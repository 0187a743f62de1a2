// One truth: the date, the allergens and every other fact on a page are those that were computed, and none is lost.
#include <QRegularExpression>

#include "demo_day.h"
#include "our_book.h"

using namespace lardiner;
using namespace lardiner::command;
using namespace Qt::StringLiterals;

namespace {

QString text_of(const facts::Paragraph& paragraph) {
  QString out;
  for (const facts::Run& run : paragraph) out += run.text;
  return out;
}

// A band's caption and kind, date and time against the report of dates.
void check_date(const Labelled& label, const Band& band) {
  const QString form = label.date["form"_L1].toString();
  const QString kind = label.date["kind"_L1].toString();
  if (form == "frozen") {
    CHECK(band.caption == "FROZEN");
    CHECK(band.date.toString(Qt::ISODate) == label.date["frozen_on"_L1].toString());
    CHECK_FALSE(band.time);
    return;
  }
  CHECK(band.caption == kind.toUpper());
  if (form == "time") {
    REQUIRE(band.time);
    CHECK(label.date["time"_L1].toString().startsWith(QDateTime(band.date, *band.time).toString(u"yyyy-MM-ddTHH:mm")));
    return;
  }
  CHECK(form == "date");
  CHECK(band.date.toString(Qt::ISODate) == label.date["date"_L1].toString());
  CHECK_FALSE(band.time);
}

// Everything that the container's label must say, against its page.
void check_facts(const facts::LabelRun& run, const facts::ContainerFacts& container, const Page& page) {
  const QString text = unspaced(page.text);
  for (const facts::Fact& fact : run.facts) {
    if (fact.id == facts::FactId::ContainerOf || fact.id == facts::FactId::Serial) continue;
    for (const facts::Paragraph& paragraph : fact.paragraphs) {
      INFO(text_of(paragraph).toStdString());
      CHECK(text.contains(unspaced(text_of(paragraph))));
    }
  }
  CHECK(text.contains(unspaced(container.container_of)));
  CHECK(text.contains(unspaced(container.serial)));
  REQUIRE(page.codes.size() == 1);
  CHECK(page.codes.front().toLatin1() == container.uri);
}

const Labelled& page_of(const std::vector<Labelled>& all, const QString& lot, int number) {
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Labelled& one) { return one.lot == lot && one.number == number; });
  INFO(lot.toStdString() << ", container " << number);
  REQUIRE(found != all.end());
  return *found;
}

// The first page with this item's label, of several the one that also says `besides`.
const Page& page_with(const QString& item, const QString& besides = {}) {
  static const std::vector<Labelled> kAll = labelled(demo_day());
  for (const Labelled& label : kAll)
    if (label.batch["item"_L1].toString() == item && label.page->text.contains(besides)) return *label.page;
  FAIL("no label of " << item.toStdString() << " says " << besides.toStdString());
  return *kAll.front().page;
}

}  // namespace

TEST_CASE("the date in every band is the one that the report of dates gives for that container",
          "[command][labels][dates][src:practice]") {
  for (const Labelled& label : labelled(demo_day())) {
    INFO(label.page->name().toStdString() << ": " << label.page->text.toStdString());
    const auto shown = band(*label.page);
    REQUIRE(shown);
    check_date(label, *shown);
    static const QRegularExpression kPack(QStringLiteral("Discard if not used by (\\w{3} \\d\\d \\w{3} \\d{4})"));
    const auto pack = kPack.match(label.page->text);
    if (!pack.hasMatch()) continue;
    CHECK(pack.captured(1) == QLocale(QLocale::English).toString(shown->date, QStringLiteral("ddd dd MMM yyyy")));
  }
}

TEST_CASE("every fact that a label must say stands whole on its page", "[command][labels][facts][src:practice]") {
  const book::Book book = demo_book();
  const auto run = value_of(read_run(kDemoDay, RecordFormat::Guess, book, kEvening));
  const auto languages = value_of(read_languages(demo_options()));
  const std::vector<Labelled> all = labelled(demo_day());
  size_t checked = 0;
  REQUIRE(run.errors.empty());
  for (const batch::Batch& batch : run.batches)
    for (const facts::LabelRun& label : value_of(facts::label_runs(book, batch, languages, {})))
      for (const facts::ContainerFacts& container : label.containers) {
        const Labelled& printed = page_of(all, batch.lot, container.number);
        INFO(printed.page->name().toStdString() << ": " << printed.page->text.toStdString());
        CHECK(printed.page->file == label.media + ".pdf");
        check_facts(label, container, *printed.page);
        ++checked;
      }
  CHECK(checked == all.size());
}

TEST_CASE(
    "every allergen of the destination's list that is in the food is named on its label, and with none it says so",
    "[command][labels][allergens][src:21-usc-343]") {
  const book::Book book = demo_book();
  const auto run = value_of(read_run(kDemoDay, RecordFormat::Guess, book, kEvening));
  const book::AllergenList* us = book.law.list("us");
  REQUIRE(us);
  const std::vector<Labelled> all = labelled(demo_day());
  std::map<QString, const batch::Batch*> by_lot;
  for (const batch::Batch& batch : run.batches) by_lot[batch.lot] = &batch;
  static const std::map<QString, QString> kWords = {{"milk", "milk"},
                                                    {"egg", "egg"},
                                                    {"wheat", "wheat"},
                                                    {"soy", "soybeans"},
                                                    {"sesame", "sesame"},
                                                    {"fish", "fish ("},
                                                    {"peanut", "peanuts"},
                                                    {"tree-nut", "tree nuts ("},
                                                    {"crustacean", "crustaceans ("}};
  for (const Labelled& label : all) {
    INFO(label.page->name().toStdString() << ": " << label.page->text.toStdString());
    const qsizetype at = label.page->text.indexOf("CONTAINS ");
    bool any = false;
    for (const book::ListedAllergen& allergen : book::listed(by_lot.at(label.lot)->declared.contains, *us)) {
      if (allergen.in_ingredient_list_only) continue;
      any = true;
      REQUIRE(at >= 0);
      CHECK(label.page->text.indexOf(kWords.at(allergen.entry), at) > at);
    }
    CHECK(any == (at >= 0));
    if (!any) CHECK(label.page->text.contains("None of the US major allergens"));
  }
}

// Worked by hand from the declarations in samples/kitchen and the records of the day.
TEST_CASE("allergens come from what really went in: species, substitutions, the supplier's own declaration",
          "[command][labels][allergens][src:practice]") {
  CHECK(page_with("fish-cake", "A26329FCK15").text.contains("CONTAINS milk, egg, fish (cod), wheat "));
  const Page& substituted = page_with("fish-cake", "A26329FCK16");
  CHECK(substituted.text.contains("CONTAINS milk, egg, fish (pollock), wheat "));
  CHECK(substituted.text.contains("Substitution adds FISH (POLLOCK)"));
  CHECK(page_with("apple-pecan-crumble").text.contains("CONTAINS milk, tree nuts (pecan), wheat "));
  CHECK(page_with("smoky-beef-patty").text.contains("CONTAINS fish (anchovy) "));  // of the Worcestershire sauce
  CHECK(page_with("soy-sauce").text.contains("CONTAINS soybeans "));               // a tamari: no wheat
  CHECK(page_with("sesame-slaw").text.contains("CONTAINS wheat, soybeans, sesame "));
}
