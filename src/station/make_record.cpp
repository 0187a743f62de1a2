// The record of a batch that the form of Make wrote down.
#include "station/make_record.h"

#include <algorithm>

#include "station/rows.h"

namespace lardiner::station {

using reader::Value;

namespace {

void add_list(Value& to, const QString& key, Value item) {
  Value list = form_table();
  list.kind = Value::Kind::List;
  list.items.push_back(std::move(item));
  to.entries.emplace_back(key, std::move(list));
}

// An item by its id or by its name in any language; as it is typed where there is none, for the record to refuse.
QString item_named(const book::Book& book, const QString& typed) {
  const auto is_it = [&](const auto& one) {
    return one.id == typed || std::any_of(one.name.texts.begin(), one.name.texts.end(), [&](const auto& name) {
             return name.second.compare(typed, Qt::CaseInsensitive) == 0;
           });
  };
  const auto ingredient = std::find_if(book.ingredients.begin(), book.ingredients.end(), is_it);
  if (ingredient != book.ingredients.end()) return ingredient->id;
  const auto product = std::find_if(book.products.begin(), book.products.end(), is_it);
  return product != book.products.end() ? product->id : typed;
}

Value input_row(const Visit& visit, const WentIn& went) {
  const Fields& form = visit.request().form;
  Value input = form_table();
  add(input, QStringLiteral("item"), went.item);
  add(input, QStringLiteral("lot"), went.lot);
  add(input, QStringLiteral("use_by"), form.value(QStringLiteral("use_by.") + went.line));
  if (!went.instead()) return input;
  add(input, QStringLiteral("instead_of"), went.line);
  if (!form.value(QStringLiteral("agreed")).isEmpty()) add(input, QStringLiteral("agreed_by"), visit.who().initials);
  return input;
}

}  // namespace

WentIn went_in(const Visit& visit, const book::FormulaLine& line) {
  const Fields& form = visit.request().form;
  const auto field = [&](const char* name) { return form.value(QLatin1String(name) + line.item).trimmed(); };
  WentIn went{line.item, line.item, field("lot."), field("code.")};
  if (const QString instead = field("instead."); !instead.isEmpty()) {
    went.item = item_named(visit.desk().book(), instead);
    went.lot.clear();
  }
  if (went.code.isEmpty()) return went;
  const Opened opened = visit.desk().open(went.code, {});
  went.lot = opened.lot.isEmpty() ? went.code : opened.lot;
  if (!opened.item.isEmpty()) went.item = opened.item;
  return went;
}

Value made_row(const Visit& visit, const book::Product& product) {
  const Fields& form = visit.request().form;
  const auto field = [&](const char* name) { return form.value(QString::fromLatin1(name)); };
  Value row = form_table();
  add(row, QStringLiteral("product"), product.id);
  for (const char* key : {"number", "quantity", "made_at", "containers", "site", "order"})
    add(row, QString::fromLatin1(key), field(key));
  add(row, QStringLiteral("by"), visit.who().initials);
  Value inputs = form_table();
  inputs.kind = Value::Kind::List;
  for (const book::FormulaLine& line : product.formula) {
    Value input = input_row(visit, went_in(visit, line));
    if (input.entries.size() > 1) inputs.items.push_back(std::move(input));
  }
  if (!inputs.items.empty()) row.entries.emplace_back(QStringLiteral("inputs"), std::move(inputs));
  if (field("core").isEmpty()) return row;
  Value cooked = form_table();
  for (const auto& [key, name] : {std::pair("at", "cooked_at"), std::pair("core", "core"), std::pair("held", "held")})
    add(cooked, QString::fromLatin1(key), field(name));
  add_list(row, QStringLiteral("cooked"), std::move(cooked));
  return row;
}

}  // namespace lardiner::station
