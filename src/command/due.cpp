// lardiner due: deadlines that run, what to discard, what ends today, what to use first, what needs a new label.
#include "ledger/due.h"

#include "command/commands.h"
#include "command/date_text.h"
#include "command/due_json.h"
#include "command/lot_called.h"
#include "command/on_hand_found.h"
#include "command/output.h"
#include "ledger/on_hand.h"

namespace lardiner::command {

namespace {

using ledger::Due;

const char* heading(Due::What what) {
  switch (what) {
    case Due::What::Cooling:
      return "Cooling: the next temperature must be reached by";
    case Due::What::Running:
      return "Running out";
    case Due::What::Past:
      return "Discard: past their date";
    case Due::What::Today:
      return "Last good day is today";
    case Due::What::UseFirst:
      return "Use first";
    case Due::What::Relabel:
      return "Needs a new label: what it says is no longer true";
  }
  return "";
}

bool at_a_time(const Due& due) { return due.what == Due::What::Cooling || due.what == Due::What::Running; }

QString left(const Due& due, const QDateTime& now) {
  const qint64 minutes = now.secsTo(due.ends) / 60;
  if (minutes < 0) return QStringLiteral("OVER since %1 min").arg(-minutes);
  return minutes < 120 ? QStringLiteral("%1 min left").arg(minutes)
                       : QStringLiteral("%1 h %2 min left").arg(minutes / 60).arg(minutes % 60);
}

QString line(const LedgerRun& run, const Due& due) {
  QString out = QStringLiteral("  ");
  if (due.ends.isValid()) out += moment(due.ends, !at_a_time(due), run.zone()) + QStringLiteral("  ");
  out += called(run.book, due.lot);
  if (!due.containers.empty())
    out += QStringLiteral(", %1 %2").arg(due.kind.isEmpty() ? QStringLiteral("container") : due.kind,
                                         numbers(due.containers));
  if (!due.place.isEmpty()) out += QStringLiteral(", ") + due.place;
  if (due.frozen) out += QStringLiteral(", frozen");
  if (due.held && due.what != Due::What::Cooling)
    out += QStringLiteral(", NOT TO BE USED: held, recalled or not released");
  if (at_a_time(due)) out += QStringLiteral("  (%1)").arg(left(due, run.now));
  return out + u'\n';
}

}  // namespace

ExitStatus due_now(const Options& options, const DueOptions& wish) {
  auto run = read_ledger_run(options, ledger::Access::Read);
  if (!run) return refuse(run.error(), options.json);
  const auto found = ledger::due(run->ledger.store(), run->now, run->zone(), wish.days);
  if (!found) return refuse({found.error()}, options.json);
  const std::vector<ledger::Counted> counted = ledger::counted(run->ledger.store());
  if (options.json) return reported(print(due_json(*run, *found)), kDone);
  QString out;
  std::optional<Due::What> under;
  for (const Due& due : *found) {
    if (under != due.what) out += QLatin1String(heading(due.what)) + QStringLiteral(":\n");
    under = due.what;
    out += line(*run, due);
  }
  if (found->empty()) out = QStringLiteral("Nothing is due.\n");
  return reported(print(out + counted_text({{}, true, counted}, run->zone())), kDone);
}

}  // namespace lardiner::command
