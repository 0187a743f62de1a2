// Finding: a lot by what is typed or scanned or can be read of its code, the batches of a product, of a day.
#include <QDate>
#include <QUrl>
#include <algorithm>

#include "station/visit.h"

namespace lardiner::station {

using ledger::LotName;

namespace {

constexpr int kMostFound = 100;
constexpr int kLeastOfCode = 3;

std::vector<LotName> rows_of(ledger::Statement& rows) {
  std::vector<LotName> found;
  while (rows.next()) found.push_back(ledger::lot_name(rows));
  return found;
}

// Those that were made or came on a day, the latest first.
std::vector<LotName> of_day(Desk& desk, QDate day) {
  const QTimeZone& zone = desk.book().kitchen.zone;
  const qint64 from = day.startOfDay(zone).toSecsSinceEpoch(), to = day.addDays(1).startOfDay(zone).toSecsSinceEpoch();
  return rows_of(desk.ledger()
                     .store()
                     .statement("SELECT id, code, item, name, kind, began FROM lot WHERE began >= ? AND began < ?"
                                " ORDER BY began DESC, code LIMIT ?")
                     .with(from)
                     .with(to)
                     .with(qint64{kMostFound}));
}

std::vector<LotName> of_item(Desk& desk, const QString& item) {
  return rows_of(desk.ledger()
                     .store()
                     .statement("SELECT id, code, item, name, kind, began FROM lot WHERE item = ? AND began IS NOT NULL"
                                " ORDER BY began DESC, code LIMIT ?")
                     .with(item)
                     .with(qint64{kMostFound}));
}

// Items whose name, in any of its languages, or whose id has the words in it.
QStringList items_named(const book::Book& book, const QString& text) {
  QStringList found;
  const auto look = [&](const QString& id, const book::LocalText& name) {
    const bool named = std::any_of(name.texts.begin(), name.texts.end(),
                                   [&](const auto& one) { return one.second.contains(text, Qt::CaseInsensitive); });
    if (named || id.contains(text, Qt::CaseInsensitive)) found << id;
  };
  for (const book::Product& product : book.products) look(product.id, product.name);
  for (const book::Ingredient& ingredient : book.ingredients) look(ingredient.id, ingredient.name);
  return found;
}

// Lots whose code has the text in it: what can still be read of a supplier's. All of them are looked at.
std::vector<LotName> coded(Desk& desk, QString text) {
  if (text.size() < kLeastOfCode) return {};
  for (const QChar sign : {u'\\', u'%', u'_'}) text.replace(sign, QStringLiteral("\\") + sign);
  return rows_of(desk.ledger()
                     .store()
                     .statement("SELECT id, code, item, name, kind, began FROM lot WHERE code LIKE ? ESCAPE '\\'"
                                " ORDER BY began DESC, code LIMIT ?")
                     .with(u'%' + text + u'%')
                     .with(qint64{kMostFound}));
}

std::vector<LotName> found_by(Desk& desk, const QString& text) {
  if (const QDate day = QDate::fromString(text, Qt::ISODate); day.isValid()) return of_day(desk, day);
  std::vector<LotName> found = desk.ledger().lots().named(text);  // of several suppliers
  if (!found.empty()) return found;
  for (const QString& item : items_named(desk.book(), text)) {
    for (LotName& lot : of_item(desk, item)) found.push_back(std::move(lot));
    if (found.size() >= kMostFound) break;
  }
  return found.empty() ? coded(desk, text) : found;
}

QString address_of(const QString& lot, const QString& item) {
  return QStringLiteral("/lot/%1?item=%2")
      .arg(QString::fromLatin1(QUrl::toPercentEncoding(lot)), QString::fromLatin1(QUrl::toPercentEncoding(item)));
}

}  // namespace

Reply find(const Visit& visit) {
  const QString text = visit.request().query.value(QStringLiteral("q")).trimmed().left(400);
  Part part;
  part.set("ASKED", text);
  if (text.isEmpty()) return visit.page(QStringLiteral("find"), visit.word("page.find"), std::move(part));
  const Opened opened = visit.desk().open(text, {});
  if (!opened.lot.isEmpty()) return redirection(address_of(opened.lot, opened.item));
  if (QDate::fromString(text, Qt::ISODate).isValid()) part.add("OF_DAY").set("DAY", text);
  const std::vector<LotName> found = found_by(visit.desk(), text);
  for (const LotName& lot : found)
    part.add("LOT").set("CODE", lot.code).set("ITEM", lot.item).set("NAME", visit.name_of(lot));
  if (found.empty()) part.add("NONE").set("WHAT", opened.what);
  return visit.page(QStringLiteral("find"), visit.word("page.find"), std::move(part));
}

}  // namespace lardiner::station
