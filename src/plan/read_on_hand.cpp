// Lots on hand from CSV or JSON Lines rows: every fault told at once, each at its cell.
#include <algorithm>
#include <utility>

#include "batch/compute_lookup.h"
#include "gs1/iso7064.h"
#include "plan/read_order_values.h"
#include "reader/quote.h"

namespace lardiner::plan {

using book::State;
using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

// The states in which food stands in a store; what is held hot, on time control or finished is served, not put away.
const std::vector<std::pair<QString, State>>& states() {
  static const std::vector<std::pair<QString, State>> all{{QStringLiteral("chilled"), State::Chilled},
                                                          {QStringLiteral("frozen"), State::Frozen},
                                                          {QStringLiteral("thawed"), State::Thawed},
                                                          {QStringLiteral("ambient"), State::Ambient},
                                                          {QStringLiteral("opened"), State::Opened}};
  return all;
}

QString read_ingredient_id(Fields& fields, const Reading& reading) {
  const QString id = fields.text(u"ingredient").value_or(QString());
  if (id.isEmpty() || reading.book.ingredient(id)) return id;
  QStringList known;
  for (const book::Ingredient& ingredient : reading.book.ingredients) known += ingredient.id;
  fields.refuse(u"ingredient", Code::Unknown, QStringLiteral("%1 is not an ingredient of the book").arg(quoted(id)),
                reading.book.product(id)
                    ? QStringLiteral("it is a product: name it as one")
                    : batch::did_you_mean(id, known, QStringLiteral("write the id of an ingredient of the book")));
  return {};
}

// `product` takes an ingredient's id too, so that a list of all that stands there needs one column.
QString read_item(Fields& fields, const Reading& reading) {
  if (fields.has(u"product") && fields.has(u"ingredient")) {
    fields.refuse(u"ingredient", Code::Conflict, QStringLiteral("the lot has a product and an ingredient"),
                  QStringLiteral("keep one of the two"));
    return {};
  }
  if (fields.has(u"ingredient")) return read_ingredient_id(fields, reading);
  batch::require(fields, u"product", QStringLiteral("write the id of a product or an ingredient of the book"));
  const QString id = fields.text(u"product").value_or(QString());
  if (id.isEmpty() || reading.book.product(id) || reading.book.ingredient(id)) return id;
  fields.refuse(u"product", Code::Unknown, QStringLiteral("%1 is not in the book").arg(quoted(id)),
                batch::did_you_mean(id, reading.book.item_ids(),
                                    QStringLiteral("write the id of a product or an ingredient of the book")));
  return {};
}

// Our own lots end in a check character; a supplier's may be anything.
QString read_lot(Fields& fields, const QString& item, const Reading& reading) {
  const QString lot = read_text(fields, u"lot");
  if (lot.isEmpty() || !reading.book.product(item)) return lot;
  if (gs1::check_characters_hold(gs1::CheckSystem::Mod37_36, lot)) return lot;
  fields.refuse(u"lot", Code::Malformed, QStringLiteral("the check character of lot %1 does not hold").arg(quoted(lot)),
                QStringLiteral("copy it once more from the label of %1").arg(quoted(item)));
  return {};
}

State read_state(Fields& fields, const QString& item, const Reading& reading) {
  QStringList words;
  for (const auto& [word, state] : states()) words += word;
  if (const std::optional<QString> word = batch::read_word(fields, u"state", words))
    return states()[static_cast<size_t>(words.indexOf(*word))].second;
  return batch::is_tcs(reading.book, item) ? State::Chilled : State::Ambient;
}

bool ambient_life_stated(const book::Book& book, const QString& item) {
  const book::Product* product = book.product(item);
  const book::Ingredient* ingredient = book.ingredient(item);
  if (!product && !ingredient) return true;  // refused already
  const std::vector<book::ShelfLife>& lives = product ? product->shelf_lives : ingredient->shelf_lives;
  return std::any_of(lives.begin(), lives.end(), [](const book::ShelfLife& l) { return l.state == State::Ambient; });
}

// Out of the cold stands only what needs none, or what the book lets stand so.
void check_ambient(Fields& fields, const OnHand& lot, const book::Book& book) {
  if (lot.state != State::Ambient || !batch::is_tcs(book, lot.item) || ambient_life_stated(book, lot.item)) return;
  fields.refuse(
      u"state", Code::Unsafe,
      QStringLiteral("%1 stands ambient, but it needs time and temperature control, or may").arg(quoted(lot.item)),
      QStringLiteral("state how it is kept, or state an ambient shelf life in the book"));
}

void check_prepared(Fields& fields, const OnHand& lot) {
  if (!lot.prepared || !lot.use_by || lot.use_by->end > *lot.prepared) return;
  fields.refuse(u"prepared", Code::Conflict, QStringLiteral("prepared after its end of keeping"),
                QStringLiteral("correct the day of one of the two"));
}

std::optional<OnHand> read_lot_row(const reader::Value& row, const Reading& reading, problem::Errors& errors) {
  const size_t before = errors.size();
  Fields fields(row, QStringLiteral("the lot"), errors);
  const batch::Reading records = reading.of_records();
  OnHand lot;
  lot.item = read_item(fields, reading);
  lot.lot = read_lot(fields, lot.item, reading);
  lot.container = read_text(fields, u"container");
  lot.quantity = read_quantity_of(fields, lot.item, reading).value_or(measure::Quantity{});
  lot.state = read_state(fields, lot.item, reading);
  check_ambient(fields, lot, reading.book);
  if (const std::optional<batch::Moment> prepared = batch::read_moment(fields, u"prepared", records))
    lot.prepared = prepared->at;
  lot.use_by = batch::read_stated_end(fields, records);
  check_prepared(fields, lot);
  lot.where = read_text(fields, u"place");
  fields.finish();
  if (errors.size() != before) return std::nullopt;
  const reader::Value* named = fields.value(u"product");
  lot.place = (named ? named : fields.value(u"ingredient"))->place;
  return lot;
}

}  // namespace

OnHandLots read_on_hand(const reader::Rows& rows, const book::Book& book, const ReadSettings& settings) {
  OnHandLots out;
  const Reading reading(book, settings);
  for (size_t i = 0; i < rows.count; ++i)
    if (std::optional<OnHand> lot = read_lot_row(rows.row(i), reading, out.errors)) out.lots.push_back(std::move(*lot));
  problem::sort(out.errors);
  return out;
}

}  // namespace lardiner::plan
