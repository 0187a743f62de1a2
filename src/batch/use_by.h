// The use-by of one container: which rules apply, which decides, which lose, and why. Pure.
#pragma once

#include <QDate>
#include <QDateTime>
#include <QString>
#include <QStringList>
#include <QTimeZone>
#include <optional>
#include <vector>

#include "batch/record.h"
#include "book/kitchen.h"
#include "book/rule_set.h"
#include "book/shelf_life.h"
#include "problem/error.h"

namespace lardiner::batch {

/// A rule to be applied to the food itself: a product's own shelf life, or a limit of the adopted rule set.
struct Rule {
  QString name;  ///< "chilled, ready to eat", "opened package", "reduced oxygen pack"; empty: the state's
  book::State state = book::State::Chilled;
  book::Length length;
  book::EndKind kind = book::EndKind::UseBy;
  book::Authority authority;
  /// When its clock starts, where the timeline does not say: a reduced-oxygen pack at packing, an ingredient bought
  /// frozen at its thawing.
  std::optional<QDateTime> starts_at = std::nullopt;
};

/// The date of one input at the moment it was used (for one used from the freezer: as if thawed then). That it had not
/// passed by then is the caller's to check: it knows the input's place.
struct Cap {
  QString item;
  QString lot;
  QString why;  ///< "its own use-by", "oldest part of it", "maker's date"
  book::EndKind kind = book::EndKind::UseBy;
  QDateTime end;               ///< the first instant at which it is past
  bool is_date = true;         ///< shown as a date, not with a time
  bool absolute = false;       ///< a maker's date: freezing does not stretch it
  bool shelf_stable = false;   ///< a best-before of it caps a dry product and only warns in a short-lived one
  bool frozen_before = false;  ///< its day of freezing is used up: the next freezing is a second one
};

/// REQUIRES: a valid zone, instants and lengths of positive count. For reduced-oxygen packs the rules hold one with
/// `starts_at`, the packing; for food that is opened one for State::Opened (the rule set's opened_package where the
/// book has none).
struct Question {
  QTimeZone zone;
  book::FreezingDay freezing_day = book::FreezingDay::Counts;
  bool tcs = true;
  QDateTime made_at;  ///< start of the making
  bool time_known = true;
  std::optional<QDateTime> cooked_at =
      std::nullopt;  ///< a cook that met its minimum: day 1 of the chilled days is its day
  std::vector<Rule> rules;
  std::vector<Cap> caps;
  std::vector<Event> timeline;  ///< of this container, any order; at equal times in the order given
  book::TimeControlRule hot_or_cold_start, cold_start;  ///< of the rule set: 4 h, and 6 h never above 70 °F
  measure::TemperatureLimit cold_holding, hot_holding;
};

/// Why a date is what it is, or was not.
struct Reason {
  QString rule;       ///< "chilled, 7 days, day 1 is Wed 25 Nov 2026"
  QString authority;  ///< "FDA Food Code 2022 3-501.17(A)"
  QDateTime end;      ///< first instant past; for a frozen container the end if thawed on the day of freezing
  bool is_date = true;
  book::EndKind kind = book::EndKind::UseBy;
  bool decided = false;  ///< ties name all

  friend bool operator==(const Reason&, const Reason&) = default;
};

struct UseBy {
  enum class Form {
    Date,     ///< use by the end of a calendar day
    Instant,  ///< use by a time of day
    Frozen,   ///< no use-by: days left after thawing
    None      ///< needs none: not TCS with no rule and no cap, or discarded
  };
  Form form = Form::Date;
  book::EndKind kind =
      book::EndKind::UseBy;  ///< best before only for a food that is not TCS and has no use-by of any kind
  QDateTime end;             ///< first instant past; of Frozen: the frozen best-before's, if there is one
  QDate date;                ///< Date: the last good day
  int days_left = 0;  ///< Frozen: chilled days left, the day of thawing being the first of them; 0: no limit (not TCS)
  std::optional<QDate> frozen_on;           ///< the day of the last freezing, while it is frozen
  std::optional<QDate> frozen_best_before;  ///< last good day, counted from the FIRST freezing
  std::optional<QDate> never_past;          ///< last day, whenever it is thawed: an absolute cap on a frozen container
  bool previously_frozen = false;           ///< it has left a freezer; carries forward
  bool time_control = false;
  std::optional<measure::TemperatureLimit> never_above;  ///< the longer time control: not once above this
  std::vector<Reason> reasons;                           ///< the deciding ones first, then the losers by their end
  QStringList warnings;  ///< a best-before that only warns; a time control that got the shorter time

  friend bool operator==(const UseBy&, const UseBy&) = default;
};

/// The design's chapter "Use-by, exactly", whole. All limits of the states that the container is or has been in, and
/// all caps, compared as instants; the earliest wins. Chilled, thawed, opened and ambient limits and caps that are not
/// absolute stand still while the container is frozen; hot holding, time control, finishing and maker's dates never do.
/// Where the day of freezing is Free, it is so for the first freezing of the food only, wherever that was. Thawing
/// while the hours of a limit are fewer than a whole day cannot be told on a frozen label: freezing is refused then.
/// Errors (no place of their own unless an event has one): an hours limit with a date-only making; freezing with no day
/// left; thawing what is not frozen; events before the making, after discarding, at or after the end then in force
/// (discarding apart); time control from a temperature between the limits, twice, or followed by anything but finishing
/// or discarding; a TCS food without a limit for its state.
problem::ExpectedAll<UseBy> use_by(const Question& question);

/// An event's printed name ("frozen") for errors and reasons.
QString name(Happening what);

/// An input as a cook finds it.
struct InputAtCook {
  bool raw = false;     ///< by its readiness: must be cooked, or not fully cooked
  bool rework = false;  ///< the product as its own input
};

/// Whether a cook ends the clock of one of its inputs, so that the input's date does not cap the batch: of raw ones
/// only, and only on a reading that met the minimum of the most demanding part. A rework keeps its oldest date.
bool cook_ends_clock(const InputAtCook& input, bool cook_met);

}  // namespace lardiner::batch
