// What is due, as JSON.
#include "command/due_json.h"

#include <QJsonArray>

#include "command/lot_called.h"

namespace lardiner::command {

using ledger::Due;

namespace {

const char* word(Due::What what) {
  static const char* const kWords[] = {"cooling", "running", "past", "today", "use-first", "relabel"};
  return kWords[static_cast<int>(what)];
}

QJsonObject json_of(const LedgerRun& run, const Due& due) {
  QJsonArray containers;
  for (const int number : due.containers) containers.append(number);
  QJsonObject out{{QStringLiteral("what"), QLatin1String(word(due.what))},
                  {QStringLiteral("item"), due.lot.item},
                  {QStringLiteral("name"), item_name(run.book, due.lot)},
                  {QStringLiteral("lot"), due.lot.code},
                  {QStringLiteral("containers"), containers},
                  {QStringLiteral("kind"), due.kind},
                  {QStringLiteral("place"), due.place},
                  {QStringLiteral("frozen"), due.frozen},
                  {QStringLiteral("held"), due.held}};
  if (due.ends.isValid()) out.insert(QStringLiteral("ends"), due.ends.toTimeZone(run.zone()).toString(Qt::ISODate));
  return out;
}

}  // namespace

QJsonObject due_json(const LedgerRun& run, const std::vector<Due>& all) {
  QJsonArray rows;
  for (const Due& due : all) rows.append(json_of(run, due));
  return {{QStringLiteral("due"), rows}};
}

}  // namespace lardiner::command
