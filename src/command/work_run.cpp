// What prep, assembly and plan have in common: the book, the words and the time of a run, and what they are told.
#include "command/work_run.h"

#include "batch/clock.h"
#include "batch/lot.h"
#include "batch/read_records_values.h"
#include "command/option_error.h"
#include "command/printed_words.h"
#include "plan/read_orders.h"
#include "reader/quote.h"

namespace lardiner::command {

using problem::Code;
using problem::Error;
using problem::Errors;
using problem::Expected;
using problem::ExpectedAll;
using reader::quoted;

namespace {

constexpr int kMostNumber = 9999;

QString did_you_mean(const QString& id, const QStringList& known, const QString& otherwise) {
  const QString near = problem::nearest(id, known);
  return near.isEmpty() ? otherwise : QStringLiteral("did you mean %1?").arg(near);
}

}  // namespace

QDate WorkRun::day() const { return batch::local_day(now, book.kitchen.zone); }

ExpectedAll<WorkRun> read_work_run(const Options& options, const QString& out) {
  auto book = usable_book(options);
  if (!book) return tl::unexpected(book.error());
  const auto now = time_of_run(options, book->kitchen.zone);
  if (!now) return tl::unexpected(Errors{now.error()});
  auto packs = read_languages(options);
  if (!packs) return tl::unexpected(packs.error());
  WorkRun run{std::move(*book), *now, std::move(*packs), {}, {}};
  auto languages = facts::sheet_languages(run.packs, run.book.kitchen);
  if (!languages) return tl::unexpected(languages.error());
  run.languages = std::move(*languages);
  if (out.isEmpty()) return run;
  auto faces = read_faces(options);
  if (!faces) return tl::unexpected(faces.error());
  run.faces = std::move(*faces);
  return run;
}

paper::Paper paper_of(const QString& wish, const book::Kitchen& kitchen) {
  if (!wish.isEmpty()) return wish == QLatin1String("letter") ? paper::Paper::Letter : paper::Paper::A4;
  return kitchen.units == measure::System::Customary ? paper::Paper::Letter : paper::Paper::A4;
}

Expected<int> running_number(const QString& text) {
  bool whole = false;
  const int number = text.toInt(&whole);
  const bool digits = whole && text.size() <= 4 && text.front().isDigit();
  if (digits && number >= 1 && number <= kMostNumber) return number;
  return tl::unexpected(Error{Code::Malformed,
                              QStringLiteral("--number: %1 is not a running number").arg(quoted(text)),
                              {},
                              QStringLiteral("write a number from 1 to %1").arg(kMostNumber)});
}

QString lot_of(const book::Kitchen& kitchen, const book::Product& product, QDate day, int number) {
  return product.code.isEmpty() ? QString() : batch::lot(kitchen, day, product.code, number);
}

Expected<measure::Quantity> amount_of_option(const QString& name, const QString& text, const book::Book& book) {
  const batch::RecordSettings settings;
  const auto amount = batch::amount_of(text, batch::Reading{book, settings});
  if (!amount) return tl::unexpected(of_option(name, amount.error()));
  return *amount;
}

Expected<ItemAmount> item_amount(const QString& name, const QString& text, const book::Book& book) {
  const qsizetype sign = text.indexOf(u'=');
  if (sign < 0)
    return tl::unexpected(Error{Code::Malformed,
                                QStringLiteral("%1: %2 does not say how much of what").arg(name, quoted(text)),
                                {},
                                QStringLiteral("write an item and its amount, as in \"butter=3.2 kg\"")});
  const QString item = text.left(sign).trimmed();
  if (!book.ingredient(item) && !book.product(item))
    return tl::unexpected(
        Error{Code::Unknown,
              QStringLiteral("%1: %2 is not an ingredient or product of the book").arg(name, quoted(item)),
              {},
              did_you_mean(item, book.item_ids(), QStringLiteral("write the id of an ingredient or product"))});
  const auto amount = amount_of_option(name, text.mid(sign + 1), book);
  if (!amount) return tl::unexpected(amount.error());
  return ItemAmount{item, *amount};
}

ExpectedAll<std::vector<plan::OnHand>> read_on_hand_file(const QString& path, const WorkRun& run) {
  if (path.isEmpty()) return std::vector<plan::OnHand>();
  const auto rows = read_rows(path, RecordFormat::Guess);
  if (!rows) return tl::unexpected(rows.error());
  plan::OnHandLots read = plan::read_on_hand(*rows, run.book, {run.now, rows->semicolons});
  if (read.errors.empty() && run.faces) read.errors = unprintable(read.lots, *run.faces);
  if (!read.errors.empty()) return tl::unexpected(read.errors);
  return std::move(read.lots);
}

QString whom_text(const WorkRun& run, const plan::Order& order) {
  const book::Site* site = run.book.site(order.site);
  QStringList parts;
  if (site) {
    const QString name = site->name.in(run.languages.front()->code());
    parts << (name.isEmpty() ? site->id : name);
  }
  if (!order.number.isEmpty()) parts << order.number;
  return parts.join(u' ');
}

}  // namespace lardiner::command
