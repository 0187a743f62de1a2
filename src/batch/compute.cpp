// Computes a run: every record after the lots that went into it, whatever the order of records.
#include <algorithm>

#include "batch/batch.h"
#include "batch/compute_making.h"

namespace lardiner::batch {

using problem::Code;

namespace {

Making making_of(const Record& record, const book::Book& book) {
  Making making;
  making.batch.record = record;
  making.batch.day_one = record.made_at;
  if (record.deed == Deed::Made)
    making.product = book.product(record.item);
  else
    making.ingredient = book.ingredient(record.item);
  return making;
}

// The makings of the run whose lots went into this one.
std::vector<size_t> sources_of(const Making& making, const Run& run) {
  std::vector<size_t> sources;
  for (const Input& input : making.batch.record.inputs) {
    const auto found = input.lot.isEmpty() ? run.by_lot.constEnd() : run.by_lot.constFind(input.lot);
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
  explicit Ordering(Run& run) : run_(run), states_(run.makings.size(), State::New) {}

  std::vector<size_t> order() {
    for (size_t i = 0; i < states_.size(); ++i)
      if (states_[i] == State::New) walk(i);
    return std::move(order_);
  }

 private:
  enum class State { New, Open, Done };
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
        states_[step.at] = State::Done;
        order_.push_back(step.at);
        path_.pop_back();
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
  std::vector<State> states_;
  std::vector<Step> path_;
  std::vector<size_t> order_;
};

// What is missing, as the HOLD label lists it: the weightiest first.
QStringList missing_in_order(const std::set<QString>& missing) {
  static const char* const order[] = {"missing.allergens",
                                      "missing.tcs",
                                      "missing.shelf_life",
                                      "missing.cook_reading",
                                      "missing.cook_too_low",
                                      "missing.cook_temperature",
                                      "missing.cooling",
                                      "missing.finishing",
                                      "missing.past_its_date",
                                      "missing.input_date",
                                      "missing.input",
                                      "missing.other"};
  QStringList keys;
  for (const char* key : order)
    if (missing.count(QLatin1String(key)) > 0) keys += QString::fromLatin1(key);
  return keys;
}

void finish(Making& making) {
  Batch& batch = making.batch;
  problem::sort(batch.refused);
  batch.missing = missing_in_order(making.missing);
  if (batch.refused.empty()) return;
  batch.use_bys.clear();  // a refused batch has no date
  for (Container& container : batch.containers) container.use_by = 0;
}

}  // namespace

std::vector<Batch> compute(const book::Book& book, const std::vector<Record>& records, const QDateTime& now) {
  Run run{book, now, Lookup(book), {}, {}};
  for (const Record& record : records) run.makings.push_back(making_of(record, book));
  identify(run);
  for (const size_t at : Ordering(run).order()) {
    Making& making = run.makings[at];
    if (making.product)
      compute_product(making, run);
    else
      compute_package(making, run);
    finish(making);
  }
  std::vector<Batch> batches;
  for (Making& making : run.makings) batches.push_back(std::move(making.batch));
  return batches;
}

}  // namespace lardiner::batch
