// The page of a lot, by its code or by the address in a label's QR; what happens to it; its labels.
#include <QUrl>

#include "station/happened_form.h"
#include "station/lot_page.h"
#include "station/rows.h"
#include "station/visit.h"

namespace lardiner::station {

using ledger::LotName;
using problem::Code;
using problem::Errors;

namespace {

// What the form of a lot sends on, as the columns of an event.
constexpr const char* kColumns[] = {"event", "at",     "containers", "temperature", "held",     "place",
                                    "left",  "reason", "site",       "note",        "quantity", "count",
                                    "kind",  "of",     "action",     "what",        "order",    "accepted"};

// With what was typed and the errors beside it, where it was refused.
void add_labels_form(const Visit& visit, Part& page, const Errors& refused) {
  const Fields form = refused.empty() ? Fields() : visit.request().form;
  page.set("PRINT_CONTAINERS", form.values(QStringLiteral("containers")).join(QStringLiteral(", ")));
  for (const book::Media& medium : visit.desk().book().media)
    page.add("MEDIUM")
        .set("MEDIUM_ID", medium.id)
        .set("CHOSEN", medium.id == form.value(QStringLiteral("medium")) ? QStringLiteral("selected") : QString());
  if (const auto printers = visit.desk().printers(); printers && !printers->empty())
    add_printers(page.add("PRINTING"), *printers, form);
  if (!refused.empty()) add_problems(page.add("NOT_PRINTED"), refused);
}

// The errors stand in the form that was refused, else above all.
void add_forms(const Visit& visit, Part& page, const Errors& errors) {
  const bool of_deed = visit.request().path.startsWith(QLatin1String("/happened/"));
  const bool of_labels = visit.request().path.startsWith(QLatin1String("/labels/"));
  add_happened_form(visit, page, of_deed ? errors : Errors());
  add_labels_form(visit, page, of_labels ? errors : Errors());
  if (!of_deed && !of_labels) add_problems(page, errors);
}

Reply page_of(const Visit& visit, const LotAsked& asked, const Errors& errors = {}, const Recorded& recorded = {}) {
  auto part = lot_page(visit.desk(), asked, visit.language(), visit.signed_in());
  if (!part) return visit.trouble(500, {part.error()});
  if (visit.signed_in()) add_forms(visit, *part, errors);
  add_recorded(visit, *part, recorded);
  if (visit.signed_in())
    for (const QString& line : visit.desk().history(asked.name)) part->add("ENTRY").set("LINE", line);
  const QString title = QStringLiteral("%1 %2").arg(visit.name_of(asked.name), asked.name.code);
  return visit.page(QStringLiteral("lot"), title, std::move(*part), status_of(errors));
}

// Of a code that several items have each is offered.
Reply choice(const Visit& visit, const std::vector<LotName>& found) {
  Part part;
  part.set("ASKED", found.front().code);
  for (const LotName& lot : found)
    part.add("LOT").set("CODE", lot.code).set("ITEM", lot.item).set("NAME", visit.name_of(lot));
  return visit.page(QStringLiteral("find"), visit.word("page.find"), std::move(part), 300);
}

Reply not_found(const Visit& visit, const QString& what) { return visit.trouble(404, {{Code::Unknown, what, {}, {}}}); }

std::vector<LotName> named(const Visit& visit, const QString& code) {
  std::vector<LotName> found = visit.desk().ledger().lots().named(code);
  const Request& request = visit.request();
  const QString item = request.method == Request::Method::Post ? request.form.value(QStringLiteral("item"))
                                                               : request.query.value(QStringLiteral("item"));
  if (!item.isEmpty()) std::erase_if(found, [&](const LotName& lot) { return lot.item != item; });
  return found;
}

std::optional<int> container_in(const Request& request) {
  bool read = false;
  const int number = request.query.value(QStringLiteral("container")).toInt(&read);
  return read && number > 0 ? std::optional(number) : std::nullopt;
}

reader::Value event_row(const Visit& visit, const LotName& lot) {
  reader::Value row = form_table();
  const Fields& form = visit.request().form;
  for (const char* column : kColumns) {
    const QString name = QString::fromLatin1(column);
    add(row, name, form.values(name).join(QStringLiteral(", ")));
  }
  add(row, QStringLiteral("lot"), lot.code);
  add(row, QStringLiteral("item"), lot.item);
  add(row, QStringLiteral("by"), visit.who().initials);
  return row;
}

}  // namespace

Reply lot(const Visit& visit, const QString& code) {
  const std::vector<LotName> found = named(visit, code);
  if (found.empty()) return not_found(visit, visit.desk().open(code, {}).what);
  if (found.size() > 1) return choice(visit, found);
  return page_of(visit, {found.front(), container_in(visit.request()), {}});
}

Reply lot_with_problems(const Visit& visit, const QString& code, const QString& item, const Errors& errors) {
  const auto name = visit.desk().ledger().lots().named(code, item);
  return name ? page_of(visit, {*name, std::nullopt, {}}, errors) : visit.trouble(422, errors);
}

// The address of a label, as it stands in its code: that of the kitchen, whatever the browser calls the station.
Reply label_address(const Visit& visit) {
  const QString uri = visit.desk().book().kitchen.code_address + QString::fromUtf8(visit.request().address);
  const Opened opened = visit.desk().open(uri, {});
  if (opened.lot.isEmpty()) return not_found(visit, opened.what);
  const auto name = visit.desk().ledger().lots().named(opened.lot, opened.item);
  if (!name) return not_found(visit, opened.what);
  return page_of(visit, {*name, opened.container, opened.superseded});
}

Reply happened(const Visit& visit, const QString& code) {
  const std::vector<LotName> found = named(visit, code);
  if (found.size() != 1) return not_found(visit, visit.desk().open(code, {}).what);
  const LotAsked asked{found.front(), std::nullopt, {}};
  const reader::Value row = event_row(visit, found.front());
  if (needs_strong_word(row) && !visit.who().strong) return visit.message(403, "page.stronger");
  const auto recorded = visit.desk().record({row});
  return recorded ? page_of(visit, asked, {}, *recorded) : page_of(visit, asked, recorded.error());
}

// With a printer it is asked for them; else they come as PDF.
Reply labels(const Visit& visit, const QString& code) {
  const std::vector<LotName> found = named(visit, code);
  if (found.size() != 1) return not_found(visit, visit.desk().open(code, {}).what);
  const LotAsked asked{found.front(), std::nullopt, {}};
  const auto wish = labels_wished(visit, code);
  if (!wish) return page_of(visit, asked, wish.error());
  if (visit.request().form.value(QStringLiteral("step")) == QLatin1String("print")) {
    const auto asked_for = print_labels(visit, *wish);
    return asked_for ? *asked_for : page_of(visit, asked, asked_for.error());
  }
  const auto printed = visit.desk().labels(*wish);
  if (!printed) return page_of(visit, asked, printed.error());
  return pdf_reply(printed->pdf, code.toLatin1() + '-' + printed->medium.toLatin1() + ".pdf");
}

}  // namespace lardiner::station
