// The ledger as the sheets see it: the book and its words, the ledger, and what a sheet says of its lots and
// containers.
#include "command/sheet_ledger.h"

#include <algorithm>

#include "command/ledger_run.h"

namespace lardiner::command {

problem::ExpectedAll<SheetLedger> read_sheet_ledger(const Options& options, const QString& out) {
  auto run = read_work_run(options, out);
  if (!run) return tl::unexpected(run.error());
  auto ledger = ledger::Ledger::open(ledger_path(options, run->book.kitchen), ledger::Access::Read);
  if (!ledger) return tl::unexpected(problem::Errors{ledger.error()});
  return SheetLedger{std::move(*run), std::move(*ledger)};
}

const history::Lot* lot_of(ledger::Ledger& ledger, const QString& code, const QString& item) {
  for (const ledger::LotName& lot : ledger.lots().named(code))
    if (item.isEmpty() || lot.item == item) return ledger.lots().lot(lot.id);
  return nullptr;
}

std::vector<facts::Containers> containers_of(const history::Lot& lot, const std::vector<int>& numbers) {
  std::vector<facts::Containers> all;
  for (const history::Holder& holder : lot.holders) {
    if (std::find(numbers.begin(), numbers.end(), holder.number) == numbers.end()) continue;
    const auto same =
        std::find_if(all.begin(), all.end(), [&](const facts::Containers& one) { return one.kind == holder.kind; });
    facts::Containers& group = same == all.end() ? all.emplace_back() : *same;
    group.kind = holder.kind;
    if (lot.made)
      group.numbers.push_back(holder.number);
    else
      ++group.count;  // a supplier's packages bear no numbers of ours
  }
  return all;
}

QString site_name(const WorkRun& run, const QString& id) {
  return site_name(run.book, run.languages.front()->code(), id);
}

QString site_name(const book::Book& book, const QString& language, const QString& id) {
  const book::Site* site = book.site(id);
  const QString name = site ? site->name.in(language) : QString();
  return name.isEmpty() ? id : name;
}

}  // namespace lardiner::command
