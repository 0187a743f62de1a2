// What a work sheet says in its one or two languages, and the errors of what it cannot say.
#include "facts/sheet_phrases.h"

#include <algorithm>

#include "facts/label_language.h"
#include "plan/rounding.h"

namespace lardiner::facts {

using measure::Quantity;
using measure::System;

namespace {

constexpr qsizetype kMostNames = 6;

System other(System system) { return system == System::Metric ? System::Customary : System::Metric; }

}  // namespace

SheetPhrases::SheetPhrases(const SheetSetting& setting, problem::Errors& errors)
    : setting_(setting), scale_units_(plan::scale_units(setting.book.kitchen)), errors_(errors) {}

QString SheetPhrases::both(const Saying& say) const {
  QStringList all;
  for (size_t i = 0; i < setting_.languages.size(); ++i) {
    const QString said = say(wording(i));
    if (!all.contains(said)) all << said;
  }
  return all.join(QStringLiteral(" / "));
}

QString SheetPhrases::both(const char* key, const QStringList& values) const {
  return both([&](const Wording& wording) { return wording.sentence(key, values); });
}

Cell SheetPhrases::cell(const Saying& say, bool strong) const {
  Cell out{Cell::Kind::Text, say(first()), {}, strong};
  for (size_t i = 1; i < setting_.languages.size(); ++i) {
    const QString said = say(wording(i));
    if (said != out.text) out.small.push_back({said, strong});
  }
  return out;
}

void SheetPhrases::add_small(std::vector<SmallLine>& to, const Saying& say, bool strong) const {
  add_lines(to, say, {{}, strong, false});
}

void SheetPhrases::add_large(std::vector<SmallLine>& to, const Saying& say) const {
  add_lines(to, say, {{}, true, true});
}

void SheetPhrases::add_lines(std::vector<SmallLine>& to, const Saying& say, const SmallLine& as) const {
  const size_t before = to.size();
  for (size_t i = 0; i < setting_.languages.size(); ++i) {
    SmallLine line = as;
    line.text = say(wording(i));
    if (line.text.isEmpty()) continue;
    if (std::find(to.begin() + static_cast<std::ptrdiff_t>(before), to.end(), line) == to.end()) to.push_back(line);
  }
}

QString SheetPhrases::text(const Wording& wording, const book::LocalText& text, const QString& what,
                           const problem::Place& place) const {
  const QString code = wording.words.code();
  const QString found = text.in(code);
  if (!found.isEmpty()) return found;
  errors_.push_back(
      {problem::Code::Missing,
       QStringLiteral("%1 has no text in \"%2\", a language of the kitchen's sheets").arg(what, code), place,
       QStringLiteral("write it as { en = \"…\", %1 = \"…\" }, or take \"%1\" out of sheet_languages").arg(code)});
  return found;
}

QString SheetPhrases::name(const Wording& wording, const QString& item) const {
  if (const book::Product* product = book().product(item))
    return text(wording, product->name, QStringLiteral("the name of product \"%1\"").arg(item), product->place);
  const book::Ingredient* ingredient = book().ingredient(item);
  return ingredient ? text(wording, ingredient->name, QStringLiteral("the name of ingredient \"%1\"").arg(item),
                           ingredient->place)
                    : item;
}

Cell SheetPhrases::name_cell(const QString& item) const {
  return cell([&](const Wording& wording) { return name(wording, item); });
}

QString SheetPhrases::on_scale(Quantity weight, Quantity step) const {
  return unbroken(measure::display_in_steps(weight, step, scale_units_, notation(first())));
}

System SheetPhrases::working_units(Quantity quantity) const {
  return quantity.dimension == measure::Dimension::Mass ? scale_units_ : book().kitchen.units;
}

QString SheetPhrases::amount(const Wording& wording, Quantity quantity) const {
  if (quantity.dimension == measure::Dimension::Count) return pieces(wording, quantity);
  return unbroken(measure::display(quantity, working_units(quantity), notation(wording)));
}

QString SheetPhrases::few(const Wording& wording, const QStringList& names) {
  QStringList shown = names.mid(0, kMostNames);
  if (names.size() > kMostNames) shown << u'+' + QString::number(names.size() - kMostNames);
  return wording.words.list(shown);
}

QString SheetPhrases::other_system(Quantity quantity) const {
  if (quantity.dimension == measure::Dimension::Count) return {};
  return unbroken(measure::display(quantity, other(working_units(quantity)), notation(first())));
}

QString SheetPhrases::exact_amount(Quantity quantity) const {
  const bool other_is_exact =
      quantity.dimension != measure::Dimension::Count &&
      measure::parse_quantity(measure::display(quantity, working_units(quantity))) != quantity &&
      measure::parse_quantity(measure::display(quantity, other(working_units(quantity)))) == quantity;
  return other_is_exact ? other_system(quantity) : amount(quantity);
}

Cell SheetPhrases::amount_cell(Quantity quantity) const {
  Cell out{Cell::Kind::Text, amount(quantity), {}, true};
  if (const QString small = other_system(quantity); !small.isEmpty()) out.small.push_back({small, false});
  return out;
}

QString SheetPhrases::time(const QDateTime& instant) const {
  return language().time(instant.toTimeZone(book().kitchen.zone).time());
}

QString SheetPhrases::day_and_time(const QDateTime& instant) const {
  return language().date_time(instant.toTimeZone(book().kitchen.zone));
}

Cell blank(const QString& before) { return {Cell::Kind::Blank, before, {}, false}; }

Cell tick() { return {Cell::Kind::Tick, {}, {}, false}; }

QString SheetPhrases::brief(const Wording& wording, const QDateTime& instant) const {
  const QDateTime local = instant.toTimeZone(book().kitchen.zone);
  return wording.words.day_month(local.date()) + u' ' + wording.words.time(local.time());
}

problem::ExpectedAll<std::vector<const words::Language*>> sheet_languages(const std::vector<words::Language>& packs,
                                                                          const book::Kitchen& kitchen) {
  std::vector<const words::Language*> out;
  problem::Errors errors;
  const QStringList codes = kitchen.sheet_languages.isEmpty() ? kitchen.languages.mid(0, 1) : kitchen.sheet_languages;
  for (const QString& code : codes) {
    const auto language = label_language(packs, kitchen, code, {});
    if (language)
      out.push_back(*language);
    else
      errors.push_back(language.error());
  }
  if (!errors.empty()) return tl::unexpected(errors);
  return out;
}

}  // namespace lardiner::facts
