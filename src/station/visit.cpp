// One request on its way to its page: the desk that serves it, the language, and who asks.
#include "station/visit.h"

#include <algorithm>

#include "station/page_words.h"

namespace lardiner::station {

namespace {

const words::Language* language_of(const Desk& desk, const QString& wanted) {
  const auto& all = desk.languages();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const words::Language& one) { return one.code() == wanted; });
  return found == all.end() ? &all.front() : &*found;
}

// As it stands in the query of other addresses: as it is, its own query would be theirs.
QString address_of(const Request& request) { return QString::fromLatin1(request.address.toPercentEncoding("/")); }

}  // namespace

Visit::Visit(const Shop& shop, Desk& desk, const Request& request)
    : shop_(shop), desk_(desk), request_(request), language_(language_of(desk, request.language)) {
  if (!request.session.isEmpty()) who_ = shop.sign_in.find(request.session.toLatin1(), desk.now());
  if (who_ && !is_of_kitchen(desk.book(), who_->initials)) who_.reset();
}

std::optional<ledger::LotName> Visit::lot_named(const QString& code) const {
  const Fields& from = request_.method == Request::Method::Post ? request_.form : request_.query;
  return desk_.ledger().lots().named(code, from.value(QStringLiteral("item")));
}

QString Visit::now_text() const {
  return desk_.now().toTimeZone(desk_.book().kitchen.zone).toString(QStringLiteral("yyyy-MM-dd HH:mm"));
}

QString Visit::name_of(const ledger::LotName& lot) const { return station::name_of(desk_.book(), *language_, lot); }

QString Visit::name_of(const QString& item) const { return station::name_of(desk_.book(), *language_, item); }

Reply Visit::page(const QString& name, const QString& title, Part part, int status) const {
  part.set("LANG", language_->tag()).set("TITLE", title).set("KITCHEN", desk_.book().kitchen.name);
  part.set("CSRF", who_ ? QString::fromLatin1(who_->csrf) : QString());
  part.set("HERE", address_of(request_));
  if (who_)
    part.add("IN").set("WHO", who_->initials);
  else
    part.add("OUT");
  add_notices(part);
  if (desk_.languages().size() > 1)
    for (const words::Language& one : desk_.languages())
      part.add("LANGUAGE").set("CODE", one.code()).set("ENDONYM", one.word(QStringLiteral("page.language")));
  Reply reply;
  reply.status = status;
  reply.body = shop_.pages.page(name, language_->code(), part);
  return reply;
}

// What is the matter with the station itself.
void Visit::add_notices(Part& part) const {
  const QTimeZone& zone = desk_.book().kitchen.zone;
  if (const auto& last = desk_.recorded_after())
    part.add("CLOCK_BEHIND")
        .set("TEXT", language_->sentence(QStringLiteral("page.clock_behind"),
                                         {language_->date_time(desk_.now().toTimeZone(zone)),
                                          language_->date_time(last->toTimeZone(zone))}));
  if (const auto& fault = desk_.book_fault(); fault && who_)
    part.add("BOOK_FAULT").set("WHAT", problem::text(*fault).section(u'\n', 0, 0)).set("HINT", fault->hint);
}

Reply Visit::trouble(int status, const problem::Errors& errors) const {
  Part part;
  part.set("HEADING", word("page.not_done"));
  add_problems(part, errors);
  return page(QStringLiteral("message"), word("page.not_done"), std::move(part), status);
}

Reply Visit::message(int status, const char* key) const {
  Part part;
  part.set("HEADING", word(key));
  const bool to_sign_in = status == 401 || QLatin1String(key) == QLatin1String("page.stronger");
  const bool is_form = request_.method == Request::Method::Post;  // that no address leads back to
  if (to_sign_in) part.add("SIGN_IN").set("BACK", is_form ? QStringLiteral("/") : address_of(request_));
  return page(QStringLiteral("message"), word(key), std::move(part), status);
}

bool is_of_kitchen(const book::Book& book, const QString& initials) {
  return std::any_of(book.people.begin(), book.people.end(),
                     [&](const book::Person& person) { return person.initials == initials; });
}

int status_of(const problem::Errors& errors) {
  const bool failed = std::any_of(errors.begin(), errors.end(),
                                  [](const problem::Error& error) { return error.code == problem::Code::Machine; });
  return errors.empty() ? 200 : failed ? 503 : 422;
}

void add_recorded(const Visit& visit, Part& part, const Recorded& recorded) {
  for (const QString& warning : recorded.warnings) part.add("WARNING").set("TEXT", warning);
  for (const QString& entry : recorded.entries) part.add("RECORDED").set("ENTRY", entry);
  for (const ledger::LotName& lot : recorded.concerned)
    part.add("CONCERNED").set("LOT_CODE", lot.code).set("LOT_ITEM", lot.item).set("LOT_NAME", visit.name_of(lot));
}

void add_problems(Part& part, const problem::Errors& errors) {
  for (const problem::Error& error : errors) part.add("PROBLEM").set("WHAT", error.what).set("HINT", error.hint);
}

std::optional<QString> rest_after(const QString& path, const QString& prefix) {
  if (!path.startsWith(prefix)) return std::nullopt;
  const QString rest = path.mid(prefix.size());
  return rest.isEmpty() ? std::nullopt : std::optional(rest);
}

}  // namespace lardiner::station
