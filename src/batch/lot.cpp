// The identity of a batch and of each of its containers.
#include "batch/lot.h"

#include "gs1/iso7064.h"

namespace lardiner::batch {

namespace {

QString padded(int number, int width) { return QStringLiteral("%1").arg(number, width, 10, QLatin1Char('0')); }

QString part(book::LotPart which, const book::Kitchen& kitchen, QDate made, const QString& product_code, int number) {
  switch (which) {
    case book::LotPart::Station:
      return kitchen.station;
    case book::LotPart::Year:
      return padded(made.year() % 100, 2);
    case book::LotPart::DayOfYear:
      return padded(made.dayOfYear(), 3);
    case book::LotPart::ProductCode:
      return product_code;
    case book::LotPart::Number:
      return padded(number, 2);
  }
  return {};
}

// The pattern without the check character.
QString body(const book::Kitchen& kitchen, QDate made, const QString& product_code, int number) {
  QString text;
  for (const book::LotPart which : kitchen.lot) text += part(which, kitchen, made, product_code, number);
  return text;
}

}  // namespace

QString lot(const book::Kitchen& kitchen, QDate made, const QString& product_code, int number) {
  const QString text = body(kitchen, made, product_code, number);
  return text + gs1::check_characters(gs1::CheckSystem::Mod37_36, text).value();
}

problem::Expected<QString> verified_lot(const QString& given, const QString& expected) {
  if (given == expected) return expected;
  if (!gs1::check_characters_hold(gs1::CheckSystem::Mod37_36, given)) {
    return tl::unexpected(
        problem::Error{problem::Code::Malformed,
                       QStringLiteral("the check character of lot \"%1\" does not hold").arg(given),
                       {},
                       QStringLiteral("copy it once more from the label; the lot of this batch is %1").arg(expected)});
  }
  return tl::unexpected(problem::Error{
      problem::Code::Conflict,
      QStringLiteral("lot \"%1\" is that of a different batch").arg(given),
      {},
      QStringLiteral("the lot of this batch is %1; correct the lot, or the record's day, product or number")
          .arg(expected)});
}

QString serial(const book::Kitchen& kitchen, QDate made, int number, int container) {
  return body(kitchen, made, QString(), number) + u'-' + QString::number(container);
}

}  // namespace lardiner::batch
