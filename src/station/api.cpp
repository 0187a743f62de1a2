// The same actions for programs, as JSON.
#include "station/api.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "reader/read.h"
#include "station/print_api.h"
#include "station/rows.h"
#include "station/today_page.h"

namespace lardiner::station {

using problem::Code;
using problem::Errors;

namespace {

// Every answer says that the clock is wrong, as every page does.
QJsonObject with_clock(const Visit& visit, QJsonObject object) {
  if (const auto& last = visit.desk().recorded_after())
    object.insert(QStringLiteral("clock_behind"),
                  QJsonObject{{QStringLiteral("clock"), visit.desk().now().toUTC().toString(Qt::ISODate)},
                              {QStringLiteral("last_entry"), last->toUTC().toString(Qt::ISODate)}});
  return object;
}

Reply session(const Visit& visit) {
  if (!visit.signed_in()) return api_sign_in_first();
  QJsonObject object{{QStringLiteral("who"), visit.who().initials},
                     {QStringLiteral("csrf"), QString::fromLatin1(visit.who().csrf)},
                     {QStringLiteral("strong"), visit.who().strong}};
  if (const auto& fault = visit.desk().book_fault()) object.insert(QStringLiteral("book_fault"), problem::text(*fault));
  return api_reply(200, with_clock(visit, object));
}

Reply due(const Visit& visit) {
  const auto found = visit.desk().due_as_json(kDaysAhead);
  return found ? api_reply(200, with_clock(visit, *found)) : api_problems(500, {found.error()});
}

Reply lot_told(const Visit& visit, const QString& code) {
  if (!visit.signed_in()) return api_sign_in_first();
  std::vector<ledger::LotName> found = visit.desk().ledger().lots().named(code);
  const QString item = visit.request().query.value(QStringLiteral("item"));
  if (!item.isEmpty()) std::erase_if(found, [&](const ledger::LotName& one) { return one.item != item; });
  if (found.empty()) return api_problem(404, visit.desk().open(code, {}).what);
  if (found.size() > 1) return api_problem(409, QStringLiteral("several items have this lot: name one with ?item="));
  const auto told = visit.desk().lot_as_json(found.front());
  return told ? api_reply(200, with_clock(visit, *told)) : api_problems(500, {told.error()});
}

Reply record(const Visit& visit) {
  const auto rows = reader::read_json_lines(visit.request().body, QStringLiteral("body"));
  if (!rows) return api_problems(400, rows.error());
  if (rows->empty()) return api_problem(400, QStringLiteral("there is no row in the body: a JSON object a line"));
  std::vector<reader::Value> signed_rows = *rows;
  for (reader::Value& row : signed_rows) {
    if (needs_strong_word(row) && !visit.who().strong) return api_problem(403, visit.word("page.stronger"));
    const reader::Value* by = row.find(u"by");
    if (by && by->text.trimmed() != visit.who().initials)
      return api_problem(
          403, QStringLiteral("\"by\" is who is signed in: leave it out, or write %1").arg(visit.who().initials));
    if (!by) add(row, QStringLiteral("by"), visit.who().initials);
  }
  const auto recorded = visit.desk().record(signed_rows);
  if (!recorded) return api_problems(status_of(recorded.error()), recorded.error());
  return api_reply(201, QJsonObject{{QStringLiteral("entries"), QJsonArray::fromStringList(recorded->entries)},
                                    {QStringLiteral("warnings"), QJsonArray::fromStringList(recorded->warnings)}});
}

}  // namespace

Reply api_reply(int status, const QJsonObject& object) {
  Reply reply;
  reply.status = status;
  reply.type = "application/json";
  reply.body = QJsonDocument(object).toJson(QJsonDocument::Compact);
  return reply;
}

Reply api_problems(int status, const Errors& errors) {
  QJsonArray all;
  for (const problem::Error& error : errors)
    all.append(QJsonObject{{QStringLiteral("what"), error.what}, {QStringLiteral("hint"), error.hint}});
  return api_reply(status, QJsonObject{{QStringLiteral("problems"), all}});
}

Reply api_sign_in_first() {
  return api_problem(401, QStringLiteral("nobody is signed in: POST /sign-in, and send its cookie"));
}

Reply api_problem(int status, const QString& what) { return api_problems(status, {{Code::Unknown, what, {}, {}}}); }

Reply api(const Visit& visit) {
  const QString& path = visit.request().path;
  if (const auto reply = print_api(visit)) return *reply;
  const bool post = visit.request().method == Request::Method::Post;
  if (post)
    return path == QLatin1String("/api/records") ? record(visit) : api_problem(404, QStringLiteral("no such path"));
  if (path == QLatin1String("/api/session")) return session(visit);
  if (path == QLatin1String("/api/due")) return due(visit);
  if (const auto code = rest_after(path, QStringLiteral("/api/lots/"))) return lot_told(visit, *code);
  return api_problem(404, QStringLiteral("no such path"));
}

}  // namespace lardiner::station
