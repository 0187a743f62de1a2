// The prep sheet of a batch: what is pulled, weighed and done, and which limits it must meet.
#include "facts/prep_sheet.h"

#include <algorithm>

#include "facts/sheet_parts.h"

namespace lardiner::facts {

using measure::Quantity;

namespace {

// Pulls with a box of their own beside each line; of more, one box serves.
constexpr int kMostTicks = 3;

class PrepSheet {
 public:
  PrepSheet(const SheetPhrases& phrases, const plan::Prep& prep, const Ahead& ahead)
      : phrases_(phrases), prep_(prep), product_(*prep.scaled.product), ahead_(ahead) {
    for (const plan::Bowl& bowl : prep.bowls)
      for (const plan::PrepLine& line : bowl.lines) trimmed_ = trimmed_ || line.amount.to_pull != line.amount.weighed;
  }

  WorkSheet make() {
    WorkSheet sheet = begin_sheet(phrases_, "sheet.prep", product_, ahead_);
    sheet.amount = phrases_.amount(output(prep_.scaled.pulls));
    add_amounts(sheet.head);
    add_fill(phrases_, ahead_, sheet.head);
    for (const plan::Bowl& bowl : prep_.bowls) sheet.parts.emplace_back(table_of(bowl));
    add_steps(phrases_, product_, sheet.parts);
    add_limits(phrases_, product_, sheet.parts);
    if (!measured_by_.isEmpty())
      sheet.foot << phrases_.both("sheet.measures_by", {measured_by_.join(QStringLiteral("; "))});
    add_cautions(phrases_, sheet.foot);
    return sheet;
  }

 private:
  // In pieces where it is made in these, else by weight.
  Quantity output(int pulls) const {
    const plan::Scaled& scaled = prep_.scaled;
    if (scaled.units && product_.made_as() == measure::Dimension::Count)
      return measure::quantity(*scaled.units * measure::Ratio(pulls, 1), measure::Unit::Piece);
    return measure::scaled(scaled.output, measure::Ratio(pulls, 1));
  }

  // How often the vessel is filled, with how much, and what that gives.
  void add_amounts(std::vector<SmallLine>& head) const {
    const plan::Scaled& scaled = prep_.scaled;
    phrases_.add_small(
        head,
        [&](const Wording& wording) {
          QStringList said{wording.sentence("sheet.all_in", {both_systems(wording, scaled.input)}),
                           wording.sentence("sheet.comes_to", {both_systems(wording, scaled.output)})};
          if (scaled.pulls > 1)
            said.prepend(wording.words.counted(QStringLiteral("pulls"), QString::number(scaled.pulls)));
          return wording.words.clauses(said);
        },
        scaled.pulls > 1);
  }

  int ticks() const { return prep_.scaled.pulls <= kMostTicks ? prep_.scaled.pulls : 1; }

  Table table_of(const plan::Bowl& bowl) {
    Table table{caption(bowl), {}, {}};
    for (int pull = 1; pull <= ticks(); ++pull)
      table.columns.push_back({Column::Kind::Tick, ticks() > 1 ? QString::number(pull) : QString(), 1});
    table.columns.push_back({Column::Kind::Text, phrases_.both("sheet.item"), 3});
    if (trimmed_) table.columns.push_back({Column::Kind::Amount, phrases_.both("sheet.pull"), 1});
    table.columns.push_back({Column::Kind::Amount, phrases_.both("sheet.weigh"), 1});
    table.columns.push_back({Column::Kind::Amount, phrases_.both("sheet.reads"), 1});
    table.columns.push_back({Column::Kind::Blank, phrases_.both("sheet.lot"), 2});
    for (const plan::PrepLine& line : bowl.lines) table.rows.push_back(row_of(line));
    return table;
  }

  // The bowl, else the vessel with its weight when empty.
  QString caption(const plan::Bowl& bowl) const {
    if (!bowl.name.empty())
      return phrases_.both([&](const Wording& wording) {
        const QString what = QStringLiteral("a bowl of product \"%1\"").arg(product_.id);
        return wording.sentence("heading",
                                {wording.word("sheet.bowl"), phrases_.text(wording, bowl.name, what, product_.place)});
      });
    const book::Vessel* vessel = phrases_.book().vessel(product_.vessel);
    if (!vessel) return {};
    const QString into = phrases_.both([&](const Wording& wording) {
      const QString what = QStringLiteral("the name of vessel \"%1\"").arg(vessel->id);
      return wording.sentence("sheet.into", {phrases_.text(wording, vessel->name, what, vessel->place)});
    });
    if (!vessel->tare) return into;
    return into + QStringLiteral(" · ") + phrases_.both("sheet.empty", {phrases_.amount(*vessel->tare)});
  }

  Row row_of(const plan::PrepLine& line) {
    Row row;
    for (int pull = 0; pull < ticks(); ++pull) row.cells.push_back(tick());
    row.cells.push_back(item_cell(line));
    if (trimmed_) row.cells.push_back(weight_cell(line.amount.to_pull, line.amount.step, false));
    row.cells.push_back(weigh_cell(line.amount));
    row.cells.push_back(reading_cell(line));
    row.cells.push_back(lot_cell(phrases_, ahead_, line.amount.line->item,
                                 measure::scaled(line.amount.to_pull, measure::Ratio(prep_.scaled.pulls, 1))));
    return row;
  }

  Cell item_cell(const plan::PrepLine& line) const {
    const book::FormulaLine& written = *line.amount.line;
    Cell cell = phrases_.name_cell(written.item);
    if (!written.cut.empty())
      phrases_.add_small(cell.small, [&](const Wording& wording) {
        return phrases_.text(wording, written.cut,
                             QStringLiteral("the cut of a line of product \"%1\"").arg(product_.id), written.place);
      });
    if (line.amount.restricted)
      phrases_.add_small(
          cell.small, [](const Wording& wording) { return wording.word("sheet.law_most"); }, true);
    add_allergens(phrases_, cell.small, line.allergens, line.allergens_known);
    add_raw(phrases_, cell.small, written.item);
    return cell;
  }

  Cell weight_cell(Quantity weight, Quantity step, bool strong) const {
    return {Cell::Kind::Text, phrases_.on_scale(weight, step), {{phrases_.other_system(weight), false}}, strong};
  }

  Cell weigh_cell(const plan::ScaledLine& amount) {
    Cell cell = weight_cell(amount.weighed, amount.step, true);
    if (amount.pieces)
      cell.small.push_back({phrases_.amount(measure::quantity(*amount.pieces, measure::Unit::Piece)), false});
    if (amount.measure) {
      cell.small.push_back({hand_measure(*amount.measure), false});
      if (!measured_by_.contains(amount.measure->source)) measured_by_ << amount.measure->source;
    }
    return cell;
  }

  QString hand_measure(const plan::HandMeasure& measure) const {
    const char* key = measure.unit == measure::Unit::Cup          ? "sheet.cups"
                      : measure.unit == measure::Unit::Tablespoon ? "sheet.tbsp"
                                                                  : "sheet.tsp";
    return QStringLiteral("≈") + QChar(0x00A0) + unbroken(phrases_.first().sentence(key, {quarters(measure.count)}));
  }

  // "1¾", "½"
  static QString quarters(measure::Ratio count) {
    const std::int64_t all = count.num() * 4 / count.den();
    const QString rest = QStringList{QString(), QStringLiteral("¼"), QStringLiteral("½"), QStringLiteral("¾")}[all % 4];
    return all >= 4 ? QString::number(all / 4) + rest : rest;
  }

  Cell reading_cell(const plan::PrepLine& line) const {
    if (line.reading) return {Cell::Kind::Text, phrases_.on_scale(*line.reading, line.amount.step), {}, false};
    Cell cell;
    phrases_.add_small(
        cell.small, [](const Wording& wording) { return wording.word("sheet.fine_scale"); }, true);
    return cell;
  }

  const SheetPhrases& phrases_;
  const plan::Prep& prep_;
  const book::Product& product_;
  const Ahead& ahead_;
  bool trimmed_ = false;     // something is pulled that is more than what is weighed
  QStringList measured_by_;  // sources of spoons and cups
};

}  // namespace

problem::ExpectedAll<WorkSheet> prep_sheet(const SheetSetting& setting, const plan::Prep& prep, const Ahead& ahead) {
  problem::Errors errors;
  const SheetPhrases phrases(setting, errors);
  WorkSheet sheet = PrepSheet(phrases, prep, ahead).make();
  if (errors.empty()) return sheet;
  problem::sort(errors);
  return tl::unexpected(errors);
}

}  // namespace lardiner::facts
