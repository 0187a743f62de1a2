// The body of an entry: the exact text that is hashed and kept.
#include "history/event_json.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSet>
#include <limits>

#include "batch/fixed_json.h"
#include "batch/json_instant.h"
#include "batch/phrases.h"
#include "history/event_json_values.h"
#include "history/without_facts.h"

namespace lardiner::history {

using problem::Code;

namespace {

constexpr QLatin1String kRecorded("recorded"), kZone("zone"), kEvent("event"), kAt("at"), kContainers("containers"),
    kQuantity("quantity"), kLeft("left"), kCount("count"), kTemperature("temperature"), kHeld("held"),
    kStated("stated"), kTcs("tcs"), kAccepted("accepted"), kOf("of"), kDay("day"), kAdds("adds"), kEnds("ends"),
    kChecked("checked"), kFacts("facts"), kInOrder("in_order"), kAtLeast("at_least"), kAtMost("at_most");

struct Text {
  QLatin1String key;
  QString Event::*text;
};
constexpr Text kTexts[] = {{QLatin1String("by"), &Event::by},
                           {QLatin1String("lot"), &Event::lot},
                           {QLatin1String("item"), &Event::item},
                           {QLatin1String("supplier_item"), &Event::supplier_item},
                           {QLatin1String("kind"), &Event::container_kind},
                           {QLatin1String("state"), &Event::state},
                           {QLatin1String("place"), &Event::place},
                           {QLatin1String("from"), &Event::from},
                           {QLatin1String("site"), &Event::site},
                           {QLatin1String("order"), &Event::order},
                           {QLatin1String("note"), &Event::note},
                           {QLatin1String("printer"), &Event::printer},
                           {QLatin1String("medium"), &Event::medium},
                           {QLatin1String("reason"), &Event::reason},
                           {QLatin1String("action"), &Event::action},
                           {QLatin1String("what"), &Event::what},
                           {QLatin1String("shows"), &Event::label_end},
                           {QLatin1String("book"), &Event::book_hash}};

// Writes what an event has, key by key.
class Writing {
 public:
  explicit Writing(reader::JsonText& text) : text_(text) {}

  void text(QLatin1String key, const QString& value) {
    if (value.isEmpty()) return;
    text_.key(key);
    text_.text(value);
  }
  void instant(QLatin1String key, const QDateTime& value) { text(key, batch::instant_json(value)); }
  void number(QLatin1String key, int value) {
    text_.key(key);
    text_.number(value);
  }
  // What is true unless it is written.
  void truth(QLatin1String key, bool value) {
    if (value) return;
    text_.key(key);
    text_.truth(false);
  }
  template <class Value>
  void maybe(QLatin1String key, const std::optional<Value>& value) {
    if (!value) return;
    text_.key(key);
    write(text_, *value);
  }
  template <class List, class One>
  void list(QLatin1String key, const List& values, One one) {
    if (values.empty()) return;
    text_.key(key);
    text_.begin_list();
    for (const auto& value : values) one(text_, value);
    text_.end_list();
  }

 private:
  reader::JsonText& text_;
};

void write_figures(const Event& event, Writing& out) {
  out.list(kContainers, event.containers, [](reader::JsonText& text, int number) { text.number(number); });
  out.maybe(kQuantity, event.quantity);
  if (event.left_percent) out.number(kLeft, *event.left_percent);
  if (event.count != 0) out.number(kCount, event.count);
  if (event.temperature) out.text(kTemperature, batch::reading_text(*event.temperature));
  if (event.seconds != 0) out.number(kHeld, event.seconds);
  out.maybe(kAtLeast, event.limits.at_least);
  out.maybe(kAtMost, event.limits.at_most);
  out.truth(kTcs, event.tcs);
  out.truth(kAccepted, event.accepted);
  out.truth(kInOrder, event.in_order);
}

void write_references(const Event& event, Writing& out) {
  out.maybe(kStated, event.stated);
  out.maybe(kEnds, event.ends);
  if (event.of.valid()) out.text(kOf, event.of.text());
  if (event.day) out.text(kDay, event.day->toString(Qt::ISODate));
  if (event.checked) out.text(kChecked, event.checked->toString(Qt::ISODate));
  out.list(kAdds, event.adds, [](reader::JsonText& text, const QString& substance) { text.text(substance); });
}

// Takes the keys of a body one by one; the first fault is kept.
class Reading {
 public:
  explicit Reading(QJsonObject json) : json_(std::move(json)) {}

  // What is under a key that need not be there, read by `read`.
  template <class Read>
  auto taken(QLatin1String key, Read read) -> decltype(read(QJsonValue())) {
    const auto found = json_.constFind(key);
    if (found == json_.constEnd()) return std::nullopt;
    ++known_;
    auto value = read(*found);
    if (!value) refuse(Code::Malformed, QStringLiteral("\"%1\" is not as an entry writes it").arg(key));
    return value;
  }

  template <class Read>
  auto required(QLatin1String key, Read read) -> decltype(read(QJsonValue())) {
    if (!json_.contains(key)) refuse(Code::Missing, QStringLiteral("\"%1\" is missing").arg(key));
    return taken(key, read);
  }

  void refuse(Code code, const QString& what) {
    if (!fault_) fault_ = problem::Error{code, what, {}, QString()};
  }

  // Keys that nobody asked for cannot be passed over: they may say what this program does not understand.
  void finish(const QSet<QString>& keys, bool facts) {
    if (known_ == json_.size()) return;
    for (auto it = json_.constBegin(); it != json_.constEnd(); ++it)
      if (!keys.contains(it.key()) && !(facts && it.key() == kFacts))
        refuse(Code::Unknown, QStringLiteral("\"%1\" is not a key of an entry").arg(it.key()));
  }

  const std::optional<problem::Error>& fault() const { return fault_; }

 private:
  QJsonObject json_;
  qsizetype known_ = 0;
  std::optional<problem::Error> fault_;
};

std::optional<QString> text_of(const QJsonValue& value) {
  if (!value.isString() || value.toString().isEmpty()) return std::nullopt;
  return value.toString();
}

std::optional<bool> false_of(const QJsonValue& value) {
  return value == QJsonValue(false) ? std::optional(false) : std::nullopt;
}

std::optional<int> count_of(const QJsonValue& value) {
  const std::optional<qint64> whole = whole_of(value);
  if (!whole || *whole < 0 || *whole > std::numeric_limits<int>::max()) return std::nullopt;
  return static_cast<int>(*whole);
}

std::optional<int> positive_of(const QJsonValue& value) {
  const std::optional<int> count = count_of(value);
  return count && *count > 0 ? count : std::nullopt;
}

std::optional<int> percent_of(const QJsonValue& value) {
  const std::optional<int> percent = count_of(value);
  return percent && *percent <= 100 ? percent : std::nullopt;
}

std::optional<std::vector<int>> numbers_of(const QJsonValue& value) {
  const QJsonArray json = value.toArray();
  std::vector<int> numbers;
  for (const QJsonValue number : json) {
    const std::optional<int> read = positive_of(number);
    if (!read) return std::nullopt;
    numbers.push_back(*read);
  }
  return numbers.empty() ? std::nullopt : std::optional(std::move(numbers));
}

std::optional<QStringList> texts_of(const QJsonValue& value) {
  QStringList texts;
  for (const QJsonValue entry : value.toArray()) {
    const std::optional<QString> text = text_of(entry);
    if (!text) return std::nullopt;
    texts += *text;
  }
  return texts.isEmpty() ? std::nullopt : std::optional(texts);
}

std::optional<Kind> kind_in(const QJsonValue& value) { return kind_of(value.toString()); }

std::optional<EntryId> id_in(const QJsonValue& value) { return entry_id(value.toString()); }

void read_event(Reading& reading, Event& event) {
  event.kind = reading.required(kEvent, kind_in).value_or(Kind::Moved);
  event.at = reading.required(kAt, instant_of).value_or(QDateTime());
  for (const Text& text : kTexts) event.*text.text = reading.taken(text.key, text_of).value_or(QString());
  event.containers = reading.taken(kContainers, numbers_of).value_or(std::vector<int>());
  event.quantity = reading.taken(kQuantity, quantity_of);
  event.left_percent = reading.taken(kLeft, percent_of);
  event.count = reading.taken(kCount, positive_of).value_or(0);
  event.temperature = reading.taken(kTemperature, temperature_of);
  event.seconds = reading.taken(kHeld, positive_of).value_or(0);
  event.limits = {reading.taken(kAtLeast, limit_of), reading.taken(kAtMost, limit_of)};
  event.stated = reading.taken(kStated, stated_of);
  event.ends = reading.taken(kEnds, stated_of);
  event.tcs = reading.taken(kTcs, false_of).value_or(true);
  event.accepted = reading.taken(kAccepted, false_of).value_or(true);
  event.in_order = reading.taken(kInOrder, false_of).value_or(true);
  event.of = reading.taken(kOf, id_in).value_or(EntryId());
  event.day = reading.taken(kDay, day_of);
  event.checked = reading.taken(kChecked, day_of);
  event.adds = reading.taken(kAdds, texts_of).value_or(QStringList());
}

problem::Error told(const EntryId& id, problem::Error error) {
  error.what = QStringLiteral("entry %1: %2").arg(id.text(), error.what);
  error.hint = QStringLiteral("it was written by another version of the program, or changed since: verify the ledger");
  return error;
}

const QSet<QString>& keys() {
  static const QSet<QString> all = [] {
    QSet<QString> known;
    for (const Text& text : kTexts) known.insert(text.key);
    for (const QLatin1String key : {kRecorded, kZone,        kEvent, kAt,      kContainers, kQuantity, kLeft,
                                    kCount,    kTemperature, kHeld,  kStated,  kTcs,        kAccepted, kOf,
                                    kDay,      kAdds,        kEnds,  kInOrder, kAtLeast,    kAtMost,   kChecked})
      known.insert(key);
    return known;
  }();
  return all;
}

problem::Expected<QJsonObject> object_of(const EntryId& id, const QByteArray& body) {
  QJsonParseError fault;
  const QJsonDocument document = QJsonDocument::fromJson(body, &fault);
  if (document.isObject()) return document.object();
  return tl::unexpected(told(id, {Code::Syntax, QStringLiteral("its body is not a JSON object"), {}, QString()}));
}

// `facts` reads what stands under "facts".
template <class Facts>
problem::Expected<Entry> read(const EntryId& id, const QByteArray& body, Facts facts) {
  const problem::Expected<QJsonObject> json = object_of(id, body);
  if (!json) return tl::unexpected(json.error());
  Reading reading(*json);
  Entry entry{id,
              reading.required(kRecorded, instant_of).value_or(QDateTime()),
              reading.required(kZone, text_of).value_or(QString()),
              {}};
  read_event(reading, entry.event);
  facts(reading, entry.event);
  reading.finish(keys(), entry.event.kind == Kind::Made);
  if (reading.fault()) return tl::unexpected(told(id, *reading.fault()));
  return entry;
}

}  // namespace

QByteArray body(const Entry& entry) {
  const Event& event = entry.event;
  reader::JsonText text;
  Writing out(text);
  text.begin_object();
  out.text(kEvent, word(event.kind));
  out.instant(kAt, event.at);
  for (const Text& one : kTexts) out.text(one.key, event.*one.text);
  write_figures(event, out);
  write_references(event, out);
  if (event.made) {
    text.key(kFacts);
    batch::write_json(text, *event.made);
  }
  out.instant(kRecorded, entry.recorded_at);
  out.text(kZone, entry.zone);
  text.end_object();
  return text.bytes();
}

problem::Expected<Entry> entry_of(const EntryId& id, const QByteArray& body) {
  return read(id, body, [](Reading& reading, Event& event) {
    const bool made = event.kind == Kind::Made;
    const auto facts_of = [&](const QJsonValue& value) -> std::optional<batch::Fixed> {
      problem::Expected<batch::Fixed> fixed = batch::fixed_from_json(value.toObject());
      if (fixed) return std::move(*fixed);
      reading.refuse(fixed.error().code, fixed.error().what);
      return std::nullopt;
    };
    if (made) event.made = reading.required(kFacts, facts_of);
  });
}

problem::Expected<Entry> brief_entry_of(const EntryId& id, const QByteArray& body) {
  const std::optional<QByteArray> rest = without_facts(body);
  return read(id, rest ? *rest : body, [&](Reading& reading, Event& event) {
    if (rest.has_value() == (event.kind == Kind::Made)) return;
    reading.refuse(rest ? Code::Unknown : Code::Missing, rest ? QStringLiteral("\"facts\" is not a key of an entry")
                                                              : QStringLiteral("\"facts\" is missing"));
  });
}

}  // namespace lardiner::history
