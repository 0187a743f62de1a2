// A work sheet as plain text, for a terminal of fixed-width letters.
#include "command/sheet_text.h"

#include <algorithm>
#include <vector>

#include "command/spans_text.h"
#include "command/text_columns.h"

namespace lardiner::command {

namespace {

using facts::Cell;
using facts::Column;

constexpr int kWidestText = 44;  // of a column, before it is broken
constexpr int kWidestLine = 100;
const QString kGap = QStringLiteral("  ");
const QString kLine = QStringLiteral("____");

QString first_line(const Cell& cell) {
  if (cell.kind == Cell::Kind::Tick) return QStringLiteral("[ ]");
  if (cell.kind == Cell::Kind::Text) return cell.text;
  return cell.text.isEmpty() ? kLine : cell.text + u' ' + kLine;
}

// The lines of a cell: its text, and what stands small beneath it.
QStringList lines_of(const Cell& cell, int width) {
  QStringList lines = broken(first_line(cell), width);
  for (const facts::SmallLine& small : cell.small) lines += broken(small.text, width);
  return lines;
}

int width_of(const Cell& cell) {
  int width = 0;
  for (const QString& line : lines_of(cell, kWidestText)) width = std::max(width, columns_of(line));
  return width;
}

std::vector<int> widths_of(const facts::Table& table) {
  std::vector<int> widths;
  for (const Column& column : table.columns) widths.push_back(std::min(kWidestText, columns_of(column.heading)));
  for (const facts::Row& row : table.rows)
    for (size_t i = 0; !row.band && i < row.cells.size() && i < widths.size(); ++i)
      widths[i] = std::max(widths[i], width_of(row.cells[i]));
  return widths;
}

QString without_blanks_at_end(QString line) {
  while (line.endsWith(u' ')) line.chop(1);
  return line + u'\n';
}

// Cells side by side, as many lines as the tallest needs.
QString side_by_side(const std::vector<QStringList>& cells, const std::vector<int>& widths, const facts::Table& table) {
  qsizetype height = 0;
  for (const QStringList& cell : cells) height = std::max(height, cell.size());
  QString out;
  for (qsizetype i = 0; i < height; ++i) {
    QStringList parts;
    for (size_t column = 0; column < cells.size() && column < widths.size(); ++column)
      parts << padded(cells[column].value(i), widths[column], table.columns[column].kind == Column::Kind::Amount);
    out += without_blanks_at_end(parts.join(kGap));
  }
  return out;
}

QString band_text(const facts::Row& row) {
  QStringList parts;
  for (const Cell& cell : row.cells) parts += lines_of(cell, kWidestLine);
  return QStringLiteral("-- ") + parts.join(kGap) + u'\n';
}

QString text(const facts::Table& table) {
  const std::vector<int> widths = widths_of(table);
  QString out = table.caption.isEmpty() ? QString() : table.caption + u'\n';
  std::vector<QStringList> headings;
  for (size_t i = 0; i < widths.size(); ++i) headings.push_back(broken(table.columns[i].heading, kWidestText));
  const bool any_heading = std::any_of(table.columns.begin(), table.columns.end(),
                                       [](const Column& column) { return !column.heading.isEmpty(); });
  if (any_heading) out += side_by_side(headings, widths, table);
  for (const facts::Row& row : table.rows) {
    if (row.band) {
      out += band_text(row);
      continue;
    }
    std::vector<QStringList> cells;
    for (size_t i = 0; i < row.cells.size() && i < widths.size(); ++i)
      cells.push_back(lines_of(row.cells[i], widths[i]));
    out += side_by_side(cells, widths, table);
  }
  return out;
}

QString text(const facts::Note& note) { return broken(note.text, kWidestLine).join(u'\n') + u'\n'; }

QString head_text(const facts::WorkSheet& sheet) {
  QString out = sheet.kind + u'\n' + sheet.title;
  if (!sheet.amount.isEmpty()) out += kGap + sheet.amount;
  out += u'\n';
  for (const facts::SmallLine& line : sheet.head) out += broken(line.text, kWidestLine).join(u'\n') + u'\n';
  QStringList fields;
  for (const Cell& field : sheet.fields) fields += lines_of(field, kWidestLine);
  return fields.isEmpty() ? out : out + fields.join(kGap) + u'\n';
}

}  // namespace

QString text(const facts::WorkSheet& sheet) {
  QString out = head_text(sheet);
  for (const facts::Part& part : sheet.parts)
    out += u'\n' + std::visit([](const auto& any) { return text(any); }, part);
  if (!sheet.foot.isEmpty()) out += u'\n';
  for (const QString& line : sheet.foot) out += broken(line, kWidestLine).join(u'\n') + u'\n';
  return out;
}

}  // namespace lardiner::command
