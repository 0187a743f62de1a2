// What a lot is called in reports.
#include "command/lot_called.h"

namespace lardiner::command {

QString item_name(const book::Book& book, const ledger::LotName& lot) {
  if (!lot.name.isEmpty()) return lot.name;
  const QString name = book.name_of(lot.item, book.kitchen.languages.value(0));
  return name.isEmpty() ? lot.item : name;
}

QString called(const book::Book& book, const ledger::LotName& lot) {
  return item_name(book, lot) +
         (lot.code.isEmpty() ? QStringLiteral(", lot not written") : QStringLiteral(", lot ") + lot.code);
}

QString first_of(const QStringList& lots, const QString& between) {
  constexpr qsizetype kMostNamed = 12;
  QStringList named = lots.mid(0, kMostNamed);
  if (const qsizetype more = lots.size() - named.size(); more > 0) named << QStringLiteral("and %1 more").arg(more);
  return named.join(between);
}

}  // namespace lardiner::command
