// One shelf-life rule: state, length, kind, and who says so.
#include "book/tables.h"
#include "book/values.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

const QStringList& states() {
  static const QStringList names{QStringLiteral("chilled"),      QStringLiteral("frozen"),  QStringLiteral("thawed"),
                                 QStringLiteral("ambient"),      QStringLiteral("opened"),  QStringLiteral("hot-held"),
                                 QStringLiteral("time-control"), QStringLiteral("finished")};
  return names;
}

// "figure:ready-to-eat-chilled" names a figure of the rule set; anything else is a text of the kitchen's.
void read_authority(Fields& fields, ShelfLife& life, const RuleSet& rules) {
  const QString text = fields.required_text(u"authority").value_or(QString());
  const QString prefix = QStringLiteral("figure:");
  if (!text.startsWith(prefix)) {
    life.authority.name = text;
    return;
  }
  const QString id = text.mid(prefix.size()).trimmed();
  const LengthLimit* figure = rules.figure(id);
  if (figure != nullptr) {
    life.figure = id;
    life.authority = figure->authority;
  } else if (!rules.id.isEmpty()) {
    QStringList known;
    for (const LengthLimit& limit : rules.figures) known += limit.id;
    fields.refuse(u"authority", Code::Unknown, QStringLiteral("%1 has no figure %2").arg(rules.name, quoted(id)),
                  meant(id, known, QStringLiteral("a figure")));
  }
}

void read_keeps(Fields& fields, ShelfLife& life, const RuleSet& rules) {
  const LengthLimit* figure = life.figure.isEmpty() ? nullptr : rules.figure(life.figure);
  if (!fields.has(u"keeps") && figure == nullptr)
    fields.refuse(u"keeps", Code::Missing, fields.noun() + QStringLiteral(" does not say how long it keeps"),
                  QStringLiteral("state keeps: \"7 days\", \"3 months\", \"4 h\""));
  else if (!fields.has(u"keeps"))
    life.length = figure->length;
  else
    life.length = read_length(fields, u"keeps").value_or(Length{});
  if (const std::optional<int> first = fields.integer(u"first_day", 0, 1)) {
    if (life.length.unit == Length::Unit::Days)
      life.length.first_day = *first;
    else
      fields.refuse(u"first_day", Code::Conflict, fields.noun() + QStringLiteral(" has a first_day but is not in days"),
                    QStringLiteral("leave first_day out, or write keeps in days"));
  }
}

}  // namespace

ShelfLife read_shelf_life(const reader::Value& table, const QString& noun, const Context& context) {
  Fields fields(table, QStringLiteral("a shelf life of ") + noun, context.errors);
  ShelfLife life;
  life.place = table.place;
  if (const auto state = read_required_word(fields, u"state", states()))
    life.state = static_cast<State>(states().indexOf(*state));
  read_authority(fields, life, context.book.rules);
  read_keeps(fields, life, context.book.rules);
  const auto kind = read_word(fields, u"kind", {QStringLiteral("use by"), QStringLiteral("best before")});
  const bool quality = kind ? *kind == QLatin1String("best before") : life.state == State::Frozen;
  life.kind = quality ? EndKind::BestBefore : EndKind::UseBy;
  life.document = fields.text(u"document").value_or(QString());
  fields.finish();
  return life;
}

}  // namespace lardiner::book
