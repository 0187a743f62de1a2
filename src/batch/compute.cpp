// Computes a run: every record after the lots that went into it, whatever the order of records.
#include <algorithm>
#include <functional>
#include <utility>

#include "batch/batch.h"
#include "batch/compute_fixed.h"
#include "batch/compute_making.h"

namespace lardiner::batch {

using problem::Code;

namespace {

Making making_of(Record record, const book::Book& book) {
  Making making;
  making.batch.day_one = record.made_at;
  if (record.deed == Deed::Made)
    making.product = book.product(record.item);
  else
    making.ingredient = book.ingredient(record.item);
  making.batch.record = std::move(record);
  return making;
}

std::vector<Making> makings_of(std::vector<Record> records, const book::Book& book) {
  std::vector<Making> makings;
  makings.reserve(records.size());
  for (Record& record : records) makings.push_back(making_of(std::move(record), book));
  return makings;
}

// The makings of the run whose lots went into this one.
std::vector<size_t> sources_of(const Making& making, const Run& run) {
  std::vector<size_t> sources;
  for (const QString& lot : lots_named(making.batch.record)) {
    const auto found = run.by_lot.constFind(lot);
    if (found != run.by_lot.constEnd()) sources.push_back(*found);
  }
  return sources;
}

void refuse_loop(Run& run, const std::vector<size_t>& loop) {
  QStringList lots;
  for (const size_t at : loop) lots += run.makings[at].batch.lot;
  const qsizetype first =
      std::min_element(lots.begin(), lots.end()) - lots.begin();  // the same words from wherever it is found
  std::rotate(lots.begin(), lots.begin() + first, lots.end());
  lots += lots.front();
  for (const size_t at : loop)
    refuse(run.makings[at], "missing.input",
           {Code::Conflict,
            QStringLiteral("lots that were made of one another: %1").arg(lots.join(QStringLiteral(" from "))),
            {},
            QStringLiteral("correct the lot of one of the inputs")});
}

// Depth first without recursion, so that a chain of any length can be walked.
class Ordering {
 public:
  /// `take` gets each making after those that went into it, its loops told.
  Ordering(Run& run, std::function<void(size_t)> take)
      : run_(run), take_(std::move(take)), states_(run.makings.size(), State::New) {}

  /// Takes the makings that lead to `at` and have not been taken, then itself.
  void reach(size_t at) {
    if (states_[at] == State::New) walk(at);
  }

 private:
  enum class State : char { New, Open, Done };
  struct Step {
    size_t at;
    std::vector<size_t> sources;
    size_t next = 0;
  };

  void walk(size_t start) {
    open(start);
    while (!path_.empty()) {
      Step& step = path_.back();
      if (step.next == step.sources.size()) {
        const size_t done = step.at;
        states_[done] = State::Done;
        path_.pop_back();
        take_(done);
        continue;
      }
      const size_t source = step.sources[step.next++];
      if (states_[source] == State::Open) close_loop(source);
      if (states_[source] == State::New) open(source);
    }
  }

  void open(size_t at) {
    states_[at] = State::Open;
    path_.push_back({at, sources_of(run_.makings[at], run_), 0});
  }

  void close_loop(size_t at) {
    std::vector<size_t> loop;
    auto begin = std::find_if(path_.begin(), path_.end(), [&](const Step& step) { return step.at == at; });
    for (; begin != path_.end(); ++begin) loop.push_back(begin->at);
    refuse_loop(run_, loop);
  }

  Run& run_;
  std::function<void(size_t)> take_;
  std::vector<State> states_;
  std::vector<Step> path_;
};

void finish(Making& making) {
  Batch& batch = making.batch;
  problem::sort(batch.refused);
  batch.missing = missing_in_order(making.missing);
  if (batch.refused.empty()) return;
  making.withheld = std::exchange(batch.use_bys, {});  // a refused batch has no date
  for (Container& container : batch.containers) making.question_of.push_back(std::exchange(container.use_by, 0));
}

// What a later making asks of one that was handed out already.
Batch for_later(const Batch& whole) {
  Batch kept;
  kept.record.deed = whole.record.deed;
  kept.record.item = whole.record.item;
  kept.record.quantity = whole.record.quantity;
  kept.record.made_at = whole.record.made_at;
  kept.record.supplier_item = whole.record.supplier_item;
  kept.lot = whole.lot;
  kept.declared = whole.declared;
  kept.readiness = whole.readiness;
  kept.previously_frozen = whole.previously_frozen;
  kept.differences = whole.differences;
  kept.parts = whole.parts;
  kept.refused = whole.refused;
  return kept;
}

}  // namespace

struct Computing::State {
  State(const book::Book& book, std::vector<Record> records, const std::vector<Fixed>& earlier, const QDateTime& now);

  /// Computes the next making and what it takes; its place, or nothing after the last.
  std::optional<size_t> reach_next();
  void take(size_t at);
  Batch handed_out(size_t at);

  Run run;
  Ordering ordering;
  std::vector<int> wanted;  // how many makings that were not computed yet have a lot of this one among their inputs
  size_t next = 0;          // the making that is handed out next
};

Computing::State::State(const book::Book& book, std::vector<Record> records, const std::vector<Fixed>& earlier,
                        const QDateTime& now)
    : run{book, now, Lookup(book), makings_of(std::move(records), book), {}},
      ordering(run, [this](size_t at) { take(at); }),
      wanted(run.makings.size(), 0) {
  add_earlier(run, earlier);
  identify(run);
  for (const Making& making : run.makings)
    for (const size_t source : sources_of(making, run)) ++wanted[source];
}

void Computing::State::take(size_t at) {
  Making& making = run.makings[at];
  add_containers(making, run);
  if (making.product)
    compute_product(making, run);
  else
    compute_package(making, run);
  finish(making);
  for (const size_t source : sources_of(making, run))
    if (--wanted[source] == 0 && source < next) run.makings[source] = Making{};
}

std::optional<size_t> Computing::State::reach_next() {
  if (next == run.makings.size()) return std::nullopt;
  ordering.reach(next);
  return next++;
}

Batch Computing::State::handed_out(size_t at) {
  Making& making = run.makings[at];
  Batch batch = std::move(making.batch);
  if (wanted[at] > 0)
    making.batch = for_later(batch);
  else
    making = Making{};
  return batch;
}

Computing::Computing(const book::Book& book, std::vector<Record> records, const QDateTime& now)
    : Computing(book, std::move(records), {}, now) {}

Computing::Computing(const book::Book& book, std::vector<Record> records, const std::vector<Fixed>& earlier,
                     const QDateTime& now)
    : state_(std::make_unique<State>(book, std::move(records), earlier, now)) {}

Computing::~Computing() = default;

std::optional<Batch> Computing::next() {
  const std::optional<size_t> at = state_->reach_next();
  if (!at) return std::nullopt;
  return state_->handed_out(*at);
}

std::optional<Fixed> Computing::next_fixed() {
  const std::optional<size_t> at = state_->reach_next();
  if (!at) return std::nullopt;
  Fixed fixed = without_batch(state_->run.makings[*at], state_->run.book);
  fixed.batch = state_->handed_out(*at);
  return fixed;
}

std::vector<Batch> compute(const book::Book& book, std::vector<Record> records, const QDateTime& now) {
  Computing computing(book, std::move(records), now);
  std::vector<Batch> batches;
  while (std::optional<Batch> batch = computing.next()) batches.push_back(std::move(*batch));
  return batches;
}

}  // namespace lardiner::batch
