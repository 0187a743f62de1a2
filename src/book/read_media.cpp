// Label materials.
#include "book/tables.h"
#include "book/values.h"

namespace lardiner::book {

using problem::Code;
using reader::Fields;

namespace {

int read_side(Fields& fields, QStringView key) {
  if (!fields.has(key))
    fields.refuse(key, Code::Missing, QStringLiteral("%1 has no %2").arg(fields.noun(), key),
                  QStringLiteral("state %1: \"50 mm\" or \"2 in\"").arg(key));
  return read_size(fields, key).value_or(0);
}

void read_bears(Fields& fields, Media& media) {
  static const QStringList known{QStringLiteral("chilled"), QStringLiteral("freezer"), QStringLiteral("hot")};
  const QStringList bears = fields.texts(u"bears");
  if (bears.isEmpty())
    fields.refuse(u"bears", Code::Missing, fields.noun() + QStringLiteral(" does not say what it bears"),
                  QStringLiteral("state bears, any of \"chilled\", \"freezer\", \"hot\""));
  for (const QString& word : bears)
    if (!known.contains(word))
      fields.refuse(u"bears", Code::Unknown,
                    QStringLiteral("%1: bears cannot have \"%2\"").arg(fields.noun(), word.left(60)),
                    QStringLiteral("write any of \"chilled\", \"freezer\", \"hot\""));
  media.chilled = bears.contains(known[0]);
  media.freezer = bears.contains(known[1]);
  media.hot = bears.contains(known[2]);
}

void check_room(Fields& fields, const Media& media) {
  if (media.width == 0 || media.height == 0) return;
  if (2 * media.margin < std::min(media.width, media.height)) return;
  fields.refuse(u"margin", Code::Range, fields.noun() + QStringLiteral(" is all margin"),
                QStringLiteral("write a margin of less than half its shorter side"));
}

}  // namespace

Media read_media(const reader::Value& table, const Context& context) {
  Fields fields(table, noun(QStringLiteral("medium"), table), context.errors);
  Media media;
  media.place = table.place;
  media.id = read_id(fields).value_or(QString());
  media.name = read_name(fields, context.languages());
  media.width = read_side(fields, u"width");
  media.height = read_side(fields, u"height");
  media.dots_per_inch = fields.integer(u"dots_per_inch", 100, 2400).value_or(media.dots_per_inch);
  media.sheet =
      read_word(fields, u"form", {QStringLiteral("roll"), QStringLiteral("sheet")}) == QStringLiteral("sheet");
  read_bears(fields, media);
  media.margin = read_size(fields, u"margin").value_or(0);
  media.module_dots = fields.integer(u"module_dots", 1, 40).value_or(media.module_dots);
  check_room(fields, media);
  fields.finish();
  return media;
}

}  // namespace lardiner::book
