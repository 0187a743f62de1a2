// Ingredients, their supplier items and household measures.
#include <QRegularExpression>

#include "book/tables.h"
#include "book/taken.h"
#include "book/values.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using reader::Fields;
using reader::quoted;
using reader::Value;

TcsStatement read_tcs(Fields& fields) {
  TcsStatement tcs;
  if (!fields.has(u"tcs")) {
    if (fields.text(u"tcs_basis"))
      fields.refuse(u"tcs_basis", Code::Missing, fields.noun() + QStringLiteral(" has a tcs_basis but no tcs"),
                    QStringLiteral("state tcs: \"yes\" or \"no\""));
    return tcs;
  }
  const bool as_boolean = fields.value(u"tcs")->kind == Value::Kind::Boolean;
  const QString word =
      as_boolean ? (fields.value(u"tcs")->is_true() ? QStringLiteral("yes") : QStringLiteral("no"))
                 : read_word(fields, u"tcs", {QStringLiteral("yes"), QStringLiteral("no")}).value_or(QString());
  if (!word.isEmpty()) tcs.is = word == QLatin1String("yes") ? TcsStatement::Is::Yes : TcsStatement::Is::No;
  if (!fields.has(u"tcs_basis"))
    fields.refuse(u"tcs", Code::Missing, fields.noun() + QStringLiteral(" has no tcs_basis"),
                  QStringLiteral("say on what basis: a pH, a product assessment, the kind of food"));
  tcs.basis = fields.text(u"tcs_basis").value_or(QString());
  return tcs;
}

QString read_code(Fields& fields) {
  static const QRegularExpression form(QStringLiteral("^[A-Z]{2,4}$"));
  const std::optional<QString> code = fields.text(u"code");
  if (!code || form.match(*code).hasMatch()) return code.value_or(QString());
  fields.refuse(u"code", Code::Malformed, quoted(*code) + QStringLiteral(" is not the code of lots"),
                QStringLiteral("write 2 to 4 capital letters A to Z"));
  return {};
}

QString read_item_number(Fields& fields, const Context& context) {
  // A GTIN-13 without its check digit.
  constexpr qsizetype kDigits = 12;
  static const QRegularExpression form(QStringLiteral("^[0-9]+$"));
  const std::optional<QString> number = fields.text(u"item_number");
  const QString& prefix = context.book.kitchen.gtin_prefix;
  if (!number || (form.match(*number).hasMatch() && (prefix.isEmpty() || prefix.size() + number->size() == kDigits)))
    return number.value_or(QString());
  fields.refuse(u"item_number", Code::Malformed, quoted(*number) + QStringLiteral(" is not an item number"),
                QStringLiteral("write %1 digits, which with the kitchen's gtin_prefix %2 are 12")
                    .arg(kDigits - prefix.size())
                    .arg(prefix));
  return {};
}

QString read_food(Fields& fields, const Context& context) {
  const std::optional<QString> food = fields.text(u"food");
  const RuleSet& rules = context.book.rules;
  if (!food || rules.id.isEmpty() || rules.cook_for(*food) != nullptr) return food.value_or(QString());
  QStringList known;
  for (const CookMinimum& minimum : rules.cook) known += minimum.food;
  fields.refuse(u"food", Code::Unknown, QStringLiteral("%1 has no cook minimum for %2").arg(rules.name, quoted(*food)),
                meant(*food, known, QStringLiteral("a cook minimum")));
  return *food;
}

Measure read_measure(const Value& table, const QString& noun, const Context& context) {
  Fields fields(table, QStringLiteral("a measure of ") + noun, context.errors);
  Measure measure;
  measure.place = table.place;
  for (const QStringView key : {QStringView(u"amount"), QStringView(u"weighs"), QStringView(u"source")})
    if (!fields.has(key))
      fields.refuse(key, Code::Missing, QStringLiteral("%1 has no %2").arg(fields.noun(), key),
                    QStringLiteral("write amount = \"1 cup\", weighs = \"125 g\" and its source"));
  if (const auto amount = read_quantity(fields, u"amount")) {
    measure.volume = *amount;
    if (amount->dimension == measure::Dimension::Mass)
      fields.refuse(u"amount", Code::Malformed, fields.noun() + QStringLiteral(" measures a weight by a weight"),
                    QStringLiteral("write a volume or a count: \"1 cup\", \"1 piece\""));
  }
  measure.mass = read_weight(fields, u"weighs").value_or(measure::Quantity{});
  measure.source = fields.text(u"source").value_or(QString());
  fields.finish();
  return measure;
}

namespace {

void take_declaration(Fields& fields, QStringView key, const QString& text, const Context& context,
                      std::vector<Declaration>& into) {
  std::optional<Declaration> declaration = taken(fields, key, parse_declaration(text, context.book.law));
  if (!declaration) return;
  declaration->place = fields.value(key)->place;
  into.push_back(*declaration);
}

// A list of substances, or the word "none".
std::vector<Declaration> read_declarations(Fields& fields, QStringView key, const Context& context) {
  std::vector<Declaration> found;
  const QStringList texts = fields.texts(key);
  if (texts == QStringList{QStringLiteral("none")}) return found;
  for (const QString& text : texts) {
    if (text == QLatin1String("none"))
      fields.refuse(key, Code::Conflict,
                    QStringLiteral("%1: %2 says none beside other substances").arg(fields.noun(), key),
                    QStringLiteral("write \"none\" alone, or leave it out"));
    else
      take_declaration(fields, key, text, context, found);
  }
  return found;
}

void require_source(Fields& fields) {
  for (const QStringView key : {QStringView(u"checked"), QStringView(u"source")})
    if (!fields.has(key))
      fields.refuse(u"contains", Code::Missing, QStringLiteral("%1: contains has no %2").arg(fields.noun(), key),
                    QStringLiteral("state checked, the date on which it was read, and source, where"));
}

}  // namespace

SupplierItem read_supplier_item(const Value& table, const QString& noun_of_whole, const Context& context) {
  Fields fields(table, noun(QStringLiteral("supplier item"), table) + QStringLiteral(" of ") + noun_of_whole,
                context.errors);
  SupplierItem item;
  item.place = table.place;
  item.id = read_id(fields).value_or(QString());
  item.supplier = fields.required_text(u"supplier").value_or(QString());
  const Value* contains = fields.value(u"contains");
  item.declared.contains = gathered(read_declarations(fields, u"contains", context));
  item.declared.may_contain = gathered(read_declarations(fields, u"may_contain", context));
  item.declared.stated = contains != nullptr;
  if (contains != nullptr && contains->kind == Value::Kind::List && contains->items.empty())
    fields.refuse(
        u"contains", Code::Malformed, fields.noun() + QStringLiteral(": contains is an empty list"),
        QStringLiteral("write contains = \"none\" when none is declared, or leave it out while it is not known"));
  item.statement = read_local_text(fields, u"statement", context.languages());
  item.checked = fields.date(u"checked").value_or(QDate());
  item.source = fields.text(u"source").value_or(QString());
  if (contains != nullptr) require_source(fields);
  fields.finish();
  return item;
}

namespace {

void read_restriction(Fields& fields, Ingredient& ingredient) {
  ingredient.most_percent = read_share(fields, u"most");
  ingredient.most_source = fields.text(u"most_source").value_or(QString());
  if (fields.has(u"most") && !fields.has(u"most_source"))
    fields.refuse(u"most", Code::Missing, fields.noun() + QStringLiteral(" has a most but no most_source"),
                  QStringLiteral("say who sets the maximum, as in most_source = \"9 CFR 424.21(c)\""));
}

void read_cooking(Fields& fields, const Context& context, Ingredient& ingredient) {
  ingredient.must_be_cooked = fields.boolean(u"must_be_cooked");
  ingredient.food = read_food(fields, context);
  if (ingredient.must_be_cooked == true && !fields.has(u"food"))
    fields.refuse(u"must_be_cooked", Code::Missing, fields.noun() + QStringLiteral(" must be cooked but has no food"),
                  QStringLiteral("state food, the class that decides its cook minimum: \"poultry\", \"fish\", …"));
}

measure::Ratio read_edible(Fields& fields) {
  const measure::Ratio whole(1, 1);
  const measure::Ratio edible = read_share(fields, u"edible").value_or(whole);
  if (edible.num() > 0 && edible <= whole) return edible;
  fields.refuse(u"edible", Code::Range, fields.noun() + QStringLiteral(": edible is not above 0 % and at most 100 %"),
                QStringLiteral("write how much of what is purchased can be eaten, as in \"92 %\""));
  return whole;
}

}  // namespace

Ingredient read_ingredient(const Value& table, const Context& context) {
  Fields fields(table, noun(QStringLiteral("ingredient"), table), context.errors);
  Ingredient ingredient;
  ingredient.place = table.place;
  ingredient.id = read_id(fields).value_or(QString());
  ingredient.name = read_name(fields, context.languages());
  ingredient.code = read_code(fields);
  ingredient.item_number = read_item_number(fields, context);
  ingredient.tcs = read_tcs(fields);
  read_cooking(fields, context, ingredient);
  ingredient.animal = fields.boolean(u"animal").value_or(false);
  ingredient.edible = read_edible(fields);
  read_buying(fields, context, ingredient);
  for (const Value* item : fields.tables(u"measure"))
    ingredient.measures.push_back(read_measure(*item, fields.noun(), context));
  for (const Value* item : fields.tables(u"shelf_life"))
    ingredient.shelf_lives.push_back(read_shelf_life(*item, fields.noun(), context));
  for (const Value* item : fields.tables(u"supplier_item"))
    ingredient.supplier_items.push_back(read_supplier_item(*item, fields.noun(), context));
  read_restriction(fields, ingredient);
  fields.finish();
  return ingredient;
}

}  // namespace lardiner::book
