// Signing in: a name is picked, a PIN typed.
#include <QUrl>

#include "station/visit.h"

namespace lardiner::station {

namespace {

Part form(const Visit& visit, const QString& name, const QString& to) {
  Part part;
  part.set("NAME", name).set("BACK", own_address(to));
  for (const book::Person& person : visit.desk().book().people)
    part.add("PERSON").set("INITIALS", person.initials).set("PERSON_NAME", person.name);
  if (!name.isEmpty()) part.add("PIN");
  return part;
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
  Part part = form(visit, name, visit.request().form.value(QStringLiteral("back")));
  part.add("WRONG").set("TEXT", why(visit, refusal));
  return visit.page(QStringLiteral("sign_in"), visit.word("page.sign_in"), std::move(part), 403);
}

}  // namespace

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
  Reply reply = redirection(own_address(form.value(QStringLiteral("back"))));
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
