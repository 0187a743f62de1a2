// The kitchen's amendments of the rule set it adopted: tighter freely, looser only on somebody else's authority.
#include <QRegularExpression>
#include <algorithm>
#include <functional>

#include "book/limit_text.h"
#include "book/rule_figures.h"
#include "measure/seconds.h"
#include "reader/fields.h"

namespace lardiner::book {

namespace {

using problem::Code;
using problem::Error;
using reader::Fields;

// What a new value would change.
struct Change {
  bool loosens = false;
  QString now;  // the published value, as text
  std::function<void()> apply;
};
using ReadChange = std::function<problem::Expected<Change>(const QString& value)>;

// One figure that can be amended: how its value is read, and where its authority stands (perhaps shared with others).
struct Figure {
  QString id;
  ReadChange read;
  Authority* authority = nullptr;
};

tl::unexpected<Error> fault(Code code, const QString& what, const QString& hint) {
  return tl::unexpected(Error{code, what, {}, hint});
}

ReadChange change_days(Length& length) {
  return [&length](const QString& value) -> problem::Expected<Change> {
    static const QRegularExpression form(QStringLiteral("^([0-9]{1,4}) days?$"));
    const int count = form.match(value.simplified()).captured(1).toInt();
    if (count == 0)
      return fault(Code::Malformed, QStringLiteral("\"%1\" is not a number of days").arg(value),
                   QStringLiteral("write it as 5 days"));
    return Change{count > length.count, text(length), [&length, count] { length.count = count; }};
  };
}

// A time that may not be exceeded, or that must at least be kept.
ReadChange change_seconds(int& seconds, Bound safe) {
  return [&seconds, safe](const QString& value) -> problem::Expected<Change> {
    const auto read = measure::parse_seconds(value);
    if (!read) return tl::unexpected(read.error());
    const int count = static_cast<int>(*read);  // 400 days at most: fits
    if (count == 0)
      return fault(Code::Range, QStringLiteral("\"%1\" is no time at all").arg(value),
                   QStringLiteral("write it as 3 h"));
    return Change{safe == Bound::AtMost ? count > seconds : count < seconds,
                  text(Length{Length::Unit::Seconds, seconds, 1}), [&seconds, count] { seconds = count; }};
  };
}

bool looser(const measure::TemperatureLimit& given, const measure::TemperatureLimit& now, Bound safe) {
  const auto celsius = measure::compare(given.celsius, now.celsius);
  const auto fahrenheit = measure::compare(given.fahrenheit, now.fahrenheit);
  return safe == Bound::AtMost ? celsius > 0 || fahrenheit > 0 : celsius < 0 || fahrenheit < 0;
}

ReadChange change_limit(measure::TemperatureLimit& limit, Bound safe) {
  return [&limit, safe](const QString& value) -> problem::Expected<Change> {
    const auto read = parse_limit(value, safe);
    if (!read) return tl::unexpected(read.error());
    if (read->seconds)
      return fault(Code::Malformed, QStringLiteral("\"%1\" has a time, and the figure has none").arg(value),
                   QStringLiteral("leave the time out"));
    return Change{looser(read->temperature, limit, safe), text(limit),
                  [&limit, to = read->temperature] { limit = to; }};
  };
}

// A new way of cooking replaces all the published ones.
ReadChange change_ways(std::vector<TimeAtTemperature>& ways) {
  return [&ways](const QString& value) -> problem::Expected<Change> {
    const auto read = parse_limit(value, Bound::AtLeast);
    if (!read) return tl::unexpected(read.error());
    const TimeAtTemperature way{read->temperature, read->seconds.value_or(ways.front().seconds)};
    return Change{!meets(way, ways), text(ways.front()), [&ways, way] { ways = {way}; }};
  };
}

ReadChange change_way(TimeAtTemperature& at) {
  return [&at](const QString& value) -> problem::Expected<Change> {
    std::vector<TimeAtTemperature> ways{at};
    const auto change = change_ways(ways)(value);
    if (!change) return tl::unexpected(change.error());
    change->apply();
    return Change{change->loosens, change->now, [&at, way = ways.front()] { at = way; }};
  };
}

void add_lengths(RuleSet& rules, std::vector<Figure>& figures) {
  for (LengthLimit& limit : rules.figures) {
    const bool days = limit.length.unit == Length::Unit::Days;
    figures.push_back({limit.id, days ? change_days(limit.length) : change_seconds(limit.length.count, Bound::AtMost),
                       &limit.authority});
    auto& never_above = rules.time_control_cold_start.never_above;
    if (limit.id == QLatin1String("time-control-cold-start") && never_above)
      figures.push_back(
          {limit.id + QStringLiteral("-never-above"), change_limit(*never_above, Bound::AtMost), &limit.authority});
  }
}

void add_cooking(RuleSet& rules, std::vector<Figure>& figures) {
  for (CookMinimum& minimum : rules.cook)
    figures.push_back({QStringLiteral("cook-") + minimum.food, change_ways(minimum.any_of), &minimum.authority});
  CookMinimum& microwave = *rules.microwave_cook;
  figures.push_back({QStringLiteral("microwave-cook"), change_ways(microwave.any_of), &microwave.authority});
  figures.push_back({QStringLiteral("microwave-cook-stand"),
                     change_seconds(rules.microwave_stand_seconds, Bound::AtLeast), &microwave.authority});
}

void add_reheating(RuleSet& rules, std::vector<Figure>& figures) {
  for (ReheatMinimum& minimum : rules.reheat) {
    const QString id = QStringLiteral("reheat-") + minimum.how;
    figures.push_back({id, change_way(minimum.at), &minimum.authority});
    if (minimum.within_seconds)
      figures.push_back(
          {id + QStringLiteral("-within"), change_seconds(*minimum.within_seconds, Bound::AtMost), &minimum.authority});
    if (minimum.stand_seconds > 0)
      figures.push_back(
          {id + QStringLiteral("-stand"), change_seconds(minimum.stand_seconds, Bound::AtLeast), &minimum.authority});
  }
}

void add_cooling(std::vector<CoolingStage>& stages, std::vector<Figure>& figures) {
  for (CoolingStage& stage : stages) {
    figures.push_back({stage.id, change_seconds(stage.within_seconds, Bound::AtMost), &stage.authority});
    figures.push_back({stage.id + QStringLiteral("-to"), change_limit(stage.to, Bound::AtMost), &stage.authority});
  }
}

// REQUIRES: `rules` was read by read_rule_set; it must outlive the result and keep its lists as they are.
std::vector<Figure> figures_of(RuleSet& rules) {
  std::vector<Figure> figures;
  add_lengths(rules, figures);
  figures.push_back(
      {QStringLiteral("cold-holding"), change_limit(rules.cold_holding, Bound::AtMost), &rules.cold_holding_authority});
  figures.push_back(
      {QStringLiteral("hot-holding"), change_limit(rules.hot_holding, Bound::AtLeast), &rules.hot_holding_authority});
  add_cooking(rules, figures);
  add_reheating(rules, figures);
  add_cooling(rules.cooling, figures);
  add_cooling(rules.cooling_from_ambient, figures);
  return figures;
}

QStringList ids(const std::vector<Figure>& figures) {
  QStringList all;
  for (const Figure& figure : figures) all += figure.id;
  return all;
}

// "kitchen rule", "Our kitchen": no document that allows more.
bool is_the_kitchen(const QString& authority) {
  return authority.contains(QLatin1String("kitchen"), Qt::CaseInsensitive);
}

class Amending {
 public:
  Amending(RuleSet& rules, problem::Errors& errors) : rules_(rules), errors_(errors), figures_(figures_of(rules)) {}

  void amend(const reader::Value& table) {
    Fields fields(table, QStringLiteral("amendment"), errors_);
    const auto id = fields.required_text(u"figure");
    const auto value = fields.required_text(u"value");
    const auto authority = fields.required_text(u"authority");
    fields.finish();
    if (!id) return;
    const Figure* figure = find(fields, *id);
    if (figure == nullptr || !value || !authority || twice(fields, *figure)) return;
    apply(fields, *figure, *value, authority->simplified());
  }

 private:
  const Figure* find(Fields& fields, const QString& id) {
    const auto at = std::find_if(figures_.begin(), figures_.end(), [&](const Figure& f) { return f.id == id; });
    if (at != figures_.end()) return &*at;
    const QString near = problem::nearest(id, ids(figures_));
    fields.refuse(u"figure", Code::Unknown, QStringLiteral("\"%1\" is not a figure of %2").arg(id, rules_.name),
                  near.isEmpty() ? QStringLiteral("its figures are %1").arg(ids(figures_).join(QStringLiteral(", ")))
                                 : QStringLiteral("did you mean \"%1\"?").arg(near));
    return nullptr;
  }

  // A second amendment of the same figure would win in silence.
  bool twice(Fields& fields, const Figure& figure) {
    const bool again = amended_.contains(figure.id);
    amended_ += figure.id;
    if (again)
      fields.refuse(u"figure", Code::Duplicate, QStringLiteral("figure \"%1\" is amended twice").arg(figure.id),
                    QStringLiteral("keep one of the two amendments"));
    return again;
  }

  void apply(Fields& fields, const Figure& figure, const QString& value, const QString& authority) {
    const auto change = figure.read(value);
    if (!change) {
      fields.refuse(u"value", change.error().code, change.error().what, change.error().hint);
    } else if (change->loosens && is_the_kitchen(authority)) {
      fields.refuse(
          u"value", Code::Unsafe,
          QStringLiteral("\"%1\" is loosened from %2 to %3 on the kitchen's own authority")
              .arg(figure.id, change->now, value),
          QStringLiteral("keep to %1, or name the document that allows more as its authority").arg(change->now));
    } else {
      change->apply();
      *figure.authority = amended_authority(figure, authority);
    }
  }

  // One that stands for other figures too, which may be left as published, names what it amends.
  Authority amended_authority(const Figure& figure, const QString& authority) const {
    const auto same = [&](const Figure& f) { return f.authority == figure.authority; };
    if (std::count_if(figures_.begin(), figures_.end(), same) == 1) return {authority, {}};
    const QString before = figure.authority->text();
    const QString amending = authority + QStringLiteral(", amending ");
    return {before.startsWith(amending) ? before : amending + before, {}};
  }

  RuleSet& rules_;
  problem::Errors& errors_;
  std::vector<Figure> figures_;
  QStringList amended_;
};

}  // namespace

void amend(RuleSet& rules, const std::vector<const reader::Value*>& amendments, problem::Errors& errors) {
  if (amendments.empty()) return;
  Amending amending(rules, errors);
  for (const reader::Value* table : amendments) amending.amend(*table);
  set_named_figures(rules);
  set_demand(rules);
  check_demand(rules, amendments.front()->place,
               QStringLiteral("amend the more demanding class too, so that a mixture is cooked through"), errors);
}

QStringList figure_ids(const RuleSet& rules) {
  RuleSet copy = rules;
  return ids(figures_of(copy));
}

}  // namespace lardiner::book
