// Products: what is made here, of what, how it keeps, is put up and is finished.
#include "book/tables.h"
#include "book/values.h"

namespace lardiner::book {

using measure::Ratio;
using problem::Code;
using reader::Fields;
using reader::Value;

namespace {

constexpr int kMostCookYield = 10;

void read_identity(Fields& fields, const Context& context, Product& product) {
  product.id = read_id(fields).value_or(QString());
  product.name = read_name(fields, context.languages());
  const auto kind =
      read_required_word(fields, u"kind", {QStringLiteral("component"), QStringLiteral("assembled item")});
  if (kind == QStringLiteral("assembled item")) product.kind = ProductKind::AssembledItem;
  for (const QStringView key : {QStringView(u"code"), QStringView(u"item_number")})
    if (!fields.has(key))
      fields.refuse(key, Code::Missing, QStringLiteral("%1 has no %2").arg(fields.noun(), key),
                    key == QStringView(u"code")
                        ? QStringLiteral("state code, 2 to 4 capital letters in its lots")
                        : QStringLiteral("state item_number, the digits of its GTIN after the kitchen's prefix"));
  product.code = read_code(fields);
  product.item_number = read_item_number(fields, context);
}

void read_yields(Fields& fields, Product& product) {
  product.makes = read_quantity(fields, u"makes");
  product.unit_weight = read_weight(fields, u"unit_weight");
  product.cook_yield = read_share(fields, u"cook_yield").value_or(Ratio(1, 1));
  if (product.cook_yield.num() == 0 || product.cook_yield > Ratio(kMostCookYield, 1)) {
    fields.refuse(u"cook_yield", Code::Range,
                  fields.noun() + QStringLiteral(": cook_yield is not above 0 % and at most 1000 %"),
                  QStringLiteral("write what comes out of what went in, as in \"82 %\""));
    product.cook_yield = Ratio(1, 1);
  }
  product.make_over = read_share(fields, u"make_over").value_or(Ratio(0, 1));
  if (product.make_over > Ratio(1, 1))
    fields.refuse(u"make_over", Code::Range, fields.noun() + QStringLiteral(": make_over is more than 100 %"),
                  QStringLiteral("write how much more to make than the count needs, as in \"3 %\""));
}

void read_process(Fields& fields, const Context& context, Product& product) {
  const auto process =
      read_word(fields, u"process", {QStringLiteral("none"), QStringLiteral("cook"), QStringLiteral("part-cook")});
  if (process == QStringLiteral("cook")) product.process = Process::Cook;
  if (process == QStringLiteral("part-cook")) product.process = Process::PartCook;
  product.food = read_food(fields, context);
  product.cook_to = read_held(fields, u"cook_to");
  if (product.cook_to && product.process != Process::Cook)
    fields.refuse(u"cook_to", Code::Conflict, fields.noun() + QStringLiteral(" has a cook_to but is not cooked here"),
                  QStringLiteral("state process = \"cook\"; what is cooked elsewhere has a finishing table"));
  const auto cooled = read_word(fields, u"cooled_from", {QStringLiteral("hot"), QStringLiteral("room temperature")});
  product.cooled = cooled.has_value();
  product.cooled_from_ambient = cooled == QStringLiteral("room temperature");
}

void read_words(Fields& fields, const Context& context, Product& product) {
  product.unit_name = read_local_text(fields, u"unit_name", context.languages());
  product.unit_plural = read_local_text(fields, u"unit_plural", context.languages());
  product.used_for = read_local_text(fields, u"used_for", context.languages());
  product.common_name = read_local_text(fields, u"common_name", context.languages());
  product.safe_handling = fields.boolean(u"safe_handling").value_or(false);
}

// The lines as written, or the product whose lines they are: those are taken when all products have been read.
void read_lines(Fields& fields, const Context& context, Product& product) {
  if (!fields.has(u"formula_of")) {
    product.formula = read_formula(fields, context);
    if (fields.text(u"kind") == QStringLiteral("component"))
      check_portions(product.formula, fields.noun(), context.errors);
    return;
  }
  product.formula_of = fields.text(u"formula_of").value_or(QString());
  product.formula_of_place = fields.value(u"formula_of")->place;
  if (fields.has(u"formula"))
    fields.refuse(u"formula_of", Code::Conflict, fields.noun() + QStringLiteral(" has both formula and formula_of"),
                  QStringLiteral("write one of them"));
  if (fields.text(u"kind") == QStringLiteral("component"))
    fields.refuse(u"formula_of", Code::Conflict,
                  fields.noun() + QStringLiteral(" has a formula_of, but a component has no sizes"),
                  QStringLiteral("write its formula, or kind = \"assembled item\""));
}

}  // namespace

Product read_product(const Value& table, const Context& context) {
  Fields fields(table, noun(QStringLiteral("product"), table), context.errors);
  Product product;
  product.place = table.place;
  read_identity(fields, context, product);
  product.tcs = read_tcs(fields);
  read_lines(fields, context, product);
  read_yields(fields, product);
  read_making(fields, context, product);
  read_words(fields, context, product);
  read_process(fields, context, product);
  for (const Value* item : fields.tables(u"shelf_life"))
    product.shelf_lives.push_back(read_shelf_life(*item, fields.noun(), context));
  for (const Value* item : fields.tables(u"container"))
    product.containers.push_back(read_container(*item, fields.noun(), product.tcs, context));
  for (const Value* item : fields.tables(u"finishing"))
    product.finishing.push_back(read_finishing(*item, fields.noun(), context));
  product.finishing_needed = fields.boolean(u"finishing_needed").value_or(false) || !product.finishing.empty();
  fields.finish();
  return product;
}

}  // namespace lardiner::book
