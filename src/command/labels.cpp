// lardiner labels: batch records in, PDF labels out, everything or nothing.
#include "command/commands.h"
#include "command/label_job.h"
#include "command/output.h"

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
  Errors errors;
  int labels = 0, hold_labels = 0;
};

bool is_machine(const Errors& errors) { return exit_status(errors) == kMachineFailed; }

problem::ExpectedAll<int> add_batch(Work& work, const batch::Batch& batch) {
  const auto runs =
      facts::label_runs(work.book, batch, work.languages, {work.wish.hold_labels, false, work.wish.media});
  if (!runs) return tl::unexpected(runs.error());
  return work.job.add(*runs);
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
  if (!work.wish.hold_labels || !batch.refused.empty() || is_machine(added.error())) return;
  batch::Batch held = batch;
  held.refused = added.error();
  const auto hold = add_batch(work, held);
  if (hold)
    work.hold_labels += *hold;
  else
    work.errors.insert(work.errors.end(), hold.error().begin(), hold.error().end());
}

void print_warnings(const std::vector<batch::Batch>& batches) {
  Errors warnings;
  for (const batch::Batch& batch : batches)
    for (const QString& warning : batch.warnings)
      warnings.push_back({Code::Conflict,
                          QStringLiteral("warning: ") + warning,
                          {batch.record.place.file, batch.record.place.line, 0, {}, 1},
                          {}});
  print_problems(warnings);
}

bool one_file(const LabelsOptions& wish) { return wish.out.endsWith(QLatin1String(".pdf")); }

problem::ExpectedAll<std::vector<Written>> put_in_place(const LabelsOptions& wish, LabelJob& job, NewFolder& drafts) {
  const auto written = job.finish();
  if (!written) return written;
  if (one_file(wish) && written->size() != 1) {
    return tl::unexpected(
        Errors{{Code::Conflict,
                QStringLiteral("these labels need %1 files: one for each medium, of at most %2 labels")
                    .arg(written->size())
                    .arg(LabelJob::kMostLabels),
                {wish.out, 0, 0, {}, 1},
                QStringLiteral("name a folder with --out, or one medium with --medium")}});
  }
  const auto kept = one_file(wish) ? drafts.keep_only(written->front().file) : drafts.keep();
  if (!kept) return tl::unexpected(Errors{kept.error()});
  return written;
}

void report(const Options& options, const Work& work, const std::vector<Written>& written) {
  const auto path = [&](const Written& file) {
    return one_file(work.wish) ? work.wish.out : work.wish.out + u'/' + file.file;
  };
  if (options.json) {
    QJsonArray files;
    for (const Written& file : written)
      files.append(QJsonObject{{QStringLiteral("file"), path(file)}, {QStringLiteral("labels"), file.labels}});
    print(QJsonObject{{QStringLiteral("files"), files},
                      {QStringLiteral("labels"), work.labels},
                      {QStringLiteral("hold_labels"), work.hold_labels},
                      {QStringLiteral("problems"), json(work.errors)}});
    return;
  }
  for (const Written& file : written)
    print(QStringLiteral("%1: %2 %3\n")
              .arg(path(file))
              .arg(file.labels)
              .arg(file.labels == 1 ? QStringLiteral("label") : QStringLiteral("labels")));
}

ExitStatus finish(const Options& options, Work& work, NewFolder& drafts) {
  print_problems(work.errors);
  const bool in_part = work.wish.keep_going || work.wish.hold_labels;
  const bool nothing = work.labels + work.hold_labels == 0;
  if (!work.errors.empty() && (!in_part || nothing || is_machine(work.errors))) return exit_status(work.errors);
  const auto written = put_in_place(work.wish, work.job, drafts);
  if (!written) {
    print_problems(written.error());
    return exit_status(written.error());
  }
  report(options, work, *written);
  return work.errors.empty() ? kDone : kDoneInPart;
}

ExitStatus refuse(const Errors& errors) {
  print_problems(errors);
  return exit_status(errors);
}

QString title(const book::Book& book, const QDateTime& now) {
  return QStringLiteral("Labels, %1, %2")
      .arg(book.kitchen.name, now.toTimeZone(book.kitchen.zone).date().toString(Qt::ISODate));
}

}  // namespace

ExitStatus labels(const Options& options, const LabelsOptions& wish) {
  const auto book = usable_book(options);
  if (!book) return refuse(book.error());
  const auto now = time_of_run(options, book->kitchen.zone);
  if (!now) return refuse({now.error()});
  const auto run = read_run(wish.records, wish.format, *book, *now);
  if (!run) return refuse(run.error());
  const auto languages = read_languages(options);
  if (!languages) return refuse(languages.error());
  const auto faces = read_faces(options);
  if (!faces) return refuse(faces.error());
  auto drafts = NewFolder::beside(wish.out, wish.replace);
  if (!drafts) return refuse({drafts.error()});

  LabelJob job(options, *book, *faces, *drafts, title(*book, *now));
  Work work{*book, *languages, wish, job, run->errors};
  print_warnings(run->batches);
  for (const batch::Batch& batch : run->batches) label_batch(work, batch);
  return finish(options, work, *drafts);
}

}  // namespace lardiner::command
