// A work sheet as JSON: what it says, part by part, without its layout.
#include "command/work_sheet_json.h"

#include <QJsonArray>

namespace lardiner::command {

namespace {

QString text_of(const facts::Cell& cell) {
  QStringList lines;
  if (!cell.text.isEmpty()) lines << cell.text;
  for (const facts::SmallLine& small : cell.small) lines << small.text;
  return lines.join(QStringLiteral(" · "));
}

QJsonArray texts(const std::vector<facts::SmallLine>& lines) {
  QJsonArray all;
  for (const facts::SmallLine& line : lines) all.append(line.text);
  return all;
}

QJsonArray texts(const std::vector<facts::Cell>& cells) {
  QJsonArray all;
  for (const facts::Cell& cell : cells) all.append(text_of(cell));
  return all;
}

QJsonObject json_of(const facts::Note& note) { return {{QStringLiteral("note"), note.text}}; }

QJsonObject json_of(const facts::Table& table) {
  QJsonArray columns, rows;
  for (const facts::Column& column : table.columns) columns.append(column.heading);
  for (const facts::Row& row : table.rows) rows.append(texts(row.cells));
  return {
      {QStringLiteral("caption"), table.caption}, {QStringLiteral("columns"), columns}, {QStringLiteral("rows"), rows}};
}

QJsonObject json_of(const facts::Spans& spans) { return {{QStringLiteral("caption"), spans.caption}}; }

}  // namespace

QJsonObject json_of(const facts::WorkSheet& sheet) {
  QJsonArray parts;
  for (const facts::Part& part : sheet.parts)
    parts.append(std::visit([](const auto& one) { return json_of(one); }, part));
  return {{QStringLiteral("kind"), sheet.kind},
          {QStringLiteral("title"), sheet.title},
          {QStringLiteral("amount"), sheet.amount},
          {QStringLiteral("head"), texts(sheet.head)},
          {QStringLiteral("fields"), texts(sheet.fields)},
          {QStringLiteral("parts"), parts},
          {QStringLiteral("foot"), QJsonArray::fromStringList(sheet.foot)}};
}

}  // namespace lardiner::command
