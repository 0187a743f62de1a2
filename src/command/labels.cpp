// lardiner labels: batch records in, PDF labels out, everything or nothing.
#include <algorithm>
#include <optional>

#include "command/commands.h"
#include "command/label_job.h"
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

// A batch that is refused, or that cannot be laid out, gets HOLD labels where these were asked for.
void label_batch(Work& work, const batch::Batch& batch) {
  work.errors.insert(work.errors.end(), batch.refused.begin(), batch.refused.end());
  const auto added = add_batch(work, batch);
  if (added) {
    (batch.refused.empty() ? work.labels : work.hold_labels) += *added;
    return;
  }
  work.errors.insert(work.errors.end(), added.error().begin(), added.error().end());
  work.machine_failed = is_machine(added.error());
  if (!work.wish.hold_labels || !batch.refused.empty() || work.machine_failed) return;
  batch::Batch held = batch;
  held.refused = added.error();
  const auto hold = add_batch(work, held);
  if (hold)
    work.hold_labels += *hold;
  else
    work.errors.insert(work.errors.end(), hold.error().begin(), hold.error().end());
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
  const auto written = drawn ? put_in_place(work.wish, *drawn, drafts) : drawn;
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

problem::Error proof_of_one_file() {
  return {Code::Conflict,
          QStringLiteral("--proof: proofs stand beside the PDFs, and --out names one PDF"),
          {},
          QStringLiteral("name a folder with --out")};
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
  if (wish.proof && one_file(wish)) return wrong_usage(proof_of_one_file(), options.json);
  if (wish.start)
    if (const auto sheet = started_sheet(*book, wish); !sheet) return wrong_usage(sheet.error(), options.json);
  const auto now = time_of_run(options, book->kitchen.zone);
  if (!now) return refuse({now.error()}, options.json);
  auto read = read_record_file(wish.records, wish.format, *book, *now);
  if (!read) return refuse(read.error(), options.json);
  const auto languages = read_languages(options);
  if (!languages) return refuse(languages.error(), options.json);
  const auto faces = read_faces(options);
  if (!faces) return refuse(faces.error(), options.json);
  const auto shape = one_file(wish) ? NewFolder::Shape::OneFile : NewFolder::Shape::Folder;
  auto drafts = NewFolder::beside(wish.out, shape, wish.replace);
  if (!drafts) return refuse({drafts.error()}, options.json);

  watch_for_stop();
  LabelJob job(options, *book, *faces, *drafts, title(*book, *now), wish.start.value_or(1), wish.proof);
  Work work{*book, *languages, wish, job, std::move(read->errors), {}};
  batch::Computing computing(*book, std::move(read->records), *now);
  while (const std::optional<batch::Batch> batch = computing.next()) {
    if (stop_asked()) return kMachineFailed;
    keep_warnings(work, *batch);
    label_batch(work, *batch);
    if (work.machine_failed) break;
  }
  print_problems(work.warnings);
  return finish(options, work, *drafts);
}

}  // namespace lardiner::command
