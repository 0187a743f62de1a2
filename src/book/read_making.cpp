// How a product is made: what its units may weigh, in which lots, to which level, in which vessel, how fast.
#include "book/tables.h"
#include "book/values.h"
#include "reader/quote.h"

namespace lardiner::book {

using measure::Dimension;
using measure::Quantity;
using problem::Code;
using reader::Fields;

namespace {

void read_unit_range(Fields& fields, Product& product) {
  product.unit_least = read_weight(fields, u"unit_least");
  product.unit_most = read_weight(fields, u"unit_most");
  both_or_neither(fields, u"unit_least", u"unit_most");
  if (!product.unit_least || !product.unit_most) return;
  if (!fields.has(u"unit_weight"))
    fields.refuse(u"unit_least", Code::Missing, fields.noun() + QStringLiteral(" has a unit_least but no unit_weight"),
                  QStringLiteral("state unit_weight, what one piece shall weigh"));
  if (!product.unit_weight) return;
  const qint64 target = product.unit_weight->amount;
  if (product.unit_least->amount <= target && target <= product.unit_most->amount) return;
  fields.refuse(u"unit_weight", Code::Conflict,
                fields.noun() + QStringLiteral(": unit_weight is not between unit_least and unit_most"),
                QStringLiteral("write unit_least = \"106 g\", unit_weight = \"110 g\", unit_most = \"115 g\""));
}

QString as_words(Dimension dimension) {
  if (dimension == Dimension::Mass) return QStringLiteral("a weight");
  return dimension == Dimension::Volume ? QStringLiteral("a volume") : QStringLiteral("pieces");
}

std::optional<Quantity> read_output(Fields& fields, QStringView key, const Product& product) {
  const std::optional<Quantity> read = read_quantity(fields, key);
  const Dimension wanted = product.made_as();
  if (!read || read->dimension == wanted) return read;
  fields.refuse(
      key, Code::Conflict,
      QStringLiteral("%1: %2 is not %3, in which it is made").arg(fields.noun(), key, as_words(wanted)),
      product.makes ? QStringLiteral("write it as makes is written") : QStringLiteral("write it so, or state makes"));
  return std::nullopt;
}

void read_vessel_of(Fields& fields, const Context& context, Product& product) {
  product.vessel = fields.text(u"vessel").value_or(QString());
  product.vessel_takes = read_weight(fields, u"vessel_takes");
  both_or_neither(fields, u"vessel", u"vessel_takes");
  if (product.vessel_takes && product.vessel_takes->amount < measure::one(measure::Unit::Gram).amount)
    fields.refuse(u"vessel_takes", Code::Range, fields.noun() + QStringLiteral(": vessel_takes is less than 1 g"),
                  QStringLiteral("write how much of what goes in the vessel holds, as in \"18 kg\""));
  if (product.vessel.isEmpty() || !context.whole || context.book.vessel(product.vessel) != nullptr) return;
  QStringList known;
  for (const Vessel& vessel : context.book.vessels) known += vessel.id;
  fields.refuse(u"vessel", Code::Unknown, QStringLiteral("no vessel has the id ") + reader::quoted(product.vessel),
                meant(product.vessel, known, QStringLiteral("a [[vessel]] table")));
}

}  // namespace

void read_making(Fields& fields, const Context& context, Product& product) {
  read_unit_range(fields, product);
  for (const reader::Value* step : fields.tables(u"step"))
    product.steps.push_back(read_step(*step, fields.noun(), context));
  product.made_in = read_output(fields, u"made_in", product);
  product.keep_on_hand = read_output(fields, u"keep_on_hand", product);
  read_vessel_of(fields, context, product);
  product.units_per_hour = read_number(fields, u"units_per_hour");
  if (fields.has(u"units_per_hour") && product.kind == ProductKind::Component)
    fields.refuse(u"units_per_hour", Code::Conflict,
                  fields.noun() + QStringLiteral(" has units_per_hour, but a component has no units"),
                  QStringLiteral("leave units_per_hour out, or write kind = \"assembled item\""));
}

}  // namespace lardiner::book
