// Dates and release of a lot: cooling, corrections, and that nothing makes a shown date later.
#include "history/corrected_input.h"
#include "history/event_json.h"
#include "lots.h"
#include "random_events.h"

using namespace lardiner;
using namespace lardiner::history;
using namespace lardiner::history::lots;

namespace {

Event reading(const char* when, int fahrenheit) {
  Event cooled = event(Kind::Cooled, when);
  cooled.temperature = measure::Temperature{fahrenheit * 10, measure::Scale::Fahrenheit};
  return cooled;
}

Event correction(int last_day) {
  Event corrected = event(Kind::Correction, "12 09:00");
  corrected.ends = batch::StatedEnd{end_of(last_day), true, book::EndKind::UseBy};
  return corrected;
}

}  // namespace

TEST_CASE("a lot is not released until its cooling is shown", "[history][lot][cooling]") {
  Lot lot = begun(tinga(2));
  CHECK(state(lot, 1, "10 08:00") == Good::State::NotReleased);
  CHECK(told(lot, reading("10 08:00", 150)) == QString());
  CHECK(told(lot, reading("10 09:50", 68)) == QString());
  CHECK(state(lot, 1, "10 10:00") == Good::State::NotReleased);
  CHECK(told(lot, reading("10 13:00", 40)) == QString());
  CHECK(state(lot, 1, "10 13:10") == Good::State::Good);
}

TEST_CASE("what was pending is missed when its time is over, whoever asks", "[history][lot][cooling]") {
  const Lot lot = begun(tinga(1));
  CHECK(good(lot, lot.holders[0], at("10 08:00")).why.startsWith(QStringLiteral("cooling is not shown yet: ")));
  CHECK(good(lot, lot.holders[0], at("11 08:00")).why.startsWith(QStringLiteral("cooling missed its limits: ")));
}

TEST_CASE("no release releases what has not shown its cooling", "[history][lot][cooling]") {
  Lot lot = begun(tinga(1));
  CHECK(told(lot, entry(event(Kind::Hold, "10 08:10"), 80)) == QString());
  Event release = event(Kind::Release, "10 08:20");
  release.of = EntryId{QStringLiteral("A"), 80};
  CHECK(told(lot, release).startsWith(QStringLiteral("lot A26314CLB01X is not released: ")));
  CHECK(state(lot, 1, "10 08:30") == Good::State::Held);
}

TEST_CASE("a correction brings a date forward, whatever happens afterwards", "[history][lot][correction]") {
  Lot lot = begun(butter(2));
  CHECK(told(lot, correction(14)) == QString());
  CHECK(end(lot, 1) == end_of(14));
  CHECK(lot.holders[0].superseded);
  const Good shown = good(lot, lot.holders[0], at("12 10:00"));
  CHECK(shown.use_by->date == QDate(2026, 11, 14));
  CHECK(shown.use_by->reasons.front().rule == QStringLiteral("corrected"));
  CHECK(told(lot, event(Kind::Frozen, "12 10:00", {1})) == QString());
  CHECK(good(lot, lot.holders[0], at("12 11:00")).use_by->never_past == QDate(2026, 11, 14));
  CHECK(state(lot, 1, "15 00:00") == Good::State::Past);
}

TEST_CASE("a correction never makes a date later", "[history][lot][correction]") {
  const QString refused = QStringLiteral(
      "the date of lot A26314CLB01X would not be earlier\n"
      "  a correction only shortens; for a longer life correct the record and make it again");
  Lot lot = begun(butter(2));
  CHECK(told(lot, correction(16)) == refused);
  CHECK(told(lot, correction(17)) == refused);
  CHECK(told(lot, correction(14)) == QString());
  CHECK(told(lot, correction(15)) == refused);
}

TEST_CASE("allergens that a correction adds supersede the labels, and are told", "[history][lot][correction]") {
  Lot lot = begun(butter(1));
  Event corrected = event(Kind::Correction, "12 09:00");
  corrected.adds = QStringList{QStringLiteral("sesame")};
  CHECK(told(lot, corrected) == QString());
  CHECK(lot.holders[0].superseded);
  CHECK(good(lot, lot.holders[0], at("12 10:00")).why == QStringLiteral("a correction adds: sesame"));
}

TEST_CASE("a making is read back with its facts, and in brief without them", "[history][event_json]") {
  Event made = event(Kind::Made, "10 07:40");
  made.made = butter(3);
  const Entry written = entry(made, 1);
  const QByteArray text = body(written);
  const auto whole_entry = entry_of(written.id, text);
  const auto brief = brief_entry_of(written.id, text);
  REQUIRE(whole_entry);
  REQUIRE(brief);
  CHECK(body(*whole_entry) == text);
  CHECK(whole(begin(*whole_entry).value()) == whole(begin(written).value()));
  CHECK_FALSE(brief->event.made);
  CHECK(brief->event.lot == made.lot);
}

TEST_CASE("no sequence of events makes a shown date later than the rules allow, or loses an amount",
          "[history][lot][property]") {
  static const Kind kinds[] = {Kind::Moved,    Kind::Frozen,      Kind::Thawed,    Kind::Opened,      Kind::HotHeld,
                               Kind::Finished, Kind::Split,       Kind::Used,      Kind::Counted,     Kind::Dispatched,
                               Kind::Arrived,  Kind::Returned,    Kind::Discarded, Kind::Hold,        Kind::Correction,
                               Kind::Printed,  Kind::TimeControl, Kind::Reheated,  Kind::RecallOpened};
  for (unsigned seed = 1; seed <= 60; ++seed) {
    random::Events random(seed);
    Lot lot = begun(butter(4));
    QDateTime now = at("10 08:00");
    measure::Quantity drawn = grams(0);
    for (int step = 0; step < 25; ++step) {
      now = now.addSecs(random.number(1, 12) * 1800);
      Event next = event(kinds[random.number(0, static_cast<int>(std::size(kinds)) - 1)], "10 08:00");
      next.at = now;
      if (random.chance(80)) next.containers = {random.number(1, static_cast<int>(lot.holders.size()) + 1)};
      if (next.kind == Kind::Used || random.chance(20)) next.quantity = grams(random.number(1, 300));
      next.count = random.number(1, 3);
      next.container_kind = QStringLiteral("jar");
      next.left_percent = random.number(0, 4) * 25;
      next.temperature = measure::Temperature{random.chance(50) ? 400 : 1400, measure::Scale::Fahrenheit};
      if (next.kind == Kind::Correction)
        next.ends = batch::StatedEnd{now.addDays(random.number(0, 9)), false, book::EndKind::UseBy};
      std::vector<std::optional<QDateTime>> before;
      std::vector<bool> was_frozen;
      for (const Holder& holder : lot.holders) {
        before.push_back(good(lot, holder, now).end);
        was_frozen.push_back(holder.frozen);
      }
      told(lot, next);
      if (random.chance(20)) {
        const measure::Quantity wanted = grams(random.number(1, 200));
        take(lot, wanted, {}, now);
        drawn = drawn + wanted;
      }
      for (size_t i = 0; i < lot.holders.size(); ++i) {
        const Holder& holder = lot.holders[i];
        const std::optional<QDateTime> end = good(lot, holder, now).end;
        const batch::Question& question = lot.made->questions[static_cast<size_t>(lot.made->question_of[i])];
        const batch::UseBy allowed = batch::use_by(question).value();
        const bool dated = allowed.form == batch::UseBy::Form::Date || allowed.form == batch::UseBy::Form::Instant;
        if (dated) REQUIRE(end);
        if (dated) REQUIRE(*end <= allowed.end);
        if (lot.not_after && end) REQUIRE(*end <= lot.not_after->end);
        const bool kept = i < before.size() && before[i] && !was_frozen[i] && !holder.frozen;
        if (kept && holder.where != Where::Discarded) REQUIRE((end && *end <= *before[i]));
      }
      const Balance sum = balance(lot, drawn);
      REQUIRE(sum.made == sum.used + sum.dispatched + sum.discarded + sum.missing + sum.on_hand + sum.difference);
      REQUIRE(sum.made == grams(2100));
    }
  }
}

namespace {

const WentIn kButter{QStringLiteral("butter-unsalted"), QStringLiteral("MB-5521"), true};

batch::StatedEnd ends_on(int day, book::EndKind kind = book::EndKind::UseBy) { return {end_of(day), true, kind}; }

// The butter of 10 November, with a cook, and with the date of what went into it.
Lot cooked(bool keeps_date) {
  batch::Fixed fixed = butter(2);
  fixed.cooked_at = at("10 08:30");
  if (keeps_date) {
    batch::Cap cap;
    cap.item = kButter.item;
    cap.lot = kButter.lot;
    cap.end = end_of(20);
    fixed.questions.front().caps = {cap};
  }
  return begun(fixed);
}

}  // namespace

TEST_CASE("what was made of a lot keeps its corrected date, unless a cook ended what it keeps",
          "[history][lot][correction]") {
  CHECK(is_bounded(begun(butter(2)), kButter, ends_on(14)));
  CHECK_FALSE(is_bounded(begun(butter(2)), kButter, ends_on(16)));  // its own is no later
  CHECK_FALSE(is_bounded(cooked(false), kButter, ends_on(14)));
  CHECK(is_bounded(cooked(true), kButter, ends_on(14)));
  CHECK_FALSE(is_bounded(received(), kButter, ends_on(14)));
}

TEST_CASE("what was made when the lot was past its corrected date is bounded, cooked or not",
          "[history][lot][correction]") {
  CHECK(is_bounded(cooked(false), kButter, ends_on(9)));
  CHECK_FALSE(is_bounded(cooked(false), kButter, ends_on(10)));
  batch::Fixed day_known = butter(2);
  day_known.cooked_at = at("10 08:30");
  day_known.batch.record.time_known = false;
  batch::StatedEnd noon{at("10 12:00"), false, book::EndKind::UseBy};
  CHECK(is_bounded(begun(day_known), kButter, noon));  // it may have been made afterwards
  CHECK_FALSE(is_bounded(begun(day_known), kButter, ends_on(10)));
}

TEST_CASE("a corrected best-before of what needs no temperature control bounds nothing that does",
          "[history][lot][correction]") {
  WentIn salt = kButter;
  salt.tcs = false;
  CHECK_FALSE(is_bounded(begun(butter(2)), salt, ends_on(14, book::EndKind::BestBefore)));
  CHECK(is_bounded(begun(butter(2)), salt, ends_on(14)));
  CHECK(is_bounded(begun(butter(2)), kButter, ends_on(14, book::EndKind::BestBefore)));
}

TEST_CASE("a correction that comes through an input shortens what it can and refuses nothing",
          "[history][lot][correction]") {
  Lot lot = begun(butter(2));
  Event corrected = correction(14);
  corrected.lot = kButter.lot;
  corrected.item = kButter.item;
  CHECK(came_through_input(lot, corrected));
  CHECK(told(lot, corrected) == QString());
  CHECK(end(lot, 1) == end_of(14));
  CHECK(lot.holders[0].superseded);
  corrected.ends = ends_on(15);
  CHECK(told(lot, corrected) == QString());
  CHECK(end(lot, 1) == end_of(14));
}

TEST_CASE("a receipt that is recorded late bounds what was made of its lot, and a refused delivery does not",
          "[history][lot][correction]") {
  Lot lot = begun(butter(2));
  Event late = receipt();
  late.stated = ends_on(12);
  CHECK(came_through_input(lot, late));
  CHECK(told(lot, late) == QString());
  CHECK(end(lot, 1) == end_of(12));
  CHECK(lot.holders[1].superseded);
  late.accepted = false;
  CHECK_FALSE(came_through_input(lot, late));
  late.accepted = true;
  late.stated.reset();
  CHECK_FALSE(came_through_input(lot, late));
}

TEST_CASE("a corrected use-by is shown as a use-by, also of what had a best-before", "[history][lot][correction]") {
  Lot lot = begun(butter(1));
  lot.made->batch.use_bys.front().kind = book::EndKind::BestBefore;
  REQUIRE(good(lot, lot.holders[0], at("10 08:00")).use_by->kind == book::EndKind::BestBefore);
  CHECK(told(lot, correction(14)) == QString());
  CHECK(good(lot, lot.holders[0], at("10 08:00")).use_by->kind == book::EndKind::UseBy);
  Lot strict = begun(butter(1));
  Event quality = correction(14);
  quality.ends->kind = book::EndKind::BestBefore;
  CHECK(told(strict, quality) == QString());
  CHECK(good(strict, strict.holders[0], at("10 08:00")).use_by->kind == book::EndKind::UseBy);
}

TEST_CASE("a correction gives the date that nobody wrote down as a package came, and none to an open one",
          "[history][lot][correction]") {
  Event undated = receipt();
  undated.stated.reset();
  Lot lot = begin(entry(undated, 2)).value();
  REQUIRE(good(lot, lot.holders[0], at("10 08:00")).state == Good::State::NoDate);
  Event date = correction(14);
  date.lot = lot.code;
  CHECK(told(lot, date) == QString());
  CHECK(state(lot, 1, "10 08:00") == Good::State::Good);
  CHECK(good(lot, lot.holders[0], at("10 08:00")).use_by->date == QDate(2026, 11, 14));
  CHECK(state(lot, 1, "15 00:00") == Good::State::Past);
  Event opened = event(Kind::Opened, "12 10:00", {2});
  opened.lot = lot.code;
  CHECK(told(lot, opened) == QString());
  CHECK(state(lot, 2, "12 11:00") == Good::State::NoDate);
  CHECK(state(lot, 2, "15 00:00") == Good::State::Past);
}
