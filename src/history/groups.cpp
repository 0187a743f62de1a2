// The containers of a lot that are alike in place, state and date.
#include "history/groups.h"

#include <algorithm>

namespace lardiner::history {

namespace {

bool alike(const Group& a, const Holder& holder, const Good& good) {
  return a.first.where == holder.where && a.first.place == holder.place && a.first.site == holder.site &&
         a.first.order == holder.order && a.first.frozen == holder.frozen && a.first.superseded == holder.superseded &&
         a.first.kind == holder.kind && a.good.state == good.state && a.good.end == good.end;
}

}  // namespace

std::vector<Group> groups(const Lot& lot, const std::optional<int>& container, const QDateTime& now) {
  std::vector<Group> all;
  for (const Holder& holder : lot.holders) {
    if (container && holder.number != *container) continue;
    const Good good = history::good(lot, holder, now);
    const auto same =
        std::find_if(all.begin(), all.end(), [&](const Group& group) { return alike(group, holder, good); });
    if (same == all.end())
      all.push_back({{holder.number}, holder, good});
    else
      same->containers.push_back(holder.number);
  }
  return all;
}

}  // namespace lardiner::history
