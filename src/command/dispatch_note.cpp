// lardiner dispatch-note: what left with a note, as the sheet that goes with it.
#include "facts/dispatch_note.h"

#include <algorithm>

#include "command/commands.h"
#include "command/made_sheet.h"
#include "command/one_batch.h"
#include "command/output.h"
#include "command/sheet_ledger.h"
#include "command/work_sheet_json.h"
#include "history/for_use.h"
#include "ledger/dispatches.h"
#include "ledger/entries.h"
#include "ledger/lot_before.h"

namespace lardiner::command {

namespace {

using history::Event;
using history::Holder;
using history::Kind;
using history::Lot;
using problem::Code;
using problem::Error;
using problem::Errors;

// As it was at the moment of loading: still here.
history::Good good_at_loading(const Lot& lot, Holder holder, const QDateTime& loaded) {
  holder.where = history::Where::Here;
  return history::good(lot, holder, loaded);
}

facts::Loaded loaded(const Lot& lot, const Event& event, const std::vector<int>& containers, const Holder& first,
                     const book::AllergenLaw& law) {
  facts::Loaded out;
  out.item = lot.item;
  out.lot = lot.code;
  out.containers = containers_of(lot, containers);
  out.good = good_at_loading(lot, first, event.at);
  out.temperature = event.temperature;
  out.state = first.frozen ? book::State::Frozen : book::State::Chilled;
  if (!lot.made) return out;
  const batch::Fixed facts = history::facts_for_use(lot, law);
  out.declared = facts.batch.declared;
  out.readiness = facts.batch.readiness;
  out.tcs = facts.tcs;
  if (!facts.tcs && !first.frozen) out.state = book::State::Ambient;
  return out;
}

// What a container held before it was loaded.
measure::Quantity held(const Lot& before, const Holder& holder) {
  const auto same = std::find_if(before.holders.begin(), before.holders.end(),
                                 [&](const Holder& one) { return one.number == holder.number; });
  return same == before.holders.end() ? measure::Quantity{holder.left.dimension, 0} : same->left;
}

// Containers of one loading that share a date are one line of the note.
void add(facts::Dispatch& note, const Lot& lot, const Lot& before, const Event& event, const book::AllergenLaw& law) {
  std::vector<const Holder*> left;
  for (const Holder& holder : lot.holders)
    if (std::find(event.containers.begin(), event.containers.end(), holder.number) != event.containers.end())
      left.push_back(&holder);
  while (!left.empty()) {
    const Holder& first = *left.front();
    const history::Good good = good_at_loading(lot, first, event.at);
    std::vector<int> numbers;
    measure::Quantity net{first.left.dimension, 0};
    std::erase_if(left, [&](const Holder* holder) {
      const history::Good other = good_at_loading(lot, *holder, event.at);
      if (other.state != good.state || other.end != good.end || holder->frozen != first.frozen) return false;
      numbers.push_back(holder->number);
      net = net + held(before, *holder);
      return true;
    });
    note.lots.push_back(loaded(lot, event, numbers, first, law));
    note.lots.back().net = net;
  }
}

problem::Expected<bool> add(facts::Dispatch& note, SheetLedger& sheet, const ledger::Loading& loading) {
  ledger::Ledger& ledger = sheet.ledger;
  const auto recorded = ledger::entry_at(ledger.store(), loading.seq);
  if (!recorded) return tl::unexpected(recorded.error());
  const auto before = ledger::lot_before(ledger.store(), loading.lot, loading.seq);
  if (!before) return tl::unexpected(before.error());
  const Lot* lot = ledger.lots().lot(loading.lot);
  if (ledger.store().fault()) return tl::unexpected(*ledger.store().fault());
  if (ledger.lots().unreadable()) return tl::unexpected(*ledger.lots().unreadable());
  if (!lot || !*recorded) return true;
  const Event& event = (*recorded)->entry.event;
  if (!note.loaded_at.isValid() || event.at < note.loaded_at) note.loaded_at = event.at;
  note.by = event.by;
  note.site = event.site;
  if (!event.order.isEmpty() && !note.orders.contains(event.order)) note.orders << event.order;
  add(note, *lot, *before, event, sheet.run.book.law);
  return true;
}

Error nothing_left(const QString& number) {
  return {Code::Unknown,
          QStringLiteral("nothing was dispatched with the note \"%1\"").arg(number),
          {},
          QStringLiteral("write the number that stands in the record of the dispatch")};
}

problem::ExpectedAll<facts::Dispatch> dispatch_of(SheetLedger& ledger, const QString& number) {
  const auto found = ledger::loadings(ledger.ledger.store(), number);
  if (!found) return tl::unexpected(Errors{found.error()});
  if (found->empty()) return tl::unexpected(Errors{nothing_left(number)});
  facts::Dispatch note;
  note.number = number;
  for (const ledger::Loading& loading : *found)
    if (const auto added = add(note, ledger, loading); !added) return tl::unexpected(Errors{added.error()});
  return note;
}

}  // namespace

problem::ExpectedAll<facts::WorkSheet> made_dispatch_note(SheetLedger& ledger, const QString& number) {
  const auto note = dispatch_of(ledger, number);
  if (!note) return tl::unexpected(note.error());
  return facts::dispatch_note(ledger.run.setting(), *note);
}

ExitStatus dispatch_note(const Options& options, const DispatchNoteOptions& wish) {
  auto ledger = read_sheet_ledger(options, wish.sheet.out);
  if (!ledger) return refuse(ledger.error(), options.json);
  const auto sheet = made_dispatch_note(*ledger, wish.note);
  if (!sheet) return refuse(sheet.error(), options.json);
  return hand_over(options, wish.sheet, ledger->run, *sheet, json_of(*sheet));
}

}  // namespace lardiner::command
