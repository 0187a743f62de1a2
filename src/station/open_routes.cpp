// Labelling an ingredient whose package is opened, thawed, cut or decanted: the package, then what is done, two taps.
#include <QUrl>
#include <algorithm>

#include "station/rows.h"
#include "station/visit.h"

namespace lardiner::station {

using ledger::LotName;

namespace {

constexpr qint64 kMostPackages = 400;

// Suppliers' lots of which something is here, the latest first, of ingredients that have letters for lots of their own.
std::vector<LotName> packages(Desk& desk) {
  std::vector<LotName> found;
  ledger::Statement& rows = desk.ledger().store().statement(
      "SELECT id, code, item, name, kind, began FROM lot WHERE kind = 2 AND EXISTS (SELECT 1 FROM holder WHERE "
      "holder.lot"
      " = lot.id AND whereabouts = 0) ORDER BY began DESC LIMIT ?");
  rows.with(kMostPackages);
  while (rows.next()) found.push_back(ledger::lot_name(rows));
  std::erase_if(found, [&](const LotName& lot) {
    const book::Ingredient* ingredient = desk.book().ingredient(lot.item);
    return !ingredient || ingredient->code.isEmpty();
  });
  return found;
}

// Also after a fault: the package is offered again, with what was wrong.
Reply deeds(const Visit& visit, const QString& lot, const QString& item, const problem::Errors& errors = {}) {
  Part part;
  part.set("LOT", lot).set("ITEM", item).set("NAME", visit.name_of(item));
  const QString typed = visit.request().form.value(QStringLiteral("made_at"));
  part.set("MADE_AT", typed.isEmpty() ? visit.now_text() : typed);
  add_problems(part, errors);
  return visit.page(QStringLiteral("open_deed"), visit.word("page.label_ingredient"), std::move(part),
                    status_of(errors));
}

}  // namespace

Reply open_list(const Visit& visit) {
  Part part;
  std::vector<LotName> found = packages(visit.desk());
  std::stable_sort(found.begin(), found.end(), [&](const LotName& a, const LotName& b) {
    return visit.name_of(a.item).localeAwareCompare(visit.name_of(b.item)) < 0;
  });
  for (const LotName& lot : found)
    part.add("PACKAGE").set("LOT", lot.code).set("ITEM", lot.item).set("NAME", visit.name_of(lot.item));
  if (found.empty()) part.add("NONE");
  return visit.page(QStringLiteral("open"), visit.word("page.label_ingredient"), std::move(part));
}

Reply open_package(const Visit& visit, const QString& lot) {
  const QString item = visit.request().query.value(QStringLiteral("item"));
  if (!visit.desk().ledger().lots().id(lot, item)) return visit.message(404, "page.no_such_page");
  return deeds(visit, lot, item);
}

Reply label_package(const Visit& visit, const QString& lot) {
  const Fields& form = visit.request().form;
  const QString item = form.value(QStringLiteral("item"));
  const book::Ingredient* ingredient = visit.desk().book().ingredient(item);
  if (!ingredient || !visit.desk().ledger().lots().id(lot, item)) return visit.message(404, "page.no_such_page");
  const QString made_at = form.value(QStringLiteral("made_at"));
  reader::Value row = form_table();
  const int number = visit.desk().next_number(ingredient->code, QDate::fromString(made_at.left(10), Qt::ISODate));
  add(row, QStringLiteral("ingredient"), item);
  add(row, QStringLiteral("what"), form.value(QStringLiteral("what")));
  add(row, QStringLiteral("number"), number > 0 ? QString::number(number) : QString());
  add(row, QStringLiteral("made_at"), made_at);
  add(row, QStringLiteral("by"), visit.who().initials);
  add(row, QStringLiteral("supplier_lot"), lot);
  const auto recorded = visit.desk().record({row});
  if (!recorded) return deeds(visit, lot, item, recorded.error());
  return redirection(QStringLiteral("/lot/%1?item=%2").arg(recorded->lot, item));
}

}  // namespace lardiner::station
