// What the labels of lots say, kept while nothing is recorded.
#include "station/said.h"

namespace lardiner::station {

namespace {

constexpr qsizetype kMost = 4096;

}  // namespace

const SaidBefore::Lines* SaidBefore::find(qint64 lot, int container, qint64 state) {
  see(state);
  const auto found = lines_.constFind({lot, container});
  return found == lines_.constEnd() ? nullptr : &*found;
}

void SaidBefore::keep(qint64 lot, int container, qint64 state, Lines lines) {
  see(state);
  if (lines_.size() >= kMost) lines_.clear();
  lines_.insert({lot, container}, std::move(lines));
}

void SaidBefore::see(qint64 state) {
  if (state != state_) lines_.clear();
  state_ = state;
}

}  // namespace lardiner::station
