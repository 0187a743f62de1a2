// The sheet of a single batch: what is known of it ahead, and how the sheet is handed over.
#include "command/one_batch.h"

#include "command/files.h"
#include "command/output.h"
#include "command/sheet_text.h"
#include "command/stop.h"
#include "command/work_document.h"
#include "reader/quote.h"

namespace lardiner::command {

namespace {

using problem::Code;
using problem::Error;
using problem::Errors;
using problem::Expected;
using problem::ExpectedAll;

Expected<QString> numbered_lot(const WorkRun& run, const book::Product& product, const QString& number) {
  if (number.isEmpty()) return QString();
  const Expected<int> running = running_number(number);
  if (!running) return tl::unexpected(running.error());
  if (!product.code.isEmpty()) return lot_of(run.book.kitchen, product, run.day(), *running);
  return tl::unexpected(
      Error{Code::Missing,
            QStringLiteral("product %1 has no code, which its lots are made of").arg(reader::quoted(product.id)),
            product.place, QStringLiteral("state code, or leave --number out")});
}

std::vector<facts::Drawn> drawn_from(const WorkRun& run, book::Weighing& weighing,
                                     const std::vector<plan::OnHand>& lots, const std::vector<plan::Wanted>& wanted) {
  std::vector<facts::Drawn> out;
  for (const plan::DrawnLot& one : plan::drawn_lots(run.book, weighing, wanted, lots, run.day())) {
    const plan::OnHand& lot = lots[one.lot];
    out.push_back({lot.item, lot.lot, lot.where, one.weight});
  }
  return out;
}

Expected<bool> put_in_place(const SheetOptions& wish, const QByteArray& pdf) {
  const QString name = QStringLiteral("sheet.pdf");
  watch_for_stop();  // the draft does not stay behind
  auto drafts = NewFolder::beside(wish.out, NewFolder::Shape::OneFile, wish.replace);
  if (!drafts) return tl::unexpected(drafts.error());
  const auto written = drafts->write(name, pdf);
  if (!written) return tl::unexpected(written.error());
  return drafts->keep_only(name);
}

}  // namespace

ExpectedAll<facts::Ahead> batch_ahead(const WorkRun& run, book::Weighing& weighing, const book::Product& product,
                                      const SheetOptions& wish, const std::vector<plan::Wanted>& wanted) {
  Errors errors;
  const Expected<QString> lot = numbered_lot(run, product, wish.number);
  if (!lot) errors.push_back(lot.error());
  const auto lots = read_on_hand_file(wish.on_hand, run);
  if (!lots) errors.insert(errors.end(), lots.error().begin(), lots.error().end());
  if (!errors.empty()) return tl::unexpected(errors);
  facts::Ahead ahead;
  ahead.day = run.day();
  ahead.lot = *lot;
  ahead.drawn = drawn_from(run, weighing, *lots, wanted);
  return ahead;
}

ExitStatus hand_over(const Options& options, const SheetOptions& wish, const WorkRun& run,
                     const facts::WorkSheet& sheet, QJsonObject report) {
  if (wish.out.isEmpty()) return reported(options.json ? print(report) : print(text(sheet)), kDone);
  const auto document =
      work_document({sheet}, paper_of(wish.paper, run.book.kitchen), *run.faces, sheet.kind + u' ' + sheet.running);
  if (!document) return refuse(document.error(), options.json);
  const auto kept = put_in_place(wish, document->pdf);
  if (!kept) return refuse({kept.error()}, options.json);
  report.insert(QStringLiteral("file"), wish.out);
  report.insert(QStringLiteral("pages"), document->pages);
  return reported(options.json ? print(report) : print(pages_text(wish.out, document->pages)), kDone);
}

}  // namespace lardiner::command
