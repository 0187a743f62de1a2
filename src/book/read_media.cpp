// Label materials: rolls, and sheets of labels by columns and rows.
#include "book/read_sheet.h"
#include "book/tables.h"
#include "book/values.h"

namespace lardiner::book {

using problem::Code;
using reader::Fields;

namespace {

int read_side(Fields& fields, QStringView key) {
  const QString hint = QStringLiteral("state %1: \"50 mm\" or \"2 in\"").arg(key);
  if (!fields.has(key)) {
    fields.refuse(key, Code::Missing, QStringLiteral("%1 has no %2").arg(fields.noun(), key), hint);
    return 0;
  }
  const std::optional<int> size = read_size(fields, key);
  if (size && *size == 0)
    fields.refuse(key, Code::Range, QStringLiteral("%1: %2 is nothing").arg(fields.noun(), key), hint);
  return size.value_or(0);
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

// "1.5 mm" on all sides, or a table of sides; a side that it does not name is 0.
Margins read_margin(Fields& fields, const Context& context) {
  const reader::Value* value = fields.value(u"margin");
  if (value == nullptr || value->kind != reader::Value::Kind::Table) {
    const int all = read_size(fields, u"margin").value_or(0);
    return {all, all, all, all};
  }
  Fields sides(*value, QStringLiteral("the margin of ") + fields.noun(), context.errors);
  const auto side = [&](QStringView key) { return read_size(sides, key).value_or(0); };
  const Margins margin{side(u"top"), side(u"right"), side(u"bottom"), side(u"left")};
  sides.finish();
  return margin;
}

void check_room(Fields& fields, const Media& media) {
  if (media.width == 0 || media.height == 0) return;
  const Margins& margin = media.margin;
  if (margin.left + margin.right < media.width && margin.top + margin.bottom < media.height) return;
  fields.refuse(u"margin", Code::Range, fields.noun() + QStringLiteral(" is all margin"),
                QStringLiteral("write margins that together are less than its width and its height"));
}

// Wider than high, or higher than wide, as it is read; absent: as it lies.
bool read_turned(Fields& fields, const Media& media) {
  const QString landscape = QStringLiteral("landscape");
  const auto direction = read_word(fields, u"direction", {QStringLiteral("portrait"), landscape});
  if (!direction || media.width == media.height) return false;
  return (*direction == landscape) == (media.width < media.height);
}

void read_form(Fields& fields, Media& media, const Context& context) {
  const QString roll = QStringLiteral("roll"), sheet = QStringLiteral("sheet");
  const auto form = read_word(fields, u"form", {roll, sheet});
  if (form == sheet)
    media.sheet = read_sheet(fields, media, context);
  else if (form || !fields.has(u"form"))
    refuse_sheet_keys(fields);
  else
    pass_sheet_keys(fields);
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
  media.turned = read_turned(fields, media);
  media.dots_per_inch = fields.integer(u"dots_per_inch", 100, 2400).value_or(media.dots_per_inch);
  read_form(fields, media, context);
  read_bears(fields, media);
  media.margin = read_margin(fields, context);
  media.module_dots = fields.integer(u"module_dots", 1, 40).value_or(media.module_dots);
  check_room(fields, media);
  fields.finish();
  return media;
}

}  // namespace lardiner::book
