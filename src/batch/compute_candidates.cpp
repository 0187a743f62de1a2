// An input whose lot nobody said, out of what each of its candidates would have been.
#include <algorithm>

#include "batch/compute_inputs.h"

namespace lardiner::batch {

namespace {

template <class T>
void append(std::vector<T>& all, const std::vector<T>& more) {
  all.insert(all.end(), more.begin(), more.end());
}

void add(Used& all, const Used& one) {
  append(all.sources, one.sources);
  append(all.caps, one.caps);
  append(all.deeper, one.deeper);
  // A cook ends the clocks of what is raw whichever it was, and of nothing else.
  all.holds_ready = all.holds_ready || one.holds_ready || all.raw() != one.raw();
  all.by_book = all.by_book || one.by_book;
  all.readiness = std::min(all.readiness, one.readiness);
  all.still = more_demanding(all.still, one.still);
  all.declared = book::united(all.declared, one.declared);
  all.rework = all.rework || one.rework;
  all.previously_frozen = all.previously_frozen || one.previously_frozen;
}

std::vector<Part> parts_by_book(const book::Product& product) {
  std::vector<Part> parts;
  for (const book::FormulaLine& line : product.formula) parts.push_back({line.item, {}, {}, {}, {}});
  return parts;
}

std::optional<measure::Quantity> made_together(const std::vector<const Making*>& sources) {
  std::optional<measure::Quantity> sum;
  for (const Making* source : sources) {
    const std::optional<measure::Quantity>& made = source->batch.record.quantity;
    if (!made || (sum && sum->dimension != made->dimension)) return std::nullopt;
    sum = sum ? *sum + *made : *made;
  }
  return sum;
}

// What a labelled package is of: known where all that it may have been agree.
QString supplier_item_of(const Used& used, const QString& written) {
  QString item = used.by_book ? written : used.sources.front()->batch.record.supplier_item;
  for (const Making* source : used.sources)
    if (source->batch.record.supplier_item != item) return {};
  return item;
}

}  // namespace

Used any_of(std::vector<Used> candidates) {
  Used all = std::move(candidates.front());
  for (size_t i = 1; i < candidates.size(); ++i) add(all, candidates[i]);
  return all;
}

void add_composition(Part& part, const Used& used, const book::Book& book) {
  if (used.sources.empty()) return;
  if (used.sources.front()->batch.record.deed != Deed::Made) {
    part.supplier_item = supplier_item_of(used, part.supplier_item);
    return;
  }
  if (used.sources.size() == 1 && !used.by_book) {
    part.parts = used.sources.front()->batch.parts;
    part.made = used.sources.front()->batch.record.quantity;
    return;
  }
  std::vector<Part> parts;
  for (const Making* source : used.sources)
    if (source->batch.parts) append(parts, *source->batch.parts);
  const book::Product* product = used.by_book ? book.product(used.item) : nullptr;
  if (product) append(parts, parts_by_book(*product));
  part.parts = std::make_shared<const std::vector<Part>>(std::move(parts));
  if (!used.by_book) part.made = made_together(used.sources);
}

}  // namespace lardiner::batch
