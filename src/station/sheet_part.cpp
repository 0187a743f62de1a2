// A work sheet as a page shows it.
#include "station/sheet_part.h"

#include <algorithm>

namespace lardiner::station {

using facts::Cell;

namespace {

const QString kBetween = QStringLiteral(" · ");

// What a cell says, its small lines behind it.
QString text(const Cell& cell) {
  QStringList all;
  if (cell.kind == Cell::Kind::Text && !cell.text.isEmpty()) all << cell.text;
  for (const facts::SmallLine& line : cell.small) all << line.text;
  return all.join(kBetween);
}

void add_row(Part& piece, const facts::Row& row, ForPaper left_out) {
  const auto blank = [](const Cell& cell) { return cell.kind == Cell::Kind::Blank; };
  if (left_out == ForPaper::Row && std::any_of(row.cells.begin(), row.cells.end(), blank)) return;
  QStringList said;
  for (const Cell& cell : row.cells)
    if (const QString one = text(cell); !one.isEmpty()) said << one;
  if (said.isEmpty()) return;
  Part& out = piece.add("ROW");
  out.set("MARK", row.band ? QStringLiteral("band") : QString());
  out.set("WHAT", said.takeFirst()).set("REST", said.join(kBetween));
}

// A heading that says nothing is read out all the same.
void add_caption(Part& piece, const QString& caption) {
  if (!caption.isEmpty()) piece.add("TITLED").set("CAPTION", caption);
}

void add_note(Part& page, const facts::Note& note) {
  Part& piece = page.add("PIECE");
  add_caption(piece, note.strong ? note.text : QString());
  piece.set("NOTE", note.strong ? QString() : note.text);
}

void add_table(Part& page, const facts::Table& table, ForPaper left_out) {
  Part& piece = page.add("PIECE");
  add_caption(piece, table.caption);
  piece.set("NOTE", QString());
  for (const facts::Row& row : table.rows) add_row(piece, row, left_out);
}

}  // namespace

void add_sheet(Part& page, const facts::WorkSheet& sheet, ForPaper left_out) {
  for (const facts::SmallLine& line : sheet.head)
    page.add("HEAD")
        .set("TEXT", line.text)
        .set("SIZE", line.strong ? QStringLiteral("large") : QStringLiteral("plain"));
  for (const facts::Part& part : sheet.parts) {
    if (const auto* note = std::get_if<facts::Note>(&part)) add_note(page, *note);
    if (const auto* table = std::get_if<facts::Table>(&part)) add_table(page, *table, left_out);
  }
}

}  // namespace lardiner::station
