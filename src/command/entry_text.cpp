// One entry of the ledger as a line of a report, and as JSON.
#include "command/entry_text.h"

#include <QJsonDocument>

#include "batch/phrases.h"
#include "command/date_text.h"
#include "history/event_json.h"

namespace lardiner::command {

namespace {

using history::Event;

// An entry that was written down long after it happened says so.
constexpr int kLateSeconds = 3600;

void add(QStringList& parts, const QString& word, const QString& value) {
  if (!value.isEmpty()) parts << (word.isEmpty() ? value : word + u' ' + value);
}

QStringList details(const Event& event) {
  QStringList parts;
  if (!event.containers.empty())
    parts << QStringLiteral("container%1 %2")
                 .arg(event.containers.size() == 1 ? QString() : QStringLiteral("s"), numbers(event.containers));
  if (event.temperature) parts << batch::reading_text(*event.temperature);
  if (event.left_percent) parts << QStringLiteral("%1 % left").arg(*event.left_percent);
  add(parts, QStringLiteral("to"), event.site);
  add(parts, QStringLiteral("order"), event.order);
  add(parts, QStringLiteral("note"), event.note);
  add(parts, QString(), event.place);
  add(parts, QStringLiteral("from"), event.from);
  add(parts, QString(), event.what);
  add(parts, QStringLiteral("on"), event.medium);
  add(parts, QStringLiteral("by the printer"), event.printer);
  if (event.kind == history::Kind::PrintDone) parts << QStringLiteral("%1 came out").arg(event.count);
  add(parts, QStringLiteral("adds"), event.adds.join(QStringLiteral(", ")));
  add(parts, QStringLiteral("of entry"), event.of.valid() ? event.of.text() : QString());
  if (!event.accepted) parts << QStringLiteral("NOT ACCEPTED");
  if (event.kind == history::Kind::Check)
    parts << (event.in_order ? QStringLiteral("in order") : QStringLiteral("NOT IN ORDER"));
  add(parts, QString(), event.action);
  add(parts, QString(), event.reason);
  return parts;
}

}  // namespace

QString entry_line(const history::Entry& entry, const QTimeZone& zone) {
  const Event& event = entry.event;
  QStringList parts{history::word(event.kind)};
  add(parts, QStringLiteral("lot"), event.lot);
  parts += details(event);
  add(parts, QString(), event.by);
  if (event.at.secsTo(entry.recorded_at) > kLateSeconds)
    parts << QStringLiteral("recorded %1").arg(moment(entry.recorded_at, false, zone));
  return QStringLiteral("%1  %2  %3")
      .arg(entry.id.text(), moment(event.at, false, zone), parts.join(QStringLiteral(", ")));
}

QJsonObject entry_json(const history::Entry& entry, const QTimeZone& zone) {
  history::Entry brief = entry;
  brief.event.made.reset();
  QJsonObject out = QJsonDocument::fromJson(history::body(brief)).object();
  out.insert(QStringLiteral("entry"), entry.id.text());
  out.insert(QStringLiteral("local"), entry.event.at.toTimeZone(zone).toString(Qt::ISODate));
  return out;
}

}  // namespace lardiner::command
