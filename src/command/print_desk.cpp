// What the station's pages ask of its printers, and do with them.
#include "command/print_desk.h"

#include <algorithm>

#include "command/label_bytes.h"
#include "command/medium_page.h"
#include "command/test_label.h"
#include "ledger/entries.h"
#include "printer/job.h"

namespace lardiner::command {

using history::Event;
using history::Kind;
using ledger::Print;
using problem::Code;
using problem::Error;
using problem::Errors;
using station::PrintShown;

namespace {

constexpr int kMostCopies = 9;

Error unknown_print(const QString& id) {
  return {Code::Unknown, QStringLiteral("there is no print %1").arg(id), {}, {}};
}

Error over(const QString& id) {
  return {Code::Conflict, QStringLiteral("print %1 is over already").arg(id), {}, QStringLiteral("look at it again")};
}

Error spoken_to() {
  return {Code::Conflict,
          QStringLiteral("the station waits for an answer of a printer already"),
          {},
          QStringLiteral("try again in ten seconds")};
}

// The print that somebody ends. Errors: there is none, it is over, so many labels it has not.
problem::ExpectedAll<Print> to_end(LedgerRun& run, const station::PrintEnd& wish) {
  const auto entry = history::entry_id(wish.id);
  if (!entry) return tl::unexpected(Errors{unknown_print(wish.id)});
  auto found = ledger::print_named(run.ledger.store(), *entry);
  if (!found) return tl::unexpected(Errors{found.error()});
  if (!*found) return tl::unexpected(Errors{unknown_print(wish.id)});
  if ((*found)->done) return tl::unexpected(Errors{over(wish.id)});
  const auto most = (*found)->sent ? static_cast<int>((*found)->containers.size()) : 0;
  if (wish.good >= 0 && wish.good <= most) return std::move(**found);
  return tl::unexpected(
      Errors{{Code::Range,
              QStringLiteral("%1 labels of print %2 cannot have come out").arg(wish.good).arg(wish.id),
              {},
              QStringLiteral("name the last one that came out well")}});
}

Event event_of(Kind kind, const Print& print, const LedgerRun& run, const QString& by) {
  Event event = ledger::of_print(kind, print);
  event.at = run.now;
  event.by = by;
  return event;
}

// Those of the numbers whose last label is a new one: where it is a reprint, the one before is still on the container.
std::vector<int> newly_labelled(LedgerRun& run, const Print& print, const std::vector<int>& numbers) {
  const auto id = run.ledger.lots().id(print.asked.event.lot, print.asked.event.item);
  const history::Lot* lot = id ? run.ledger.lots().lot(*id) : nullptr;
  std::vector<int> found;
  for (const int number : numbers) {
    if (!lot || number < 1 || static_cast<size_t>(number) > lot->holders.size()) continue;
    const history::EntryId label = lot->holders[static_cast<size_t>(number) - 1].label;
    const auto entry = label.valid() ? ledger::entry_named(run.ledger.store(), label)
                                     : problem::Expected<std::optional<ledger::Recorded>>();
    if (entry && *entry && (*entry)->entry.event.kind == Kind::Printed) found.push_back(number);
  }
  return found;
}

// What takes the labels of the containers back that bear none now; nothing: each has one.
std::optional<Event> voided_of(LedgerRun& run, const Print& print, const std::vector<int>& rest, const QString& by) {
  Event voided = event_of(Kind::Voided, print, run, by);
  voided.containers = newly_labelled(run, print, rest);
  voided.reason = QStringLiteral("print %1: they did not come out").arg(print.asked.id.text());
  return voided.containers.empty() ? std::nullopt : std::optional(std::move(voided));
}

Event asked_again(const LedgerRun& run, const Print& print, const std::vector<int>& rest, const QString& by) {
  Event asked = print.asked.event;
  asked.at = run.now;
  asked.by = by;
  asked.containers = rest;
  return asked;
}

}  // namespace

problem::ExpectedAll<const NamedPrinter*> PrintDesk::named(const QString& printer) const {
  QStringList names;
  for (const NamedPrinter& one : printers_) {
    if (one.name == printer) return &one;
    names << one.name;
  }
  return tl::unexpected(Errors{{Code::Unknown,
                                QStringLiteral("the station has no printer \"%1\"").arg(printer),
                                {},
                                names.isEmpty() ? QStringLiteral("start it with --printer NAME=ADDRESS")
                                                : QStringLiteral("it has ") + names.join(QStringLiteral(", "))}});
}

// Why the printer may still print what it has of a print; nothing: it will not.
std::optional<Error> PrintDesk::not_given_up(const Print& print) const {
  const auto at = named(print.asked.event.printer);
  if (!at) return at.error().front();
  const auto job = printer::find_job((*at)->address, print.job_name);
  if (!job) return job.error();
  if (!*job || (*job)->ended()) return std::nullopt;
  return printer::cancel_job((*at)->address, (*job)->id);
}

problem::Expected<std::vector<station::PrinterShown>> PrintDesk::printers(LedgerRun& run) const {
  std::vector<station::PrinterShown> all;
  for (const NamedPrinter& one : printers_) {
    const auto found = ledger::loaded(run.ledger.store(), one.name);
    if (!found) return tl::unexpected(found.error());
    const Event event = *found ? (*found)->event : Event();
    all.push_back({one.name, event.medium, event.by, event.at});
  }
  return all;
}

problem::ExpectedAll<QString> PrintDesk::ask(LedgerRun& run, const std::vector<words::Language>& packs,
                                             const station::ToPrint& wish, const QString& printer, int copies) const {
  const auto at = named(printer);
  if (!at) return tl::unexpected(at.error());
  if (copies < 1 || copies > kMostCopies)
    return tl::unexpected(Errors{{Code::Range,
                                  QStringLiteral("%1 copies of each label").arg(copies),
                                  {},
                                  QStringLiteral("ask for 1 to %1").arg(kMostCopies)}});
  if (const auto error = wish.medium.isEmpty() ? std::nullopt : unknown_medium(run.book, wish.medium))
    return tl::unexpected(Errors{*error});
  const auto labels = labels_to_come(options_, run.book, packs, run.now,
                                     {wish.lot, wish.containers, wish.medium, wish.by, wish.hold, {}});
  if (!labels) return tl::unexpected(labels.error());
  Event event;
  event.kind = Kind::PrintAsked;
  event.at = run.now;
  event.by = wish.by;
  event.lot = wish.lot;
  event.item = labels->item;
  event.containers = labels->containers;
  event.count = copies;
  event.what = wish.hold ? QStringLiteral("hold") : QStringLiteral("label");
  event.printer = printer;
  event.medium = labels->medium;
  const auto entries = run.ledger.append({std::move(event)}, run.stamp());
  if (!entries) return tl::unexpected(entries.error());
  board_.wake();
  return entries->front().id.text();
}

PrintShown PrintDesk::shown(const Print& print) const {
  const Event& asked = print.asked.event;
  PrintShown out;
  out.id = print.asked.id.text();
  out.lot = asked.lot;
  out.item = asked.item;
  out.containers = print.containers;
  out.printer = asked.printer;
  out.medium = asked.medium;
  out.by = asked.by;
  out.at = asked.at;
  out.copies = std::max(1, asked.count);
  out.sent = print.sent;
  if (print.done) {
    out.came_out = print.done->event.count;
    out.reason = print.done->event.reason;
  } else {
    out.standing = board_.get(out.id).value_or(station::PrintStanding());
  }
  return out;
}

problem::Expected<std::vector<PrintShown>> PrintDesk::open(LedgerRun& run) const {
  const auto found = ledger::open_prints(run.ledger.store());
  if (!found) return tl::unexpected(found.error());
  std::vector<PrintShown> all;
  for (const Print& print : *found) all.push_back(shown(print));
  return all;
}

problem::Expected<std::optional<PrintShown>> PrintDesk::print(LedgerRun& run, const QString& id) const {
  const auto entry = history::entry_id(id);
  if (!entry) return std::optional<PrintShown>();
  const auto found = ledger::print_named(run.ledger.store(), *entry);
  if (!found) return tl::unexpected(found.error());
  return *found ? std::optional(shown(**found)) : std::nullopt;
}

problem::ExpectedAll<QString> PrintDesk::end(LedgerRun& run, const station::PrintEnd& wish) const {
  ledger::Stamp stamp = run.stamp();
  stamp.read_to = run.ledger.last();
  run.ledger.lots().refresh();
  const auto print = to_end(run, wish);
  if (!print) return tl::unexpected(print.error());
  const auto alone = board_.speak();
  if (print->sent && (!alone || board_.is_sending(wish.id))) return tl::unexpected(Errors{spoken_to()});
  const std::optional<Error> kept = print->sent ? not_given_up(*print) : std::nullopt;
  const auto first_bad = print->containers.begin() + wish.good;
  const std::vector<int> rest(first_bad, print->containers.end());
  Event done = event_of(Kind::PrintDone, *print, run, wish.by);
  done.of = print->asked.id;
  done.count = wish.good;
  done.containers.assign(print->containers.begin(), first_bad);
  if (kept && !rest.empty()) done.reason = QStringLiteral("the printer may print the others yet: ") + kept->what;
  std::vector<Event> events{done};
  if (print->sent && !kept)
    if (const auto voided = voided_of(run, *print, rest, wish.by)) events.push_back(*voided);
  const bool again = wish.again && !rest.empty();
  if (again) events.push_back(asked_again(run, *print, rest, wish.by));
  const auto entries = run.ledger.append(std::move(events), stamp);
  if (!entries) return tl::unexpected(entries.error());
  board_.forget(wish.id);
  board_.wake();
  return again ? entries->back().id.text() : QString();
}

problem::ExpectedAll<bool> PrintDesk::print_test_label(LedgerRun& run, const QString& printer,
                                                       const QString& medium_id) const {
  const auto named_one = named(printer);
  if (!named_one) return tl::unexpected(named_one.error());
  if (const auto error = unknown_medium(run.book, medium_id)) return tl::unexpected(Errors{*error});
  const book::Media& medium = *run.book.medium(medium_id);
  const auto label = test_labels(options_, run.book, medium, run.now, true);
  if (!label) return tl::unexpected(label.error());
  const auto alone = board_.speak();
  if (!alone) return tl::unexpected(Errors{spoken_to()});
  const auto at = printer::printer_at((*named_one)->address);
  if (!at) return tl::unexpected(Errors{at.error()});
  printer::JobWish wish;
  wish.name = QStringLiteral("test label, %1").arg(medium_id);
  wish.page = page_of(medium);
  wish.dots_per_inch = medium.dots_per_inch;
  const auto terms = printer::terms_for(wish, *at);
  if (!terms) return tl::unexpected(Errors{terms.error()});
  const auto job = printer::send_job(*at, *terms, label->pdf);
  if (!job) return tl::unexpected(Errors{job.error()});
  board_.tested(printer, medium_id);
  return true;
}

problem::ExpectedAll<bool> PrintDesk::medium_loaded(LedgerRun& run, const QString& printer, const QString& medium,
                                                    const QString& by) const {
  if (const auto at = named(printer); !at) return tl::unexpected(at.error());
  if (const auto error = unknown_medium(run.book, medium)) return tl::unexpected(Errors{*error});
  if (!board_.take_tested(printer, medium))
    return tl::unexpected(Errors{{Code::Missing,
                                  QStringLiteral("no test label proved that \"%1\" has %2 in it").arg(printer, medium),
                                  {},
                                  QStringLiteral("print one and look at it")}});
  Event event;
  event.kind = Kind::MediumLoaded;
  event.at = run.now;
  event.by = by;
  event.printer = printer;
  event.medium = medium;
  const auto entries = run.ledger.append({std::move(event)}, run.stamp());
  if (!entries) return tl::unexpected(entries.error());
  board_.wake();
  return true;
}

}  // namespace lardiner::command
