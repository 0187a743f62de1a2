// What a recall sheet says: what is on hand and where, where the rest went, what is only suspected, and the balance.
#include "facts/recall_sheet.h"

#include "sheet_kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::sheets;

namespace {

QDateTime at(int hour, int minute) { return {QDate(2026, 11, 26), QTime(hour, minute), kitchen().kitchen.zone}; }

std::vector<Containers> tubs(std::vector<int> numbers) { return {{QStringLiteral("tub"), std::move(numbers), 0}}; }

history::Balance balance(const char* on_hand) {
  return {quantity("10 kg"), quantity("4 kg"),  measure::Quantity{}, quantity("1 kg"),
          quantity("500 g"), quantity(on_hand), measure::Quantity{}};
}

Recall recall() {
  Recall out;
  out.item = QStringLiteral("butter");
  out.lot = QStringLiteral("S-7");
  out.supplier = QStringLiteral("A");
  out.reason = QStringLiteral("metal found");
  out.now = at(15, 0);
  return out;
}

Recall spread() {
  Recall out = recall();
  out.opened_at = at(14, 30);
  out.opened_by = QStringLiteral("MK");
  const Reached butter{Certainty::Certain, QStringLiteral("lime-butter"), QStringLiteral("L1"), tubs({1, 2}),
                       quantity("1 kg")};
  Reached suspect = butter;
  suspect.lot = QStringLiteral("L2");
  suspect.certainty = Certainty::NoLotNamed;
  out.here = {{butter, QStringLiteral("walk-in 1")}, {suspect, QString()}, {butter, QStringLiteral("freezer")}};
  out.away = {{butter, QStringLiteral("Harbour Street"), QStringLiteral("118"), QStringLiteral("D-1"), at(9, 0)}};
  out.used_up = {
      {Certainty::Certain, QStringLiteral("S-7"), QStringLiteral("lime-butter"), QStringLiteral("L1"),
       quantity("952 g")},
      {Certainty::Assumed, QStringLiteral("S-7"), QStringLiteral("stew"), QStringLiteral("L3"), std::nullopt}};
  return out;
}

// All rows of the tables with a caption, in the order of the sheet: certain ones, then suspects.
QStringList part_captions(const WorkSheet& sheet) {
  QStringList out;
  for (const Part& part : sheet.parts) {
    if (const Note* note = std::get_if<Note>(&part)) out << note->text;
    if (const Table* table = std::get_if<Table>(&part)) out << table->caption;
  }
  return out;
}

}  // namespace

TEST_CASE("a recall names what is on hand by place, with boxes to tick, and whom to call of the sites",
          "[facts][recall]") {
  const WorkSheet sheet = must(recall_sheet(in_english(), spread()));
  CHECK(sheet.title == "Lot S-7");
  CHECK(head(sheet) ==
        QStringList{"Butter", "Supplier: A", "Opened Thu 26 Nov 2026 14:30 · MK", "Reason: metal found"});
  const QStringList here = rows(sheet, "On hand: put on hold");
  CHECK(here.mid(0, 4) == QStringList{"== walk-in 1", "[] | [] | Lime butter; L1 | 2 tubs (1, 2) | 1 kg", "== freezer",
                                      "[] | [] | Lime butter; L1 | 2 tubs (1, 2) | 1 kg"});
  CHECK(rows(sheet, "Sent out: call") ==
        QStringList{"== Harbour Street",
                    "Lime butter; L1; Order 118 · D-1 · Thu 26 Nov 2026 09:00 | 2 tubs (1, 2) | 1 kg",
                    "Who was called; __ | At; __ | "});
}

TEST_CASE("suspects stand apart and say why; a place that is not known is looked for everywhere", "[facts][recall]") {
  const WorkSheet sheet = must(recall_sheet(in_english(), spread()));
  CHECK(part_captions(sheet) == QStringList{"On hand: put on hold", "Sent out: call", "Used up in",
                                            "SUSPECTS: it is not certain that they hold it", "On hand: put on hold",
                                            "Used up in", "It cannot be balanced: the amounts are not known"});
  CHECK(rows(sheet, "On hand: put on hold").mid(4) ==
        QStringList{"== PLACE NOT KNOWN: look everywhere",
                    "[] | [] | Lime butter; L2; the lot was not named | 2 tubs (1, 2) | 1 kg"});
  CHECK(rows(sheet, "Used up in") ==
        QStringList{"S-7 | Lime butter; L1 | 952 g",
                    "S-7 | Chicken stew; L3; the lot was assumed, not confirmed | not known"});
}

TEST_CASE("what is not opened, on hand or sent out is said", "[facts][recall]") {
  const WorkSheet sheet = must(recall_sheet(in_english(), recall()));
  CHECK(head(sheet).contains("NOT OPENED: what would be recalled"));
  CHECK(part_captions(sheet) == QStringList{"Nothing of it is on hand", "Nothing of it was sent out",
                                            "It cannot be balanced: the amounts are not known"});
  Recall only_suspects = recall();
  only_suspects.here = {spread().here[1]};
  CHECK_FALSE(part_captions(must(recall_sheet(in_english(), only_suspects))).contains("Nothing of it is on hand"));
}

TEST_CASE("the mass balance states its difference, counted again from its parts", "[facts][recall]") {
  Recall one = recall();
  one.balance = balance("4.5 kg");
  CHECK(rows(must(recall_sheet(in_english(), one)), "Mass balance") ==
        QStringList{"Received | 10 kg", "Used | 4 kg", "Sent out | 0 g", "Discarded | 1 kg",
                    "Missing at a count | 500 g", "On hand | 4.5 kg", "It balances | 0 g"});
  one.balance = balance("4.2 kg");
  one.supplier.clear();
  const QStringList open = rows(must(recall_sheet(in_english(), one)), "Mass balance");
  CHECK(open.value(0) == "Made | 10 kg");
  CHECK(open.value(6) == "Difference that nobody accounts for | 300 g");
}

TEST_CASE("two hundred lots are all on the recall sheet", "[facts][recall]") {
  Recall many = recall();
  for (int i = 1; i <= 200; ++i) {
    many.here.push_back(spread().here[0]);
    many.here.back().lot = QStringLiteral("L%1").arg(i);
  }
  const QString all =
      rows(must(recall_sheet(in_both(), many)), "On hand: put on hold / En la cocina: retener").join(u'\n');
  for (int i = 1; i <= 200; ++i) CHECK(all.contains(QStringLiteral("; L%1 |").arg(i)));
}
