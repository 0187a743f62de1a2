// The use-by of one container: which rules apply, which decides, which lose, and why. Pure.
#pragma once

#include <QDate>
#include <QDateTime>
#include <QString>
#include <QTimeZone>
#include <optional>
#include <vector>

#include "batch/record.h"
#include "book/kitchen.h"
#include "book/shelf_life.h"
#include "problem/error.h"

namespace lardiner::batch {

/// A rule to be applied to the food itself: a product's own shelf life, or a limit of the adopted rule set.
struct Rule {
  QString name;               ///< "chilled, ready to eat", "opened package", "reduced oxygen pack"
  book::State state = book::State::Chilled;
  book::Length length;
  book::EndKind kind = book::EndKind::UseBy;
  book::Authority authority;
};

/// The date of one input at the moment it was used.
struct Cap {
  QString item;
  QString lot;
  QString why;                ///< "its own use-by", "oldest part of it", "maker's date"
  book::EndKind kind = book::EndKind::UseBy;
  QDateTime end;              ///< the first instant at which it is past
  bool is_date = true;        ///< shown as a date, not with a time
  bool absolute = false;      ///< a maker's date: freezing does not stretch it
  bool shelf_stable = false;  ///< a best-before of it caps a dry product and only warns in a short-lived one
};

struct Question {
  QTimeZone zone;
  book::FreezingDay freezing_day = book::FreezingDay::Counts;
  bool tcs = true;
  QDateTime made_at;          ///< start of the making
  bool time_known = true;
  std::optional<QDateTime> cooked_at;  ///< a cook that met its minimum: day 1 of the chilled days is its day
  std::vector<Rule> rules;
  std::vector<Cap> caps;
  std::vector<Event> timeline;         ///< of this container, any order
  book::TimeControlRule hot_or_cold_start, cold_start;  ///< of the rule set: 4 h, and 6 h never above 70 °F
  measure::TemperatureLimit cold_holding, hot_holding;
};

/// Why a date is what it is, or was not.
struct Reason {
  QString rule;               ///< "chilled, 7 days, day 1 is Wed 25 Nov 2026"
  QString authority;          ///< "FDA Food Code 2022 3-501.17(A)"
  QDateTime end;              ///< first instant past; for a frozen container the end if thawed on the day of freezing
  bool is_date = true;
  book::EndKind kind = book::EndKind::UseBy;
  bool decided = false;       ///< ties name all
};

struct UseBy {
  enum class Form {
    Date,     ///< use by the end of a calendar day
    Instant,  ///< use by a time of day
    Frozen,   ///< no use-by: days left after thawing
    None      ///< needs none (not TCS, no rule, no cap): only where the book says so
  };
  Form form = Form::Date;
  book::EndKind kind = book::EndKind::UseBy;
  QDateTime end;              ///< first instant past; of Frozen: the frozen best-before's, if there is one
  QDate date;                 ///< Date: the last good day
  int days_left = 0;          ///< Frozen: chilled days left, the day of thawing being the first of them
  std::optional<QDate> frozen_on, frozen_best_before, never_past;  ///< never_past: an absolute cap on a frozen container
  bool previously_frozen = false;      ///< carries forward
  bool time_control = false;
  std::vector<Reason> reasons;         ///< the deciding ones first, then the losers by their end
  QStringList warnings;                ///< a best-before that only warns
};

/// The design's chapter "Use-by, exactly", whole. Errors (no place of their own unless an event has one): an hours limit with a date-only making; freezing with no day left; thawing
/// what is not frozen; events before the making or out of order; time control from a temperature between the limits, twice,
/// or followed by anything but finishing or discarding; a TCS food without a rule for its state.
problem::ExpectedAll<UseBy> use_by(const Question& question);

/// An event's printed name ("frozen") for errors and reasons.
QString name(Happening what);

}  // namespace lardiner::batch
