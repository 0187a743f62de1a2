// Printers and prints for programs, as JSON.
#include "station/print_api.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "station/api.h"
#include "station/container_numbers.h"

namespace lardiner::station {

namespace {

QString state_word(const PrintShown& print) {
  static const char* const kWords[] = {"waiting", "no-medium", "silent", "printing", "stopped", "ended", "lost"};
  if (!print.standing) return QStringLiteral("done");
  return QString::fromLatin1(kWords[static_cast<size_t>(print.standing->state)]);
}

QJsonObject json_of(const PrintShown& print) {
  QJsonArray containers;
  for (const int number : print.containers) containers.append(number);
  QJsonObject out{{QStringLiteral("print"), print.id},          {QStringLiteral("lot"), print.lot},
                  {QStringLiteral("item"), print.item},         {QStringLiteral("containers"), containers},
                  {QStringLiteral("printer"), print.printer},   {QStringLiteral("medium"), print.medium},
                  {QStringLiteral("copies"), print.copies},     {QStringLiteral("by"), print.by},
                  {QStringLiteral("state"), state_word(print)}, {QStringLiteral("sent"), print.sent}};
  if (print.standing) {
    out.insert(QStringLiteral("reasons"), QJsonArray::fromStringList(print.standing->reasons));
    out.insert(QStringLiteral("why"), print.standing->text);
    if (print.standing->done) out.insert(QStringLiteral("pages_done"), *print.standing->done);
  } else {
    out.insert(QStringLiteral("came_out"), print.came_out);
    out.insert(QStringLiteral("why"), print.reason);
  }
  return out;
}

Reply printers(const Visit& visit) {
  const auto all = visit.desk().printers();
  if (!all) return api_problems(500, {all.error()});
  QJsonArray list;
  for (const PrinterShown& one : *all)
    list.append(QJsonObject{{QStringLiteral("printer"), one.name}, {QStringLiteral("medium"), one.medium}});
  return api_reply(200, QJsonObject{{QStringLiteral("printers"), list}});
}

Reply open_prints(const Visit& visit) {
  const auto all = visit.desk().open_prints();
  if (!all) return api_problems(500, {all.error()});
  QJsonArray list;
  for (const PrintShown& one : *all) list.append(json_of(one));
  return api_reply(200, QJsonObject{{QStringLiteral("prints"), list}});
}

Reply print(const Visit& visit, const QString& id) {
  const auto found = visit.desk().print(id);
  if (!found) return api_problems(500, {found.error()});
  return *found ? api_reply(200, json_of(**found)) : api_problem(404, QStringLiteral("there is no such print"));
}

// Nothing where the body is no JSON object.
std::optional<QJsonObject> body_of(const Visit& visit) {
  const QJsonDocument document = QJsonDocument::fromJson(visit.request().body);
  return document.isObject() ? std::optional(document.object()) : std::nullopt;
}

Reply no_object() { return api_problem(400, QStringLiteral("the body is no JSON object")); }

Reply ask(const Visit& visit) {
  const auto body = body_of(visit);
  if (!body) return no_object();
  const auto text = [&](const char* key) { return body->value(QLatin1String(key)).toString(); };
  const auto containers = container_numbers({text("containers")});
  if (!containers) return api_problems(422, {containers.error()});
  const ToPrint wish{text("lot"), *containers, text("medium"), visit.who().initials,
                     body->value(QStringLiteral("hold")).toBool()};
  const auto asked = visit.desk().ask_print(wish, text("printer"), body->value(QStringLiteral("copies")).toInt(1));
  if (!asked) return api_problems(422, asked.error());
  return api_reply(201, QJsonObject{{QStringLiteral("print"), *asked}});
}

// How many were good has to be said: there is no safe guess.
Reply end(const Visit& visit, const QString& id) {
  const auto body = body_of(visit);
  if (!body) return no_object();
  const QJsonValue good = body->value(QStringLiteral("good"));
  if (!good.isDouble()) return api_problem(400, QStringLiteral("\"good\" is missing: how many labels came out well"));
  const auto next =
      visit.desk().end_print({id, good.toInt(-1), body->value(QStringLiteral("again")).toBool(), visit.who().initials});
  if (!next) return api_problems(422, next.error());
  return api_reply(200, QJsonObject{{QStringLiteral("print"), next->isEmpty() ? id : *next}});
}

}  // namespace

std::optional<Reply> print_api(const Visit& visit) {
  const QString& path = visit.request().path;
  const bool post = visit.request().method == Request::Method::Post;
  const auto id = rest_after(path, QStringLiteral("/api/prints/"));
  if (!id && path != QLatin1String("/api/prints") && path != QLatin1String("/api/printers")) return std::nullopt;
  if (post && path == QLatin1String("/api/printers")) return std::nullopt;
  if (!visit.signed_in()) return api_sign_in_first();
  if (post) return id ? end(visit, *id) : ask(visit);
  if (path == QLatin1String("/api/printers")) return printers(visit);
  return id ? print(visit, *id) : open_prints(visit);
}

}  // namespace lardiner::station
