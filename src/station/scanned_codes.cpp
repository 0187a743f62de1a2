// Codes that were scanned or typed into a form, a line each.
#include "station/scanned_codes.h"

#include <algorithm>

namespace lardiner::station {

problem::ExpectedAll<std::vector<ScannedLot>> scanned_codes(const Visit& visit, const QString& lines) {
  std::vector<ScannedLot> all;
  problem::Errors errors;
  for (const QString& line : lines.split(u'\n')) {
    const QString code = line.trimmed();
    if (code.isEmpty()) continue;
    const Opened opened = visit.desk().open(code, {});
    const auto name = visit.desk().ledger().lots().named(opened.lot, opened.item);
    if (opened.lot.isEmpty() || !name) {
      errors.push_back({problem::Code::Unknown, QStringLiteral("%1: %2").arg(code, opened.what), {}, {}});
      continue;
    }
    auto same = std::find_if(all.begin(), all.end(), [&](const ScannedLot& one) { return one.name.id == name->id; });
    if (same == all.end()) same = all.insert(all.end(), ScannedLot{*name, {}});
    if (opened.container) same->containers.insert(*opened.container);
  }
  if (!errors.empty()) return tl::unexpected(errors);
  return all;
}

}  // namespace lardiner::station
