// The kitchen's book while the station runs.
#include "command/kept_book.h"

#include <QDir>

#include "command/files.h"
#include "facts/label_language.h"

namespace lardiner::command {

using problem::Code;
using problem::Error;
using problem::Errors;

namespace {

constexpr std::chrono::seconds kBetweenLooks{1};

// Names, sizes and times of the book's files, and of the label templates that it names.
QByteArray look_of(const Options& options) {
  QByteArray look;
  for (const QString& folder : {options.kitchen, options.kitchen + QStringLiteral("/templates/labels")})
    for (const QString& name : QDir(folder).entryList({QStringLiteral("*.toml")}, QDir::Files, QDir::Name)) {
      const QString path = folder + u'/' + name;
      look += look_of_file(path) + path.toUtf8() + '\n';
    }
  return look;
}

std::vector<words::Language> reviewed(const std::vector<words::Language>& all, const book::Kitchen& kitchen) {
  std::vector<words::Language> out;
  for (const QString& code : kitchen.languages)
    if (const auto language = facts::label_language(all, kitchen, code, {})) out.push_back(**language);
  return out;
}

Error none_reviewed() {
  return {Code::Unsafe,
          QStringLiteral("none of the kitchen's languages has safety words that were reviewed"),
          {},
          QStringLiteral("name in the kitchen book who reviewed those of one of its languages")};
}

Error another_station(const QString& was, const QString& is) {
  return {Code::Conflict,
          QStringLiteral("the book is of station %1 now, and this is station %2").arg(is, was),
          {},
          QStringLiteral("start the station again to go on as %1").arg(is)};
}

}  // namespace

problem::ExpectedAll<std::unique_ptr<KeptBook>> KeptBook::open(const Options& options,
                                                               std::vector<words::Language> packs) {
  std::unique_ptr<KeptBook> kept(new KeptBook(options, std::move(packs)));
  kept->read_ = kept->seen_ = look_of(options);
  auto first = kept->read();
  if (!first) return tl::unexpected(first.error());
  kept->taken_ = std::make_shared<const TakenBook>(std::move(*first));
  kept->looked_ = Clock::now();
  return kept;
}

KeptBook::KeptBook(Options options, std::vector<words::Language> packs)
    : options_(std::move(options)), packs_(std::move(packs)) {}

std::shared_ptr<const TakenBook> KeptBook::now() {
  const std::lock_guard lock(mutex_);
  if (Clock::now() - looked_ < kBetweenLooks) return taken_;
  looked_ = Clock::now();
  const QByteArray look = look_of(options_);
  const bool quiet = look == seen_;
  seen_ = look;
  if (quiet && look != read_) take();
  return taken_;
}

problem::ExpectedAll<TakenBook> KeptBook::read() const {
  auto book = usable_book(options_);
  if (!book) return tl::unexpected(book.error());
  TakenBook taken{std::move(*book), {}, {}};
  taken.languages = reviewed(packs_, taken.book.kitchen);
  if (taken.languages.empty()) return tl::unexpected(Errors{none_reviewed()});
  return taken;
}

// What was read while somebody saved is not taken: the next looks see to it.
void KeptBook::take() {
  auto fresh = read();
  if (look_of(options_) != seen_) return;
  read_ = seen_;
  if (fresh && fresh->book.kitchen.station != taken_->book.kitchen.station)
    fresh = tl::unexpected(Errors{another_station(taken_->book.kitchen.station, fresh->book.kitchen.station)});
  TakenBook taken = fresh ? std::move(*fresh) : *taken_;
  if (!fresh) taken.fault = fresh.error().front();
  taken_ = std::make_shared<const TakenBook>(std::move(taken));
}

}  // namespace lardiner::command
