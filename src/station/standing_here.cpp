// What stands in the kitchen, lot by lot, for a form that asks about each.
#include "station/standing_here.h"

#include <algorithm>

#include "facts/container_text.h"
#include "facts/label_facts.h"
#include "ledger/on_hand.h"
#include "station/page_words.h"

namespace lardiner::station {

namespace {

bool ends_first(const StandingHere& a, const StandingHere& b) {
  const auto end = [](const StandingHere& one) { return one.group.good.end.value_or(QDateTime()); };
  if (end(a).isValid() != end(b).isValid()) return end(a).isValid();
  if (end(a) != end(b)) return end(a) < end(b);
  return a.name.code < b.name.code;
}

}  // namespace

problem::Expected<std::vector<StandingHere>> standing_here(Desk& desk, const QString& place) {
  std::vector<StandingHere> all;
  ledger::Lots& lots = desk.ledger().lots();
  ledger::Store& store = desk.ledger().store();
  for (const qint64 id : place.isEmpty() ? ledger::lots_here(store) : ledger::lots_in(store, place)) {
    const auto name = lots.named(id);
    const history::Lot* lot = lots.lot(id);
    if (lots.unreadable()) return tl::unexpected(*lots.unreadable());
    if (!name || !lot) continue;
    for (history::Group& group : history::groups(*lot, std::nullopt, desk.now())) {
      const bool here = group.first.where == history::Where::Here && (place.isEmpty() || group.first.place == place);
      if (here) all.push_back({*name, std::move(group)});
    }
  }
  if (store.fault()) return tl::unexpected(*store.fault());
  std::stable_sort(all.begin(), all.end(), ends_first);
  return all;
}

QString key_of(const ledger::LotName& name) { return name.code + u'|' + name.item; }

void add_standing(const Visit& visit, Part& row, const StandingHere& here) {
  const facts::Wording wording{visit.language(), visit.desk().book().kitchen.units};
  const history::Good& good = here.group.good;
  row.set("KEY", key_of(here.name)).set("LOT", here.name.code).set("ITEM", here.name.item);
  row.set("NAME", visit.name_of(here.name)).set("PLACE", here.group.first.place);
  row.set("CONTAINERS",
          facts::containers_text(wording, {facts::Containers{here.group.first.kind, here.group.containers, 0}}));
  row.set("UNTIL",
          good.use_by ? facts::good_until(wording, *good.use_by, visit.desk().book().kitchen.zone) : QString());
  row.set("MARK", mark(good.state)).set("WHY", good.why);
  row.set("VERDICT",
          good.state == history::Good::State::Good ? QString() : visit.word(verdict_key(good.state).toLatin1()));
}

}  // namespace lardiner::station
