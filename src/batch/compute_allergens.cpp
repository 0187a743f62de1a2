// Allergens from what really went in, and what that changes against the formula.
#include <algorithm>

#include "batch/compute_product.h"
#include "reader/quote.h"

namespace lardiner::batch {

using book::Declaration;
using book::Declared;
using problem::Code;
using reader::quoted;

namespace {

// Whether `has` declares at least as much.
bool covered(const Declaration& declaration, const std::vector<Declaration>& has) {
  return std::any_of(has.begin(), has.end(), [&](const Declaration& other) {
    const bool same = other.substance == declaration.substance && other.species == declaration.species &&
                      other.exemption == declaration.exemption;
    if (!same || (other.mg_per_kg && !declaration.mg_per_kg)) return false;
    return !other.mg_per_kg || *other.mg_per_kg >= *declaration.mg_per_kg;
  });
}

std::vector<Declaration> beyond(const std::vector<Declaration>& declarations, const std::vector<Declaration>& has) {
  std::vector<Declaration> more;
  for (const Declaration& declaration : declarations)
    if (!covered(declaration, has)) more.push_back(declaration);
  return more;
}

const book::AllergenList* destination(const Making& making, const book::Book& book) {
  const book::Site* site = book.site(making.batch.record.site);
  return book.law.list(site && !site->allergen_list.isEmpty() ? site->allergen_list : book.kitchen.allergen_list);
}

QString word(const book::ListedAllergen& allergen) {
  return allergen.species.isEmpty() ? allergen.entry : QStringLiteral("%1 (%2)").arg(allergen.entry, allergen.species);
}

// What the destination's list makes of the additions, beside what the formula has already; without a list everything.
QStringList allergens_in(const std::vector<Declaration>& adds, const std::vector<Declaration>& formula,
                         const book::AllergenList* list) {
  QStringList words;
  if (!list) {
    for (const Declaration& declaration : adds) words += declaration.substance;
    return words;
  }
  std::vector<Declaration> all = formula;
  all.insert(all.end(), adds.begin(), adds.end());
  const auto before = book::listed(formula, *list);
  for (const book::ListedAllergen& allergen : book::listed(book::gathered(all), *list))
    if (std::find(before.begin(), before.end(), allergen) == before.end()) words += word(allergen);
  return words;
}

// A lot whose own record agreed to its additions brings that agreement along.
QString agreed_within(const Used& part, const std::vector<Declaration>& adds) {
  if (part.sources.empty()) return {};
  QString agreed;
  std::vector<Declaration> there;
  for (const Making* source : part.sources)
    for (const Difference& difference : source->batch.differences) {
      if (difference.adds.empty() || difference.agreed_by.isEmpty()) continue;
      there.insert(there.end(), difference.adds.begin(), difference.adds.end());
      agreed = agreed.isEmpty() ? difference.agreed_by : std::min(agreed, difference.agreed_by);
    }
  return beyond(adds, there).empty() ? agreed : QString();
}

class Differences {
 public:
  Differences(Making& making, Run& run)
      : making_(making), run_(run), formula_(run.lookup.declared(making.product->id)) {}

  void find(const std::vector<Used>& used) {
    for (const Used& part : used)
      if (part.input) add(part);
    for (Difference& difference : found_) judge(difference);
    std::erase_if(found_, [](const Difference& d) { return d.instead_of.isEmpty() && d.adds.empty(); });
    for (Difference& difference : found_) making_.batch.differences.push_back(std::move(difference));
  }

 private:
  // Two lines of one thing are one difference, and one yes is enough for both.
  void add(const Used& part) {
    const Input& input = *part.input;
    const std::vector<Declaration> adds = beyond(part.declared.contains, formula_.contains);
    const QString agreed = input.agreed_by.isEmpty() ? agreed_within(part, adds) : input.agreed_by;
    auto same = std::find_if(found_.begin(), found_.end(), [&](const Difference& d) {
      return d.item == input.item && d.instead_of == input.instead_of;
    });
    if (same == found_.end()) {
      found_.push_back({input.item, input.instead_of, {}, {}, {}});
      places_.push_back(input.place);
      same = found_.end() - 1;
    }
    same->adds.insert(same->adds.end(), adds.begin(), adds.end());
    same->adds = book::gathered(same->adds);
    if (!agreed.isEmpty()) same->agreed_by = same->agreed_by.isEmpty() ? agreed : std::min(same->agreed_by, agreed);
  }

  void judge(Difference& difference) {
    if (!difference.instead_of.isEmpty())
      difference.removes =
          beyond(run_.lookup.declared(difference.instead_of).contains, making_.batch.declared.contains);
    const QStringList allergens = allergens_in(difference.adds, formula_.contains, destination(making_, run_.book));
    if (allergens.isEmpty() || !difference.agreed_by.isEmpty()) return;
    refuse(making_, "missing.other",
           {Code::Unsafe,
            QStringLiteral("%1 adds %2 to %3, and nobody agreed to it")
                .arg(quoted(difference.item), allergens.join(QStringLiteral(", ")), quoted(making_.product->id)),
            places_[static_cast<size_t>(&difference - found_.data())],
            QStringLiteral("have somebody who may say so agree, and write agreed_by")});
  }

  Making& making_;
  Run& run_;
  const Declared& formula_;
  std::vector<Difference> found_;
  std::vector<problem::Place> places_;
};

// Neither of the formula nor made by it.
bool is_added(const Used& part, const book::Product& product) {
  return part.input && !part.rework &&
         std::none_of(product.formula.begin(), product.formula.end(),
                      [&](const book::FormulaLine& line) { return line.item == part.item; });
}

}  // namespace

void declare(Making& making, Run& run, const std::vector<Used>& used) {
  Declared all{true, {}, {}};
  for (const Used& part : used) all = book::united(all, part.declared);
  making.batch.declared = all;
  Differences(making, run).find(used);
  const bool other = !making.batch.differences.empty() || std::any_of(used.begin(), used.end(), [&](const Used& part) {
    return is_added(part, *making.product);
  });
  if (making.batch.record.pad_day && other)
    making.batch.warnings.push_back(QStringLiteral(
        "the label of the pad does not say what was added or substituted: put new labels on the containers"));
}

}  // namespace lardiner::batch
