// What is recorded after what was made of it, or against what is recorded, reaches all that it should, or is refused.
#include "recorded_day.h"

using namespace lardiner::command;

namespace {

const QString kCrumbles = QStringLiteral("A26329APC19Y");  // of a topping that was made before and is not recorded

struct Evening : RecordedDay {
  Ran now(const QStringList& rest) const { return at("2026-11-25T22:30", rest); }
  Ran record(const QStringList& words) const {
    return now(QStringList{"record", "by=MK", "at=2026-11-25 22:00"} + words);
  }
  // The rows of a file, which is recorded.
  Ran file(const QByteArray& rows, const QStringList& options = {}) const {
    folder.write("rows.csv", rows);
    return now(QStringList{"record", "rows.csv"} + options);
  }
  QString history(const QString& lot) const { return now({"history", lot}).out; }
};

// The topping, with what another hand put in instead of the oats, and butter of an earlier date than was believed.
const char kTopping[] =
    "row,product,number,quantity,made_at,made_to,by,containers,item,lot,use_by,instead_of,agreed_by\n"
    ",pecan-crumble,1,4.5 kg,2026-11-24 09:00,2026-11-24 09:40,AB,1 tub 4.5 kg,,,,,\n"
    "input,,1,,,,,,butter-unsalted,XB-1,2026-11-26,,\n"
    "input,,1,,,,,,sesame-white,XS-1,,oats,LV\n";

// A batch of the day with one input whose lot is to be written.
QByteArray patties(const QString& beef, const QString& use_by = "2026-11-28") {
  return ("row,product,number,quantity,made_at,made_to,by,containers,item,lot,use_by\n"
          ",smoky-beef-patty,77,160 pieces,2026-11-25 14:00,2026-11-25 15:00,RT,8 tray 20 pieces,,,\n"
          "input,,77,17.6 kg,,,,,ground-beef," +
          beef + "," + use_by +
          "\n"
          "input,,77,,,,,,worcestershire,KD-5011,\n")
      .toUtf8();
}

Ran receive(const Evening& day, const QStringList& more) {
  return day.record(QStringList{"event=received", "item=ground-beef", "quantity=20 kg", "temperature=38 °F",
                                "use_by=2026-11-28", "place=walk-in 1"} +
                    more);
}

}  // namespace

TEST_CASE("a lot of ours that is recorded after what was made of it gives that its date and its allergens",
          "[command][ledger][late]") {
  const Evening day;
  CHECK(day.history(kCrumbles).contains("use by Fri 27 Nov 2026"));
  CHECK_FALSE(day.history(kCrumbles).contains("sesame"));
  const Ran late = day.file(kTopping);
  INFO(late.err.toStdString());
  REQUIRE(late.status == 0);
  CHECK(late.out.contains("touches Apple and pecan crumble, lot " + kCrumbles));
  CHECK(late.out.contains("adds sesame, recorded after what was made of it"));
  CHECK(late.out.contains("new label needed: lot " + kCrumbles));
  const QString held = day.history(kCrumbles);
  CHECK(held.contains("use by Thu 26 Nov 2026"));
  CHECK(held.section("contains:", 1).section('\n', 0, 0).contains("sesame"));
  CHECK(day.now({"verify"}).status == 0);
  CHECK(day.history(kCrumbles) == held);
}

TEST_CASE("an input must be of the supplier whose package its lot is of; a receipt that shows it late adds what lacks",
          "[command][ledger][late]") {
  const Evening day;
  const auto butter = [&](const QString& supplier_item) {
    return day.file(("row,product,number,quantity,made_at,by,containers,item,supplier_item,lot\n"
                     ",chilli-lime-butter,79,2 kg,2026-11-25 21:00,MK,2 tub 1 kg,,,\n"
                     "input,,79,,,,,butter-unsalted," +
                     supplier_item + ",MB-5521\n")
                        .toUtf8());
  };
  const QString wrong = "lot MB-5521 of \"butter-unsalted\" was received as \"meadowfold-butter-25\", not as ";
  CHECK(butter("larkfield-butter-1").err.contains(wrong + "\"larkfield-butter-1\""));
  CHECK_FALSE(butter("meadowfold-butter-25").err.contains("was received as"));

  // It went into the fish cakes of the 23rd as the mill's, without milk and soy.
  const Ran late = day.record({"event=received", "lot=LM-0877", "item=breadcrumbs", "supplier_item=hartwell-crumbs-25",
                               "quantity=25 lb", "place=walk-in 1"});
  REQUIRE(late.status == 0);
  CHECK(late.out.contains("received as hartwell-crumbs-25, used as larkmoor-crumbs-25 before"));
  CHECK(late.out.contains("touches Fish cakes, lot A26327FCK20"));
}

TEST_CASE("a lot of ours is of one product, whatever a record takes it for", "[command][ledger][late]") {
  const Evening day;
  const auto cakes = [&](const QString& lot) {
    return day.file(("row,product,number,quantity,made_at,made_to,by,containers,item,lot,use_by\n"
                     ",fish-cake,78,60 pieces,2026-11-25 21:05,2026-11-25 21:20,JO,3 tray 20 pieces,,,\n"
                     "input,,78,,,,,,mashed-potato," +
                     lot + ",2026-11-27\n")
                        .toUtf8());
  };
  CHECK(cakes("A26329CLB03L").err.contains("lot A26329CLB03L is of \"chilli-lime-butter\", not of \"mashed-potato\""));
  CHECK_FALSE(cakes("A26329MPT13F").err.contains("not of"));
}

TEST_CASE("what was made of a supplier's lot on hold, recalled or not accepted is recorded on hold or not at all",
          "[command][ledger][late]") {
  const Evening day;
  REQUIRE(receive(day, {"lot=BM-90"}).status == 0);
  REQUIRE(receive(day, {"lot=BM-91", "accepted=no", "reason=warm"}).status == 0);
  REQUIRE(day.record({"event=hold", "lot=BM-90", "reason=a call"}).status == 0);
  for (const auto& [lot, why] :
       {std::pair("BM-90", "is on hold"), std::pair("BM-91", "is not in the kitchen: it was not accepted")}) {
    const Ran refused = day.file(patties(lot));
    CHECK(refused.status == 1);
    CHECK(refused.err.contains(why));
  }
  const Ran held = day.file(patties("BM-90"), {"--hold"});
  CHECK(held.status == 3);
  CHECK(day.history("A26329SBP77A").contains("is on hold"));
  CHECK(day.now({"recall", "BM-90", "--item", "ground-beef"}).out.contains("A26329SBP77"));
}

TEST_CASE("a hold or a recall of a lot that is known by name alone bars it as an input", "[command][ledger][late]") {
  const Evening day;
  REQUIRE(day.record({"event=hold", "lot=KD-5011", "item=worcestershire", "reason=a call"}).status == 0);
  CHECK(day.history("KD-5011").contains("known only from what was made of it; ON HOLD"));
  CHECK(day.file(patties("BM-4472")).err.contains("lot KD-5011 of \"worcestershire\" is on hold"));
  REQUIRE(day.record({"event=recall", "lot=BM-4471", "item=ground-beef", "reason=a call"}).status == 0);
  const Ran refused = day.file(patties("BM-4471"));
  CHECK(refused.status == 1);
  CHECK(refused.err.contains("lot BM-4471 of \"ground-beef\" is in a recall"));
}

TEST_CASE("an open recall reaches a batch that is recorded later and names no lot of the item",
          "[command][ledger][late]") {
  const Evening day;
  REQUIRE(day.record({"event=received", "lot=KS-1", "item=salt-fine", "quantity=25 lb", "place=walk-in 1"}).status ==
          0);
  REQUIRE(day.record({"event=recall", "lot=KS-1", "item=salt-fine", "reason=a call"}).status == 0);
  const Ran made = day.file(
      "product,number,quantity,made_at,by,containers\n"
      "smoked-pepper-seasoning,77,2 kg,2026-11-25 22:10,MK,2 tub 1 kg\n",
      {"--hold"});
  INFO(made.err.toStdString());
  CHECK(made.status == 3);
  CHECK(made.err.contains("in a recall"));
}

TEST_CASE("what was made of a lot before it was known to be opened, discarded or not cooled is told",
          "[command][ledger][late]") {
  const Evening day;
  const Ran opened = day.now({"record", "event=opened", "by=MK", "at=2026-11-25 05:40", "lot=MB-5521"});
  REQUIRE(opened.status == 0);
  CHECK(opened.err.contains("made of lot MB-5521 before this was known: "));
  CHECK(opened.err.contains("Chilli-lime butter, lot A26329CLB03L"));
  const Ran after = day.now({"record", "event=time-control", "by=MK", "at=2026-11-25 22:20", "lot=A26329BBF05Z",
                             "containers=5", "temperature=40 °F"});
  REQUIRE(after.status == 0);
  CHECK_FALSE(after.err.contains("before this was known"));
}

TEST_CASE("a receipt counts in a batch of the same file, and so does that its package was opened days before",
          "[command][ledger][late]") {
  const auto recorded = [](const QByteArray& opened) {
    const Evening day;
    const Ran ran = day.file(
        "row,event,product,number,quantity,made_at,by,containers,item,lot,at,use_by,temperature,place\n"
        ",received,,,20 kg,,MK,,butter-unsalted,MB-9,2026-11-20 06:00,2026-12-20,38 °F,walk-in 1\n" +
        opened +
        ",,chilli-lime-butter,79,2 kg,2026-11-25 21:00,MK,2 tub 1 kg,,,,,,\n"
        "input,,,79,,,,,butter-unsalted,MB-9,,,,\n"
        "input,,,79,,,,,smoked-pepper-seasoning,A26329SPS018,,,,\n"
        "input,,,79,,,,,lime-zest,PM-3304,,,,\n");
    CHECK(ran.status == 0);
    CHECK(ran.err == "");
    return ran.out;
  };
  CHECK(recorded({}).contains("made, Chilli-lime butter, use by Tue 01 Dec 2026"));
  // Seven days, of which the first is the 21st.
  CHECK(recorded(",opened,,,,,MK,,butter-unsalted,MB-9,2026-11-21 06:00,,,\n")
            .contains("made, Chilli-lime butter, use by Fri 27 Nov 2026"));
}
