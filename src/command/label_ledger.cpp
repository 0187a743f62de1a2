// Labels and the ledger: lots of it as batches to print, records that it knows otherwise, and prints recorded.
#include "command/label_ledger.h"

#include <QFileInfo>
#include <algorithm>

#include "command/corrected_declarations.h"
#include "command/date_text.h"
#include "command/label_otherwise.h"
#include "command/scanned.h"
#include "facts/label_facts.h"
#include "history/for_use.h"
#include "ledger/nearest.h"

namespace lardiner::command {

using history::Event;
using history::Holder;
using history::Kind;
using history::Lot;
using history::Where;
using problem::Code;
using problem::Error;
using problem::Errors;

namespace {

Error unknown_lot(ledger::Ledger& ledger, const QString& code) {
  Error error = ledger::unknown_lot(ledger.store(), code, {}, QStringLiteral("record its making first"));
  error.what.prepend(QStringLiteral("--lot: "));
  return error;
}

const Holder* holder_of(const Lot& lot, int number) {
  const auto found =
      std::find_if(lot.holders.begin(), lot.holders.end(), [&](const Holder& one) { return one.number == number; });
  return found == lot.holders.end() ? nullptr : &*found;
}

Errors not_here(const Lot& lot, const std::vector<int>& containers) {
  Errors errors;
  for (const int number : containers) {
    const Holder* holder = holder_of(lot, number);
    if (holder && holder->where == Where::Here) continue;
    errors.push_back({Code::Conflict,
                      holder ? QStringLiteral("--containers: container %1 of lot %2 is %3")
                                   .arg(number)
                                   .arg(lot.code, history::word(holder->where))
                             : QStringLiteral("--containers: lot %2 has no container %1").arg(number).arg(lot.code),
                      {},
                      QStringLiteral("name containers that are in the kitchen")});
  }
  return errors;
}

// Why a lot that is recorded may not have been read.
std::optional<Error> unread(ledger::Ledger& ledger) {
  return ledger.store().fault() ? ledger.store().fault() : ledger.lots().unreadable();
}

// Which of the containers to be labelled are not to be used any more; empty: none.
QString past_their_date(const Lot& lot, const batch::Batch& batch, const QDateTime& now) {
  std::vector<int> past;
  for (const batch::Container& container : batch.containers) {
    const Holder* holder = container.discarded ? nullptr : holder_of(lot, container.number);
    if (holder && history::good(lot, *holder, now).state == history::Good::State::Past)
      past.push_back(container.number);
  }
  if (past.empty()) return {};
  return QStringLiteral("lot %1, containers %2: past their date; discard them").arg(lot.code, numbers(past));
}

// What a lot is called where its labels were made, by kind of print and the date that they show.
Event print_of(const batch::Batch& batch, Kind kind, const QString& end, bool hold, const QDateTime& now) {
  Event event;
  event.kind = kind;
  event.at = now;
  event.lot = batch.lot;
  event.item = batch.record.item;
  event.what = hold ? QStringLiteral("hold") : QStringLiteral("label");
  event.label_end = end;
  return event;
}

}  // namespace

LabelLedger::LabelLedger(const book::Book& book, const QDateTime& now, ledger::Ledger ledger)
    : book_(&book), now_(now), ledger_(std::move(ledger)), read_to_(ledger_.last()) {}

problem::ExpectedAll<std::optional<LabelLedger>> LabelLedger::open(const Options& options, const book::Book& book,
                                                                   const QDateTime& now, bool needed) {
  const QString path = ledger_path(options, book.kitchen);
  const bool there = QFileInfo::exists(path);
  if (!there && !needed) return std::optional<LabelLedger>();
  auto ledger = ledger::Ledger::open(path, there ? ledger::Access::Write : ledger::Access::Read);
  if (!ledger) return tl::unexpected(Errors{ledger.error()});
  return std::optional<LabelLedger>(LabelLedger(book, now, std::move(*ledger)));
}

ledger::Stamp LabelLedger::stamp() const {
  return {book_->kitchen.station, now_, QString::fromLatin1(book_->kitchen.zone.id())};
}

batch::Batch LabelLedger::batch_of(const Lot& lot, const std::vector<int>& containers) const {
  Lot judged = lot;
  batch::judge_at(*judged.made, now_);
  batch::Batch batch = history::facts_for_use(judged, book_->law).batch;
  for (batch::Container& container : batch.containers) {
    const Holder* holder = holder_of(lot, container.number);
    const bool asked =
        containers.empty() || std::find(containers.begin(), containers.end(), container.number) != containers.end();
    container.discarded = !asked || !holder || holder->where != Where::Here;
    container.reprint = holder && holder->label.valid() && !holder->superseded;
  }
  if (const QString past = past_their_date(lot, batch, now_); !past.isEmpty()) batch.warnings.push_back(past);
  return batch;
}

problem::ExpectedAll<std::vector<batch::Batch>> LabelLedger::batches(const QStringList& lots,
                                                                     const std::vector<int>& containers) {
  std::vector<batch::Batch> batches;
  Errors errors;
  for (const QString& code : lots) {
    const std::vector<ledger::LotName> found = ledger_.lots().named(code);
    const auto ours = std::find_if(found.begin(), found.end(),
                                   [](const ledger::LotName& one) { return one.kind == ledger::LotKind::Made; });
    const Lot* lot = ours == found.end() ? nullptr : ledger_.lots().lot(ours->id);
    if (const std::optional<Error> error = unread(ledger_)) return tl::unexpected(Errors{*error});
    if (!lot || !lot->made) {
      errors.push_back(unknown_lot(ledger_, code));
      continue;
    }
    for (const Error& error : not_here(*lot, containers)) errors.push_back(error);
    batches.push_back(batch_of(*lot, containers));
  }
  if (!errors.empty()) return tl::unexpected(errors);
  return batches;
}

problem::Expected<const Lot*> LabelLedger::lot_of(const batch::Batch& batch) {
  const auto id = ledger_.lots().id(batch.lot, batch.record.item);
  const Lot* lot = id ? ledger_.lots().lot(*id) : nullptr;
  if (const std::optional<Error> error = unread(ledger_)) return tl::unexpected(*error);
  return lot;
}

Errors LabelLedger::stale(const batch::Batch& batch) {
  const auto found = lot_of(batch);
  if (!found) return {found.error()};
  const Lot* lot = *found;
  if (!lot || !lot->made) return unfit_inputs(batch);
  const Otherwise other = otherwise(batch, batch_of(*lot, {}), *lot);
  if (other.how.isEmpty()) return {};
  const QString print = QStringLiteral("print what holds now: lardiner labels --lot %1").arg(batch.lot);
  return {{Code::Conflict, QStringLiteral("lot %1 %2").arg(batch.lot, other.how), batch.record.place,
           other.hint.isEmpty() ? print : other.hint}};
}

// A file does not say what has become of the lots that went in.
Errors LabelLedger::unfit_inputs(const batch::Batch& batch) {
  Errors errors;
  for (const QString& code : batch::lots_named(batch.record)) {
    for (const ledger::LotName& name : ledger_.lots().named(code)) {
      const Lot* lot = ledger_.lots().lot(name.id);
      if (const std::optional<Error> error = unread(ledger_)) return {*error};
      if (!lot) continue;
      if (const QString barred = history::barred(*lot); !barred.isEmpty())
        errors.push_back({Code::Unsafe, QStringLiteral("lot %1, which went into it, is %2").arg(code, barred),
                          batch.record.place, QStringLiteral("use another lot, or release it first")});
      else if (is_otherwise_now(*lot))
        errors.push_back({Code::Conflict,
                          QStringLiteral("lot %1, which went into it, has changed since it came").arg(code),
                          batch.record.place,
                          QStringLiteral("record it first, so that this counts: lardiner record, then labels --lot")});
    }
  }
  if (const QString further = undeclared(batch); errors.empty() && !further.isEmpty())
    errors.push_back(
        {Code::Conflict,
         QStringLiteral("lot %1 is without %2, which a correction adds to what went into it").arg(batch.lot, further),
         batch.record.place,
         QStringLiteral("record it first, so that this counts: lardiner record, then labels --lot")});
  return errors;
}

QString LabelLedger::undeclared(const batch::Batch& batch) {
  QStringList further = corrected_besides(ledger_, *book_, batch.record);
  further.removeIf([&](const QString& substance) { return history::declares(batch.declared, substance); });
  return further.join(QStringLiteral(", "));
}

Errors LabelLedger::made(const batch::Batch& batch, bool hold) {
  const auto found = lot_of(batch);
  if (!found) return {found.error()};
  const Lot* lot = *found;
  if (!lot) return {};
  for (const Kind kind : {Kind::Printed, Kind::Reprinted}) {
    std::map<QString, Event> by_end;
    for (const batch::Container& container : batch.containers) {
      const Holder* holder = holder_of(*lot, container.number);
      const bool here = holder && holder->where == Where::Here;
      if (container.discarded || !here || container.reprint != (kind == Kind::Reprinted)) continue;
      const auto uri = facts::code_uri(book_->kitchen, batch, container);
      const QString end = uri ? label_end(QString::fromLatin1(*uri)) : QString();
      const auto print = by_end.try_emplace(end, print_of(batch, kind, end, hold, now_)).first;
      print->second.containers.push_back(container.number);
    }
    for (auto& [end, event] : by_end) prints_.push_back(std::move(event));
  }
  return {};
}

void LabelLedger::sent(const history::EntryId& print, const std::vector<int>& containers) {
  Event event;
  event.kind = Kind::PrintSent;
  event.at = now_;
  event.lot = prints_.front().lot;
  event.item = prints_.front().item;
  event.containers = containers;
  event.of = print;
  prints_.insert(prints_.begin(), std::move(event));
}

Errors LabelLedger::record_prints(const QString& by) {
  if (prints_.empty()) return {};
  for (Event& event : prints_) event.by = by;
  ledger::Stamp as_read = stamp();
  as_read.read_to = read_to_;
  const auto entries = ledger_.append(prints_, as_read);
  return entries ? Errors{} : entries.error();
}

Errors LabelLedger::void_prints(const QString& by) {
  std::vector<Event> events;
  for (Event event : prints_) {
    event.kind = Kind::Voided;
    event.by = by;
    event.reason = QStringLiteral("the labels did not come to their place");
    events.push_back(std::move(event));
  }
  if (events.empty()) return {};
  const auto entries = ledger_.append(std::move(events), stamp());
  return entries ? Errors{} : entries.error();
}

}  // namespace lardiner::command
