// Whether the containers of a lot are good now, group by group, and whether a label still tells the truth.
#include "command/lot_standing.h"

#include <algorithm>

#include "command/date_text.h"
#include "command/scanned.h"
#include "facts/label_facts.h"
#include "gs1/dates.h"

namespace lardiner::command {

using history::Good;
using history::Holder;
using history::Lot;

namespace {

// A label's date as the day or time at which it is over; nothing where the attribute cannot be read.
std::optional<QDateTime> wall_end(const QString& attribute, const QDateTime& now) {
  const QString ai = attribute.section(u'=', 0, 0), value = attribute.section(u'=', 1);
  const int year = now.date().year();
  if (ai == QLatin1String("7003")) {
    const auto time = gs1::read_yymmddhhmm(value, year);
    return time ? std::optional(QDateTime(time->date, time->time, now.timeZone())) : std::nullopt;
  }
  const auto date = gs1::read_yymmdd(value, year, gs1::DayZero::LastOfMonth);
  return date ? std::optional(QDateTime(date->addDays(1), QTime(0, 0), now.timeZone())) : std::nullopt;
}

}  // namespace

QString verdict(Good::State state) {
  switch (state) {
    case Good::State::Good:
      return QStringLiteral("GOOD");
    case Good::State::Past:
      return QStringLiteral("PAST ITS DATE");
    case Good::State::NotReleased:
      return QStringLiteral("NOT RELEASED");
    case Good::State::Held:
      return QStringLiteral("ON HOLD");
    case Good::State::Recalled:
      return QStringLiteral("IN A RECALL");
    case Good::State::NoDate:
      return QStringLiteral("NO DATE IS KNOWN");
    case Good::State::Gone:
      return QStringLiteral("GONE");
  }
  return {};
}

QString present_end(const LedgerRun& run, const Lot& lot, int container) {
  if (!lot.made) return {};
  batch::Batch batch = lot.made->batch;
  for (size_t at = 0; at < batch.containers.size(); ++at) {
    if (batch.containers[at].number != container) continue;
    const auto uri = facts::code_uri(run.book.kitchen, batch, batch.containers[at]);
    return uri ? label_end(QString::fromLatin1(*uri)) : QString();
  }
  return {};
}

QString end_in_words(const QString& attribute, const QDateTime& now) {
  const QString ai = attribute.section(u'=', 0, 0);
  const auto end = wall_end(attribute, now);
  if (!end) return QStringLiteral("no date");
  if (ai == QLatin1String("7006")) return QStringLiteral("frozen on ") + day(end->date().addDays(-1));
  if (ai == QLatin1String("7003"))
    return QStringLiteral("use by ") + day(end->date()) + end->toString(QStringLiteral(" HH:mm"));
  const QString kind = ai == QLatin1String("15") ? QStringLiteral("best before ") : QStringLiteral("use by ");
  return kind + day(end->date().addDays(-1));
}

QString superseded(const LedgerRun& run, const Lot& lot, const Asked& asked) {
  if (!asked.scanned || !asked.container || !lot.made) return {};
  const auto holder = std::find_if(lot.holders.begin(), lot.holders.end(),
                                   [&](const Holder& one) { return one.number == *asked.container; });
  if (holder == lot.holders.end())
    return QStringLiteral("SUPERSEDED: the lot has no container %1").arg(*asked.container);
  const QString present = present_end(run, lot, *asked.container);
  if (asked.label_end == present && !holder->superseded) return {};
  const QDateTime now = run.now.toTimeZone(run.zone());
  QString out = QStringLiteral("SUPERSEDED: this label shows %1, and since then %2 holds")
                    .arg(end_in_words(asked.label_end, now), end_in_words(present, now));
  const auto shown = wall_end(asked.label_end, now), holds = wall_end(present, now);
  const bool dated = !asked.label_end.startsWith(QLatin1String("7006")) && !present.startsWith(QLatin1String("7006"));
  if (shown && holds && dated && *shown != *holds)
    out +=
        QStringLiteral("; the earlier counts: %1").arg(end_in_words(*shown < *holds ? asked.label_end : present, now));
  if (asked.label_end == present) out = QStringLiteral("SUPERSEDED: what has happened since makes this label untrue");
  return out + QStringLiteral("; it needs a new label");
}

}  // namespace lardiner::command
