// How a line of a formula is weighed out and laid: its bowl, its portion tool, brushed or drizzled.
#include "book/tables.h"
#include "book/values.h"
#include "reader/quote.h"

namespace lardiner::book {

using measure::Dimension;
using problem::Code;
using reader::Fields;

namespace {

// Dishers are numbered by how many level ones make a quart; the smallest made is number 100.
constexpr int kMostDisher = 100;

void read_tool(Fields& fields, const Context& context, FormulaLine& line) {
  line.disher = fields.integer(u"disher", 1, kMostDisher);
  line.tool = read_local_text(fields, u"tool", context.languages());
  if (fields.has(u"disher") && fields.has(u"tool"))
    fields.refuse(u"tool", Code::Conflict, fields.noun() + QStringLiteral(" has both disher and tool"),
                  QStringLiteral("write one of them"));
  for (const QStringView key : {QStringView(u"disher"), QStringView(u"tool")})
    if (fields.has(key) && line.basis != Basis::PerUnit)
      fields.refuse(key, Code::Conflict, QStringLiteral("%1 has a %2 but no per_unit").arg(fields.noun(), key),
                    QStringLiteral("state per_unit, what goes onto one unit, or leave %1 out").arg(key));
}

void read_laying(Fields& fields, FormulaLine& line) {
  const auto word = read_word(fields, u"laying", {QStringLiteral("brushed"), QStringLiteral("drizzled")});
  if (!word) return;
  line.laying = *word == QLatin1String("brushed") ? Laying::Brushed : Laying::Drizzled;
  if (line.amount.dimension == Dimension::Count)
    fields.refuse(u"laying", Code::Conflict, QStringLiteral("%1 is counted, but %2").arg(fields.noun(), *word),
                  QStringLiteral("write its amount as a weight or volume, or leave laying out"));
}

}  // namespace

void read_portion(Fields& fields, const Context& context, FormulaLine& line) {
  line.bowl = read_local_text(fields, u"bowl", context.languages());
  read_tool(fields, context, line);
  read_laying(fields, line);
  if (line.disher && line.amount.dimension == Dimension::Count)
    fields.refuse(u"disher", Code::Conflict, fields.noun() + QStringLiteral(" is counted, but has a disher"),
                  QStringLiteral("write per_unit as a weight or volume, or leave disher out"));
  if (line.disher && line.laying != Laying::Placed)
    fields.refuse(u"disher", Code::Conflict,
                  fields.noun() + QStringLiteral(" has a disher, but is brushed or drizzled"),
                  QStringLiteral("leave disher or laying out"));
}

void check_portions(const std::vector<FormulaLine>& lines, const QString& noun, problem::Errors& errors) {
  for (const FormulaLine& line : lines) {
    const bool placed = line.laying == Laying::Placed && !line.disher && line.tool.empty();
    if (placed) continue;
    const QString key = line.disher         ? QStringLiteral("disher")
                        : line.tool.empty() ? QStringLiteral("laying")
                                            : QStringLiteral("tool");
    errors.push_back({Code::Conflict,
                      QStringLiteral("the line %1 of %2 has a %3, but a component has no units")
                          .arg(reader::quoted(line.item), noun, key),
                      line.place,
                      QStringLiteral("leave %1 out, or write kind = \"assembled item\" in the product").arg(key)});
  }
}

}  // namespace lardiner::book
