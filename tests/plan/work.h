// A test's own formulas at work: the small kitchen with a scale of 1 g and a fine one of 0.1 g.
#pragma once

#include "measure/text.h"
#include "plan/scaling.h"
#include "plan_kitchen.h"

namespace lardiner::plan::kitchen {

/// Something bought that contains nothing and is good as it comes.
inline QByteArray plain(const QByteArray& id, const QByteArray& more = {}) {
  return ingredient(id, "no", "", "\"none\"", more);
}

inline QByteArray measured(const QByteArray& amount, const QByteArray& weighs) {
  return "{ amount = \"" + amount + "\", weighs = \"" + weighs + "\", source = \"test\" }, ";
}

/// The product "p"; `lines` is its formula, `more` further keys.
inline QByteArray p(const QByteArray& lines, const QByteArray& more = {}) {
  return product("p", "PPP", "no", lines, more);
}

class Work {
 public:
  explicit Work(const QByteArray& tables) : book(read_kitchen(tables)), weighing(book) {
    book.kitchen.fine_scale_step = amount("0.1 g");
  }
  Work(const Work&) = delete;

  const book::Product& product(const char* id = "p") const { return *book.product(QString::fromLatin1(id)); }
  book::Product& product_to_change(const char* id = "p") { return book.products[index(book.product_index, id)]; }
  book::Ingredient& ingredient_to_change(const char* id) { return book.ingredients[index(book.ingredient_index, id)]; }

  measure::Ratio makings(const Target& target, const char* id = "p") {
    const auto times = plan::makings(book, weighing, product(id), target);
    if (!times) FAIL(problem::text(times.error()).toStdString());
    return *times;
  }

  Scaled scaled(const Target& target, const char* id = "p") {
    const auto out = plan::scaled(book, weighing, product(id), makings(target, id));
    if (!out) FAIL(problem::text(out.error()).toStdString());
    return *out;
  }

  /// What is wrong, and the remedy, each on a line.
  QStringList refusals(const Target& target, const char* id = "p") {
    const auto times = plan::makings(book, weighing, product(id), target);
    if (!times) return said({times.error()});
    const auto out = plan::scaled(book, weighing, product(id), *times);
    return out ? QStringList{} : said(out.error());
  }

  static QStringList said(const problem::Errors& errors) {
    QStringList all;
    for (const problem::Error& error : errors) all += {error.what, error.hint};
    return all;
  }

  book::Book book;
  book::Weighing weighing;

 private:
  static size_t index(const QHash<QString, int>& of, const char* id) {
    REQUIRE(of.contains(QString::fromLatin1(id)));
    return static_cast<size_t>(of.value(QString::fromLatin1(id)));
  }
};

inline QString shown(measure::Quantity q) { return measure::display(q, measure::System::Metric); }

/// What the scale shall read of each line.
inline QStringList weighed(const Scaled& scaled) {
  QStringList all;
  for (const ScaledLine& line : scaled.lines) all += shown(line.weighed);
  return all;
}

inline Give give(const char* output) { return {amount(output)}; }
inline UseUp use_up(const char* item, const char* there) { return {QString::fromLatin1(item), amount(there)}; }

}  // namespace lardiner::plan::kitchen
