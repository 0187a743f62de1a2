// A small kitchen, and batches put together by hand, for the tests of label facts.
#pragma once

#include <QDir>
#include <QFile>

#include "batch/lot.h"
#include "book_files.h"
#include "facts/label_facts.h"
#include "gs1/check_digit.h"
#include "show.h"
#include "words/pack.h"

namespace lardiner::facts::tray {

inline QByteArray file_bytes(const QString& path) {
  QFile file(path);
  REQUIRE(file.open(QIODevice::ReadOnly));
  return file.readAll();
}

inline const QByteArray kKitchen = R"(
name = "Test Lane Commissary"
address = ["1 Test Lane", "Testford, NY 10001"]
time_zone = "America/New_York"
languages = ["en", "es"]
units = "metric"
allergen_list = "us"
rule_set = "us-fda-food-code-2022"
code_address = "https://tl.test"
gtin_prefix = "0401"
station = "A"
lot = ["station", "year", "day-of-year", "product-code", "number"]
scale_step = "1 g"
ingredient_media = "lid"
)";

inline const QByteArray kPlaces = R"(
[[media]]
id = "lid"
name = "tub lid"
width = "50 mm"
height = "50 mm"
bears = ["chilled", "freezer", "hot"]

[[site]]
id = "harbour"
name = { en = "Harbour Street", es = "Calle del Puerto" }
[[site]]
id = "calais"
name = { en = "Calais", es = "Calais" }
allergen_list = "eu"
[[site]]
id = "windsor"
name = "Windsor"
allergen_list = "ca"
)";

inline QByteArray ingredient(const QByteArray& id, const QByteArray& names, const QByteArray& contains,
                             const QByteArray& cooked = "must_be_cooked = false") {
  return "[[ingredient]]\nid = \"" + id + "\"\nname = " + names + "\ntcs = \"yes\"\ntcs_basis = \"test\"\n" + cooked +
         "\n[[ingredient.supplier_item]]\nid = \"" + id + "-a\"\nsupplier = \"A\"\ncontains = " + contains +
         "\nchecked = 2026-01-01\nsource = \"letter\"\n";
}

inline QByteArray ingredients() {
  return ingredient("butter", "{ en = \"Butter\", es = \"Mantequilla\" }", "[\"milk\"]",
                    "must_be_cooked = false\ncode = \"BTR\"\nitem_number = \"00000901\"") +
         ingredient("lime", "{ en = \"Lime\", es = \"Limón\" }", "\"none\"") +
         ingredient("flour", "{ en = \"Flour\", es = \"Harina\" }", "[\"wheat\"]") +
         ingredient("apricot", "{ en = \"Apricots\", es = \"Albaricoques\" }", "[\"sulphites 15 mg/kg\"]") +
         ingredient("chicken", "{ en = \"Chicken\", es = \"Pollo\" }", "\"none\"",
                    "must_be_cooked = true\nfood = \"poultry\"");
}

inline const QByteArray kProducts = R"toml(
[[product]]
id = "lime-butter"
name = { en = "Lime butter", es = "Mantequilla de limón" }
kind = "component"
code = "LBU"
item_number = "00000001"
tcs = "yes"
tcs_basis = "fresh lime in butter"
used_for = { en = "for fish cakes", es = "para tortitas" }
formula = [{ item = "butter", amount = "1 kg" }, { item = "lime", amount = "30 g" }, { item = "apricot", amount = "20 g" }]
[[product.shelf_life]]
state = "chilled"
authority = "figure:ready-to-eat-chilled"
[[product.shelf_life]]
state = "frozen"
keeps = "3 months"
authority = "kitchen rule"
[[product.container]]
kind = "tub"
holds = "500 g"
media = "lid"
purpose = "inside"
[[product.container]]
kind = "jar"
holds = "199.6 g"
media = "lid"
purpose = "sale"
[[product.container]]
kind = "bag"
holds = "1 kg"
media = "lid"
purpose = "finisher"
languages = ["en", "es"]

[[product]]
id = "parcel"
name = { en = "Chicken parcels", es = "Empanadas de pollo" }
kind = "assembled item"
code = "PAR"
item_number = "00000002"
tcs = "yes"
tcs_basis = "raw poultry in dough"
makes = "24 pieces"
unit_name = { en = "parcel", es = "empanada" }
unit_plural = { en = "parcels", es = "empanadas" }
unit_weight = "100 g"
safe_handling = true
formula = [{ item = "chicken", per_unit = "60 g" }, { item = "flour", per_unit = "40 g" }]
[[product.shelf_life]]
state = "chilled"
keeps = "3 days"
authority = "kitchen rule"
[[product.shelf_life]]
state = "frozen"
keeps = "3 months"
authority = "kitchen rule"
[[product.container]]
kind = "tray"
holds = "24 pieces"
media = "lid"
purpose = "finisher"
[[product.container]]
kind = "bag"
holds = "24 pieces"
media = "lid"
purpose = "inside"
[[product.container]]
kind = "case"
holds = "24 pieces"
media = "lid"
purpose = "sale"
[[product.finishing]]
equipment = "oven"
from = "chilled"
setting = "375 °F (190 °C)"
time = "16 to 18 min"
to = "165 °F (74 °C) 15 s"
cue = { en = "Golden", es = "Doradas" }
rest = "2 min"
hold_most = "45 min"
[[product.finishing]]
equipment = "fryer"
from = "frozen"
setting = "350 °F (177 °C)"
time = "22 min"
to = "165 °F (74 °C) 15 s"
hold_most = "30 min"

[[product]]
id = "wrapped-butter"
name = "Wrapped butter"
kind = "component"
code = "WBU"
item_number = "00000003"
tcs = "yes"
tcs_basis = "butter"
formula = [{ item = "butter", amount = "1 kg" }]
[[product.shelf_life]]
state = "chilled"
keeps = "21 days"
authority = "kitchen rule"
document = "study 14"
[[product.container]]
kind = "bag"
holds = "250 g"
media = "lid"
purpose = "inside"
package = "reduced oxygen"
)toml";

inline book::Book read_files(const std::vector<book::SourceFile>& files) {
  const book::Reading reading =
      book::read_book(files, test_support::toml_files(QStringLiteral(LARDINER_SOURCE_DIR "/templates/rules")));
  if (!reading.findings.errors.empty()) FAIL(problem::text(reading.findings.errors).toStdString());
  return reading.book;
}

inline std::vector<book::SourceFile> kitchen_files(const QByteArray& more) {
  return {{QStringLiteral("kitchen.toml"), more + kKitchen},
          {QStringLiteral("places.toml"), kPlaces},
          {QStringLiteral("ingredients.toml"), ingredients()},
          {QStringLiteral("products.toml"), kProducts}};
}

inline book::Book read_kitchen(const QByteArray& more = {}) { return read_files(kitchen_files(more)); }

inline const book::Book& kitchen() {
  static const book::Book book = read_kitchen();
  return book;
}

/// The kitchen in which somebody has read the Spanish safety words.
inline const book::Book& bilingual_kitchen() {
  static const book::Book book = read_kitchen("words_reviewed_by = { es = \"L. Valdivar\" }\n");
  return book;
}

/// All that are shipped, English first.
inline const std::vector<words::Language>& languages() {
  static const std::vector<words::Language> all = [] {
    std::vector<words::Language> read;
    for (const char* const tag : {"en", "es", "fr", "pt", "vi", "el", "ru", "zh"}) {
      const QString code = QString::fromLatin1(tag);
      const QString file = code + QStringLiteral(".toml");
      const auto language =
          words::read_language(file_bytes(QStringLiteral(LARDINER_SOURCE_DIR "/templates/words/") + file), file, code);
      if (!language) FAIL(problem::text(language.error()).toStdString());
      read.push_back(*language);
    }
    return read;
  }();
  return all;
}

inline QDateTime at(int year, int month, int day, int hour = 0, int minute = 0) {
  return QDateTime(QDate(year, month, day), QTime(hour, minute), QTimeZone("America/New_York"));
}

inline batch::UseBy until(QDate last, book::EndKind kind = book::EndKind::UseBy) {
  batch::UseBy out;
  out.kind = kind;
  out.date = last;
  out.end = last.addDays(1).startOfDay(QTimeZone("America/New_York"));
  return out;
}

inline batch::UseBy until_time(const QDateTime& end, book::EndKind kind = book::EndKind::UseBy) {
  batch::UseBy out;
  out.form = batch::UseBy::Form::Instant;
  out.kind = kind;
  out.end = end;
  return out;
}

inline batch::UseBy frozen_with(QDate frozen_on, int days_left) {
  batch::UseBy out;
  out.form = batch::UseBy::Form::Frozen;
  out.frozen_on = frozen_on;
  out.days_left = days_left;
  return out;
}

inline book::Declaration holds(const char* substance, const char* species = "") {
  book::Declaration out;
  out.substance = QString::fromLatin1(substance);
  out.species = QString::fromLatin1(species);
  return out;
}

inline book::Declaration sulphites(int mg_per_kg) {
  book::Declaration out = holds("sulphites");
  out.mg_per_kg = measure::Ratio(mg_per_kg, 1);
  return out;
}

/// Pieces where `unit` is Piece, else a weight.
inline measure::Quantity amount(int tenths, measure::Unit unit) {
  return measure::quantity(measure::Ratio(tenths, 10), unit);
}

/// A batch of 25 November 2026 that nothing is wrong with: `count` containers of one group, ready to eat, contains
/// milk, use by 1 December.
inline batch::Batch batch_of(const QString& item, const QString& kind, measure::Quantity each, int count = 3) {
  const book::Kitchen& home = kitchen().kitchen;
  const book::Product* product = kitchen().product(item);
  const QString code = product ? product->code : kitchen().ingredient(item)->code;
  const QString number = product ? product->item_number : kitchen().ingredient(item)->item_number;
  batch::Batch out;
  out.record.item = item;
  out.record.made_at = at(2026, 11, 25, 10, 40);
  out.record.by = QStringLiteral("MK");
  out.record.containers.push_back({count, kind, each, {}});
  out.number = 1;
  out.lot = batch::lot(home, QDate(2026, 11, 25), code, 1);
  out.gtin = gs1::gtin14(home.gtin_prefix, number).value();
  out.day_one = out.record.made_at;
  for (int n = 1; n <= count; ++n)
    out.containers.push_back({n, count, 0, batch::serial(home, QDate(2026, 11, 25), 1, n), 0, false});
  out.use_bys.push_back(until(QDate(2026, 12, 1)));
  out.declared = {true, {holds("milk")}, {}};
  out.readiness = book::Readiness::ReadyToEatUncooked;
  return out;
}

inline batch::Batch butter() {
  return batch_of(QStringLiteral("lime-butter"), QStringLiteral("tub"), amount(5000, measure::Unit::Gram));
}

inline batch::Batch butter_for_sale() {
  return batch_of(QStringLiteral("lime-butter"), QStringLiteral("jar"), amount(1996, measure::Unit::Gram));
}

/// Raw parcels of 24; `kind` is tray for the finisher, bag for the kitchen, case for sale.
inline batch::Batch parcels(const char* kind = "tray") {
  batch::Batch out = batch_of(QStringLiteral("parcel"), QString::fromLatin1(kind), amount(240, measure::Unit::Piece));
  out.readiness = book::Readiness::MustBeCooked;
  out.declared = {true, {holds("wheat")}, {}};
  return out;
}

inline void happens(batch::Batch& batch, batch::Happening what, const QDateTime& when) {
  batch::Event event;
  event.what = what;
  event.at = when;
  batch.record.events.push_back(event);
}

/// The one run of a batch; what is wrong fails the test.
inline LabelRun run_of(const batch::Batch& batch, const book::Book& book = kitchen(), const LabelWish& wish = {}) {
  const auto runs = label_runs(book, batch, languages(), wish);
  if (!runs) FAIL(problem::text(runs.error()).toStdString());
  REQUIRE(runs->size() == 1);
  return runs->front();
}

/// All that is wrong; empty when there are runs.
inline QString refused(const batch::Batch& batch, const book::Book& book = kitchen(), const LabelWish& wish = {}) {
  const auto runs = label_runs(book, batch, languages(), wish);
  return runs ? QString() : problem::text(runs.error());
}

inline const Fact* fact(const LabelRun& run, FactId id) {
  const Fact* found = nullptr;
  for (const Fact& one : run.facts) {
    if (one.id != id) continue;
    CHECK(found == nullptr);  // each fact at most once
    found = &one;
  }
  return found;
}

inline bool says(const LabelRun& run, FactId id) { return fact(run, id) != nullptr; }

/// A fact's paragraphs, one line each; empty when the label does not say it. No-break spaces as plain ones.
inline QString words_of(const LabelRun& run, FactId id) {
  QStringList lines;
  if (const Fact* found = fact(run, id))
    for (const Paragraph& paragraph : found->paragraphs) {
      QString line;
      for (const Run& part : paragraph) line += part.text;
      lines << line.replace(QChar(0x00A0), u' ');
    }
  return lines.join(u'\n');
}

/// What stands in strong type in a fact.
inline QStringList strong_words(const LabelRun& run, FactId id) {
  QStringList out;
  if (const Fact* found = fact(run, id))
    for (const Paragraph& paragraph : found->paragraphs)
      for (const Run& part : paragraph)
        if (part.strong) out << part.text;
  return out;
}

}  // namespace lardiner::facts::tray
