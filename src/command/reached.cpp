// Which lots an entry concerns besides the one it names, and which sites have some of them: told as it is recorded.
#include "command/reached.h"

#include <algorithm>
#include <map>
#include <set>

#include "command/date_text.h"
#include "ledger/lineage.h"

namespace lardiner::command {

using history::Entry;
using history::Kind;

namespace {

// What was learned of food wherever it is, and not done to it here.
bool reaches_sites(const Entry& entry) {
  const Kind kind = entry.event.kind;
  return kind == Kind::Correction || kind == Kind::Received || kind == Kind::Hold || kind == Kind::RecallOpened;
}

// The sites that have some, or to which some is on its way.
void add_calls(const history::Lot& lot, QStringList& calls) {
  std::map<QString, std::vector<int>> at;
  for (const history::Holder& holder : lot.holders)
    if (holder.where == history::Where::Dispatched || holder.where == history::Where::AtSite)
      at[holder.site].push_back(holder.number);
  for (const auto& [site, containers] : at)
    calls << QStringLiteral("call %1: it has lot %2, containers %3, whose labels do not say so")
                 .arg(site, lot.code, numbers(containers));
}

bool is_released(const Entry& hold, const std::vector<Entry>& entries) {
  return std::any_of(entries.begin(), entries.end(), [&](const Entry& later) {
    return later.event.kind == Kind::Release && later.event.of == hold.id;
  });
}

}  // namespace

std::vector<ledger::LotName> reached(LedgerRun& run, const Entry& entry) {
  std::vector<ledger::LotName> lots = ledger::lots_concerned(run.ledger.store(), entry.id);
  if (lots.empty() && !entry.event.lot.isEmpty()) lots = run.ledger.lots().named(entry.event.lot);
  return lots;
}

QStringList reached_nothing(LedgerRun& run, const std::vector<Entry>& entries) {
  QStringList told;
  for (const Entry& entry : entries) {
    const history::Event& event = entry.event;
    const bool holds_place = event.kind == Kind::Hold && !event.place.isEmpty();
    if (!holds_place && event.adds.isEmpty()) continue;
    if (!ledger::lots_concerned(run.ledger.store(), entry.id).empty() || is_released(entry, entries)) continue;
    told << (holds_place ? QStringLiteral("nothing that is recorded stands in %1: nothing is on hold").arg(event.place)
                         : QStringLiteral("no lot that is recorded is of that supplier's: nothing was reached but what "
                                          "comes later"));
  }
  return told;
}

QStringList calls_to_sites(LedgerRun& run, const std::vector<Entry>& entries) {
  QStringList calls;
  std::set<qint64> told;
  for (const Entry& entry : entries) {
    if (!reaches_sites(entry)) continue;
    for (const ledger::LotName& name : reached(run, entry)) {
      const history::Lot* lot = told.insert(name.id).second ? run.ledger.lots().lot(name.id) : nullptr;
      if (lot && lot->made) add_calls(*lot, calls);
    }
  }
  return calls;
}

}  // namespace lardiner::command
