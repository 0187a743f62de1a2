// What really went into a making: the record's inputs, and the lines of the formula that it may leave out.
#include "batch/compute_inputs.h"

#include <algorithm>
#include <tuple>

#include "batch/clock.h"
#include "batch/phrases.h"
#include "gs1/iso7064.h"
#include "reader/quote.h"

namespace lardiner::batch {

using problem::Code;
using problem::Error;
using problem::Errors;
using reader::quoted;

namespace {

QString named(const Input& input) {
  return input.lot.isEmpty() ? quoted(input.item) : QStringLiteral("%1, lot %2,").arg(quoted(input.item), input.lot);
}

// Each once and in an order of their own: the record's decides nothing.
QStringList candidates_of(const Input& input) {
  QStringList lots = input.candidates;
  lots.removeDuplicates();
  lots.sort();
  return lots;
}

// A thing that gets a use-by once its package is open has to be among the inputs too: nobody knows when it was opened.
bool dated_when_opened(const book::Book& book, const QString& item) {
  const book::Ingredient* ingredient = book.ingredient(item);
  return ingredient &&
         std::any_of(ingredient->shelf_lives.begin(), ingredient->shelf_lives.end(), [](const book::ShelfLife& life) {
           return life.state == book::State::Opened && life.kind == book::EndKind::UseBy;
         });
}

// The gaps of other supplier items of an ingredient do not touch the one that was used.
Errors gaps_of(const Input& input, Run& run) {
  Errors gaps = run.lookup.composition_gaps(input.item);
  const book::Ingredient* ingredient = run.book.ingredient(input.item);
  if (!ingredient || input.supplier_item.isEmpty()) return gaps;
  for (const book::SupplierItem& other : ingredient->supplier_items) {
    if (other.id == input.supplier_item) continue;
    std::erase_if(gaps, [&](const Error& gap) { return gap.place == other.place && other.place != ingredient->place; });
  }
  return gaps;
}

class Gathering {
 public:
  Gathering(Making& making, Run& run) : making_(making), run_(run), record_(making.batch.record) {}

  std::vector<Used> gather() {
    std::vector<const Input*> inputs;
    for (const Input& input : record_.inputs) inputs.push_back(&input);
    const auto key = [&](const Input* input) {
      return std::make_tuple(place_in_formula(*input), input->item, input->lot, input->supplier_item,
                             candidates_of(*input));
    };
    std::stable_sort(inputs.begin(), inputs.end(), [&](const Input* a, const Input* b) { return key(a) < key(b); });
    for (const Input* input : inputs) add(*input);
    for (const book::FormulaLine& line : making_.product->formula)
      if (!accounted_for(line.item)) add_unlisted(line);
    return std::move(used_);
  }

 private:
  // The order of the record decides nothing.
  size_t place_in_formula(const Input& input) const {
    const QString& item = input.instead_of.isEmpty() ? input.item : input.instead_of;
    const auto& formula = making_.product->formula;
    const auto found =
        std::find_if(formula.begin(), formula.end(), [&](const book::FormulaLine& line) { return line.item == item; });
    return static_cast<size_t>(found - formula.begin());
  }

  bool accounted_for(const QString& item) const {
    return lists(record_, item) ||
           std::any_of(used_.begin(), used_.end(), [&](const Used& used) { return used.item == item; });
  }

  void add(const Input& input) {
    Used used = input.candidates.isEmpty() ? of_lot(input) : of_any(input);
    used.input = &input;
    used_.push_back(std::move(used));
  }

  Used of_any(Input input) {
    std::vector<Used> each;
    for (const QString& lot : candidates_of(input)) {
      input.lot = lot;
      each.push_back(of_lot(input));
    }
    Used used = any_of(std::move(each));
    // It may have been one that nobody recorded, of which the book alone knows what it contains.
    used.declared = book::united(used.declared, run_.lookup.declared(used.item));
    return used;
  }

  Used of_lot(const Input& input) {
    Used used;
    used.item = input.item;
    used.previously_frozen = input.frozen_at || input.thawed_at;
    if (const Making* source = run_.source(input.lot)) {
      add_recorded(*source, input, used);
    } else {
      add_bought(input, used);
    }
    used.rework = used.rework || input.item == making_.product->id;
    for (const Cap& cap : used.caps) check_not_past(input, cap);
    return used;
  }

  // Of a lot of the run, or of one that was recorded before.
  void add_recorded(const Making& source, const Input& input, Used& used) {
    if (source.batch.record.item != input.item) {
      refuse_at(input, "missing.input", Code::Conflict,
                QStringLiteral("lot %1 is of %2, not of %3")
                    .arg(input.lot, quoted(source.batch.record.item), quoted(input.item)),
                QStringLiteral("correct the item or the lot"));
      return;
    }
    used.sources = {&source};
    used.readiness = source.batch.readiness;
    used.still = source.still;
    used.declared = source.batch.declared;
    used.rework = source.made_of.contains(making_.product->id);
    used.previously_frozen = used.previously_frozen || source.batch.previously_frozen;
    if (!source.batch.refused.empty()) {
      refuse_at(input, "missing.input", Code::Unsafe,
                QStringLiteral("%1 which went into this batch, is refused itself").arg(named(input)),
                QStringLiteral("put right what is wrong with that lot, or hold this batch too"));
      return;
    }
    if (!source.still_unknown.isEmpty())
      refuse_at(input, "missing.cook_temperature", Code::Unknown,
                QStringLiteral("%1 must still be cooked as %2, for which the rule set has no minimum any more")
                    .arg(named(input), quoted(source.still_unknown)),
                QStringLiteral("adopt a rule set that has one, or hold this batch"));
    if (!check_made_before(source, input)) return;
    if (input.frozen_at || input.thawed_at) refuse_freezing(source, input);
    const problem::ExpectedAll<AtUse> dates = at_use(source, input, making_, run_);
    if (!dates) {
      for (const Error& error : dates.error()) refuse(making_, "missing.input", error);
      return;
    }
    used.caps = dates->caps;
    used.deeper = dates->deeper;
    used.previously_frozen = used.previously_frozen || dates->previously_frozen;
    if (input.stated) add_label_date(input, used);
  }

  void refuse_freezing(const Making& source, const Input& input) {
    const bool before = run_.lots_before.contains(source.batch.lot);
    refuse_at(input, "missing.other", Code::Conflict,
              (before ? QStringLiteral("%1 was recorded before, and its freezing and thawing stand in that record")
                      : QStringLiteral("%1 is a lot of this run, and its freezing and thawing stand in its own record"))
                  .arg(named(input)),
              QStringLiteral("write them as events of that record"));
  }

  // A date written beside such a lot can only shorten what is computed.
  void add_label_date(const Input& input, Used& used) const {
    Cap cap;
    cap.item = used.item;
    cap.lot = input.lot;
    cap.why = QStringLiteral("the date on its label");
    cap.kind = input.stated->kind;
    cap.end = input.stated->end;
    cap.is_date = input.stated->is_date;
    cap.absolute = true;
    cap.shelf_stable = cap.kind == book::EndKind::BestBefore && !is_tcs(run_.book, used.item);
    used.caps.push_back(cap);
  }

  bool check_made_before(const Making& source, const Input& input) {
    const QDateTime used = last_use(record_, run_);
    const QDateTime made = source.cooked_at.value_or(source.batch.record.made_at);
    if (made <= used) return true;
    refuse_at(input, "missing.input", Code::Conflict,
              QStringLiteral("%1 was made at %2, after it was used at %3")
                  .arg(named(input), instant_text(made, run_.zone()), instant_text(used, run_.zone())),
              QStringLiteral("correct the lot, or the time of one of the two"));
    return false;
  }

  void add_bought(const Input& input, Used& used) {
    take_from_book(used);
    const book::Ingredient* ingredient = run_.book.ingredient(input.item);
    if (ingredient && !input.supplier_item.isEmpty()) {
      if (const book::SupplierItem* item = ingredient->supplier_item(input.supplier_item))
        used.declared = item->declared;
    }
    refuse_gaps(gaps_of(input, run_));
    if (is_tcs(run_.book, input.item) && !input.stated) {
      refuse_at(input, "missing.input_date", Code::Missing,
                QStringLiteral("%1 needs time and temperature control, and its date is not written").arg(named(input)),
                ingredient
                    ? QStringLiteral("write use_by, as it stands on its package or label")
                    : QStringLiteral(
                          "write use_by, as it stands on its label, or have the record of its lot in the same run"));
      return;
    }
    if (ingredient) check_thawed_life(input, *ingredient);
    const problem::ExpectedAll<std::vector<Cap>> caps = bought_caps(input, making_, run_);
    if (caps) {
      used.caps = *caps;
    } else {
      for (const Error& error : caps.error()) refuse(making_, "missing.input", at(input, error));
    }
  }

  // The date on a package is of the food as it was bought: once thawed, nothing but a thawed life says how long it
  // keeps.
  void check_thawed_life(const Input& input, const book::Ingredient& ingredient) {
    const bool answered = std::any_of(ingredient.shelf_lives.begin(), ingredient.shelf_lives.end(),
                                      [](const book::ShelfLife& life) { return life.state == book::State::Thawed; });
    if (!input.thawed_at || answered || ingredient.tcs.is == book::TcsStatement::Is::No) return;
    refuse_at(input, "missing.shelf_life", Code::Missing,
              QStringLiteral("%1 was thawed at %2, and the book does not say how long it keeps once thawed")
                  .arg(named(input), instant_text(*input.thawed_at, run_.zone())),
              QStringLiteral("state its shelf life for \"thawed\" in the kitchen book"));
  }

  void take_from_book(Used& used) {
    used.by_book = true;
    const book::Standing& standing = run_.lookup.standing(used.item);
    used.readiness = standing.readiness;
    used.still = standing.still;
    used.declared = run_.lookup.declared(used.item);
    used.holds_ready = used.raw() && run_.book.product(used.item) && run_.lookup.holds_ready_tcs(used.item);
  }

  void add_unlisted(const book::FormulaLine& line) {
    Used used;
    used.item = line.item;
    take_from_book(used);
    refuse_gaps(run_.lookup.composition_gaps(line.item));
    if (is_tcs(run_.book, line.item) || dated_when_opened(run_.book, line.item))
      refuse(making_, "missing.input_date",
             {Code::Missing,
              QStringLiteral("%1 is in the formula of %2, but not among the inputs, so its date is not known")
                  .arg(quoted(line.item), quoted(making_.product->id)),
              {},
              QStringLiteral("write it as an input with its lot or use_by, or what went in instead of it")});
    used_.push_back(std::move(used));
  }

  void refuse_gaps(const Errors& gaps) {
    for (const Error& gap : gaps) refuse(making_, missing_for_gap(gap), gap);
  }

  // Which word of the HOLD label a gap of the book is told by: what it asks for stands in its remedy.
  static const char* missing_for_gap(const Error& gap) {
    if (gap.hint.contains(QLatin1String("contains"))) return "missing.allergens";
    if (gap.hint.contains(QLatin1String("tcs"))) return "missing.tcs";
    return "missing.cook_temperature";
  }

  void check_not_past(const Input& input, const Cap& cap) {
    const bool only_quality = cap.kind == book::EndKind::BestBefore && cap.shelf_stable && making_.tcs();
    const QDateTime used = record_.time_known ? record_.made_at : last_use(record_, run_);
    if (only_quality || cap.end > used) return;
    const QString end =
        cap.is_date ? day_text(local_day(cap.end.addMSecs(-1), run_.zone())) : instant_text(cap.end, run_.zone());
    refuse_at(input, "missing.past_its_date", Code::Unsafe,
              QStringLiteral("%1 was used at %2, after its end, %3 (%4)")
                  .arg(named(input),
                       record_.time_known ? instant_text(used, run_.zone()) : day_text(local_day(used, run_.zone())),
                       end, cap.why),
              QStringLiteral("discard the batch, or correct the date if it was written wrongly"));
  }

  static Error at(const Input& input, Error error) {
    if (error.place == problem::Place{}) error.place = input.place;
    return error;
  }

  void refuse_at(const Input& input, const char* missing, Code code, const QString& what, const QString& hint) {
    refuse(making_, missing, {code, what, input.place, hint});
  }

  Making& making_;
  Run& run_;
  const Record& record_;
  std::vector<Used> used_;
};

}  // namespace

std::vector<Used> what_went_in(Making& making, Run& run) { return Gathering(making, run).gather(); }

}  // namespace lardiner::batch
