// What the book says of everything that a plan may make or buy, worked out once; for day_plan.cpp and its parts.
#pragma once

#include <QHash>
#include <set>
#include <unordered_map>
#include <vector>

#include "book/standing.h"
#include "book/weighing.h"
#include "plan/day_plan_keeping.h"

namespace lardiner::plan {

/// An input of one making as the formula is written; lines of one item are one part.
struct Part {
  bool made = false;         ///< a product; else bought
  size_t item = 0;           ///< index into Items::made or ::bought
  measure::Quantity weight;  ///< of a product as it goes in; of an ingredient as purchased
};

/// An ingredient.
struct Bought {
  const book::Ingredient* ingredient = nullptr;
  bool tcs = true;
  bool raw = true;
};

/// A product.
struct Made {
  const book::Product* product = nullptr;
  problem::Errors errors;  ///< why it cannot be scaled
  measure::Quantity one;   ///< what one making gives, in the dimension in which it is planned
  measure::Quantity one_weight;
  std::optional<measure::Quantity> made_in;  ///< in the dimension of `one`
  std::vector<Part> parts;
  int seconds = 0;       ///< from start to ready
  int cook_seconds = 0;  ///< from start to the end of its last cook
  bool time_stated = true;
  bool thaws = false;  ///< the thawing of its inputs is one of its steps
  bool tcs = true;
  bool raw = true;              ///< as it stands; unknown counts as raw
  bool handles_raw = true;      ///< something that goes in is
  std::set<QString> raw_foods;  ///< classes of the raw animal foods that it handles
  bool raw_foods_known = false;
  bool cooks = false;             ///< it ends the clocks of what is raw in it
  bool quality_only = false;      ///< its date is a best-before
  bool holds_ready = false;       ///< ready-to-eat food that needs temperature control is in it, at any depth
  bool by_day = true;             ///< and so do all the products in it: their ends depend on the day of the start alone
  PutUp put_up;                   ///< for orders
  size_t way = 0, order_way = 0;  ///< of keeping it for another making, and as it leaves the kitchen
  std::vector<int> allergens;     ///< of the kitchen's list, ascending
  bool allergens_stated = false;
};

class Items {
 public:
  /// `ids`: the products asked for; everything in them comes along. What is in a loop is left out.
  Items(const book::Book& book, const QStringList& ids, Keeping& keeping);

  std::vector<Made> made;  ///< each after those in it
  std::vector<Bought> bought;
  book::Weighing weighing;

  std::optional<size_t> made_index(const QString& id) const;
  std::optional<size_t> bought_index(const QString& id) const;

  /// Of an item of the plan: whether it needs time and temperature control, or might.
  bool needs_control(const QString& id) const;

 private:
  Made made_of(const book::Product& product, const book::Standings& standings, Keeping& keeping);
  void add_parts(Made& out);
  void add_allergens(Made& out);
  void add_raw_foods(Made& out) const;
  void add_safety(Made& out, const book::Standings& standings);
  void add_times(Made& out) const;

  const book::Book& book_;
  QHash<QString, size_t> made_index_, bought_index_;
  std::vector<std::vector<int>> allergens_of_bought_;
  std::vector<bool> allergens_of_bought_stated_;
};

}  // namespace lardiner::plan
