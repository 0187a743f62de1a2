// What the page of today says.
#include "station/today_page.h"

#include "facts/container_text.h"
#include "ledger/due.h"
#include "station/page_words.h"

namespace lardiner::station {

using ledger::Due;

namespace {

QString heading_key(Due::What what) {
  static const char* const kKeys[] = {"page.cooling",    "page.running",   "page.discard",
                                      "page.ends_today", "page.use_first", "page.relabel"};
  return QString::fromLatin1(kKeys[static_cast<int>(what)]);
}

bool at_a_time(const Due& due) { return due.what == Due::What::Cooling || due.what == Due::What::Running; }

QString mark(const Due& due, const QDateTime& now) {
  if (due.what == Due::What::Past || (at_a_time(due) && due.ends <= now)) return QStringLiteral("stop");
  return at_a_time(due) || due.what == Due::What::Relabel ? QStringLiteral("wait") : QStringLiteral("plain");
}

class Telling {
 public:
  Telling(Desk& desk, const words::Language& language) : desk_(desk), wording_{language, desk.book().kitchen.units} {}

  void add(Part& section, const Due& due) const {
    Part& row = section.add("DUE");
    row.set("MARK", mark(due, desk_.now())).set("LOT", due.lot.code).set("ITEM", due.lot.item);
    row.set("NAME", name_of(desk_.book(), wording_.words, due.lot)).set("WHEN", when(due)).set("LEFT", left(due));
    row.set("CONTAINERS", facts::containers_text(wording_, {facts::Containers{due.kind, due.containers, 0}}));
    row.set("PLACE", due.place);
    if (due.held && due.what != Due::What::Cooling) row.add("HELD");
    if (due.frozen) row.add("FROZEN");
  }

 private:
  QString when(const Due& due) const {
    if (!due.ends.isValid()) return {};
    const QDateTime local = due.ends.toTimeZone(desk_.book().kitchen.zone);
    return at_a_time(due) ? wording_.words.time(local.time()) : wording_.words.date(local.addMSecs(-1).date());
  }

  // Minutes that are left, or since when it is over, as a span.
  QString left(const Due& due) const {
    if (!at_a_time(due)) return {};
    const qint64 seconds = desk_.now().secsTo(due.ends);
    if (seconds <= 0) return wording_.words.word(QStringLiteral("page.over"));
    return facts::lasting(wording_, static_cast<int>(seconds / 60 * 60));
  }

  Desk& desk_;
  facts::Wording wording_;
};

}  // namespace

problem::Expected<Part> today_page(Desk& desk, const words::Language& language) {
  const auto found = ledger::due(desk.ledger().store(), desk.now(), desk.book().kitchen.zone, kDaysAhead);
  if (!found) return tl::unexpected(found.error());
  Part page;
  const Telling telling(desk, language);
  Part* section = nullptr;
  std::optional<Due::What> under;
  int rows = 0, more = 0;
  const auto end = [&] {
    if (section && more > 0) section->add("MORE").set("COUNT", QString::number(more));
  };
  for (const Due& due : *found) {
    if (under != due.what) {
      end();
      section = &page.add("SECTION").set("HEADING", language.word(heading_key(due.what)));
      under = due.what;
      rows = more = 0;
    }
    ++rows <= kMostRows ? telling.add(*section, due) : static_cast<void>(++more);
  }
  end();
  if (found->empty()) page.add("NOTHING");
  page.set("NOW", language.date_time(desk.now().toTimeZone(desk.book().kitchen.zone)));
  return page;
}

}  // namespace lardiner::station
