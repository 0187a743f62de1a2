// What a prep or an assembly sheet says, as JSON.
#include "command/sheet_json.h"

#include <QJsonArray>

#include "command/amount_json.h"

namespace lardiner::command {

namespace {

using measure::Quantity;

QJsonArray allergens(const std::vector<QString>& entries) {
  QJsonArray out;
  for (const QString& entry : entries) out.append(entry);
  return out;
}

QString local(const WorkRun& run, const book::LocalText& text) { return text.in(run.book.kitchen.languages.value(0)); }

void put_ahead(JsonObject& out, const facts::Ahead& ahead, measure::System system) {
  QJsonArray drawn, fill;
  for (const facts::Drawn& one : ahead.drawn)
    drawn.append(JsonObject(system)
                     .put("item", one.item)
                     .put("lot", one.lot)
                     .put("place", one.place)
                     .put("quantity", one.quantity)
                     .json());
  for (const plan::Filled& group : ahead.fill)
    fill.append(JsonObject(system)
                    .put("count", QJsonValue(group.count))
                    .put("kind", group.container->kind)
                    .put("holds", group.holds)
                    .json());
  out.put("day", ahead.day.toString(Qt::ISODate))
      .put("lot", ahead.lot)
      .put("drawn", QJsonValue(drawn))
      .put("fill", QJsonValue(fill));
}

QJsonObject line_json(const plan::PrepLine& line, measure::System system) {
  const plan::ScaledLine& amount = line.amount;
  JsonObject out(system);
  out.put("item", amount.line->item)
      .put("net", amount.net)
      .put("weighed", amount.weighed)
      .put("pull", amount.pull)
      .put("to_pull", amount.to_pull)
      .put("fine", QJsonValue(amount.fine))
      .put("restricted", QJsonValue(amount.restricted))
      .put("pieces", amount.pieces)
      .put("reading", line.reading)
      .put("allergens", QJsonValue(allergens(line.allergens)))
      .put("allergens_known", QJsonValue(line.allergens_known));
  if (amount.measure) {
    const Quantity measured = measure::quantity(amount.measure->count, amount.measure->unit);
    out.put("measure", measured).put("measure_source", amount.measure->source);
  }
  return out.json();
}

QJsonObject line_json(const plan::AssemblyLine& line, measure::System system) {
  return JsonObject(system)
      .put("item", line.line->item)
      .put("pieces", line.pieces)
      .put("each", line.each)
      .put("each_weighed", line.each_weighed)
      .put("total", line.total)
      .put("to_pull", line.to_pull)
      .put("on_tray", line.on_tray)
      .put("disher", line.disher)
      .put("sure_weight", line.sure_weight)
      .put("allergens", QJsonValue(allergens(line.allergens)))
      .put("allergens_known", QJsonValue(line.allergens_known))
      .json();
}

QJsonArray suffices_json(const std::vector<plan::Suffices>& suffices, measure::System system) {
  QJsonArray out;
  for (const plan::Suffices& item : suffices)
    out.append(JsonObject(system)
                   .put("item", item.item)
                   .put("worst", item.units.worst)
                   .put("likely", item.units.likely)
                   .put("best", std::optional(item.units.best))
                   .json());
  return out;
}

}  // namespace

QJsonObject json_of(const WorkRun& run, const plan::Prep& prep, const facts::Ahead& ahead) {
  const measure::System system = run.book.kitchen.units;
  QJsonArray bowls;
  for (const plan::Bowl& bowl : prep.bowls) {
    QJsonArray lines;
    for (const plan::PrepLine& line : bowl.lines) lines.append(line_json(line, system));
    bowls.append(JsonObject(system).put("name", local(run, bowl.name)).put("lines", QJsonValue(lines)).json());
  }
  const plan::Scaled& scaled = prep.scaled;
  JsonObject out(system);
  out.put("product", scaled.product->id)
      .put("makings", QJsonValue(number(scaled.makings)))
      .put("pulls", QJsonValue(scaled.pulls))
      .put("input", scaled.input)
      .put("output", scaled.output)
      .put("units", scaled.units)
      .put("bowls", QJsonValue(bowls));
  put_ahead(out, ahead, system);
  return out.json();
}

QJsonObject json_of(const WorkRun& run, const plan::Assembly& assembly, const std::vector<plan::Suffices>& suffices,
                    const facts::Ahead& ahead) {
  const measure::System system = run.book.kitchen.units;
  QJsonArray lines;
  for (const plan::AssemblyLine& line : assembly.lines) lines.append(line_json(line, system));
  JsonObject out(system);
  out.put("product", assembly.product->id)
      .put("wanted", std::optional(assembly.wanted))
      .put("make", std::optional(assembly.make))
      .put("unit_weight", assembly.unit_weight)
      .put("unit_least", assembly.unit_least)
      .put("unit_most", assembly.unit_most)
      .put("lines", QJsonValue(lines))
      .put("suffices", QJsonValue(suffices_json(suffices, system)));
  if (assembly.trays)
    out.put("trays", QJsonValue(JsonObject(system)
                                    .put("whole", std::optional(assembly.trays->whole))
                                    .put("odd", std::optional(assembly.trays->odd))
                                    .put("holds", assembly.trays->container->holds)
                                    .json()));
  if (assembly.out_of_cold)
    out.put("out_of_cold", QJsonValue(JsonObject(system)
                                          .put("seconds", QJsonValue(assembly.out_of_cold->seconds))
                                          .put("units", std::optional(assembly.out_of_cold->units))
                                          .put("times", std::optional(assembly.out_of_cold->times))
                                          .json()));
  QJsonArray check_weigh;
  for (const std::int64_t unit : assembly.check_weigh) check_weigh.append(static_cast<qint64>(unit));
  out.put("check_weigh", QJsonValue(check_weigh));
  put_ahead(out, ahead, system);
  return out.json();
}

}  // namespace lardiner::command
