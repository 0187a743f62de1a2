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
  Errors errors;
  int labels = 0, hold_labels = 0;
};

bool is_machine(const Errors& errors) { return exit_status(errors) == kMachineFailed; }

problem::ExpectedAll<int> add_batch(Work& work, const batch::Batch& batch) {
  const auto runs =
      facts::label_runs(work.book, batch, work.languages, {work.wish.hold_labels, work.wish.media});
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

problem::ExpectedAll<std::vector<Written>> put_in_place(const LabelsOptions& wish, LabelJob& job, NewFolder& drafts) {
  const auto written = job.finish();
  if (!written) return written;
  if (one_file(wish) && written->size() != 1) return tl::unexpected(several_files(wish, *written));
  const auto kept = one_file(wish) ? drafts.keep_only(written->front().file) : drafts.keep();
  if (!kept) return tl::unexpected(Errors{kept.error()});
  return written;
}

bool report(const Options& options, const Work& work, const std::vector<Written>& written) {
  const auto path = [&](const Written& file) {
    return one_file(work.wish) ? work.wish.out : work.wish.out + u'/' + file.file;
  };
  if (options.json) {
    QJsonArray files;
    for (const Written& file : written)
      files.append(QJsonObject{{QStringLiteral("file"), path(file)}, {QStringLiteral("labels"), file.labels}});
    return print(QJsonObject{{QStringLiteral("files"), files},
                             {QStringLiteral("labels"), written.empty() ? 0 : work.labels},
                             {QStringLiteral("hold_labels"), written.empty() ? 0 : work.hold_labels},
                             {QStringLiteral("problems"), json(work.errors)}});
  }
  QString lines;
  for (const Written& file : written)
    lines += QStringLiteral("%1: %2 %3\n")
                 .arg(path(file))
                 .arg(file.labels)
                 .arg(file.labels == 1 ? QStringLiteral("label") : QStringLiteral("labels"));
  return print(lines);
}

ExitStatus finish(const Options& options, Work& work, NewFolder& drafts) {
  const bool in_part = work.wish.keep_going || work.wish.hold_labels;
  const bool nothing = work.labels + work.hold_labels == 0;
  if (!work.errors.empty() && (!in_part || nothing || is_machine(work.errors))) {
    print_problems(work.errors);
    return reported(report(options, work, {}), exit_status(work.errors));
  }
  const auto written = put_in_place(work.wish, work.job, drafts);
  if (!written) return refuse(written.error(), options.json);
  print_problems(work.errors);
  return reported(report(options, work, *written), work.errors.empty() ? kDone : kDoneInPart);
}

std::optional<problem::Error> unknown_medium(const book::Book& book, const LabelsOptions& wish) {
  if (wish.media.isEmpty() || book.medium(wish.media)) return std::nullopt;
  QStringList known;
  for (const book::Media& medium : book.media) known << medium.id;
  return problem::Error{Code::Unknown,
                        QStringLiteral("--medium: \"%1\" is not a medium of the book").arg(wish.media),
                        {},
                        QStringLiteral("its media are: ") + known.join(QStringLiteral(", "))};
}

QString title(const book::Book& book, const QDateTime& now) {
  return QStringLiteral("Labels, %1, %2")
      .arg(book.kitchen.name, now.toTimeZone(book.kitchen.zone).date().toString(Qt::ISODate));
}

}  // namespace

ExitStatus labels(const Options& options, const LabelsOptions& wish) {
  const auto book = usable_book(options);
  if (!book) return refuse(book.error(), options.json);
  if (const auto error = unknown_medium(*book, wish)) return refuse({*error}, options.json);
  const auto now = time_of_run(options, book->kitchen.zone);
  if (!now) return refuse({now.error()}, options.json);
  const auto run = read_run(wish.records, wish.format, *book, *now);
  if (!run) return refuse(run.error(), options.json);
  const auto languages = read_languages(options);
  if (!languages) return refuse(languages.error(), options.json);
  const auto faces = read_faces(options);
  if (!faces) return refuse(faces.error(), options.json);
  const auto shape = one_file(wish) ? NewFolder::Shape::OneFile : NewFolder::Shape::Folder;
  auto drafts = NewFolder::beside(wish.out, shape, wish.replace);
  if (!drafts) return refuse({drafts.error()}, options.json);

  watch_for_stop();
  LabelJob job(options, *book, *faces, *drafts, title(*book, *now));
  Work work{*book, *languages, wish, job, run->errors};
  print_warnings(run->batches);
  for (const batch::Batch& batch : run->batches) {
    if (stop_asked()) return kMachineFailed;
    label_batch(work, batch);
  }
  return finish(options, work, *drafts);
}

}  // namespace lardiner::command
