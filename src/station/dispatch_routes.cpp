// What leaves for a site: chosen from what is good, or scanned; recorded all together, with its note.
#include <QUrl>
#include <algorithm>

#include "ledger/dispatches.h"
#include "station/container_numbers.h"
#include "station/page_words.h"
#include "station/rows.h"
#include "station/scanned_codes.h"
#include "station/standing_here.h"

namespace lardiner::station {

using problem::Errors;

namespace {

const QString kGo = QStringLiteral("go.");

// The next of the day that no dispatch has: "A-261125-2".
QString free_note(Desk& desk) {
  const QDate day = desk.now().toTimeZone(desk.book().kitchen.zone).date();
  for (int number = 1;; ++number) {
    const QString note =
        QStringLiteral("%1-%2-%3").arg(desk.book().kitchen.station, day.toString(QStringLiteral("yyMMdd"))).arg(number);
    const auto left = ledger::loadings(desk.ledger().store(), note);
    if (!left || left->empty()) return note;
  }
}

QString site_name(const Visit& visit, const book::Site& site) {
  const QString name = site.name.in(visit.language().code());
  if (!name.isEmpty()) return name;
  return site.name.empty() ? site.id : site.name.texts.front().second;
}

bool is_good(const StandingHere& here) {
  return here.group.good.state == history::Good::State::Good && here.name.kind == ledger::LotKind::Made;
}

Reply page_of(const Visit& visit, const Errors& errors) {
  const auto all = standing_here(visit.desk(), {});
  if (!all) return visit.trouble(500, {all.error()});
  const auto typed = [&](const char* name, const QString& otherwise) {
    return errors.empty() ? otherwise : visit.field(name);
  };
  Part page;
  page.set("AT", typed("at", visit.now_text()));
  page.set("NOTE", typed("note", free_note(visit.desk()))).set("TEMPERATURE", typed("temperature", {}));
  page.set("ORDER", typed("order", {})).set("CODES", typed("codes", {}));
  for (const book::Site& site : visit.desk().book().sites)
    page.add("SITE")
        .set("ID", site.id)
        .set("NAME", site_name(visit, site))
        .set("CHOSEN", site.id == typed("site", {}) ? QStringLiteral("checked") : QString());
  Part stays;
  for (const StandingHere& here : *all) {
    if (here.name.kind != ledger::LotKind::Made) continue;
    Part& row = is_good(here) ? page.add("HERE") : stays.add("STAYS");
    add_standing(visit, row, here);
    const QString of_group = key_of(here.name) + QStringLiteral("|%1").arg(here.group.containers.front());
    row.set("FIELD", kGo + of_group);
    row.set("TYPED", errors.empty() ? QString() : visit.request().form.value(kGo + of_group));
  }
  if (!stays.parts.empty()) page.add("NOT") = std::move(stays);
  add_problems(page, errors);
  return visit.page(QStringLiteral("dispatch"), visit.word("page.dispatch"), std::move(page), status_of(errors));
}

// Numbers that stand beside a lot join what was scanned of it.
void add_typed(const Visit& visit, const QString& key, const QString& value, std::vector<ScannedLot>& all,
               Errors& errors) {
  const auto numbers = container_numbers({value});
  if (!numbers) return errors.push_back(numbers.error());
  const auto name = visit.desk().ledger().lots().named(key.section(u'|', 0, 0), key.section(u'|', 1, 1));
  if (!name) return errors.push_back({problem::Code::Unknown, QStringLiteral("there is no lot %1").arg(key), {}, {}});
  auto same = std::find_if(all.begin(), all.end(), [&](const ScannedLot& one) { return one.name.id == name->id; });
  if (same == all.end()) same = all.insert(all.end(), ScannedLot{*name, {}, {}});
  same->containers.insert(numbers->begin(), numbers->end());
}

reader::Value row_of(const Visit& visit, const QString& lot, const QString& item, const QString& containers) {
  reader::Value row = form_table();
  add(row, QStringLiteral("event"), QStringLiteral("dispatched"));
  for (const char* key : {"at", "site", "order", "note", "temperature"})
    add(row, QString::fromLatin1(key), visit.field(key));
  add(row, QStringLiteral("by"), visit.who().initials);
  add(row, QStringLiteral("lot"), lot);
  add(row, QStringLiteral("item"), item);
  add(row, QStringLiteral("containers"), containers);
  return row;
}

problem::Error stays(const Visit& visit, const ledger::LotName& name, const QString& what, const QString& hint) {
  return {problem::Code::Unsafe, QStringLiteral("%1 %2: %3").arg(visit.name_of(name), name.code, what), {}, hint};
}

bool is_meant(const history::Group& group, const std::set<int>& containers) {
  if (containers.empty()) return group.first.where == history::Where::Here;
  return std::any_of(group.containers.begin(), group.containers.end(),
                     [&](int number) { return containers.contains(number); });
}

// What is not good does not go, nor what bears a label that is not true; though a record of what went says both too.
void refuse_unfit(const Visit& visit, const ScannedLot& going, Errors& errors) {
  for (const QString& untrue : going.untrue)
    errors.push_back(stays(visit, going.name, visit.word("page.superseded"), untrue));
  const history::Lot* lot = visit.desk().ledger().lots().lot(going.name.id);
  if (!lot) return;
  for (const history::Group& group : history::groups(*lot, std::nullopt, visit.desk().now())) {
    const history::Good& good = group.good;
    if (!is_meant(group, going.containers) || good.state == history::Good::State::Gone) continue;
    if (good.state != history::Good::State::Good)
      errors.push_back(stays(visit, going.name, visit.word(verdict_key(good.state).toLatin1()), good.why));
  }
  for (const history::Holder& holder : lot->holders) {
    const bool meant = going.containers.empty() || going.containers.contains(holder.number);
    if (meant && holder.superseded && holder.where == history::Where::Here && going.untrue.isEmpty())
      return errors.push_back(stays(visit, going.name, visit.word("page.relabel"), QString::number(holder.number)));
  }
}

// Of what was typed beside a lot, and of what was scanned: a row for each lot.
problem::ExpectedAll<std::vector<reader::Value>> rows_of(const Visit& visit) {
  auto lots = scanned_codes(visit, visit.field("codes"));
  Errors errors = lots ? Errors() : lots.error();
  std::vector<ScannedLot> all = lots ? std::move(*lots) : std::vector<ScannedLot>();
  for (const auto& [name, value] : visit.request().form.all())
    if (name.startsWith(kGo) && !value.trimmed().isEmpty()) add_typed(visit, name.mid(kGo.size()), value, all, errors);
  std::vector<reader::Value> rows;
  for (const ScannedLot& one : all) {
    refuse_unfit(visit, one, errors);
    QStringList texts;
    for (const int number : one.containers) texts << QString::number(number);
    rows.push_back(row_of(visit, one.name.code, one.name.item, texts.join(QStringLiteral(", "))));
  }
  if (!errors.empty()) return tl::unexpected(errors);
  if (rows.empty())
    return tl::unexpected(Errors{{problem::Code::Missing,
                                  QStringLiteral("nothing is named that goes"),
                                  {},
                                  QStringLiteral("scan its labels, or write the numbers of its containers")}});
  return rows;
}

}  // namespace

Reply dispatch_page(const Visit& visit) {
  return visit.signed_in() ? page_of(visit, {}) : visit.message(401, "page.sign_in_first");
}

Reply dispatch(const Visit& visit) {
  const auto rows = rows_of(visit);
  if (!rows) return page_of(visit, rows.error());
  const auto recorded = visit.desk().record(*rows);
  if (!recorded) return page_of(visit, recorded.error());
  return note_recorded(visit, visit.field("note").trimmed(), *recorded);
}

Reply note_chosen(const Visit& visit) {
  const QString number = visit.request().query.value(QStringLiteral("q")).trimmed();
  return redirection(QStringLiteral("/note/") + QString::fromLatin1(QUrl::toPercentEncoding(number)));
}

}  // namespace lardiner::station
