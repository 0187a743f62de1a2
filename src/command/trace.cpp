// lardiner trace: what a lot was made of and what was made of it, through any depth, with the balance of its amounts.
#include <QJsonArray>

#include "command/amount_json.h"
#include "command/commands.h"
#include "command/date_text.h"
#include "command/lineage_file.h"
#include "command/lot_called.h"
#include "command/output.h"
#include "command/traced.h"

namespace lardiner::command {

namespace {

using ledger::Edge;
using ledger::LotName;

QString lot_text(const LedgerRun& run, const Traced& traced, qint64 id) {
  const LotName* lot = traced.lot(id);
  return lot ? called(run.book, *lot) : QString();
}

// Each lot once, beneath the one through which it is reached first; a further way to it is said in a line of its own.
class Tree {
 public:
  Tree(const LedgerRun& run, const Traced& traced, ledger::Direction way) : run_(run), traced_(traced), way_(way) {}

  QString tell() {
    add(traced_.lineage.of, 1);
    return out_;
  }

 private:
  void add(qint64 id, int depth) {
    for (const Edge& edge : traced_.lineage.edges) {
      const bool forward = way_ == ledger::Direction::Forward;
      if ((forward ? edge.input : edge.output) != id) continue;
      const qint64 other = forward ? edge.output : edge.input;
      out_ += QString(2 * depth, u' ') + lot_text(run_, traced_, other);
      if (edge.amount) out_ += QStringLiteral(", ") + amount_text(*edge.amount, run_.book.kitchen.units);
      if (edge.assumed) out_ += QStringLiteral(" (assumed)");
      const bool again = told_.contains(other);
      out_ += again ? QStringLiteral(" (as above)\n") : QStringLiteral("\n");
      told_ << other;
      if (!again) add(other, depth + 1);
    }
  }

  const LedgerRun& run_;
  const Traced& traced_;
  ledger::Direction way_;
  QList<qint64> told_;
  QString out_;
};

QString balance_text(const LedgerRun& run, const history::Balance& balance) {
  const auto amount = [&](measure::Quantity quantity) { return amount_text(quantity, run.book.kitchen.units); };
  QString out = QStringLiteral("Balance: made %1 = used %2 + dispatched %3 + discarded %4 + missing %5 + on hand %6")
                    .arg(amount(balance.made), amount(balance.used), amount(balance.dispatched),
                         amount(balance.discarded), amount(balance.missing), amount(balance.on_hand));
  if (balance.difference.amount > 0)
    out += QStringLiteral(" + %1 that nobody accounts for").arg(amount(balance.difference));
  if (balance.difference.amount < 0)
    out += QStringLiteral(" - %1 that went and was not there")
               .arg(amount({balance.difference.dimension, -balance.difference.amount}));
  if (balance.unsaid > 0)
    out += balance.unsaid == 1
               ? QStringLiteral("; not balanced: nobody wrote how much 1 batch took")
               : QStringLiteral("; not balanced: nobody wrote how much %1 batches took").arg(balance.unsaid);
  return out + u'\n';
}

QString text_of(const LedgerRun& run, const Traced& traced) {
  QString out = lot_text(run, traced, traced.lineage.of) + u'\n';
  const QString back = Tree(run, traced, ledger::Direction::Backward).tell();
  const QString forward = Tree(run, traced, ledger::Direction::Forward).tell();
  out += QStringLiteral("Made of:\n") + (back.isEmpty() ? QStringLiteral("  nothing that is recorded\n") : back);
  out +=
      QStringLiteral("Went into:\n") + (forward.isEmpty() ? QStringLiteral("  nothing that is recorded\n") : forward);
  if (!traced.perhaps.empty()) {
    out += QStringLiteral("May also be in these, which name no lot of it:\n");
    for (const LotName& lot : traced.perhaps) out += QStringLiteral("  ") + called(run.book, lot) + u'\n';
  }
  if (traced.balance) out += balance_text(run, *traced.balance);
  return out;
}

QJsonObject lot_json(const LedgerRun& run, const LotName& lot) {
  static const char* const kKinds[] = {"named", "made", "received"};
  QJsonObject out{{QStringLiteral("id"), lot.id},
                  {QStringLiteral("lot"), lot.code},
                  {QStringLiteral("item"), lot.item},
                  {QStringLiteral("name"), item_name(run.book, lot)},
                  {QStringLiteral("kind"), QLatin1String(kKinds[static_cast<int>(lot.kind)])}};
  if (lot.began)
    out.insert(QStringLiteral("began"), QDateTime::fromSecsSinceEpoch(*lot.began, run.zone()).toString(Qt::ISODate));
  return out;
}

QJsonObject json_of(const LedgerRun& run, const Traced& traced) {
  const measure::System units = run.book.kitchen.units;
  QJsonArray lots, edges, perhaps;
  for (const LotName& lot : traced.lineage.lots) lots.append(lot_json(run, lot));
  for (const LotName& lot : traced.perhaps) perhaps.append(lot_json(run, lot));
  for (const Edge& edge : traced.lineage.edges)
    edges.append(JsonObject(units)
                     .put("from", QJsonValue(edge.input))
                     .put("into", QJsonValue(edge.output))
                     .put("assumed", QJsonValue(edge.assumed))
                     .put("quantity", edge.amount)
                     .json());
  QJsonObject out{{QStringLiteral("of"), traced.lineage.of},
                  {QStringLiteral("lots"), lots},
                  {QStringLiteral("edges"), edges},
                  {QStringLiteral("perhaps_in"), perhaps}};
  if (traced.balance) {
    const history::Balance& b = *traced.balance;
    out.insert(QStringLiteral("balance"), JsonObject(units)
                                              .put("made", b.made)
                                              .put("used", b.used)
                                              .put("dispatched", b.dispatched)
                                              .put("discarded", b.discarded)
                                              .put("missing", b.missing)
                                              .put("on_hand", b.on_hand)
                                              .put("difference", b.difference)
                                              .put("not_written", QJsonValue(b.unsaid))
                                              .json());
  }
  return out;
}

}  // namespace

ExitStatus trace(const Options& options, const TraceOptions& wish) {
  auto run = read_ledger_run(options, ledger::Access::Read);
  if (!run) return refuse(run.error(), options.json);
  const auto lot = lot_named(run->ledger, wish.lot, wish.item);
  if (!lot) return refuse({lot.error()}, options.json);
  const auto traced = traced_lot(*run, lot->id);
  if (!traced) return refuse({traced.error()}, options.json);
  if (!wish.out.isEmpty())
    if (const problem::Errors errors = write_lineage(options, *traced, wish.out, wish.replace); !errors.empty())
      return refuse(errors, options.json);
  return reported(options.json ? print(json_of(*run, *traced)) : print(text_of(*run, *traced)), kDone);
}

}  // namespace lardiner::command
