// The kitchen's sheets on a page and as PDF: prep and assembly sheets, the record of a day with its review, a dispatch
// note with what became of it.
#include <QUrlQuery>

#include "ledger/dispatches.h"
#include "ledger/entries.h"
#include "station/rows.h"
#include "station/sheet_part.h"
#include "station/visit.h"

namespace lardiner::station {

using problem::Errors;

namespace {

Reply pdf_file(const Visit& visit, const problem::ExpectedAll<QByteArray>& pdf, const QByteArray& name) {
  if (!pdf) return visit.trouble(status_of(pdf.error()), pdf.error());
  return pdf_reply(*pdf, name + ".pdf");
}

Reply pdf_of(const Visit& visit, const SheetWish& wish, const QByteArray& name) {
  return pdf_file(visit, visit.desk().sheet_pdf(wish), name);
}

bool wants_pdf(const Visit& visit) { return !visit.request().query.value("pdf").isEmpty(); }

// The sheet with the address of its PDF; where it cannot be made, why.
Errors add_made(const Visit& visit, Part& page, const SheetWish& wish, const QString& pdf) {
  const auto sheet = visit.desk().sheet(wish, visit.language());
  if (!sheet) return sheet.error();
  const bool to_sign = wish.kind == SheetWish::Kind::DispatchNote;
  add_sheet(page, *sheet, to_sign ? ForPaper::Row : ForPaper::Cell);
  page.add("PDF").set("HERE_PLAIN", pdf);
  return {};
}

Reply day_of(const Visit& visit, QDate day, const Errors& refused, const Recorded& recorded) {
  const QString text = day.toString(Qt::ISODate);
  Part page;
  page.set("HEADING", visit.word("page.day_record")).set("OF", visit.language().date(day));
  page.add("ASK_DAY").set("DAY", text);
  add_recorded(visit, page, recorded);
  SheetWish wish;
  wish.kind = SheetWish::Kind::DayRecord;
  wish.day = day;
  Errors errors = add_made(visit, page, wish, QStringLiteral("/day/%1?pdf=yes").arg(text));
  if (errors.empty())
    page.add("REVIEW")
        .set("DAY", text)
        .set("TYPED_NOTE", refused.empty() ? QString() : visit.request().form.value("note"));
  errors.insert(errors.end(), refused.begin(), refused.end());
  add_problems(page, errors);
  return visit.page(QStringLiteral("sheet"), visit.word("page.day_record"), std::move(page), status_of(errors));
}

Reply note_of(const Visit& visit, const QString& number, const Errors& refused, const Recorded& recorded) {
  const Fields form = refused.empty() ? Fields() : visit.request().form;
  Part page;
  page.set("HEADING", visit.word("page.dispatch")).set("OF", number);
  add_recorded(visit, page, recorded);
  SheetWish wish;
  wish.kind = SheetWish::Kind::DispatchNote;
  wish.note = number;
  const QString pdf = QStringLiteral("/note/%1?pdf=yes").arg(QString::fromLatin1(QUrl::toPercentEncoding(number)));
  // Of what came back, or is held since, the note cannot be printed again.
  const Errors not_made = add_made(visit, page, wish, pdf);
  if (!not_made.empty() && not_made.front().code == problem::Code::Unknown) return visit.trouble(404, not_made);
  for (const problem::Error& error : not_made) page.add("WARNING").set("TEXT", error.what);
  Part& way = page.add("ON_ITS_WAY");
  const QString typed = form.value("at");
  way.set("OF", number).set("AT", typed.isEmpty() ? visit.now_text() : typed);
  way.set("TYPED_LOT", form.value("lot")).set("TYPED_CONTAINERS", form.value("containers"));
  way.set("TYPED_TEMPERATURE", form.value("temperature")).set("TYPED_REASON", form.value("reason"));
  const auto checked = [&](const char* value) {
    return form.value("accepted") == QLatin1String(value) ? QStringLiteral("checked") : QString();
  };
  way.set("YES", checked("yes")).set("NO", checked("no"));
  add_problems(page, refused);
  return visit.page(QStringLiteral("sheet"), visit.word("page.dispatch"), std::move(page), status_of(refused));
}

// Where a note went: everything that left with it went to one site.
QString site_of(const Visit& visit, const QString& number) {
  ledger::Store& store = visit.desk().ledger().store();
  const auto left = ledger::loadings(store, number);
  if (!left || left->empty()) return {};
  const auto entry = ledger::entry_at(store, left->front().seq);
  return entry && *entry ? (*entry)->entry.event.site : QString();
}

}  // namespace

Reply sheets_page(const Visit& visit) {
  if (!visit.signed_in()) return visit.message(401, "page.sign_in_first");
  const Fields& query = visit.request().query;
  SheetWish wish;
  wish.kind = query.value("kind") == QLatin1String("assembly") ? SheetWish::Kind::Assembly : SheetWish::Kind::Prep;
  wish.product = query.value("product");
  wish.amount = query.value("amount").trimmed();
  wish.number = query.value("number").trimmed();
  if (wants_pdf(visit)) return pdf_of(visit, wish, "sheet");
  if (!query.value("plan").isEmpty()) return pdf_file(visit, visit.desk().plan_pdf(), "plan");
  Part page;
  page.set("HEADING", visit.word("page.sheets")).set("OF", QString());
  Part& ask = page.add("ASK_SHEET").set("AMOUNT", wish.amount).set("NUMBER", wish.number);
  for (const book::Product& product : visit.desk().book().products)
    ask.add("PRODUCT")
        .set("ID", product.id)
        .set("NAME", visit.name_of(product.id))
        .set("CHOSEN", product.id == wish.product ? QStringLiteral("selected") : QString());
  if (visit.desk().plan()) page.add("OF_ORDERS").set("PLAN", visit.language().word(QStringLiteral("sheet.plan")));
  Errors errors;
  if (!wish.product.isEmpty())
    errors = add_made(visit, page, wish, QString::fromUtf8(visit.request().address) + QStringLiteral("&pdf=yes"));
  add_problems(page, errors);
  return visit.page(QStringLiteral("sheet"), visit.word("page.sheets"), std::move(page), status_of(errors));
}

Reply day_chosen(const Visit& visit) {
  const QDate day = QDate::fromString(visit.request().query.value("day"), Qt::ISODate);
  const QDate today = visit.desk().now().toTimeZone(visit.desk().book().kitchen.zone).date();
  return redirection(QStringLiteral("/day/") + (day.isValid() ? day : today).toString(Qt::ISODate));
}

Reply day_page(const Visit& visit, const QString& text) {
  if (!visit.signed_in()) return visit.message(401, "page.sign_in_first");
  const QDate day = QDate::fromString(text, Qt::ISODate);
  if (!day.isValid()) return visit.message(404, "page.no_such_page");
  if (!wants_pdf(visit)) return day_of(visit, day, {}, {});
  SheetWish wish;
  wish.kind = SheetWish::Kind::DayRecord;
  wish.day = day;
  return pdf_of(visit, wish, "day-" + text.toLatin1());
}

Reply review_day(const Visit& visit, const QString& text) {
  const QDate day = QDate::fromString(text, Qt::ISODate);
  if (!day.isValid()) return visit.message(404, "page.no_such_page");
  reader::Value row = form_table();
  add(row, QStringLiteral("event"), QStringLiteral("review"));
  add(row, QStringLiteral("at"), visit.now_text());
  add(row, QStringLiteral("by"), visit.who().initials);
  add(row, QStringLiteral("day"), text);
  add(row, QStringLiteral("note"), visit.request().form.value("note"));
  const auto recorded = visit.desk().record({row});
  return recorded ? day_of(visit, day, {}, *recorded) : day_of(visit, day, recorded.error(), {});
}

Reply note_page(const Visit& visit, const QString& number) {
  if (!visit.signed_in()) return visit.message(401, "page.sign_in_first");
  if (!wants_pdf(visit)) return note_of(visit, number, {}, {});
  SheetWish wish;
  wish.kind = SheetWish::Kind::DispatchNote;
  wish.note = number;
  return pdf_of(visit, wish, "dispatch-note");
}

Reply note_recorded(const Visit& visit, const QString& number, const Recorded& recorded) {
  return note_of(visit, number, {}, recorded);
}

// What arrived, or came back, of what left with it.
Reply note_went(const Visit& visit, const QString& number) {
  const Fields& form = visit.request().form;
  const bool back = form.value("event") == QLatin1String("returned");
  reader::Value row = form_table();
  add(row, QStringLiteral("event"), back ? QStringLiteral("returned") : QStringLiteral("arrived"));
  for (const char* key : {"at", "lot", "containers", "temperature", "reason"})
    add(row, QString::fromLatin1(key), form.value(key));
  add(row, QStringLiteral("by"), visit.who().initials);
  add(row, QStringLiteral("note"), number);
  if (back) add(row, QStringLiteral("site"), site_of(visit, number));
  if (!back) add(row, QStringLiteral("accepted"), form.value("accepted"));
  if (needs_strong_word(row) && !visit.who().strong) return visit.message(403, "page.stronger");
  const auto recorded = visit.desk().record({row});
  return recorded ? note_of(visit, number, {}, *recorded) : note_of(visit, number, recorded.error(), {});
}

}  // namespace lardiner::station
