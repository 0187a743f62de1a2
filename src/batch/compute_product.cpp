// A making of a product: what went in, the cook, its readiness, cooling, dates and allergens.
#include "batch/compute_product.h"

#include <algorithm>

#include "book/finishing_minimum.h"
#include "book/gaps.h"
#include "reader/quote.h"

namespace lardiner::batch {

using problem::Code;
using problem::Error;
using problem::Errors;
using reader::quoted;

namespace {

book::Readiness readiness_of(const Making& making, const std::vector<Used>& used, const Cook& cook) {
  std::vector<book::Readiness> parts;
  for (const Used& part : used) parts.push_back(part.readiness);
  const bool uncooked = making.product->process == book::Process::Cook && cook.before && !cook.met_at;
  return book::readiness(parts, uncooked ? book::Process::None : making.product->process);
}

bool lacks_finishing(const book::Product& product, book::Readiness readiness) {
  const bool raw = readiness < book::Readiness::CookedReadyToEat;
  const bool leaves =
      std::any_of(product.containers.begin(), product.containers.end(),
                  [](const book::ContainerSpec& spec) { return spec.purpose != book::Purpose::Inside; });
  return product.finishing.empty() && (product.finishing_needed || (leaves && raw));
}

// Which words of the HOLD label the gaps of the product's own label are told by.
const char* missing_for_label(const book::Product& product, book::Readiness readiness, const Error& gap) {
  if (gap.hint.contains(QLatin1String("shelf_life"))) return "missing.shelf_life";
  if (lacks_finishing(product, readiness) && gap.hint.contains(QLatin1String("finishing"))) return "missing.finishing";
  const bool target =
      std::any_of(product.finishing.begin(), product.finishing.end(),
                  [&](const book::Finishing& finishing) { return !finishing.to && finishing.place == gap.place; });
  return target ? "missing.cook_temperature" : "missing.other";
}

void refuse_gaps(Making& making, Run& run) {
  const book::Product& product = *making.product;
  for (const Error& gap : book::gaps_in_composition(product)) refuse(making, "missing.tcs", gap);
  for (const Error& gap : run.lookup.label_gaps(product, making.batch.readiness))
    refuse(making, missing_for_label(product, making.batch.readiness, gap), gap);
}

// The book has judged the finishing steps for its formula; what really went in may need more.
void check_finishing(Making& making, const Run& run, const Cook& cook) {
  const book::Product& product = *making.product;
  const book::Standing really{making.batch.readiness, cook.before, making.still};
  for (const book::Shortfall& found : book::finishing_shortfalls(run.book.rules, product, really))
    refuse(making, "missing.cook_temperature",
           {Code::Unsafe,
            found.what + QStringLiteral(", as it was made of here"),
            {},
            QStringLiteral("in the finishing of %1 in the book %2, or make it of what its formula says")
                .arg(quoted(product.id), found.hint)});
}

}  // namespace

std::optional<Error> refusal_of(const Cooling& cooling) {
  if (cooling.state == Cooling::State::Passed || cooling.state == Cooling::State::NotNeeded) return std::nullopt;
  const bool pending = cooling.state == Cooling::State::Pending;
  return Error{pending ? Code::Missing : Code::Unsafe,
               QStringLiteral("not released, cooling %1: %2")
                   .arg(pending ? QStringLiteral("is not shown yet") : QStringLiteral("missed"), cooling.why),
               {},
               pending ? QStringLiteral("write the cooling readings when they are taken")
                       : QStringLiteral(
                             "reheat and cool it once, or discard it, and write corrective_action and corrective_by")};
}

namespace {

void judge_cooling(Making& making, const Run& run) {
  const book::Product& product = *making.product;
  if (!product.cooled) return;
  const Record& record = making.batch.record;
  making.batch.cooling = product.cooled_from_ambient ? cooling_from_ambient(run.book.rules, record, run.now)
                                                     : cooling(run.book.rules, record, run.now);
  if (const std::optional<Error> error = refusal_of(making.batch.cooling)) refuse(making, "missing.cooling", *error);
}

void remember_parts(Making& making, const Run& run, const std::vector<Used>& used) {
  std::vector<Part> parts;
  for (const Used& part : used) {
    Part out;
    out.item = part.item;
    if (part.input) {
      out.supplier_item = part.input->supplier_item;
      out.quantity = part.input->quantity;
    }
    add_composition(out, part, run.book);
    parts.push_back(std::move(out));
  }
  making.batch.parts = std::make_shared<const std::vector<Part>>(std::move(parts));
}

// The products in it through any depth: of a lot of the run as recorded, of others as the book says.
void remember_products(Making& making, const Run& run, const std::vector<Used>& used) {
  QStringList& all = making.made_of;
  for (const Used& part : used) {
    for (const Making* source : part.sources) {
      all += source->made_of;
      if (source->batch.record.deed == Deed::Made) all += part.item;
    }
    if (!part.by_book) continue;
    for (const book::Product* product : book::reach(run.book, QStringList{part.item}).products) all += product->id;
  }
  all.removeDuplicates();
}

}  // namespace

void compute_product(Making& making, Run& run) {
  const std::vector<Used> used = what_went_in(making, run);
  const Cook cooked = cook(making, run, used);
  making.cooked_at = cooked.met_at;
  making.batch.day_one = cooked.met_at.value_or(making.batch.record.made_at);
  making.batch.readiness = readiness_of(making, used, cooked);
  making.still =
      making.product->process == book::Process::Cook && (cooked.met_at || !cooked.before) ? nullptr : cooked.before;
  making.batch.previously_frozen =
      std::any_of(used.begin(), used.end(), [](const Used& part) { return part.previously_frozen; });
  remember_parts(making, run, used);
  remember_products(making, run, used);
  refuse_gaps(making, run);
  check_finishing(making, run, cooked);
  check_restricted(making, run, used);
  judge_cooling(making, run);
  declare(making, run, used);
  const std::vector<Cap> caps = caps_of(making, run, used, cooked);
  const bool ready = making.batch.readiness >= book::Readiness::CookedReadyToEat;
  date(making, run, rules_for({making.product->shelf_lives, making.tcs(), ready}, run.book.rules), caps);
  check_not_over(making, run, making.batch.day_one);
}

}  // namespace lardiner::batch
