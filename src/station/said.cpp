// What the labels of lots say, kept while nothing befalls them.
#include "station/said.h"

namespace lardiner::station {

namespace {

constexpr qsizetype kMost = 4096;

}  // namespace

const SaidBefore::Lines* SaidBefore::find(qint64 lot, int container, qint64 state) {
  const auto found = lines_.constFind({lot, container});
  return found == lines_.constEnd() || found->state != state ? nullptr : &found->lines;
}

void SaidBefore::keep(qint64 lot, int container, qint64 state, Lines lines) {
  if (lines_.size() >= kMost) lines_.clear();
  lines_.insert({lot, container}, {state, std::move(lines)});
}

}  // namespace lardiner::station
