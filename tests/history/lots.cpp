// All that a lot says as one text, and a check that a refusal leaves it alone.
#include "lots.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "batch/fixed_json.h"

namespace lardiner::history::lots {

namespace {

QString text(const QDateTime& instant) {
  return instant.isValid() ? instant.toUTC().toString(Qt::ISODateWithMs) : QString();
}

QString text(const batch::UseBy& use_by) {
  return QStringLiteral("%1/%2/%3/%4/%5/%6")
      .arg(static_cast<int>(use_by.form))
      .arg(text(use_by.end), use_by.date.toString(Qt::ISODate))
      .arg(use_by.days_left)
      .arg(use_by.never_past ? use_by.never_past->toString(Qt::ISODate) : QString())
      .arg(use_by.reasons.size());
}

QString text(const Holder& holder) {
  return QStringList{QString::number(holder.number),
                     holder.serial,
                     holder.kind,
                     QString::number(holder.holds.amount),
                     QString::number(holder.left.amount),
                     word(holder.where),
                     holder.place,
                     holder.site,
                     holder.order,
                     holder.note,
                     text(holder.dispatched),
                     text(holder.arrived),
                     QString::number(holder.frozen * 4 + holder.thawed * 2 + holder.opened),
                     text(holder.seen),
                     holder.label.text(),
                     holder.label_end,
                     QString::number(holder.superseded + 2 * holder.held_alone + 4 * holder.hold_label)}
      .join(u'|');
}

QString text(const batch::Fixed& fixed) {
  QStringList parts;
  for (const batch::Container& container : fixed.batch.containers)
    parts += QStringLiteral("%1 %2 %3 %4")
                 .arg(container.number)
                 .arg(container.serial)
                 .arg(container.use_by)
                 .arg(container.discarded);
  for (const batch::UseBy& use_by : fixed.batch.use_bys) parts += text(use_by);
  for (const batch::UseBy& use_by : fixed.withheld) parts += text(use_by);
  for (const batch::Question& question : fixed.questions) parts += QString::number(question.timeline.size());
  for (const int of : fixed.question_of) parts += QString::number(of);
  for (const problem::Error& error : fixed.batch.refused) parts += problem::text(error);
  parts += QString::number(fixed.batch.record.events.size());
  parts += QString::number(fixed.batch.record.cooled.size());
  parts += QString::number(fixed.batch.record.containers.size());
  parts += fixed.batch.record.corrective_action + fixed.batch.cooling.why;
  return parts.join(u'\n');
}

}  // namespace

QString whole(const Lot& lot) {
  QStringList parts{lot.code,
                    lot.item,
                    lot.supplier_item,
                    lot.entry.text(),
                    text(lot.began),
                    QString::number(lot.quantity.amount),
                    QString::number(lot.used.amount),
                    lot.further_allergens.join(u',')};
  if (lot.made) parts += text(*lot.made);
  if (lot.received) parts += lot.received->stated ? text(lot.received->stated->end) : QString();
  for (const Holder& holder : lot.holders) parts += text(holder);
  for (const HoldOn& hold : lot.holds)
    parts += hold.entry.text() + hold.reason + hold.by + hold.place + text(hold.since);
  for (const EntryId& recall : lot.recalls) parts += recall.text();
  if (lot.not_after) parts += text(lot.not_after->end);
  return parts.join(u'\n');
}

QString told(Lot& lot, const Entry& entry) {
  const QString before = whole(lot);
  const problem::Errors errors = happen(lot, entry);
  if (!errors.empty()) CHECK(whole(lot) == before);
  QString text = problem::text(errors);
  while (text.endsWith(u'\n')) text.chop(1);
  return text;
}

QString told(Lot& lot, const Event& event) { return told(lot, entry(event)); }

}  // namespace lardiner::history::lots
