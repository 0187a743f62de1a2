// What a row's values must say together: temperatures of what needs control, one lot or place, one thing corrected.
#include "history/read_events_checks.h"

#include <algorithm>

#include "batch/compute_lookup.h"
#include "history/read_events_values.h"
#include "reader/quote.h"

namespace lardiner::history {

using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

constexpr QLatin1String kAmbient("ambient"), kChilled("chilled");

// Unknown counts as yes.
bool tcs(const Event& event, const book::Book& book) {
  const QString item = event.item.isEmpty() ? item_of_lot(event.lot, book) : event.item;
  if (!book.ingredient(item) && !book.product(item)) return true;
  return batch::is_tcs(book, item);
}

void require_temperature(Fields& fields, const QString& of_what) {
  if (fields.has(u"temperature")) return;
  fields.refuse(
      u"temperature", Code::Missing, QStringLiteral("%1 has no temperature").arg(fields.noun()),
      QStringLiteral("%1 needs time and temperature control, or may: write what the thermometer showed, as 41 °F")
          .arg(of_what));
}

QString shown_item(const Event& event) {
  return event.item.isEmpty() ? (event.lot.isEmpty() ? QStringLiteral("what is on the note") : quoted(event.lot))
                              : quoted(event.item);
}

void require_reason(Fields& fields, const Event& event) {
  if (event.accepted || fields.has(u"reason")) return;
  fields.refuse(u"reason", Code::Missing, QStringLiteral("%1 does not say why it was not accepted").arg(fields.noun()),
                QStringLiteral("write the reason"));
}

bool keeps_ambient(const book::Ingredient& ingredient) {
  return std::any_of(ingredient.shelf_lives.begin(), ingredient.shelf_lives.end(),
                     [](const book::ShelfLife& life) { return life.state == book::State::Ambient; });
}

// How old the declaration is under which it came stays with the receipt.
void fix_checked(Event& event, const book::Ingredient* ingredient) {
  const book::SupplierItem* item = ingredient ? ingredient->supplier_item(event.supplier_item) : nullptr;
  if (item && item->checked.isValid()) event.checked = item->checked;
}

void check_received(Fields& fields, Event& event, const book::Book& book) {
  require_reason(fields, event);
  const book::Ingredient* ingredient = book.ingredient(event.item);
  fix_checked(event, ingredient);
  event.tcs = tcs(event, book);
  if (event.state.isEmpty()) event.state = event.tcs ? kChilled : kAmbient;
  if (!ingredient || !event.tcs) return;
  if (event.state != kAmbient) return require_temperature(fields, shown_item(event));
  if (!event.accepted || keeps_ambient(*ingredient)) return;
  fields.refuse(
      u"state", Code::Unsafe,
      QStringLiteral("%1 came ambient, but it needs time and temperature control, or may").arg(quoted(event.item)),
      QStringLiteral("do not accept it, or state an ambient shelf life in the book"));
}

void check_arrived(Fields& fields, const Event& event, const book::Book& book) {
  require_reason(fields, event);
  if (!fields.has(u"lot") && !fields.has(u"note"))
    fields.refuse(u"lot", Code::Missing, QStringLiteral("%1 has neither lot nor note").arg(fields.noun()),
                  QStringLiteral("write the lot, or the number of the dispatch note for all that is on it"));
  if (!fields.has(u"lot") && fields.has(u"containers"))
    fields.refuse(u"containers", Code::Conflict, QStringLiteral("%1 has containers of no lot").arg(fields.noun()),
                  QStringLiteral("write the lot, or leave the containers out"));
  if (tcs(event, book)) require_temperature(fields, shown_item(event));
}

// A lot, or a place with all that stands in it.
void check_lot_or_place(Fields& fields, bool both_may_lack) {
  const bool lot = fields.has(u"lot");
  const bool place = fields.has(u"place");
  if (lot && place)
    fields.refuse(u"place", Code::Conflict, QStringLiteral("%1 has a lot and a place").arg(fields.noun()),
                  QStringLiteral("keep one of the two: a place stands for all that is in it"));
  if (!lot && !place && !both_may_lack)
    fields.refuse(u"lot", Code::Missing, QStringLiteral("%1 has neither lot nor place").arg(fields.noun()),
                  QStringLiteral("write the lot, or the place for all that stands in it"));
}

void check_split(Fields& fields, const Event& event) {
  if (event.containers.size() > 1)
    fields.refuse(u"containers", Code::Conflict, QStringLiteral("%1 has several containers").arg(fields.noun()),
                  QStringLiteral("write an event for each that was divided"));
}

// The three things that a correction can be of.
void check_correction(Fields& fields, const Event& event) {
  const bool entry = fields.has(u"of");
  const bool date = fields.has(u"use_by") || fields.has(u"best_before");
  const bool allergens = fields.has(u"adds");
  if (entry + date + allergens != 1) {
    fields.refuse(
        u"event", entry + date + allergens == 0 ? Code::Missing : Code::Conflict,
        QStringLiteral("%1 must correct one thing").arg(fields.noun()),
        QStringLiteral("write of (an entry), or lot and use_by (an earlier date), or item, supplier_item and adds"));
    return;
  }
  if (date && !fields.has(u"lot"))
    batch::require(fields, u"lot", QStringLiteral("write the lot as it stands on the label"));
  if (allergens) {
    batch::require(fields, u"item", QStringLiteral("write the id of the ingredient"));
    batch::require(fields, u"supplier_item", QStringLiteral("write the id of the supplier item"));
  } else if (!event.supplier_item.isEmpty()) {
    fields.refuse(u"supplier_item", Code::Conflict,
                  QStringLiteral("%1 has a supplier item, and adds nothing to it").arg(fields.noun()),
                  QStringLiteral("write adds, or leave it out"));
  }
}

void check_recall(Fields& fields, Event& event, const book::Book& book) {
  if (!fields.has(u"item") && !fields.has(u"supplier_item"))
    fields.refuse(u"item", Code::Missing, QStringLiteral("%1 has neither item nor supplier_item").arg(fields.noun()),
                  QStringLiteral("write which item the lot is of: two suppliers may use the same lot"));
  if (!event.item.isEmpty() || event.supplier_item.isEmpty()) return;
  for (const book::Ingredient& ingredient : book.ingredients)
    if (ingredient.supplier_item(event.supplier_item)) event.item = ingredient.id;
}

// What the place is held to now stays with the reading, whatever the book says later.
void fix_limits(Event& event, const book::Book& book) {
  if (const book::StoragePlace* place = book.storage_place(event.place)) event.limits = held_to(*place, book.rules);
}

void check_remark(Fields& fields, const Event& event) {
  if (event.in_order || fields.has(u"note")) return;
  fields.refuse(u"note", Code::Missing, QStringLiteral("%1 does not say what is not in order").arg(fields.noun()),
                QStringLiteral("write it as its note"));
}

}  // namespace

void check(Fields& fields, Event& event, const batch::Reading& reading) {
  switch (event.kind) {
    case Kind::Received:
      return check_received(fields, event, reading.book);
    case Kind::Arrived:
      return check_arrived(fields, event, reading.book);
    case Kind::Dispatched:
      if (tcs(event, reading.book)) require_temperature(fields, shown_item(event));
      return;
    case Kind::Split:
      return check_split(fields, event);
    case Kind::Hold:
      return check_lot_or_place(fields, false);
    case Kind::CorrectiveAction:
      return check_lot_or_place(fields, true);
    case Kind::Correction:
      return check_correction(fields, event);
    case Kind::PlaceTemperature:
      return fix_limits(event, reading.book);
    case Kind::Check:
      return check_remark(fields, event);
    case Kind::RecallOpened:
      return check_recall(fields, event, reading.book);
    default:
      return;
  }
}

}  // namespace lardiner::history
