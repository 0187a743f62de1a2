// A container that a product is put up in, and the label it gets.
#include "book/tables.h"
#include "book/values.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

// More than any tray has, either way.
constexpr int kMostPlaces = 100;

const QStringList& kinds() {
  static const QStringList names{QStringLiteral("tub"),   QStringLiteral("tray"), QStringLiteral("bag"),
                                 QStringLiteral("case"),  QStringLiteral("jar"),  QStringLiteral("pan"),
                                 QStringLiteral("bottle")};
  return names;
}

const QStringList& purposes() {
  static const QStringList names{QStringLiteral("inside"), QStringLiteral("finisher"), QStringLiteral("sale")};
  return names;
}

State read_kept(Fields& fields, const TcsStatement& tcs) {
  static const QStringList names{QStringLiteral("chilled"), QStringLiteral("frozen"), QStringLiteral("ambient"),
                                 QStringLiteral("hot-held")};
  constexpr State states[] = {State::Chilled, State::Frozen, State::Ambient, State::HotHeld};
  const std::optional<QString> word = read_word(fields, u"kept", names);
  const qsizetype at = word ? names.indexOf(*word) : -1;
  if (at >= 0) return states[at];
  return tcs.is == TcsStatement::Is::No ? State::Ambient : State::Chilled;
}

void read_medium(Fields& fields, const Context& context, ContainerSpec& container) {
  container.media = fields.required_text(u"media").value_or(QString());
  if (container.media.isEmpty()) return;
  QStringList known;
  for (const Media& media : context.book.media) known += media.id;
  const Media* media = context.book.medium(container.media);
  if (media == nullptr && context.whole)
    fields.refuse(u"media", Code::Unknown, QStringLiteral("no medium has the id ") + quoted(container.media),
                  meant(container.media, known, QStringLiteral("a [[media]] table")));
}

void check_bears(Fields& fields, const Context& context, const ContainerSpec& container) {
  const Media* media = context.book.medium(container.media);
  if (media == nullptr) return;
  const bool frozen = container.kept == State::Frozen && !media->freezer;
  const bool hot = container.kept == State::HotHeld && !media->hot;
  const bool chilled = container.kept == State::Chilled && !media->chilled;
  if (!frozen && !hot && !chilled) return;
  const QString needed = frozen ? QStringLiteral("freezer") : hot ? QStringLiteral("hot") : QStringLiteral("chilled");
  fields.refuse(u"media", Code::Conflict,
                QStringLiteral("%1: the medium %2 does not bear %3").arg(fields.noun(), quoted(media->id), needed),
                QStringLiteral("choose a medium whose bears has \"%1\"").arg(needed));
}

// How the pieces of a tray lie.
void read_places(Fields& fields, ContainerSpec& container) {
  if (!both_or_neither(fields, u"rows", u"columns", u"") || !fields.has(u"rows")) return;
  container.rows = fields.integer(u"rows", 1, kMostPlaces).value_or(0);
  container.columns = fields.integer(u"columns", 1, kMostPlaces).value_or(0);
  if (!container.kind.isEmpty() && container.kind != QLatin1String("tray"))
    fields.refuse(u"rows", Code::Conflict, QStringLiteral("%1: a %2 has no rows").arg(fields.noun(), container.kind),
                  QStringLiteral("leave rows and columns out, or write kind = \"tray\""));
  const int places = container.rows * container.columns;
  const measure::Quantity& holds = container.holds;
  if (places == 0 || holds.dimension != measure::Dimension::Count) return;
  if (in_unit(holds, measure::Unit::Piece) == measure::Ratio(places, 1)) return;
  fields.refuse(u"holds", Code::Conflict,
                QStringLiteral("%1: %2 rows and %3 columns have room for %4 pieces, but holds says otherwise")
                    .arg(fields.noun())
                    .arg(container.rows)
                    .arg(container.columns)
                    .arg(places),
                QStringLiteral("write holds = \"%1 pieces\", or correct rows and columns").arg(places));
}

void read_languages(Fields& fields, const Context& context, ContainerSpec& container) {
  for (const QString& code : fields.texts(u"languages")) {
    if (context.languages().contains(code)) {
      container.languages += code;
      continue;
    }
    fields.refuse(u"languages", Code::Unknown,
                  QStringLiteral("%1 asks for the language %2").arg(fields.noun(), quoted(code)),
                  QStringLiteral("the kitchen's languages are ") + context.languages().join(QStringLiteral(", ")));
  }
}

}  // namespace

ContainerSpec read_container(const reader::Value& table, const QString& noun, const TcsStatement& tcs,
                             const Context& context) {
  Fields fields(table, QStringLiteral("a container of ") + noun, context.errors);
  ContainerSpec container;
  container.place = table.place;
  container.kind = read_required_word(fields, u"kind", kinds()).value_or(QString());
  if (!fields.has(u"holds"))
    fields.refuse(u"holds", Code::Missing, fields.noun() + QStringLiteral(" does not say how much it holds"),
                  QStringLiteral("state holds: \"500 g\" or \"24 pieces\""));
  container.holds = read_quantity(fields, u"holds").value_or(measure::Quantity{});
  read_places(fields, container);
  container.tare = read_weight(fields, u"tare");
  const auto package = read_word(fields, u"package", {QStringLiteral("air"), QStringLiteral("reduced oxygen")});
  if (package == QStringLiteral("reduced oxygen")) container.package = Package::ReducedOxygen;
  read_medium(fields, context, container);
  if (const auto purpose = read_required_word(fields, u"purpose", purposes()))
    container.purpose = static_cast<Purpose>(std::max<qsizetype>(0, purposes().indexOf(*purpose)));
  container.kept = read_kept(fields, tcs);
  check_bears(fields, context, container);
  read_languages(fields, context, container);
  container.label_template = fields.text(u"template").value_or(QString());
  if (!container.label_template.isEmpty()) container.template_place = fields.value(u"template")->place;
  fields.finish();
  return container;
}

}  // namespace lardiner::book
