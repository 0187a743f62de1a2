// How an ingredient is bought: by which unit, in pieces of which size, and how warm it may come.
#include <QRegularExpression>

#include "book/tables.h"
#include "book/taken.h"
#include "book/values.h"
#include "reader/quote.h"

namespace lardiner::book {

using measure::Unit;
using problem::Code;
using problem::Error;
using problem::Expected;
using reader::Fields;
using reader::quoted;

namespace {

// More than any pieces that are counted to a pound or a kilogram.
constexpr int kMostPieces = 10'000;

tl::unexpected<Error> fault(Code code, const QString& text, const QString& clause, const QString& hint) {
  return tl::unexpected(Error{code, quoted(text) + clause, {}, hint});
}

Expected<CountGrade> parse_count_grade(const QString& text) {
  static const QRegularExpression form(QStringLiteral("^(U|[0-9]{1,9})/([0-9]{1,9}) per (lb|kg)$"));
  const auto match = form.match(text);
  if (!match.hasMatch())
    return fault(
        Code::Malformed, text, QStringLiteral(" is not a count grade"),
        QStringLiteral("write pieces to a weight, as in 21/25 per lb, 6/8 per kg, or U/10 per lb for at most 10"));
  CountGrade grade;
  if (match.captured(1) != QLatin1String("U")) grade.fewest = match.captured(1).toInt();
  grade.most = match.captured(2).toInt();
  grade.per = measure::one(match.captured(3) == QLatin1String("lb") ? Unit::Pound : Unit::Kilogram);
  const int fewest = grade.fewest.value_or(1);
  if (fewest < 1 || grade.most < 1 || grade.most > kMostPieces)
    return fault(Code::Range, text, QStringLiteral(" is not from 1 to 10000 pieces"),
                 QStringLiteral("write how many pieces the weight holds"));
  if (fewest > grade.most)
    return fault(Code::Conflict, text, QStringLiteral(" begins with more pieces than it ends with"),
                 QStringLiteral("write the fewer pieces first"));
  return grade;
}

// Where a law lets it come warmer than food is held cold.
void read_receiving(Fields& fields, Ingredient& ingredient) {
  ingredient.received_at_most = read_limit(fields, u"received_at_most", Bound::AtMost);
  ingredient.received_source = fields.text(u"received_source").value_or(QString());
  if (fields.has(u"received_at_most") && ingredient.received_source.isEmpty())
    fields.refuse(
        u"received_at_most", Code::Missing,
        fields.noun() + QStringLiteral(" has a received_at_most but no received_source"),
        QStringLiteral("say which law allows it, as in received_source = \"3-202.11 of the Food Code 2022\""));
}

}  // namespace

void read_buying(Fields& fields, const Context& context, Ingredient& ingredient) {
  if (const std::optional<QString> grade = fields.text(u"count_grade"))
    ingredient.count_grade = taken(fields, u"count_grade", parse_count_grade(*grade));
  ingredient.bought_by = read_quantity(fields, u"bought_by");
  ingredient.bought_as = read_local_text(fields, u"bought_as", context.languages());
  if (fields.has(u"bought_as") && !fields.has(u"bought_by"))
    fields.refuse(u"bought_as", Code::Missing, fields.noun() + QStringLiteral(" has a bought_as but no bought_by"),
                  QStringLiteral("state bought_by, how much of it that is: \"25 lb\" or \"12 pieces\""));
  ingredient.always_there = fields.boolean(u"always_there").value_or(false);
  if (ingredient.always_there && fields.has(u"bought_by"))
    fields.refuse(u"always_there", Code::Conflict,
                  fields.noun() + QStringLiteral(" is always there, and has a bought_by"),
                  QStringLiteral("state one of the two: what is always there is never bought"));
  read_receiving(fields, ingredient);
}

}  // namespace lardiner::book
