// The limits and temperatures of one published code: looking them up, and the order in which cooking demands more.
#include "book/rule_set.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "book/limit_text.h"
#include "book/rule_figures.h"

namespace lardiner::book {

namespace {

using measure::Temperature;

// Ten degrees hotter kills as much in a tenth of the time: the z-value commonly taken for Salmonella and Listeria in
// meat (from memory). Used only to compare ways of cooking, never to shorten one.
constexpr double kTenfoldFahrenheit = 10.0;

bool as_hot(const measure::TemperatureLimit& a, const measure::TemperatureLimit& b) {
  return measure::compare(a.celsius, b.celsius) >= 0 && measure::compare(a.fahrenheit, b.fahrenheit) >= 0;
}

bool meets_one(const TimeAtTemperature& way, const TimeAtTemperature& asked) {
  if (!as_hot(way.temperature, asked.temperature)) return false;
  const double hotter = (way.temperature.fahrenheit.tenths - asked.temperature.fahrenheit.tenths) / 10.0;
  const double needed = asked.seconds * std::pow(10.0, -hotter / kTenfoldFahrenheit);
  return way.seconds >= needed || needed < 1;  // the codes call less than one second instant
}

// Sorts ways from the mildest.
std::tuple<int, int> heat(const TimeAtTemperature& way) { return {way.temperature.fahrenheit.tenths, way.seconds}; }

using Demand = std::tuple<std::tuple<int, int>, std::tuple<int, int>>;
Demand demand(const CookMinimum& minimum) {
  const auto milder = [](const TimeAtTemperature& a, const TimeAtTemperature& b) { return heat(a) < heat(b); };
  const auto [mildest, hottest] = std::minmax_element(minimum.any_of.begin(), minimum.any_of.end(), milder);
  return {heat(*hottest), heat(*mildest)};
}

template <class List, class Matches>
auto* found(const List& list, Matches matches) {
  const auto at = std::find_if(list.begin(), list.end(), matches);
  return at == list.end() ? nullptr : &*at;
}

}  // namespace

bool meets(const TimeAtTemperature& way, const std::vector<TimeAtTemperature>& any_of) {
  return std::any_of(any_of.begin(), any_of.end(), [&](const auto& asked) { return meets_one(way, asked); });
}

const LengthLimit* RuleSet::figure(const QString& figure_id) const {
  return found(figures, [&](const LengthLimit& limit) { return limit.id == figure_id; });
}

const CookMinimum* RuleSet::cook_for(const QString& food) const {
  return found(cook, [&](const CookMinimum& minimum) { return minimum.food == food; });
}

const ReheatMinimum* RuleSet::reheat_for(const QString& how) const {
  return found(reheat, [&](const ReheatMinimum& minimum) { return minimum.how == how; });
}

void set_named_figures(RuleSet& rules) {
  const auto named = [&](const char* id) { return *rules.figure(QLatin1String(id)); };
  rules.ready_to_eat_chilled = named("ready-to-eat-chilled");
  rules.opened_package = named("opened-package");
  rules.reduced_oxygen = named("reduced-oxygen");
  rules.reduced_oxygen_document = named("reduced-oxygen-document");
  const auto set = [](TimeControlRule& rule, const LengthLimit& limit) {
    rule.length = limit.length;
    rule.authority = limit.authority;
  };
  set(rules.time_control, named("time-control"));
  set(rules.time_control_cold_start, named("time-control-cold-start"));
}

void set_demand(RuleSet& rules) {
  std::vector<Demand> order;
  for (const CookMinimum& minimum : rules.cook) order.push_back(demand(minimum));
  std::sort(order.begin(), order.end());
  order.erase(std::unique(order.begin(), order.end()), order.end());
  for (CookMinimum& minimum : rules.cook) {
    const auto at = std::lower_bound(order.begin(), order.end(), demand(minimum));
    minimum.demand = static_cast<int>(at - order.begin()) + 1;
  }
}

void check_demand(const RuleSet& rules, const problem::Place& place, const QString& hint, problem::Errors& errors) {
  for (const CookMinimum& more : rules.cook) {
    for (const CookMinimum& less : rules.cook) {
      if (less.demand > more.demand) continue;
      const auto* way = found(more.any_of, [&](const TimeAtTemperature& w) { return !meets(w, less.any_of); });
      if (way == nullptr) continue;
      errors.push_back(
          {problem::Code::Unsafe,
           QStringLiteral("\"%1\" may be cooked to %2, which leaves \"%3\" in the same mixture undercooked")
               .arg(more.food, text(*way), less.food),
           place, hint});
    }
  }
}

}  // namespace lardiner::book
