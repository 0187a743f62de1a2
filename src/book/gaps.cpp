// What the book does not say and a dated label cannot do without.
#include "book/gaps.h"

#include <algorithm>

#include "book/standing.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using problem::Error;
using problem::Errors;
using reader::quoted;

namespace {

Error gap(const QString& what, const problem::Place& place, const QString& hint) {
  return {Code::Missing, what, place, hint};
}

QString noun_of(const Product& product) { return QStringLiteral("product ") + quoted(product.id); }

Error no_tcs(const QString& noun, const problem::Place& place) {
  return gap(noun + QStringLiteral(" does not say whether it needs time and temperature control"), place,
             QStringLiteral("add tcs = \"yes\" or tcs = \"no\", and tcs_basis"));
}

struct NamedState {
  QString name;
  State state;
};

// What can keep the product as the container leaves: any one of these lives.
std::vector<NamedState> lives_for(const Product& product, State kept) {
  const NamedState chilled{QStringLiteral("chilled"), State::Chilled};
  const NamedState ambient{QStringLiteral("ambient"), State::Ambient};
  if (kept == State::HotHeld) return {{QStringLiteral("hot-held"), State::HotHeld}};
  if (kept == State::Ambient) return {ambient};
  if (product.tcs.is == TcsStatement::Is::Yes) return {chilled};
  if (kept == State::Frozen) return {chilled, ambient, {QStringLiteral("frozen"), State::Frozen}};
  return {chilled, ambient};
}

Errors gaps_in_shelf_lives(const Product& product) {
  Errors gaps;
  for (const ContainerSpec& container : product.containers) {
    const std::vector<NamedState> lives = lives_for(product, container.kept);
    const bool found = std::any_of(lives.begin(), lives.end(),
                                   [&](const NamedState& life) { return product.shelf_life(life.state) != nullptr; });
    if (found) continue;
    const QString days_left =
        container.kept == State::Frozen ? QStringLiteral(", for the days after thawing") : QString();
    gaps.push_back(gap(
        QStringLiteral("%1 has no %2 shelf life, which its %3 needs%4")
            .arg(noun_of(product), lives.front().name, container.kind, days_left),
        product.place,
        QStringLiteral("add [[product.shelf_life]] with state = \"%1\", keeps and authority").arg(lives.front().name)));
  }
  return gaps;
}

bool leaves_unfinished(const Product& product, Readiness readiness) {
  const bool sent_out =
      std::any_of(product.containers.begin(), product.containers.end(),
                  [](const ContainerSpec& container) { return container.purpose != Purpose::Inside; });
  return sent_out && (readiness == Readiness::MustBeCooked || readiness == Readiness::NotFullyCooked);
}

Errors gaps_in_finishing(const Product& product, Readiness readiness) {
  Errors gaps;
  if (product.finishing.empty() && (product.finishing_needed || leaves_unfinished(product, readiness)))
    gaps.push_back(gap(noun_of(product) + QStringLiteral(" is finished elsewhere but does not say how"), product.place,
                       QStringLiteral("add [[product.finishing]] with equipment, from, setting, time and to")));
  if (readiness == Readiness::ReadyToEatUncooked && product.tcs.is == TcsStatement::Is::No) return gaps;
  for (const Finishing& finishing : product.finishing)
    if (!finishing.to)
      gaps.push_back(gap(QStringLiteral("the %1 finishing of %2 has no core temperature to reach")
                             .arg(finishing.equipment, noun_of(product)),
                         finishing.place,
                         QStringLiteral("add to = \"165 °F (74 °C)\", the temperature and the time it is held")));
  return gaps;
}

void append(Errors& to, const Errors& more) { to.insert(to.end(), more.begin(), more.end()); }

}  // namespace

Errors gaps_in_composition(const Ingredient& ingredient) {
  Errors gaps;
  const QString noun = QStringLiteral("ingredient ") + quoted(ingredient.id);
  if (ingredient.supplier_items.empty())
    gaps.push_back(
        gap(noun + QStringLiteral(" has no supplier item, so its allergens are unknown"), ingredient.place,
            QStringLiteral("add [[ingredient.supplier_item]] with id, supplier, contains, checked and source")));
  for (const SupplierItem& item : ingredient.supplier_items)
    if (!item.declared.stated)
      gaps.push_back(
          gap(QStringLiteral("supplier item %1 of %2 does not declare its allergens").arg(quoted(item.id), noun),
              item.place, QStringLiteral("add contains = [\"milk\"] or contains = \"none\", with checked and source")));
  if (ingredient.tcs.is == TcsStatement::Is::Unknown) gaps.push_back(no_tcs(noun, ingredient.place));
  if (!ingredient.must_be_cooked)
    gaps.push_back(gap(noun + QStringLiteral(" does not say whether it must be cooked"), ingredient.place,
                       QStringLiteral("add must_be_cooked = true with its food, or must_be_cooked = false")));
  return gaps;
}

Errors gaps_in_composition(const Product& product) {
  if (product.tcs.is != TcsStatement::Is::Unknown) return {};
  return {no_tcs(noun_of(product), product.place)};
}

Errors gaps_on_label(const Book& book, const Product& product, Readiness readiness) {
  Errors gaps = gaps_in_shelf_lives(product);
  append(gaps, gaps_in_finishing(product, readiness));
  append(gaps, gaps_in_words(book, product));
  const bool for_sale = std::any_of(product.containers.begin(), product.containers.end(),
                                    [](const ContainerSpec& container) { return container.purpose == Purpose::Sale; });
  if (for_sale && book.kitchen.address.isEmpty())
    gaps.push_back(
        gap(QStringLiteral("the kitchen has no address, which the label of %1 for sale needs").arg(noun_of(product)),
            product.place, QStringLiteral("add address to kitchen.toml")));
  return gaps;
}

Errors gaps_in_restricted(const Book& book, const Product& product, const std::vector<Contents>& restricted) {
  Errors gaps;
  for (const Contents& contents : restricted) {
    if (contents.in(product) || !finished(book, product)) continue;
    gaps.push_back(gap(QStringLiteral("it cannot be told how much of the restricted %1 is in %2")
                           .arg(quoted(contents.ingredient().id), noun_of(product)),
                       product.place, QStringLiteral("give every line of it, and of what it is made of, a weight")));
  }
  return gaps;
}

Errors label_gaps(const Book& book, const Product& product) {
  const Reach reached = reach(book, product);
  Errors gaps = gaps_in_composition(product);
  for (const Ingredient* ingredient : reached.ingredients) append(gaps, gaps_in_composition(*ingredient));
  for (const Product* part : reached.products) append(gaps, gaps_in_composition(*part));
  append(gaps, gaps_on_label(book, product, Standings(book, reached).of(product).readiness));
  Weighing weighing(book);
  append(gaps, gaps_in_restricted(book, product, contents_of_restricted(book, reached, weighing)));
  problem::sort(gaps);
  return gaps;
}

}  // namespace lardiner::book
