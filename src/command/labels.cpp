// lardiner labels: batch records in, PDF labels out, everything or nothing.
#include <algorithm>
#include <functional>
#include <memory>
#include <optional>

#include "batch/read_records_parts.h"
#include "command/commands.h"
#include "command/label_job.h"
#include "command/label_ledger.h"
#include "command/output.h"
#include "command/stop.h"

namespace lardiner::command {

namespace {

using problem::Code;
using problem::Errors;

// What the loop over the batches works with, and what it found.
struct Work {
  const book::Book& book;
  const std::vector<words::Language>& languages;
  const LabelsOptions& wish;
  LabelJob& job;
  LabelLedger* ledger = nullptr;  ///< nullptr: the kitchen has none
  Errors errors, warnings;
  int labels = 0, hold_labels = 0;
  bool machine_failed = false;

  bool in_part() const { return wish.keep_going || wish.hold_labels; }
};

bool is_machine(const Errors& errors) { return exit_status(errors) == kMachineFailed; }

problem::ExpectedAll<int> add_batch(Work& work, const batch::Batch& batch) {
  const auto runs = facts::label_runs(work.book, batch, work.languages, {work.wish.hold_labels, work.wish.media});
  if (!runs) return tl::unexpected(runs.error());
  // Where nothing will be written any more, only what else is at fault is of interest.
  return work.errors.empty() || work.in_part() ? work.job.add(*runs) : work.job.fit(*runs);
}

// Whether there are errors. A ledger that cannot be read is the machine's fault, and nothing is printed.
bool fails(Work& work, const Errors& errors) {
  work.errors.insert(work.errors.end(), errors.begin(), errors.end());
  work.machine_failed = work.machine_failed || is_machine(errors);
  return !errors.empty();
}

// A batch that is refused, or that cannot be laid out, gets HOLD labels where these were asked for.
void label_batch(Work& work, const batch::Batch& batch) {
  if (work.ledger && work.wish.lots.isEmpty() && fails(work, work.ledger->stale(batch))) return;
  work.errors.insert(work.errors.end(), batch.refused.begin(), batch.refused.end());
  const auto added = add_batch(work, batch);
  if (added) {
    (batch.refused.empty() ? work.labels : work.hold_labels) += *added;
    if (work.ledger && *added > 0) fails(work, work.ledger->made(batch, !batch.refused.empty()));
    return;
  }
  fails(work, added.error());
  if (!work.wish.hold_labels || !batch.refused.empty() || work.machine_failed) return;
  batch::Batch held = batch;
  held.refused = added.error();
  const auto hold = add_batch(work, held);
  if (hold) {
    work.hold_labels += *hold;
    if (work.ledger && *hold > 0) fails(work, work.ledger->made(held, true));
  } else {
    fails(work, hold.error());
  }
}

void keep_warnings(Work& work, const batch::Batch& batch) {
  const problem::Place& place = batch.record.place;
  for (const QString& warning : batch.warnings)
    work.warnings.push_back(
        {Code::Conflict, QStringLiteral("warning: ") + warning, {place.file, place.line, 0, {}, 1}, {}});
}

bool one_file(const LabelsOptions& wish) { return wish.out.endsWith(QLatin1String(".pdf")); }

Errors several_files(const LabelsOptions& wish, const std::vector<Written>& written) {
  const bool one_medium = std::all_of(written.begin(), written.end(),
                                      [&](const Written& file) { return file.medium == written.front().medium; });
  return {{Code::Conflict,
           QStringLiteral("these labels need %1 files: one for each medium, of at most %2 labels")
               .arg(written.size())
               .arg(LabelJob::kMostLabels),
           {wish.out, 0, 0, {}, 1},
           one_medium ? QStringLiteral("name a folder with --out")
                      : QStringLiteral("name a folder with --out, or one medium with --medium")}};
}

problem::ExpectedAll<std::vector<Written>> put_in_place(const LabelsOptions& wish, const std::vector<Written>& written,
                                                        NewFolder& drafts) {
  if (one_file(wish) && written.size() != 1) return tl::unexpected(several_files(wish, written));
  const auto kept = one_file(wish) ? drafts.keep_only(written.front().file) : drafts.keep();
  if (!kept) return tl::unexpected(Errors{kept.error()});
  return written;
}

QString counted(int count, const char* noun) {
  return QStringLiteral("%1 %2%3").arg(count).arg(QLatin1String(noun), count == 1 ? QString() : QStringLiteral("s"));
}

// Where to go on, on a sheet that is used in part.
QString sheet_text(const Written& file) {
  if (file.places_left.value_or(0) == 0) return {};
  return QStringLiteral(", %1 left on the last sheet: next start %2")
      .arg(counted(*file.places_left, "place"))
      .arg(file.next_start);
}

QJsonObject json_of(const Written& file, const QString& path, const QString& proof) {
  QJsonObject out{{QStringLiteral("file"), path}, {QStringLiteral("labels"), file.labels}};
  if (!file.proof.isEmpty()) out.insert(QStringLiteral("proof"), proof);
  if (file.places_left) {
    out.insert(QStringLiteral("places_left"), *file.places_left);
    out.insert(QStringLiteral("next_start"), file.next_start);
  }
  return out;
}

bool report(const Options& options, const Work& work, const std::vector<Written>& written) {
  const auto path = [&](const QString& file) {
    return one_file(work.wish) ? work.wish.out : work.wish.out + u'/' + file;
  };
  if (options.json) {
    QJsonArray files;
    for (const Written& file : written) files.append(json_of(file, path(file.file), path(file.proof)));
    return print(QJsonObject{{QStringLiteral("files"), files},
                             {QStringLiteral("labels"), written.empty() ? 0 : work.labels},
                             {QStringLiteral("hold_labels"), written.empty() ? 0 : work.hold_labels},
                             {QStringLiteral("problems"), json(work.errors)}});
  }
  QString lines;
  for (const Written& file : written) {
    lines += QStringLiteral("%1: %2%3\n").arg(path(file.file), counted(file.labels, "label"), sheet_text(file));
    if (!file.proof.isEmpty()) lines += path(file.proof) + QStringLiteral(": its proof\n");
  }
  return print(lines);
}

ExitStatus finish(const Options& options, Work& work, NewFolder& drafts) {
  const bool nothing = work.labels + work.hold_labels == 0;
  if (!work.errors.empty() && (!work.in_part() || nothing || is_machine(work.errors))) {
    print_problems(work.errors);
    return reported(report(options, work, {}), exit_status(work.errors));
  }
  const auto drawn = work.job.finish();
  if (stop_asked()) return kMachineFailed;  // some of it was given up then
  // Recorded before they appear: a label that nobody knows of is worse than one that is voided.
  if (drawn && work.ledger)
    if (const Errors errors = work.ledger->record_prints(work.wish.by); !errors.empty())
      return refuse(errors, options.json);
  const auto written = drawn ? put_in_place(work.wish, *drawn, drafts) : drawn;
  if (!written && drawn && work.ledger) print_problems(work.ledger->void_prints(work.wish.by));
  if (!written) return refuse(written.error(), options.json);
  print_problems(work.errors);
  return reported(report(options, work, *written), work.errors.empty() ? kDone : kDoneInPart);
}

// The part-used sheet that --start speaks of: that of --medium, else the only one of the book.
problem::Expected<const book::Media*> started_sheet(const book::Book& book, const LabelsOptions& wish) {
  const QString leave_out = QStringLiteral("leave --start out");
  const auto wrong = [](const QString& what, const QString& hint) {
    return tl::unexpected(problem::Error{Code::Conflict, QStringLiteral("--start: ") + what, {}, hint});
  };
  std::vector<const book::Media*> sheets;
  for (const book::Media& medium : book.media)
    if (medium.sheet) sheets.push_back(&medium);
  if (const book::Media* named = book.medium(wish.media)) {
    if (!named->sheet)
      return wrong(QStringLiteral("\"%1\" is a roll, not a sheet of labels").arg(named->id), leave_out);
    sheets = {named};
  }
  if (sheets.empty()) return wrong(QStringLiteral("no medium of the book is a sheet of labels"), leave_out);
  if (sheets.size() > 1) {
    QStringList ids;
    for (const book::Media* sheet : sheets) ids << sheet->id;
    return wrong(QStringLiteral("the book has several sheets of labels"),
                 QStringLiteral("name one with --medium: ") + ids.join(QStringLiteral(", ")));
  }
  const int places = sheets.front()->sheet->labels();
  if (*wish.start < 1 || *wish.start > places)
    return wrong(
        QStringLiteral("\"%1\" has %2 places, and no place %3").arg(sheets.front()->id).arg(places).arg(*wish.start),
        QStringLiteral("count its places by rows from the top left, the first is 1"));
  return sheets.front();
}

problem::Error nothing_named() {
  return {Code::Malformed,
          QStringLiteral("nothing is named to print labels of"),
          {},
          QStringLiteral("name a file of batch records, or a lot of the ledger with --lot")};
}

problem::Error proof_of_one_file() {
  return {Code::Conflict,
          QStringLiteral("--proof: proofs stand beside the PDFs, and --out names one PDF"),
          {},
          QStringLiteral("name a folder with --out")};
}

// Batches one at a time: of records, computed as they are asked for, or of lots of the ledger.
struct Batches {
  std::function<std::optional<batch::Batch>()> next;
  Errors errors;  ///< of records that could not be read
};

// "1-4, 9", as records write them.
problem::ExpectedAll<std::vector<int>> containers_of(const LabelsOptions& wish) {
  const QString key = QStringLiteral("--containers");
  reader::Value row, numbers;
  numbers.kind = reader::Value::Kind::String;
  numbers.text = wish.containers;
  if (!wish.containers.isEmpty()) row.entries.emplace_back(key, numbers);
  Errors errors;
  reader::Fields fields(row, key, errors);
  std::vector<int> read = batch::read_numbers(fields, key);
  if (!errors.empty()) return tl::unexpected(errors);
  return read;
}

problem::ExpectedAll<Batches> of_ledger(const LabelsOptions& wish, LabelLedger& ledger) {
  const auto containers = containers_of(wish);
  if (!containers) return tl::unexpected(containers.error());
  auto batches = ledger.batches(wish.lots, *containers);
  if (!batches) return tl::unexpected(batches.error());
  const auto all = std::make_shared<std::vector<batch::Batch>>(std::move(*batches));
  return Batches{
      [all, at = size_t{0}]() mutable { return at < all->size() ? std::optional(all->at(at++)) : std::nullopt; }, {}};
}

problem::ExpectedAll<Batches> batches_of(const LabelsOptions& wish, const book::Book& book, const QDateTime& now,
                                         LabelLedger* ledger) {
  if (!wish.lots.isEmpty()) return of_ledger(wish, *ledger);
  auto read = read_record_file(wish.records, wish.format, book, now);
  if (!read) return tl::unexpected(read.error());
  const auto computing = std::make_shared<batch::Computing>(book, std::move(read->records), now);
  return Batches{[computing] { return computing->next(); }, std::move(read->errors)};
}

QString title(const book::Book& book, const QDateTime& now) {
  return QStringLiteral("Labels, %1, %2")
      .arg(book.kitchen.name, now.toTimeZone(book.kitchen.zone).date().toString(Qt::ISODate));
}

}  // namespace

ExitStatus labels(const Options& options, const LabelsOptions& wish) {
  const auto book = usable_book(options);
  if (!book) return refuse(book.error(), options.json);
  if (const auto error = wish.media.isEmpty() ? std::nullopt : unknown_medium(*book, wish.media))
    return refuse({*error}, options.json);
  if (wish.records.isEmpty() && wish.lots.isEmpty()) return wrong_usage(nothing_named(), options.json);
  if (wish.proof && one_file(wish)) return wrong_usage(proof_of_one_file(), options.json);
  if (wish.start)
    if (const auto sheet = started_sheet(*book, wish); !sheet) return wrong_usage(sheet.error(), options.json);
  const auto now = time_of_run(options, book->kitchen.zone);
  if (!now) return refuse({now.error()}, options.json);
  auto ledger = LabelLedger::open(options, *book, *now, !wish.lots.isEmpty());
  if (!ledger) return refuse(ledger.error(), options.json);
  auto batches = batches_of(wish, *book, *now, ledger->has_value() ? &**ledger : nullptr);
  if (!batches) return refuse(batches.error(), options.json);
  const auto languages = read_languages(options);
  if (!languages) return refuse(languages.error(), options.json);
  const auto faces = read_faces(options);
  if (!faces) return refuse(faces.error(), options.json);
  const auto shape = one_file(wish) ? NewFolder::Shape::OneFile : NewFolder::Shape::Folder;
  auto drafts = NewFolder::beside(wish.out, shape, wish.replace);
  if (!drafts) return refuse({drafts.error()}, options.json);

  watch_for_stop();
  LabelJob job(options, *book, *faces, *drafts, title(*book, *now), wish.start.value_or(1), wish.proof);
  Work work{*book, *languages, wish, job, ledger->has_value() ? &**ledger : nullptr, std::move(batches->errors), {}};
  while (const std::optional<batch::Batch> batch = batches->next()) {
    if (stop_asked()) return kMachineFailed;
    keep_warnings(work, *batch);
    label_batch(work, *batch);
    if (work.machine_failed) break;
  }
  print_problems(work.warnings);
  return finish(options, work, *drafts);
}

}  // namespace lardiner::command
