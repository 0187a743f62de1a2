// Events from CSV or JSON Lines rows: every fault told at once, each at its cell.
#include "history/read_events.h"

#include "batch/read_records_parts.h"
#include "batch/read_records_walk.h"
#include "history/read_events_checks.h"
#include "history/read_events_values.h"
#include "history/read_events_wanted.h"
#include "reader/quote.h"

namespace lardiner::history {

using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

constexpr int kMostCount = 9999;

const QStringList& states() {
  static const QStringList all{QStringLiteral("ambient"), QStringLiteral("chilled"), QStringLiteral("frozen")};
  return all;
}

const QStringList& readings() {
  static const QStringList all{QStringLiteral("hot-held"), QStringLiteral("cold-held"), QStringLiteral("served")};
  return all;
}

struct Named {
  QLatin1String key;
  const char* hint;  ///< what to write where it is missing
};

Named named(Key key) {
  switch (key) {
    case Key::Lot:
      return {QLatin1String("lot"), "write the lot as it stands on the label"};
    case Key::Item:
      return {QLatin1String("item"), "write the id of an ingredient or a product"};
    case Key::SupplierItem:
      return {QLatin1String("supplier_item"), "write the id of the supplier item"};
    case Key::Containers:
      return {QLatin1String("containers"), "write which container, as 3"};
    case Key::Quantity:
      return {QLatin1String("quantity"), "write an amount with its unit, as 12 kg"};
    case Key::Left:
      return {QLatin1String("left"), "write full, half, quarter, none, or a percentage, as 75 %"};
    case Key::Count:
      return {QLatin1String("count"), "write how many, from 1 to 9999"};
    case Key::ContainerKind:
      return {QLatin1String("kind"), "write what they are, as tub"};
    case Key::Temperature:
      return {QLatin1String("temperature"), "write what the thermometer showed, as 41 °F"};
    case Key::Held:
      return {QLatin1String("held"), "write how long it was held, as 15 s"};
    case Key::Ends:
      return {QLatin1String("use_by"), "write the last good day, as 2026-02-28"};
    case Key::State:
      return {QLatin1String("state"), "write ambient, chilled or frozen"};
    case Key::Place:
      return {QLatin1String("place"), "write the place as the kitchen names it, as walk-in 1"};
    case Key::From:
      return {QLatin1String("from"), "write the supplier as the kitchen names it"};
    case Key::Site:
      return {QLatin1String("site"), "write the id of a site of the book"};
    case Key::Order:
      return {QLatin1String("order"), "write the order as the kitchen names it"};
    case Key::Note:
      return {QLatin1String("note"), "write the number of the note"};
    case Key::Accepted:
      return {QLatin1String("accepted"), "write yes or no"};
    case Key::Reason:
      return {QLatin1String("reason"), "write why"};
    case Key::Of:
      return {QLatin1String("of"), "write which entry, as its history shows it: A-123"};
    case Key::Day:
      return {QLatin1String("day"), "write which day was reviewed, as 2026-02-28"};
    case Key::Adds:
      return {QLatin1String("adds"), "write the allergens that it declares besides, as sesame"};
    case Key::Action:
      return {QLatin1String("action"), "write what was done"};
    case Key::What:
      return {QLatin1String("what"), "write hot-held, cold-held or served"};
    case Key::Checked:
      return {QLatin1String("what"), "write what was checked, as sanitizer strength"};
    case Key::InOrder:
      return {QLatin1String("in_order"), "write yes or no"};
  }
  return {QLatin1String(), ""};
}

// One row.
class Row {
 public:
  Row(const reader::Value& row, const QString& word, const batch::Reading& reading, problem::Errors& errors)
      : reading_(reading),
        book_(reading.book),
        errors_(errors),
        before_(errors.size()),
        fields_(row, QStringLiteral("the event ") + quoted(word), errors) {}

  std::optional<Event> read(Kind kind) {
    event_.kind = kind;
    event_.source = batch::place_of(fields_, u"event");
    event_.at = batch::read_required_instant(fields_, u"at", reading_).value_or(QDateTime());
    batch::require(fields_, u"by", QStringLiteral("write the initials of who did it"));
    event_.by = batch::read_person(fields_, u"by", reading_);
    for (const Wanted& one : wanted(kind)) take(one);
    check(fields_, event_, reading_);
    fields_.finish();
    return errors_.size() == before_ ? std::optional(std::move(event_)) : std::nullopt;
  }

 private:
  void take(const Wanted& one) {
    const Named name = named(one.key);
    const QString key = name.key;
    if (one.required) batch::require(fields_, key, QString::fromUtf8(name.hint));
    if (!take_text(one.key, key)) take_figure(one.key, key);
  }

  // Before it is known whether the book has it.
  QString item_written() const {
    const reader::Value* item = fields_.source().find(u"item");
    return item ? item->text : QString();
  }

  bool take_text(Key which, const QString& key) {
    switch (which) {
      case Key::Lot:
        // A receipt of what is made here is refused for that, whatever its lot.
        event_.lot = read_lot(fields_, event_.kind == Kind::Received ? QString() : item_written(), book_);
        return true;
      case Key::Item:
        event_.item = read_item(fields_, event_.kind == Kind::Received, book_);
        return true;
      case Key::SupplierItem:
        event_.supplier_item = read_supplier_item(fields_, event_.item, book_);
        return true;
      case Key::Site:
        event_.site = read_site(fields_, book_);
        return true;
      case Key::Place:
        event_.place = read_place(fields_, book_);
        return true;
      case Key::From:
        event_.from = read_name(fields_, key);
        return true;
      case Key::Order:
        event_.order = read_name(fields_, key);
        return true;
      case Key::Note:
        event_.note = read_sentence(fields_, key);
        return true;
      case Key::Reason:
        event_.reason = read_sentence(fields_, key);
        return true;
      case Key::Action:
        event_.action = read_sentence(fields_, key);
        return true;
      case Key::What:
        event_.what = batch::read_word(fields_, key, readings()).value_or(QString());
        return true;
      case Key::Checked:
        event_.what = read_name(fields_, key);
        return true;
      case Key::State:
        event_.state = batch::read_word(fields_, key, states()).value_or(QString());
        return true;
      case Key::ContainerKind:
        event_.container_kind = batch::read_word(fields_, key, batch::container_kinds()).value_or(QString());
        return true;
      default:
        return false;
    }
  }

  void take_figure(Key which, const QString& key) {
    switch (which) {
      case Key::Containers:
        event_.containers = batch::read_numbers(fields_, key);
        return;
      case Key::Quantity:
        event_.quantity = batch::read_amount(fields_, key, reading_);
        return;
      case Key::Left:
        event_.left_percent = read_left(fields_);
        return;
      case Key::Count:
        event_.count = fields_.integer(key, 1, kMostCount).value_or(0);
        return;
      case Key::Temperature:
        event_.temperature = batch::read_core(fields_, key);
        return;
      case Key::Held:
        event_.seconds = batch::read_held(fields_, key).value_or(0);
        return;
      case Key::Ends:
        (event_.kind == Kind::Received ? event_.stated : event_.ends) = batch::read_stated_end(fields_, reading_);
        return;
      case Key::Accepted:
        event_.accepted = fields_.boolean(key).value_or(true);
        return;
      case Key::InOrder:
        event_.in_order = fields_.boolean(key).value_or(true);
        return;
      case Key::Of:
        event_.of = read_entry(fields_);
        return;
      case Key::Day:
        event_.day = read_day(fields_, reading_);
        return;
      case Key::Adds:
        event_.adds = read_adds(fields_, book_);
        return;
      default:
        return;
    }
  }

  const batch::Reading& reading_;
  const book::Book& book_;
  problem::Errors& errors_;
  size_t before_;
  Fields fields_;
  Event event_;
};

// What kind of event the row is of; what the program writes itself is no row.
std::optional<Kind> read_kind(const reader::Value& row, QString& word, problem::Errors& errors) {
  Fields fields(row, QStringLiteral("the row"), errors);
  word = fields.text(u"event").value_or(QString());
  if (word.isEmpty()) return std::nullopt;
  const std::optional<Kind> kind = kind_of(word);
  if (kind && !wanted(*kind).empty()) return kind;
  if (kind)
    fields.refuse(u"event", Code::Conflict, QStringLiteral("%1 is no row of an event").arg(quoted(word)),
                  hint_of_unwritten(*kind));
  else
    fields.refuse(u"event", Code::Unknown, QStringLiteral("%1 is no event").arg(quoted(word)),
                  batch::did_you_mean(word, written_words(),
                                      QStringLiteral("write one of ") + written_words().join(QStringLiteral(", "))));
  return std::nullopt;
}

}  // namespace

bool is_event(const reader::Value& row) { return row.find(u"event") != nullptr; }

Events read_events(const std::vector<reader::Value>& rows, const book::Book& book, const ReadSettings& settings) {
  Events out;
  const batch::RecordSettings record_settings{settings.now, settings.decimal_comma};
  const batch::Reading reading{book, record_settings};
  for (const reader::Value& row : rows) {
    QString word;
    const std::optional<Kind> kind = read_kind(row, word, out.errors);
    if (!kind) continue;
    if (std::optional<Event> event = Row(row, word, reading, out.errors).read(*kind))
      out.events.push_back(std::move(*event));
  }
  problem::sort(out.errors);
  return out;
}

}  // namespace lardiner::history
