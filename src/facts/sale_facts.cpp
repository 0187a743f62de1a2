// What the law adds on a label for sale: ingredients, declared net quantity, name and place of business, safe handling.
#include "batch/statement.h"
#include "facts/scene.h"
#include "measure/text.h"

namespace lardiner::facts {

namespace {

// "Flour, Water, Butter (Cream, Salt), Salt", allergens strong where the list wants them to stand out, and what the law
// wants named here (US sulphites) behind the parts.
class Statement {
 public:
  Statement(const Scene& scene, bool emphasised) : scene_(scene), emphasised_(emphasised) {}

  Paragraph paragraph(const std::vector<batch::StatedIngredient>& ingredients) {
    add(scene_.sentence("ingredients", {QString()}), true);
    append(ingredients);
    add(QStringLiteral("."));
    return std::move(paragraph_);
  }

 private:
  void add(const QString& text, bool strong = false) { paragraph_.push_back({text, strong}); }

  void append(const std::vector<batch::StatedIngredient>& ingredients) {
    for (size_t i = 0; i < ingredients.size(); ++i) {
      if (i > 0) add(QStringLiteral(", "));
      add(ingredients[i].name, emphasised_ && ingredients[i].allergen);
      append_inside(ingredients[i]);
    }
  }

  void append_inside(const batch::StatedIngredient& ingredient) {
    if (ingredient.parts.empty() && ingredient.declares.isEmpty()) return;
    add(QStringLiteral(" ("));
    append(ingredient.parts);
    for (qsizetype i = 0; i < ingredient.declares.size(); ++i) {
      if (i > 0 || !ingredient.parts.empty()) add(QStringLiteral(", "));
      add(scene_.words.word(QStringLiteral("allergen.") + ingredient.declares[i]));
    }
    add(QStringLiteral(")"));
  }

  const Scene& scene_;
  bool emphasised_;
  Paragraph paragraph_;
};

void add_ingredients(const Scene& scene, std::vector<Fact>& facts) {
  const auto statement =
      batch::ingredient_statement(scene.book, scene.batch, scene.words.code(), scene.book.kitchen.merge_compounds);
  if (!statement) {
    scene.errors.insert(scene.errors.end(), statement.error().begin(), statement.error().end());
    return;
  }
  const book::AllergenList* list = destination_list(scene);
  facts.push_back({FactId::Ingredients, {Statement(scene, list && list->emphasised).paragraph(*statement)}});
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
