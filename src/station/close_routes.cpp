// Close of day: what stands in a place is seen, by its label or by eye; what was not seen is asked about before it is
// recorded as missing.
#include <algorithm>
#include <map>

#include "station/container_numbers.h"
#include "station/rows.h"
#include "station/scanned_codes.h"
#include "station/standing_here.h"

namespace lardiner::station {

using ledger::LotName;
using problem::Errors;

namespace {

constexpr int kFull = 100, kHalf = 50, kQuarter = 25;

QString text_of(const std::set<int>& numbers) {
  QStringList texts;
  for (const int number : numbers) texts << QString::number(number);
  return texts.join(QStringLiteral(", "));
}

// What a count says of one lot.
struct Counted {
  LotName name;
  std::map<int, std::set<int>> left;  ///< by how much is left in percent, the containers that were seen
  std::set<int> as_known;             ///< seen, and as full as the ledger has them, which no percent says exactly
  std::set<int> unseen, from_elsewhere;
};

bool is_full(const history::Holder& holder) { return holder.left == holder.holds; }

class Counting {
 public:
  Counting(const Visit& visit, QString place) : visit_(visit), place_(std::move(place)) {}

  problem::ExpectedAll<std::vector<Counted>> run() {
    const auto all = standing_here(visit_.desk(), place_);
    if (!all) return tl::unexpected(Errors{all.error()});
    for (const StandingHere& here : *all) expect(here);
    look_at_form();
    look_at_codes();
    if (!errors_.empty()) return tl::unexpected(errors_);
    std::vector<Counted> out;
    for (const qint64 id : order_) out.push_back(judged(lots_[id]));
    return out;
  }

 private:
  struct Lot {
    LotName name;
    std::set<int> expected, seen, half, quarter;
  };

  Lot& lot(const LotName& name) {
    const auto [found, added] = lots_.try_emplace(name.id, Lot{name, {}, {}, {}, {}});
    if (added) order_.push_back(name.id);
    return found->second;
  }

  void expect(const StandingHere& here) {
    lot(here.name).expected.insert(here.group.containers.begin(), here.group.containers.end());
  }

  std::set<int> numbers(const QString& name) {
    const auto read = container_numbers({visit_.field(name)});
    if (!read) errors_.push_back(read.error());
    return read ? std::set<int>(read->begin(), read->end()) : std::set<int>();
  }

  void look_at_form() {
    const QStringList all = visit_.request().form.values(QStringLiteral("all"));
    for (const qint64 id : order_) {
      Lot& one = lots_[id];
      const QString key = key_of(one.name);
      one.seen = numbers(QStringLiteral("seen.") + key);
      if (all.contains(key)) one.seen.insert(one.expected.begin(), one.expected.end());
      one.half = numbers(QStringLiteral("half.") + key);
      one.quarter = numbers(QStringLiteral("quarter.") + key);
    }
  }

  // A label stands for its container, a lot's code for the only one of it that is expected here.
  void look_at_codes() {
    const auto scanned = scanned_codes(visit_, visit_.field(QStringLiteral("codes")));
    if (!scanned) return errors_.insert(errors_.end(), scanned.error().begin(), scanned.error().end()), void();
    for (const ScannedLot& one : *scanned) {
      Lot& into = lot(one.name);
      if (one.containers.empty() && into.expected.size() != 1)
        errors_.push_back(
            {problem::Code::Missing,
             QStringLiteral("%1 %2: which containers were seen?").arg(visit_.name_of(one.name), one.name.code),
             {},
             QStringLiteral("scan each label, or write the number behind the code: %1 5").arg(one.name.code)});
      const std::set<int>& seen = one.containers.empty() ? into.expected : one.containers;
      into.seen.insert(seen.begin(), seen.end());
    }
  }

  Counted judged(const Lot& one) {
    Counted out{one.name, {}, {}, {}, {}};
    const history::Lot* lot = visit_.desk().ledger().lots().lot(one.name.id);
    std::set<int> seen = one.seen;
    seen.insert(one.half.begin(), one.half.end());
    seen.insert(one.quarter.begin(), one.quarter.end());
    for (const int number : seen) {
      const bool there = lot && number >= 1 && static_cast<size_t>(number) <= lot->holders.size();
      const bool full = !there || is_full(lot->holders[static_cast<size_t>(number) - 1]);
      if (one.quarter.contains(number))
        out.left[kQuarter].insert(number);
      else if (one.half.contains(number))
        out.left[kHalf].insert(number);
      else
        (full ? out.left[kFull] : out.as_known).insert(number);
      if (!one.expected.contains(number)) out.from_elsewhere.insert(number);
    }
    std::set_difference(one.expected.begin(), one.expected.end(), seen.begin(), seen.end(),
                        std::inserter(out.unseen, out.unseen.end()));
    return out;
  }

  const Visit& visit_;
  const QString place_;
  std::map<qint64, Lot> lots_;
  std::vector<qint64> order_;
  Errors errors_;
};

QString line_of(const Visit& visit, const LotName& name, const std::set<int>& numbers) {
  return QStringLiteral("%1 %2: %3").arg(visit.name_of(name), name.code, text_of(numbers));
}

// All that a press of the second button has to have been shown.
QString shown_text(const std::vector<Counted>& all) {
  QStringList texts;
  for (const Counted& one : all) {
    QStringList of_lot{key_of(one.name), text_of(one.unseen), text_of(one.from_elsewhere), text_of(one.as_known)};
    for (const auto& [percent, containers] : one.left)
      of_lot << QStringLiteral("%1=%2").arg(percent).arg(text_of(containers));
    texts << of_lot.join(u'/');
  }
  return texts.join(u';');
}

bool all_seen(const std::vector<Counted>& all) {
  return std::all_of(all.begin(), all.end(), [](const Counted& one) { return one.unseen.empty(); });
}

reader::Value row_of(const Visit& visit, const Counted& one, const char* event, const std::set<int>& containers) {
  reader::Value row = form_table();
  add(row, QStringLiteral("event"), QString::fromLatin1(event));
  add(row, QStringLiteral("at"), visit.now_text());
  add(row, QStringLiteral("by"), visit.who().initials);
  add(row, QStringLiteral("lot"), one.name.code);
  add(row, QStringLiteral("item"), one.name.item);
  add(row, QStringLiteral("containers"), text_of(containers));
  add(row, QStringLiteral("place"), visit.field(QStringLiteral("place")));
  return row;
}

std::vector<reader::Value> rows_of(const Visit& visit, const std::vector<Counted>& all) {
  std::vector<reader::Value> rows;
  for (const Counted& one : all) {
    for (const auto& [percent, containers] : one.left) {
      rows.push_back(row_of(visit, one, "counted", containers));
      add(rows.back(), QStringLiteral("left"), QStringLiteral("%1 %").arg(percent));
    }
    if (!one.as_known.empty()) rows.push_back(row_of(visit, one, "moved", one.as_known));
    if (one.unseen.empty()) continue;
    rows.push_back(row_of(visit, one, "counted", one.unseen));
    add(rows.back(), QStringLiteral("left"), QStringLiteral("none"));
  }
  return rows;
}

void add_looked(const Visit& visit, Part& count, const std::vector<Counted>& all) {
  Part& looked = count.add("LOOKED").set("SHOWN", shown_text(all));
  if (all_seen(all)) looked.add("ALL_SEEN");
  for (const Counted& one : all) {
    if (!one.unseen.empty()) looked.add("UNSEEN").set("TEXT", line_of(visit, one.name, one.unseen));
    if (!one.from_elsewhere.empty())
      looked.add("FROM").set(
          "TEXT", visit.word("page.from_elsewhere_here") + u' ' + line_of(visit, one.name, one.from_elsewhere));
  }
}

// A lot once, with what is the matter with any of it.
void add_form(const Visit& visit, Part& count, const std::vector<StandingHere>& all, bool typed) {
  const Fields form = typed ? visit.request().form : Fields();
  const QStringList ticked = form.values(QStringLiteral("all"));
  QStringList asked;
  count.set("CODES", form.value(QStringLiteral("codes")));
  for (const StandingHere& here : all) {
    const QString key = key_of(here.name);
    if (asked.contains(key)) continue;
    asked << key;
    StandingHere whole = here;
    for (const StandingHere& other : all) {
      if (&other == &here || key_of(other.name) != key) continue;
      whole.group.containers.insert(whole.group.containers.end(), other.group.containers.begin(),
                                    other.group.containers.end());
      if (whole.group.good.state == history::Good::State::Good) whole.group.good = other.group.good;
    }
    std::sort(whole.group.containers.begin(), whole.group.containers.end());
    Part& row = count.add("HERE");
    add_standing(visit, row, whole);
    const QString seen = form.value(QStringLiteral("seen.") + key), half = form.value(QStringLiteral("half.") + key),
                  quarter = form.value(QStringLiteral("quarter.") + key);
    row.set("SEEN", seen).set("HALF", half).set("QUARTER", quarter);
    row.set("ALL", ticked.contains(key) ? QStringLiteral("checked") : QString());
    row.set("OPEN", (seen + half + quarter).isEmpty() ? QString() : QStringLiteral("open"));
  }
}

Reply page_of(const Visit& visit, const QString& place, const Errors& errors, const std::vector<Counted>* looked,
              const Recorded& recorded) {
  Part page;
  page.set("PLACE", place);
  for (const book::StoragePlace& one : visit.desk().book().places) page.add("STAND").set("PLACE_NAME", one.name);
  add_recorded(visit, page, recorded);
  if (!place.isEmpty()) {
    const auto all = standing_here(visit.desk(), place);
    if (!all) return visit.trouble(500, {all.error()});
    Part& count = page.add("COUNT").set("PLACE", place);
    add_form(visit, count, *all, looked || !errors.empty());
    if (looked) add_looked(visit, count, *looked);
  }
  add_problems(page, errors);
  return visit.page(QStringLiteral("close"), visit.word("page.close_day"), std::move(page), status_of(errors));
}

bool is_place(const Visit& visit, const QString& name) {
  const auto& all = visit.desk().book().places;
  return std::any_of(all.begin(), all.end(), [&](const book::StoragePlace& one) { return one.name == name; });
}

}  // namespace

Reply close_page(const Visit& visit) {
  if (!visit.signed_in()) return visit.message(401, "page.sign_in_first");
  const QString place = visit.request().query.value(QStringLiteral("place"));
  if (!place.isEmpty() && !is_place(visit, place)) return visit.message(404, "page.no_such_page");
  return page_of(visit, place, {}, nullptr, {});
}

// Looked at first; recorded when it is still what was shown.
Reply close_day(const Visit& visit) {
  const QString place = visit.field(QStringLiteral("place"));
  if (!is_place(visit, place)) return visit.message(404, "page.no_such_page");
  const auto counted = Counting(visit, place).run();
  if (!counted) return page_of(visit, place, counted.error(), nullptr, {});
  const bool record = visit.field(QStringLiteral("step")) == QLatin1String("record") &&
                      visit.field(QStringLiteral("shown")) == shown_text(*counted);
  if (!record) return page_of(visit, place, {}, &*counted, {});
  const auto recorded = visit.desk().record(rows_of(visit, *counted));
  return recorded ? page_of(visit, place, {}, nullptr, *recorded)
                  : page_of(visit, place, recorded.error(), &*counted, {});
}

}  // namespace lardiner::station
