// What prep, assembly and plan have in common: the book, the words and the time of a run, and what they are told.
#pragma once

#include <QStringList>
#include <optional>
#include <utility>
#include <vector>

#include "command/commands.h"
#include "facts/sheet_setting.h"
#include "paper/work_pages.h"
#include "plan/order.h"
#include "words/words.h"

namespace lardiner::command {

/// A usable book with the languages of its sheets, and the time of the run.
struct WorkRun {
  book::Book book;
  QDateTime now;
  std::vector<words::Language> packs;
  std::vector<const words::Language*> languages;  ///< of the sheets, among `packs`
  std::optional<paper::Faces> faces;              ///< where a PDF is asked for

  facts::SheetSetting setting() const { return {book, languages}; }
  QDate day() const;  ///< of the run, in the kitchen
};
/// `out`: the PDF, or the folder with one, that is asked for; may be empty.
problem::ExpectedAll<WorkRun> read_work_run(const Options& options, const QString& out);

/// The paper asked for; else what offices of such a kitchen have: A4 where it weighs in metric units, Letter where in
/// customary ones (common practice, no source).
paper::Paper paper_of(const QString& wish, const book::Kitchen& kitchen);

/// `--number`: 1 to 9999.
problem::Expected<int> running_number(const QString& text);

/// The lot of a batch of `day`; empty where the product has no code for lots.
QString lot_of(const book::Kitchen& kitchen, const book::Product& product, QDate day, int number);

/// The value of the option `name` as an amount, at most what one making may be (src/batch/RECORDS.md).
problem::Expected<measure::Quantity> amount_of_option(const QString& name, const QString& text, const book::Book& book);

/// "butter=3.2 kg": an item of the book and how much of it is there.
struct ItemAmount {
  QString item;
  measure::Quantity amount;
};
problem::Expected<ItemAmount> item_amount(const QString& name, const QString& text, const book::Book& book);

/// The lots on hand; none where no file is named. Errors: every fault of the file, and what the faces do not have.
problem::ExpectedAll<std::vector<plan::OnHand>> read_on_hand_file(const QString& path, const WorkRun& run);

/// A site as the sheets call it, and the order's own number: "Harbour Street Café HS-1190".
QString whom_text(const WorkRun& run, const plan::Order& order);

}  // namespace lardiner::command
