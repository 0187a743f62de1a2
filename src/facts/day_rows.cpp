// The rows of a day record, section by section.
#include "facts/day_rows.h"

#include <algorithm>

namespace lardiner::facts {

namespace {

constexpr qint64 kLateSeconds = 3600;
const QString kBetween = QStringLiteral(" · ");

class DayRows {
 public:
  explicit DayRows(const SheetPhrases& phrases) : phrases_(phrases) {}

  Row operator()(const PlaceRead& read) const {
    Cell said = judged(read.reading, read.limits);
    if (!read.limits.known() && read.not_in_the_book) phrases_.add_small(said.small, word("record.place_unknown"));
    return row(read.entered, {Cell::Kind::Text, read.place, {}, true}, figure(read.reading), said);
  }

  Row operator()(const Cooked& cook) const {
    Cell core = figure(cook.core);
    if (cook.seconds > 0)
      add(core, false, "record.held_for", [&](const Wording& w) { return lasting(w, cook.seconds); });
    return row(cook.entered, thing(cook.item, cook.lot), core, verdict(cook.met, cook.minimum));
  }

  // Each reading on a line of its own, with its time and who took it.
  Row operator()(const Cooled& cooled) const {
    Cell read{Cell::Kind::Text, {}, {}, true};
    for (const CoolingRead& one : cooled.readings) {
      QString line = phrases_.time(one.at) + u' ' + as_read(phrases_.first(), one.reading);
      if (!one.by.isEmpty()) line += u' ' + one.by;
      read.small.push_back({unbroken(line), true});
    }
    if (cooled.readings.empty()) read = phrases_.cell(word("record.not_recorded"), true);
    using State = batch::Cooling::State;
    Cell said = phrases_.cell(word(cooled.verdict.state == State::Passed   ? "record.met"
                                   : cooled.verdict.state == State::Missed ? "record.not_met"
                                                                           : "record.not_shown"),
                              true);
    for (const book::CoolingStage& stage : cooled.stages)
      phrases_.add_small(said.small, [&](const Wording& w) {
        return w.sentence("pad_cool_to", {both_scales(w, stage.to), lasting(w, stage.within_seconds)});
      });
    add_text(said, cooled.verdict.why);
    return row(cooled.entered, thing(cooled.item, cooled.lot), read, said);
  }

  Row operator()(const HeldRead& held) const {
    Cell what = thing(held.item, held.lot);
    add_text(what, held.what);
    Cell core = figure(held.reading);
    if (held.seconds > 0)
      add(core, false, "record.held_for", [&](const Wording& w) { return lasting(w, held.seconds); });
    return row(held.entered, what, core, held.minimum ? reheated(held) : judged(held.reading, held.limits));
  }

  Row operator()(const Receipt& receipt) const {
    Cell what = thing(receipt.item, receipt.lot);
    add_text(what, receipt.supplier);
    if (receipt.quantity) add_text(what, phrases_.amount(*receipt.quantity));
    return row(receipt.entered, what, figure(receipt.temperature), accepted(receipt.accepted, receipt.why));
  }

  Row operator()(const Checked& check) const {
    Cell said = phrases_.cell(word(check.in_order ? "record.in_order" : "record.not_in_order"), !check.in_order);
    add_text(said, check.remark);
    Cell what{Cell::Kind::Text, check.what, {}, true};
    add_text(what, check.place);
    return row(check.entered, what, {}, said);
  }

  Row operator()(const Acted& acted) const {
    Cell what = thing(acted.item, acted.lot);
    if (what.text.isEmpty())
      what.text = acted.place;
    else
      add_text(what, acted.place);
    Cell said = acted.kind == Acted::Kind::Corrective ? Cell{Cell::Kind::Text, acted.action, {}, true}
                                                      : phrases_.cell(word(key_of(acted.kind)), true);
    if (acted.kind != Acted::Kind::Corrective) add_text(said, acted.action);
    if (acted.ends) add_text(said, date(*acted.ends));
    add_text(said, acted.adds.join(QStringLiteral(", ")));
    add_text(said, acted.reason);
    return row(acted.entered, what, {}, said);
  }

  Row operator()(const Thrown& thrown) const {
    return row(thrown.entered, thing(thrown.item, thrown.lot), amount(thrown.containers, thrown.quantity),
               reason(thrown.reason));
  }

  Row operator()(const Shipped& shipped) const {
    Cell what = thing(shipped.item, shipped.lot);
    QStringList whom{shipped.site, shipped.order, shipped.note};
    whom.removeAll(QString());
    add_text(what, whom.join(kBetween));
    Cell some = amount(shipped.containers, std::nullopt);
    if (shipped.temperature) some.small.push_back({as_read(phrases_.first(), *shipped.temperature), true});
    Cell said;
    switch (shipped.kind) {
      case Shipped::Kind::Dispatched:
        said = phrases_.cell(word("record.dispatched"), true);
        add_text(said, shipped.why);
        break;
      case Shipped::Kind::Returned:
        said = phrases_.cell(word("record.returned"), true);
        add_text(said, shipped.why);
        break;
      case Shipped::Kind::Arrived:
        said = phrases_.cell(word("record.arrived"), true);
        add(said, shipped.accepted);
        add_text(said, shipped.why);
    }
    return row(shipped.entered, what, some, said);
  }

  Row operator()(const MadeBatch& made) const {
    return row(made.entered, thing(made.item, made.lot), amount({}, made.quantity), {});
  }

  Row operator()(const Counted& counted) const {
    const Cell said = phrases_.cell(
        [&](const Wording& w) {
          if (counted.left_percent <= 0) return w.word("record.not_seen");
          return counted.left_percent >= 100 ? w.word("record.seen")
                                             : w.sentence("record.part_left", {QString::number(counted.left_percent)});
        },
        counted.left_percent <= 0);
    return row(counted.entered, thing(counted.item, counted.lot), amount(counted.containers, std::nullopt), said);
  }

  Row operator()(const Reviewed& reviewed) const {
    Cell said = phrases_.cell(word("record.reviewed"), true);
    return row(reviewed.entered, said, {}, reason(reviewed.remark));
  }

 private:
  static SheetPhrases::Saying word(const char* key) {
    return [key](const Wording& wording) { return wording.word(key); };
  }
  static void add_text(Cell& to, const QString& text) {
    if (!text.isEmpty()) to.small.push_back({text, false});
  }
  void add(Cell& to, bool strong, const char* key, const SheetPhrases::Saying& value) const {
    phrases_.add_small(
        to.small, [&](const Wording& w) { return w.sentence(key, {value(w)}); }, strong);
  }
  void add(Cell& to, bool was_accepted) const {
    phrases_.add_small(to.small, word(was_accepted ? "record.accepted" : "record.refused"), !was_accepted);
  }

  Row row(const Entered& entered, Cell what, const Cell& figure, const Cell& said) const {
    Cell when{Cell::Kind::Text, phrases_.time(entered.at), {}, false};
    if (entered.at.secsTo(entered.recorded_at) > kLateSeconds)
      phrases_.add_small(
          when.small,
          [&](const Wording& w) { return w.sentence("record.late", {phrases_.brief(w, entered.recorded_at)}); }, true);
    for (const Corrected& correction : entered.corrected)
      phrases_.add_small(
          what.small,
          [&](const Wording& w) {
            const QStringList who{correction.by, correction.entry.text()};
            return w.sentence("record.corrected", {phrases_.brief(w, correction.at), correction.what}) + kBetween +
                   who.join(kBetween);
          },
          true);
    Cell by{Cell::Kind::Text, entered.by, {}, false};
    if (entered.by.isEmpty()) by = phrases_.cell(word("record.not_recorded"), true);
    add_text(by, entered.entry.text());
    return {{when, what, figure, said, by}, false};
  }

  Cell thing(const QString& item, const QString& lot) const {
    Cell out = item.isEmpty() ? Cell{} : phrases_.name_cell(item);
    out.strong = true;
    if (lot.isEmpty()) return out;
    if (out.text.isEmpty())
      out.text = lot;
    else
      out.small.push_back({lot, true});
    return out;
  }

  Cell figure(const std::optional<measure::Temperature>& reading) const {
    return reading ? Cell{Cell::Kind::Text, as_read(phrases_.first(), *reading), {}, true}
                   : phrases_.cell(word("record.not_recorded"), true);
  }

  // Within its limits or not, in words, and the limits.
  Cell judged(const std::optional<measure::Temperature>& reading, const book::HeldTo& limits) const {
    if (!limits.known()) return phrases_.cell(word("record.limit_unknown"), true);
    Cell out{Cell::Kind::Text, {}, {}, false};
    if (reading) {
      const bool within = limits.met_by(*reading);
      out = phrases_.cell(word(within ? "record.within" : "record.out_of_limit"), !within);
    }
    if (limits.at_least)
      add(out, false, "record.at_least", [&](const Wording& w) { return both_scales(w, *limits.at_least); });
    if (limits.at_most)
      add(out, false, "record.at_most", [&](const Wording& w) { return both_scales(w, *limits.at_most); });
    return out;
  }

  // Any one of the ways suffices.
  Cell verdict(std::optional<bool> met, const std::vector<book::TimeAtTemperature>& ways) const {
    Cell said = phrases_.cell(word(!met ? "record.not_shown" : *met ? "record.met" : "record.not_met"), !met || !*met);
    for (const book::TimeAtTemperature& way : ways)
      add(said, false, "record.minimum", [&](const Wording& w) { return way_text(w, way); });
    return said;
  }

  // Hot enough, and for as long as is asked; of what was not held, the time is not shown.
  Cell reheated(const HeldRead& held) const {
    std::optional<bool> met;
    if (held.reading) met = measure::at_least(*held.reading, held.minimum->temperature);
    if (met && *met && held.seconds < held.minimum->seconds) {
      if (held.seconds > 0)
        met = false;
      else
        met.reset();
    }
    return verdict(met, {*held.minimum});
  }

  Cell accepted(bool was_accepted, const QString& why) const {
    Cell out = phrases_.cell(word(was_accepted ? "record.accepted" : "record.refused"), !was_accepted);
    add_text(out, why);
    return out;
  }

  Cell reason(const QString& text) const { return {Cell::Kind::Text, text, {}, false}; }

  Cell amount(const std::vector<Containers>& containers, const std::optional<measure::Quantity>& quantity) const {
    Cell out = phrases_.cell([&](const Wording& w) { return containers_text(w, containers); });
    if (!quantity) return out;
    const QString text = phrases_.amount(*quantity);
    if (out.text.isEmpty())
      out.text = text;
    else
      add_text(out, text);
    return out;
  }

  QString way_text(const Wording& wording, const book::TimeAtTemperature& way) const {
    const QString warmth = both_scales(wording, way.temperature);
    return way.seconds == 0 ? warmth : warmth + u' ' + wording.sentence("for_seconds", {QString::number(way.seconds)});
  }

  // The last good day; of what ends within a day that time.
  QString date(const batch::StatedEnd& ends) const {
    const QDateTime local = ends.end.toTimeZone(phrases_.book().kitchen.zone);
    return ends.is_date ? phrases_.day(local.addMSecs(-1).date()) : phrases_.day_and_time(local);
  }

  static const char* key_of(Acted::Kind kind) {
    switch (kind) {
      case Acted::Kind::Hold:
        return "hold";
      case Acted::Kind::Release:
        return "record.released";
      case Acted::Kind::RecallOpened:
        return "record.recall_opened";
      case Acted::Kind::Correction:
        return "record.was_corrected";
      case Acted::Kind::RecallClosed:
      case Acted::Kind::Corrective:
        break;
    }
    return "record.recall_closed";
  }

  const SheetPhrases& phrases_;
};

template <class One>
std::vector<Row> all_rows(const SheetPhrases& phrases, const std::vector<One>& all) {
  const DayRows row_of(phrases);
  std::vector<Row> out;
  for (const One& one : all) out.push_back(row_of(one));
  return out;
}

}  // namespace

std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<PlaceRead>& all) {
  return all_rows(phrases, all);
}
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Cooked>& all) { return all_rows(phrases, all); }
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Cooled>& all) { return all_rows(phrases, all); }
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<HeldRead>& all) {
  return all_rows(phrases, all);
}
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Receipt>& all) {
  return all_rows(phrases, all);
}
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Checked>& all) {
  return all_rows(phrases, all);
}
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Acted>& all) { return all_rows(phrases, all); }
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Thrown>& all) { return all_rows(phrases, all); }
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Shipped>& all) {
  return all_rows(phrases, all);
}
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<MadeBatch>& all) {
  return all_rows(phrases, all);
}
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Counted>& all) {
  return all_rows(phrases, all);
}
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Reviewed>& all) {
  return all_rows(phrases, all);
}

}  // namespace lardiner::facts
