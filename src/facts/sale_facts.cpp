// What the law adds on a label for sale: ingredients, declared net quantity, name and place of business, safe handling.
#include "batch/statement.h"
#include "facts/scene.h"

namespace lardiner::facts {

namespace {

// "Flour, Water, Butter (Cream, Salt), Salt", allergens strong where the list wants them to stand out, and what the law
// wants named here (US sulphites) behind the parts.
class Statement {
 public:
  Statement(const Scene& scene, bool emphasised) : scene_(scene), emphasised_(emphasised) {}

  Paragraph paragraph(const std::vector<batch::StatedIngredient>& ingredients) {
    add(around("ingredients", 0), true);
    append(ingredients);
    add(around("ingredients", 1) + around("full_stop", 1));
    return std::move(paragraph_);
  }

 private:
  void add(const QString& text, bool strong = false) {
    if (!text.isEmpty()) paragraph_.push_back({text, strong});
  }

  // The text of the sentence `key` before its first value (0), before its second (1)…
  QString around(const char* key, qsizetype at) const {
    return scene_.words.around(QString::fromLatin1(key)).value(at);
  }

  void append(const std::vector<batch::StatedIngredient>& ingredients) {
    for (size_t i = 0; i < ingredients.size(); ++i) {
      if (i > 0) add(around("items", 1));
      add(ingredients[i].name, emphasised_ && ingredients[i].allergen);
      append_inside(ingredients[i]);
    }
  }

  void append_inside(const batch::StatedIngredient& ingredient) {
    if (ingredient.parts.empty() && ingredient.declares.isEmpty()) return;
    add(around("with_parts", 1));
    append(ingredient.parts);
    for (qsizetype i = 0; i < ingredient.declares.size(); ++i) {
      if (i > 0 || !ingredient.parts.empty()) add(around("items", 1));
      add(scene_.words.word(QStringLiteral("allergen.") + ingredient.declares[i]));
    }
    add(around("with_parts", 2));
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
  const measure::Notation writing = notation(scene);
  const QString both = QStringLiteral("%1 (%2)").arg(measure::declared(holds, measure::System::Customary, writing),
                                                     measure::declared(holds, measure::System::Metric, writing));
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
