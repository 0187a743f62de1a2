// The rows of a lot's containers: what they say, and writing no more of them than differs.
#include "ledger/holder_rows.h"

#include <variant>

#include "history/shown.h"

namespace lardiner::ledger {

using history::Holder;
using history::Lot;

namespace {

using Member = std::variant<qint64 HolderRow::*, QString HolderRow::*, std::optional<qint64> HolderRow::*>;

struct Column {
  const char* name;
  Member member;
};

constexpr Column kColumns[] = {{"whereabouts", &HolderRow::whereabouts},
                               {"place", &HolderRow::place},
                               {"site", &HolderRow::site},
                               {"note", &HolderRow::note},
                               {"kind", &HolderRow::kind},
                               {"holds", &HolderRow::holds},
                               {"remains", &HolderRow::remains},
                               {"ends", &HolderRow::ends},
                               {"running", &HolderRow::running},
                               {"frozen", &HolderRow::frozen},
                               {"opened", &HolderRow::opened},
                               {"labelled", &HolderRow::labelled},
                               {"superseded", &HolderRow::superseded},
                               {"seen", &HolderRow::seen}};

using Columns = unsigned;  // a bit each
constexpr Columns kAll = (1U << std::size(kColumns)) - 1;

template <class Take>
void each(Columns columns, Take take) {
  for (size_t at = 0; at < std::size(kColumns); ++at)
    if (columns & (1U << at)) take(kColumns[at], 1U << at);
}

Columns differing(const HolderRow& a, const HolderRow& b) {
  Columns found = 0;
  each(kAll, [&](const Column& column, Columns bit) {
    if (std::visit([&](auto member) { return a.*member != b.*member; }, column.member)) found |= bit;
  });
  return found;
}

void bind(Statement& statement, Columns columns, const HolderRow& row) {
  each(columns, [&](const Column& column, Columns) {
    std::visit([&](auto member) { statement.with(row.*member); }, column.member);
  });
}

void read(const Statement& row, int column, qint64& value) { value = row.number(column); }
void read(const Statement& row, int column, QString& value) { value = row.text(column); }
void read(const Statement& row, int column, std::optional<qint64>& value) {
  if (!row.absent(column)) value = row.number(column);
}

QByteArray names(Columns columns, const char* between) {
  QByteArrayList all;
  each(columns, [&](const Column& column, Columns) { all += column.name; });
  return all.join(between);
}

// Everything but the end, which is more work to tell.
HolderRow row_of(const Holder& holder, const HolderRow& before) {
  return {static_cast<qint64>(holder.where),
          holder.place,
          holder.site,
          holder.note,
          holder.kind,
          holder.holds.amount,
          holder.left.amount,
          before.ends,
          before.running,
          holder.frozen,
          holder.opened,
          holder.label.valid(),
          holder.superseded,
          holder.seen.toSecsSinceEpoch()};
}

void add_end(HolderRow& row, const Lot& lot, const Holder& holder) {
  const history::Shown shown = history::shown(lot, holder);
  row.ends = shown.end ? std::optional(shown.end->toSecsSinceEpoch()) : std::nullopt;
  row.running = shown.use_by && shown.use_by->form == batch::UseBy::Form::Instant;
}

const QByteArray& insertion() {
  static const QByteArray kSql =
      "WITH RECURSIVE run(number) AS (SELECT ? UNION ALL SELECT number + 1 FROM run WHERE number < ?)"
      " INSERT INTO holder (lot, number, " +
      names(kAll, ", ") + ") SELECT ?, number" + QByteArray(", ?").repeated(std::size(kColumns)) + " FROM run";
  return kSql;
}

// Rows that are alike in what is written of them.
class Run {
 public:
  Run(Store& store, qint64 lot) : store_(store), lot_(lot) {}

  void add(int number, bool is_new, Columns columns, const HolderRow& row) {
    if (first_ == 0 || number != last_ + 1 || is_new != is_new_ || columns != columns_ || !(row == row_)) {
      write();
      first_ = number;
      is_new_ = is_new;
      columns_ = columns;
      row_ = row;
    }
    last_ = number;
  }

  void write() {
    if (first_ == 0) return;
    is_new_ ? insert() : update();
    first_ = 0;
  }

 private:
  void insert() {
    Statement& statement = store_.statement(insertion());
    statement.with(qint64{first_}).with(qint64{last_}).with(lot_);
    bind(statement, kAll, row_);
    statement.run();
  }

  void update() {
    const QByteArray sql =
        "UPDATE holder SET " + names(columns_, " = ?, ") + " = ? WHERE lot = ? AND number BETWEEN ? AND ?";
    Statement& statement = store_.statement(sql);
    bind(statement, columns_, row_);
    statement.with(lot_).with(qint64{first_}).with(qint64{last_});
    statement.run();
  }

  Store& store_;
  qint64 lot_;
  int first_ = 0, last_ = 0;
  bool is_new_ = false;
  Columns columns_ = 0;
  HolderRow row_;
};

}  // namespace

std::vector<HolderRow> holder_rows(Store& store, qint64 lot) {
  static const QByteArray kSql = "SELECT " + names(kAll, ", ") + " FROM holder WHERE lot = ? ORDER BY number";
  std::vector<HolderRow> rows;
  Statement& found = store.statement(kSql).with(lot);
  while (found.next()) {
    HolderRow& row = rows.emplace_back();
    for (int at = 0; at < static_cast<int>(std::size(kColumns)); ++at)
      std::visit([&](auto member) { read(found, at, row.*member); }, kColumns[at].member);
  }
  return rows;
}

void write_holders(Store& store, qint64 id, const Lot& lot, Dated dated, std::vector<HolderRow>& rows) {
  Run run(store, id);
  for (size_t at = 0; at < lot.holders.size(); ++at) {
    const Holder& holder = lot.holders[at];
    const bool is_new = at == rows.size();
    if (is_new) rows.emplace_back();
    HolderRow row = row_of(holder, rows[at]);
    if (is_new || dated == Dated::All || !(row == rows[at])) add_end(row, lot, holder);
    const Columns columns = is_new ? kAll : differing(rows[at], row);
    if (columns == 0) continue;
    run.add(holder.number, is_new, columns, row);
    rows[at] = std::move(row);
  }
  run.write();
}

}  // namespace lardiner::ledger
