// The assembly sheet of a batch: what goes into one unit and onto one tray, and what is checked.
#include "facts/assembly_sheet.h"

#include <algorithm>

#include "facts/sheet_parts.h"
#include "plan/rounding.h"

namespace lardiner::facts {

using measure::Quantity;

namespace {

// Lines to write on, side by side.
constexpr size_t kWeightsInARow = 5, kLongWeightsInARow = 4;
constexpr std::int64_t kLongNumber = 10000;
constexpr int kTripsInARow = 3;
// Trays of which the bottle is weighed, while the hand finds the amount (common practice, no source).
constexpr int kBottleTrays = 3;

Quantity count(std::int64_t pieces) { return measure::quantity(measure::Ratio(pieces, 1), measure::Unit::Piece); }

class AssemblySheet {
 public:
  AssemblySheet(const SheetPhrases& phrases, const plan::Assembly& assembly,
                const std::vector<plan::Suffices>& suffices, const Ahead& ahead)
      : phrases_(phrases), assembly_(assembly), product_(*assembly.product), suffices_(suffices), ahead_(ahead) {}

  WorkSheet make() {
    WorkSheet sheet = begin_sheet(phrases_, "sheet.assembly", product_, ahead_);
    sheet.amount = phrases_.amount(count(assembly_.make));
    add_weight_of_one(sheet.head);
    add_fill(phrases_, ahead_, sheet.head);
    sheet.parts.emplace_back(build());
    add_bottles(sheet.parts);
    add_out_of_cold(sheet.parts);
    add_check_weigh(sheet.parts);
    add_suffices(sheet.parts);
    add_steps(phrases_, product_, sheet.parts);
    add_limits(phrases_, product_, sheet.parts);
    add_cautions(phrases_, sheet.foot);
    return sheet;
  }

 private:
  // "612 pieces for 600. One weighs 85 g (82 to 90 g)"
  void add_weight_of_one(std::vector<SmallLine>& head) const {
    if (assembly_.make != assembly_.wanted)
      phrases_.add_small(head, [&](const Wording& wording) {
        return wording.sentence("sheet.units_for",
                                {pieces(wording, count(assembly_.make)), pieces(wording, count(assembly_.wanted))});
      });
    phrases_.add_small(
        head,
        [&](const Wording& wording) {
          const QString weight = both_systems(wording, assembly_.unit_weight);
          const QString bounds = range(wording);
          return wording.sentence("sheet.one_weighs",
                                  {bounds.isEmpty() ? weight : wording.words.clauses({weight, bounds})});
        },
        true);
  }

  // "82 g to 90 g"
  QString range(const Wording& wording) const {
    if (!assembly_.unit_least || !assembly_.unit_most) return {};
    return unbroken(
        wording.sentence("range", {phrases_.amount(*assembly_.unit_least), phrases_.amount(*assembly_.unit_most)}));
  }

  Table build() const {
    Table table{{},
                {{Column::Kind::Tick, {}, 1},
                 {Column::Kind::Text, phrases_.both("sheet.item"), 3},
                 {Column::Kind::Amount, phrases_.both("sheet.in_one"), 1},
                 {Column::Kind::Amount, phrases_.both("sheet.for_all"), 1},
                 {Column::Kind::Amount, phrases_.both("sheet.pull"), 1},
                 {Column::Kind::Blank, phrases_.both("sheet.lot"), 2}},
                {}};
    for (const plan::AssemblyLine& line : assembly_.lines)
      table.rows.push_back({{tick(), item_cell(line), one_cell(line), total_cell(line), pull_cell(line),
                             lot_cell(phrases_, ahead_, line.line->item, line.to_pull)},
                            false});
    return table;
  }

  Cell item_cell(const plan::AssemblyLine& line) const {
    Cell cell = phrases_.name_cell(line.line->item);
    phrases_.add_small(cell.small, [&](const Wording& wording) { return cut(wording, *line.line); });
    phrases_.add_small(
        cell.small, [&](const Wording& wording) { return tool(wording, line); }, true);
    phrases_.add_small(
        cell.small, [&](const Wording& wording) { return laid(wording, line); }, true);
    add_allergens(phrases_, cell.small, line.allergens, line.allergens_known);
    add_raw(phrases_, cell.small, line.line->item);
    return cell;
  }

  QString cut(const Wording& wording, const book::FormulaLine& line) const {
    return line.cut.empty() ? QString() : phrases_.text(wording, line.cut, of_line("cut"), line.place);
  }

  QString tool(const Wording& wording, const plan::AssemblyLine& line) const {
    if (line.disher)
      return wording.sentence("sheet.disher",
                              {QString::number(*line.line->disher), both_systems(wording, *line.disher)});
    const book::LocalText& tool = line.line->tool;
    return tool.empty() ? QString() : phrases_.text(wording, tool, of_line("tool"), line.line->place);
  }

  QString laid(const Wording& wording, const plan::AssemblyLine& line) const {
    if (!line.on_tray) return {};
    const char* key = line.line->laying == book::Laying::Brushed ? "sheet.brush" : "sheet.drizzle";
    return wording.sentence(key, {both_systems(wording, *line.on_tray)});
  }

  QString of_line(const char* what) const {
    return QStringLiteral("the %1 of a line of product \"%2\"").arg(QLatin1String(what), product_.id);
  }

  Cell one_cell(const plan::AssemblyLine& line) const {
    Cell weight{Cell::Kind::Text, phrases_.on_scale(line.each_weighed, step_of(line.each)), {}, true};
    weight.small.push_back({phrases_.other_system(line.each_weighed), false});
    if (!line.pieces) return weight;
    Cell cell{Cell::Kind::Text, phrases_.amount(measure::quantity(*line.pieces, measure::Unit::Piece)), {}, true};
    cell.small.push_back({weight.text, false});
    return cell;
  }

  Cell total_cell(const plan::AssemblyLine& line) const {
    const QString weight = phrases_.on_scale(line.total, step_of(line.total));
    if (line.pieces) return {Cell::Kind::Text, phrases_.amount(pieces_in_all(line)), {{weight, false}}, true};
    return {Cell::Kind::Text, weight, {{phrases_.other_system(line.total), false}}, true};
  }

  Quantity pieces_in_all(const plan::AssemblyLine& line) const {
    return measure::quantity(*line.pieces * measure::Ratio(assembly_.make, 1), measure::Unit::Piece);
  }

  Quantity step_of(Quantity weight) const { return plan::weighable(phrases_.book().kitchen, weight).step; }

  Cell pull_cell(const plan::AssemblyLine& line) const {
    Cell cell{Cell::Kind::Text, phrases_.on_scale(line.to_pull, step_of(line.to_pull)), {}, false};
    cell.small.push_back({phrases_.other_system(line.to_pull), false});
    if (line.sure_weight && line.pieces) {
      phrases_.add_small(cell.small, [&](const Wording& wording) {
        return wording.sentence("sheet.sure", {pieces(wording, pieces_in_all(line))});
      });
    }
    return cell;
  }

  // The bottle of what is brushed and drizzled, over the first trays.
  void add_bottles(std::vector<Part>& parts) const {
    const std::int64_t trays = assembly_.trays ? assembly_.trays->whole : 0;
    Table table{phrases_.both("sheet.bottle"), {{Column::Kind::Text, {}, 3}}, {}};
    for (int tray = 1; tray <= std::min<std::int64_t>(trays, kBottleTrays); ++tray)
      table.columns.push_back({Column::Kind::Blank, phrases_.both("sheet.tray", {QString::number(tray)}), 2});
    for (const plan::AssemblyLine& line : assembly_.lines) {
      if (!line.on_tray || trays == 0) continue;
      for (const char* when : {"sheet.before", "sheet.after"}) {
        Cell what = phrases_.cell([&](const Wording& wording) {
          return wording.sentence("heading", {phrases_.name(wording, line.line->item), wording.word(when)});
        });
        Row row{{what}, false};
        row.cells.resize(table.columns.size(), blank());
        table.rows.push_back(row);
      }
    }
    if (!table.rows.empty()) parts.emplace_back(table);
  }

  void add_out_of_cold(std::vector<Part>& parts) const {
    if (!assembly_.out_of_cold) return;
    const plan::OutOfCold& cold = *assembly_.out_of_cold;
    Table table{phrases_.both([&](const Wording& wording) {
                  const QString within = lasting(wording, cold.seconds);
                  return cold.units == 0
                             ? wording.sentence("sheet.no_unit_in_time", {within})
                             : wording.sentence("sheet.take_out", {pieces(wording, count(cold.units)), within});
                }),
                {},
                {}};
    for (int i = 0; i < kTripsInARow; ++i) {
      table.columns.push_back({Column::Kind::Blank, phrases_.both("sheet.out"), 1});
      table.columns.push_back({Column::Kind::Blank, phrases_.both("sheet.back_by"), 1});
    }
    for (std::int64_t trip = 0; trip < std::max<std::int64_t>(cold.times, 1); ++trip) {
      if (trip % kTripsInARow == 0) table.rows.push_back({std::vector<Cell>(table.columns.size()), false});
      auto& cells = table.rows.back().cells;
      cells[static_cast<size_t>(trip % kTripsInARow) * 2] = blank(QString::number(trip + 1));
      cells[static_cast<size_t>(trip % kTripsInARow) * 2 + 1] = blank();
    }
    parts.emplace_back(table);
  }

  void add_check_weigh(std::vector<Part>& parts) const {
    const QString bounds = range(phrases_.first());
    QString caption = phrases_.both("sheet.check_weigh");
    if (!bounds.isEmpty()) caption = phrases_.first().sentence("heading", {caption, bounds});
    const size_t in_a_row = assembly_.make < kLongNumber ? kWeightsInARow : kLongWeightsInARow;
    Table table{caption, std::vector<Column>(in_a_row, {Column::Kind::Blank, {}, 1}), {}};
    for (size_t i = 0; i < assembly_.check_weigh.size(); ++i) {
      if (i % in_a_row == 0) table.rows.push_back({std::vector<Cell>(in_a_row), false});
      table.rows.back().cells[i % in_a_row] = blank(QString::number(assembly_.check_weigh[i]));
    }
    parts.emplace_back(table);
    parts.emplace_back(Note{phrases_.both("sheet.check_weigh_rule"), false});
  }

  // The item that limits stands first.
  void add_suffices(std::vector<Part>& parts) const {
    if (suffices_.empty()) return;
    Table table{phrases_.both("sheet.suffices"),
                {{Column::Kind::Text, phrases_.both("sheet.item"), 3},
                 {Column::Kind::Amount, phrases_.both("sheet.worst"), 1},
                 {Column::Kind::Amount, phrases_.both("sheet.likely"), 1},
                 {Column::Kind::Amount, phrases_.both("sheet.best"), 1}},
                {}};
    const auto units = [&](std::optional<std::int64_t> number, bool strong) {
      return Cell{
          Cell::Kind::Text, number ? QString::number(*number) : phrases_.first().word("sheet.not_known"), {}, strong};
    };
    for (const plan::Suffices& one : suffices_) {
      Cell item = phrases_.name_cell(one.item);
      if (&one == &suffices_.front())
        phrases_.add_small(
            item.small, [](const Wording& wording) { return wording.word("sheet.limiting"); }, true);
      table.rows.push_back(
          {{item, units(one.units.worst, true), units(one.units.likely, false), units(one.units.best, false)}, false});
    }
    parts.emplace_back(table);
  }

  const SheetPhrases& phrases_;
  const plan::Assembly& assembly_;
  const book::Product& product_;
  const std::vector<plan::Suffices>& suffices_;
  const Ahead& ahead_;
};

}  // namespace

problem::ExpectedAll<WorkSheet> assembly_sheet(const SheetSetting& setting, const plan::Assembly& assembly,
                                               const std::vector<plan::Suffices>& suffices, const Ahead& ahead) {
  problem::Errors errors;
  const SheetPhrases phrases(setting, errors);
  WorkSheet sheet = AssemblySheet(phrases, assembly, suffices, ahead).make();
  if (errors.empty()) return sheet;
  problem::sort(errors);
  return tl::unexpected(errors);
}

}  // namespace lardiner::facts
