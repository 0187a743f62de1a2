// Containers that their product cannot be kept in or counted in.
#include "book/checks.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using reader::quoted;

namespace {

void check_kept(const Checking& checking, const Product& product) {
  if (product.tcs.is != TcsStatement::Is::Yes) return;
  for (const ContainerSpec& container : product.containers)
    if (container.kept == State::Ambient)
      checking.error(
          Code::Unsafe,
          QStringLiteral("a %1 of product %2 is kept ambient, but the food needs time and temperature control")
              .arg(container.kind, quoted(product.id)),
          container.place, QStringLiteral("write kept = \"chilled\", \"frozen\" or \"hot-held\""));
}

void check_units(const Checking& checking, const Product& product) {
  for (const ContainerSpec& container : product.containers)
    if (container.holds.dimension == measure::Dimension::Count && product.kind == ProductKind::Component)
      checking.error(Code::Conflict,
                     QStringLiteral("a %1 of product %2 holds pieces, but a component has none")
                         .arg(container.kind, quoted(product.id)),
                     container.place,
                     QStringLiteral("write holds as a weight or volume, or kind = \"assembled item\""));
}

bool is_raw_fish(const Ingredient* ingredient) {
  static const QStringList classes{QStringLiteral("fish"), QStringLiteral("comminuted-fish")};
  return ingredient != nullptr && ingredient->must_be_cooked != false && classes.contains(ingredient->food);
}

// The products with fish in them that no cook here has reached, through any depth.
QSet<const Product*> with_raw_fish(const Checking& checking) {
  QSet<const Product*> found;
  const Book& book = checking.book;
  for (const Product* product : checking.reached.products)
    for (const FormulaLine& line : product->formula)
      if (product->process != Process::Cook &&
          (is_raw_fish(book.ingredient(line.item)) || found.contains(book.product(line.item))))
        found.insert(product);
  return found;
}

void check_raw_fish(const Checking& checking, const Product& product, const Authority& authority) {
  for (const ContainerSpec& container : product.containers)
    if (container.package == Package::ReducedOxygen && container.kept != State::Frozen)
      checking.error(
          Code::Unsafe,
          QStringLiteral("a %1 of product %2 holds raw fish in reduced oxygen but is not kept frozen, which %3 wants")
              .arg(container.kind, quoted(product.id), authority.text()),
          container.place, QStringLiteral("write kept = \"frozen\", or package = \"air\""));
}

}  // namespace

void check_containers(const Checking& checking) {
  for (const Product& product : checking.book.products) {
    check_kept(checking, product);
    check_units(checking, product);
  }
  const std::optional<Authority>& frozen = checking.book.rules.raw_fish_frozen;
  if (!frozen) return;
  for (const Product* product : with_raw_fish(checking)) check_raw_fish(checking, *product, *frozen);
}

}  // namespace lardiner::book
