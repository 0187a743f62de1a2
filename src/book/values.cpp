// Words, names and numbers of a kitchen book.
#include "book/values.h"

#include <QRegularExpression>

#include "book/taken.h"
#include "measure/text.h"
#include "reader/quote.h"

namespace lardiner::book {

using measure::Quantity;
using measure::Ratio;
using problem::Code;
using reader::Fields;
using reader::quoted;
using reader::Value;

namespace {

// Longest list of words that a hint spells out.
constexpr qsizetype kMostListed = 12;

bool is_id(const QString& text) {
  static const QRegularExpression form(QStringLiteral("^[a-z][a-z0-9-]{0,39}$"));
  return form.match(text).hasMatch();
}

void read_translation(const Value& value, const QString& code, const QStringList& languages, Fields& fields,
                      LocalText& text, QStringView key) {
  if (!languages.contains(code)) {
    fields.refuse(key, Code::Unknown,
                  QStringLiteral("%1: %2 has the language %3").arg(fields.noun(), key, quoted(code)),
                  QStringLiteral("the kitchen's languages are ") + languages.join(QStringLiteral(", ")));
  } else if (value.kind != Value::Kind::String || value.text.trimmed().isEmpty()) {
    fields.refuse(key, Code::Malformed,
                  QStringLiteral("%1: %2 has no text in %3").arg(fields.noun(), key, quoted(code)),
                  QStringLiteral("write the text in quotes, or leave the language out"));
  } else {
    text.texts.emplace_back(code, value.text.trimmed());
  }
}

problem::Error not_a_share(const QString& text) {
  return {Code::Malformed, quoted(text) + QStringLiteral(" is not a share"), {}, QStringLiteral("write it as 82 %")};
}

}  // namespace

bool both_or_neither(Fields& fields, QStringView one, QStringView other, QStringView article) {
  if (fields.has(one) == fields.has(other)) return true;
  const QStringView there = fields.has(one) ? one : other;
  fields.refuse(there, problem::Code::Missing,
                QStringLiteral("%1 has %2%3 but no %4").arg(fields.noun(), article, there, there == one ? other : one),
                QStringLiteral("state both, or neither"));
  return false;
}

QString one_of(const QStringList& words) {
  QStringList all;
  for (const QString& word : words) all += u'"' + word + u'"';
  if (all.size() < 2) return all.join(QString());
  const QString last = all.takeLast();
  return all.join(QStringLiteral(", ")) + QStringLiteral(" or ") + last;
}

QString meant(const QString& word, const QStringList& known, const QString& kind) {
  const QString near = problem::nearest(word.left(64), known);
  if (!near.isEmpty()) return QStringLiteral("did you mean \"%1\"?").arg(near);
  if (known.isEmpty()) return QStringLiteral("add %1 with this id").arg(kind);
  if (known.size() > kMostListed) return QStringLiteral("add %1 with this id, or correct it").arg(kind);
  return QStringLiteral("write ") + one_of(known);
}

QString noun(const QString& table, const Value& value, QStringView key) {
  const Value* name = value.find(key);
  if (name == nullptr || name->kind != Value::Kind::String) return QStringLiteral("this ") + table;
  return table + u' ' + quoted(name->text);
}

std::optional<QString> read_id(Fields& fields) {
  const std::optional<QString> id = fields.required_text(u"id");
  if (!id || is_id(*id)) return id;
  fields.refuse(u"id", Code::Malformed, quoted(*id) + QStringLiteral(" is not an id"),
                QStringLiteral("write small letters a to z, digits and hyphens, beginning with a letter, at most 40"));
  return std::nullopt;
}

LocalText read_local_text(Fields& fields, QStringView key, const QStringList& languages) {
  LocalText text;
  const Value* value = fields.value(key);
  if (value != nullptr && value->kind == Value::Kind::Table) {
    for (const auto& [code, translation] : value->entries)
      read_translation(translation, code, languages, fields, text, key);
  } else if (const std::optional<QString> plain = fields.text(key)) {
    text.texts.emplace_back(languages.value(0, QStringLiteral("en")), plain->trimmed());
  }
  return text;
}

LocalText read_name(Fields& fields, const QStringList& languages) {
  if (!fields.has(u"name"))
    fields.refuse(u"name", Code::Missing, fields.noun() + QStringLiteral(" has no name"), QStringLiteral("state name"));
  return read_local_text(fields, u"name", languages);
}

std::optional<QString> read_word(Fields& fields, QStringView key, const QStringList& words) {
  const std::optional<QString> word = fields.text(key);
  if (!word || words.contains(*word)) return word;
  fields.refuse(key, Code::Unknown, QStringLiteral("%1: %2 cannot be %3").arg(fields.noun(), key, quoted(*word)),
                QStringLiteral("write ") + one_of(words));
  return std::nullopt;
}

std::optional<QString> read_required_word(Fields& fields, QStringView key, const QStringList& words) {
  if (!fields.has(key)) {
    fields.refuse(key, Code::Missing, QStringLiteral("%1 has no %2").arg(fields.noun(), key),
                  QStringLiteral("state %1: %2").arg(key, one_of(words)));
    return std::nullopt;
  }
  return read_word(fields, key, words);
}

std::optional<Quantity> read_quantity(Fields& fields, QStringView key) {
  const std::optional<QString> text = fields.text(key);
  return text ? taken(fields, key, measure::parse_quantity(*text)) : std::nullopt;
}

std::optional<Quantity> read_weight(Fields& fields, QStringView key) {
  const std::optional<Quantity> read = read_quantity(fields, key);
  if (!read || read->dimension == measure::Dimension::Mass) return read;
  fields.refuse(key, Code::Malformed, QStringLiteral("%1: %2 is not a weight").arg(fields.noun(), key),
                QStringLiteral("write it in g, kg, oz or lb"));
  return std::nullopt;
}

std::optional<Ratio> read_share(Fields& fields, QStringView key) {
  const Value* value = fields.value(key);
  if (value != nullptr && value->kind == Value::Kind::Number) {
    fields.refuse(key, Code::Malformed, QStringLiteral("%1: %2 has no percent sign").arg(fields.noun(), key),
                  QStringLiteral("write it as \"82 %\", so that 82 and 0.82 cannot be confused"));
    return std::nullopt;
  }
  const std::optional<QString> text = fields.text(key);
  if (!text) return std::nullopt;
  QString number = text->trimmed();
  if (!number.endsWith(u'%')) return taken<Ratio>(fields, key, tl::unexpected(not_a_share(*text)));
  number.chop(1);
  const problem::Expected<Ratio> percent = measure::parse_decimal(number);
  if (!percent) return taken<Ratio>(fields, key, tl::unexpected(not_a_share(*text)));
  return *percent / Ratio(100, 1);
}

std::optional<Ratio> read_number(Fields& fields, QStringView key) {
  const Value* value = fields.value(key);
  if (value == nullptr) return std::nullopt;
  const bool written = value->kind == Value::Kind::Number || value->kind == Value::Kind::String;
  const problem::Expected<Ratio> number = measure::parse_decimal(written ? value->text : QStringLiteral("?"));
  if (number && number->num() > 0) return *number;
  fields.refuse(key, Code::Malformed, QStringLiteral("%1: %2 is not a number above zero").arg(fields.noun(), key),
                QStringLiteral("write a plain number such as 3 or 2.5"));
  return std::nullopt;
}

}  // namespace lardiner::book
