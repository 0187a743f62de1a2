// The note that goes with containers to a site: what is loaded, until when it is good, and lines for the arrival.
#include "facts/dispatch_note.h"

#include <algorithm>

#include "facts/allergen_text.h"
#include "facts/sheet_parts.h"

namespace lardiner::facts {

using problem::Code;
using problem::Error;

namespace {

constexpr int kLinesForRefused = 3;

QString state_in_words(history::Good::State state) {
  using State = history::Good::State;
  switch (state) {
    case State::Good:
    case State::NoDate:
      break;
    case State::Past:
      return QStringLiteral("is past its date");
    case State::NotReleased:
      return QStringLiteral("is not released");
    case State::Held:
      return QStringLiteral("is on hold");
    case State::Recalled:
      return QStringLiteral("is in a recall");
    case State::Gone:
      return QStringLiteral("is not here");
  }
  return QStringLiteral("has no date that can be told");
}

class DispatchNote {
 public:
  DispatchNote(const SheetPhrases& phrases, const Dispatch& dispatch, const book::Site& site,
               const book::AllergenList& list)
      : phrases_(phrases), dispatch_(dispatch), site_(site), list_(list) {}

  WorkSheet make() const {
    WorkSheet sheet;
    const QString site = site_name(phrases_.first());
    sheet.language = phrases_.language().tag();
    sheet.kind = phrases_.both("note.title");
    sheet.title = site;
    sheet.amount = dispatch_.number;
    sheet.running =
        QStringList{dispatch_.number, site, phrases_.day_and_time(dispatch_.loaded_at)}.join(QStringLiteral(" · "));
    sheet.page_of = phrases_.first().word("sheet.page_of");
    add_head(sheet.head);
    sheet.parts.emplace_back(lots());
    sheet.parts.emplace_back(arrival());
    sheet.parts.emplace_back(refused());
    std::vector<SmallLine> cautions;
    for (const char* key : {"note.caution", "sheet.caution_defer"})
      phrases_.add_small(cautions, [&](const Wording& wording) { return wording.word(key); });
    for (const SmallLine& line : cautions) sheet.foot << line.text;
    return sheet;
  }

 private:
  QString site_name(const Wording& wording) const {
    return phrases_.text(wording, site_.name, QStringLiteral("the name of site \"%1\"").arg(site_.id), site_.place);
  }

  void add_head(std::vector<SmallLine>& head) const {
    if (!dispatch_.orders.isEmpty())
      head.push_back({phrases_.both("note.orders", {dispatch_.orders.join(QStringLiteral(", "))}), true});
    const QString loaded = phrases_.both("note.loaded", {phrases_.day_and_time(dispatch_.loaded_at)});
    const QString by = phrases_.both("sheet.by") + u' ' + dispatch_.by;
    head.push_back({dispatch_.by.isEmpty() ? loaded : loaded + QStringLiteral(" · ") + by, true});
    QStringList from{phrases_.book().kitchen.name};
    from << phrases_.book().kitchen.address;
    head.push_back({phrases_.both("note.from", {from.join(QStringLiteral(", "))}), false});
    head.push_back({phrases_.both([&](const Wording& wording) { return total(wording); }), false});
  }

  // "14 trays, 2 tubs": what is counted at the dock.
  QString total(const Wording& wording) const {
    std::vector<Containers> all;
    for (const Loaded& one : dispatch_.lots)
      for (const Containers& some : one.containers) {
        const auto same = std::find_if(all.begin(), all.end(), [&](const auto& c) { return c.kind == some.kind; });
        Containers& to = same == all.end() ? all.emplace_back(Containers{some.kind, {}, 0}) : *same;
        to.count += some.count + static_cast<int>(some.numbers.size());
      }
    return containers_text(wording, all);
  }

  Table lots() const {
    Table table{{},
                {{Column::Kind::Tick, {}, 1},
                 {Column::Kind::Text, phrases_.both("note.what"), 5},
                 {Column::Kind::Text, phrases_.both("note.containers"), 3},
                 {Column::Kind::Amount, phrases_.both("note.at_loading"), 1}},
                {}};
    for (const Loaded& one : dispatch_.lots) table.rows.push_back(row_of(one));
    return table;
  }

  Row row_of(const Loaded& one) const {
    Cell what = phrases_.name_cell(one.item);
    what.strong = true;
    what.small.push_back({one.lot, true});
    // What the cook who receives it must read is as large as its name.
    const auto say = [&](const SheetPhrases::Saying& saying) { phrases_.add_large(what.small, saying); };
    const auto say_small = [&](const SheetPhrases::Saying& saying) { phrases_.add_small(what.small, saying); };
    say([&](const Wording& wording) { return until(wording, one); });
    say([&](const Wording& wording) { return wording.word(readiness_key(one.readiness)); });
    if (one.declared.stated) {
      say([&](const Wording& wording) { return contains_text(wording, one.declared, list_); });
      say([&](const Wording& wording) { return may_contain_text(wording, one.declared, list_); });
    } else {
      say([&](const Wording& wording) { return wording.word("note.allergens_unknown"); });
    }
    say_small([&](const Wording& wording) { return keep_at(wording, one); });
    Cell held = phrases_.cell([&](const Wording& wording) { return containers_text(wording, one.containers); });
    if (one.net) held.small.push_back({both_systems(phrases_.first(), *one.net), false});
    Cell warmth{Cell::Kind::Text, {}, {}, true};
    if (one.temperature)
      warmth.text = as_read(phrases_.first(), *one.temperature);
    else
      phrases_.add_small(warmth.small, [](const Wording& wording) { return wording.word("note.not_taken"); });
    return {{tick(), what, held, warmth}, false};
  }

  QString until(const Wording& wording, const Loaded& one) const {
    return one.good.use_by ? good_until(wording, *one.good.use_by, phrases_.book().kitchen.zone)
                           : wording.word("note.no_date");
  }

  static const char* readiness_key(book::Readiness readiness) {
    switch (readiness) {
      case book::Readiness::MustBeCooked:
        return "raw";
      case book::Readiness::NotFullyCooked:
        return "not_fully_cooked";
      case book::Readiness::CookedReadyToEat:
      case book::Readiness::ReadyToEatUncooked:
        return "ready_to_eat";
      case book::Readiness::Unknown:
        break;
    }
    return "note.readiness_unknown";
  }

  QString keep_at(const Wording& wording, const Loaded& one) const {
    const book::RuleSet& rules = phrases_.book().rules;
    switch (one.state) {
      case book::State::Frozen:
        return wording.sentence("keep_frozen", {both_scales(wording, phrases_.book().kitchen.freezer)});
      case book::State::HotHeld:
        return wording.sentence("keep_hot", {both_scales(wording, rules.hot_holding)});
      case book::State::TimeControl:
        return wording.word("time_control");
      case book::State::Finished:
        return {};  // a time of its own governs it
      default:
        return one.tcs || one.state != book::State::Ambient
                   ? wording.sentence("keep_at_or_below", {both_scales(wording, rules.cold_holding)})
                   : wording.word("keep_dry");
    }
  }

  Table arrival() const {
    Table table{phrases_.both("note.arrival"),
                {{Column::Kind::Blank, phrases_.both("sheet.time"), 1},
                 {Column::Kind::Blank, phrases_.both("note.temperature"), 1},
                 {Column::Kind::Text, phrases_.both("note.accepted"), 1},
                 {Column::Kind::Text, {}, 1},
                 {Column::Kind::Blank, phrases_.both("sheet.by"), 2}},
                {}};
    const auto box = [&](const char* key) {
      Cell cell = tick();
      cell.text = phrases_.both(key);
      return cell;
    };
    table.rows.push_back({{blank(), blank(), box("note.yes"), box("note.no"), blank()}, false});
    return table;
  }

  Table refused() const {
    Table table{
        {},
        {{Column::Kind::Blank, phrases_.both("note.refused"), 1}, {Column::Kind::Blank, phrases_.both("sheet.why"), 1}},
        {}};
    for (int i = 0; i < kLinesForRefused; ++i) table.rows.push_back({{blank(), blank()}, false});
    return table;
  }

  const SheetPhrases& phrases_;
  const Dispatch& dispatch_;
  const book::Site& site_;
  const book::AllergenList& list_;
};

void refuse_what_is_not_good(const Dispatch& dispatch, problem::Errors& errors) {
  for (const Loaded& one : dispatch.lots) {
    // What needs temperature control and shows no date is not good, whoever says so.
    const bool undated = one.tcs && (!one.good.use_by || one.good.use_by->form == batch::UseBy::Form::None);
    const auto state = one.good.state;
    if (state == history::Good::State::Good && !undated) continue;
    QString what = QStringLiteral("lot %1 %2").arg(one.lot, state_in_words(state));
    if (!one.good.why.isEmpty()) what += QStringLiteral(": ") + one.good.why;
    errors.push_back({Code::Unsafe, what, {}, QStringLiteral("take it off the note; it does not leave the kitchen")});
  }
  if (dispatch.lots.empty())
    errors.push_back({Code::Missing,
                      QStringLiteral("nothing is loaded for note %1").arg(dispatch.number),
                      {},
                      QStringLiteral("name the lots that go out")});
}

}  // namespace

problem::ExpectedAll<WorkSheet> dispatch_note(const SheetSetting& setting, const Dispatch& dispatch) {
  problem::Errors errors;
  refuse_what_is_not_good(dispatch, errors);
  const book::Site* site = setting.book.site(dispatch.site);
  const QString& id = site && !site->allergen_list.isEmpty() ? site->allergen_list : setting.book.kitchen.allergen_list;
  const book::AllergenList* list = setting.book.law.list(id);
  if (!site)
    errors.push_back({Code::Unknown,
                      QStringLiteral("there is no site \"%1\" in the book").arg(dispatch.site),
                      {},
                      QStringLiteral("add it as a [[site]]")});
  if (!list)
    errors.push_back({Code::Unknown,
                      QStringLiteral("there is no list of allergens \"%1\"").arg(id),
                      {},
                      QStringLiteral("name one that is there as the kitchen's allergen_list")});
  if (!errors.empty()) return tl::unexpected(errors);
  const SheetPhrases phrases(setting, errors);
  WorkSheet sheet = DispatchNote(phrases, dispatch, *site, *list).make();
  if (errors.empty()) return sheet;
  problem::sort(errors);
  return tl::unexpected(errors);
}

}  // namespace lardiner::facts
