// Finishing instructions: equipment, start state, setting, time and the core temperature to reach.
#include "book/tables.h"
#include "book/values.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using reader::Fields;

namespace {

const QStringList& equipment() {
  static const QStringList names{QStringLiteral("oven"),       QStringLiteral("convection-oven"),
                                 QStringLiteral("combi-oven"), QStringLiteral("microwave"),
                                 QStringLiteral("fryer"),      QStringLiteral("griddle"),
                                 QStringLiteral("pan"),        QStringLiteral("steamer"),
                                 QStringLiteral("water-bath"), QStringLiteral("grill")};
  return names;
}

State read_from(Fields& fields) {
  const auto from = read_required_word(
      fields, u"from", {QStringLiteral("chilled"), QStringLiteral("frozen"), QStringLiteral("ambient")});
  if (from == QStringLiteral("frozen")) return State::Frozen;
  return from == QStringLiteral("ambient") ? State::Ambient : State::Chilled;
}

void read_how(Fields& fields, const Context& context, Finishing& finishing) {
  const RuleSet& rules = context.book.rules;
  QStringList known;
  for (const ReheatMinimum& minimum : rules.reheat) known += minimum.how;
  const QString usual =
      finishing.equipment == QLatin1String("microwave") ? QStringLiteral("microwave") : QStringLiteral("hot-holding");
  finishing.reheat_how = fields.text(u"reheat_how").value_or(usual);
  if (known.isEmpty() || known.contains(finishing.reheat_how)) return;
  fields.refuse(u"reheat_how", Code::Unknown,
                QStringLiteral("%1 has no reheat minimum for %2").arg(rules.name, reader::quoted(finishing.reheat_how)),
                meant(finishing.reheat_how, known, QStringLiteral("a reheat minimum")));
}

}  // namespace

Finishing read_finishing(const reader::Value& table, const QString& noun, const Context& context) {
  Fields fields(table, QStringLiteral("a finishing of ") + noun, context.errors);
  Finishing finishing;
  finishing.place = table.place;
  finishing.equipment = read_required_word(fields, u"equipment", equipment()).value_or(QString());
  finishing.from = read_from(fields);
  finishing.setting = read_setting(fields, u"setting");
  finishing.setting_text = read_local_text(fields, u"setting_text", context.languages());
  if (fields.has(u"setting") && fields.has(u"setting_text"))
    fields.refuse(u"setting_text", Code::Conflict, fields.noun() + QStringLiteral(" has both setting and setting_text"),
                  QStringLiteral("write one of them"));
  const auto time = read_seconds_range(fields, u"time").value_or(std::pair(0, 0));
  finishing.least_seconds = time.first;
  finishing.most_seconds = time.second;
  finishing.to = read_held(fields, u"to");
  read_how(fields, context, finishing);
  finishing.cue = read_local_text(fields, u"cue", context.languages());
  finishing.rest_seconds = read_seconds(fields, u"rest").value_or(0);
  finishing.stand_seconds = read_seconds(fields, u"stand").value_or(0);
  finishing.hold_most_seconds = read_seconds(fields, u"hold_most").value_or(0);
  fields.finish();
  return finishing;
}

}  // namespace lardiner::book
