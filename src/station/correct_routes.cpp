// A correction beside what was recorded: an earlier date, a further allergen that a supplier declares, a remark on an
// entry. It asks for the strong word, and lists every lot that it concerns.
#include "facts/allergen_text.h"
#include "ledger/entries.h"
#include "station/rows.h"
#include "station/visit.h"

namespace lardiner::station {

using book::AllergenLaw;
using ledger::LotName;
using problem::Errors;

namespace {

// As a supplier declares them: a substance alone, where no species is named, and with each. Of what has a content
// nobody measured it yet, and unknown is over every threshold.
QStringList declarations(const AllergenLaw& law) {
  QStringList all;
  for (const QString& substance : law.substances) {
    all << (law.measured.contains(substance) ? substance + QStringLiteral(" unknown") : substance);
    for (const QString& species : law.species_of(substance)) all << substance + u':' + species;
  }
  return all;
}

// In the words of the kitchen's list; what that does not name, as the book writes it.
QString declaration_text(const Visit& visit, const QString& declaration) {
  const book::Book& book = visit.desk().book();
  const book::AllergenList* list = book.law.list(book.kitchen.allergen_list);
  const auto read = book::parse_declaration(declaration, book.law);
  const auto listed = list && read ? book::listed({*read}, *list) : std::vector<book::ListedAllergen>();
  if (listed.empty()) return declaration;
  return facts::entries_text({visit.language(), book.kitchen.units}, listed);
}

// Of the lot's own supplier, where its receipt says whose it is: another's would reach other lots and not this one.
void add_allergens(const Visit& visit, Part& page, const book::Ingredient& ingredient, const QString& own,
                   const Fields& typed) {
  Part& form = page.add("FURTHER");
  for (const book::SupplierItem& item : ingredient.supplier_items)
    if (own.isEmpty() || own == item.id)
      form.add("SUPPLIER_ITEM")
          .set("ID", item.id)
          .set("SUPPLIER", item.supplier)
          .set("CHOSEN",
               typed.value("supplier_item") == item.id || own == item.id ? QStringLiteral("checked") : QString());
  for (const QString& declaration : declarations(visit.desk().book().law))
    form.add("ALLERGEN")
        .set("VALUE", declaration)
        .set("WORD", declaration_text(visit, declaration))
        .set("CHOSEN", typed.value("adds") == declaration ? QStringLiteral("selected") : QString());
}

void add_entries(const Visit& visit, Part& page, const LotName& name, const std::vector<ledger::Recorded>& entries,
                 const Fields& typed) {
  const QStringList lines = visit.desk().history(name);
  for (size_t at = 0; at < entries.size(); ++at) {
    const QString id = entries[at].entry.id.text();
    page.add("ENTRY_OFFER")
        .set("ID", id)
        .set("LINE", lines.value(static_cast<qsizetype>(at), id))
        .set("CHOSEN", typed.value("of") == id ? QStringLiteral("selected") : QString());
  }
}

Reply page_of(const Visit& visit, const LotName& name, const Errors& refused, const Recorded& recorded = {}) {
  Part page;
  page.set("LOT", name.code).set("ITEM", name.item).set("NAME", visit.name_of(name));
  const Fields typed = refused.empty() ? Fields() : visit.request().form;
  page.set("DATE", typed.value("date")).set("REASON", typed.value("reason"));
  const QString checked = QStringLiteral("checked");
  const bool quality = typed.value("ends") == QLatin1String("best_before");
  page.set("IS_USE_BY", quality ? QString() : checked).set("IS_BEST_BEFORE", quality ? checked : QString());
  page.set("ONLY", typed.value("only") == QLatin1String("yes") ? checked : QString());
  page.set("USE_BY", visit.word("use_by")).set("BEST_BEFORE", visit.word("best_before"));
  page.set("WHO_IS_IN", visit.who().initials);
  if (!visit.who().strong) page.add("NOT_STRONG");
  if (visit.who().strong) {
    const auto entries = ledger::entries_of_lot(visit.desk().ledger().store(), name.id);
    if (!entries) return visit.trouble(500, {entries.error()});
    const QString own = entries->empty() ? QString() : entries->front().entry.event.supplier_item;
    Part& forms = page.add("STRONG");
    if (const book::Ingredient* ingredient = visit.desk().book().ingredient(name.item))
      add_allergens(visit, forms, *ingredient, own, typed);
    add_entries(visit, forms, name, *entries, typed);
  }
  add_problems(page, refused);
  add_recorded(visit, page, recorded);
  return visit.page(QStringLiteral("correct"), visit.word("page.correct"), std::move(page), status_of(refused));
}

reader::Value row_of(const Visit& visit, const LotName& name) {
  reader::Value row = form_table();
  add(row, QStringLiteral("event"), QStringLiteral("correction"));
  add(row, QStringLiteral("at"), visit.now_text());
  add(row, QStringLiteral("by"), visit.who().initials);
  add(row, QStringLiteral("reason"), visit.field("reason"));
  const QString step = visit.field("step");
  if (step == QLatin1String("remark")) {
    add(row, QStringLiteral("of"), visit.field("of"));
    return row;
  }
  add(row, QStringLiteral("item"), name.item);
  const bool further = step == QLatin1String("allergen");
  if (!further || visit.field("only") == QLatin1String("yes")) add(row, QStringLiteral("lot"), name.code);
  if (further) {
    add(row, QStringLiteral("supplier_item"), visit.field("supplier_item"));
    add(row, QStringLiteral("adds"), visit.field("adds"));
    return row;
  }
  const bool quality = visit.field("ends") == QLatin1String("best_before");
  add(row, quality ? QStringLiteral("best_before") : QStringLiteral("use_by"), visit.field("date"));
  return row;
}

}  // namespace

Reply correct_page(const Visit& visit, const QString& code) {
  if (!visit.signed_in()) return visit.message(401, "page.sign_in_first");
  const auto name = visit.lot_named(code);
  return name ? page_of(visit, *name, {}) : visit.message(404, "page.no_such_page");
}

Reply correct(const Visit& visit, const QString& code) {
  const auto name = visit.lot_named(code);
  if (!name) return visit.message(404, "page.no_such_page");
  if (!visit.who().strong) return visit.message(403, "page.stronger");
  const QString step = visit.field("step");
  if (step != QLatin1String("date") && step != QLatin1String("allergen") && step != QLatin1String("remark"))
    return visit.message(404, "page.no_such_page");
  const auto recorded = visit.desk().record({row_of(visit, *name)});
  return recorded ? page_of(visit, *name, {}, *recorded) : page_of(visit, *name, recorded.error());
}

}  // namespace lardiner::station
