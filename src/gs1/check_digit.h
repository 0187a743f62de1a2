// The mod-10 check digit of GS1 keys, and the GTIN of an item number under the kitchen's prefix.
#pragma once

#include <QString>
#include <QStringView>

#include "problem/error.h"

namespace lardiner::gs1 {

/// Only 0 to 9, and at least one of them; digits of other scripts are not digits here.
bool all_digits(QStringView text);

/// The digit that belongs behind `digits` (GS1 General Specifications, section 7.9: weights 3 and 1 from the right).
/// REQUIRES: all_digits(digits).
QChar check_digit(QStringView digits);

/// Whether the last digit is the check digit of those before it; false for fewer than two characters or other
/// characters than digits.
bool check_digit_holds(QStringView digits);

/// The 14-digit GTIN of an item: `prefix`, the item number filled with zeros from the left to 12 digits in all, the
/// check digit, and a leading 0. The prefix is a GS1 company prefix (4 to 11 digits) or one for restricted circulation:
/// 04 within a company, 02 and 20 to 29 within a region. Item numbers "7" and "007" give the same GTIN.
problem::Expected<QString> gtin14(const QString& prefix, const QString& item_number);

}  // namespace lardiner::gs1
