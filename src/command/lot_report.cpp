// The history of one lot: what it is, whether it is good and until when and why, then all that is known of it.
#include "command/lot_report.h"

#include <QJsonArray>
#include <algorithm>

#include "batch/phrases.h"
#include "command/amount_json.h"
#include "command/date_text.h"
#include "command/entry_text.h"
#include "command/lot_called.h"
#include "command/lot_standing.h"
#include "command/unfit_lot.h"
#include "history/for_use.h"
#include "history/groups.h"

namespace lardiner::command {

using history::Entry;
using history::Good;
using history::Group;
using history::Kind;
using history::Lot;
using ledger::Edge;
using ledger::LotName;

namespace {

std::vector<Edge> edges_of(ledger::Store& store, qint64 lot, const char* sql) {
  std::vector<Edge> edges;
  ledger::Statement& rows = store.statement(sql).with(lot);
  while (rows.next()) {
    Edge edge{rows.number(0), rows.number(1), rows.number(2) != 0, std::nullopt};
    if (!rows.absent(3))
      edge.amount = measure::Quantity{static_cast<measure::Dimension>(rows.number(4)), rows.number(3)};
    edges.push_back(edge);
  }
  return edges;
}

const LotName* name_of(const LotReport& report, qint64 id) {
  const auto found =
      std::find_if(report.others.begin(), report.others.end(), [&](const LotName& lot) { return lot.id == id; });
  return found == report.others.end() ? nullptr : &*found;
}

class Telling {
 public:
  Telling(const LedgerRun& run, const LotReport& report, const Asked& asked)
      : run_(run), report_(report), asked_(asked) {}

  QString tell() {
    head();
    if (report_.lot) {
      standing();
      allergens();
      reasons();
      readings();
    }
    edges(report_.inputs, true);
    edges(report_.outputs, false);
    entries();
    return out_;
  }

 private:
  void line(const QString& text) { out_ += text + u'\n'; }

  void head() {
    QString head = called(run_.book, report_.name);
    if (report_.lot && report_.lot->made)
      head += QStringLiteral(", made %1 by %2")
                  .arg(moment(report_.lot->began, false, run_.zone()), report_.lot->made->batch.record.by);
    if (report_.lot && report_.lot->received)
      head += QStringLiteral(", received ") + moment(report_.lot->began, false, run_.zone());
    if (report_.name.kind == ledger::LotKind::Named) head += QStringLiteral(": known only from what was made of it");
    if (!report_.barred.isEmpty()) head += QStringLiteral("; ") + report_.barred.toUpper();
    line(head);
  }

  QString group_line(const Group& group) const {
    const history::Holder& holder = group.first;
    QStringList parts{verdict(group.good.state)};
    const bool gone = group.good.state == Good::State::Gone;
    if (gone) parts = {history::word(holder.where)};
    if (group.good.use_by) parts << headline(*group.good.use_by, run_.zone());
    if (!group.good.use_by && group.good.end)
      parts << QStringLiteral("until ") + moment(*group.good.end, true, run_.zone());
    if (!group.good.why.isEmpty() && !gone) parts << group.good.why;
    QString where = holder.where == history::Where::Here ? holder.place : holder.site;
    if (!holder.order.isEmpty()) where += QStringLiteral(", order ") + holder.order;
    if (!where.trimmed().isEmpty()) parts << where;
    if (holder.superseded && holder.where == history::Where::Here) parts << QStringLiteral("needs a new label");
    return parts.join(QStringLiteral("; "));
  }

  void standing() {
    const QString old = superseded(run_, *report_.lot, asked_);
    if (!old.isEmpty()) line(QStringLiteral("  ") + old);
    for (const Group& group : history::groups(*report_.lot, asked_.container, run_.now))
      line(QStringLiteral("  container%1 %2: %3")
               .arg(group.containers.size() == 1 ? QString() : QStringLiteral("s"), numbers(group.containers),
                    group_line(group)));
    for (const history::HoldOn& hold : report_.lot->holds)
      line(QStringLiteral("  on hold since %1 (%2): %3")
               .arg(moment(hold.since, false, run_.zone()), hold.entry.text(), hold.reason));
    for (const history::EntryId& recall : report_.lot->recalls)
      line(QStringLiteral("  in the recall of entry ") + recall.text());
  }

  // Of a supplier's lot as the book has its item, with what corrections add.
  book::Declared declared() const {
    const history::Lot& lot = *report_.lot;
    const book::Ingredient* ingredient = lot.made ? nullptr : run_.book.ingredient(lot.item);
    const book::SupplierItem* item = ingredient ? ingredient->supplier_item(lot.supplier_item) : nullptr;
    book::Declared declared = lot.made ? lot.made->batch.declared : item ? item->declared : book::Declared();
    history::declare_besides(declared, lot.further_allergens, run_.book.law);
    return declared;
  }

  void allergens() {
    const book::Declared declared = this->declared();
    QStringList contains;
    for (const book::Declaration& declaration : declared.contains)
      contains << (declaration.species.isEmpty()
                       ? declaration.substance
                       : declaration.substance + QStringLiteral(" (%1)").arg(declaration.species));
    contains.removeDuplicates();
    contains.sort();
    if (!declared.stated) contains << QStringLiteral("allergens NOT KNOWN in full");
    line(QStringLiteral("  contains: ") +
         (contains.isEmpty() ? QStringLiteral("nothing declared") : contains.join(QStringLiteral(", "))));
  }

  void reasons() {
    if (!report_.lot->made) return;
    for (const Group& group : history::groups(*report_.lot, asked_.container, run_.now)) {
      if (!group.good.use_by || group.good.state == Good::State::Gone) continue;
      line(QStringLiteral("  why, container%1 %2:")
               .arg(group.containers.size() == 1 ? QString() : QStringLiteral("s"), numbers(group.containers)));
      for (const batch::Reason& reason : group.good.use_by->reasons) out_ += reason_line(reason, run_.zone());
    }
  }

  void readings() {
    if (!report_.lot->made) return;
    const batch::Batch& batch = report_.lot->made->batch;
    for (const batch::CookReading& cook : batch.record.cooked)
      line(QStringLiteral("  cooked: %1 at %2")
               .arg(batch::reading_text(cook.core), moment(cook.at, false, run_.zone())));
    for (const batch::CoolReading& cool : batch.record.cooled)
      line(QStringLiteral("  cooling: %1 at %2")
               .arg(batch::reading_text(cool.core), moment(cool.at, false, run_.zone())));
    static const char* const kStates[] = {"", "pending", "met", "MISSED"};
    if (batch.cooling.state != batch::Cooling::State::NotNeeded)
      line(QStringLiteral("  cooling limits: %1%2")
               .arg(QLatin1String(kStates[static_cast<int>(batch.cooling.state)]),
                    batch.cooling.why.isEmpty() ? QString() : QStringLiteral(": ") + batch.cooling.why));
  }

  void edges(const std::vector<Edge>& edges, bool inputs) {
    if (edges.empty()) return;
    line(inputs ? QStringLiteral("  made of:") : QStringLiteral("  went into:"));
    for (const Edge& edge : edges) {
      const LotName* other = name_of(report_, inputs ? edge.input : edge.output);
      if (!other) continue;
      QString text = QStringLiteral("    ") + called(run_.book, *other);
      if (edge.amount) text += QStringLiteral(", ") + amount_text(*edge.amount, run_.book.kitchen.units);
      if (edge.assumed) text += QStringLiteral(" (assumed: nobody said which lot)");
      line(text);
    }
  }

  void entries() {
    if (!report_.entries.empty()) line(QStringLiteral("  recorded:"));
    for (const ledger::Recorded& recorded : report_.entries)
      line(QStringLiteral("    ") + entry_line(recorded.entry, run_.zone()));
  }

  const LedgerRun& run_;
  const LotReport& report_;
  const Asked& asked_;
  QString out_;
};

QJsonObject group_json(const LedgerRun& run, const Group& group) {
  QJsonObject out{{QStringLiteral("verdict"), verdict(group.good.state)},
                  {QStringLiteral("good"), group.good.state == Good::State::Good},
                  {QStringLiteral("where"), history::word(group.first.where)},
                  {QStringLiteral("place"), group.first.place},
                  {QStringLiteral("site"), group.first.site},
                  {QStringLiteral("order"), group.first.order},
                  {QStringLiteral("why"), group.good.why},
                  {QStringLiteral("label_superseded"), group.first.superseded}};
  QJsonArray containers;
  for (const int number : group.containers) containers.append(number);
  out.insert(QStringLiteral("containers"), containers);
  if (group.good.use_by)
    out.insert(QStringLiteral("date"), use_by_json(*group.good.use_by, group.containers, run.zone()));
  if (group.good.end) out.insert(QStringLiteral("end"), group.good.end->toTimeZone(run.zone()).toString(Qt::ISODate));
  return out;
}

QJsonArray edges_json(const LedgerRun& run, const LotReport& report, const std::vector<Edge>& edges, bool inputs) {
  QJsonArray out;
  for (const Edge& edge : edges) {
    const LotName* other = name_of(report, inputs ? edge.input : edge.output);
    if (!other) continue;
    QJsonObject one{{QStringLiteral("item"), other->item},
                    {QStringLiteral("lot"), other->code},
                    {QStringLiteral("assumed"), edge.assumed}};
    if (edge.amount) one.insert(QStringLiteral("quantity"), json_of(*edge.amount, run.book.kitchen.units));
    out.append(one);
  }
  return out;
}

}  // namespace

problem::Expected<LotReport> lot_report(LedgerRun& run, const LotName& name) {
  ledger::Store& store = run.ledger.store();
  LotReport report{name, std::nullopt, {}, {}, {}, {}, {}};
  if (const Lot* lot = run.ledger.lots().lot(name.id)) report.lot = *lot;
  if (!report.lot && run.ledger.lots().unreadable()) return tl::unexpected(*run.ledger.lots().unreadable());
  auto entries = ledger::entries_of_lot(store, name.id);
  if (!entries) return tl::unexpected(entries.error());
  report.entries = std::move(*entries);
  report.inputs = edges_of(
      store, name.id, "SELECT output, input, assumed, amount, dimension FROM input WHERE output = ? ORDER BY input");
  report.outputs = edges_of(
      store, name.id, "SELECT output, input, assumed, amount, dimension FROM input WHERE input = ? ORDER BY output");
  for (const auto* edges : {&report.inputs, &report.outputs})
    for (const Edge& edge : *edges)
      if (const auto other = run.ledger.lots().named(edges == &report.inputs ? edge.input : edge.output))
        report.others.push_back(*other);
  if (name.kind == ledger::LotKind::Named) report.barred = unfit_of(run, name.item, name.code, run.now).why;
  if (store.fault()) return tl::unexpected(*store.fault());
  return report;
}

QString text(const LedgerRun& run, const LotReport& report, const Asked& asked) {
  return Telling(run, report, asked).tell();
}

QJsonObject json_of(const LedgerRun& run, const LotReport& report, const Asked& asked) {
  QJsonArray containers, entries;
  if (report.lot)
    for (const Group& group : history::groups(*report.lot, asked.container, run.now))
      containers.append(group_json(run, group));
  for (const ledger::Recorded& recorded : report.entries) entries.append(entry_json(recorded.entry, run.zone()));
  QJsonObject out{{QStringLiteral("lot"), report.name.code},
                  {QStringLiteral("item"), report.name.item},
                  {QStringLiteral("name"), item_name(run.book, report.name)},
                  {QStringLiteral("containers"), containers},
                  {QStringLiteral("made_of"), edges_json(run, report, report.inputs, true)},
                  {QStringLiteral("went_into"), edges_json(run, report, report.outputs, false)},
                  {QStringLiteral("entries"), entries}};
  if (report.lot) out.insert(QStringLiteral("began"), report.lot->began.toTimeZone(run.zone()).toString(Qt::ISODate));
  if (report.lot) out.insert(QStringLiteral("on_hold"), !report.lot->holds.empty());
  if (report.lot) out.insert(QStringLiteral("in_recall"), !report.lot->recalls.empty());
  if (report.lot) out.insert(QStringLiteral("superseded"), superseded(run, *report.lot, asked));
  return out;
}

}  // namespace lardiner::command
