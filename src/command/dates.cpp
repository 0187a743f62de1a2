// lardiner dates: the use-by of each batch, the rule that decided, the ones that lost, and their authority.
#include <QJsonArray>
#include <QJsonObject>

#include "batch/clock.h"
#include "command/commands.h"
#include "command/output.h"

namespace lardiner::command {

namespace {

// Reports are English, whatever the labels speak: Tue 01 Dec 2026.
QString day(QDate date) {
  return QLocale(QLocale::English, QLocale::UnitedKingdom).toString(date, QStringLiteral("ddd dd MMM yyyy"));
}

QString moment(const QDateTime& instant, bool is_date, const QTimeZone& zone) {
  const QDateTime local = instant.toTimeZone(zone);
  if (is_date) return day(local.addSecs(-1).date());  // the last instant that is still good
  const QString time = day(local.date()) + local.toString(QStringLiteral(" HH:mm"));
  return batch::shows_twice(instant, zone) ? time + u' ' + batch::offset_text(local.offsetFromUtc()) : time;
}

QString kind(book::EndKind kind) {
  return kind == book::EndKind::UseBy ? QStringLiteral("use by") : QStringLiteral("best before");
}

QString headline(const batch::UseBy& use_by, const QTimeZone& zone) {
  switch (use_by.form) {
    case batch::UseBy::Form::Date:
      return kind(use_by.kind) + u' ' + day(use_by.date);
    case batch::UseBy::Form::Instant:
      return kind(use_by.kind) + u' ' + moment(use_by.end, false, zone);
    case batch::UseBy::Form::Frozen: {
      QString text = QStringLiteral("frozen %1").arg(day(*use_by.frozen_on));
      if (use_by.days_left > 0)
        text += QStringLiteral(", %1 %2 left after thawing")
                    .arg(use_by.days_left)
                    .arg(use_by.days_left == 1 ? QStringLiteral("day") : QStringLiteral("days"));
      if (use_by.frozen_best_before) text += QStringLiteral(", best before %1").arg(day(*use_by.frozen_best_before));
      if (use_by.never_past) text += QStringLiteral(", never past %1").arg(day(*use_by.never_past));
      return text;
    }
    case batch::UseBy::Form::None:
      return QStringLiteral("no date");
  }
  return {};
}

// "1-12, 14"
QString numbers(const std::vector<int>& sorted) {
  QStringList parts;
  for (size_t i = 0; i < sorted.size();) {
    size_t last = i;
    while (last + 1 < sorted.size() && sorted[last + 1] == sorted[last] + 1) ++last;
    parts << (last == i ? QString::number(sorted[i]) : QStringLiteral("%1-%2").arg(sorted[i]).arg(sorted[last]));
    i = last + 1;
  }
  return parts.join(QStringLiteral(", "));
}

std::vector<int> containers_of(const batch::Batch& batch, size_t use_by) {
  std::vector<int> out;
  for (const batch::Container& container : batch.containers)
    if (static_cast<size_t>(container.use_by) == use_by && !container.discarded) out.push_back(container.number);
  return out;
}

QString reason_line(const batch::Reason& reason, const QTimeZone& zone) {
  QString line = QStringLiteral("    %1 %2  %3")
                     .arg(reason.decided ? QStringLiteral("decided") : QStringLiteral("   lost"),
                          moment(reason.end, reason.is_date, zone), reason.rule);
  if (!reason.authority.isEmpty()) line += QStringLiteral(" [%1]").arg(reason.authority);
  return line + u'\n';
}

// A batch from a pad, or one entered more than a day after its making, says when it was entered.
bool entered_later(const batch::Record& record) {
  return record.pad_day || (record.recorded_at && *record.recorded_at > record.made_at.addDays(1));
}

QString entry(const batch::Record& record, const QTimeZone& zone) {
  if (!entered_later(record)) return {};
  const QString pad = record.pad_day ? QStringLiteral(", on a pad of ") + day(*record.pad_day) : QString();
  return pad + QStringLiteral(", recorded ") + moment(*record.recorded_at, false, zone);
}

// As it is known: the day alone, where no time was written.
QString made(const batch::Record& record, const QTimeZone& zone) {
  return record.time_known ? moment(record.made_at, false, zone) : day(batch::local_day(record.made_at, zone));
}

QString text(const book::Book& book, const batch::Batch& batch) {
  QString out = QStringLiteral("%1  %2, made %3%4\n")
                    .arg(batch.lot, batch.record.item, made(batch.record, book.kitchen.zone),
                         entry(batch.record, book.kitchen.zone));
  for (size_t i = 0; i < batch.use_bys.size(); ++i) {
    const std::vector<int> of = containers_of(batch, i);
    if (of.empty()) continue;
    out += QStringLiteral("  containers %1: %2\n").arg(numbers(of), headline(batch.use_bys[i], book.kitchen.zone));
    for (const batch::Reason& reason : batch.use_bys[i].reasons) out += reason_line(reason, book.kitchen.zone);
    for (const QString& warning : batch.use_bys[i].warnings) out += QStringLiteral("    warning: %1\n").arg(warning);
  }
  return out;
}

QJsonObject reason_json(const batch::Reason& reason, const QTimeZone& zone) {
  return {{QStringLiteral("decided"), reason.decided},
          {QStringLiteral("kind"), kind(reason.kind)},
          {QStringLiteral("rule"), reason.rule},
          {QStringLiteral("authority"), reason.authority},
          {QStringLiteral("end"), reason.end.toTimeZone(zone).toString(Qt::ISODate)}};
}

QString form(batch::UseBy::Form form) {
  switch (form) {
    case batch::UseBy::Form::Date:
      return QStringLiteral("date");
    case batch::UseBy::Form::Instant:
      return QStringLiteral("time");
    case batch::UseBy::Form::Frozen:
      return QStringLiteral("frozen");
    case batch::UseBy::Form::None:
      return QStringLiteral("none");
  }
  return {};
}

QJsonObject use_by_json(const batch::UseBy& use_by, const std::vector<int>& containers, const QTimeZone& zone) {
  QJsonArray of, reasons, warnings;
  for (const int number : containers) of.append(number);
  for (const batch::Reason& reason : use_by.reasons) reasons.append(reason_json(reason, zone));
  for (const QString& warning : use_by.warnings) warnings.append(warning);
  QJsonObject out{
      {QStringLiteral("containers"), of},          {QStringLiteral("form"), form(use_by.form)},
      {QStringLiteral("kind"), kind(use_by.kind)}, {QStringLiteral("reasons"), reasons},
      {QStringLiteral("warnings"), warnings},      {QStringLiteral("previously_frozen"), use_by.previously_frozen}};
  const auto put_date = [&out](const char* key, const std::optional<QDate>& date) {
    if (date) out.insert(QString::fromLatin1(key), date->toString(Qt::ISODate));
  };
  if (use_by.form == batch::UseBy::Form::Date) out.insert(QStringLiteral("date"), use_by.date.toString(Qt::ISODate));
  if (use_by.form == batch::UseBy::Form::Instant)
    out.insert(QStringLiteral("time"), use_by.end.toTimeZone(zone).toString(Qt::ISODate));
  if (use_by.form == batch::UseBy::Form::Frozen) out.insert(QStringLiteral("days_left"), use_by.days_left);
  put_date("frozen_on", use_by.frozen_on);
  put_date("frozen_best_before", use_by.frozen_best_before);
  put_date("never_past", use_by.never_past);
  return out;
}

QString made_json(const batch::Record& record, const QTimeZone& zone) {
  return record.time_known ? record.made_at.toTimeZone(zone).toString(Qt::ISODate)
                           : batch::local_day(record.made_at, zone).toString(Qt::ISODate);
}

QJsonObject json_of(const book::Book& book, const batch::Batch& batch) {
  QJsonArray use_bys;
  for (size_t i = 0; i < batch.use_bys.size(); ++i)
    if (const auto of = containers_of(batch, i); !of.empty())
      use_bys.append(use_by_json(batch.use_bys[i], of, book.kitchen.zone));
  const batch::Record& record = batch.record;
  QJsonObject out{{QStringLiteral("lot"), batch.lot},
                  {QStringLiteral("gtin"), batch.gtin},
                  {QStringLiteral("item"), record.item},
                  {QStringLiteral("made_at"), made_json(record, book.kitchen.zone)},
                  {QStringLiteral("dates"), use_bys}};
  if (record.pad_day) out.insert(QStringLiteral("pad_day"), record.pad_day->toString(Qt::ISODate));
  if (entered_later(record))
    out.insert(QStringLiteral("recorded_at"), record.recorded_at->toTimeZone(book.kitchen.zone).toString(Qt::ISODate));
  return out;
}

}  // namespace

ExitStatus dates(const Options& options, const DatesOptions& wish) {
  const auto book = usable_book(options);
  if (!book) return refuse(book.error(), options.json);
  const auto now = time_of_run(options, book->kitchen.zone);
  if (!now) return refuse({now.error()}, options.json);
  const auto run = read_run(wish.records, wish.format, *book, *now);
  if (!run) return refuse(run.error(), options.json);

  problem::Errors errors = run->errors;
  QString report;
  QJsonArray batches;
  for (const batch::Batch& batch : run->batches) {
    errors.insert(errors.end(), batch.refused.begin(), batch.refused.end());
    if (!batch.refused.empty()) continue;
    report += text(*book, batch);
    batches.append(json_of(*book, batch));
  }
  problem::sort(errors);
  print_problems(errors);
  const bool printed = options.json
                           ? print(QJsonObject{{QStringLiteral("book"), QString::fromLatin1(book->hash.toHex())},
                                               {QStringLiteral("rule_set"), book->rules.name},
                                               {QStringLiteral("batches"), batches},
                                               {QStringLiteral("problems"), json(errors)}})
                           : print(report);
  return reported(printed, errors.empty() ? kDone : exit_status(errors));
}

}  // namespace lardiner::command
