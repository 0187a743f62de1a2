// The places where food stands, and the temperatures that the kitchen keeps them at.
#include "book/limit_text.h"
#include "book/storage_place.h"
#include "book/tables.h"
#include "book/values.h"
#include "reader/quote.h"

namespace lardiner::book {

using measure::TemperatureLimit;
using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

// As many characters as an event may write of it.
constexpr int kMostName = 60;

// Food Code 2022 3-501.11 asks that frozen food stay frozen, without a figure (from memory). At the melting point of
// ice nothing does.
constexpr TemperatureLimit kMelts{{0, measure::Scale::Celsius}, {320, measure::Scale::Fahrenheit}};

QString read_place_name(Fields& fields) {
  const QString name = fields.required_text(u"name").value_or(QString());
  if (reader::printable(name) != name)
    fields.refuse(u"name", Code::Malformed, QStringLiteral("%1 has a control code in it").arg(quoted(name)),
                  QStringLiteral("write it once more, letter by letter"));
  else if (name.toUcs4().size() > kMostName)
    fields.refuse(u"name", Code::Range,
                  QStringLiteral("%1 is longer than %2 characters").arg(quoted(name)).arg(kMostName),
                  QStringLiteral("write it shorter"));
  return name;
}

std::optional<Keeping> read_keeping(Fields& fields) {
  static const QStringList words{QStringLiteral("chilled"), QStringLiteral("frozen"), QStringLiteral("hot"),
                                 QStringLiteral("ambient")};
  const std::optional<QString> word = read_required_word(fields, u"kind", words);
  return word ? std::optional(static_cast<Keeping>(words.indexOf(*word))) : std::nullopt;
}

bool below(const TemperatureLimit& one, const TemperatureLimit& other) {
  return measure::compare(one.celsius, other.celsius) < 0 && measure::compare(one.fahrenheit, other.fahrenheit) < 0;
}

// In either scale: a reading is judged by its own.
bool above(const TemperatureLimit& one, const TemperatureLimit& other) {
  return measure::compare(one.celsius, other.celsius) > 0 || measure::compare(one.fahrenheit, other.fahrenheit) > 0;
}

void refuse_looser(Fields& fields, QStringView key, const TemperatureLimit& stated, const TemperatureLimit& adopted,
                   const Authority& authority) {
  const bool most = key == u"at_most";
  fields.refuse(
      key, Code::Unsafe,
      QStringLiteral("%1: %2, %3, is %4 the %5 of %6 (%7)")
          .arg(fields.noun(), key, text(stated), most ? QStringLiteral("above") : QStringLiteral("below"),
               most ? QStringLiteral("cold holding") : QStringLiteral("hot holding"), text(adopted), authority.text()),
      QStringLiteral("write %1 or %2, or leave it out")
          .arg(text(adopted), most ? QStringLiteral("below") : QStringLiteral("above")));
}

void check_against_rules(Fields& fields, const StoragePlace& place, const RuleSet& rules) {
  if (rules.id.isEmpty()) return;
  if (place.keeps == Keeping::Chilled && place.at_most && above(*place.at_most, rules.cold_holding))
    refuse_looser(fields, u"at_most", *place.at_most, rules.cold_holding, rules.cold_holding_authority);
  if (place.keeps == Keeping::Hot && place.at_least && above(rules.hot_holding, *place.at_least))
    refuse_looser(fields, u"at_least", *place.at_least, rules.hot_holding, rules.hot_holding_authority);
}

void check_frozen(Fields& fields, const StoragePlace& place) {
  const QString hint = QStringLiteral("write at_most as the kitchen's plan has it: \"0 °F (-18 °C)\"");
  if (place.keeps != Keeping::Frozen) return;
  if (place.at_most && !below(*place.at_most, kMelts))
    fields.refuse(u"at_most", Code::Unsafe,
                  QStringLiteral("%1: at_most, %2, is not below %3: nothing stays frozen solid there")
                      .arg(fields.noun(), text(*place.at_most), text(kMelts)),
                  hint);
  if (place.at_least && !place.at_most)
    fields.refuse(u"at_least", Code::Missing, fields.noun() + QStringLiteral(" is frozen and has at_least alone"),
                  hint);
}

void check_room(Fields& fields, const HeldTo& limits) {
  if (!limits.at_least || !limits.at_most || below(*limits.at_least, *limits.at_most)) return;
  fields.refuse(fields.has(u"at_most") ? u"at_most" : u"at_least", Code::Conflict,
                QStringLiteral("%1 is to be at least %2 and at most %3")
                    .arg(fields.noun(), text(*limits.at_least), text(*limits.at_most)),
                QStringLiteral("leave room between the two"));
}

}  // namespace

StoragePlace read_storage_place(const reader::Value& table, const Context& context) {
  Fields fields(table, noun(QStringLiteral("place"), table, u"name"), context.errors);
  StoragePlace place;
  place.place = table.place;
  place.name = read_place_name(fields);
  const std::optional<Keeping> keeps = read_keeping(fields);
  place.at_least = read_limit(fields, u"at_least", Bound::AtLeast);
  place.at_most = read_limit(fields, u"at_most", Bound::AtMost);
  if (keeps) {
    place.keeps = *keeps;
    check_against_rules(fields, place, context.book.rules);
    check_frozen(fields, place);
    check_room(fields, held_to(place, context.book.rules));
  }
  fields.finish();
  return place;
}

}  // namespace lardiner::book
