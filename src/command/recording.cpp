// Rows of batch records and of events as what is appended to the ledger: batches computed with the lots that it has.
#include "command/recording.h"

#include <algorithm>
#include <functional>
#include <set>

#include "batch/lots_of_run.h"
#include "batch/read_records.h"
#include "batch/read_records_parts.h"
#include "command/corrected_declarations.h"
#include "command/following_corrections.h"
#include "command/unfit_lot.h"
#include "history/for_use.h"
#include "history/read_events.h"
#include "ledger/entries.h"
#include "ledger/on_hand.h"

namespace lardiner::command {

using batch::Fixed;
using batch::Input;
using history::Event;
using history::Kind;
using problem::Code;
using problem::Errors;

namespace {

class Gathering {
 public:
  Gathering(LedgerRun& run, bool hold) : run_(run), hold_(hold) {}

  Recording gather(std::vector<batch::Record> records, std::vector<Event> events) {
    events_ = &events;
    batch::LotsOfRun of_run(records, run_.book);
    for (const size_t at : of_run.latest_first())
      complete(records[at],
               [&](const QString& item) { return there(records[at], item) + of_run.may_have_been(at, item); });
    compute(std::move(records));
    std::stable_sort(events.begin(), events.end(), [](const Event& a, const Event& b) { return a.at < b.at; });
    for (Event& event : events) append(std::move(event));
    return std::move(out_);
  }

 private:
  using LotsOf = std::function<QStringList(const QString& item)>;

  // What the record leaves unsaid, and the ledger and the other records know: which lots an input may have been, and
  // their dates.
  void complete(batch::Record& record, const LotsOf& may_have_been) {
    if (record.deed == batch::Deed::Made)
      add_unlisted(record);
    else
      know_own_package(record);
    for (Input& input : record.inputs) {
      if (input.lot.isEmpty()) input.candidates = may_have_been(input.item);
      check_item(input);
      for (const QString& code : input.lot.isEmpty() ? input.candidates : QStringList{input.lot}) {
        know(record, input, code);
        know_from_file(record, input, code);
      }
    }
  }

  QStringList there(const batch::Record& record, const QString& item) {
    return ledger::lots_there(run_.ledger.store(), item, record.made_at, batch::latest_use(record, run_.zone()));
  }

  // What a record may leave out, so that its lots count as assumed: nothing that needs a date of its own, for such an
  // input has to be written.
  bool may_be_left_out(const QString& item) const {
    const auto opened = [](const book::ShelfLife& life) {
      return life.state == book::State::Opened && life.kind == book::EndKind::UseBy;
    };
    if (const book::Ingredient* ingredient = run_.book.ingredient(item))
      return !ingredient->always_there && ingredient->tcs.is == book::TcsStatement::Is::No &&
             std::none_of(ingredient->shelf_lives.begin(), ingredient->shelf_lives.end(), opened);
    const book::Product* product = run_.book.product(item);
    return product && product->tcs.is == book::TcsStatement::Is::No;
  }

  // The formula has it, so it went in: of any lot, or of one that nobody recorded.
  void add_unlisted(batch::Record& record) {
    const book::Product* product = run_.book.product(record.item);
    if (!product) return;
    for (const book::FormulaLine& line : product->formula) {
      if (batch::lists(record, line.item) || !may_be_left_out(line.item)) continue;
      Input input;
      input.item = line.item;
      input.place = record.place;
      record.inputs.push_back(std::move(input));
    }
  }

  void append(Event event) {
    const std::vector<Event> following = following_corrections(run_, event);
    out_.events.push_back(std::move(event));
    out_.events.insert(out_.events.end(), following.begin(), following.end());
  }

  void refuse(Code code, const QString& what, const problem::Place& place, const QString& hint) {
    out_.errors.push_back({code, what, place, hint});
  }

  // A lot of ours is of one product, whatever a record takes it for.
  void check_item(const Input& input) {
    if (input.lot.isEmpty() || run_.ledger.lots().id(input.lot, input.item)) return;
    for (const ledger::LotName& other : run_.ledger.lots().named(input.lot))
      if (other.kind == ledger::LotKind::Made)
        refuse(Code::Conflict,
               QStringLiteral("lot %1 is of \"%2\", not of \"%3\"").arg(input.lot, other.item, input.item), input.place,
               QStringLiteral("correct the item or the lot"));
  }

  // Its declaration is that of the supplier whose package it is.
  void check_supplier(const history::Lot& lot, const QString& written, const problem::Place& place) {
    if (written.isEmpty() || lot.supplier_item.isEmpty() || written == lot.supplier_item) return;
    refuse(Code::Conflict,
           QStringLiteral("lot %1 of \"%2\" was received as \"%3\", not as \"%4\"")
               .arg(lot.code, lot.item, lot.supplier_item, written),
           place, QStringLiteral("correct the supplier item or the lot"));
  }

  // A lot of the ledger: ours is computed with, of a supplier's the date on its package counts.
  void know(const batch::Record& record, Input& input, const QString& code) {
    const auto id = run_.ledger.lots().id(code, input.item);
    const history::Lot* lot = id ? run_.ledger.lots().lot(*id) : nullptr;
    if (!lot) return;
    if (lot->made && known_.insert(code).second) earlier_.push_back(history::facts_for_use(*lot, run_.book.law));
    if (!lot->received) return;
    know_package(input, *lot);
    know_opening(record, input, *id);
  }

  // Of a package that is opened, thawed, cut or decanted: what its receipt says of it.
  void know_own_package(batch::Record& record) {
    const auto id = run_.ledger.lots().id(record.supplier_lot, record.item);
    const history::Lot* lot = id && !record.supplier_lot.isEmpty() ? run_.ledger.lots().lot(*id) : nullptr;
    if (!lot || !lot->received) return;
    for (const auto& stated : {lot->received->stated, lot->not_after})
      if (stated && (!record.stated || stated->end < record.stated->end)) record.stated = stated;
    check_supplier(*lot, record.supplier_item, record.place);
    if (record.supplier_item.isEmpty()) record.supplier_item = lot->supplier_item;
  }

  void know_package(Input& input, const history::Lot& lot) {
    for (const auto& stated : {lot.received->stated, lot.not_after})
      if (stated && (!input.stated || stated->end < input.stated->end)) input.stated = stated;
    if (!input.lot.isEmpty()) check_supplier(lot, input.supplier_item, input.place);
    if (input.supplier_item.isEmpty() && !input.lot.isEmpty()) input.supplier_item = lot.supplier_item;
  }

  // When its packages were first opened and last frozen and thawed, as far as that was before the making was over:
  // nobody says which package was used.
  void know_opening(const batch::Record& record, Input& input, qint64 lot) {
    const auto entries = ledger::entries_of_lot(run_.ledger.store(), lot);
    if (!entries) return out_.errors.push_back(entries.error());
    const QDateTime end = batch::latest_use(record, run_.zone());
    for (const ledger::Recorded& recorded : *entries)
      if (recorded.entry.event.at <= end) take_opening(input, recorded.entry.event);
  }

  static void take_opening(Input& input, const Event& event) {
    if (event.kind == Kind::Opened && (!input.opened_at || event.at < *input.opened_at)) input.opened_at = event.at;
    if (event.kind == Kind::Frozen && !input.frozen_at) input.frozen_at = event.at;
    if (event.kind == Kind::Thawed && !input.thawed_at) input.thawed_at = event.at;
  }

  // The receipt of a supplier's lot may stand in the same file, and what befell its packages.
  void know_from_file(const batch::Record& record, Input& input, const QString& code) {
    if (!run_.book.ingredient(input.item)) return;
    const QDateTime end = batch::latest_use(record, run_.zone());
    for (const Event& event : *events_) {
      if (event.lot != code || event.at > end || (!event.item.isEmpty() && event.item != input.item)) continue;
      take_opening(input, event);
      if (event.kind != Kind::Received || !event.accepted) continue;
      if (event.stated && (!input.stated || event.stated->end < input.stated->end)) input.stated = event.stated;
      if (input.supplier_item.isEmpty() && !input.lot.isEmpty()) input.supplier_item = event.supplier_item;
    }
  }

  void compute(std::vector<batch::Record> records) {
    batch::Computing computing(run_.book, std::move(records), earlier_, run_.now);
    std::vector<Fixed> made;
    while (std::optional<Fixed> fixed = computing.next_fixed()) made.push_back(std::move(*fixed));
    for (const size_t at : sources_first(made)) {
      add_corrections(made[at]);
      refuse_unfit(made[at]);
      add(std::move(made[at]));
    }
  }

  // Of suppliers' lots; of ours the facts say so themselves. What was made of it is recorded on hold, as what was made
  // of a lot of ours, and so is what was made of that in the same file.
  void refuse_unfit(Fixed& fixed) {
    const batch::Record& record = fixed.batch.record;
    Errors unfit;
    for (const Input& input : record.inputs)
      for (const QString& code : input.lot.isEmpty() ? input.candidates : QStringList{input.lot})
        add_unfit(unfit, record, {input.item, code, input.place});
    if (record.deed != batch::Deed::Made) add_unfit(unfit, record, {record.item, record.supplier_lot, record.place});
    for (const QString& lot : batch::lots_named(record))
      if (unfit_of_run_.contains(lot))
        unfit.push_back({Code::Unsafe, QStringLiteral("lot %1 which went into it is refused itself").arg(lot),
                         record.place, QStringLiteral("hold this batch too")});
    if (!unfit.empty()) unfit_of_run_.insert(fixed.batch.lot);
    for (const problem::Error& error : unfit) batch::refuse_input(fixed, error);
  }

  struct WentIn {
    QString item, lot;
    problem::Place place;
  };
  void add_unfit(Errors& to, const batch::Record& record, const WentIn& one) {
    const Unfit unfit = unfit_of(run_, one.item, one.lot, record.made_at);
    if (!unfit.why.isEmpty())
      to.push_back({Code::Unsafe, QStringLiteral("lot %1 of \"%2\" is %3").arg(one.lot, one.item, unfit.why), one.place,
                    unfit.remedy});
  }

  // What corrections say is in the lots that went into it, which the book may not know yet. Lots of ours that were
  // recorded before declare it already.
  void add_corrections(Fixed& fixed) {
    const batch::Record& record = fixed.batch.record;
    QStringList more = corrected_besides(run_.ledger, run_.book, record);
    for (const QString& lot : batch::lots_named(record)) more += further_of_run_.value(lot);
    if (more.isEmpty()) return;
    more.removeDuplicates();
    history::declare_besides(fixed.batch.declared, more, run_.book.law);
    if (!fixed.batch.lot.isEmpty()) further_of_run_.insert(fixed.batch.lot, more);
  }

  // A lot is recorded before what is made of it, whatever the order of the records.
  static std::vector<size_t> sources_first(const std::vector<Fixed>& made) {
    std::vector<size_t> order;
    std::vector<bool> taken(made.size(), false);
    QHash<QString, size_t> by_lot;
    for (size_t at = 0; at < made.size(); ++at) by_lot.insert(made[at].batch.lot, at);
    const std::function<void(size_t)> take = [&](size_t at) {
      if (taken[at]) return;
      taken[at] = true;
      for (const QString& lot : batch::lots_named(made[at].batch.record))
        if (const auto found = by_lot.constFind(lot); found != by_lot.constEnd()) take(*found);
      order.push_back(at);
    };
    for (size_t at = 0; at < made.size(); ++at) take(at);
    return order;
  }

  void add(Fixed fixed) {
    const batch::Batch& batch = fixed.batch;
    for (const QString& warning : batch.warnings) out_.warnings.push_back(batch.lot + QStringLiteral(": ") + warning);
    if (!batch.refused.empty() && !batch::held_for_cooling_alone(fixed)) {
      Errors& to = hold_ && !batch.lot.isEmpty() ? out_.held : out_.errors;
      to.insert(to.end(), batch.refused.begin(), batch.refused.end());
    }
    Event event;
    event.kind = Kind::Made;
    event.at = batch.record.made_at;
    event.by = batch.record.by;
    event.lot = batch.lot;
    event.item = batch.record.item;
    event.supplier_item = batch.record.supplier_item;
    event.book_hash = QString::fromLatin1(run_.book.hash.toHex());
    event.source = batch.record.place;
    event.made = std::move(fixed);
    append(std::move(event));
  }

  LedgerRun& run_;
  bool hold_;
  const std::vector<Event>* events_ = nullptr;  // of the file
  Recording out_;
  std::vector<Fixed> earlier_;
  std::set<QString> known_;
  QSet<QString> unfit_of_run_;                  // lots of this file that were made of what is unfit
  QHash<QString, QStringList> further_of_run_;  // lot of this file -> what corrections add to it
};

}  // namespace

Recording recording(LedgerRun& run, const std::vector<reader::Value>& rows, bool decimal_comma, bool hold) {
  std::vector<reader::Value> events, batches;
  for (const reader::Value& row : rows) (history::is_event(row) ? events : batches).push_back(row);
  batch::Records records = batch::read_records(batches, run.book, {run.now, decimal_comma});
  history::Events read = history::read_events(events, run.book, {run.now, decimal_comma});
  Recording out = Gathering(run, hold).gather(std::move(records.records), std::move(read.events));
  for (const Errors* errors : {&records.errors, &read.errors})
    out.errors.insert(out.errors.end(), errors->begin(), errors->end());
  problem::sort(out.errors);
  return out;
}

problem::ExpectedAll<Appended> append_rows(LedgerRun& run, const std::vector<reader::Value>& rows, bool decimal_comma,
                                           bool hold) {
  for (int attempt = 1;; ++attempt) {
    ledger::Stamp stamp = run.stamp();
    stamp.read_to = run.ledger.last();
    run.ledger.lots().refresh();
    Recording read = recording(run, rows, decimal_comma, hold);
    if (!read.errors.empty()) return tl::unexpected(read.errors);
    const auto is_made = [](const Event& event) { return event.made.has_value(); };
    if (std::none_of(read.events.begin(), read.events.end(), is_made)) stamp.read_to.reset();
    auto entries = run.ledger.append(std::move(read.events), stamp);
    if (entries) return Appended{std::move(*entries), std::move(read.held), std::move(read.warnings)};
    const bool again = stamp.read_to && run.ledger.last() != *stamp.read_to && attempt < kMostAttempts;
    if (!again) return tl::unexpected(entries.error());
  }
}

}  // namespace lardiner::command
