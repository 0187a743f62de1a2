// The parts that prep sheets and assembly sheets share: head, steps, limits, what is filled, cautions.
#include "facts/sheet_parts.h"

#include "batch/pad.h"
#include "book/roll_up.h"
#include "facts/container_text.h"
#include "plan/animal_food.h"

namespace lardiner::facts {

namespace {

const QString kBetween = QStringLiteral(" · ");

// "160 °C (320 °F) · 16 to 18 min"
QString setting_and_time(const Wording& wording, const book::Step& step) {
  QStringList parts;
  if (step.setting) parts << both_scales(wording, *step.setting);
  if (step.seconds) parts << lasting(wording, step.seconds->first, step.seconds->second);
  return parts.join(kBetween);
}

QString cook_limit(const Wording& wording, const book::TimeAtTemperature& cook) {
  const QString text = wording.sentence("cook_to", {both_scales(wording, cook.temperature)});
  return cook.seconds == 0 ? text : text + u' ' + wording.sentence("for_seconds", {QString::number(cook.seconds)});
}

// A limit with lines for what was read, when, and who read it.
Row limit_row(const SheetPhrases& phrases, const SheetPhrases::Saying& limit) {
  return {{phrases.cell(limit, true), blank(), blank(), blank()}, false};
}

void add_cook_limit(const SheetPhrases& phrases, const book::Product& product, Table& table) {
  if (product.process != book::Process::Cook) return;
  const book::TimeAtTemperature* cook = batch::cook_by_hand(phrases.book(), product);
  table.rows.push_back(limit_row(phrases, [&](const Wording& wording) {
    return cook ? cook_limit(wording, *cook) : wording.word("sheet.cook_unknown");
  }));
}

void add_cooling_limits(const SheetPhrases& phrases, const book::Product& product, Table& table) {
  const std::vector<book::CoolingStage> stages = batch::cooling_by_hand(phrases.book(), product);
  if (!stages.empty() && !product.cooled_from_ambient)
    table.rows.push_back(limit_row(phrases, [&](const Wording& wording) {
      return wording.sentence("pad_cool_from", {both_scales(wording, stages.front().from)});
    }));
  for (const book::CoolingStage& stage : stages)
    table.rows.push_back(limit_row(phrases, [&](const Wording& wording) {
      return wording.sentence("pad_cool_to", {both_scales(wording, stage.to), lasting(wording, stage.within_seconds)});
    }));
}

// How the pieces of a tray lie, and what it weighs when empty.
QString tray_text(const SheetPhrases& phrases, const Wording& wording, const book::ContainerSpec& container) {
  QStringList parts;
  if (container.rows > 0)
    parts << wording.sentence("sheet.rows_columns",
                              {QString::number(container.rows), QString::number(container.columns)});
  if (container.tare) parts << wording.sentence("sheet.empty", {phrases.amount(wording, *container.tare)});
  return parts.join(kBetween);
}

// "8 trays of 24 pieces (4 by 6 · Empty: 1.1 kg)"
QString filled_text(const SheetPhrases& phrases, const Wording& wording, const plan::Filled& filled) {
  const QString all =
      unbroken(wording.sentence("sheet.each_of", {counted_containers(wording, filled.container->kind, filled.count),
                                                  both_systems(wording, filled.holds)}));
  const QString tray = tray_text(phrases, wording, *filled.container);
  return tray.isEmpty() ? all : wording.sentence("with_parts", {all, tray});
}

}  // namespace

WorkSheet begin_sheet(const SheetPhrases& phrases, const char* kind_key, const book::Product& product,
                      const Ahead& ahead) {
  WorkSheet sheet;
  sheet.language = phrases.language().tag();
  sheet.kind = phrases.both(kind_key);
  const Cell name = phrases.name_cell(product.id);
  sheet.title = name.text;
  sheet.head = name.small;
  sheet.page_of = phrases.first().word("sheet.page_of");
  sheet.running = ahead.lot.isEmpty() ? name.text : name.text + kBetween + ahead.lot;
  sheet.running += kBetween + phrases.day(ahead.day);
  if (!ahead.whom.isEmpty())
    sheet.head.push_back({phrases.both("sheet.for_whom", {SheetPhrases::few(phrases.first(), ahead.whom)}), false});
  const QString lot = phrases.both("sheet.lot");
  sheet.fields.push_back(ahead.lot.isEmpty() ? blank(lot) : Cell{Cell::Kind::Text, lot + u' ' + ahead.lot, {}, true});
  sheet.fields.push_back({Cell::Kind::Text, phrases.day(ahead.day), {}, false});
  for (const char* key : {"sheet.begun", "sheet.ended", "sheet.by"}) sheet.fields.push_back(blank(phrases.both(key)));
  return sheet;
}

void add_allergens(const SheetPhrases& phrases, std::vector<SmallLine>& to, const std::vector<QString>& entries,
                   bool known) {
  const QString all = phrases.both([&](const Wording& wording) {
    QStringList words;
    for (const QString& entry : entries) words << wording.words.upper(allergen_word(wording, entry));
    return words.join(kBetween);
  });
  if (!all.isEmpty()) to.push_back({all, true});
  if (!known)
    phrases.add_small(
        to, [](const Wording& wording) { return wording.word("sheet.allergens_unknown"); }, true);
}

Cell lot_cell(const SheetPhrases& phrases, const Ahead& ahead, const QString& item, measure::Quantity needed) {
  const QString line = QStringLiteral("____________");  // to write a lot on
  Cell out = blank();
  measure::Quantity rest = needed;
  for (const Drawn& drawn : ahead.drawn) {
    if (drawn.item != item) continue;
    const QString lot = drawn.lot.isEmpty() ? line : drawn.lot;
    QStringList said{phrases.amount(drawn.quantity)};
    if (!drawn.place.isEmpty()) said << drawn.place;
    if (out.kind == Cell::Kind::Blank)
      out = {Cell::Kind::Text, lot, {}, false};
    else
      said.prepend(lot);
    out.small.push_back({said.join(kBetween), false});
    if (drawn.quantity.dimension == rest.dimension) rest = rest - drawn.quantity;
  }
  // What the scale does not tell from nothing is no rest.
  const bool is_short =
      rest.dimension == measure::Dimension::Mass && measure::less(phrases.book().kitchen.scale_step, rest);
  if (out.kind == Cell::Kind::Text && is_short) out.small.push_back({phrases.amount(rest) + kBetween + line, false});
  return out;
}

void add_raw(const SheetPhrases& phrases, std::vector<SmallLine>& to, const QString& item) {
  const book::Ingredient* ingredient = phrases.book().ingredient(item);
  const bool raw =
      ingredient ? !ingredient->must_be_cooked || (*ingredient->must_be_cooked && plan::is_animal_food(*ingredient))
                 : book::readiness(phrases.book(), item) <= book::Readiness::NotFullyCooked;
  if (raw)
    phrases.add_small(
        to, [](const Wording& wording) { return wording.word("sheet.raw_parts"); }, true);
}

void add_steps(const SheetPhrases& phrases, const book::Product& product, std::vector<Part>& parts) {
  if (product.steps.empty()) return;
  Table table{
      phrases.both("sheet.steps"),
      {{Column::Kind::Tick, {}, 1}, {Column::Kind::Text, {}, 5}, {Column::Kind::Blank, phrases.both("sheet.time"), 1}},
      {}};
  for (const book::Step& step : product.steps) {
    Cell cell = phrases.cell([&](const Wording& wording) {
      return phrases.text(wording, step.text, QStringLiteral("a step of product \"%1\"").arg(product.id), step.place);
    });
    phrases.add_small(
        cell.small, [&](const Wording& wording) { return setting_and_time(wording, step); }, true);
    table.rows.push_back({{tick(), cell, blank()}, false});
  }
  parts.emplace_back(table);
}

void add_limits(const SheetPhrases& phrases, const book::Product& product, std::vector<Part>& parts) {
  Table table{phrases.both("sheet.limits"),
              {{Column::Kind::Text, phrases.both("sheet.limit"), 6},
               {Column::Kind::Blank, phrases.both("sheet.reading"), 2},
               {Column::Kind::Blank, phrases.both("sheet.at"), 2},
               {Column::Kind::Blank, phrases.both("sheet.by"), 1}},
              {}};
  add_cook_limit(phrases, product, table);
  add_cooling_limits(phrases, product, table);
  if (table.rows.empty()) return;
  parts.emplace_back(table);
  parts.emplace_back(Note{phrases.both("sheet.missed"), false});
}

void add_fill(const SheetPhrases& phrases, const Ahead& ahead, std::vector<SmallLine>& head) {
  if (ahead.fill.empty()) return;
  phrases.add_small(
      head,
      [&](const Wording& wording) {
        QStringList all;
        for (const plan::Filled& filled : ahead.fill) all << filled_text(phrases, wording, filled);
        return wording.sentence("heading", {wording.word("sheet.fill"), wording.words.clauses(all)});
      },
      true);
}

void add_cautions(const SheetPhrases& phrases, QStringList& foot) {
  std::vector<SmallLine> lines;
  phrases.add_small(lines, [](const Wording& wording) {
    return QStringList{wording.word("sheet.caution_hands"), wording.word("sheet.caution_packages"),
                       wording.word("sheet.caution_defer")}
        .join(u' ');
  });
  for (const SmallLine& line : lines) foot << line.text;
}

}  // namespace lardiner::facts
