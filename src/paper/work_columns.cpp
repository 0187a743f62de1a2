// How wide the columns of a table are, and in which sizes its rows are set so that all of them fit.
#include "paper/work_columns.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace lardiner::paper {

namespace {

using facts::Cell;
using facts::Column;

// A column of texts holds this many ems of them at the least (some twelve letters), if it has as long ones.
constexpr double kLeastLine = 6;

// What one column needs, in dots.
struct Need {
  TooLong word{{}, {0}};  // its widest
  double least = 0;       // to be set at all
  double wanted = 0;      // to be set well
};

void need_word(Need& need, const TooLong& word, int beside) {
  if (word.width > need.word.width) need.word = word;
  need.least = std::max(need.least, word.width.value + beside);
}

class Measured {
 public:
  Measured(const facts::Table& table, const Frame& frame, const RowSizes& sizes)
      : frame_(frame), sizes_(sizes), columns_(table.columns) {
    for (const Column& column : table.columns) {
      needs.emplace_back();
      need_word(needs.back(), widest_word(frame.faces, column.heading, {kFine, Weight::Bold}), 0);
    }
    for (const facts::Row& row : table.rows)
      for (std::size_t i = 0; i < row.cells.size() && !row.band; ++i) add(row.cells[i], i);
    for (Need& need : needs) need.wanted = std::max(need.wanted, need.least);
  }

  std::vector<Need> needs;

 private:
  void add(const Cell& cell, std::size_t i) {
    const int beside = beside_words(cell.kind);
    add_text(cell.text, type_of(cell, columns_[i].kind, sizes_), beside, i);
    for (const facts::SmallLine& line : cell.small) add_text(line.text, type_of(line, sizes_), beside, i);
    Need& need = needs[i];
    if (cell.kind == Cell::Kind::Tick) need.least = std::max(need.least, static_cast<double>(kTickSide));
    if (cell.kind == Cell::Kind::Blank) need.least = std::max(need.least, static_cast<double>(kLeastWriting));
  }

  void add_text(const QString& text, Type type, int beside, std::size_t i) {
    if (text.isEmpty()) return;
    Need& need = needs[i];
    need_word(need, widest_word(frame_.faces, text, type), beside);
    const double whole = whole_width(frame_.faces, text, type) + beside;
    const double line = fine_dots(sizes_.item, kPrint).value * kLeastLine;
    need.wanted = std::max(need.wanted, columns_[i].kind == Column::Kind::Amount ? whole : std::min(whole, line));
  }

  const Frame& frame_;
  const RowSizes& sizes_;
  const std::vector<Column>& columns_;
};

bool takes_rest(const Column& column) {
  return column.kind == Column::Kind::Text || column.kind == Column::Kind::Blank;
}

// The whole room in shares, where no column gets less than its minimum.
std::vector<int> shared_out(const std::vector<Column>& columns, const std::vector<double>& minima, double room) {
  std::vector<int> widths;
  std::vector<bool> fixed;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    widths.push_back(static_cast<int>(std::ceil(minima[i])));
    fixed.push_back(!takes_rest(columns[i]));
    if (fixed[i]) room -= widths[i];
  }
  while (true) {
    int shares = 0;
    double rest = room;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (!takes_rest(columns[i])) continue;
      if (fixed[i]) rest -= widths[i];
      if (!fixed[i]) shares += std::max(1, columns[i].share);
    }
    bool all_get_enough = true;
    const auto share_of = [&](std::size_t i) {
      return static_cast<int>(std::floor(rest * std::max(1, columns[i].share) / shares));
    };
    for (std::size_t i = 0; i < columns.size(); ++i)
      if (!fixed[i] && share_of(i) < widths[i]) {
        fixed[i] = true;
        all_get_enough = false;
      }
    if (!all_get_enough) continue;
    for (std::size_t i = 0; i < columns.size(); ++i)
      if (!fixed[i]) widths[i] = share_of(i);
    return widths;
  }
}

// Boxes to tick stand close to each other and to what they tick off.
int gap_after(const std::vector<Column>& columns, std::size_t i) {
  if (i + 1 == columns.size()) return 0;
  return columns[i].kind == Column::Kind::Tick ? kTickGap : kGap;
}

Columns placed(const std::vector<Column>& columns, const std::vector<int>& widths, int left, const RowSizes& sizes) {
  Columns out{sizes, {}};
  int x = left;
  for (std::size_t i = 0; i < widths.size(); ++i) {
    out.places.push_back({x, widths[i]});
    x += widths[i] + gap_after(columns, i);
  }
  return out;
}

}  // namespace

Type type_of(const Cell& cell, Column::Kind column, const RowSizes& sizes) {
  const Weight weight = cell.strong ? Weight::Bold : Weight::Regular;
  if (cell.kind != Cell::Kind::Text) return {kSmall, weight};
  switch (column) {
    case Column::Kind::Amount:
      return {sizes.amount, weight};
    case Column::Kind::Blank:
      return {sizes.beside, weight};
    case Column::Kind::Text:
    case Column::Kind::Tick:
      break;
  }
  return {sizes.item, weight};
}

int beside_words(Cell::Kind kind) {
  switch (kind) {
    case Cell::Kind::Tick:
      return kTickSide + kStep;
    case Cell::Kind::Blank:
      return kLeastWriting + kStep;
    case Cell::Kind::Text:
      break;
  }
  return 0;
}

Type type_of(const facts::SmallLine& line, const RowSizes& sizes) {
  return {line.large ? sizes.item : kSmall, line.strong ? Weight::Bold : Weight::Regular};
}

Type type_of(const facts::SmallLine& line) { return {kSmall, line.strong ? Weight::Bold : Weight::Regular}; }

problem::Expected<Columns> columns_of(const facts::Table& table, const Frame& frame) {
  for (const facts::Row& row : table.rows)
    if (row.cells.size() > (row.band ? 2 : table.columns.size()))
      return tl::unexpected(problem::Error{
          problem::Code::NoRoom,
          QStringLiteral("the row of \"%1\" has more cells than its table has columns").arg(row.cells.front().text),
          {},
          {}});
  double room = frame.width;
  for (std::size_t i = 0; i < table.columns.size(); ++i) room -= gap_after(table.columns, i);
  // From minima as wanted to those of texts, then of amounts too, at their least.
  const auto minima = [&](const std::vector<Need>& needs, bool texts, bool amounts) {
    std::vector<double> all;
    for (std::size_t i = 0; i < needs.size(); ++i)
      all.push_back((takes_rest(table.columns[i]) ? texts : amounts) ? needs[i].wanted : needs[i].least);
    return all;
  };
  const auto fits = [&](const std::vector<double>& all) {
    return std::accumulate(all.begin(), all.end(), 0.0) <= room;
  };
  for (const RowSizes& sizes : kRowSizes) {
    if (table.carried && &sizes != &kRowSizes.back()) continue;
    const std::vector<double> wanted = minima(Measured(table, frame, sizes).needs, true, true);
    if (fits(wanted)) return placed(table.columns, shared_out(table.columns, wanted, room), frame.left, sizes);
  }
  const RowSizes& smallest = kRowSizes.back();
  const std::vector<Need> needs = Measured(table, frame, smallest).needs;
  for (const bool amounts : {true, false}) {
    const std::vector<double> least = minima(needs, false, amounts);
    if (fits(least)) return placed(table.columns, shared_out(table.columns, least, room), frame.left, smallest);
  }
  const auto widest = std::max_element(
      needs.begin(), needs.end(), [](const Need& one, const Need& other) { return one.word.width < other.word.width; });
  double others = 0;
  for (auto need = needs.begin(); need != needs.end(); ++need) others += need == widest ? 0 : need->least;
  return tl::unexpected(too_wide(widest->word, std::max(0.0, room - others)));
}

}  // namespace lardiner::paper
