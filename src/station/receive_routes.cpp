// What came in: the ingredient, then its package as a supplier sent it; what the book says of that supplier's is shown
// beside the choice, to be compared with the package in hand.
#include <QHash>
#include <QUrlQuery>
#include <algorithm>

#include "facts/allergen_text.h"
#include "history/for_use.h"
#include "ledger/further_allergens.h"
#include "station/rows.h"
#include "station/visit.h"

namespace lardiner::station {

using book::Ingredient;
using problem::Errors;

namespace {

// What is the same for the next package of a delivery; not the place, since flour does not go where butter went, nor
// the time, which passes.
constexpr const char* kOfDelivery[] = {"note", "from", "order"};

constexpr const char* kColumns[] = {"at",    "supplier_item", "lot",  "quantity", "count", "kind",     "state",
                                    "place", "temperature",   "from", "note",     "order", "accepted", "reason"};

// The most often received first.
std::vector<const Ingredient*> offered(const Visit& visit, const QString& text) {
  const QHash<QString, qint64> times = ledger::lots_of_items(visit.desk().ledger().store(), ledger::LotKind::Received);
  std::vector<const Ingredient*> found;
  for (const Ingredient& ingredient : visit.desk().book().ingredients)
    if (!ingredient.always_there && visit.name_of(ingredient.id).contains(text, Qt::CaseInsensitive))
      found.push_back(&ingredient);
  std::stable_sort(found.begin(), found.end(),
                   [&](const Ingredient* a, const Ingredient* b) { return times.value(a->id) > times.value(b->id); });
  return found;
}

QString of_delivery(const Fields& form) {
  QUrlQuery query;
  for (const char* name : kOfDelivery)
    if (const QString value = form.value(QString::fromLatin1(name)); !value.isEmpty())
      query.addQueryItem(QString::fromLatin1(name), QString::fromLatin1(QUrl::toPercentEncoding(value)));
  return query.query(QUrl::FullyEncoded);
}

Reply list_page(const Visit& visit, const Fields& delivery, const QString& text, const Recorded& recorded = {},
                const std::optional<ledger::LotName>& came = {}) {
  Part page;
  page.set("ASKED", text).set("DELIVERY", of_delivery(delivery));
  QStringList same;
  for (const char* name : kOfDelivery) {
    const QString value = delivery.value(QString::fromLatin1(name)).trimmed();
    page.add("KEPT").set("KEY", QString::fromLatin1(name)).set("VALUE", value);
    if (!value.isEmpty()) same << value;
  }
  if (!same.isEmpty()) page.add("SAME").set("TEXT", same.join(QStringLiteral(", ")));
  for (const Ingredient* ingredient : offered(visit, text))
    page.add("INGREDIENT").set("ID", ingredient->id).set("NAME", visit.name_of(ingredient->id));
  add_recorded(visit, page, recorded);
  if (came) page.add("CAME").set("LOT", came->code).set("ITEM", came->item).set("NAME", visit.name_of(*came));
  return visit.page(QStringLiteral("receive"), visit.word("page.receive"), std::move(page));
}

// What the book says that it declares, with what corrections add to all that comes.
book::Declared declared_now(const Visit& visit, const Ingredient& ingredient, const book::SupplierItem& item) {
  book::Declared declared = item.declared;
  for (const ledger::Addition& addition :
       ledger::additions(visit.desk().ledger().store(), ingredient.id, item.id, QString()))
    if (addition.lot.isEmpty() && ledger::stands(addition, item.checked))
      history::declare_besides(declared, addition.substances, visit.desk().book().law);
  return declared;
}

// The supplier, and what it declares: to be compared with the package in hand.
void add_supplier_item(const Visit& visit, Part& page, const Ingredient& ingredient, const book::SupplierItem& item,
                       bool chosen) {
  const book::Book& book = visit.desk().book();
  const book::AllergenList* list = book.law.list(book.kitchen.allergen_list);
  const facts::Wording wording{visit.language(), book.kitchen.units};
  Part& row = page.add("SUPPLIER_ITEM").set("ID", item.id).set("SUPPLIER", item.supplier);
  row.set("CHOSEN", chosen ? QStringLiteral("checked") : QString());
  const bool known = list && item.declared.stated;
  const book::Declared declared = declared_now(visit, ingredient, item);
  row.set("DECLARES", known ? facts::contains_text(wording, declared, *list)
                            : wording.words.upper(visit.word("sheet.allergens_unknown")));
  row.set("MAY", known ? facts::may_contain_text(wording, declared, *list) : QString());
}

void add_choice(Part& page, std::string_view name, const QString& value, const QString& word, bool chosen) {
  page.add(name).set("VALUE", value).set("WORD", word).set("CHOSEN", chosen ? QStringLiteral("checked") : QString());
}

Reply form_page(const Visit& visit, const Ingredient& ingredient, const Errors& refused = {}) {
  const Fields& typed = visit.request().method == Request::Method::Post ? visit.request().form : visit.request().query;
  const auto said = [&](const char* name) { return typed.value(QString::fromLatin1(name)); };
  Part page;
  page.set("ITEM", ingredient.id).set("NAME", visit.name_of(ingredient.id));
  page.set("AT", said("at").isEmpty() ? visit.now_text() : said("at"));
  page.set("LOT", said("lot")).set("QUANTITY", said("quantity")).set("COUNT", said("count")).set("KIND", said("kind"));
  page.set("DATE", said("date")).set("TEMPERATURE", said("temperature")).set("PLACE", said("place"));
  page.set("FROM", said("from")).set("NOTE", said("note")).set("ORDER", said("order")).set("REASON", said("reason"));
  const bool alone = ingredient.supplier_items.size() == 1 && !typed.has(QStringLiteral("supplier_item"));
  for (const book::SupplierItem& item : ingredient.supplier_items)
    add_supplier_item(visit, page, ingredient, item, alone || said("supplier_item") == item.id);
  add_choice(page, "END_KIND", QStringLiteral("use_by"), visit.word("use_by"), said("ends") != "best_before");
  add_choice(page, "END_KIND", QStringLiteral("best_before"), visit.word("best_before"), said("ends") == "best_before");
  for (const char* state : {"chilled", "frozen", "ambient"}) {
    const QString key = QStringLiteral("page.%1").arg(QLatin1String(state));
    add_choice(page, "STATE", QString::fromLatin1(state), visit.language().word(key), said("state") == state);
  }
  page.set("YES", said("accepted") == "no" ? QString() : QStringLiteral("checked"));
  page.set("NO", said("accepted") == "no" ? QStringLiteral("checked") : QString());
  for (const book::StoragePlace& place : visit.desk().book().places) page.add("STAND").set("PLACE_NAME", place.name);
  add_problems(page, refused);
  return visit.page(QStringLiteral("receive_form"), visit.name_of(ingredient.id), std::move(page), status_of(refused));
}

reader::Value row_of(const Visit& visit, const Ingredient& ingredient) {
  const Fields& form = visit.request().form;
  reader::Value row = form_table();
  add(row, QStringLiteral("event"), QStringLiteral("received"));
  add(row, QStringLiteral("by"), visit.who().initials);
  add(row, QStringLiteral("item"), ingredient.id);
  for (const char* column : kColumns) add(row, QString::fromLatin1(column), form.value(QString::fromLatin1(column)));
  const bool quality = form.value(QStringLiteral("ends")) == QLatin1String("best_before");
  add(row, quality ? QStringLiteral("best_before") : QStringLiteral("use_by"), form.value(QStringLiteral("date")));
  return row;
}

}  // namespace

Reply receive_list(const Visit& visit) {
  if (!visit.signed_in()) return visit.message(401, "page.sign_in_first");
  const Fields& query = visit.request().query;
  return list_page(visit, query, query.value(QStringLiteral("q")).trimmed());
}

Reply receive_form(const Visit& visit, const QString& item) {
  if (!visit.signed_in()) return visit.message(401, "page.sign_in_first");
  const Ingredient* ingredient = visit.desk().book().ingredient(item);
  return ingredient ? form_page(visit, *ingredient) : visit.message(404, "page.no_such_page");
}

// The next package of the delivery is then one press away.
Reply receive(const Visit& visit, const QString& item) {
  const Ingredient* ingredient = visit.desk().book().ingredient(item);
  if (!ingredient) return visit.message(404, "page.no_such_page");
  const auto recorded = visit.desk().record({row_of(visit, *ingredient)});
  if (!recorded) return form_page(visit, *ingredient, recorded.error());
  const std::optional<ledger::LotName> came = visit.desk().ledger().lots().named(recorded->lot, ingredient->id);
  return list_page(visit, visit.request().form, {}, *recorded, came);
}

}  // namespace lardiner::station
