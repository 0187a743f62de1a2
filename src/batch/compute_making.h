// One record while it is computed, and what of it lives on in what is made from it; for compute.cpp and its parts.
#pragma once

#include <QHash>
#include <QSet>
#include <set>

#include "batch/batch.h"
#include "batch/carried.h"
#include "batch/compute_lookup.h"

namespace lardiner::batch {

struct Making {
  Batch batch;
  const book::Product* product = nullptr;        ///< of Deed::Made, else nullptr
  const book::Ingredient* ingredient = nullptr;  ///< of the other deeds
  std::vector<Question> questions;               ///< one for each of batch.use_bys
  std::vector<Carried> carried;                  ///< the dates of what went in, those that a cook ended left out
  QStringList made_of;                           ///< products in it through any depth
  const book::CookMinimum* still = nullptr;      ///< what a later cook must meet
  std::optional<QDateTime> cooked_at;            ///< of a cook that met its minimum
  std::set<QString> missing;                     ///< words keys
  std::vector<UseBy> withheld;       ///< of a refused batch: what its use-bys would be, one for each of `questions`
  std::vector<int> question_of;      ///< of a refused batch: container -> index into `questions`
  std::optional<bool> recorded_tcs;  ///< of a lot that was recorded before: as it was fixed, whatever the book says now
  QString still_unknown;             ///< of such a lot: the class of `still`, where the rule set has it no more

  bool tcs() const {
    if (recorded_tcs) return *recorded_tcs;
    const book::TcsStatement::Is is = product ? product->tcs.is : ingredient->tcs.is;
    return is != book::TcsStatement::Is::No;
  }
};

/// What all records of a run have in common.
struct Run {
  const book::Book& book;
  QDateTime now;
  Lookup lookup;
  std::vector<Making> makings;
  QHash<QString, size_t> by_lot;
  std::vector<Making> earlier = {};            ///< the lots recorded before that inputs of the run name
  QHash<QString, size_t> earlier_by_lot = {};  ///< into `earlier`
  QSet<QString> lots_before = {};              ///< of all that was recorded before

  /// What a lot was made as, in this run or before it; nullptr: it is bought, or unknown.
  const Making* source(const QString& lot) const;
  const QTimeZone& zone() const { return book.kitchen.zone; }
};

/// No dated label of it, and why. The error stands at the record unless it has a place.
void refuse(Making& making, const char* missing, problem::Error error);

/// The latest instant at which something can have gone into the making; the earliest is its made_at.
QDateTime last_use(const Record& record, const Run& run);

/// Lots and GTINs; lots made twice, in the run or before it, are refused.
void identify(Run& run);

/// The containers with their serials. REQUIRES: `identify`.
void add_containers(Making& making, const Run& run);

/// The use-bys of its containers under `rules` and `caps`, one for each timeline and package.
void date(Making& making, const Run& run, const std::vector<Rule>& rules, const std::vector<Cap>& caps);

/// What is said of a batch that was over by `since`; nothing of one that was not.
std::optional<problem::Error> over_before(const Batch& batch, const std::vector<UseBy>& use_bys, const QDateTime& since,
                                          const QTimeZone& zone);

/// Refuses what is dated to an end that is not after `since`, its making or the deed on its package. Of a batch that is
/// refused already nothing more is said.
void check_not_over(Making& making, const Run& run, const QDateTime& since);

/// The rules of the book and of the rule set for `lives`, food that is ready to eat or not.
struct Kept {
  const std::vector<book::ShelfLife>& lives;
  bool tcs = true;
  bool ready = false;
};
std::vector<Rule> rules_for(const Kept& kept, const book::RuleSet& rule_set);

/// The rule that a TCS food of ours falls under once its container is opened, where it has none of its own.
Rule rule_when_opened(const book::RuleSet& rule_set);

/// Adds it to a question whose timeline holds an opening, unless there is a rule for that already.
void add_when_opened(Question& question, const std::optional<Rule>& when_opened);

/// A rule of the book as it stands.
Rule rule_of(const book::ShelfLife& life);

/// The rules that run from the opening of a package: the rule set's for ready-to-eat food, and the book's own.
std::vector<Rule> opened_rules(const Kept& kept, const book::RuleSet& rule_set);

/// The limits of a reduced-oxygen pack: the rule set's, and the lower one where no document allows more.
std::vector<Rule> reduced_oxygen_rules(const std::vector<book::ShelfLife>& lives, const QDateTime& packed,
                                       const book::RuleSet& rule_set);

/// The same, from its first packing among `events`, else from the making.
void add_reduced_oxygen(std::vector<Rule>& rules, const Making& making, const std::vector<const Event*>& events,
                        const book::RuleSet& rule_set);

/// What a batch is refused with for a cooling that is not shown, or missed; nothing when it is neither.
std::optional<problem::Error> refusal_of(const Cooling& cooling);

/// What is missing, as the HOLD label lists it: the weightiest first.
QStringList missing_in_order(const std::set<QString>& missing);

/// A making of a product: what went in, the cook, dates, allergens.
void compute_product(Making& making, Run& run);

/// A package of an ingredient that was opened, thawed, cut or decanted.
void compute_package(Making& making, Run& run);

}  // namespace lardiner::batch
