// lardiner pad: labels to fill in by hand when the power is out, with lots already made ready and coded.
#include "batch/pad.h"

#include <QRegularExpression>

#include "batch/clock.h"
#include "batch/read_records_parts.h"
#include "command/commands.h"
#include "command/label_job.h"
#include "command/option_error.h"
#include "command/output.h"
#include "command/stop.h"
#include "reader/quote.h"

namespace lardiner::command {

namespace {

using problem::Code;
using problem::Error;
using problem::Errors;

constexpr int kMostNumber = 9999;

// The running numbers of the pad's batches.
struct Numbers {
  int first = 0, last = 0;
};

problem::Expected<Numbers> numbers_of(const QString& text) {
  static const QRegularExpression pattern(QStringLiteral(R"(\A([0-9]{1,4})(?:-([0-9]{1,4}))?\z)"));
  const QRegularExpressionMatch match = pattern.match(text);
  const Numbers found{match.captured(1).toInt(), match.captured(match.captured(2).isEmpty() ? 1 : 2).toInt()};
  if (match.hasMatch() && found.first >= 1 && found.first <= found.last) return found;
  return tl::unexpected(
      Error{Code::Malformed,
            QStringLiteral("--number: %1 is not a running number or a range of them").arg(reader::quoted(text)),
            {},
            QStringLiteral("write a number from 1 to %1, or as 901-905").arg(kMostNumber)});
}

problem::ExpectedAll<std::vector<batch::ContainerGroup>> containers_of(const book::Book& book, const QString& text) {
  const batch::RecordSettings settings;
  auto groups = batch::parse_containers(text, batch::Reading{book, settings});
  // Labels that are left over of the first kind would give the containers of the next other numbers in the record.
  if (groups && groups->size() > 1)
    return tl::unexpected(Errors{{Code::Conflict,
                                  QStringLiteral("--containers: a pad is for containers of one kind"),
                                  {},
                                  QStringLiteral("make a pad for each kind, with running numbers of its own")}});
  if (groups) return groups;
  for (Error& error : groups.error()) error = of_option(QStringLiteral("--containers"), error);
  return groups;
}

// A pad is one file.
std::optional<Error> too_many(const book::Media& medium, const Numbers& numbers,
                              const std::vector<batch::ContainerGroup>& containers) {
  qint64 labels = 0;
  for (const batch::ContainerGroup& group : containers) labels += group.count;
  labels *= numbers.last - numbers.first + 1;
  const int most = LabelJob::most_labels(medium);
  if (labels <= most) return std::nullopt;
  return Error{
      Code::Range,
      QStringLiteral("this pad has %1 labels, more than the %2 of one file").arg(labels).arg(most),
      {},
      QStringLiteral("write fewer in --number or --containers, and make the other labels in a pad of their own")};
}

// The batches of the pad, or everything that refuses one of them.
problem::ExpectedAll<std::vector<batch::Batch>> batches_of(const book::Book& book, const PadOptions& wish, QDate day) {
  Errors errors;
  const auto product = product_named(book, wish.product);
  if (!product) errors.push_back(product.error());
  if (const auto error = unknown_medium(book, wish.medium)) errors.push_back(*error);
  const auto numbers = numbers_of(wish.number);
  if (!numbers) errors.push_back(numbers.error());
  const auto containers = containers_of(book, wish.containers);
  if (!containers) errors.insert(errors.end(), containers.error().begin(), containers.error().end());
  if (!errors.empty()) return tl::unexpected(errors);
  if (const auto error = too_many(*book.medium(wish.medium), *numbers, *containers))
    return tl::unexpected(Errors{*error});

  std::vector<batch::Batch> batches;
  for (int number = numbers->first; number <= numbers->last; ++number) {
    auto batch = batch::pad_batch(book, {**product, day, number, *containers});
    if (!batch) return tl::unexpected(batch.error());  // the same for every number
    batches.push_back(std::move(*batch));
  }
  return batches;
}

problem::ExpectedAll<int> add_labels(LabelJob& job, const book::Book& book, const std::vector<batch::Batch>& batches,
                                     const std::vector<words::Language>& languages, const PadOptions& wish) {
  int labels = 0;
  for (const batch::Batch& batch : batches) {
    const auto runs = facts::label_runs(book, batch, languages, {false, wish.medium, true});
    if (!runs) return tl::unexpected(runs.error());
    const auto added = job.add(*runs);
    if (!added) return added;
    labels += *added;
  }
  return labels;
}

bool report(const Options& options, const PadOptions& wish, const std::vector<batch::Batch>& batches, QDate day) {
  qsizetype labels = 0;
  QString lines;
  QJsonArray lots;
  for (const batch::Batch& batch : batches) {
    labels += static_cast<qsizetype>(batch.containers.size());
    lines += QStringLiteral("  number %1: lot %2\n").arg(batch.number).arg(batch.lot);
    lots.append(QJsonObject{{QStringLiteral("number"), batch.number}, {QStringLiteral("lot"), batch.lot}});
  }
  const QString pad_day = day.toString(Qt::ISODate);
  if (options.json)
    return print(QJsonObject{{QStringLiteral("file"), wish.out},
                             {QStringLiteral("labels"), labels},
                             {QStringLiteral("pad_day"), pad_day},
                             {QStringLiteral("lots"), lots}});
  return print(
      QStringLiteral("%1: %2 %3, pad_day %4\n%5No other batch of %6 may have these numbers on that day.\n")
          .arg(wish.out)
          .arg(labels)
          .arg(labels == 1 ? QStringLiteral("label") : QStringLiteral("labels"), pad_day, lines, wish.product));
}

QString title(const book::Book& book, QDate day) {
  return QStringLiteral("Pad, %1, %2").arg(book.kitchen.name, day.toString(Qt::ISODate));
}

}  // namespace

ExitStatus pad(const Options& options, const PadOptions& wish) {
  const auto book = usable_book(options);
  if (!book) return refuse(book.error(), options.json);
  const auto now = time_of_run(options, book->kitchen.zone);
  if (!now) return refuse({now.error()}, options.json);
  const QDate day = batch::local_day(*now, book->kitchen.zone);
  const auto batches = batches_of(*book, wish, day);
  if (!batches) return refuse(batches.error(), options.json);
  const auto languages = read_languages(options);
  if (!languages) return refuse(languages.error(), options.json);
  const auto faces = read_faces(options);
  if (!faces) return refuse(faces.error(), options.json);
  auto drafts = NewFolder::beside(wish.out, NewFolder::Shape::OneFile, wish.replace);
  if (!drafts) return refuse({drafts.error()}, options.json);

  watch_for_stop();
  LabelJob job(options, *book, *faces, *drafts, title(*book, day), 1, false);
  const auto added = add_labels(job, *book, *batches, *languages, wish);
  if (!added) return refuse(added.error(), options.json);
  const auto written = job.finish();
  if (!written) return refuse(written.error(), options.json);
  if (stop_asked()) return kMachineFailed;
  const auto kept = drafts->keep_only(written->front().file);
  if (!kept) return refuse({kept.error()}, options.json);
  return reported(report(options, wish, *batches, day), kDone);
}

}  // namespace lardiner::command
