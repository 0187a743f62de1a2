// The sheets that the station shows and prints: those of the commands.
#include "command/sheet_desk.h"

#include <QRegularExpression>
#include <algorithm>

#include "command/made_sheet.h"

namespace lardiner::command {

using problem::Errors;
using station::SheetWish;

namespace {

// A page has no options: "--give: 0 kg is no amount" is told as "0 kg is no amount".
Errors without_options(Errors errors) {
  static const QRegularExpression option(QStringLiteral("^--[a-z-]+: "));
  for (problem::Error& error : errors) error.what.remove(option);
  return errors;
}

void speak(WorkRun& run, const QString& language) {
  const auto found = std::find_if(run.packs.begin(), run.packs.end(),
                                  [&](const words::Language& one) { return one.code() == language; });
  if (found != run.packs.end()) run.languages = {&*found};
}

problem::ExpectedAll<facts::WorkSheet> of_ledger(const Options& options, const SheetWish& wish,
                                                 const QString& language) {
  auto ledger = read_sheet_ledger(options, {});
  if (!ledger) return tl::unexpected(ledger.error());
  speak(ledger->run, language);
  return wish.kind == SheetWish::Kind::DayRecord ? made_day_record(*ledger, wish.day)
                                                 : made_dispatch_note(*ledger, wish.note);
}

problem::ExpectedAll<facts::WorkSheet> of_product(const Options& options, const SheetWish& wish,
                                                  const QString& language) {
  auto run = read_work_run(options, {});
  if (!run) return tl::unexpected(run.error());
  speak(*run, language);
  SheetOptions sheet;
  sheet.number = wish.number;
  const auto made = wish.kind == SheetWish::Kind::Prep
                        ? made_prep(*run, {wish.product, wish.amount, {}, {}, false, sheet})
                        : made_assembly(*run, {wish.product, wish.amount, {}, sheet});
  if (!made) return tl::unexpected(made.error());
  return made->sheet;
}

}  // namespace

problem::ExpectedAll<facts::WorkSheet> sheet_for(const Options& options, const SheetWish& wish,
                                                 const QString& language) {
  const bool ledger = wish.kind == SheetWish::Kind::DayRecord || wish.kind == SheetWish::Kind::DispatchNote;
  const auto sheet = ledger ? of_ledger(options, wish, language) : of_product(options, wish, language);
  if (!sheet) return tl::unexpected(without_options(sheet.error()));
  return sheet;
}

}  // namespace lardiner::command
