// What holds a lot: on hand by place, gone out by site, used up, and what is only suspected; with the mass balance.
#include "facts/recall_sheet.h"

#include <algorithm>

#include "facts/sheet_phrases.h"

namespace lardiner::facts {

namespace {

using measure::Quantity;

const QString kBetween = QStringLiteral(" · ");

class RecallSheet {
 public:
  RecallSheet(const SheetPhrases& phrases, const Recall& recall) : phrases_(phrases), recall_(recall) {}

  WorkSheet make() {
    sheet_.language = phrases_.language().tag();
    sheet_.kind = phrases_.both("recall.title");
    sheet_.title = phrases_.both("recall.lot", {recall_.lot});
    const QString item = phrases_.both([&](const Wording& wording) { return phrases_.name(wording, recall_.item); });
    sheet_.running =
        QStringList{phrases_.first().word("recall.title"), recall_.lot, phrases_.day_and_time(recall_.now)}.join(
            kBetween);
    sheet_.page_of = phrases_.first().word("sheet.page_of");
    add_head(item);
    add_certain();
    add_suspects();
    add_balance();
    std::vector<SmallLine> cautions;
    for (const char* key : {"recall.caution", "sheet.caution_defer"})
      phrases_.add_small(cautions, [&](const Wording& wording) { return wording.word(key); });
    for (const SmallLine& line : cautions) sheet_.foot << line.text;
    return std::move(sheet_);
  }

 private:
  void add_head(const QString& item) {
    sheet_.head.push_back({item, true});
    if (!recall_.supplier.isEmpty())
      sheet_.head.push_back({phrases_.both("recall.supplier", {recall_.supplier}), false});
    if (recall_.opened_at) {
      QStringList opened{phrases_.day_and_time(*recall_.opened_at)};
      if (!recall_.opened_by.isEmpty()) opened << recall_.opened_by;
      sheet_.head.push_back({phrases_.both("recall.opened", {opened.join(kBetween)}), true});
    } else {
      sheet_.head.push_back({phrases_.both("recall.not_opened"), true});
    }
    if (!recall_.reason.isEmpty()) sheet_.head.push_back({phrases_.both("recall.reason", {recall_.reason}), false});
  }

  void add_certain() {
    const auto here = rows_here(true);
    const auto away = rows_away(true);
    const auto used = rows_used(true);
    // Suspects stand apart: "nothing" is said only where they are none either.
    if (here.empty() && recall_.here.empty()) sheet_.parts.emplace_back(note("recall.nothing_on_hand"));
    add(table_here("recall.on_hand"), here);
    if (away.empty() && recall_.away.empty()) sheet_.parts.emplace_back(note("recall.nothing_sent"));
    add(table_away("recall.sent"), away);
    add(table_used("recall.used_up"), used);
  }

  void add_suspects() {
    const auto here = rows_here(false);
    const auto away = rows_away(false);
    const auto used = rows_used(false);
    if (here.empty() && away.empty() && used.empty()) return;
    sheet_.parts.emplace_back(Note{phrases_.both("recall.suspects"), true});
    add(table_here("recall.on_hand"), here);
    add(table_away("recall.sent"), away);
    add(table_used("recall.used_up"), used);
  }

  Note note(const char* key) const { return {phrases_.both(key), false}; }

  void add(Table table, std::vector<Row> rows) {
    if (rows.empty()) return;
    table.rows = std::move(rows);
    sheet_.parts.emplace_back(std::move(table));
  }

  Table table_here(const char* caption) const {
    return {phrases_.both(caption),
            {{Column::Kind::Tick, phrases_.both("recall.hold"), 1},
             {Column::Kind::Tick, phrases_.both("recall.discard"), 1},
             {Column::Kind::Text, phrases_.both("note.what"), 4},
             {Column::Kind::Text, phrases_.both("note.containers"), 3},
             {Column::Kind::Amount, phrases_.both("sheet.amount"), 1}},
            {},
            true};
  }

  Table table_away(const char* caption) const {
    return {phrases_.both(caption),
            {{Column::Kind::Text, phrases_.both("note.what"), 4},
             {Column::Kind::Text, phrases_.both("note.containers"), 3},
             {Column::Kind::Amount, phrases_.both("sheet.amount"), 1}},
            {},
            true};
  }

  Table table_used(const char* caption) const {
    return {phrases_.both(caption),
            {{Column::Kind::Text, phrases_.both("sheet.lot"), 2},
             {Column::Kind::Text, phrases_.both("note.what"), 4},
             {Column::Kind::Amount, phrases_.both("sheet.amount"), 1}},
            {},
            true};
  }

  // A band names the place; its rows follow.
  std::vector<Row> rows_here(bool certain) const {
    std::vector<Row> rows;
    QStringList places;
    for (const ReachedHere& one : recall_.here)
      if (is_certain(one.certainty) == certain && !places.contains(one.place)) places << one.place;
    for (const QString& place : places) {
      const Cell name = place.isEmpty()
                            ? phrases_.cell([](const Wording& w) { return w.word("recall.place_unknown"); }, true)
                            : Cell{Cell::Kind::Text, place, {}, true};
      rows.push_back({{name}, true});
      for (const ReachedHere& one : recall_.here)
        if (is_certain(one.certainty) == certain && one.place == place)
          rows.push_back({{tick(), tick(), thing(one), held(one), amount(one.amount)}, false});
    }
    return rows;
  }

  // A band names the site; its orders follow, then lines for whom was called and when.
  std::vector<Row> rows_away(bool certain) const {
    std::vector<Row> rows;
    QStringList sites;
    for (const ReachedAway& one : recall_.away)
      if (is_certain(one.certainty) == certain && !sites.contains(one.site)) sites << one.site;
    for (const QString& site : sites) {
      rows.push_back({{{Cell::Kind::Text, site, {}, true}}, true});
      for (const ReachedAway& one : recall_.away) {
        if (is_certain(one.certainty) != certain || one.site != site) continue;
        Cell what = thing(one);
        QStringList how;
        if (!one.order.isEmpty()) how << phrases_.both("note.orders", {one.order});
        if (!one.note.isEmpty()) how << one.note;
        if (one.sent_at.isValid()) how << phrases_.day_and_time(one.sent_at);
        if (!how.isEmpty()) what.small.push_back({how.join(kBetween), false});
        rows.push_back({{what, held(one), amount(one.amount)}, false});
      }
      rows.push_back({{blank(phrases_.both("recall.called")), blank(phrases_.both("sheet.at")), {}}, false});
    }
    return rows;
  }

  std::vector<Row> rows_used(bool certain) const {
    std::vector<Row> rows;
    for (const UsedUp& used : recall_.used_up) {
      if (is_certain(used.certainty) != certain) continue;
      Cell into = phrases_.name_cell(used.item);
      into.strong = true;
      into.small.push_back({used.lot, true});
      add_certainty(into, used.certainty);
      rows.push_back({{{Cell::Kind::Text, used.from_lot, {}, false}, into, amount(used.amount)}, false});
    }
    return rows;
  }

  static bool is_certain(Certainty certainty) { return certainty == Certainty::Certain; }

  void add_certainty(Cell& to, Certainty certainty) const {
    if (certainty == Certainty::Certain) return;
    const char* key = certainty == Certainty::Assumed ? "recall.assumed" : "recall.no_lot";
    phrases_.add_small(
        to.small, [&](const Wording& wording) { return wording.word(key); }, true);
  }

  Cell thing(const Reached& one) const {
    Cell out = phrases_.name_cell(one.item);
    out.strong = true;
    out.small.push_back({one.lot, true});
    add_certainty(out, one.certainty);
    return out;
  }

  Cell held(const Reached& one) const {
    return phrases_.cell([&](const Wording& wording) { return containers_text(wording, one.containers); });
  }

  Cell amount(const std::optional<Quantity>& quantity) const {
    return quantity ? Cell{Cell::Kind::Text, phrases_.amount(*quantity), {}, true}
                    : Cell{Cell::Kind::Text, phrases_.both("sheet.not_known"), {}, false};
  }

  void add_balance() {
    if (!recall_.balance) {
      sheet_.parts.emplace_back(note("recall.not_balanced"));
      return;
    }
    const history::Balance& b = *recall_.balance;
    Table table{
        phrases_.both("recall.balance"), {{Column::Kind::Text, {}, 3}, {Column::Kind::Amount, {}, 1}}, {}, true};
    const auto line = [&](const char* key, Quantity quantity, bool strong) {
      table.rows.push_back({{phrases_.cell([&](const Wording& wording) { return wording.word(key); }, strong),
                             {Cell::Kind::Text, phrases_.amount(quantity), {}, strong}},
                            false});
    };
    line(recall_.supplier.isEmpty() ? "recall.made" : "recall.received", b.made, true);
    line("recall.used", b.used, false);
    line("recall.dispatched", b.dispatched, false);
    line("recall.discarded", b.discarded, false);
    line("recall.missing", b.missing, false);
    line("recall.here", b.on_hand, false);
    const Quantity difference = b.made - b.used - b.dispatched - b.discarded - b.missing - b.on_hand;
    if (difference.amount == 0 && b.unsaid == 0)
      table.rows.push_back(
          {{phrases_.cell([](const Wording& wording) { return wording.word("recall.balanced"); }, true),
            {Cell::Kind::Text, phrases_.amount(difference), {}, true}},
           false});
    else if (difference.amount != 0)
      line("recall.difference", difference, true);
    sheet_.parts.emplace_back(std::move(table));
    if (b.unsaid > 0) sheet_.parts.emplace_back(note("recall.not_balanced"));
  }

  const SheetPhrases& phrases_;
  const Recall& recall_;
  WorkSheet sheet_;
};

}  // namespace

problem::ExpectedAll<WorkSheet> recall_sheet(const SheetSetting& setting, const Recall& recall) {
  problem::Errors errors;
  const SheetPhrases phrases(setting, errors);
  WorkSheet sheet = RecallSheet(phrases, recall).make();
  if (errors.empty()) return sheet;
  problem::sort(errors);
  return tl::unexpected(errors);
}

}  // namespace lardiner::facts
