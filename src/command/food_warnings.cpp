// What food that came, left or was reheated asks for, told as it is recorded.
#include "command/food_warnings.h"

#include <algorithm>

#include "batch/phrases.h"
#include "book/limit_text.h"
#include "command/food_limits.h"
#include "command/sheet_ledger.h"

namespace lardiner::command {

namespace {

using history::Entry;
using history::Event;
using history::Good;
using history::Kind;
using problem::Error;

Error warning(const Event& event, const QString& what, const QString& remedy) {
  return {problem::Code::Unsafe, QStringLiteral("warning: ") + what, event.source, remedy};
}

class Warning {
 public:
  Warning(LedgerRun& run, problem::Errors& out) : run_(run), rules_(run.book.rules), out_(out) {}

  void look_at(const Entry& entry) {
    const Event& event = entry.event;
    const history::Lot* lot = lot_of(run_.ledger, event.lot, event.item);
    switch (event.kind) {
      case Kind::Dispatched:
        if (lot) look_at_state(*lot, event);
        return look_at_way(lot, event);
      case Kind::Arrived:
        look_at_arrived(lot, event);
        return look_at_way(lot, event);
      case Kind::Received:
        return look_at_receipt(lot, event);
      case Kind::Returned:
        return look_at_way(lot, event);
      case Kind::Reheated:
        return look_at_reheat(event);
      case Kind::HotHeld:
      case Kind::Reading:
        return look_at_holding(event);
      default:
        return;
    }
  }

 private:
  static bool controlled(const history::Lot& lot) { return lot.made ? lot.made->tcs : lot.received->tcs; }

  // Of a note all lots that are on it.
  void look_at_arrived(const history::Lot* lot, const Event& event) {
    if (!event.accepted) return;
    if (lot) return look_at_state(*lot, event);
    std::vector<qint64> on_it;
    ledger::Statement& rows =
        run_.ledger.store().statement("SELECT DISTINCT lot FROM holder WHERE note = ? AND note <> '' ORDER BY lot");
    rows.with(event.note);
    while (rows.next()) on_it.push_back(rows.number(0));
    for (const qint64 id : on_it)
      if (const history::Lot* one = run_.ledger.lots().lot(id)) look_at_state(*one, event);
  }

  // What must not be served, and why: of the first container of which that is so.
  void look_at_state(const history::Lot& lot, const Event& event) {
    for (const history::Holder& holder : lot.holders) {
      if (!is_meant(holder, event)) continue;
      const Good good = history::good(lot, holder, event.at);
      const bool undated = good.state == Good::State::NoDate && controlled(lot);
      if (!undated &&
          (good.state == Good::State::Good || good.state == Good::State::NoDate || good.state == Good::State::Gone))
        continue;
      out_.push_back(warning(
          event,
          QStringLiteral("container %1 of lot %2 %3 %4, and must not be served: %5")
              .arg(holder.number)
              .arg(lot.code, event.kind == Kind::Arrived ? QStringLiteral("arrived at") : QStringLiteral("left for"),
                   holder.site, good.why),
          QStringLiteral("call the site and have it set aside; record its return")));
      return;
    }
  }

  static bool is_meant(const history::Holder& holder, const Event& event) {
    if (event.lot.isEmpty()) return holder.note == event.note && holder.where == history::Where::AtSite;
    return std::find(event.containers.begin(), event.containers.end(), holder.number) != event.containers.end();
  }

  // It comes cold, whatever the kitchen holds hot; frozen food comes below the melting point of ice.
  void look_at_receipt(const history::Lot* lot, const Event& event) {
    if (!event.accepted) return;
    if (lot && !lot->further_allergens.isEmpty())
      out_.push_back(
          warning(event,
                  QStringLiteral("lot %1 contains %2 besides what its supplier's item declares, as a correction says")
                      .arg(event.lot, lot->further_allergens.join(QStringLiteral(", "))),
                  QStringLiteral(
                      "mark its packages so; once the declaration is read anew, edit the book: contains and checked")));
    look_at_unsaid(lot, event);
    if (event.stated && event.stated->end <= event.at)
      out_.push_back(warning(event,
                             QStringLiteral("lot %1 came on %2, and was good until %3")
                                 .arg(event.lot, batch::instant_text(event.at, run_.zone()),
                                      batch::instant_text(event.stated->end, run_.zone())),
                             QStringLiteral("send it back or discard it: it is not to be used")));
    if (!event.temperature || (lot && !controlled(*lot))) return;
    constexpr measure::TemperatureLimit kMelts{{0, measure::Scale::Celsius}, {320, measure::Scale::Fahrenheit}};
    const bool frozen = event.state == QLatin1String("frozen");
    const measure::TemperatureLimit& most = frozen ? kMelts : warmest_when_cold(event, run_.book);
    if (measure::at_most(*event.temperature, most)) return;
    out_.push_back(warning(
        event,
        QStringLiteral("lot %1 came at %2%3, and is held to %4")
            .arg(event.lot, batch::reading_text(*event.temperature),
                 frozen ? QStringLiteral(", as frozen food") : QString(), book::text(book::HeldTo{std::nullopt, most})),
        QStringLiteral("put it on hold (event=hold) until it is known how long it was so, or send it "
                       "back; where a law allows it warmer, state received_at_most in the book")));
  }

  // What a receipt may leave out, and what then cannot be told of it.
  void look_at_unsaid(const history::Lot* lot, const Event& event) {
    if (event.place.isEmpty() && !run_.book.places.empty())
      out_.push_back(warning(
          event, QStringLiteral("where lot %1 stands is not recorded: no hold of a place reaches it").arg(event.lot),
          QStringLiteral("record it (event=moved place=…)")));
    if (lot && controlled(*lot) && !lot->received->stated && !lot->not_after)
      out_.push_back(warning(event,
                             QStringLiteral("lot %1 has no date, and %2 needs time and temperature control, or may")
                                 .arg(event.lot, event.item),
                             QStringLiteral("record the date on its package (event=correction use_by=…)")));
  }

  // On the way food is cold or hot, unless it is on time control. Of a note without a lot a temperature is written
  // only where it counts.
  void look_at_way(const history::Lot* lot, const Event& event) {
    if (!event.temperature || !event.accepted || (lot && !controlled(*lot)) || (lot && on_time_control(*lot))) return;
    const measure::TemperatureLimit& cold = rules_.cold_holding;
    if (measure::at_most(*event.temperature, cold) || measure::at_least(*event.temperature, rules_.hot_holding)) return;
    out_.push_back(
        warning(event,
                QStringLiteral("%1 was at %2 when it was %3, neither %4 nor %5")
                    .arg(lot ? QStringLiteral("lot ") + lot->code : QStringLiteral("what came with note ") + event.note,
                         batch::reading_text(*event.temperature), history::word(event.kind),
                         book::text(book::HeldTo{std::nullopt, cold}),
                         book::text(book::HeldTo{rules_.hot_holding, std::nullopt})),
                QStringLiteral("put it on hold (event=hold) until it is known how long it was so, or discard it")));
  }

  static bool on_time_control(const history::Lot& lot) {
    return lot.made && std::any_of(lot.made->batch.use_bys.begin(), lot.made->batch.use_bys.end(),
                                   [](const batch::UseBy& use_by) { return use_by.time_control; });
  }

  void look_at_reheat(const Event& event) {
    const auto minimum = reheat_minimum(event, rules_);
    if (!minimum || !event.temperature) return;
    const bool hot = measure::at_least(*event.temperature, minimum->temperature);
    if (hot && event.seconds >= minimum->seconds) return;
    const QString least = book::text(minimum->temperature);
    out_.push_back(warning(event,
                           hot ? QStringLiteral("lot %1 was reheated to %2 for %3 s, and %4 s are asked for")
                                     .arg(event.lot, batch::reading_text(*event.temperature))
                                     .arg(event.seconds)
                                     .arg(minimum->seconds)
                               : QStringLiteral("lot %1 was reheated to %2, and at least %3 is asked for")
                                     .arg(event.lot, batch::reading_text(*event.temperature), least),
                           QStringLiteral("go on heating and record the reading that is reached, or discard it")));
  }

  void look_at_holding(const Event& event) {
    const book::HeldTo limits = held_to(event, rules_);
    if (!limits.known() || limits.met_by(*event.temperature)) return;
    out_.push_back(warning(event,
                           QStringLiteral("lot %1 was at %2, and is held to %3")
                               .arg(event.lot, batch::reading_text(*event.temperature), book::text(limits)),
                           QStringLiteral("record what was done about it (event=corrective-action), or discard it")));
  }

  LedgerRun& run_;
  const book::RuleSet& rules_;
  problem::Errors& out_;
};

}  // namespace

problem::Errors food_warnings(LedgerRun& run, const std::vector<Entry>& entries) {
  problem::Errors warnings;
  Warning warn(run, warnings);
  for (const Entry& entry : entries) warn.look_at(entry);
  return warnings;
}

}  // namespace lardiner::command
