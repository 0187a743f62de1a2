// Taking the entries of a table one by one: what is missing, of the wrong kind, or unknown becomes an error with its
// place.
#include "reader/fields.h"

#include "reader/quote.h"

namespace lardiner::reader {

namespace {

using problem::Code;

constexpr qsizetype kLongestKeyCompared = 64;

QString kind_name(Value::Kind kind) {
  switch (kind) {
    case Value::Kind::String:
      return QStringLiteral("text");
    case Value::Kind::Number:
      return QStringLiteral("a number");
    case Value::Kind::Boolean:
      return QStringLiteral("true or false");
    case Value::Kind::Date:
      return QStringLiteral("a date or time");
    case Value::Kind::List:
      return QStringLiteral("a list");
    case Value::Kind::Table:
      return QStringLiteral("a table");
  }
  return {};
}

bool is_text(const Value& value) { return value.kind == Value::Kind::String; }
bool is_blank(const Value& value) { return value.text.trimmed().isEmpty(); }

std::optional<bool> yes_or_no(const Value& value) {
  const QString word = value.text.toLower();
  if (value.kind != Value::Kind::Boolean && !is_text(value)) return std::nullopt;
  if (word == QLatin1StringView("true") || word == QLatin1StringView("yes")) return true;
  if (word == QLatin1StringView("false") || word == QLatin1StringView("no")) return false;
  return std::nullopt;
}

}  // namespace

Fields::Fields(const Value& table, QString noun, problem::Errors& errors)
    : table_(table), noun_(std::move(noun)), errors_(errors) {}

bool Fields::has(QStringView key) { return value(key) != nullptr; }

const Value* Fields::value(QStringView key) {
  if (!known_.contains(key)) known_.append(key.toString());
  return table_.find(key);
}

void Fields::wrong_kind(QStringView key, const Value& found, const QString& expected, const QString& hint) {
  errors_.push_back({Code::Malformed,
                     QStringLiteral("%1: %2 must be %3, not %4").arg(noun_, key, expected, kind_name(found.kind)),
                     found.place, hint});
}

std::optional<QString> Fields::text_of(QStringView key, const Value& found) {
  if (!is_text(found)) {
    wrong_kind(key, found, QStringLiteral("text"), QStringLiteral("put it in quotes"));
    return std::nullopt;
  }
  if (is_blank(found)) {
    errors_.push_back({Code::Missing, QStringLiteral("%1: %2 is empty").arg(noun_, key), found.place,
                       QStringLiteral("write a value, or leave %1 out").arg(key)});
    return std::nullopt;
  }
  return found.text;
}

std::optional<QString> Fields::text(QStringView key) {
  const Value* found = value(key);
  return found == nullptr ? std::nullopt : text_of(key, *found);
}

std::optional<QString> Fields::required_text(QStringView key) {
  if (!has(key))
    refuse(key, Code::Missing, QStringLiteral("%1 has no %2").arg(noun_, key), QStringLiteral("state %1").arg(key));
  return text(key);
}

std::optional<bool> Fields::boolean(QStringView key) {
  const Value* found = value(key);
  if (found == nullptr) return std::nullopt;
  const std::optional<bool> answer = yes_or_no(*found);
  if (!answer)
    errors_.push_back({Code::Malformed, QStringLiteral("%1: %2 is neither true nor false").arg(noun_, key),
                       found->place, QStringLiteral("write true or false")});
  return answer;
}

std::optional<int> Fields::integer(QStringView key, int least, int most) {
  const Value* found = value(key);
  if (found == nullptr) return std::nullopt;
  bool whole = false;
  const qlonglong number = found->text.toLongLong(&whole);
  if (!whole || (!is_text(*found) && found->kind != Value::Kind::Number)) {
    errors_.push_back({Code::Malformed, QStringLiteral("%1: %2 is not a whole number").arg(noun_, key), found->place,
                       QStringLiteral("write a whole number from %1 to %2").arg(least).arg(most)});
    return std::nullopt;
  }
  if (number < least || number > most) {
    errors_.push_back({Code::Range, QStringLiteral("%1: %2 is %3").arg(noun_, key).arg(number), found->place,
                       QStringLiteral("write a whole number from %1 to %2").arg(least).arg(most)});
    return std::nullopt;
  }
  return static_cast<int>(number);
}

std::optional<QDate> Fields::date(QStringView key) {
  const Value* found = value(key);
  if (found == nullptr) return std::nullopt;
  if (!is_text(*found) && found->kind != Value::Kind::Date) {
    wrong_kind(key, *found, QStringLiteral("a date"), QStringLiteral("write it as 2026-02-28"));
    return std::nullopt;
  }
  problem::Expected<QDate> date = parse_date(found->text);
  if (date) return *date;
  date.error().place = found->place;
  errors_.push_back(date.error());
  return std::nullopt;
}

QStringList Fields::texts(QStringView key) {
  const Value* found = value(key);
  if (found == nullptr) return {};
  QStringList all;
  const auto take = [&](const Value& item) {
    if (const std::optional<QString> text = text_of(key, item)) all.append(*text);
  };
  if (found->kind == Value::Kind::List) {
    for (const Value& item : found->items) take(item);
  } else {
    take(*found);
  }
  return all;
}

const Value* Fields::table_of(QStringView key, const Value& found) {
  if (found.kind == Value::Kind::Table) return &found;
  wrong_kind(key, found, QStringLiteral("a table"), QStringLiteral("write it as [%1] with its keys below").arg(key));
  return nullptr;
}

std::vector<const Value*> Fields::tables(QStringView key) {
  const Value* found = value(key);
  if (found == nullptr) return {};
  std::vector<const Value*> all;
  const auto take = [&](const Value& item) {
    if (const Value* table = table_of(key, item)) all.push_back(table);
  };
  if (found->kind == Value::Kind::List) {
    for (const Value& item : found->items) take(item);
  } else {
    take(*found);
  }
  return all;
}

const Value* Fields::table(QStringView key) {
  const Value* found = value(key);
  return found == nullptr ? nullptr : table_of(key, *found);
}

void Fields::refuse(QStringView key, Code code, QString what, QString hint) {
  const Value* found = value(key);
  errors_.push_back({code, std::move(what), found == nullptr ? table_.place : found->place, std::move(hint)});
}

void Fields::finish() {
  for (const auto& [key, value] : table_.entries) {
    if (known_.contains(key)) continue;
    const QString near = key.size() > kLongestKeyCompared ? QString() : problem::nearest(key, known_);
    errors_.push_back({Code::Unknown, QStringLiteral("%1 cannot have %2").arg(noun_, quoted(key)), value.key_place,
                       near.isEmpty() ? QStringLiteral("what it can have: ") + known_.join(QStringLiteral(", "))
                                      : QStringLiteral("did you mean %1?").arg(near)});
  }
}

}  // namespace lardiner::reader
