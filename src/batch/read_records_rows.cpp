// Which rows of a file make up one record: its own, and the further rows that add to it.
#include "batch/read_records_rows.h"

#include <QHash>
#include <QSet>

#include "batch/read_records_values.h"
#include "reader/fields.h"
#include "reader/quote.h"

namespace lardiner::batch {

using problem::Code;
using problem::Error;
using problem::Errors;
using reader::quoted;
using reader::Value;

namespace {

const QStringList& words() {
  static const QStringList all{QStringLiteral("input"), QStringLiteral("cooked"),     QStringLiteral("cooled"),
                               QStringLiteral("event"), QStringLiteral("containers"), QStringLiteral("record")};
  return all;
}

QString text_of(const Value& row, QStringView key) {
  const Value* found = row.find(key);
  return found && found->kind == Value::Kind::String ? found->text : QString();
}

QString item_of(const Value& row) {
  const QString product = text_of(row, u"product");
  return product.isEmpty() ? text_of(row, u"ingredient") : product;
}

// Unreadable numbers are told where the record or the row is read.
std::optional<int> number_of(const Value& row) {
  Errors ignored;
  return reader::Fields(row, {}, ignored).integer(u"number", 1, 9999);
}

problem::Place place_of(const Value& row, QStringView key) {
  const Value* found = row.find(key);
  return found ? found->place : row.place;
}

class Grouping {
 public:
  Grouping(const reader::Rows& rows, Errors& errors) : rows_(rows), errors_(errors) {}

  std::vector<RecordRows> group() {
    std::vector<Further> further;
    for (size_t at = 0; at < rows_.count; ++at) {
      const Value row = rows_.row(at);
      const QString word = text_of(row, u"row");
      const QString item = *items_.insert(item_of(row));  // one text for all rows of an item
      if (word.isEmpty() || word == QLatin1String("record"))
        add_record(at, item, number_of(row));
      else
        further.push_back({at, words().indexOf(word), item, number_of(row)});
    }
    for (const Further& row : further) add_further(row);
    for (auto same = alike_.cbegin(); same != alike_.cend(); ++same) refuse_doubled(*same);
    if (homeless_) records_.clear();
    return std::move(records_);
  }

 private:
  struct Further {
    size_t at;
    qsizetype word;  // of `words`, or -1
    QString item;
    std::optional<int> number;
  };

  void add_record(size_t own, const QString& item, std::optional<int> number) {
    const size_t at = records_.size();
    records_.push_back({own, item, number, {}, false});
    if (!number) return;
    numbered_[*number].push_back(at);
    if (!item.isEmpty()) alike_[{item, *number}].push_back(at);
  }

  void add_further(const Further& row) {
    if (row.word < 0) {
      homeless_ = true;
      const Value value = rows_.row(row.at);
      const QString word = text_of(value, u"row");
      refuse(value, u"row", Code::Unknown, QStringLiteral("a row cannot be %1").arg(quoted(word)),
             did_you_mean(word, words(), QStringLiteral("write one of ") + words().join(QStringLiteral(", "))));
      return;
    }
    const QString& word = words()[row.word];
    if (RecordRows* record = record_of(row, word)) {
      record->further.push_back({word, row.at});
    } else {
      homeless_ = true;
    }
  }

  RecordRows* record_of(const Further& row, const QString& word) {
    if (!row.number) {
      refuse(rows_.row(row.at), u"number", Code::Missing,
             QStringLiteral("the %1 row has no number of a record").arg(word),
             QStringLiteral("write the number of the record that it belongs to"));
      return nullptr;
    }
    std::vector<size_t> candidates;
    for (const size_t at : numbered_.value(*row.number))
      if (row.item.isEmpty() || records_[at].item == row.item) candidates.push_back(at);
    if (candidates.size() == 1) return &records_[candidates.front()];
    refuse_homeless(rows_.row(row.at), word, *row.number, row.item, candidates.size());
    return nullptr;
  }

  void refuse_homeless(const Value& row, const QString& word, int number, const QString& item, size_t found) {
    const QString of = item.isEmpty() ? QString() : QStringLiteral(" of ") + quoted(item);
    if (found == 0)
      refuse(
          row, u"number", Code::Unknown,
          QStringLiteral("the %1 row belongs to record %2%3, which is not in this file").arg(word).arg(number).arg(of),
          QStringLiteral("correct the number, or add the record"));
    else
      refuse(
          row, u"number", Code::Conflict,
          QStringLiteral("the %1 row belongs to record %2%3, of which there are several").arg(word).arg(number).arg(of),
          item.isEmpty() ? QStringLiteral("name the product in this row too")
                         : QStringLiteral("give each record a number of its own"));
  }

  void refuse_doubled(const std::vector<size_t>& same) {
    if (same.size() < 2) return;
    for (const size_t at : same) {
      RecordRows& record = records_[at];
      record.doubled = true;
      const RecordRows& other = records_[at == same.front() ? same[1] : same.front()];
      refuse(rows_.row(record.own), u"number", Code::Duplicate,
             QStringLiteral("two records are number %1 of %2; the other is in line %3")
                 .arg(*record.number)
                 .arg(quoted(record.item))
                 .arg(rows_.row(other.own).place.line),
             QStringLiteral("give each its own number; a row that adds to a record says in its column row what it is"));
    }
  }

  void refuse(const Value& row, QStringView key, Code code, const QString& what, const QString& hint) {
    errors_.push_back(Error{code, what, place_of(row, key), hint});
  }

  const reader::Rows& rows_;
  Errors& errors_;
  QSet<QString> items_;
  std::vector<RecordRows> records_;
  bool homeless_ = false;
  QHash<int, std::vector<size_t>> numbered_;
  QHash<std::pair<QString, int>, std::vector<size_t>> alike_;
};

}  // namespace

std::vector<RecordRows> record_rows(const reader::Rows& rows, Errors& errors) { return Grouping(rows, errors).group(); }

}  // namespace lardiner::batch
