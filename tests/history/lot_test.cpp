// What befalls the containers of a lot: whereabouts, states, holds, recalls, labels.
#include "history/lot.h"

#include "lots.h"

using namespace lardiner;
using namespace lardiner::history;
using namespace lardiner::history::lots;

TEST_CASE("a lot that was made stands in its containers, each with its serial and its date", "[history][lot]") {
  const Lot lot = begun(butter(3));
  CHECK(lot.code == QStringLiteral("A26314CLB01X"));
  CHECK(lot.entry.text() == QStringLiteral("A-1"));
  CHECK(lot.quantity == grams(1600));
  REQUIRE(lot.holders.size() == 3);
  CHECK(lot.holders[1].serial == QStringLiteral("A2631401-2"));
  CHECK(lot.holders[1].kind == QStringLiteral("tub"));
  CHECK(lot.holders[1].left == grams(500));
  CHECK(end(lot, 2) == end_of(16));
  CHECK(state(lot, 2, "16 23:59") == Good::State::Good);
  CHECK(state(lot, 2, "17 00:00") == Good::State::Past);
}

TEST_CASE("what the record says of its containers is so from the beginning", "[history][lot]") {
  batch::Fixed fixed = butter(3);
  batch::Event frozen{batch::Happening::Frozen, at("10 11:00"), {}, 0, {1}, QStringLiteral("MK"), {}};
  batch::Event discarded{batch::Happening::Discarded, at("10 12:00"), {}, 0, {2}, QStringLiteral("MK"), {}};
  REQUIRE(batch::happen(fixed, {frozen, discarded}).empty());
  const Lot lot = begun(fixed);
  CHECK(lot.holders[0].frozen);
  CHECK(lot.holders[1].where == Where::Discarded);
  CHECK_FALSE(lot.holders[2].frozen);
  CHECK(state(lot, 2, "10 13:00") == Good::State::Gone);
}

TEST_CASE("a supplier's lot stands in its packages, which share what was received exactly", "[history][lot]") {
  const Lot lot = received();
  REQUIRE(lot.holders.size() == 3);
  CHECK(lot.holders[0].left.amount == 3'333'333'333'334);
  CHECK(lot.holders[2].left.amount == 3'333'333'333'333);
  CHECK(lot.holders[0].left + lot.holders[1].left + lot.holders[2].left == grams(10'000));
  CHECK(lot.holders[0].place == QStringLiteral("walk-in 1"));
  CHECK(end(lot, 1) == end_of(20));
}

TEST_CASE("a delivery that was not accepted has no packages", "[history][lot]") {
  Event refused = receipt();
  refused.accepted = false;
  const Lot lot = begin(entry(refused)).value();
  CHECK(lot.holders.empty());
  CHECK(lot.quantity == grams(0));
}

TEST_CASE("nothing but a making or a receipt begins a lot", "[history][lot]") {
  const auto begun = begin(entry(event(Kind::Moved, "10 08:00"), 5));
  REQUIRE_FALSE(begun);
  CHECK(problem::text(begun.error()) ==
        QStringLiteral("entry A-5 is \"moved\", and begins no lot\n  record the making or the receipt first"));
  Entry nowhere = entry(receipt(), 6);
  nowhere.zone = QStringLiteral("Mars/Olympus");
  REQUIRE_FALSE(begin(nowhere));
  CHECK(problem::text(begin(nowhere).error()) ==
        QStringLiteral("entry A-6: there is no time zone Mars/Olympus\n  write it as America/New_York"));
}

TEST_CASE("moving says where containers are, and when they were seen", "[history][lot]") {
  Lot lot = begun(butter(3));
  Event moved = event(Kind::Moved, "11 09:00", {2});
  moved.place = QStringLiteral("walk-in 2");
  CHECK(told(lot, moved) == QString());
  CHECK(lot.holders[1].place == QStringLiteral("walk-in 2"));
  CHECK(lot.holders[1].seen == at("11 09:00"));
  CHECK(lot.holders[0].place.isEmpty());
  CHECK_FALSE(lot.holders[1].superseded);
}

TEST_CASE("a container that there is not, or that is gone or away, cannot be moved", "[history][lot]") {
  Lot lot = begun(butter(2));
  CHECK(told(lot, event(Kind::Moved, "11 09:00", {3})) ==
        QStringLiteral("there is no container 3: lot A26314CLB01X has 2\n  correct the numbers of the containers"));
  CHECK(told(lot, event(Kind::Discarded, "11 09:00", {1})) == QString());
  CHECK(told(lot, event(Kind::Dispatched, "11 09:00", {2})) == QString());
  const QString hint = QStringLiteral("\n  correct the numbers of the containers, or record first how it came back");
  CHECK(told(lot, event(Kind::Moved, "11 10:00", {1})) ==
        QStringLiteral("container 1 of lot A26314CLB01X is discarded, so it cannot be moved") + hint);
  CHECK(told(lot, event(Kind::Frozen, "11 10:00", {2})) ==
        QStringLiteral("container 2 of lot A26314CLB01X is dispatched, so it cannot be frozen") + hint);
  CHECK(told(lot, event(Kind::Moved, "11 10:00")) ==
        QStringLiteral("nothing of lot A26314CLB01X is in the kitchen any more\n"
                       "  correct the lot, or record first how it came back"));
}

TEST_CASE("nothing is done to a lot before it was there", "[history][lot]") {
  Lot lot = begun(butter(1));
  CHECK(told(lot, event(Kind::Moved, "10 07:39")) ==
        QStringLiteral("moved at Tue 10 Nov 2026 07:39, before lot A26314CLB01X was there at Tue 10 Nov 2026 07:40\n"
                       "  correct the time of one of the two"));
  CHECK(told(lot, event(Kind::Moved, "10 07:40")) == QString());
}

TEST_CASE("freezing stops the days and supersedes the labels of what it touches alone", "[history][lot]") {
  Lot lot = begun(butter(2));
  CHECK(told(lot, event(Kind::Frozen, "11 09:00", {1})) == QString());
  CHECK(lot.holders[0].frozen);
  CHECK(lot.holders[0].superseded);
  CHECK_FALSE(lot.holders[1].superseded);
  CHECK(state(lot, 1, "20 09:00") == Good::State::Good);
  CHECK(state(lot, 2, "20 09:00") == Good::State::Past);
  CHECK(told(lot, event(Kind::Thawed, "20 09:00", {1})) == QString());
  CHECK_FALSE(lot.holders[0].frozen);
  CHECK(lot.holders[0].thawed);
  CHECK(end(lot, 1) == end_of(22));
}

TEST_CASE("what the rules refuse of a lot changes nothing", "[history][lot]") {
  Lot lot = begun(butter(2));
  CHECK(told(lot, event(Kind::Thawed, "11 09:00", {1})) ==
        QStringLiteral("thawed at Wed 11 Nov 2026 09:00, when it was not frozen\n  add the freezing before it"));
  CHECK(told(lot, event(Kind::TimeControl, "11 09:00", {1})) ==
        QStringLiteral("time control without the temperature it started from\n"
                       "  write the core temperature when it left temperature control"));
}

TEST_CASE("a printed label is true until something supersedes it", "[history][lot][label]") {
  Lot lot = begun(butter(2));
  Event printed = event(Kind::Printed, "10 08:00", {1});
  printed.label_end = QStringLiteral("17=261116");
  CHECK(told(lot, entry(printed, 40)) == QString());
  CHECK(lot.holders[0].label.text() == QStringLiteral("A-40"));
  CHECK(lot.holders[0].label_end == QStringLiteral("17=261116"));
  CHECK(told(lot, event(Kind::Moved, "10 09:00")) == QString());
  CHECK_FALSE(lot.holders[0].superseded);
  CHECK(told(lot, event(Kind::Hold, "10 09:30")) == QString());
  CHECK(lot.holders[0].superseded);
  CHECK(told(lot, entry(printed, 41)) == QString());
  CHECK_FALSE(lot.holders[0].superseded);
  CHECK(told(lot, event(Kind::Voided, "10 10:00", {1})) == QString());
  CHECK_FALSE(lot.holders[0].label.valid());
}

TEST_CASE("a label that did not come out makes the one before it no truer", "[history][lot][label]") {
  Lot lot = begun(butter(2));
  Event printed = event(Kind::Printed, "10 08:00", {1});
  printed.label_end = QStringLiteral("17=261116");
  REQUIRE(told(lot, entry(printed, 40)) == QString());
  REQUIRE(told(lot, event(Kind::Opened, "10 09:00", {1})) == QString());
  REQUIRE(lot.holders[0].superseded);
  REQUIRE(told(lot, entry(printed, 41)) == QString());
  REQUIRE(told(lot, event(Kind::Voided, "10 10:00", {1})) == QString());
  CHECK(lot.holders[0].superseded);
  CHECK_FALSE(lot.holders[0].held_alone);
  CHECK(told(lot, entry(printed, 42)) == QString());
  CHECK_FALSE(lot.holders[0].superseded);
}

TEST_CASE("the same label again is the label that is on it, and never one that is superseded",
          "[history][lot][label]") {
  Lot lot = begun(butter(2));
  Event again = event(Kind::Reprinted, "10 09:00", {1});
  again.label_end = QStringLiteral("17=261116");
  CHECK(told(lot, again) == QStringLiteral("container 1 of lot A26314CLB01X has no such label\n  print a new one"));
  Event printed = event(Kind::Printed, "10 08:00", {1});
  printed.label_end = QStringLiteral("17=261116");
  CHECK(told(lot, printed) == QString());
  CHECK(told(lot, again) == QString());
  Event later = again;
  later.label_end = QStringLiteral("17=261117");
  CHECK(told(lot, later) == QStringLiteral("container 1 of lot A26314CLB01X has no such label\n  print a new one"));
  CHECK(told(lot, event(Kind::Opened, "10 10:00", {1})) == QString());
  CHECK(told(lot, again) ==
        QStringLiteral("the label of container 1 of lot A26314CLB01X is superseded\n  print a new one"));
}

TEST_CASE("what is dispatched arrives, and what comes back is on hold", "[history][lot]") {
  Lot lot = begun(butter(3));
  Event away = event(Kind::Dispatched, "11 09:00", {1, 2});
  away.site = QStringLiteral("harbour-street");
  away.note = QStringLiteral("DN-7");
  CHECK(told(lot, away) == QString());
  CHECK(lot.holders[0].where == Where::Dispatched);
  CHECK(lot.holders[0].site == QStringLiteral("harbour-street"));
  Event arrived = event(Kind::Arrived, "11 10:00");
  arrived.note = QStringLiteral("DN-8");
  CHECK(told(lot, arrived) == QStringLiteral("nothing of lot A26314CLB01X is on its way\n"
                                             "  correct the lot, or record first how it came back"));
  arrived.note = QStringLiteral("DN-7");
  CHECK(told(lot, arrived) == QString());
  CHECK(lot.holders[1].where == Where::AtSite);
  CHECK(lot.holders[2].where == Where::Here);
  Event returned = event(Kind::Returned, "11 12:00", {2});
  returned.reason = QStringLiteral("too many");
  CHECK(told(lot, entry(returned, 60)) == QString());
  CHECK(lot.holders[1].where == Where::Here);
  CHECK(state(lot, 3, "11 13:00") == Good::State::Held);
  CHECK(good(lot, lot.holders[2], at("11 13:00")).why ==
        QStringLiteral("on hold since Wed 11 Nov 2026 12:00: too many (MK)"));
}

TEST_CASE("what comes back released is not on hold", "[history][lot]") {
  Lot lot = begun(butter(1));
  CHECK(told(lot, event(Kind::Dispatched, "11 09:00")) == QString());
  Event returned = event(Kind::Returned, "11 12:00");
  returned.reason = QStringLiteral("released");
  CHECK(told(lot, returned) == QString());
  CHECK(state(lot, 1, "11 13:00") == Good::State::Good);
}

TEST_CASE("what a site does not accept is still on its way", "[history][lot]") {
  Lot lot = begun(butter(1));
  CHECK(told(lot, event(Kind::Dispatched, "11 09:00")) == QString());
  Event arrived = event(Kind::Arrived, "11 10:00");
  arrived.accepted = false;
  CHECK(told(lot, arrived) == QString());
  CHECK(lot.holders[0].where == Where::Dispatched);
}

TEST_CASE("a hold is released by its own number alone", "[history][lot][hold]") {
  Lot lot = begun(butter(1));
  Event hold = event(Kind::Hold, "11 09:00");
  hold.reason = QStringLiteral("found open");
  CHECK(told(lot, entry(hold, 50)) == QString());
  CHECK(state(lot, 1, "11 10:00") == Good::State::Held);
  Event release = event(Kind::Release, "11 11:00");
  release.of = EntryId{QStringLiteral("A"), 51};
  CHECK(told(lot, release) == QStringLiteral("entry A-51 does not hold lot A26314CLB01X\n"
                                             "  name the entry that put it on hold, as its history shows it"));
  release.of.number = 50;
  CHECK(told(lot, release) == QString());
  CHECK(state(lot, 1, "11 12:00") == Good::State::Good);
}

TEST_CASE("a label is true again after a hold that was released, unless something else made it untrue",
          "[history][lot][hold][label]") {
  Lot lot = begun(butter(3));
  CHECK(told(lot, event(Kind::Printed, "10 08:00")) == QString());
  CHECK(told(lot, event(Kind::Opened, "11 08:00", {1})) == QString());
  CHECK(told(lot, entry(event(Kind::Hold, "11 09:00"), 50)) == QString());
  CHECK(told(lot, entry(event(Kind::Hold, "11 09:10"), 51)) == QString());
  CHECK(told(lot, event(Kind::Frozen, "11 09:30", {2})) == QString());
  Event release = event(Kind::Release, "11 11:00");
  release.of = EntryId{QStringLiteral("A"), 50};
  CHECK(told(lot, release) == QString());
  CHECK(lot.holders[2].superseded);  // the other hold holds it still
  release.of.number = 51;
  CHECK(told(lot, release) == QString());
  CHECK(lot.holders[0].superseded);
  CHECK(lot.holders[1].superseded);
  CHECK_FALSE(lot.holders[2].superseded);
}

TEST_CASE("a HOLD label is true until nothing holds its lot", "[history][lot][hold][label]") {
  Lot lot = begun(butter(2));
  CHECK(told(lot, event(Kind::Printed, "10 08:00")) == QString());
  CHECK(told(lot, entry(event(Kind::Hold, "11 09:00"), 50)) == QString());
  Event hold_label = event(Kind::Printed, "11 09:05", {1});
  hold_label.what = QStringLiteral("hold");
  CHECK(told(lot, hold_label) == QString());
  CHECK_FALSE(lot.holders[0].superseded);
  CHECK(told(lot, entry(event(Kind::RecallOpened, "11 10:00"), 51)) == QString());
  Event release = event(Kind::Release, "11 11:00");
  release.of = EntryId{QStringLiteral("A"), 50};
  CHECK(told(lot, release) == QString());
  CHECK_FALSE(lot.holders[0].superseded);  // of the recall it is true
  CHECK(lot.holders[1].superseded);
  Event closed = event(Kind::RecallClosed, "11 12:00");
  closed.of = EntryId{QStringLiteral("A"), 51};
  CHECK(told(lot, closed) == QString());
  CHECK(lot.holders[0].superseded);
  CHECK_FALSE(lot.holders[1].superseded);
}

TEST_CASE("an open recall outweighs a hold, and ends with its own closing alone", "[history][lot][recall]") {
  Lot lot = begun(butter(1));
  CHECK(told(lot, entry(event(Kind::Hold, "11 09:00"), 70)) == QString());
  CHECK(told(lot, entry(event(Kind::RecallOpened, "11 10:00"), 71)) == QString());
  CHECK(state(lot, 1, "11 11:00") == Good::State::Recalled);
  Event closed = event(Kind::RecallClosed, "11 12:00");
  closed.of = EntryId{QStringLiteral("A"), 70};
  CHECK(told(lot, closed) == QStringLiteral("entry A-70 is no open recall of lot A26314CLB01X\n"
                                            "  name the entry that opened it, as its history shows it"));
  closed.of.number = 71;
  CHECK(told(lot, closed) == QString());
  CHECK(state(lot, 1, "11 13:00") == Good::State::Held);
}

TEST_CASE("a further delivery of a supplier's lot adds packages, and the earlier date counts", "[history][lot]") {
  Lot lot = received();
  Event more = receipt("12 06:30");
  more.count = 1;
  more.quantity = grams(500);
  more.stated->end = end_of(18);
  CHECK(told(lot, more) == QString());
  REQUIRE(lot.holders.size() == 4);
  CHECK(lot.holders[3].number == 4);
  CHECK(lot.quantity == grams(10'500));
  CHECK(end(lot, 1) == end_of(18));
  more.stated->end = end_of(19);
  CHECK(told(lot, more) == QString());
  CHECK(end(lot, 5) == end_of(18));
}

TEST_CASE("another supplier's lot of the same name, or one that was made here, is no further delivery",
          "[history][lot]") {
  Lot lot = received();
  Event other = receipt("12 06:30");
  other.supplier_item = QStringLiteral("brook-butter");
  CHECK(told(lot, other) ==
        QStringLiteral("lot MB-5521 was received before as another supplier item than \"brook-butter\"\n"
                       "  correct the supplier item, or tell the lots of two suppliers apart by a letter behind them"));
  Lot made = begun(butter(1));
  Event of_ours = receipt("12 06:30");
  of_ours.lot = made.code;
  of_ours.item = made.item;
  CHECK(told(made, of_ours) == QStringLiteral("lot A26314CLB01X was made here\n"
                                              "  correct the lot; what came back is \"returned\""));
}

TEST_CASE("a package that was opened or thawed has no date until a record of it gives one", "[history][lot]") {
  Lot lot = received();
  CHECK(told(lot, event(Kind::Opened, "11 09:00", {1})) == QString());
  CHECK(state(lot, 1, "11 10:00") == Good::State::NoDate);
  CHECK(good(lot, lot.holders[0], at("11 10:00")).why ==
        QStringLiteral("it was opened: a record of the opening gives it a date"));
  CHECK(told(lot, event(Kind::Frozen, "11 09:00", {2})) == QString());
  CHECK(end(lot, 2) == end_of(20));
  CHECK(told(lot, event(Kind::Thawed, "12 09:00", {2})) == QString());
  CHECK(state(lot, 2, "12 10:00") == Good::State::NoDate);
  CHECK(state(lot, 3, "12 10:00") == Good::State::Good);
}

TEST_CASE("a supplier's lot without a date is good only if it needs no temperature control", "[history][lot]") {
  Event undated = receipt();
  undated.stated.reset();
  CHECK(state(begin(entry(undated)).value(), 1, "11 10:00") == Good::State::NoDate);
  undated.tcs = false;
  CHECK(state(begin(entry(undated)).value(), 1, "11 10:00") == Good::State::Good);
}

TEST_CASE("what only a record can date is not done to a supplier's lot", "[history][lot]") {
  Lot lot = received();
  for (const Kind kind : {Kind::HotHeld, Kind::TimeControl, Kind::Reheated, Kind::Finished, Kind::Cooled})
    CHECK(told(lot, event(kind, "11 09:00", {1})) ==
          QStringLiteral("lot MB-5521 is as it was bought, and cannot be %1\n  record what was made of it")
              .arg(word(kind)));
  CHECK(told(lot, event(Kind::Thawed, "11 09:00", {1})) ==
        QStringLiteral("container 1 of lot MB-5521 is not frozen\n  correct the numbers of the containers"));
  CHECK(told(lot, event(Kind::Frozen, "11 09:00", {1})) == QString());
  CHECK(told(lot, event(Kind::Frozen, "11 10:00", {1})) ==
        QStringLiteral("container 1 of lot MB-5521 is frozen already\n  correct the numbers of the containers"));
}
