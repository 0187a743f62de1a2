// A sheet of labels in the book: its paper, columns and rows, margins and gaps.
#include "book/read_sheet.h"

#include <array>

#include "book/values.h"

namespace lardiner::book {

using problem::Code;
using reader::Fields;

namespace {

// More than this is a slip of the pen.
constexpr int kMostAlong = 100;

constexpr std::array<QStringView, 7> kKeys = {u"paper", u"columns",    u"rows",    u"left",
                                              u"top",   u"gap_across", u"gap_down"};

struct Paper {
  const char* name;
  int width, height;  // upright, in hundredths of a millimetre
};

// A sizes: ISO 216:2007, table 1. Letter (size A) and Ledger (size B), 8.5 × 11 and 11 × 17 inches: ANSI/ASME Y14.1,
// with their names from PWG 5101.1.
constexpr std::array kPapers = {Paper{"A3", 29700, 42000}, Paper{"A4", 21000, 29700}, Paper{"A5", 14800, 21000},
                                Paper{"Letter", 21590, 27940}, Paper{"Ledger", 27940, 43180}};

QString millimetres(int hundredths) { return QString::number(hundredths / 100.0) + QStringLiteral(" mm"); }

int read_required(Fields& fields, QStringView key, const QString& hint) {
  if (!fields.has(key))
    fields.refuse(key, Code::Missing, QStringLiteral("%1 is a sheet, but has no %2").arg(fields.noun(), key), hint);
  return read_size(fields, key).value_or(0);
}

int read_count(Fields& fields, QStringView key) {
  if (!fields.has(key))
    fields.refuse(key, Code::Missing, QStringLiteral("%1 is a sheet, but has no %2").arg(fields.noun(), key),
                  QStringLiteral("state how many labels it has: %1 = 2").arg(key));
  return fields.integer(key, 1, kMostAlong).value_or(0);
}

void read_named_paper(Fields& fields, Sheet& sheet) {
  QStringList names;
  for (const Paper& paper : kPapers) names += QLatin1String(paper.name);
  const auto word = read_word(fields, u"paper", names);
  for (const Paper& paper : kPapers)
    if (word == QLatin1String(paper.name)) {
      sheet.paper_width = paper.width;
      sheet.paper_height = paper.height;
    }
}

void read_own_paper(const reader::Value& table, const Fields& medium, const Context& context, Sheet& sheet) {
  Fields fields(table, QStringLiteral("the paper of ") + medium.noun(), context.errors);
  const auto side = [&](QStringView key) {
    if (!fields.has(key))
      fields.refuse(key, Code::Missing, QStringLiteral("%1 has no %2").arg(fields.noun(), key),
                    QStringLiteral("state %1: \"210 mm\" or \"8.5 in\"").arg(key));
    return read_size(fields, key).value_or(0);
  };
  sheet.paper_width = side(u"width");
  sheet.paper_height = side(u"height");
  fields.finish();
}

void read_paper(Fields& fields, const Context& context, Sheet& sheet) {
  const reader::Value* paper = fields.value(u"paper");
  if (paper == nullptr)
    fields.refuse(u"paper", Code::Missing, fields.noun() + QStringLiteral(" is a sheet, but has no paper"),
                  QStringLiteral("state paper: \"A4\", \"Letter\" or { width = \"210 mm\", height = \"297 mm\" }"));
  else if (paper->kind == reader::Value::Kind::Table)
    read_own_paper(*paper, fields, context, sheet);
  else
    read_named_paper(fields, sheet);
}

struct Along {
  QStringView key;
  const char* remedy;
  int count, first, label, gap, paper;
};

void check_fits(Fields& fields, const Along& along) {
  if (along.count == 0 || along.label == 0 || along.paper == 0) return;
  const int end = along.first + along.count * along.label + (along.count - 1) * along.gap;
  if (end <= along.paper) return;
  fields.refuse(along.key, Code::Range,
                QStringLiteral("%1: its %2 do not fit on the paper: they end at %3 of %4")
                    .arg(fields.noun(), along.key, millimetres(end), millimetres(along.paper)),
                QLatin1String(along.remedy));
}

}  // namespace

Sheet read_sheet(Fields& fields, const Media& label, const Context& context) {
  Sheet sheet;
  read_paper(fields, context, sheet);
  sheet.columns = read_count(fields, u"columns");
  sheet.rows = read_count(fields, u"rows");
  sheet.left =
      read_required(fields, u"left", QStringLiteral("state left, from the paper's edge to the first label: \"4 mm\""));
  sheet.top =
      read_required(fields, u"top", QStringLiteral("state top, from the paper's edge to the first label: \"12 mm\""));
  // A single row or column has no gap, and may say so.
  if (sheet.columns > 1 || fields.has(u"gap_across"))
    sheet.gap_across = read_required(
        fields, u"gap_across", QStringLiteral("state gap_across, between two labels of a row: \"3 mm\", or \"0 mm\""));
  if (sheet.rows > 1 || fields.has(u"gap_down"))
    sheet.gap_down = read_required(fields, u"gap_down",
                                   QStringLiteral("state gap_down, between two rows of labels: \"3 mm\", or \"0 mm\""));
  check_fits(fields, {u"columns", "write fewer columns, or less left, gap_across or width", sheet.columns, sheet.left,
                      label.width, sheet.gap_across, sheet.paper_width});
  check_fits(fields, {u"rows", "write fewer rows, or less top, gap_down or height", sheet.rows, sheet.top, label.height,
                      sheet.gap_down, sheet.paper_height});
  return sheet;
}

void refuse_sheet_keys(Fields& fields) {
  for (const QStringView key : kKeys)
    if (fields.has(key))
      fields.refuse(key, Code::Conflict, QStringLiteral("%1 is a roll, and has no %2").arg(fields.noun(), key),
                    QStringLiteral("write form = \"sheet\", or leave %1 out").arg(key));
}

void pass_sheet_keys(Fields& fields) {
  for (const QStringView key : kKeys) fields.has(key);
}

}  // namespace lardiner::book
