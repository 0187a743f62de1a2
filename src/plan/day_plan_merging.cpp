// Which needs of one product are met by one making.
#include "plan/day_plan_merging.h"

#include <algorithm>
#include <tuple>

namespace lardiner::plan {

namespace {

// Of what is made for one order or level alone the windows of its inputs are judged later.
Instant from(const Need& need) { return need.root == kNobody && !need.urgent() ? need.safe_from : need.earliest; }

// Takes those of `needs` that can begin at the latest start of the first. REQUIRES: by their latest starts, of one
// root.
std::vector<Need> taken(std::vector<Need>& needs) {
  const Instant begun = needs.front().latest;
  std::vector<Need> group, rest;
  for (Need& need : needs) (from(need) <= begun ? group : rest).push_back(need);
  needs = std::move(rest);
  return group;
}

}  // namespace

std::vector<std::vector<Need>> merged(std::vector<Need> needs) {
  std::sort(needs.begin(), needs.end(), [](const Need& a, const Need& b) {
    return std::tie(a.root, a.latest, a.kind, a.index) < std::tie(b.root, b.latest, b.kind, b.index);
  });
  std::vector<std::vector<Need>> groups;
  for (auto first = needs.begin(); first != needs.end();) {
    const auto last = std::find_if(first, needs.end(), [&](const Need& need) { return need.root != first->root; });
    std::vector<Need> left(first, last);
    while (!left.empty()) groups.push_back(taken(left));
    first = last;
  }
  return groups;
}

}  // namespace lardiner::plan
