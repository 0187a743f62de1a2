// The round with a thermometer: what each place reads and what it is held to, what else is checked, what was done about
// it. What stands in a place that is out of its limits can be put on hold from here.
#include <algorithm>
#include <map>

#include "book/storage_place.h"
#include "facts/wording.h"
#include "ledger/entries.h"
#include "ledger/on_hand.h"
#include "station/page_words.h"
#include "station/rows.h"
#include "station/visit.h"

namespace lardiner::station {

using history::Event;
using problem::Errors;
using reader::Value;

namespace {

constexpr const char* kTemperatures = "temperatures";
constexpr const char* kCheck = "check";
constexpr const char* kAction = "action";
// And the name of the place: the book may have others before it when the form comes back.
const QString kReads = QStringLiteral("reads.");

facts::Wording wording(const Visit& visit) { return {visit.language(), visit.desk().book().kitchen.units}; }

bool is_out_of_limits(const Event& read) {
  return read.limits.known() && read.temperature && !read.limits.met_by(*read.temperature);
}

// Of each place since yesterday morning.
struct Round {
  std::map<QString, Event> last;  ///< the last reading
  std::map<QString, Event> out;   ///< the last out of its limits, unless all that stood there was held after it
};

problem::Expected<Round> round_of(Desk& desk) {
  const QDate today = desk.now().toTimeZone(desk.book().kitchen.zone).date();
  const auto keep = [](std::map<QString, Event>& all, const Event& event) {
    const auto found = all.find(event.place);
    if (found == all.end() || found->second.at <= event.at) all.insert_or_assign(event.place, event);
  };
  Round round;
  std::map<QString, Event> held;
  const auto read = ledger::each_of_days(desk.ledger().store(), today.addDays(-1), today, [&](const auto& recorded) {
    const Event& event = recorded.entry.event;
    if (event.kind == history::Kind::Hold && !event.place.isEmpty()) keep(held, event);
    if (event.kind != history::Kind::PlaceTemperature) return true;
    keep(round.last, event);
    if (is_out_of_limits(event)) keep(round.out, event);
    return true;
  });
  if (!read) return tl::unexpected(read.error());
  for (const auto& [place, hold] : held)
    if (const auto found = round.out.find(place); found != round.out.end() && found->second.at <= hold.at)
      round.out.erase(found);
  return round;
}

QString limits_text(const Visit& visit, const book::HeldTo& limits) {
  const facts::Wording words = wording(visit);
  QStringList texts;
  if (limits.at_least) texts << words.sentence("record.at_least", {both_scales(words, *limits.at_least)});
  if (limits.at_most) texts << words.sentence("record.at_most", {both_scales(words, *limits.at_most)});
  return texts.join(QStringLiteral(" · "));
}

void add_read(const Visit& visit, Part& row, const Event& read) {
  const bool out = is_out_of_limits(read);
  row.add("LAST")
      .set("SINCE", visit.language().date_time(read.at.toTimeZone(visit.desk().book().kitchen.zone)))
      .set("READ", facts::as_read(wording(visit), *read.temperature))
      .set("VERDICT", out ? visit.word("record.out_of_limit") : QString());
}

// Of what stands there, the lots that nobody holds yet.
void add_to_hold(const Visit& visit, Part& page, const QString& place, const Event& read) {
  Desk& desk = visit.desk();
  std::vector<ledger::LotName> free;
  for (const qint64 id : ledger::lots_in(desk.ledger().store(), place)) {
    const history::Lot* lot = desk.ledger().lots().lot(id);
    const bool is_free = !lot || lot->holds.empty();
    if (const auto name = desk.ledger().lots().named(id); name && is_free) free.push_back(*name);
  }
  if (free.empty()) return;
  Part& hold = page.add("TO_HOLD");
  hold.set("PLACE", place).set("READ", facts::as_read(wording(visit), *read.temperature)).set("AT", visit.now_text());
  for (const ledger::LotName& lot : free)
    hold.add("STANDS").set("LOT", lot.code).set("ITEM", lot.item).set("NAME", visit.name_of(lot));
}

// Each in one line: a fault of a temperature stands beside it, by the number of its row.
problem::Expected<bool> add_places(const Visit& visit, Part& page, const Errors& refused) {
  const auto round = round_of(visit.desk());
  if (!round) return tl::unexpected(round.error());
  const book::Book& book = visit.desk().book();
  int number = 0;
  for (const book::StoragePlace& place : book.places) {
    Part& row = page.add("STAND").set("PLACE", place.name).set("NUMBER", QString::number(++number));
    row.set("LIMITS", limits_text(visit, held_to(place, book.rules)));
    row.set("TYPED", refused.empty() ? QString() : visit.field(kReads + place.name));
    for (const problem::Error& error : refused)
      if (error.place.line == number) row.add("WRONG").set("WHAT", error.what).set("HINT", error.hint);
    if (const auto read = round->last.find(place.name); read != round->last.end()) add_read(visit, row, read->second);
    if (const auto out = round->out.find(place.name); out != round->out.end())
      add_to_hold(visit, page, place.name, out->second);
  }
  return true;
}

Reply page_of(const Visit& visit, const Errors& refused, const Recorded& recorded = {}) {
  // What was typed stays in the form that was refused.
  const auto typed = [&](const char* step, const char* name, const QString& otherwise = {}) {
    return refused.empty() || visit.field("step") != QLatin1String(step) ? otherwise : visit.field(name);
  };
  Part page;
  page.set("PLACES", visit.word("record.places")).set("AT", typed(kTemperatures, "at", visit.now_text()));
  page.set("CHECKS", visit.word("record.checks")).set("CHECK_AT", typed(kCheck, "at", visit.now_text()));
  page.set("WHAT_CHECKED", typed(kCheck, "what")).set("CHECK_PLACE", typed(kCheck, "place"));
  page.set("NOTE", typed(kCheck, "note"));
  const QString checked = QStringLiteral("checked"), in_order = typed(kCheck, "in_order");
  page.set("IN_ORDER", visit.word("record.in_order"))
      .set("YES", in_order == QLatin1String("yes") ? checked : QString());
  page.set("NOT_IN_ORDER", visit.word("record.not_in_order"))
      .set("NO", in_order == QLatin1String("no") ? checked : QString());
  page.set("ACTIONS", visit.word("record.actions")).set("ACTION_AT", typed(kAction, "at", visit.now_text()));
  page.set("ACTION", typed(kAction, "action")).set("ACTION_REASON", typed(kAction, "reason"));
  page.set("ACTION_PLACE", typed(kAction, "place")).set("ACTION_LOT", typed(kAction, "lot"));
  if (const auto added = add_places(visit, page, refused); !added) return visit.trouble(500, {added.error()});
  add_recorded(visit, page, recorded);
  Errors elsewhere;
  std::copy_if(refused.begin(), refused.end(), std::back_inserter(elsewhere),
               [](const problem::Error& error) { return error.place.line == 0; });
  add_problems(page, elsewhere);
  return visit.page(QStringLiteral("rounds"), visit.word("page.rounds"), std::move(page), status_of(refused));
}

Value row_of(const Visit& visit, const char* event, std::initializer_list<const char*> columns) {
  Value row = form_table();
  add(row, QStringLiteral("event"), QString::fromLatin1(event));
  add(row, QStringLiteral("by"), visit.who().initials);
  for (const char* column : columns) add(row, QString::fromLatin1(column), visit.field(column));
  return row;
}

// Of every place at which something was written, in the line of its number.
std::vector<Value> readings(const Visit& visit) {
  std::vector<Value> rows;
  int number = 0;
  for (const book::StoragePlace& place : visit.desk().book().places) {
    const QString typed = visit.field(kReads + place.name);
    ++number;
    if (typed.trimmed().isEmpty()) continue;
    Value row = row_of(visit, "place-temperature", {"at"});
    add(row, QStringLiteral("place"), place.name);
    add(row, QStringLiteral("temperature"), typed);
    row.entries.back().second.place.line = number;
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<Value> rows_of(const Visit& visit) {
  const QString step = visit.field("step");
  if (step == QLatin1String(kCheck)) return {row_of(visit, kCheck, {"at", "what", "in_order", "place", "note"})};
  if (step == QLatin1String(kAction))
    return {row_of(visit, "corrective-action", {"at", "action", "lot", "place", "reason"})};
  if (step == QLatin1String("hold")) return {row_of(visit, "hold", {"at", "place", "reason"})};
  return readings(visit);
}

}  // namespace

Reply rounds_page(const Visit& visit) {
  return visit.signed_in() ? page_of(visit, {}) : visit.message(401, "page.sign_in_first");
}

Reply rounds(const Visit& visit) {
  const std::vector<Value> rows = rows_of(visit);
  if (rows.empty())
    return page_of(visit, {{problem::Code::Missing,
                            QStringLiteral("no temperature is written"),
                            {},
                            QStringLiteral("write what one place at least reads, as 38 °F")}});
  const auto recorded = visit.desk().record(rows);
  return recorded ? page_of(visit, {}, *recorded) : page_of(visit, recorded.error());
}

}  // namespace lardiner::station
