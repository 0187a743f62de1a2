// The parts of a batch record: inputs, readings and events.
#include "batch/read_records_parts.h"

#include <QRegularExpression>
#include <algorithm>

#include "batch/clock.h"
#include "batch/phrases.h"
#include "batch/read_records_walk.h"
#include "gs1/iso7064.h"
#include "reader/quote.h"

namespace lardiner::batch {

using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

QStringList formula_items(const book::Product& product) {
  QStringList items;
  for (const book::FormulaLine& line : product.formula) items += line.item;
  return items;
}

void read_item(Fields& fields, const Reading& reading, Input& input) {
  require(fields, u"item", QStringLiteral("write the id of an ingredient or a product"));
  input.item = fields.text(u"item").value_or(QString());
  if (input.item.isEmpty() || reading.book.ingredient(input.item) || reading.book.product(input.item)) return;
  fields.refuse(u"item", Code::Unknown, QStringLiteral("%1 is not in the book").arg(quoted(input.item)),
                did_you_mean(input.item, reading.book.item_ids(),
                             QStringLiteral("write the id of an ingredient or a product of the book")));
}

void read_supplier_item(Fields& fields, const Reading& reading, Input& input) {
  input.supplier_item = fields.text(u"supplier_item").value_or(QString());
  const book::Ingredient* ingredient = reading.book.ingredient(input.item);
  if (input.supplier_item.isEmpty() || (!ingredient && !reading.book.product(input.item))) return;
  if (ingredient && ingredient->supplier_item(input.supplier_item)) return;
  QStringList known;
  if (ingredient)
    for (const book::SupplierItem& item : ingredient->supplier_items) known += item.id;
  fields.refuse(u"supplier_item", Code::Unknown,
                QStringLiteral("%1 is not a supplier item of %2").arg(quoted(input.supplier_item), quoted(input.item)),
                did_you_mean(input.supplier_item, known,
                             known.isEmpty() ? QStringLiteral("leave it out")
                                             : QStringLiteral("write one of ") + known.join(QStringLiteral(", "))));
}

// Our own lots end in a check character; a supplier's may be anything.
void read_lot(Fields& fields, const Reading& reading, Input& input) {
  input.lot = fields.text(u"lot").value_or(QString());
  if (input.lot.isEmpty() || !reading.book.product(input.item)) return;
  if (gs1::check_characters_hold(gs1::CheckSystem::Mod37_36, input.lot)) return;
  const QString upper = input.lot.toUpper();
  const bool small = upper != input.lot && gs1::check_characters_hold(gs1::CheckSystem::Mod37_36, upper);
  fields.refuse(u"lot", Code::Malformed,
                small ? QStringLiteral("lot %1 has small letters").arg(quoted(input.lot))
                      : QStringLiteral("the check character of lot %1 does not hold").arg(quoted(input.lot)),
                small ? QStringLiteral("write %1").arg(upper)
                      : QStringLiteral("copy it once more from the label of %1").arg(quoted(input.item)));
}

void read_replaced(Fields& fields, const Reading& reading, const book::Product* product, Input& input) {
  input.instead_of = fields.text(u"instead_of").value_or(QString());
  input.agreed_by = read_person(fields, u"agreed_by", reading);
  if (input.instead_of.isEmpty() || !product) return;
  const QStringList items = formula_items(*product);
  if (!items.contains(input.instead_of)) {
    fields.refuse(u"instead_of", Code::Unknown,
                  QStringLiteral("%1 is not in the formula of %2").arg(quoted(input.instead_of), quoted(product->id)),
                  did_you_mean(input.instead_of, items,
                               QStringLiteral("name the line that it replaces, or leave instead_of out")));
  } else if (input.instead_of == input.item) {
    fields.refuse(u"instead_of", Code::Conflict, QStringLiteral("%1 replaces itself").arg(quoted(input.item)),
                  QStringLiteral("leave instead_of out"));
  }
}

std::optional<QDateTime> read_before_use(Fields& fields, QStringView key, const Reading& reading,
                                         const QDateTime& used) {
  const std::optional<Moment> moment = read_moment(fields, key, reading);
  if (!moment) return std::nullopt;
  if (moment->at > used)
    fields.refuse(key, Code::Conflict,
                  QStringLiteral("%1 on %2, after it was used").arg(key, instant_text(moment->at, reading.zone())),
                  QStringLiteral("correct the time of one of the two"));
  return moment->at;
}

void read_states(Fields& fields, const Reading& reading, const Record& record, Input& input) {
  const QDateTime used = latest_use(record, reading.zone());
  input.opened_at = read_before_use(fields, u"opened", reading, used);
  input.frozen_at = read_before_use(fields, u"frozen", reading, used);
  input.thawed_at = read_before_use(fields, u"thawed", reading, used);
  if (input.frozen_at && input.thawed_at && *input.thawed_at < *input.frozen_at)
    fields.refuse(
        u"thawed", Code::Conflict,
        QStringLiteral("thawed on %1, before it was frozen on %2")
            .arg(instant_text(*input.thawed_at, reading.zone()), instant_text(*input.frozen_at, reading.zone())),
        QStringLiteral("correct the time of one of the two"));
}

// A reading taken before the food was there is a slip.
void check_after_start(Fields& fields, const std::optional<QDateTime>& at, const Record& record,
                       const Reading& reading) {
  if (!at || !record.made_at.isValid() || *at >= record.made_at) return;
  fields.refuse(
      u"at", Code::Conflict,
      QStringLiteral("%1 at %2, before the making began at %3")
          .arg(fields.noun(), instant_text(*at, reading.zone()), instant_text(record.made_at, reading.zone())),
      QStringLiteral("correct the time of one of the two"));
}

const std::vector<std::pair<QString, Happening>>& happenings() {
  static const std::vector<std::pair<QString, Happening>> all{{QStringLiteral("frozen"), Happening::Frozen},
                                                              {QStringLiteral("thawed"), Happening::Thawed},
                                                              {QStringLiteral("opened"), Happening::Opened},
                                                              {QStringLiteral("hot-held"), Happening::HotHeld},
                                                              {QStringLiteral("time-control"), Happening::TimeControl},
                                                              {QStringLiteral("finished"), Happening::Finished},
                                                              {QStringLiteral("packed"), Happening::Packed},
                                                              {QStringLiteral("reheated"), Happening::Reheated},
                                                              {QStringLiteral("discarded"), Happening::Discarded}};
  return all;
}

std::optional<Happening> read_happening(Fields& fields) {
  QStringList words;
  for (const auto& [word, happening] : happenings()) words += word;
  require(fields, u"what", QStringLiteral("write one of ") + words.join(QStringLiteral(", ")));
  const std::optional<QString> word = read_word(fields, u"what", words);
  if (!word) return std::nullopt;
  return happenings()[static_cast<size_t>(words.indexOf(*word))].second;
}

}  // namespace

std::vector<int> read_numbers(Fields& fields, QStringView key) {
  const std::optional<QString> text = fields.text(key);
  if (!text) return {};
  static const QRegularExpression range(QStringLiteral(R"(\A([0-9]{1,4})(?:-([0-9]{1,4}))?\z)"));
  std::vector<int> numbers;
  for (const QString& part : text->split(u',')) {
    const QRegularExpressionMatch match = range.match(part.trimmed());
    const int first = match.captured(1).toInt();
    const int last = match.captured(2).isEmpty() ? first : match.captured(2).toInt();
    if (!match.hasMatch() || first < 1 || last < first) {
      fields.refuse(key, Code::Malformed, QStringLiteral("%1 are not numbers of containers").arg(quoted(*text)),
                    QStringLiteral("write them as 3, or 1-4, or 1-4, 9"));
      return {};
    }
    for (int number = first; number <= last; ++number) numbers.push_back(number);
  }
  std::sort(numbers.begin(), numbers.end());
  numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
  return numbers;
}

QDateTime latest_use(const Record& record, const QTimeZone& zone) {
  if (record.made_to) return *record.made_to;
  return record.time_known ? record.made_at : end_of(local_day(record.made_at, zone), zone).addSecs(-1);
}

std::optional<Input> read_input(const WrittenPart& part, const Reading& reading, const Record& record,
                                const book::Product* product) {
  PartWalk walk(part, QStringLiteral("the input"));
  Input input;
  read_item(walk.fields, reading, input);
  input.place = place_of(walk.fields, u"item");
  read_supplier_item(walk.fields, reading, input);
  read_lot(walk.fields, reading, input);
  input.quantity = read_amount(walk.fields, u"quantity", reading);
  input.stated = read_stated_end(walk.fields, reading);
  read_states(walk.fields, reading, record, input);
  read_replaced(walk.fields, reading, product, input);
  return walk.finish() ? std::optional(input) : std::nullopt;
}

std::optional<CookReading> read_cook_reading(const WrittenPart& part, const Reading& reading, const Record& record) {
  PartWalk walk(part, QStringLiteral("the cook reading"));
  const std::optional<QDateTime> at = read_required_instant(walk.fields, u"at", reading);
  check_after_start(walk.fields, at, record, reading);
  require(walk.fields, u"core", QStringLiteral("write the core temperature, as 165 °F"));
  const std::optional<measure::Temperature> core = read_core(walk.fields, u"core");
  CookReading cooked;
  cooked.seconds = read_held(walk.fields, u"held").value_or(0);
  cooked.microwave = walk.fields.boolean(u"microwave").value_or(false);
  cooked.stood_seconds = read_held(walk.fields, u"stood").value_or(0);
  cooked.place = place_of(walk.fields, u"core");
  if (!walk.finish() || !at || !core) return std::nullopt;
  cooked.at = *at;
  cooked.core = *core;
  return cooked;
}

std::optional<CoolReading> read_cool_reading(const WrittenPart& part, const Reading& reading, const Record& record) {
  PartWalk walk(part, QStringLiteral("the cooling reading"));
  const std::optional<QDateTime> at = read_required_instant(walk.fields, u"at", reading);
  check_after_start(walk.fields, at, record, reading);
  require(walk.fields, u"core", QStringLiteral("write the core temperature, as 70 °F"));
  const std::optional<measure::Temperature> core = read_core(walk.fields, u"core");
  const problem::Place place = place_of(walk.fields, u"core");
  if (!walk.finish() || !at || !core) return std::nullopt;
  return CoolReading{*at, *core, place};
}

std::optional<Event> read_event(const WrittenPart& part, const Reading& reading) {
  PartWalk walk(part, QStringLiteral("the event"));
  const std::optional<Happening> what = read_happening(walk.fields);
  const std::optional<QDateTime> at = read_required_instant(walk.fields, u"at", reading);
  Event event;
  event.temperature = read_core(walk.fields, u"temperature");
  if (what && (*what == Happening::TimeControl || *what == Happening::Reheated))
    require(walk.fields, u"temperature", QStringLiteral("write the core temperature, as 41 °F"));
  event.seconds = read_held(walk.fields, u"held").value_or(0);
  event.containers = read_numbers(walk.fields, u"containers");
  event.by = read_person(walk.fields, u"by", reading);
  event.place = place_of(walk.fields, u"what");
  if (!walk.finish() || !what || !at) return std::nullopt;
  event.what = *what;
  event.at = *at;
  return event;
}

}  // namespace lardiner::batch
