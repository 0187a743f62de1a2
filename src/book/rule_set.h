// The limits and temperatures of one published code, as data, after the kitchen's amendments.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "book/shelf_life.h"
#include "measure/temperature.h"
#include "reader/value.h"

namespace lardiner::book {

/// A core temperature held for a time: 165 °F for 0 s is "instant".
struct TimeAtTemperature {
  measure::TemperatureLimit temperature;
  int seconds = 0;
};

/// The ways in which one class of raw food is cooked enough (any one of them).
struct CookMinimum {
  QString food;  ///< class of food as ingredients state it: "poultry", "fish", "ground-meat", "plant-hot-held", …
  Authority authority;
  std::vector<TimeAtTemperature> any_of;  ///< in the source's order; the first is the one printed
  int demand = 0;  ///< place in the order of demand, derived from the figures; a mixture takes the highest
};

/// Whether food that reached `way` has had at least one of `any_of`: as hot for as long, or hotter for the shorter time
/// that kills as much. Never true of a lower temperature, however long.
bool meets(const TimeAtTemperature& way, const std::vector<TimeAtTemperature>& any_of);

struct CoolingStage {
  QString id;                      ///< "cooling-first-stage"
  measure::TemperatureLimit from;  ///< `to` where the source names no start: any warmer reading starts the clock
  measure::TemperatureLimit to;
  int within_seconds = 0;  ///< counted from the time the food passed the FIRST stage's `from`
  Authority authority;
};

/// A limit in days or time with its section.
struct LengthLimit {
  QString id;
  Length length;
  Authority authority;
};

/// Time as a public health control: from at or below `cold_start` or at or above `hot_start`, never restarted.
struct TimeControlRule {
  Length length;                                         ///< elapsed
  std::optional<measure::TemperatureLimit> never_above;  ///< of the longer, cold-start form
  Authority authority;
};

struct ReheatMinimum {
  QString how;  ///< "hot-holding", "commercial-package", "microwave"
  TimeAtTemperature at;
  int stand_seconds = 0;
  std::optional<int> within_seconds;
  Authority authority;
};

/// One adopted rule set. Every figure carries its authority; nothing here is a constant of the program.
struct RuleSet {
  QString id;
  QString name;           ///< as printed in reasons: "FDA Food Code 2022"
  bool invented = false;  ///< an example, never to be adopted by a real kitchen; said wherever it is shown
  measure::TemperatureLimit cold_holding, hot_holding;
  Authority cold_holding_authority, hot_holding_authority;
  LengthLimit ready_to_eat_chilled, opened_package;
  std::vector<CookMinimum> cook;
  std::optional<CookMinimum> microwave_cook;  ///< with `microwave_stand_seconds`
  int microwave_stand_seconds = 0;
  std::vector<ReheatMinimum> reheat;
  std::vector<CoolingStage> cooling;               ///< of cooked food
  std::vector<CoolingStage> cooling_from_ambient;  ///< of food made from room-temperature ingredients
  Authority cooling_authority;                     ///< of cooling as a whole; each stage has its own too
  TimeControlRule time_control, time_control_cold_start;
  LengthLimit reduced_oxygen;           ///< the most without a variance, frozen time excluded
  LengthLimit reduced_oxygen_document;  ///< beyond this a named document is needed
  std::optional<Authority>
      raw_fish_frozen;               ///< raw fish goes into a reduced-oxygen pack only frozen; absent: no such rule
  std::vector<LengthLimit> figures;  ///< every day or time limit again, by id, for `authority = "…"` in a book
  QString allergen_list;             ///< the list of the law it stands under, for `check` to compare; may be empty

  const LengthLimit* figure(const QString& figure_id) const;
  const CookMinimum* cook_for(const QString& food) const;
  const ReheatMinimum* reheat_for(const QString& how) const;
};

/// Reads templates/rules/<id>.toml. Every figure the program needs must be there, each with its section, temperatures
/// in both scales as printed. A food class whose figures would leave a less demanding one undercooked in a mixture is
/// refused.
problem::ExpectedAll<RuleSet> read_rule_set(const QByteArray& toml, const QString& file);

/// Applies the kitchen's [[amendment]] tables: `figure` (an id of `figure_ids`), `value` (5 days, 3 h, 170 °F 15 s: as
/// the figure is; a temperature without a time keeps the time), `authority`. A figure may be tightened freely;
/// loosening needs an authority that is not the kitchen ("kitchen rule"). A refused amendment changes nothing. Faults
/// are added to `errors`. REQUIRES: `rules` was read by read_rule_set.
void amend(RuleSet& rules, const std::vector<const reader::Value*>& amendments, problem::Errors& errors);

/// Every figure that can be amended: "ready-to-eat-chilled", "hot-holding", "cook-poultry", "microwave-cook",
/// "reheat-hot-holding", "reheat-hot-holding-within", "reheat-microwave-stand", "cooling-whole", "cooling-whole-to", …
QStringList figure_ids(const RuleSet& rules);

}  // namespace lardiner::book
