// What the readers of orders and of lots on hand have in common: items of the book, and amounts that it can convert.
#include "plan/read_order_values.h"

#include "plan/amounts_of.h"
#include "reader/quote.h"

namespace lardiner::plan {

using measure::Dimension;
using measure::Quantity;
using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

QString by_what(Dimension dimension) {
  switch (dimension) {
    case Dimension::Mass:
      return QStringLiteral("by weight");
    case Dimension::Volume:
      return QStringLiteral("by volume");
    case Dimension::Count:
      return QStringLiteral("in pieces");
  }
  return {};
}

QString example(Dimension dimension) {
  switch (dimension) {
    case Dimension::Mass:
      return QStringLiteral("write a weight, as 12 kg");
    case Dimension::Volume:
      return QStringLiteral("write a volume, as 4 L");
    case Dimension::Count:
      return QStringLiteral("write pieces, as 96 pieces");
  }
  return {};
}

bool converts(const book::Book& book, const QString& item, Quantity quantity) {
  book::Weighing weighing(book);
  if (const book::Product* product = book.product(item)) return amount_of(weighing, *product, quantity).has_value();
  const book::Ingredient* ingredient = book.ingredient(item);
  return !ingredient || weight_of(weighing, *ingredient, quantity).has_value();
}

void refuse_dimension(Fields& fields, const QString& item, const book::Book& book) {
  const book::Product* product = book.product(item);
  const QString written = quoted(*fields.text(u"quantity"));
  if (product) {
    const Dimension made = product->made_as();
    fields.refuse(u"quantity", Code::Conflict,
                  QStringLiteral("%1: %2 is made %3, and the book does not convert one to the other")
                      .arg(written, quoted(item), by_what(made)),
                  example(made));
    return;
  }
  fields.refuse(u"quantity", Code::Conflict,
                QStringLiteral("%1: nothing in the book says what that of %2 weighs").arg(written, quoted(item)),
                example(Dimension::Mass));
}

}  // namespace

QString read_product_id(Fields& fields, QStringView key, const Reading& reading) {
  const QString id = fields.text(key).value_or(QString());
  if (id.isEmpty() || reading.book.product(id)) return id;
  QStringList known;
  for (const book::Product& product : reading.book.products) known += product.id;
  fields.refuse(key, Code::Unknown, QStringLiteral("%1 is not a product of the book").arg(quoted(id)),
                reading.book.ingredient(id)
                    ? QStringLiteral("it is an ingredient, which is bought and not made")
                    : batch::did_you_mean(id, known, QStringLiteral("write the id of a product of the book")));
  return {};
}

std::optional<Quantity> read_quantity_of(Fields& fields, const QString& item, const Reading& reading) {
  const std::optional<Quantity> quantity = batch::read_required_amount(fields, u"quantity", reading.of_records());
  if (!quantity || item.isEmpty() || converts(reading.book, item, *quantity)) return quantity;
  refuse_dimension(fields, item, reading.book);
  return std::nullopt;
}

}  // namespace lardiner::plan
