// A kitchen for the tests of work sheets, and sheets as lines of text.
#pragma once

#include "facts/sheet_setting.h"
#include "facts/work_sheet.h"
#include "kitchen.h"
#include "reader/fields.h"

namespace lardiner::facts::sheets {

inline const QByteArray kMore = R"toml(
[[vessel]]
id = "kettle"
name = { en = "Kettle", es = "Marmita" }
tare = "3.2 kg"

[[ingredient]]
id = "onion"
name = { en = "Onions", es = "Cebollas" }
tcs = "no"
tcs_basis = "whole raw onion"
must_be_cooked = false
edible = "90 %"
measure = [{ amount = "1 cup", weighs = "160 g", source = "USDA SR28 11282" }]
bought_by = "10 kg"
bought_as = { en = "sack", es = "saco" }
[[ingredient.supplier_item]]
id = "onion-a"
supplier = "A"
contains = "none"
checked = 2026-01-01
source = "letter"

[[ingredient]]
id = "spice"
name = { en = "Spice", es = "Especias" }
tcs = "no"
tcs_basis = "dry"
must_be_cooked = false
[[ingredient.supplier_item]]
id = "spice-a"
supplier = "A"

[[ingredient]]
id = "cod"
name = { en = "Cod", es = "Bacalao" }
tcs = "yes"
tcs_basis = "raw fish"
must_be_cooked = true
food = "fish"
animal = true
count_grade = "6/8 per lb"
[[ingredient.supplier_item]]
id = "cod-a"
supplier = "A"
contains = ["fish:cod"]
checked = 2026-01-01
source = "letter"

[[product]]
id = "stew"
name = { en = "Chicken stew", es = "Guiso de pollo" }
kind = "component"
code = "STW"
item_number = "00000011"
tcs = "yes"
tcs_basis = "cooked poultry"
formula = [
  { item = "chicken", amount = "4 kg", cut = { en = "20 mm dice", es = "dados de 20 mm" } },
  { item = "onion", amount = "900 g" },
  { item = "butter", amount = "80 g", bowl = { en = "small bowl", es = "tazón" } },
  { item = "spice", amount = "12.5 g", bowl = { en = "small bowl", es = "tazón" } },
]
makes = "4.5 kg"
vessel = "kettle"
vessel_takes = "20 kg"
process = "cook"
cooled_from = "hot"
[[product.step]]
kind = "cook"
text = { en = "Simmer under a lid", es = "Cocer tapado" }
takes = "40 to 50 min"
[[product.shelf_life]]
state = "chilled"
keeps = "3 days"
authority = "kitchen rule"
[[product.container]]
kind = "tub"
holds = "2 kg"
media = "lid"
purpose = "inside"

[[product]]
id = "cod-tray"
name = { en = "Cod with butter", es = "Bacalao con mantequilla" }
kind = "assembled item"
code = "COT"
item_number = "00000012"
tcs = "yes"
tcs_basis = "raw fish"
makes = "24 pieces"
unit_weight = "80 g"
unit_least = "76 g"
unit_most = "84 g"
make_over = "2 %"
units_per_hour = "120"
formula = [
  { item = "cod", amount = "24 pieces" },
  { item = "lime-butter", per_unit = "12 g", disher = 100 },
  { item = "butter", per_unit = "2 g", laying = "brushed" },
]
[[product.shelf_life]]
state = "chilled"
keeps = "2 days"
authority = "kitchen rule"
[[product.container]]
kind = "tray"
holds = "24 pieces"
rows = 4
columns = 6
tare = "300 g"
media = "lid"
purpose = "finisher"
[[product.finishing]]
equipment = "oven"
from = "chilled"
setting = "375 °F (190 °C)"
time = "10 min"
to = "145 °F (63 °C) 15 s"
)toml";

inline book::Book read_kitchen() {
  std::vector<book::SourceFile> files = tray::kitchen_files("out_of_cold = \"30 min\"\nfine_scale_step = \"0.1 g\"\n");
  files.push_back({QStringLiteral("more.toml"), kMore});
  return tray::read_files(files);
}

inline const book::Book& kitchen() {
  static const book::Book book = read_kitchen();
  return book;
}

inline const words::Language& language(const char* code) {
  const auto& all = tray::languages();
  return *std::find_if(all.begin(), all.end(), [&](const auto& l) { return l.code() == QLatin1String(code); });
}

/// In English, or with Spanish beneath.
inline SheetSetting in_english(const book::Book& book = kitchen()) { return {book, {&language("en")}}; }
inline SheetSetting in_both(const book::Book& book = kitchen()) { return {book, {&language("en"), &language("es")}}; }

inline QString said(const Cell& cell) {
  QStringList parts;
  if (cell.kind == Cell::Kind::Tick) parts << QStringLiteral("[]");
  if (!cell.text.isEmpty()) parts << cell.text;
  if (cell.kind == Cell::Kind::Blank) parts << QStringLiteral("__");
  for (const SmallLine& line : cell.small) parts << line.text;
  return parts.join(QStringLiteral("; ")).replace(QChar(0x00A0), u' ');
}

inline QString said(const Row& row) {
  QStringList cells;
  for (const Cell& cell : row.cells) cells << said(cell);
  return (row.band ? QStringLiteral("== ") : QString()) + cells.join(QStringLiteral(" | "));
}

/// Rows of the table with that caption.
inline QStringList rows(const WorkSheet& sheet, const char* caption) {
  QStringList out;
  for (const Part& part : sheet.parts)
    if (const Table* table = std::get_if<Table>(&part);
        table && QString(table->caption).replace(QChar(0x00A0), u' ') == QString::fromUtf8(caption))
      for (const Row& row : table->rows) out << said(row);
  return out;
}

inline QStringList head(const WorkSheet& sheet) {
  QStringList out;
  for (const SmallLine& line : sheet.head) out << QString(line.text).replace(QChar(0x00A0), u' ');
  return out;
}

template <class T>
T must(problem::ExpectedAll<T> made) {
  if (!made) FAIL(problem::text(made.error()).toStdString());
  return std::move(*made);
}

inline measure::Quantity quantity(const char* text) { return measure::parse_quantity(QString::fromUtf8(text)).value(); }

inline Ahead ahead() { return {QDate(2026, 11, 26), {}, {}, {}, {}}; }

}  // namespace lardiner::facts::sheets
