// What the commands of the ledger have in common: the book, the time of the run, and the ledger of its station.
#include "command/ledger_run.h"

#include <QDir>

#include "ledger/nearest.h"

namespace lardiner::command {

using problem::Code;
using problem::Error;
using problem::Errors;

ledger::Stamp LedgerRun::stamp() const {
  return {book.kitchen.station, now, QString::fromLatin1(book.kitchen.zone.id())};
}

QString ledger_path(const Options& options, const book::Kitchen& kitchen) {
  if (!options.ledger.isEmpty()) return options.ledger;
  return options.kitchen + QStringLiteral("/ledger/%1.sqlite").arg(kitchen.station);
}

void make_ledger_folder(const Options& options) {
  if (options.ledger.isEmpty()) QDir().mkpath(options.kitchen + QStringLiteral("/ledger"));
}

problem::ExpectedAll<LedgerRun> read_ledger_run(const Options& options, ledger::Access access) {
  auto book = usable_book(options);
  if (!book) return tl::unexpected(book.error());
  return ledger_run(options, std::move(*book), access);
}

problem::ExpectedAll<LedgerRun> ledger_run(const Options& options, book::Book book, ledger::Access access) {
  const auto now = time_of_run(options, book.kitchen.zone);
  if (!now) return tl::unexpected(Errors{now.error()});
  const QString path = ledger_path(options, book.kitchen);
  if (access == ledger::Access::Write) make_ledger_folder(options);
  auto ledger = ledger::Ledger::open(path, access);
  if (!ledger) return tl::unexpected(Errors{ledger.error()});
  return LedgerRun{std::move(book), *now, std::move(*ledger)};
}

QString as_printed(const QString& typed) { return typed.toUpper().remove(u' '); }

problem::Expected<ledger::LotName> lot_named(ledger::Ledger& ledger, const QString& code, const QString& item) {
  std::vector<ledger::LotName> found = ledger.lots().named(code);
  if (found.empty()) found = ledger.lots().named(as_printed(code));
  if (item.isEmpty() && found.size() == 1) return found.front();
  QStringList items;
  for (const ledger::LotName& lot : found) {
    if (lot.item == item) return lot;
    items << lot.item;
  }
  if (found.empty())
    return tl::unexpected(
        ledger::unknown_lot(ledger.store(), code, {}, QStringLiteral("see that it is written as on the label")));
  QString what = QStringLiteral("lot %1 is of %2").arg(found.front().code, items.join(QStringLiteral(" and of ")));
  if (!item.isEmpty()) what += QStringLiteral(", not of ") + item;
  return tl::unexpected(Error{Code::Conflict, what, {}, QStringLiteral("name one of them with --item")});
}

}  // namespace lardiner::command
