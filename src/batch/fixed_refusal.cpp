// A batch that is recorded and refused: what it lacks, and its dates, which nobody may show.
#include "batch/fixed_refusal.h"

#include "batch/compute_making.h"

namespace lardiner::batch {

void miss(Fixed& fixed, const char* missing, problem::Error error) {
  error.place = fixed.batch.record.place;
  fixed.batch.refused.push_back(std::move(error));
  std::set<QString> all(fixed.batch.missing.begin(), fixed.batch.missing.end());
  all.insert(QString::fromLatin1(missing));
  fixed.batch.missing = missing_in_order(all);
}

void withhold(Fixed& fixed) {
  fixed.withheld = std::move(fixed.batch.use_bys);
  fixed.batch.use_bys.clear();
  for (Container& container : fixed.batch.containers) container.use_by = 0;
}

void refuse_input(Fixed& fixed, const problem::Error& error) {
  const problem::Place place = error.place;
  if (fixed.batch.refused.empty()) withhold(fixed);
  miss(fixed, "missing.input", error);
  fixed.batch.refused.back().place = place;
}

}  // namespace lardiner::batch
