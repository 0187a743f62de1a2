// What a lot was made of and what was made of it: as a picture, and as lists that lead on.
#include <algorithm>

#include "ledger/lineage.h"
#include "station/visit.h"

namespace lardiner::station {

namespace {

// The other end of each edge at the lot.
void add_next(const Visit& visit, Part& page, const ledger::Lineage& lineage, bool inputs) {
  for (const ledger::Edge& edge : lineage.edges) {
    if ((inputs ? edge.output : edge.input) != lineage.of) continue;
    const qint64 other = inputs ? edge.input : edge.output;
    const auto lot = std::find_if(lineage.lots.begin(), lineage.lots.end(),
                                  [&](const ledger::LotName& one) { return one.id == other; });
    if (lot == lineage.lots.end() || lot->code.isEmpty()) continue;
    page.add(inputs ? "INPUT" : "OUTPUT")
        .set("CODE", lot->code)
        .set("OF_ITEM", lot->item)
        .set("NAME", visit.name_of(*lot))
        .set("ASSUMED", edge.assumed ? visit.word("page.assumed") : QString());
  }
}

}  // namespace

Reply lineage_page(const Visit& visit, const QString& code) {
  if (!visit.signed_in()) return visit.message(401, "page.sign_in_first");
  const auto name = visit.lot_named(code);
  if (!name) return visit.message(404, "page.no_such_page");
  Part page;
  page.set("LOT", name->code).set("ITEM", name->item);
  const auto picture = visit.desk().lineage_picture(*name);
  if (picture)
    page.add("PICTURE").set("DATA", QString::fromLatin1(picture->toBase64()));
  else
    add_problems(page, picture.error());
  const ledger::Lineage lineage = ledger::lineage(visit.desk().ledger().store(), name->id);
  add_next(visit, page, lineage, true);
  add_next(visit, page, lineage, false);
  return visit.page(QStringLiteral("lineage"), visit.word("page.lineage"), std::move(page));
}

}  // namespace lardiner::station
