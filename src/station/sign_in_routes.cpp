// Signing in: a name is picked, a PIN typed. A form that came after its session had ended goes along, and is sent
// again.
#include <QUrl>

#include "station/visit.h"

namespace lardiner::station {

namespace {

const QString kKept = QStringLiteral("kept.");        // and the name of a field of a form that was not taken
const QString kKeptFor = QStringLiteral("kept_for");  // where it is sent

Part form(const Visit& visit, const QString& name, const QString& to) {
  Part part;
  part.set("NAME", name).set("BACK", own_address(to));
  for (const book::Person& person : visit.desk().book().people)
    part.add("PERSON").set("INITIALS", person.initials).set("PERSON_NAME", person.name);
  if (!name.isEmpty()) part.add("PIN").add("NAMED");
  return part;
}

// With a form that waits until somebody is signed in: the name is picked in the same form as the PIN.
Part form_with_kept(const Visit& visit, const QString& name, const QString& kept_for, const Fields& kept) {
  Part part;
  part.set("NAME", name).set("BACK", QStringLiteral("/"));
  Part& pin = part.add("PIN");
  Part& pick = pin.add("PICK");
  for (const book::Person& person : visit.desk().book().people)
    pick.add("ANYBODY")
        .set("INITIALS", person.initials)
        .set("PERSON_NAME", person.name)
        .set("CHOSEN", person.initials == name ? QStringLiteral("selected") : QString());
  pin.add("KEPT").set("KEY", kKeptFor).set("VALUE", kept_for);
  for (const auto& [field, value] : kept.all()) pin.add("KEPT").set("KEY", kKept + field).set("VALUE", value);
  return part;
}

// What a form that came along says, but for the token of the session that ended.
Fields kept_fields(const Fields& form) {
  Fields kept;
  for (const auto& [field, value] : form.all())
    if (field.startsWith(kKept) && field != kKept + QStringLiteral("csrf")) kept.add(field.mid(kKept.size()), value);
  return kept;
}

QByteArray cookie(const Visit& visit, const QByteArray& token) {
  QByteArray value = "session=" + token + "; Path=/; HttpOnly; SameSite=Strict";
  if (visit.request().secure) value += "; Secure";
  return value;
}

QString why(const Visit& visit, const Refusal& refusal) {
  if (refusal.why == Refusal::Why::Failed && refusal.error) return problem::text(*refusal.error);
  if (refusal.why != Refusal::Why::Locked || !refusal.locked_until.isValid()) return visit.word("page.wrong_pin");
  const QDateTime until = refusal.locked_until.toTimeZone(visit.desk().book().kitchen.zone).addSecs(59);
  return visit.language().sentence(QStringLiteral("page.locked"), {visit.language().time(until.time())});
}

Reply not_let_in(const Visit& visit, const QString& name, const Refusal& refusal) {
  const QString kept_for = visit.field(kKeptFor);
  Part part = kept_for.isEmpty() ? form(visit, name, visit.field("back"))
                                 : form_with_kept(visit, name, kept_for, kept_fields(visit.request().form));
  part.add("WRONG").set("TEXT", why(visit, refusal));
  return visit.page(QStringLiteral("sign_in"), visit.word("page.sign_in"), std::move(part), 403);
}

// The form is shown to who is signed in now, and sent again by them: it is theirs.
Reply ask_again(const Visit& visit, const QByteArray& token) {
  Request request = visit.request();
  request.session = QString::fromLatin1(token);
  const Visit inside(visit.shop(), visit.desk(), request);
  Part part;
  part.set("WHERE", own_address(visit.field(kKeptFor)));
  const Fields kept = kept_fields(request.form);
  for (const auto& [field, value] : kept.all()) {
    part.add("KEPT").set("KEY", field).set("VALUE", value);
    if (!value.isEmpty() && field != QLatin1String("step")) part.add("SAID").set("KEY", field).set("VALUE", value);
  }
  return inside.page(QStringLiteral("again"), visit.word("page.record"), std::move(part));
}

}  // namespace

Reply sign_in_first(const Visit& visit) {
  if (!visit.request().uploads.empty()) return visit.message(401, "page.sign_in_first");
  Fields kept;
  for (const auto& [field, value] : visit.request().form.all())
    if (field != QLatin1String("csrf")) kept.add(field, value);
  Part part = form_with_kept(visit, {}, QString::fromLatin1(visit.request().address), kept);
  part.add("WRONG").set("TEXT", visit.word("page.sign_in_first"));
  return visit.page(QStringLiteral("sign_in"), visit.word("page.sign_in"), std::move(part), 401);
}

Reply sign_in_page(const Visit& visit) {
  const Fields& query = visit.request().query;
  return visit.page(QStringLiteral("sign_in"), visit.word("page.sign_in"),
                    form(visit, query.value(QStringLiteral("name")), query.value(QStringLiteral("back"))));
}

// The strong word, where it is typed, makes the new session strong at once.
Reply sign_in(const Visit& visit) {
  const Fields& form = visit.request().form;
  const QString name = form.value(QStringLiteral("name")).left(kMostInitials);
  const QDateTime now = visit.desk().now();
  SignIn& door = visit.shop().sign_in;
  const auto begun = door.begin(name, form.value(QStringLiteral("pin")), now, visit.request().session.toLatin1());
  if (!begun) return not_let_in(visit, name, begun.error());
  if (!is_of_kitchen(visit.desk().book(), name)) {
    door.end(begun->token);
    return not_let_in(visit, name, {});
  }
  if (const QString word = form.value(QStringLiteral("strong")); !word.isEmpty()) {
    const auto strong = door.strengthen(begun->token, word, now);
    if (!strong) {
      door.end(begun->token);
      return not_let_in(visit, name, strong.error());
    }
  }
  Reply reply = form.has(kKeptFor) ? ask_again(visit, begun->token)
                                   : redirection(own_address(form.value(QStringLiteral("back"))));
  reply.cookies << cookie(visit, begun->token);
  return reply;
}

Reply sign_out(const Visit& visit) {
  visit.shop().sign_in.end(visit.request().session.toLatin1());
  Reply reply = redirection(QStringLiteral("/"));
  reply.cookies << QByteArray("session=; Path=/; HttpOnly; SameSite=Strict; Max-Age=0");
  return reply;
}

}  // namespace lardiner::station
