// The identity of a batch and of each of its containers.
#pragma once

#include <QDate>
#include <QString>

#include "book/kitchen.h"
#include "problem/error.h"

namespace lardiner::batch {

/// The kitchen's lot pattern applied to the day of the lot (batch::lot_day): year as two digits, day of the year as
/// three (ISO 8601 ordinal date), number as at least two, then the ISO/IEC 7064 MOD 37,36 check character:
/// A26329CLB01K. REQUIRES: station and product code of 0-9 and A-Z, as the book checks; number at least 1.
QString lot(const book::Kitchen& kitchen, QDate made, const QString& product_code, int number);

/// A lot that a person gave: the check character holds, and it is the one this batch must have. The error (without
/// place) says which of the two failed and what the lot should be.
problem::Expected<QString> verified_lot(const QString& given, const QString& expected);

/// GS1 serial (21) of container `container` of a batch: the lot without product code and check, a hyphen, the
/// container's number: A2632901-3. Unique for a GTIN for good: GS1 serials are per GTIN, not per lot.
QString serial(const book::Kitchen& kitchen, QDate made, int number, int container);

}  // namespace lardiner::batch
