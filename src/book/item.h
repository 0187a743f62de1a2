// What a formula can be made of: ingredients bought in, and products made here.
#pragma once

#include <QDate>
#include <QString>
#include <optional>
#include <utility>
#include <vector>

#include "book/allergen.h"
#include "book/kitchen.h"
#include "book/local_text.h"
#include "book/rule_set.h"
#include "book/shelf_life.h"
#include "measure/quantity.h"

namespace lardiner::book {

/// Whether a thing needs time and temperature control for safety, and on what basis. Unknown is not "no".
struct TcsStatement {
  enum class Is { Unknown, No, Yes };
  Is is = Is::Unknown;
  QString basis;
};

/// A household measure with its weight and source: 1 cup of flour is 125 g (USDA SR28 20081).
struct Measure {
  measure::Quantity volume;  ///< a Volume, or a Count for "1 large egg"
  measure::Quantity mass;
  QString source;
  problem::Place place;
};

/// One thing as one supplier sells it; this carries the declaration.
struct SupplierItem {
  QString id;
  QString supplier;
  Declared declared;
  LocalText statement;  ///< its ingredient statement; empty when it is a single ingredient
  QDate checked;
  QString source;  ///< "specification sheet rev 4"
  problem::Place place;
};

/// Pieces to a weight, as a range: 21/25 to the pound is 21 to 25; U/10 is ten or fewer, with no lower bound.
struct CountGrade {
  std::optional<int> fewest;
  int most = 0;
  measure::Quantity per;  ///< 1 lb, 1 kg
};

struct Ingredient {
  QString id;
  LocalText name;
  QString code;         ///< letters for its own lots when opened, cut, decanted; may be empty
  QString item_number;  ///< may be empty
  TcsStatement tcs;
  std::optional<bool> must_be_cooked;  ///< absent: unknown
  QString food;                        ///< class for the cook minimum ("poultry"); needed when it must be cooked
  bool animal = false;
  measure::Ratio edible{1, 1};  ///< trim yield: as purchased to edible, (0, 1]
  std::vector<Measure> measures;
  std::optional<CountGrade> count_grade;
  std::optional<measure::Quantity>
      bought_by;              ///< the buying unit: 25 lb, 12 pieces; absent: it is bought by any weight
  bool always_there = false;  ///< neither pulled nor bought: water from the tap
  LocalText bought_as;        ///< what the buying unit is called: "sack"; may be empty
  std::optional<measure::TemperatureLimit>
      received_at_most;                ///< how warm it may come; absent: the rule set's cold holding
  QString received_source;             ///< the law that allows it
  std::vector<ShelfLife> shelf_lives;  ///< opened, thawed, cut (Chilled), decanted
  std::vector<SupplierItem> supplier_items;
  std::optional<measure::Ratio> most_percent;  ///< restricted: at most this share of a finished product by weight
  QString most_source;
  problem::Place place;

  const SupplierItem* supplier_item(const QString& id) const;
};

/// How the amount of a formula line is given.
enum class Basis {
  Absolute,   ///< 4 kg
  Parts,      ///< 3 (parts by weight)
  PercentOf,  ///< 2.5 percent of another line ("of"): baker's percentage
  PerUnit,    ///< 35 g to each finished unit
  PerMain     ///< 12 g to each kg (or lb) of the main item
};

/// How a line comes onto a unit: what is brushed or drizzled is weighed by the tray, bottle before and after.
enum class Laying { Placed, Brushed, Drizzled };

struct FormulaLine {
  QString item;  ///< ingredient or product id
  Basis basis = Basis::Absolute;
  measure::Quantity amount;  ///< Absolute, PerUnit, PerMain
  measure::Ratio number;     ///< Parts, PercentOf (2.5 is 2.5 percent)
  QString of;                ///< PercentOf: the base line's item
  measure::Quantity per;     ///< PerMain: 1 kg, 1 lb
  bool main = false;
  LocalText cut;   ///< "5 mm dice"
  LocalText bowl;  ///< what it is weighed into; lines that follow one another and name the same share a reading
  Laying laying = Laying::Placed;
  std::optional<int> disher;  ///< of an assembled item: the number of a level disher, 16 being 16 to the quart
  LocalText tool;             ///< or another portion tool: "2 oz ladle"
  problem::Place place;
};

enum class Package { Air, ReducedOxygen };

/// A container that a product is put up in, and the label it gets.
struct ContainerSpec {
  QString kind;  ///< tub, tray, bag, case, jar, pan, bottle
  measure::Quantity holds;
  Package package = Package::Air;
  QString media;
  int rows = 0, columns = 0;              ///< of a tray: how its pieces lie; 0: not said
  std::optional<measure::Quantity> tare;  ///< of the container, empty
  Purpose purpose = Purpose::Inside;
  QStringList languages;        ///< empty: the kitchen's first
  State kept = State::Chilled;  ///< how it leaves this kitchen: Chilled, Frozen, Ambient or HotHeld
  QString label_template;       ///< empty: its purpose's; which there are is not known here
  problem::Place template_place;
  problem::Place place;
};

/// The cook that this kitchen gives the product, if any.
enum class Process { None, Cook, PartCook };

/// Finishing instructions for one piece of equipment and start state.
struct Finishing {
  QString equipment;  ///< words key equipment.<id>
  State from = State::Chilled;
  std::optional<measure::TemperatureLimit> setting;
  LocalText setting_text;  ///< instead: "full power"
  int least_seconds = 0, most_seconds = 0;
  std::optional<TimeAtTemperature> to;  ///< core; absent is unknown
  QString reheat_how;                   ///< which reheat minimum applies to cooked food; default "hot-holding"
  LocalText cue;
  int rest_seconds = 0;
  int stand_seconds = 0;      ///< microwave
  int hold_most_seconds = 0;  ///< 0: none stated
  problem::Place place;
};

/// What is done, in order. All but Work needs no hands all the while; Freeze is done to the finished product.
enum class StepKind { Work, Marinate, Rest, Cook, Cool, Chill, Freeze, Thaw };

struct Step {
  StepKind kind = StepKind::Work;
  LocalText text;                                    ///< "Toast the seeds until they smell"
  std::optional<std::pair<int, int>> seconds;        ///< least and most; absent: not said
  std::optional<measure::TemperatureLimit> setting;  ///< of the oven or water
  problem::Place place;
};

enum class ProductKind { Component, AssembledItem };

struct Product {
  QString id;
  LocalText name;
  ProductKind kind = ProductKind::Component;
  QString code;  ///< letters in its lots
  QString item_number;
  TcsStatement tcs;
  std::vector<FormulaLine> formula;        ///< in the order of addition
  std::optional<measure::Quantity> makes;  ///< output of the formula as written: "4.2 kg", "24 pieces"
  LocalText unit_name, unit_plural;        ///< of an assembled item
  std::optional<measure::Quantity> unit_weight;
  measure::Ratio cook_yield{1, 1};
  std::optional<measure::Quantity> unit_least, unit_most;  ///< what a finished unit may weigh
  measure::Ratio make_over{0, 1};
  std::vector<Step> steps;
  std::optional<measure::Quantity> made_in;       ///< makings are whole multiples of this output
  std::optional<measure::Quantity> keep_on_hand;  ///< made to this level, not to orders
  QString vessel;                                 ///< id; may be empty
  std::optional<measure::Quantity> vessel_takes;  ///< the most of what goes in, by weight
  std::optional<measure::Ratio> units_per_hour;   ///< that one pair of hands assembles
  QString formula_of;  ///< another size of this product: `formula` was taken from it, in proportion to the unit weights
  problem::Place formula_of_place;
  Process process = Process::None;
  QString food;  ///< class of the whole that raises the minimum: "stuffed", "comminuted-fish"; may be empty
  std::optional<TimeAtTemperature> cook_to;  ///< the kitchen's own, at least the minimum
  bool finishing_needed = false;             ///< somebody cooks or reheats it elsewhere
  bool cooled = false;  ///< cooked (or made at room temperature) and then chilled: cooling is a critical limit
  bool cooled_from_ambient = false;
  std::vector<ShelfLife> shelf_lives;
  std::vector<ContainerSpec> containers;
  std::vector<Finishing> finishing;
  LocalText used_for;          ///< "for empanadas"
  LocalText common_name;       ///< for sale; empty: the name
  bool safe_handling = false;  ///< raw meat or poultry for sale
  problem::Place place;

  /// In which dimension amounts of it are stated: that of `makes`; without it pieces of an assembled item, weight of a
  /// component.
  measure::Dimension made_as() const;
  const ShelfLife* shelf_life(State state) const;
  /// The container of this kind and size, else the first of this kind (a size that the book does not list), else
  /// nullptr.
  const ContainerSpec* container(const QString& container_kind, measure::Quantity holds) const;
  /// Whether such a container is a reduced-oxygen pack; for a size that the book does not list, whether any of its kind
  /// is.
  bool reduced_oxygen(const QString& container_kind, measure::Quantity holds) const;
};

}  // namespace lardiner::book
