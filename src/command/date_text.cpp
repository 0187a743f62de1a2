// Dates, reasons and container numbers of reports, in English and as JSON.
#include "command/date_text.h"

#include <QJsonArray>

#include "batch/clock.h"

namespace lardiner::command {

namespace {

QString kind(book::EndKind kind) {
  return kind == book::EndKind::UseBy ? QStringLiteral("use by") : QStringLiteral("best before");
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

}  // namespace

QString day(QDate date) {
  return QLocale(QLocale::English, QLocale::UnitedKingdom).toString(date, QStringLiteral("ddd dd MMM yyyy"));
}

QString moment(const QDateTime& instant, bool is_date, const QTimeZone& zone) {
  const QDateTime local = instant.toTimeZone(zone);
  if (is_date) return day(local.addSecs(-1).date());  // the last instant that is still good
  const QString time = day(local.date()) + local.toString(QStringLiteral(" HH:mm"));
  return batch::shows_twice(instant, zone) ? time + u' ' + batch::offset_text(local.offsetFromUtc()) : time;
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

QString reason_line(const batch::Reason& reason, const QTimeZone& zone) {
  QString line = QStringLiteral("    %1 %2  %3")
                     .arg(reason.decided ? QStringLiteral("decided") : QStringLiteral("   lost"),
                          moment(reason.end, reason.is_date, zone), reason.rule);
  if (!reason.authority.isEmpty()) line += QStringLiteral(" [%1]").arg(reason.authority);
  return line + u'\n';
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

}  // namespace lardiner::command
