// What the note says that goes with trays to a site, and what may not be on one.
#include "facts/dispatch_note.h"

#include "sheet_kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::sheets;

namespace {

QDateTime at(int hour, int minute) { return {QDate(2026, 11, 26), QTime(hour, minute), kitchen().kitchen.zone}; }

batch::UseBy until(QDate day) {
  batch::UseBy out;
  out.date = day;
  return out;
}

Loaded parcels() {
  Loaded out;
  out.item = QStringLiteral("parcel");
  out.lot = QStringLiteral("A26330PAR1");
  out.containers = {{QStringLiteral("tray"), {3, 1, 2, 7}, 0}};
  out.net = quantity("96 pieces");
  out.good = {history::Good::State::Good, until(QDate(2026, 11, 28)), std::nullopt, {}};
  out.declared = {true, {{QStringLiteral("wheat"), {}, {}, {}, {}}}, {{QStringLiteral("egg"), {}, {}, {}, {}}}};
  out.readiness = book::Readiness::MustBeCooked;
  out.temperature = measure::Temperature{35, measure::Scale::Celsius};
  return out;
}

Dispatch dispatch(std::vector<Loaded> lots) {
  return {QStringLiteral("D-26330-2"),
          at(14, 5),
          QStringLiteral("MK"),
          QStringLiteral("harbour"),
          {QStringLiteral("118"), QStringLiteral("121")},
          std::move(lots)};
}

QStringList table(const WorkSheet& sheet, size_t part) {
  QStringList out;
  for (const Row& row : std::get<Table>(sheet.parts.at(part)).rows) out << said(row);
  return out;
}

QString refusal(const Dispatch& dispatch) {
  const auto made = dispatch_note(in_english(), dispatch);
  REQUIRE_FALSE(made);
  return problem::text(made.error());
}

}  // namespace

TEST_CASE("a dispatch note says where to, what, until when, with what in it, and leaves lines for the arrival",
          "[facts][note]") {
  const WorkSheet sheet = must(dispatch_note(in_english(), dispatch({parcels()})));
  CHECK(sheet.kind == "Dispatch note");
  CHECK(sheet.title == "Harbour Street");
  CHECK(sheet.amount == "D-26330-2");
  CHECK(head(sheet) == QStringList{"Order 118, 121", "Loaded Thu 26 Nov 2026 14:05 · By MK",
                                   "From Test Lane Commissary, 1 Test Lane, Testford, NY 10001", "4 trays"});
  CHECK(table(sheet, 0) ==
        QStringList{"[] | Chicken parcels; A26330PAR1; USE BY SAT 28 NOV 2026; RAW: COOK BEFORE SERVING; CONTAINS "
                    "wheat; May contain egg; Keep at 5 °C (41 °F) or below | 4 trays (1–3, 7); 96 pieces | 3.5 °C"});
  CHECK(table(sheet, 1) == QStringList{"__ | __ | []; Yes | []; No | __"});
  CHECK(table(sheet, 2).size() == 3);
  CHECK(sheet.foot.size() == 2);
}

TEST_CASE("what the cook who receives it must read is as large as the name of the food", "[facts][note]") {
  const auto large = [](const Loaded& lot) {
    QStringList out;
    const WorkSheet sheet = must(dispatch_note(in_english(), dispatch({lot})));
    for (const SmallLine& line : std::get<Table>(sheet.parts.front()).rows.front().cells.at(1).small)
      if (line.large) out << QString(line.text).replace(QChar(0x00A0), u' ');
    return out;
  };
  CHECK(large(parcels()) ==
        QStringList{"USE BY SAT 28 NOV 2026", "RAW: COOK BEFORE SERVING", "CONTAINS wheat", "May contain egg"});
  Loaded unknown = parcels();
  unknown.declared = {};
  CHECK(large(unknown).last() == "ALLERGENS NOT KNOWN: ask the kitchen");
}

TEST_CASE("what is not known is said on a note, in both languages, never left out", "[facts][note]") {
  Loaded lot = parcels();
  lot.declared = {};
  lot.readiness = book::Readiness::Unknown;
  lot.temperature.reset();
  const QString row = table(must(dispatch_note(in_both(), dispatch({lot}))), 0).value(0);
  for (const char* words :
       {"ALLERGENS NOT KNOWN: ask the kitchen", "NO SE CONOCEN LOS ALÉRGENOS",
        "COOKED OR NOT IS NOT KNOWN: ask the kitchen", "NO SE SABE SI ESTÁ COCIDO", "not taken", "Empanadas de pollo"})
    CHECK(row.contains(QString::fromUtf8(words)));
  CHECK_FALSE(row.contains("CONTAINS"));
}

TEST_CASE("allergens on a note are those of the destination's list", "[facts][note]") {
  Loaded lot = parcels();
  lot.declared.contains = {{QStringLiteral("celery"), {}, {}, {}, {}}};
  lot.declared.may_contain.clear();
  Dispatch note = dispatch({lot});
  CHECK(table(must(dispatch_note(in_english(), note)), 0).value(0).contains("None of the US major allergens"));
  note.site = QStringLiteral("calais");
  CHECK(table(must(dispatch_note(in_english(), note)), 0).value(0).contains("CONTAINS celery"));
}

TEST_CASE("a frozen lot's note says when it was frozen and the days that are left", "[facts][note]") {
  Loaded lot = parcels();
  lot.state = book::State::Frozen;
  lot.good.use_by->form = batch::UseBy::Form::Frozen;
  lot.good.use_by->frozen_on = QDate(2026, 11, 24);
  lot.good.use_by->days_left = 2;
  const QString row = table(must(dispatch_note(in_english(), dispatch({lot}))), 0).value(0);
  CHECK(row.contains("FROZEN Tue 24 Nov 2026 · 2 days left: the thaw day is day 1"));
  CHECK(row.contains("or below, frozen"));
  CHECK_FALSE(row.contains("USE BY"));
}

TEST_CASE("what is not released, held, recalled, past its date or undated is on no note; each is named",
          "[facts][note]") {
  using State = history::Good::State;
  std::vector<Loaded> lots;
  for (const State state :
       {State::NotReleased, State::Held, State::Recalled, State::Past, State::NoDate, State::Gone}) {
    lots.push_back(parcels());
    lots.back().lot = QStringLiteral("L%1").arg(lots.size());
    lots.back().good.state = state;
  }
  lots.front().good.why = QStringLiteral("cooling is not shown yet");
  lots.push_back(parcels());
  lots.back().lot = QStringLiteral("L7");
  lots.back().good.use_by.reset();
  const QString hint = QStringLiteral("\n  take it off the note; it does not leave the kitchen\n");
  QString expected;
  for (const char* line : {"lot L1 is not released: cooling is not shown yet", "lot L2 is on hold",
                           "lot L3 is in a recall", "lot L4 is past its date", "lot L5 has no date that can be told",
                           "lot L6 is not here", "lot L7 has no date that can be told"})
    expected += QString::fromLatin1(line) + hint;
  CHECK(refusal(dispatch(lots)) == expected);
  CHECK(dispatch_note(in_english(), dispatch({parcels()})));
}

TEST_CASE("what needs no temperature control may go out without a date, and the note says so", "[facts][note]") {
  Loaded lot = parcels();
  lot.tcs = false;
  lot.state = book::State::Ambient;
  lot.good.use_by->form = batch::UseBy::Form::None;
  const QString row = table(must(dispatch_note(in_english(), dispatch({lot}))), 0).value(0);
  CHECK(row.contains("Date not needed"));
  CHECK(row.contains("Keep cool and dry"));
}

TEST_CASE("a note without lots, or to a site that nobody knows, is refused", "[facts][note]") {
  Dispatch note = dispatch({});
  note.site = QStringLiteral("moon");
  CHECK(refusal(note) ==
        "nothing is loaded for note D-26330-2\n  name the lots that go out\n"
        "there is no site \"moon\" in the book\n  add it as a [[site]]\n");
}
