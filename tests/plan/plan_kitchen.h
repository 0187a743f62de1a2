// A small kitchen for the tests of orders and plans: seasoning, butter and fish cake, three levels deep.
#pragma once

#include "batch/clock.h"
#include "book/book.h"
#include "book_files.h"
#include "measure/text.h"
#include "plan/read_orders.h"
#include "reader/fields.h"
#include "reader/read.h"
#include "show.h"

namespace lardiner::plan::kitchen {

inline QByteArray kitchen_toml() {
  return test_support::kitchen_toml() + "[[site]]\nid = \"harbour-street\"\nname = \"Harbour Street\"\n";
}

/// `food`: its class when it must be cooked, else empty; `more` are further keys, then tables.
inline QByteArray ingredient(const QByteArray& id, const QByteArray& tcs, const QByteArray& food,
                             const QByteArray& contains, const QByteArray& more = {}) {
  return "[[ingredient]]\nid = \"" + id + "\"\nname = \"" + id + "\"\ntcs = \"" + tcs + "\"\ntcs_basis = \"test\"\n" +
         (food.isEmpty() ? QByteArray("must_be_cooked = false\n")
                         : "must_be_cooked = true\nfood = \"" + food + "\"\n") +
         more + "\n[[ingredient.supplier_item]]\nid = \"" + id + "-a\"\nsupplier = \"A\"\ncontains = " + contains +
         "\nchecked = 2026-01-01\nsource = \"letter\"\n";
}

/// `lines` is the formula; `more` further keys, then tables.
inline QByteArray product(const QByteArray& id, const QByteArray& code, const QByteArray& tcs, const QByteArray& lines,
                          const QByteArray& more) {
  QByteArray number;
  for (const char letter : code) number += QByteArray::number(letter - 'A' + 10);
  const QByteArray kind = more.contains("unit_weight") ? "assembled item" : "component";
  return "[[product]]\nid = \"" + id + "\"\nname = \"" + id + "\"\nkind = \"" + kind + "\"\ncode = \"" + code +
         "\"\nitem_number = \"" + number.leftJustified(8, '0') + "\"\ntcs = \"" + tcs +
         "\"\ntcs_basis = \"test\"\nformula = [" + lines + "]\n" + more;
}

inline QByteArray line(const QByteArray& item, const QByteArray& amount) {
  return "{ item = \"" + item + "\", amount = \"" + amount + "\" },";
}

inline QByteArray life(const QByteArray& state, const QByteArray& keeps, const QByteArray& of = "product",
                       const QByteArray& more = {}) {
  return "[[" + of + ".shelf_life]]\nstate = \"" + state + "\"\nkeeps = \"" + keeps +
         "\"\nauthority = \"kitchen rule\"\n" + more;
}

inline QByteArray container(const QByteArray& kept = "chilled") {
  return "[[product.container]]\nkind = \"tub\"\nholds = \"500 g\"\nmedia = \"lid\"\npurpose = \"inside\"\nkept = \"" +
         kept + "\"\n";
}

/// One making each: 1 kg of seasoning, 1 kg of butter (100 g seasoning in it), 10 fish cakes of 100 g (200 g butter).
inline QByteArray items_toml() {
  const QByteArray quality = "kind = \"best before\"\n";
  return ingredient("paprika", "no", "", "\"none\"") + ingredient("salt", "no", "", "\"none\"") +
         ingredient("lime", "no", "", "\"none\"",
                    "edible = \"40 %\"\nmeasure = [{ amount = \"1 piece\", weighs = \"60 g\", source = \"weighed "
                    "here\" }]\n") +
         ingredient("butter-unsalted", "yes", "", "[\"milk\"]") + ingredient("cream", "yes", "", "[\"milk\"]") +
         ingredient("crumbs", "no", "", "[\"wheat\"]") +
         ingredient("cod", "yes", "fish", "[\"fish:cod\"]",
                    "edible = \"80 %\"\n" + life("thawed", "2 days", "ingredient")) +
         ingredient("hake", "yes", "fish", "[\"fish:hake\"]") +
         product("seasoning", "SEA", "no", line("paprika", "600 g") + line("salt", "400 g"),
                 "makes = \"1 kg\"\n" + life("ambient", "6 months", "product", quality) + container("ambient")) +
         product("spiced-butter", "SBU", "yes", line("butter-unsalted", "900 g") + line("seasoning", "100 g"),
                 "makes = \"1 kg\"\n" + life("chilled", "5 days") + life("frozen", "2 months") + container()) +
         product("fish-cake", "FCA", "yes",
                 line("cod", "700 g") + line("spiced-butter", "200 g") + line("crumbs", "100 g"),
                 "makes = \"10 pieces\"\nunit_weight = \"100 g\"\n" + life("chilled", "2 days") +
                     life("frozen", "2 months") + container());
}

inline std::vector<book::SourceFile> rule_files() {
  return test_support::toml_files(QStringLiteral(LARDINER_SOURCE_DIR "/templates/rules"));
}

/// `more`: further tables of items.
inline book::Book read_kitchen(const QByteArray& more = {}, const QByteArray& from = {}, const QByteArray& to = {}) {
  static const std::vector<book::SourceFile> rules = rule_files();
  QByteArray items = items_toml() + more;
  if (!from.isEmpty()) {
    REQUIRE(items.contains(from));
    items.replace(from, to);
  }
  const book::Reading reading =
      book::read_book({{QStringLiteral("kitchen.toml"), kitchen_toml()}, {QStringLiteral("items.toml"), items}}, rules);
  if (!reading.findings.errors.empty()) FAIL(problem::text(reading.findings.errors).toStdString());
  return reading.book;
}

inline const book::Book& small() {
  static const book::Book book = read_kitchen();
  return book;
}

inline const QTimeZone kZone("America/New_York");

inline QDateTime at(const char* text) {
  const problem::Expected<reader::Written> written = reader::parse_written(QString::fromLatin1(text));
  REQUIRE(written);
  return batch::instant(*written, kZone).value();
}

/// Wednesday morning; nothing special happens to the clocks near it.
inline const char* const kNow = "2026-10-07 06:00";

inline measure::Quantity amount(const char* text) {
  return measure::parse_quantity(QString::fromUtf8(text), measure::Zero::Allowed).value();
}

}  // namespace lardiner::plan::kitchen
