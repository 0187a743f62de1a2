// Codes that were scanned or typed into a form, a line each.
#include "station/scanned_codes.h"

#include <QRegularExpression>
#include <algorithm>

namespace lardiner::station {

problem::ExpectedAll<std::vector<ScannedLot>> scanned_codes(const Visit& visit, const QString& lines) {
  static const QRegularExpression numbered_code(QStringLiteral("^(\\S+)\\s+([1-9][0-9]{0,4})$"));
  std::vector<ScannedLot> all;
  problem::Errors errors;
  for (const QString& line : lines.split(u'\n')) {
    const QString typed = line.trimmed();
    if (typed.isEmpty()) continue;
    const auto numbered = numbered_code.match(typed);
    const QString code = numbered.hasMatch() ? numbered.captured(1) : typed;
    Opened opened = visit.desk().open(code, {});
    if (numbered.hasMatch()) opened.container = numbered.captured(2).toInt();
    const auto name = visit.desk().ledger().lots().named(opened.lot, opened.item);
    if (opened.lot.isEmpty() || !name) {
      errors.push_back({problem::Code::Unknown, QStringLiteral("%1: %2").arg(code, opened.what), {}, {}});
      continue;
    }
    auto same = std::find_if(all.begin(), all.end(), [&](const ScannedLot& one) { return one.name.id == name->id; });
    if (same == all.end()) same = all.insert(all.end(), ScannedLot{*name, {}, {}});
    if (!opened.superseded.isEmpty()) same->untrue << opened.superseded;
    if (opened.container) same->containers.insert(*opened.container);
  }
  if (!errors.empty()) return tl::unexpected(errors);
  return all;
}

}  // namespace lardiner::station
