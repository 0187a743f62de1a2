// Reads a rule set: every figure the program needs, each with its section; all that is wrong at once.
#include <algorithm>

#include "book/limit_text.h"
#include "book/rule_figures.h"
#include "measure/seconds.h"
#include "reader/fields.h"
#include "reader/read.h"

namespace lardiner::book {

namespace {

using problem::Code;
using reader::Fields;
using reader::Value;

const QStringList kDayFigures{QStringLiteral("ready-to-eat-chilled"), QStringLiteral("opened-package"),
                              QStringLiteral("reduced-oxygen"), QStringLiteral("reduced-oxygen-document")};
const QStringList kTimeFigures{QStringLiteral("time-control"), QStringLiteral("time-control-cold-start")};
const QStringList kTemperatureFigures{QStringLiteral("cold-holding"), QStringLiteral("hot-holding")};
// Classes of food that a rule set must cover; it may add others.
const QStringList kFoods{QStringLiteral("plant-hot-held"),  QStringLiteral("fish"),
                         QStringLiteral("whole-meat"),      QStringLiteral("eggs-immediate"),
                         QStringLiteral("ground-meat"),     QStringLiteral("injected-meat"),
                         QStringLiteral("comminuted-fish"), QStringLiteral("eggs-pooled"),
                         QStringLiteral("poultry"),         QStringLiteral("stuffed")};
const QStringList kReheats{QStringLiteral("hot-holding"), QStringLiteral("microwave"),
                           QStringLiteral("commercial-package")};
const QStringList kCooled{QStringLiteral("cooked"), QStringLiteral("ambient")};

constexpr int kMostDays = 3650;

// One rule set file, table by table.
class RuleReading {
 public:
  explicit RuleReading(const Value& root) : root_(root, QStringLiteral("rule set"), errors_) {}

  problem::ExpectedAll<RuleSet> read();

 private:
  void read_head();
  void read_days(const Value& table);
  void read_time(const Value& table);
  void read_temperature(const Value& table);
  void read_cook(const Value& table);
  void read_microwave(const Value& table);
  void read_reheat(const Value& table);
  void read_cooling(const Value& table);
  void read_all(const char* kind, void (RuleReading::*read_one)(const Value&));
  void check_whole();

  QString id(Fields& fields, const char* kind, QStringView key);
  Authority authority(Fields& fields);
  std::optional<int> seconds(Fields& fields, QStringView key);
  std::optional<measure::TemperatureLimit> limit(Fields& fields, QStringView key, Bound safe);
  std::optional<TimeAtTemperature> way(Fields& fields, QStringView key, const QString& text);
  std::optional<TimeAtTemperature> way(Fields& fields, QStringView key);
  std::optional<WrittenLimit> written(Fields& fields, QStringView key, const QString& text, Bound safe);
  void require(const char* kind, const QStringList& needed);
  void refuse(Fields& fields, QStringView key, const problem::Error& error);

  problem::Errors errors_;
  Fields root_;
  RuleSet rules_;
  std::vector<std::pair<QString, QStringList>> seen_;  // kind of table -> its ids
};

// The name of a table in errors, before its own fields are read: cook "poultry".
QString noun(const Value& table, const char* kind, QStringView key) {
  const Value* id = table.find(key);
  if (id == nullptr || id->text.isEmpty()) return QLatin1String(kind);
  return QStringLiteral("%1 \"%2\"").arg(QLatin1String(kind), id->text);
}

void RuleReading::refuse(Fields& fields, QStringView key, const problem::Error& error) {
  fields.refuse(key, error.code, QStringLiteral("%1: %2").arg(fields.noun(), error.what), error.hint);
}

QString RuleReading::id(Fields& fields, const char* kind, QStringView key) {
  const QString read = fields.required_text(key).value_or(QString());
  auto ids =
      std::find_if(seen_.begin(), seen_.end(), [&](const auto& pair) { return pair.first == QLatin1String(kind); });
  if (ids == seen_.end()) ids = seen_.insert(seen_.end(), {QLatin1String(kind), {}});
  if (!read.isEmpty() && ids->second.contains(read)) {
    fields.refuse(key, Code::Duplicate, QStringLiteral("%1 is given twice").arg(fields.noun()),
                  QStringLiteral("keep one of the two"));
  }
  ids->second.append(read);
  return read;
}

Authority RuleReading::authority(Fields& fields) {
  return {rules_.name, fields.required_text(u"section").value_or(QString())};
}

std::optional<int> RuleReading::seconds(Fields& fields, QStringView key) {
  const auto text = fields.text(key);
  if (!text) return std::nullopt;
  const auto read = measure::parse_seconds(*text);
  if (read && *read > 0) return static_cast<int>(*read);
  refuse(fields, key,
         read ? problem::Error{Code::Range,
                               QStringLiteral("%1 is no time at all").arg(key),
                               {},
                               QStringLiteral("write it as 4 h")}
              : read.error());
  return std::nullopt;
}

std::optional<WrittenLimit> RuleReading::written(Fields& fields, QStringView key, const QString& text, Bound safe) {
  const auto read = parse_limit(text, safe);
  if (!read) {
    refuse(fields, key, read.error());
    return std::nullopt;
  }
  if (read->both_scales) return *read;
  refuse(fields, key,
         {Code::Missing,
          QStringLiteral("\"%1\" gives one scale only").arg(text),
          {},
          QStringLiteral("write both figures as the source prints them, as in 165 °F (74 °C)")});
  return std::nullopt;
}

std::optional<measure::TemperatureLimit> RuleReading::limit(Fields& fields, QStringView key, Bound safe) {
  const auto text = fields.required_text(key);
  if (!text) return std::nullopt;
  const auto read = written(fields, key, *text, safe);
  if (!read) return std::nullopt;
  if (!read->seconds) return read->temperature;
  refuse(fields, key,
         {Code::Malformed,
          QStringLiteral("\"%1\" has a time where only a temperature stands").arg(*text),
          {},
          QStringLiteral("leave the time out")});
  return std::nullopt;
}

std::optional<TimeAtTemperature> RuleReading::way(Fields& fields, QStringView key, const QString& text) {
  const auto read = written(fields, key, text, Bound::AtLeast);
  if (!read) return std::nullopt;
  if (read->seconds) return TimeAtTemperature{read->temperature, *read->seconds};
  refuse(fields, key,
         {Code::Missing,
          QStringLiteral("\"%1\" does not say for how long").arg(text),
          {},
          QStringLiteral("add the time, as in 165 °F (74 °C) 15 s, or the word instant")});
  return std::nullopt;
}

std::optional<TimeAtTemperature> RuleReading::way(Fields& fields, QStringView key) {
  const auto text = fields.required_text(key);
  return text ? way(fields, key, *text) : std::nullopt;
}

void RuleReading::read_head() {
  rules_.id = root_.required_text(u"id").value_or(QString());
  rules_.name = root_.required_text(u"name").value_or(QString());
  rules_.allergen_list = root_.text(u"allergen_list").value_or(QString());
  rules_.cooling_authority = {rules_.name, root_.required_text(u"cooling_section").value_or(QString())};
  if (const auto section = root_.text(u"raw_fish_frozen_section"))
    rules_.raw_fish_frozen = Authority{rules_.name, *section};
  if (!root_.has(u"invented")) {
    root_.refuse(u"invented", Code::Missing, QStringLiteral("rule set does not say whether it is invented"),
                 QStringLiteral("write invented = false for a published code"));
  }
  rules_.invented = root_.boolean(u"invented").value_or(false);
}

void RuleReading::read_days(const Value& table) {
  Fields fields(table, noun(table, "days", u"id"), errors_);
  LengthLimit read{id(fields, "days", u"id"), {}, authority(fields)};
  for (const QStringView key : {QStringView(u"days"), QStringView(u"first_day")}) {
    if (!fields.has(key))
      fields.refuse(key, Code::Missing, QStringLiteral("%1 has no %2").arg(fields.noun(), key),
                    QStringLiteral("state %1").arg(key));
  }
  read.length.count = fields.integer(u"days", 1, kMostDays).value_or(1);
  read.length.first_day = fields.integer(u"first_day", 0, 1).value_or(1);
  fields.finish();
  rules_.figures.push_back(read);
}

void RuleReading::read_time(const Value& table) {
  Fields fields(table, noun(table, "time", u"id"), errors_);
  LengthLimit read{id(fields, "time", u"id"), {}, authority(fields)};
  fields.required_text(u"lasts");
  read.length.unit = Length::Unit::Seconds;
  read.length.count = fields.has(u"lasts") ? seconds(fields, u"lasts").value_or(0) : 0;
  if (fields.has(u"never_above")) {
    TimeControlRule& rule = read.id == kTimeFigures[0] ? rules_.time_control : rules_.time_control_cold_start;
    rule.never_above = limit(fields, u"never_above", Bound::AtMost);
  }
  fields.finish();
  rules_.figures.push_back(read);
}

void RuleReading::read_temperature(const Value& table) {
  Fields fields(table, noun(table, "temperature", u"id"), errors_);
  const QString read = id(fields, "temperature", u"id");
  const Authority by = authority(fields);
  if (read == QLatin1String("cold-holding")) {
    rules_.cold_holding = limit(fields, u"at_most", Bound::AtMost).value_or(measure::TemperatureLimit{});
    rules_.cold_holding_authority = by;
  } else if (read == QLatin1String("hot-holding")) {
    rules_.hot_holding = limit(fields, u"at_least", Bound::AtLeast).value_or(measure::TemperatureLimit{});
    rules_.hot_holding_authority = by;
  } else if (!read.isEmpty()) {
    const QString near = problem::nearest(read, kTemperatureFigures);
    fields.refuse(u"id", Code::Unknown, QStringLiteral("there is no temperature figure \"%1\"").arg(read),
                  near.isEmpty()
                      ? QStringLiteral("the figures are %1").arg(kTemperatureFigures.join(QStringLiteral(", ")))
                      : QStringLiteral("did you mean \"%1\"?").arg(near));
    return;
  }
  fields.finish();
}

void RuleReading::read_cook(const Value& table) {
  Fields fields(table, noun(table, "cook", u"food"), errors_);
  CookMinimum read{id(fields, "cook", u"food"), authority(fields), {}, 0};
  const QStringList ways = fields.texts(u"any_of");
  if (ways.isEmpty()) {
    fields.refuse(u"any_of", Code::Missing, QStringLiteral("%1 names no temperature").arg(fields.noun()),
                  QStringLiteral("write any_of = [\"165 °F (74 °C) instant\"]"));
  }
  for (const QString& text : ways) {
    if (const auto one = way(fields, u"any_of", text)) read.any_of.push_back(*one);
  }
  fields.finish();
  if (!read.any_of.empty()) rules_.cook.push_back(read);
}

void RuleReading::read_microwave(const Value& table) {
  Fields fields(table, QStringLiteral("microwave_cook"), errors_);
  CookMinimum read{QStringLiteral("microwave"), authority(fields), {}, 0};
  if (const auto one = way(fields, u"at")) read.any_of.push_back(*one);
  if (fields.required_text(u"stand")) rules_.microwave_stand_seconds = seconds(fields, u"stand").value_or(0);
  fields.finish();
  rules_.microwave_cook = read;
}

void RuleReading::read_reheat(const Value& table) {
  Fields fields(table, noun(table, "reheat", u"how"), errors_);
  ReheatMinimum read;
  read.how = id(fields, "reheat", u"how");
  read.authority = authority(fields);
  read.at = way(fields, u"at").value_or(TimeAtTemperature{});
  read.stand_seconds = seconds(fields, u"stand").value_or(0);
  read.within_seconds = seconds(fields, u"within");
  fields.finish();
  rules_.reheat.push_back(read);
}

void RuleReading::read_cooling(const Value& table) {
  Fields fields(table, noun(table, "cooling", u"id"), errors_);
  CoolingStage read;
  read.id = id(fields, "cooling", u"id");
  read.authority = authority(fields);
  const QString of = fields.required_text(u"of").value_or(QString());
  read.to = limit(fields, u"to", Bound::AtMost).value_or(measure::TemperatureLimit{});
  const bool named_start = fields.has(u"from") || of != QLatin1String("ambient");
  read.from = named_start ? limit(fields, u"from", Bound::AtMost).value_or(measure::TemperatureLimit{}) : read.to;
  if (fields.required_text(u"within")) read.within_seconds = seconds(fields, u"within").value_or(0);
  if (!of.isEmpty() && !kCooled.contains(of)) {
    fields.refuse(u"of", Code::Unknown, QStringLiteral("%1: \"%2\" is not a kind of cooling").arg(fields.noun(), of),
                  QStringLiteral("write of = \"cooked\" or of = \"ambient\""));
  }
  fields.finish();
  (of == QLatin1String("ambient") ? rules_.cooling_from_ambient : rules_.cooling).push_back(read);
}

void RuleReading::read_all(const char* kind, void (RuleReading::*read_one)(const Value&)) {
  const QString key = QLatin1String(kind);
  for (const Value* table : root_.tables(key)) (this->*read_one)(*table);
}

void RuleReading::require(const char* kind, const QStringList& needed) {
  const auto ids =
      std::find_if(seen_.begin(), seen_.end(), [&](const auto& pair) { return pair.first == QLatin1String(kind); });
  for (const QString& id : needed) {
    if (ids != seen_.end() && ids->second.contains(id)) continue;
    errors_.push_back({Code::Missing, QStringLiteral("rule set has no %1 \"%2\"").arg(QLatin1String(kind), id),
                       root_.source().place,
                       QStringLiteral("add a [[%1]] table for it with its section").arg(QLatin1String(kind))});
  }
}

void RuleReading::check_whole() {
  require("days", kDayFigures);
  require("time", kTimeFigures);
  require("temperature", kTemperatureFigures);
  require("cook", kFoods);
  require("reheat", kReheats);
  const auto miss = [&](bool there, const QString& what, const QString& hint) {
    if (!there) errors_.push_back({Code::Missing, what, root_.source().place, hint});
  };
  miss(rules_.microwave_cook.has_value(), QStringLiteral("rule set has no microwave_cook"),
       QStringLiteral("add a [microwave_cook] table with its section"));
  miss(!rules_.cooling.empty(), QStringLiteral("rule set has no cooling of cooked food"),
       QStringLiteral("add a [[cooling]] table with of = \"cooked\""));
  miss(!rules_.cooling_from_ambient.empty(), QStringLiteral("rule set has no cooling of food made at room temperature"),
       QStringLiteral("add a [[cooling]] table with of = \"ambient\""));
}

problem::ExpectedAll<RuleSet> RuleReading::read() {
  read_head();
  read_all("days", &RuleReading::read_days);
  read_all("time", &RuleReading::read_time);
  read_all("temperature", &RuleReading::read_temperature);
  read_all("cook", &RuleReading::read_cook);
  if (const Value* table = root_.table(u"microwave_cook")) read_microwave(*table);
  read_all("reheat", &RuleReading::read_reheat);
  read_all("cooling", &RuleReading::read_cooling);
  root_.finish();
  check_whole();
  set_demand(rules_);
  check_demand(rules_, root_.source().place, QStringLiteral("correct the [[cook]] figures"), errors_);
  if (!errors_.empty()) {
    problem::sort(errors_);
    return tl::unexpected(errors_);
  }
  set_named_figures(rules_);
  return rules_;
}

}  // namespace

problem::ExpectedAll<RuleSet> read_rule_set(const QByteArray& toml, const QString& file) {
  const auto root = reader::read_toml(toml, file);
  if (!root) return tl::unexpected(problem::Errors{root.error()});
  return RuleReading(*root).read();
}

}  // namespace lardiner::book
