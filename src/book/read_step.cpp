// A step of the work: what is done, for how long, at which setting.
#include "book/tables.h"
#include "book/values.h"

namespace lardiner::book {

using problem::Code;
using reader::Fields;

namespace {

// In the order of StepKind.
const QStringList& kinds() {
  static const QStringList names{QStringLiteral("work"),   QStringLiteral("marinate"), QStringLiteral("rest"),
                                 QStringLiteral("cook"),   QStringLiteral("cool"),     QStringLiteral("chill"),
                                 QStringLiteral("freeze"), QStringLiteral("thaw")};
  return names;
}

}  // namespace

Step read_step(const reader::Value& table, const QString& noun, const Context& context) {
  Fields fields(table, QStringLiteral("a step of ") + noun, context.errors);
  Step step;
  step.place = table.place;
  if (const auto kind = read_required_word(fields, u"kind", kinds()))
    step.kind = static_cast<StepKind>(std::max<qsizetype>(0, kinds().indexOf(*kind)));
  if (!fields.has(u"text"))
    fields.refuse(u"text", Code::Missing, fields.noun() + QStringLiteral(" does not say what is done"),
                  QStringLiteral("state text, as the cook shall read it"));
  step.text = read_local_text(fields, u"text", context.languages());
  step.seconds = read_seconds_range(fields, u"takes");
  if (step.seconds && step.seconds->second == 0)
    fields.refuse(u"takes", Code::Range, fields.noun() + QStringLiteral(": takes is no time at all"),
                  QStringLiteral("write it as 20 min or 12 to 15 min, or leave takes out when it is not known"));
  step.setting = read_setting(fields, u"setting");
  fields.finish();
  return step;
}

}  // namespace lardiner::book
