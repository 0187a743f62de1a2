// What a form wrote down, as the rows that records and events are read from.
#include "station/rows.h"

namespace lardiner::station {

using reader::Value;

Value form_table() {
  Value value;
  value.place = {QStringLiteral("form"), 0, 0, {}, 1, 1};
  return value;
}

Value form_text(const QString& key, const QString& text) {
  Value value;
  value.kind = Value::Kind::String;
  value.text = text;
  value.place = {QStringLiteral("form"), 0, 0, key, 1, 1};
  value.key_place = value.place;
  return value;
}

void add(Value& to, const QString& key, const QString& text) {
  if (!text.trimmed().isEmpty()) to.entries.emplace_back(key, form_text(key, text.trimmed()));
}

bool needs_strong_word(const Value& row) {
  const auto text = [&](QStringView key) {
    const Value* value = row.find(key);
    return value ? value->text.trimmed().toLower() : QString();
  };
  const QString word = text(u"event");
  // What comes back is on hold, unless that is given as the reason.
  if (word == QLatin1String("returned") && text(u"reason") == QLatin1String("released")) return true;
  return word == QLatin1String("release") || word == QLatin1String("correction") || word == QLatin1String("recall") ||
         word == QLatin1String("recall-closed");
}

}  // namespace lardiner::station
