// Everything that labels need and the book does not say.
#include "book/checks.h"
#include "book/gaps.h"

namespace lardiner::book {

using problem::Errors;

namespace {

void append(Errors& to, const Errors& more) { to.insert(to.end(), more.begin(), more.end()); }

}  // namespace

void check_gaps(const Checking& checking) {
  Errors& gaps = checking.findings.gaps;
  const std::vector<Contents> restricted = contents_of_restricted(checking.book, checking.reached, checking.weighing);
  for (const Ingredient& ingredient : checking.book.ingredients) append(gaps, gaps_in_composition(ingredient));
  for (const Product& product : checking.book.products) {
    append(gaps, gaps_in_composition(product));
    append(gaps, gaps_on_label(checking.book, product, checking.standings.of(product).readiness));
    if (!checking.doubtful.contains(&product)) append(gaps, gaps_in_restricted(checking.book, product, restricted));
  }
}

}  // namespace lardiner::book
