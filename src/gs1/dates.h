// Dates and times as GS1 elements write them, with two-digit years, and back.
#pragma once

#include <QDate>
#include <QDateTime>
#include <QString>
#include <QTime>

#include "problem/error.h"

namespace lardiner::gs1 {

/// The full year of two digits in the eyes of `this_year`: 51 or more ahead is last century, 50 or more behind is next
/// (GS1 General Specifications 7.12). REQUIRES: 0 <= two_digits <= 99.
int full_year(int two_digits, int this_year);

/// What day 00 means: the last of the month in AI 11, 13, 15, 17; no date in 7003, 7006, 8008.
enum class DayZero { LastOfMonth, Refused };

/// YYMMDD: AI 11, 13, 15, 17, 7006. REQUIRES: date.isValid().
QString yymmdd(QDate date);
problem::Expected<QDate> read_yymmdd(const QString& text, int this_year, DayZero day_zero);

/// A time of the clock on the wall, as elements hold it: without a zone.
struct WallTime {
  QDate date;
  QTime time;

  friend bool operator==(const WallTime&, const WallTime&) = default;
};

/// What the clock shows at `local` in its own zone.
WallTime wall_time(const QDateTime& local);

/// YYMMDDHHMM: AI 7003, use by. Seconds are cut off, so that it is never later than `end`. REQUIRES: both parts valid.
QString yymmddhhmm(const WallTime& end);
problem::Expected<WallTime> read_yymmddhhmm(const QString& text, int this_year);

enum class Precision { Hours, Minutes, Seconds };

/// YYMMDDHH, YYMMDDHHMM or YYMMDDHHMMSS: AI 8008, made at; finer parts are cut off. REQUIRES: both parts valid.
QString production_time(const WallTime& made, Precision precision);

struct ProductionTime {
  WallTime made;
  Precision precision = Precision::Minutes;

  friend bool operator==(const ProductionTime&, const ProductionTime&) = default;
};
problem::Expected<ProductionTime> read_production_time(const QString& text, int this_year);

}  // namespace lardiner::gs1
