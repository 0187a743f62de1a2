// lardiner record: batch records and events appended to the ledger, everything or nothing.
#include "command/commands.h"
#include "command/date_text.h"
#include "command/entry_text.h"
#include "command/food_warnings.h"
#include "command/late_warnings.h"
#include "command/lot_called.h"
#include "command/output.h"
#include "command/place_warnings.h"
#include "command/reached.h"
#include "command/recording.h"
#include "ledger/lineage.h"

namespace lardiner::command {

namespace {

using history::Entry;
using history::Kind;
using problem::Code;
using problem::Error;
using problem::Errors;
using reader::Value;

const QString kToHold =
    QStringLiteral("; to hold all that stands there: lardiner record event=hold \"place=%1\" at=… by=… reason=…");

Value text_value(const QString& text, const QString& word) {
  Value value;
  value.kind = Value::Kind::String;
  value.text = text;
  value.place = {QStringLiteral("record"), 0, 0, word, 1, 1};
  value.key_place = value.place;
  return value;
}

// "event=frozen lot=A26329CLB01K containers=13-24" as one row, with the words as its columns.
problem::ExpectedAll<Value> row_of_words(const QStringList& words) {
  Value row;
  row.place = {QStringLiteral("record"), 0, 0, words.join(u' '), 1, 1};
  Errors errors;
  for (const QString& word : words) {
    const qsizetype at = word.indexOf(u'=');
    const QString key = word.left(at).trimmed().toLower();
    if (at < 1)
      errors.push_back({Code::Malformed,
                        QStringLiteral("\"%1\" is neither a file nor KEY=VALUE").arg(word),
                        {},
                        QStringLiteral("write it as event=frozen")});
    else if (row.find(key))
      errors.push_back(
          {Code::Duplicate, QStringLiteral("\"%1\" is given twice").arg(key), {}, QStringLiteral("leave one out")});
    else
      row.entries.emplace_back(key, text_value(word.mid(at + 1).trimmed(), word));
  }
  if (!errors.empty()) return tl::unexpected(errors);
  return row;
}

struct Rows {
  std::vector<Value> rows;
  bool decimal_comma = false;
};

problem::ExpectedAll<Rows> rows_of(const RecordOptions& wish) {
  if (wish.words.size() != 1 || wish.words.front().contains(u'=')) {
    auto row = row_of_words(wish.words);
    if (!row) return tl::unexpected(row.error());
    return Rows{{std::move(*row)}, false};
  }
  const auto read = read_rows(wish.words.front(), wish.format);
  if (!read) return tl::unexpected(read.error());
  Rows rows{{}, read->semicolons};
  for (size_t at = 0; at < read->count; ++at) rows.rows.push_back(read->row(at));
  if (rows.rows.empty())
    return tl::unexpected(Errors{{Code::Missing,
                                  QStringLiteral("there is nothing to record in it"),
                                  {wish.words.front(), 0, 0, {}, 1, 1},
                                  QStringLiteral("add a row for each batch or event under the header row")}});
  return rows;
}

QString date_of(const batch::Fixed& fixed, const QTimeZone& zone) {
  if (fixed.questions.empty()) return QStringLiteral("no date");
  QStringList dates;
  for (size_t at = 0; at < fixed.batch.containers.size(); ++at)
    if (const batch::UseBy* use_by = batch::use_by_of(fixed, at)) dates << headline(*use_by, zone);
  dates.removeDuplicates();
  return dates.isEmpty() ? QStringLiteral("no date") : dates.join(QStringLiteral("; "));
}

QString line(const Entry& entry, const QTimeZone& zone) {
  if (!entry.event.made) return entry_line(entry, zone) + u'\n';
  const batch::Batch& batch = entry.event.made->batch;
  QString line = QStringLiteral("%1  %2  made, %3, %4")
                     .arg(entry.id.text(), batch.lot, entry.event.made->name, date_of(*entry.event.made, zone));
  if (!batch.refused.empty()) line += QStringLiteral(", NOT RELEASED: ") + batch.refused.front().what;
  return line + u'\n';
}

// "  touches Chilli-lime butter, lot A26329CLB03L", for each lot that a hold, a recall or a correction concerns.
QString touched_lines(LedgerRun& run, const Entry& entry) {
  QString out;
  for (const ledger::LotName& lot : ledger::lots_concerned(run.ledger.store(), entry.id))
    out += QStringLiteral("  touches ") + called(run.book, lot) + u'\n';
  return out;
}

// Containers whose label is no longer true.
QString relabel(LedgerRun& run, const std::vector<Entry>& entries) {
  QString out;
  QList<qint64> told;
  for (const Entry& entry : entries)
    for (const ledger::LotName& name : reached(run, entry)) {
      const history::Lot* lot = told.contains(name.id) ? nullptr : run.ledger.lots().lot(name.id);
      told << name.id;
      if (!lot || !lot->made) continue;
      std::vector<int> need;
      for (const history::Holder& holder : lot->holders)
        if (holder.superseded && holder.where == history::Where::Here) need.push_back(holder.number);
      if (!need.empty())
        out += QStringLiteral("new label needed: lot %1, containers %2 (lardiner labels --lot %1)\n")
                   .arg(lot->code, numbers(need));
    }
  return out;
}

QJsonObject json_of(LedgerRun& run, const Entry& entry) {
  const QTimeZone& zone = run.zone();
  QJsonObject out{{QStringLiteral("entry"), entry.id.text()},
                  {QStringLiteral("event"), history::word(entry.event.kind)},
                  {QStringLiteral("lot"), entry.event.lot},
                  {QStringLiteral("at"), entry.event.at.toTimeZone(zone).toString(Qt::ISODate)}};
  QJsonArray touches;
  for (const ledger::LotName& lot : ledger::lots_concerned(run.ledger.store(), entry.id)) touches.append(lot.code);
  if (!touches.isEmpty()) out.insert(QStringLiteral("touches"), touches);
  if (entry.event.made) {
    out.insert(QStringLiteral("released"), entry.event.made->batch.refused.empty());
    out.insert(QStringLiteral("date"), date_of(*entry.event.made, zone));
  }
  return out;
}

bool report(const Options& options, LedgerRun& run, const Appended& appended) {
  if (options.json) {
    QJsonArray all;
    for (const Entry& entry : appended.entries) all.append(json_of(run, entry));
    return print(QJsonObject{{QStringLiteral("entries"), all}, {QStringLiteral("problems"), json(appended.held)}});
  }
  QString out;
  for (const Entry& entry : appended.entries) out += line(entry, run.zone()) + touched_lines(run, entry);
  for (const QString& call : calls_to_sites(run, appended.entries)) out += call + u'\n';
  return print(out + relabel(run, appended.entries));
}

}  // namespace

ExitStatus record(const Options& options, const RecordOptions& wish) {
  const auto rows = rows_of(wish);
  if (!rows) return refuse(rows.error(), options.json);
  auto run = read_ledger_run(options, ledger::Access::Write);
  if (!run) return refuse(run.error(), options.json);
  const auto appended = append_rows(*run, rows->rows, rows->decimal_comma, wish.hold);
  if (!appended) return refuse(appended.error(), options.json);
  const std::vector<Entry>& entries = appended->entries;
  Errors told = appended->held;
  for (const QString& warning : appended->warnings)
    told.push_back({Code::Conflict, QStringLiteral("warning: ") + warning, {}, {}});
  for (const Errors& warnings :
       {place_warnings(*run, entries, kToHold), food_warnings(*run, entries), late_warnings(*run, entries)})
    told.insert(told.end(), warnings.begin(), warnings.end());
  for (const QString& nothing : reached_nothing(*run, entries))
    told.push_back({Code::Missing, QStringLiteral("warning: ") + nothing, {}, {}});
  print_problems(told);
  const bool printed = report(options, *run, *appended);
  if (const auto& fault = run->ledger.store().fault()) return refuse({*fault}, options.json);
  return reported(printed, appended->held.empty() ? kDone : kDoneInPart);
}

}  // namespace lardiner::command
