// Pots, kettles and bowls.
#include "book/tables.h"
#include "book/values.h"

namespace lardiner::book {

Vessel read_vessel(const reader::Value& table, const Context& context) {
  reader::Fields fields(table, noun(QStringLiteral("vessel"), table), context.errors);
  Vessel vessel;
  vessel.place = table.place;
  vessel.id = read_id(fields).value_or(QString());
  vessel.name = read_name(fields, context.languages());
  vessel.tare = read_weight(fields, u"tare");
  fields.finish();
  return vessel;
}

}  // namespace lardiner::book
