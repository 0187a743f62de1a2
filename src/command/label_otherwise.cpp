// How labels of a record of a file would differ from what the ledger has.
#include "command/label_otherwise.h"

#include <algorithm>

namespace lardiner::command {

using history::Holder;
using history::Lot;
using history::Where;

namespace {

// What stands on a label of its date. Why it is so may be said otherwise.
bool same_date(const batch::UseBy& a, const batch::UseBy& b) {
  return a.form == b.form && a.kind == b.kind && a.end == b.end && a.date == b.date && a.days_left == b.days_left &&
         a.frozen_best_before == b.frozen_best_before && a.never_past == b.never_past &&
         a.previously_frozen == b.previously_frozen;
}

// Whether labels of the two would show the same dates. One that is refused shows none.
bool same_dates(const batch::Batch& a, const batch::Batch& b) {
  if (!a.refused.empty() || !b.refused.empty()) return a.refused.empty() == b.refused.empty();
  const auto date = [](const batch::Batch& batch, size_t at) {
    return batch.use_bys[static_cast<size_t>(batch.containers[at].use_by)];
  };
  if (a.containers.size() != b.containers.size()) return false;
  for (size_t at = 0; at < a.containers.size(); ++at)
    if (!same_date(date(a, at), date(b, at))) return false;
  return true;
}

// What the file's record declares and the ledger's facts do not: the book has learnt of it since.
QStringList not_recorded(const book::Declared& file, const book::Declared& recorded) {
  QStringList found;
  for (const book::Declaration& one : file.contains)
    if (std::find(recorded.contains.begin(), recorded.contains.end(), one) == recorded.contains.end())
      found << one.substance;
  return found;
}

}  // namespace

Otherwise otherwise(const batch::Batch& batch, const batch::Batch& now, const Lot& lot) {
  const bool befallen = std::any_of(lot.holders.begin(), lot.holders.end(), [](const Holder& holder) {
    return holder.superseded || holder.where == Where::Discarded;
  });
  if (!now.refused.empty() && batch.refused.empty())
    return {QStringLiteral("has changed since it was recorded: ") + now.refused.front().what, {}};
  const QStringList missing = not_recorded(batch.declared, now.declared);
  if (!missing.isEmpty())
    return {QStringLiteral("is recorded without ") + missing.join(QStringLiteral(", ")),
            QStringLiteral("record a correction of the supplier's item that brought it: event=correction adds=…")};
  if (befallen) return {QStringLiteral("has changed since it was recorded"), {}};
  if (!(batch.declared == now.declared)) return {QStringLiteral("is recorded with further allergens"), {}};
  if (!same_dates(batch, now)) return {QStringLiteral("is recorded with another date"), {}};
  return {};
}

bool is_otherwise_now(const Lot& lot) {
  return lot.not_after || !lot.further_allergens.isEmpty() ||
         (lot.made &&
          std::any_of(lot.holders.begin(), lot.holders.end(), [](const Holder& holder) { return holder.superseded; }));
}

}  // namespace lardiner::command
