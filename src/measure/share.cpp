// Sharing a total out in whole steps so that the parts add up to it.
#include "measure/share.h"

#include <QtGlobal>
#include <algorithm>
#include <numeric>

#include "measure/wide.h"

namespace lardiner::measure {

std::vector<std::int64_t> share_out(std::int64_t total, const std::vector<std::int64_t>& weights) {
  Q_ASSERT(total >= 0 && !weights.empty() && weights.size() <= 1'000'000);
  const Wide sum = std::accumulate(weights.begin(), weights.end(), Wide{0});
  Q_ASSERT(sum > 0);
  const auto largest = std::max_element(weights.begin(), weights.end()) - weights.begin();
  const auto shared = [&](auto part) {
    std::vector<std::int64_t> parts(weights.size());
    std::transform(weights.begin(), weights.end(), parts.begin(),
                   [&](std::int64_t weight) { return saturated(part(Wide{total} * weight, sum)); });
    const Wide given = std::accumulate(parts.begin(), parts.end(), Wide{0});
    auto& residue_bearer = parts[static_cast<std::size_t>(largest)];
    residue_bearer = saturated(residue_bearer + (total - given));
    return parts;
  };
  const auto nearest = shared([](Wide num, Wide den) { return divided(num, den); });
  if (nearest[static_cast<std::size_t>(largest)] >= 0) return nearest;
  return shared([](Wide num, Wide den) { return num / den; });
}

}  // namespace lardiner::measure
