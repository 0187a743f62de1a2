// How long what is begun at an instant keeps, and when it must be begun to keep long enough; for day_plan.cpp.
#pragma once

#include <unordered_map>
#include <vector>

#include "batch/use_by.h"
#include "book/book.h"
#include "plan/day_plan_calendar.h"

namespace lardiner::plan {

/// What a product is put up in, as far as its date depends on it.
struct PutUp {
  bool frozen = false;
  bool reduced_oxygen = false;
};

/// Ends by batch::use_by, the one truth of dates; products that keep in the same way share their answers.
class Keeping {
 public:
  Keeping(const book::Book& book, const Calendar& calendar) : book_(book), calendar_(calendar) {}

  /// The way in which such a product keeps. `ready`: it is ready to eat.
  size_t way(const book::Product& product, bool ready, PutUp put_up);

  /// The first instant at which what was begun at `start` is past; kForever where nothing limits it. Of frozen food the
  /// end of its best-before. 0 where it cannot be told: see `errors`.
  Instant end(size_t way, Instant start);

  /// The first start, from now on, from which it keeps until `until`; kNever where there is none.
  Instant earliest(size_t way, Instant until);

  /// Whether its end depends on the day of the start alone.
  bool by_day(size_t way) const { return ways_[way].by_day; }

  /// Whether its date is a best-before and nothing else: it needs no temperature control.
  bool quality_only(size_t way) const;

  /// Why no end can be told.
  const problem::Errors& errors(size_t way) const { return ways_[way].errors; }

 private:
  struct Way {
    std::vector<batch::Rule> rules;
    bool tcs = true;
    PutUp put_up;
    bool by_day = true;
    problem::Errors errors;
    std::unordered_map<int, Instant> ends;  // by the day of the start
  };

  Instant asked(Way& way, Instant start);
  Instant first_within(size_t way, int day, Instant until);

  const book::Book& book_;
  const Calendar& calendar_;
  std::vector<Way> ways_;
};

}  // namespace lardiner::plan
