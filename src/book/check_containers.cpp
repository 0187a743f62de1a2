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

}  // namespace

void check_containers(const Checking& checking) {
  for (const Product& product : checking.book.products) {
    check_kept(checking, product);
    check_units(checking, product);
  }
}

}  // namespace lardiner::book
