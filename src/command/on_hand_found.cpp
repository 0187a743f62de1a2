// What is on hand for a plan or a sheet: a file that says so, else the ledger where there is one.
#include "command/on_hand_found.h"

#include <QFileInfo>

#include "command/date_text.h"
#include "command/ledger_run.h"

namespace lardiner::command {

problem::ExpectedAll<OnHandFound> find_on_hand(const Options& options, const QString& path, const WorkRun& run) {
  const QString ledger_file = ledger_path(options, run.book.kitchen);
  if (!path.isEmpty() || !QFileInfo::exists(ledger_file)) {
    auto lots = read_on_hand_file(path, run);
    if (!lots) return tl::unexpected(lots.error());
    return OnHandFound{std::move(*lots), false, {}};
  }
  auto ledger = ledger::Ledger::open(ledger_file, ledger::Access::Read);
  if (!ledger) return tl::unexpected(problem::Errors{ledger.error()});
  auto lots = ledger::on_hand(*ledger, run.now, run.book.kitchen.zone);
  if (!lots) return tl::unexpected(problem::Errors{lots.error()});
  return OnHandFound{std::move(*lots), true, ledger::counted(ledger->store())};
}

QString counted_text(const OnHandFound& found, const QTimeZone& zone) {
  if (!found.from_ledger) return {};
  if (found.counted.empty()) return QStringLiteral("On hand as recorded; nothing has been counted yet\n");
  QStringList places;
  for (const ledger::Counted& one : found.counted)
    places << (one.place.isEmpty() ? QString() : one.place + u' ') + moment(one.at, false, zone);
  return QStringLiteral("On hand as recorded; last counted: %1\n").arg(places.join(QStringLiteral(", ")));
}

}  // namespace lardiner::command
