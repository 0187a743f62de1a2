// A lot as it was copied from a label: one of ours must keep its check character.
#include <QRegularExpression>

#include "gs1/iso7064.h"
#include "history/read_events_values.h"
#include "reader/quote.h"

namespace lardiner::history {

using problem::Code;
using reader::quoted;

namespace {

bool check_holds(const QString& lot) { return gs1::check_characters_hold(gs1::CheckSystem::Mod37_36, lot); }

QString part(book::LotPart which, const QString& codes) {
  switch (which) {
    case book::LotPart::Station:
      return QStringLiteral("[A-Z]");
    case book::LotPart::Year:
      return QStringLiteral("[0-9]{2}");
    case book::LotPart::DayOfYear:
      return QStringLiteral("[0-9]{3}");
    case book::LotPart::ProductCode:
      return QStringLiteral("(?<code>") + codes + u')';
    case book::LotPart::Number:
      return QStringLiteral("[0-9]{2,4}");
  }
  return {};
}

QStringList codes_of(const book::Book& book) {
  QStringList codes;
  for (const book::Product& product : book.products) codes += product.code;
  for (const book::Ingredient& ingredient : book.ingredients)
    if (!ingredient.code.isEmpty()) codes += ingredient.code;
  return codes;
}

// The kitchen's pattern with its check character (batch::lot), with a code of the book in it.
QRegularExpression pattern(const book::Book& book) {
  const QStringList codes = codes_of(book);
  QString text;
  for (const book::LotPart which : book.kitchen.lot) text += part(which, codes.join(u'|'));
  return QRegularExpression(QStringLiteral("\\A%1[0-9A-Z]\\z").arg(text));
}

QRegularExpressionMatch match(const QString& lot, const book::Book& book) {
  constexpr qsizetype kLongest = 40;  // no lot of any pattern is longer
  return lot.size() > kLongest ? QRegularExpressionMatch() : pattern(book).match(lot);
}

bool built_as_ours(const QString& lot, const book::Book& book) { return match(lot, book).hasMatch(); }

}  // namespace

QString item_of_lot(const QString& lot, const book::Book& book) {
  const QRegularExpressionMatch found = match(lot, book);
  if (!found.hasMatch() || !check_holds(lot)) return {};
  const QString code = found.captured(u"code");
  for (const book::Product& product : book.products)
    if (product.code == code) return product.id;
  for (const book::Ingredient& ingredient : book.ingredients)
    if (ingredient.code == code) return ingredient.id;
  return {};
}

QString read_lot(reader::Fields& fields, const QString& item, const book::Book& book) {
  const QString lot = read_name(fields, u"lot");
  if (lot.isEmpty() || check_holds(lot)) return lot;
  const QString upper = lot.toUpper();
  const bool ours = book.product(item) || built_as_ours(lot, book);
  const bool small = upper != lot && check_holds(upper) && (book.product(item) || built_as_ours(upper, book));
  if (!ours && !small) return lot;
  fields.refuse(u"lot", Code::Malformed,
                small ? QStringLiteral("lot %1 has small letters").arg(quoted(lot))
                      : QStringLiteral("the check character of lot %1 does not hold").arg(quoted(lot)),
                small ? QStringLiteral("write %1").arg(upper) : QStringLiteral("copy it once more from the label"));
  return {};
}

}  // namespace lardiner::history
