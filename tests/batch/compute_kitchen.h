// A small kitchen for the tests of records and batches: its book, and short ways to run a day's records.
#pragma once

#include <QDir>
#include <QFile>

#include "batch/batch.h"
#include "batch/clock.h"
#include "batch/read_records.h"
#include "book_files.h"
#include "reader/read.h"
#include "show.h"

namespace lardiner::batch::day {

inline QByteArray file_bytes(const QString& path) {
  QFile file(path);
  REQUIRE(file.open(QIODevice::ReadOnly));
  return file.readAll();
}

/// `table` of the kitchen with one line of it replaced or added before the tables.
inline QByteArray kitchen_toml(const QByteArray& more = {}) {
  return more + R"(
name = "Test Kitchen"
address = ["1 Lane"]
time_zone = "America/New_York"
languages = ["en"]
units = "metric"
rule_set = "us-fda-food-code-2022"
code_address = "https://lot.kitchen.example"
gtin_prefix = "0401"
station = "A"
lot = ["station", "year", "day-of-year", "product-code", "number"]
scale_step = "1 g"
ingredient_media = "lid"
)" + (more.contains("allergen_list") ? "" : "allergen_list = \"us\"\n");
}

inline QByteArray media_toml() {
  return R"(
[[media]]
id = "lid"
name = "lid"
width = "100 mm"
height = "100 mm"
bears = ["chilled", "freezer", "hot"]
[[site]]
id = "harbour-street"
name = "Harbour Street"
[[site]]
id = "calais"
name = "Calais"
allergen_list = "eu"
[[site]]
id = "windsor"
name = "Windsor"
allergen_list = "ca"
[[person]]
initials = "MK"
name = "M. Kerr"
[[person]]
initials = "JO"
name = "J. Osei"
)";
}

/// `food`: its class when it must be cooked, else empty.
inline QByteArray ingredient(const QByteArray& id, const QByteArray& tcs, const QByteArray& food, const QByteArray& contains,
                             const QByteArray& more = {}) {
  const QByteArray cooked = food.isEmpty() ? QByteArray("must_be_cooked = false\n") : "must_be_cooked = true\nfood = \"" + food + "\"\n";
  return "[[ingredient]]\nid = \"" + id + "\"\nname = \"" + id + "\"\ntcs = \"" + tcs + "\"\ntcs_basis = \"test\"\n" + cooked + more +
         "\n[[ingredient.supplier_item]]\nid = \"" + id + "-a\"\nsupplier = \"A\"\ncontains = " + contains +
         "\nchecked = 2026-01-01\nsource = \"letter\"\n";
}

/// `lines` is the formula; `more` further keys and tables, tables last.
inline QByteArray product(const QByteArray& id, const QByteArray& code, const QByteArray& tcs, const QByteArray& lines, const QByteArray& more) {
  QByteArray number;
  for (const char letter : code) number += QByteArray::number(letter - 'A' + 10);
  return "[[product]]\nid = \"" + id + "\"\nname = \"" + id + "\"\nkind = \"component\"\ncode = \"" + code + "\"\nitem_number = \"" +
         number.leftJustified(8, '0') + "\"\ntcs = \"" + tcs + "\"\ntcs_basis = \"test\"\nformula = [" + lines + "]\n" + more +
         "\n[[product.container]]\nkind = \"tub\"\nholds = \"500 g\"\nmedia = \"lid\"\npurpose = \"inside\"\n";
}

inline QByteArray line(const QByteArray& item, const QByteArray& amount = "1 kg") {
  return "{ item = \"" + item + "\", amount = \"" + amount + "\" },";
}

inline QByteArray life(const QByteArray& state, const QByteArray& keeps, const QByteArray& authority = "kitchen rule",
                       const QByteArray& more = {}, const QByteArray& of = "product") {
  return "[[" + of + ".shelf_life]]\nstate = \"" + state + "\"\n" + (keeps.isEmpty() ? QByteArray() : "keeps = \"" + keeps + "\"\n") +
         "authority = \"" + authority + "\"\n" + more + "\n";
}

inline const QByteArray& seven_days() {
  static const QByteArray rule = life("chilled", {}, "figure:ready-to-eat-chilled");
  return rule;
}

inline QByteArray ingredients_toml() {
  const QByteArray opened_3 = life("opened", "3 days", "kitchen rule", {}, "ingredient");
  return ingredient("ground-beef", "yes", "ground-meat", "\"none\"") + ingredient("chicken-thigh", "yes", "poultry", "\"none\"") +
         ingredient("cod", "yes", "fish", "[\"fish:cod\"]", "code = \"COD\"\nitem_number = \"00000901\"\n" + life("thawed", "2 days", "kitchen rule", {}, "ingredient")) +
         ingredient("oysters", "yes", "", "[\"mollusc:oyster\"]") +
         ingredient("mayonnaise", "yes", "", "[\"egg\"]") + ingredient("butter", "yes", "", "[\"milk\"]") +
         ingredient("margarine", "yes", "", "[\"soy\"]") +
         ingredient("cream", "yes", "", "[\"milk\"]", "code = \"CRM\"\nitem_number = \"00000902\"\n" + opened_3) +
         ingredient("melon", "yes", "", "\"none\"", "code = \"MEL\"\nitem_number = \"00000903\"\n" + life("chilled", "4 days", "kitchen rule", {}, "ingredient")) +
         ingredient("tuna", "no", "", "[\"fish:tuna\"]", life("opened", {}, "figure:opened-package", {}, "ingredient")) +
         ingredient("celery", "no", "", "[\"celery\"]") + ingredient("onion", "no", "", "\"none\"") +
         ingredient("salt", "no", "", "\"none\"") + ingredient("flour", "no", "", "[\"wheat\"]") + ingredient("water", "no", "", "\"none\"") +
         ingredient("sesame", "no", "", "[\"sesame\"]", "code = \"SES\"\nitem_number = \"00000904\"\n") + ingredient("mustard", "no", "", "[\"mustard\"]") +
         ingredient("apricots-9", "no", "", "[\"sulphites 9 mg/kg\"]") + ingredient("apricots-10", "no", "", "[\"sulphites 10 mg/kg\"]") +
         ingredient("apricots-11", "no", "", "[\"sulphites 11 mg/kg\"]") +
         ingredient("worcestershire", "no", "", "[\"fish:anchovy\", \"wheat\"]\nstatement = \"Vinegar, molasses, anchovies\"") +
         "[[ingredient.supplier_item]]\nid = \"worcestershire-b\"\nsupplier = \"B\"\ncontains = [\"soy\"]\nstatement = \"Vinegar, soy sauce\"\n"
         "checked = 2026-01-01\nsource = \"letter\"\n" +
         ingredient("mystery-spice", "no", "", "\"none\"").replace("contains = \"none\"\nchecked = 2026-01-01\nsource = \"letter\"\n", "") +
         ingredient("curing-salt", "no", "", "\"none\"", "most = \"2 %\"\nmost_source = \"9 CFR 424.21\"\n");
}

inline QByteArray products_toml() {
  const QByteArray cooked = "process = \"cook\"\n";
  return product("burger", "BUR", "yes", line("ground-beef"), "makes = \"1 kg\"\n" + cooked + seven_days() + life("frozen", "3 months")) +
         product("chili", "CHI", "yes", line("burger") + line("onion"), cooked + seven_days()) +
         product("meat-sauce", "MSA", "yes", line("ground-beef") + line("butter", "200 g"), cooked + seven_days()) +
         product("stew", "STE", "yes", line("chicken-thigh") + line("onion"), cooked + "cook_to = \"175 °F (79 °C)\"\n" + seven_days()) +
         product("stock", "STO", "yes", line("chicken-thigh"), cooked + "cooled_from = \"hot\"\n" + seven_days()) +
         product("seared-beef", "SEA", "yes", line("ground-beef"), "process = \"part-cook\"\n" + life("chilled", "2 days")) +
         product("tuna-salad", "TUN", "yes", line("tuna") + line("mayonnaise") + line("celery"), seven_days()) +
         product("raw-tray", "RAW", "yes", line("cod") + line("butter", "100 g"), life("chilled", "3 days") + life("frozen", "3 months")) +
         product("dip", "DIP", "yes", line("mayonnaise") + line("onion", "200 g"), seven_days() + life("frozen", "3 months") + life("opened", "3 days") + life("time-control", "4 h")) +
         product("fish-pie", "PIE", "yes", line("cod") + line("dip"), life("chilled", "4 days") + life("frozen", "3 months")) +
         product("baked-pie", "BAK", "yes", line("fish-pie"), cooked + seven_days()) +
         product("spice-mix", "SPI", "no", line("salt") + line("mustard", "100 g"), "used_for = \"stews\"\n" + life("ambient", "6 months", "kitchen rule", "kind = \"best before\"")) +
         product("oyster-plate", "OYS", "yes", line("oysters") + line("celery", "10 g"), life("chilled", "2 days")) +
         product("dressing", "DRE", "yes", line("butter") + line("mustard", "50 g") + line("celery", "20 g"), seven_days()) +
         product("puzzle", "PUZ", "yes", line("butter") + line("mystery-spice", "10 g"), seven_days()) +
         product("vac-dip", "VAC", "yes", line("mayonnaise"), life("chilled", "21 days", "kitchen rule", "document = \"study 14\"")).replace("media = \"lid\"", "media = \"lid\"\npackage = \"reduced oxygen\"") +
         product("creamy", "CRE", "yes", line("cream"), seven_days()) +
         product("three-day-dip", "TDD", "yes", line("mayonnaise"), life("chilled", "3 days")) +
         product("dough", "DOU", "yes", line("flour", "500 g") + line("water", "300 g") + line("cultured-butter", "200 g") + line("salt", "10 g"), life("chilled", "3 days")) +
         product("cultured-butter", "CUB", "yes", line("cream", "195 g") + line("salt", "5 g"), life("chilled", "3 days")) +
         product("sauce", "SAU", "no", line("worcestershire", "100 g") + line("apricots-10", "90 g") + line("flour", "100 g"), life("ambient", "2 months", "kitchen rule", "kind = \"best before\""));
}

inline std::vector<book::SourceFile> rule_files() {
  return test_support::toml_files(QStringLiteral(LARDINER_SOURCE_DIR "/templates/rules"));
}

/// `further`: tables besides the kitchen's own.
inline book::Book read_kitchen(const QByteArray& more = {}, const QByteArray& further = {}) {
  const book::Reading reading = book::read_book({{QStringLiteral("kitchen.toml"), kitchen_toml(more)},
                                                 {QStringLiteral("media.toml"), media_toml()},
                                                 {QStringLiteral("ingredients.toml"), ingredients_toml()},
                                                 {QStringLiteral("products.toml"), products_toml() + further}},
                                                rule_files());
  if (!reading.findings.errors.empty()) FAIL(problem::text(reading.findings.errors).toStdString());
  return reading.book;
}

inline const book::Book& kitchen() {
  static const book::Book book = read_kitchen();
  return book;
}

inline const QTimeZone kZone("America/New_York");

inline QDateTime at(const char* text) {
  const problem::Expected<reader::Written> written = reader::parse_written(QString::fromLatin1(text));
  REQUIRE(written);
  return instant(*written, kZone).value();
}

inline QDate date(const char* text) { return QDate::fromString(QString::fromLatin1(text), Qt::ISODate); }

inline const char* const kNow = "2026-12-31 12:00";

inline Records read_json(const QByteArray& lines, const book::Book& book = kitchen(), const char* now = kNow) {
  const auto rows = reader::read_json_lines(lines, QStringLiteral("day.jsonl"));
  if (!rows) FAIL(problem::text(rows.error()).toStdString());
  return read_records(*rows, book, {at(now), false});
}

inline Records read_csv(const QByteArray& text, const book::Book& book = kitchen(), const char* now = kNow) {
  const auto rows = reader::read_csv(text, QStringLiteral("day.csv"));
  if (!rows) FAIL(problem::text(rows.error()).toStdString());
  return read_records(rows->rows, book, {at(now), rows->semicolons});
}

/// The batches of records that can all be read.
inline std::vector<Batch> run(const QByteArray& lines, const book::Book& book = kitchen(), const char* now = kNow) {
  const Records records = read_json(lines, book, now);
  if (!records.errors.empty()) FAIL(problem::text(records.errors).toStdString());
  return compute(book, records.records, at(now));
}

/// The batch of one record that is not refused.
inline Batch good(const QByteArray& lines, size_t index = 0, const book::Book& book = kitchen()) {
  const std::vector<Batch> batches = run(lines, book);
  REQUIRE(batches.size() > index);
  CHECK(problem::text(batches[index].refused) == QString());
  REQUIRE(!batches[index].use_bys.empty());
  return batches[index];
}

/// The last good day of its first container.
inline QDate last_day(const Batch& batch) {
  REQUIRE(batch.use_bys.size() > 0);
  CHECK(batch.use_bys.front().form == UseBy::Form::Date);
  return batch.use_bys.front().date;
}

/// All that is wrong with one batch of a run.
inline QString refused(const QByteArray& lines, size_t index = 0, const book::Book& book = kitchen(), const char* now = kNow) {
  const std::vector<Batch> batches = run(lines, book, now);
  REQUIRE(batches.size() > index);
  return problem::text(batches[index].refused);
}

/// A record of `product` that holds what every record needs, with `more` keys.
inline QByteArray made(const QByteArray& product, int number, const QByteArray& made_at, const QByteArray& inputs, const QByteArray& more = {}) {
  return "{\"product\": \"" + product + "\", \"number\": " + QByteArray::number(number) + ", \"quantity\": \"2 kg\", \"made_at\": \"" + made_at +
         "\", \"containers\": \"4 tub 500 g\", \"inputs\": [" + inputs + "]" + (more.isEmpty() ? QByteArray() : ", " + more) + "}\n";
}

/// One input; `more` are further keys.
inline QByteArray input(const QByteArray& item, const QByteArray& use_by = {}, const QByteArray& more = {}) {
  return "{\"item\": \"" + item + "\"" + (use_by.isEmpty() ? QByteArray() : ", \"use_by\": \"" + use_by + "\"") +
         (more.isEmpty() ? QByteArray() : ", " + more) + "}";
}

inline QByteArray cooked(const QByteArray& at, const QByteArray& core = "165 °F", const QByteArray& held = "20 s") {
  return "\"cooked\": [{\"at\": \"" + at + "\", \"core\": \"" + core + "\", \"held\": \"" + held + "\"}]";
}

inline QByteArray lot_of(const QByteArray& lines, size_t index = 0) {
  const std::vector<Batch> batches = run(lines);
  REQUIRE(batches.size() > index);
  return batches[index].lot.toLatin1();
}

/// An input that is lot `lot` of the same run.
inline QByteArray from_lot(const QByteArray& item, const QByteArray& lot, const QByteArray& more = {}) {
  return input(item, {}, "\"lot\": \"" + lot + "\"" + (more.isEmpty() ? QByteArray() : ", " + more));
}

}  // namespace lardiner::batch::day
