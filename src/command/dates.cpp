// lardiner dates: the use-by of each batch, the rule that decided, the ones that lost, and their authority.
#include <QJsonArray>
#include <QJsonObject>

#include "batch/clock.h"
#include "command/commands.h"
#include "command/date_text.h"
#include "command/output.h"

namespace lardiner::command {

namespace {

std::vector<int> containers_of(const batch::Batch& batch, size_t use_by) {
  std::vector<int> out;
  for (const batch::Container& container : batch.containers)
    if (static_cast<size_t>(container.use_by) == use_by && !container.discarded) out.push_back(container.number);
  return out;
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
