// Tests of batch/lot: the parts of a lot, its check character, and serials.
#include "batch/lot.h"

#include "gs1/iso7064.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::batch;

namespace {

book::Kitchen kitchen() {
  using book::LotPart;
  book::Kitchen k;
  k.station = QStringLiteral("A");
  k.lot = {LotPart::Station, LotPart::Year, LotPart::DayOfYear, LotPart::ProductCode, LotPart::Number};
  return k;
}

QString body(const QString& lot) { return lot.left(lot.size() - 1); }

const QString kButter = QStringLiteral("CLB");

}  // namespace

TEST_CASE("a lot is station, year, day of the year, product code, number and check character",
          "[batch][lot][src:iso-8601/ordinal]") {
  const QString made = lot(kitchen(), QDate(2026, 11, 25), kButter, 1);
  CHECK(body(made) == QStringLiteral("A26329CLB01"));
  CHECK(gs1::check_characters_hold(gs1::CheckSystem::Mod37_36, made));
}

TEST_CASE("the day of the year is the ISO 8601 ordinal date in three digits", "[batch][lot][src:iso-8601/ordinal]") {
  CHECK(body(lot(kitchen(), QDate(1985, 4, 12), kButter, 1)) == QStringLiteral("A85102CLB01"));
  CHECK(body(lot(kitchen(), QDate(2026, 10, 7), kButter, 1)) == QStringLiteral("A26280CLB01"));
  CHECK(body(lot(kitchen(), QDate(2024, 12, 31), kButter, 1)) == QStringLiteral("A24366CLB01"));
  CHECK(body(lot(kitchen(), QDate(2025, 12, 31), kButter, 1)) == QStringLiteral("A25365CLB01"));
  CHECK(body(lot(kitchen(), QDate(2005, 1, 1), kButter, 1)) == QStringLiteral("A05001CLB01"));
}

TEST_CASE("the running number has at least two digits and never loses one", "[batch][lot]") {
  CHECK(body(lot(kitchen(), QDate(2026, 11, 25), kButter, 12)) == QStringLiteral("A26329CLB12"));
  CHECK(body(lot(kitchen(), QDate(2026, 11, 25), kButter, 123)) == QStringLiteral("A26329CLB123"));
}

TEST_CASE("the parts of a lot stand in the kitchen's order", "[batch][lot]") {
  book::Kitchen k = kitchen();
  k.lot = {book::LotPart::ProductCode, book::LotPart::Year, book::LotPart::DayOfYear, book::LotPart::Number,
           book::LotPart::Station};
  CHECK(body(lot(k, QDate(2026, 11, 25), kButter, 1)) == QStringLiteral("CLB2632901A"));
}

TEST_CASE("the check character is that of ISO/IEC 7064 MOD 37,36", "[batch][lot][src:iso-7064/mod-37-36]") {
  // A12425GABC1234002 has M: the pattern is bent so that it gives that text.
  book::Kitchen k = kitchen();
  k.lot = {book::LotPart::Station};
  k.station = QStringLiteral("A12425GABC1234002");
  CHECK(lot(k, QDate(2026, 11, 25), kButter, 1) == QStringLiteral("A12425GABC1234002M"));
}

TEST_CASE("a lot that a person gave is accepted when it is the batch's", "[batch][lot]") {
  const QString own = lot(kitchen(), QDate(2026, 11, 25), kButter, 1);
  CHECK(verified_lot(own, own) == own);
}

TEST_CASE("a lot with a wrong check character is refused", "[batch][lot][src:iso-7064/mod-37-36]") {
  const QString own = lot(kitchen(), QDate(2026, 11, 25), kButter, 1);
  const QString wrong = body(own) + (own.back() == u'0' ? u'1' : u'0');
  const auto refused = verified_lot(wrong, own);
  REQUIRE_FALSE(refused);
  CHECK(problem::text(refused.error()) ==
        QStringLiteral("the check character of lot \"%1\" does not hold\n"
                       "  copy it once more from the label; the lot of this batch is %2")
            .arg(wrong, own));
}

TEST_CASE("a sound lot of a different batch is refused in other words", "[batch][lot]") {
  const QString own = lot(kitchen(), QDate(2026, 11, 25), kButter, 1);
  const QString other = lot(kitchen(), QDate(2026, 11, 25), kButter, 2);
  const auto refused = verified_lot(other, own);
  REQUIRE_FALSE(refused);
  CHECK(problem::text(refused.error()) ==
        QStringLiteral("lot \"%1\" is that of a different batch\n"
                       "  the lot of this batch is %2; correct the lot, or the record's day, product or number")
            .arg(other, own));
}

TEST_CASE("one wrong letter and two swapped ones are found in every lot", "[batch][lot][property]") {
  const QString own = lot(kitchen(), QDate(2026, 11, 25), kButter, 7);
  for (int i = 0; i < own.size(); ++i) {
    for (const QChar letter : QStringLiteral("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ")) {
      QString changed = own;
      changed[i] = letter;
      CHECK(verified_lot(changed, own).has_value() == (changed == own));
      if (changed != own) CHECK(verified_lot(changed, own).error().code == problem::Code::Malformed);
    }
  }
  for (int i = 0; i + 1 < own.size(); ++i) {
    QString swapped = own;
    swapped[i] = own[i + 1];
    swapped[i + 1] = own[i];
    if (swapped != own) CHECK(verified_lot(swapped, own).error().code == problem::Code::Malformed);
  }
}

TEST_CASE("a serial is the lot's running part with the container's number", "[batch][lot][src:gs1-genspecs/ai-21]") {
  CHECK(serial(kitchen(), QDate(2026, 11, 25), 1, 3) == QStringLiteral("A2632901-3"));
  CHECK(serial(kitchen(), QDate(2026, 11, 25), 12, 240) == QStringLiteral("A2632912-240"));
}

TEST_CASE("no two containers of one product share a serial", "[batch][lot][src:gs1-genspecs/ai-21]") {
  QStringList serials;
  for (int day = 1; day <= 3; ++day) {
    for (int number = 1; number <= 120; ++number) {
      for (int container = 1; container <= 12; ++container) {
        serials.append(serial(kitchen(), QDate(2026, 1, day), number, container));
      }
    }
  }
  const qsizetype all = serials.size();
  serials.removeDuplicates();
  CHECK(serials.size() == all);
}
