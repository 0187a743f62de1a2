// The ingredient statement of a batch: descending by weight, compounds in parentheses or merged.
#include "batch/statement.h"

#include <algorithm>

#include "batch/compute_lookup.h"
#include "book/roll_up.h"
#include "reader/quote.h"

namespace lardiner::batch {

using measure::Quantity;
using problem::Code;
using problem::Error;
using problem::Errors;
using problem::ExpectedAll;
using reader::quoted;

namespace {

const Quantity kNothing{measure::Dimension::Mass, 0};

// What one making of a product was made of: as recorded, or as its formula says.
struct Composition {
  const book::Product& product;
  const std::vector<Part>* parts = nullptr;  ///< nullptr: the formula's
  std::optional<Quantity> made;              ///< how much the record says was made
  problem::Place place;                      ///< of the record
};

class Stating {
 public:
  Stating(const book::Book& book, const book::AllergenList* list, const QString& language, bool merged)
      : book_(book), list_(list), language_(language), merged_(merged) {}

  /// The ingredients of one making, in the order of the formula.
  std::vector<StatedIngredient> ingredients(const Composition& whole) {
    std::vector<StatedIngredient> out;
    const std::vector<Part> parts = whole.parts ? *whole.parts : formula_parts(whole.product);
    for (size_t i = 0; i < parts.size(); ++i)
      if (const std::optional<Quantity> weight = weight_of(i, parts, whole)) add(parts[i], *weight, whole, out);
    return out;
  }

  Errors errors;

 private:
  static std::vector<Part> formula_parts(const book::Product& product) {
    std::vector<Part> parts;
    for (const book::FormulaLine& line : product.formula) parts.push_back({line.item, {}, {}, {}, {}});
    return parts;
  }

  static bool weighed(const Part& part) {
    return part.quantity && part.quantity->dimension == measure::Dimension::Mass;
  }

  // As recorded; else the formula's share of what was made, told once where several lines are of one thing.
  std::optional<Quantity> weight_of(size_t at, const std::vector<Part>& parts, const Composition& whole) {
    const Part& part = parts[at];
    if (weighed(part)) return part.quantity;
    bool first = true;
    for (size_t i = 0; i < parts.size(); ++i) {
      if (i == at || parts[i].item != part.item) continue;
      const bool alike = parts[i].supplier_item == part.supplier_item && !parts[i].parts && !part.parts;
      if (weighed(parts[i]) || !alike) return not_written(part, whole);
      first = first && i > at;
    }
    return first ? formula_weight(part, whole) : std::nullopt;
  }

  std::optional<Quantity> formula_weight(const Part& part, const Composition& whole) {
    const book::Product& product = whole.product;
    const ExpectedAll<std::vector<Quantity>> weights = book::line_weights(book_, product);
    if (!weights) {
      errors.insert(errors.end(), weights.error().begin(), weights.error().end());
      return std::nullopt;
    }
    Quantity sum = kNothing;
    bool found = false;
    for (size_t i = 0; i < product.formula.size(); ++i) {
      if (product.formula[i].item != part.item) continue;
      sum = sum + (*weights)[i];
      found = true;
    }
    return found ? std::optional(measure::scaled(sum, makings(whole))) : not_written(part, whole);
  }

  std::optional<Quantity> not_written(const Part& part, const Composition& whole) {
    errors.push_back({Code::Missing,
                      QStringLiteral("what %1 weighs in this batch of %2 is not written")
                          .arg(quoted(part.item), quoted(whole.product.id)),
                      whole.place, QStringLiteral("write its quantity as a weight among the inputs")});
    return std::nullopt;
  }

  // How many makings of the formula the record's quantity is.
  measure::Ratio makings(const Composition& whole) const {
    if (!whole.made) return {1, 1};
    if (whole.product.makes && whole.product.makes->dimension == whole.made->dimension &&
        whole.product.makes->amount != 0)
      return measure::ratio(*whole.made, *whole.product.makes);
    const ExpectedAll<Quantity> output = book::output_weight(book_, whole.product);
    if (!output || output->amount == 0 || output->dimension != whole.made->dimension) return {1, 1};
    return measure::ratio(*whole.made, *output);
  }

  void add(const Part& part, Quantity weight, const Composition& whole, std::vector<StatedIngredient>& out) {
    if (const book::Product* product = book_.product(part.item)) {
      add_compound(part, *product, weight, whole, out);
    } else if (const book::Ingredient* ingredient = book_.ingredient(part.item)) {
      add_ingredient(part, *ingredient, weight, whole, out);
    }
  }

  void add_compound(const Part& part, const book::Product& product, Quantity weight, const Composition& whole,
                    std::vector<StatedIngredient>& out) {
    StatedIngredient compound;
    compound.name = name_in(product.common_name.empty() ? product.name : product.common_name,
                            QStringLiteral("product ") + quoted(product.id), product.place);
    compound.weight = weight;
    const bool recorded = part.parts != nullptr;
    compound.parts = ingredients({product, part.parts.get(), recorded ? part.made : std::nullopt, whole.place});
    scale_to(compound.parts, weight);
    if (!merged_) {
      sort(compound.parts);
      merge(out, std::move(compound));
      return;
    }
    for (StatedIngredient& inner : compound.parts) merge(out, std::move(inner));
  }

  void add_ingredient(const Part& part, const book::Ingredient& ingredient, Quantity weight, const Composition& whole,
                      std::vector<StatedIngredient>& out) {
    StatedIngredient stated;
    stated.name = name_in(ingredient.name, QStringLiteral("ingredient ") + quoted(ingredient.id), ingredient.place);
    stated.weight = weight;
    const book::SupplierItem* item = ingredient.supplier_item(part.supplier_item);
    const book::Declared declared = item ? item->declared : book::declared(book_, ingredient.id);
    mark(stated, declared);
    if (const QString text = statement_of(ingredient, item, whole); !text.isEmpty())
      stated.parts.push_back({text, weight, {}, stated.allergen, {}});
    merge(out, std::move(stated));
  }

  void mark(StatedIngredient& stated, const book::Declared& declared) const {
    if (!list_) return;
    for (const book::ListedAllergen& allergen : book::listed(declared.contains, *list_)) {
      stated.allergen = true;
      if (allergen.in_ingredient_list_only) stated.declares += allergen.entry;
    }
  }

  // The supplier's own statement; where any of several may have been used they must say the same.
  QString statement_of(const book::Ingredient& ingredient, const book::SupplierItem* item, const Composition& whole) {
    QStringList texts;
    for (const book::SupplierItem& one : ingredient.supplier_items) {
      if (item && one.id != item->id) continue;
      const QString text = one.statement.empty()
                               ? QString()
                               : name_in(one.statement, QStringLiteral("supplier item ") + quoted(one.id), one.place);
      if (!texts.contains(text)) texts += text;
    }
    if (texts.size() <= 1) return texts.value(0);
    errors.push_back(
        {Code::Missing,
         QStringLiteral(
             "%1 has supplier items with different ingredient statements, and which one went in is not written")
             .arg(quoted(ingredient.id)),
         whole.place, QStringLiteral("write supplier_item among the inputs")});
    return {};
  }

  QString name_in(const book::LocalText& text, const QString& noun, const problem::Place& place) {
    const QString name = text.in(language_);
    if (name.isEmpty())
      errors.push_back(
          {Code::Missing,
           QStringLiteral("%1 has no text in \"%2\", which the ingredient statement needs").arg(noun, language_), place,
           QStringLiteral("add the language: { %1 = \"…\" }").arg(language_)});
    return name;
  }

  // The parts of a whole making as parts of the share that went in.
  static void scale_to(std::vector<StatedIngredient>& parts, Quantity weight) {
    Quantity sum = kNothing;
    for (const StatedIngredient& part : parts) sum = sum + part.weight;
    if (sum.amount <= 0) return;
    scale(parts, measure::ratio(weight, sum));
  }

  static void scale(std::vector<StatedIngredient>& parts, measure::Ratio by) {
    for (StatedIngredient& part : parts) {
      part.weight = measure::scaled(part.weight, by);
      scale(part.parts, by);
    }
  }

  // The same thing made of the same things, which is read out once.
  static bool same_words(const StatedIngredient& a, const StatedIngredient& b) {
    return a.name == b.name && std::equal(a.parts.begin(), a.parts.end(), b.parts.begin(), b.parts.end(), same_words);
  }

  static void sum_up(StatedIngredient& stated, const StatedIngredient& more) {
    stated.weight = stated.weight + more.weight;
    stated.allergen = stated.allergen || more.allergen;
    for (const QString& entry : more.declares)
      if (!stated.declares.contains(entry)) stated.declares += entry;
    for (size_t i = 0; i < stated.parts.size(); ++i) sum_up(stated.parts[i], more.parts[i]);
  }

  static void merge(std::vector<StatedIngredient>& out, StatedIngredient more) {
    const auto same =
        std::find_if(out.begin(), out.end(), [&](const StatedIngredient& other) { return same_words(other, more); });
    if (same == out.end())
      out.push_back(std::move(more));
    else
      sum_up(*same, more);
  }

 public:
  /// Source of the rule: 21 CFR 101.4(a)(1).
  static void sort(std::vector<StatedIngredient>& stated) {
    std::stable_sort(stated.begin(), stated.end(), [](const StatedIngredient& a, const StatedIngredient& b) {
      return measure::less(b.weight, a.weight);
    });
  }

 private:
  const book::Book& book_;
  const book::AllergenList* list_;
  const QString& language_;
  bool merged_;
};

const book::AllergenList* destination(const book::Book& book, const Batch& batch) {
  const book::Site* site = book.site(batch.record.site);
  return book.law.list(site && !site->allergen_list.isEmpty() ? site->allergen_list : book.kitchen.allergen_list);
}

}  // namespace

ExpectedAll<std::vector<StatedIngredient>> ingredient_statement(const book::Book& book, const Batch& batch,
                                                                const QString& language, bool merged) {
  const book::Product* product = book.product(batch.record.item);
  if (!product)
    return tl::unexpected(
        Errors{{Code::Unknown,
                quoted(batch.record.item) + QStringLiteral(" is not a product, and has no ingredient statement"),
                batch.record.place,
                {}}});
  Stating stating(book, destination(book, batch), language, merged);
  std::vector<StatedIngredient> stated =
      stating.ingredients({*product, batch.parts.get(), batch.record.quantity, batch.record.place});
  if (!stating.errors.empty()) {
    problem::sort(stating.errors);
    return tl::unexpected(stating.errors);
  }
  Stating::sort(stated);
  return stated;
}

}  // namespace lardiner::batch
