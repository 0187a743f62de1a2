// lardiner day-record: the records of a day as one sheet, for an inspector and for the second person who reviews it.
#include "facts/day_record.h"

#include "command/commands.h"
#include "command/day_of_ledger.h"
#include "command/made_sheet.h"
#include "command/one_batch.h"
#include "command/option_error.h"
#include "command/output.h"
#include "command/work_sheet_json.h"
#include "reader/fields.h"

namespace lardiner::command {

problem::ExpectedAll<facts::WorkSheet> made_day_record(SheetLedger& ledger, QDate day) {
  const auto filled = day_of_ledger(ledger, day);
  if (!filled) return tl::unexpected(filled.error());
  return facts::day_record(ledger.run.setting(), *filled);
}

ExitStatus day_record(const Options& options, const DayRecordOptions& wish) {
  const auto day = reader::parse_date(wish.day);
  if (!day) return wrong_usage(of_option(QStringLiteral("day"), day.error()), options.json);
  auto ledger = read_sheet_ledger(options, wish.sheet.out);
  if (!ledger) return refuse(ledger.error(), options.json);
  const auto sheet = made_day_record(*ledger, *day);
  if (!sheet) return refuse(sheet.error(), options.json);
  return hand_over(options, wish.sheet, ledger->run, *sheet, json_of(*sheet));
}

}  // namespace lardiner::command
