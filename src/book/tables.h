// One reader for each kind of table of a kitchen book.
#pragma once

#include <QSet>
#include <QStringList>
#include <vector>

#include "book/book.h"
#include "reader/fields.h"

namespace lardiner::book {

/// What the readers of tables know of the rest of the book.
struct Context {
  const Book& book;         ///< kitchen, rules, law, media and vessels are read before ingredients and products
  QStringList item_ids;     ///< of all files, to offer the nearest
  QSet<QString> known_ids;  ///< the same, to look one up
  bool whole = true;        ///< false: a file could not be read, so an id not found may stand there
  problem::Errors& errors;

  const QStringList& languages() const { return book.kitchen.languages; }
};

/// The rule sets and lists that a kitchen can name.
struct Choices {
  QStringList rule_sets;
  QStringList allergen_lists;
};

/// The keys of kitchen.toml, its tables aside.
Kitchen read_kitchen(reader::Fields& fields, const Choices& choices);

Media read_media(const reader::Value& table, const Context& context);
Site read_site(const reader::Value& table, const Context& context);
Person read_person(const reader::Value& table, const Context& context);
StoragePlace read_storage_place(const reader::Value& table, const Context& context);
Vessel read_vessel(const reader::Value& table, const Context& context);
Ingredient read_ingredient(const reader::Value& table, const Context& context);
Product read_product(const reader::Value& table, const Context& context);

TcsStatement read_tcs(reader::Fields& fields);
QString read_code(reader::Fields& fields);
QString read_item_number(reader::Fields& fields, const Context& context);
/// A class of food that the rule set has a cook minimum for.
QString read_food(reader::Fields& fields, const Context& context);
Measure read_measure(const reader::Value& table, const QString& noun, const Context& context);
SupplierItem read_supplier_item(const reader::Value& table, const QString& noun, const Context& context);
ShelfLife read_shelf_life(const reader::Value& table, const QString& noun, const Context& context);
ContainerSpec read_container(const reader::Value& table, const QString& noun, const TcsStatement& tcs,
                             const Context& context);
Finishing read_finishing(const reader::Value& table, const QString& noun, const Context& context);
/// How an ingredient is bought: count_grade, bought_by, bought_as, always_there, received_at_most and its source.
void read_buying(reader::Fields& fields, const Context& context, Ingredient& ingredient);
/// How a product is made: its steps, the range of its units, made_in, keep_on_hand, vessel, units_per_hour.
/// REQUIRES: kind, makes and unit_weight have been read.
void read_making(reader::Fields& fields, const Context& context, Product& product);
Step read_step(const reader::Value& table, const QString& noun, const Context& context);
/// How a line is weighed out and laid: bowl, disher, tool, laying. REQUIRES: its basis and amount have been read.
void read_portion(reader::Fields& fields, const Context& context, FormulaLine& line);
/// Refuses portion tools and layings in the lines of a component.
void check_portions(const std::vector<FormulaLine>& lines, const QString& noun, problem::Errors& errors);
/// The lines of `formula`, with what can be told of them alone and together: one basis each, a base for each
/// percentage, a main item for each amount per main.
std::vector<FormulaLine> read_formula(reader::Fields& product, const Context& context);

}  // namespace lardiner::book
