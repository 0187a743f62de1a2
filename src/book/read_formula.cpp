// The lines of a formula: what goes in, and how much in one of the bases.
#include <QSet>

#include "book/tables.h"
#include "book/values.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using reader::Fields;
using reader::quoted;
using reader::Value;

namespace {

constexpr int kBaseOfPercent = 100;

// More than any kitchen weighs into one pot; what is more is sub-batches.
constexpr size_t kMostLines = 200;

QString bases_hint() {
  return QStringLiteral("write one of amount, parts, percent with of, per_unit, or per_main with each");
}

QStringList bases_written(Fields& fields) {
  QStringList written;
  for (const QStringView key : {QStringView(u"amount"), QStringView(u"parts"), QStringView(u"percent"),
                                QStringView(u"per_unit"), QStringView(u"per_main")})
    if (fields.has(key)) written += key.toString();
  return written;
}

void read_percent(Fields& fields, FormulaLine& line) {
  line.number = read_number(fields, u"percent").value_or(measure::Ratio(1, 1));
  line.of = fields.text(u"of").value_or(QString());
  line.basis = Basis::PercentOf;
  if (fields.has(u"of")) return;
  line.basis = Basis::Parts;
  if (line.number != measure::Ratio(kBaseOfPercent, 1))
    fields.refuse(u"percent", Code::Missing, fields.noun() + QStringLiteral(" does not say what it is a percentage of"),
                  QStringLiteral("state of, the item of the base line; the base itself is percent = 100"));
}

void read_per_main(Fields& fields, FormulaLine& line) {
  line.basis = Basis::PerMain;
  line.amount = read_quantity(fields, u"per_main").value_or(measure::Quantity{});
  if (!fields.has(u"each"))
    fields.refuse(u"per_main", Code::Missing,
                  fields.noun() + QStringLiteral(" does not say to how much of the main item it is"),
                  QStringLiteral("state each: \"1 kg\" or \"1 lb\""));
  line.per = read_weight(fields, u"each").value_or(measure::one(measure::Unit::Kilogram));
}

void read_basis(Fields& fields, FormulaLine& line) {
  const QStringList written = bases_written(fields);
  const bool sized_part = written == QStringList{QStringLiteral("amount"), QStringLiteral("parts")};
  if (written.size() != 1 && !sized_part) {
    fields.refuse(u"item", written.isEmpty() ? Code::Missing : Code::Conflict,
                  written.isEmpty()
                      ? fields.noun() + QStringLiteral(" has no amount")
                      : QStringLiteral("%1 has both %2").arg(fields.noun(), written.join(QStringLiteral(" and "))),
                  bases_hint());
    return;
  }
  if (const auto amount = sized_part ? read_weight(fields, u"amount") : read_quantity(fields, u"amount"))
    line.amount = *amount;
  if (written.contains(QStringLiteral("parts"))) {
    line.basis = Basis::Parts;
    line.number = read_number(fields, u"parts").value_or(measure::Ratio(1, 1));
  }
  if (written.front() == QLatin1String("percent")) read_percent(fields, line);
  if (written.front() == QLatin1String("per_main")) read_per_main(fields, line);
  if (written.front() == QLatin1String("per_unit")) {
    line.basis = Basis::PerUnit;
    line.amount = read_quantity(fields, u"per_unit").value_or(measure::Quantity{});
  }
}

void read_item(Fields& fields, const Context& context, FormulaLine& line) {
  line.item = fields.required_text(u"item").value_or(QString());
  const Value* written = fields.value(u"item");
  if (written != nullptr) line.place = written->place;
  if (line.item.isEmpty() || context.known_ids.contains(line.item) || !context.whole) return;
  fields.refuse(u"item", Code::Unknown, QStringLiteral("no ingredient or product has the id ") + quoted(line.item),
                meant(line.item, context.item_ids, QStringLiteral("an ingredient or a product")));
}

// A key that says something only beside the key of one basis.
void check_companion(Fields& fields, QStringView key, QStringView basis, bool fits) {
  if (!fields.has(key) || fits || bases_written(fields).size() != 1) return;
  fields.refuse(key, Code::Conflict, QStringLiteral("%1 has an %2 but no %3").arg(fields.noun(), key, basis),
                QStringLiteral("state %1, or leave %2 out").arg(basis, key));
}

FormulaLine read_line(const Value& table, const QString& noun, const Context& context) {
  const Value* item = table.find(u"item");
  const QString name = item == nullptr ? QStringLiteral("a line") : QStringLiteral("the line ") + quoted(item->text);
  Fields fields(table, name + QStringLiteral(" of ") + noun, context.errors);
  FormulaLine line;
  line.place = table.place;
  read_item(fields, context, line);
  read_basis(fields, line);
  line.main = fields.boolean(u"main").value_or(false);
  line.cut = read_local_text(fields, u"cut", context.languages());
  read_portion(fields, context, line);
  check_companion(fields, u"of", u"percent", line.basis == Basis::PercentOf);
  check_companion(fields, u"each", u"per_main", line.basis == Basis::PerMain);
  fields.finish();
  return line;
}

// Whether the percentages that begin at `item` come back to one they have passed.
bool goes_round(const std::vector<FormulaLine>& lines, const QString& item) {
  QSet<QString> passed;
  QStringList ahead{item};
  while (!ahead.isEmpty()) {
    const QString at = ahead.takeLast();
    for (const FormulaLine& line : lines) {
      if (line.basis != Basis::PercentOf || line.item != at) continue;
      if (line.of == item) return true;
      if (!passed.contains(line.of)) ahead += line.of;
      passed.insert(line.of);
    }
  }
  return false;
}

void check_bases(const std::vector<FormulaLine>& lines, const QString& noun, problem::Errors& errors) {
  QStringList items;
  for (const FormulaLine& line : lines) items += line.item;
  for (const FormulaLine& line : lines) {
    if (line.basis != Basis::PercentOf) continue;
    if (!items.contains(line.of))
      errors.push_back({Code::Unknown,
                        QStringLiteral("%1 has no line of %2 to take a percentage of").arg(noun, quoted(line.of)),
                        line.place, meant(line.of, items, QStringLiteral("a line"))});
    else if (goes_round(lines, line.item))
      errors.push_back({Code::Conflict,
                        QStringLiteral("the percentages of %1 go round in a circle at %2").arg(noun, quoted(line.item)),
                        line.place,
                        QStringLiteral("give the base line an amount, parts, or percent = 100 without of")});
  }
}

void check_main(const std::vector<FormulaLine>& lines, const QString& noun, problem::Errors& errors) {
  bool has_main = false;
  for (const FormulaLine& line : lines) has_main = has_main || line.main;
  for (const FormulaLine& line : lines) {
    if (line.basis != Basis::PerMain) continue;
    if (!has_main)
      errors.push_back({Code::Missing, noun + QStringLiteral(" has an amount per main item but no main item"),
                        line.place, QStringLiteral("write main = true in the line of the main item")});
    else if (line.main)
      errors.push_back({Code::Conflict, QStringLiteral("the main item of %1 is given per main item").arg(noun),
                        line.place, QStringLiteral("give it an amount of its own")});
  }
}

void check_parts(const std::vector<FormulaLine>& lines, const QString& noun, problem::Errors& errors) {
  const FormulaLine* first = nullptr;
  for (const FormulaLine& line : lines) {
    if (line.basis != Basis::Parts || line.amount.amount == 0) continue;
    if (first == nullptr)
      first = &line;
    else if (scaled(line.amount, first->number) != scaled(first->amount, line.number))
      errors.push_back({Code::Conflict, QStringLiteral("two lines of %1 disagree about the weight of a part").arg(noun),
                        line.place, QStringLiteral("write the amount of one part in one line only")});
  }
}

}  // namespace

std::vector<FormulaLine> read_formula(Fields& product, const Context& context) {
  std::vector<FormulaLine> lines;
  for (const Value* table : product.tables(u"formula")) {
    if (lines.size() == kMostLines) {
      product.refuse(u"formula", Code::Range,
                     QStringLiteral("the formula of %1 has more than %2 lines").arg(product.noun()).arg(kMostLines),
                     QStringLiteral("make sub-batches of it, each a product"));
      break;
    }
    lines.push_back(read_line(*table, product.noun(), context));
  }
  if (lines.empty())
    product.refuse(u"formula", Code::Missing, product.noun() + QStringLiteral(" has no formula"),
                   QStringLiteral("add [[product.formula]] with item and amount"));
  check_bases(lines, product.noun(), context.errors);
  check_main(lines, product.noun(), context.errors);
  check_parts(lines, product.noun(), context.errors);
  return lines;
}

}  // namespace lardiner::book
