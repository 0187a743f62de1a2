// Recalling a lot: what it reaches is seen first; then it is opened, its sheet had, and closed again.
#include "ledger/entries.h"
#include "station/rows.h"
#include "station/sheet_part.h"
#include "station/visit.h"

namespace lardiner::station {

using ledger::LotName;
using problem::Errors;

namespace {

// Open ones that reach the lot: those that name it can be closed here, another's at that lot's page.
Errors add_open(const Visit& visit, Part& page, const LotName& name) {
  const history::Lot* lot = visit.desk().ledger().lots().lot(name.id);
  bool of_itself = false;
  for (const history::EntryId& id : lot ? lot->recalls : std::vector<history::EntryId>()) {
    const auto entry = ledger::entry_named(visit.desk().ledger().store(), id);
    if (!entry) return {entry.error()};
    if (!*entry) continue;
    const history::Event& event = (*entry)->entry.event;
    const bool here = event.lot == name.code && event.item == name.item;
    of_itself = of_itself || here;
    Part& row = page.add(here ? "OPEN" : "ABOVE");
    row.set("OF", id.text()).set("REASON", event.reason).set("BY", event.by).set("ABOVE_LOT", event.lot);
    row.set("ABOVE_ITEM", event.item)
        .set("SINCE", visit.language().date_time(event.at.toTimeZone(visit.desk().book().kitchen.zone)));
    if (here && visit.who().strong) row.add("MAY_CLOSE");
  }
  if (!of_itself && visit.who().strong) page.add("MAY_OPEN");
  if (!visit.who().strong) page.add("NOT_STRONG").set("WHO", visit.who().initials);
  return {};
}

Reply page_of(const Visit& visit, const LotName& name, const Errors& refused = {}) {
  const auto sheet = visit.desk().recall_sheet(name, visit.language());
  if (!sheet) return visit.trouble(500, sheet.error());
  Part page;
  page.set("LOT", name.code).set("ITEM", name.item);
  add_sheet(page, *sheet, ForPaper::Row);
  if (const Errors errors = add_open(visit, page, name); !errors.empty()) return visit.trouble(500, errors);
  page.set("TYPED_REASON", refused.empty() ? QString() : visit.request().form.value(QStringLiteral("reason")));
  add_problems(page, refused);
  return visit.page(QStringLiteral("recall"), visit.word("page.recall"), std::move(page), status_of(refused));
}

reader::Value row_of(const Visit& visit, const LotName& name) {
  const Fields& form = visit.request().form;
  const bool closes = form.value(QStringLiteral("step")) == QLatin1String("close");
  reader::Value row = form_table();
  add(row, QStringLiteral("event"), closes ? QStringLiteral("recall-closed") : QStringLiteral("recall"));
  add(row, QStringLiteral("at"), visit.now_text());
  add(row, QStringLiteral("by"), visit.who().initials);
  add(row, QStringLiteral("reason"), form.value(QStringLiteral("reason")));
  if (closes) {
    add(row, QStringLiteral("of"), form.value(QStringLiteral("of")));
    return row;
  }
  add(row, QStringLiteral("lot"), name.code);
  add(row, QStringLiteral("item"), name.item);
  return row;
}

}  // namespace

Reply recall_page(const Visit& visit, const QString& code) {
  if (!visit.signed_in()) return visit.message(401, "page.sign_in_first");
  const auto name = visit.lot_named(code);
  return name ? page_of(visit, *name) : visit.message(404, "page.no_such_page");
}

Reply recall(const Visit& visit, const QString& code) {
  const auto name = visit.lot_named(code);
  if (!name) return visit.message(404, "page.no_such_page");
  if (!visit.who().strong) return visit.message(403, "page.stronger");
  const auto recorded = visit.desk().record({row_of(visit, *name)});
  return recorded ? page_of(visit, *name) : page_of(visit, *name, recorded.error());
}

Reply recall_pdf(const Visit& visit, const QString& code) {
  if (!visit.signed_in()) return visit.message(401, "page.sign_in_first");
  const auto name = visit.lot_named(code);
  if (!name) return visit.message(404, "page.no_such_page");
  const auto pdf = visit.desk().recall_pdf(*name);
  if (!pdf) return visit.trouble(status_of(pdf.error()), pdf.error());
  return pdf_reply(*pdf, "recall.pdf");
}

}  // namespace lardiner::station
