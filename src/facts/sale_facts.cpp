// What the law adds on a label for sale: ingredients, declared net quantity, name and place of business, safe handling.
#include "batch/statement.h"
#include "facts/scene.h"
#include "measure/text.h"

namespace lardiner::facts {

namespace {

// "Flour, Water, Butter (Cream, Salt), Salt", allergens strong where the list wants them to stand out.
void append(const std::vector<batch::StatedIngredient>& ingredients, bool emphasised, Paragraph& paragraph) {
  for (size_t i = 0; i < ingredients.size(); ++i) {
    const batch::StatedIngredient& ingredient = ingredients[i];
    if (i > 0) paragraph.push_back({QStringLiteral(", "), false});
    paragraph.push_back({ingredient.name, emphasised && ingredient.allergen});
    if (ingredient.parts.empty()) continue;
    paragraph.push_back({QStringLiteral(" ("), false});
    append(ingredient.parts, emphasised, paragraph);
    paragraph.push_back({QStringLiteral(")"), false});
  }
}

void add_ingredients(const Scene& scene, std::vector<Fact>& facts) {
  const auto statement =
      batch::ingredient_statement(scene.book, scene.batch, scene.words.code(), scene.book.kitchen.merge_compounds);
  if (!statement) {
    scene.errors.insert(scene.errors.end(), statement.error().begin(), statement.error().end());
    return;
  }
  const book::AllergenList* list = destination_list(scene);
  Paragraph paragraph{{scene.sentence("ingredients", {QString()}), true}};
  append(*statement, list && list->emphasised, paragraph);
  paragraph.push_back({QStringLiteral("."), false});
  facts.push_back({FactId::Ingredients, {paragraph}});
}

void add_declared_net(const Scene& scene, std::vector<Fact>& facts) {
  if (!scene.group || scene.group->holds.amount == 0) return;
  const measure::Quantity holds = scene.group->holds;
  if (holds.dimension == measure::Dimension::Count) {
    facts.push_back({FactId::NetDeclared, strong(pieces(scene, holds))});
    return;
  }
  const QChar mark = scene.words.decimal_mark();
  const QString both = QStringLiteral("%1 (%2)").arg(measure::declared(holds, measure::System::Customary, mark),
                                                     measure::declared(holds, measure::System::Metric, mark));
  facts.push_back(
      {FactId::NetDeclared,
       strong(scene.sentence(holds.dimension == measure::Dimension::Mass ? "net_weight" : "net_quantity", {both}))});
}

}  // namespace

void add_sale_facts(const Scene& scene, std::vector<Fact>& facts) {
  add_ingredients(scene, facts);
  add_declared_net(scene, facts);
  const book::Kitchen& kitchen = scene.book.kitchen;
  facts.push_back({FactId::Business, plain(scene.sentence("made_by", {kitchen.name + QStringLiteral(", ") +
                                                                      kitchen.address.join(QStringLiteral(", "))}))});
  if (scene.product() && scene.product()->safe_handling)
    facts.push_back({FactId::SafeHandling, plain(scene.word("safe_handling"))});
}

}  // namespace lardiner::facts
