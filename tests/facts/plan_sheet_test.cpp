// What the day's plan says on paper: order of work, windows, pull list, buying list, and what cannot be met.
#include "facts/plan_sheet.h"

#include "batch/clock.h"
#include "sheet_kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::sheets;

namespace {

QDateTime at(const char* text) {
  return batch::instant(reader::parse_written(QString::fromLatin1(text)).value(), kitchen().kitchen.zone).value();
}

const char* const kNow = "2026-11-26 06:00";

plan::Order order(const char* product, const char* amount, const char* due) {
  plan::Order out;
  out.product = QString::fromLatin1(product);
  out.quantity = quantity(amount);
  out.due = at(due);
  out.site = QStringLiteral("harbour");
  out.number = QStringLiteral("118");
  return out;
}

plan::OnHand lot(const char* item, const char* amount, const char* name, QDate last_day) {
  plan::OnHand out;
  out.item = QString::fromLatin1(item);
  out.lot = QString::fromLatin1(name);
  out.quantity = quantity(amount);
  out.use_by = batch::StatedEnd{batch::end_of(last_day, kitchen().kitchen.zone), true, book::EndKind::UseBy};
  out.where = QStringLiteral("walk-in 1");
  return out;
}

struct Planned {
  plan::DayPlan plan;
  WorkSheet sheet;
};
Planned planned(const std::vector<plan::Order>& orders, const std::vector<plan::OnHand>& lots = {},
                const SheetSetting& setting = in_english()) {
  const plan::DayPlan plan = plan::day_plan(setting.book, orders, lots, at(kNow));
  QStringList names;
  for (size_t i = 0; i < plan.makings.size(); ++i) names << QStringLiteral("L%1").arg(i + 1);
  return {plan, must(plan_sheet(setting, plan, names, at(kNow)))};
}

}  // namespace

TEST_CASE("the order of work: when, what, for whom, within which window; cleaned down where it must be",
          "[facts][sheet][plan]") {
  const Planned day =
      planned({order("stew", "4.5 kg", "2026-11-26 14:00"), order("lime-butter", "1 kg", "2026-11-26 14:00")});
  const QStringList work = rows(day.sheet, "Order of work");
  REQUIRE(work.size() == 3);
  CHECK(work[0] ==
        "[] | 06:00 | Lime butter; L1; by 14:00, the book does not say how long it takes; For Harbour Street 118 | 1 "
        "kg; 2 lb 3.3 oz | __");
  CHECK(work[1] == "== CLEAN DOWN: hands, tools, surfaces | By; __");
  CHECK(work[2].startsWith("[] | 06:00 | Chicken stew; L2; by 07:10, ready 12:50; For Harbour Street 118"));
}

TEST_CASE("the pull list is by lot, with its place and its date, and says what goes out as it is",
          "[facts][sheet][plan]") {
  const Planned day = planned(
      {order("lime-butter", "2 kg", "2026-11-26 14:00")},
      {lot("lime-butter", "1 kg", "LB-1", QDate(2026, 11, 28)), lot("butter", "5 kg", "MB-1", QDate(2026, 12, 24))});
  CHECK(rows(day.sheet, "Pull list") ==
        QStringList{
            "[] | Butter | MB-1; walk-in 1 · USE BY Thu 24 Dec 2026 | 952 g; 2 lb 1.6 oz",
            "[] | Lime butter; goes out as it is | LB-1; walk-in 1 · USE BY Sat 28 Nov 2026 | 1 kg; 2 lb 3.3 oz"});
}

TEST_CASE("what is bought is told in buying units, by when it is needed", "[facts][sheet][plan]") {
  const QStringList buying = rows(planned({order("stew", "60 kg", "2026-11-26 16:00")}).sheet, "To buy");
  const auto onions =
      std::find_if(buying.begin(), buying.end(), [](const QString& row) { return row.contains("Onions"); });
  REQUIRE(onions != buying.end());
  // 900 g of each 4.5 kg, 90 % of it edible: 13.333 kg.
  CHECK(*onions == "[] | Onions | 13.333 kg | 2 × 10 kg; sack | THU 26 NOV 06:00");
}

TEST_CASE("a buying unit is told as it is sold", "[facts][sheet][plan]") {
  book::Book book = read_kitchen();
  book.ingredients[static_cast<size_t>(book.ingredient_index.value(QStringLiteral("onion")))].bought_by =
      quantity("5 lb");
  const QStringList buying =
      rows(planned({order("stew", "4.5 kg", "2026-11-26 16:00")}, {}, in_english(book)).sheet, "To buy");
  CHECK(buying.filter("Onions").value(0).contains("| 1 kg | 1 × 5 lb; sack |"));
}

TEST_CASE("what cannot be met stands first, with why and by how much", "[facts][sheet][plan]") {
  const Planned day = planned({order("stew", "9 kg", "2026-11-26 08:00")});
  const Table* first = std::get_if<Table>(&day.sheet.parts.front());
  REQUIRE(first);
  CHECK(first->caption == "CANNOT BE MET");
  CHECK(rows(day.sheet, "CANNOT BE MET") ==
        QStringList{"Chicken stew; Harbour Street 118; Thu 26 Nov 2026 08:00 | 9 kg; 19 lb 13.5 oz | Chicken stew: 4 h "
                    "50 min too late to start"});
  CHECK(rows(planned({order("stew", "9 kg", "2026-11-26 14:00")}).sheet, "CANNOT BE MET").isEmpty());
}

TEST_CASE("a lot that is passed over is told with the reason", "[facts][sheet][plan]") {
  CHECK(rows(planned({}, {lot("butter", "1 kg", "MB-9", QDate(2026, 11, 25))}).sheet, "Not used") ==
        QStringList{"Butter | MB-9; walk-in 1 · USE BY Wed 25 Nov 2026 | past its date: discard"});
}

TEST_CASE("the picture of start windows: its axis, and what it does not know", "[facts][sheet][plan]") {
  const Planned day = planned({order("stew", "4.5 kg", "2026-11-27 14:00")});
  const auto spans = must(start_windows(in_english(), day.plan, at(kNow)));
  REQUIRE(spans.spans.size() == 1);
  const Spans::Span& stew = spans.spans.front();
  CHECK(stew.open == day.plan.makings.front().any_time_before);
  CHECK(stew.from <= stew.start);
  CHECK(stew.start <= stew.to);
  CHECK(stew.end == 32 * 60);  // due
  CHECK(spans.length == stew.end);
  CHECK(spans.marks.front().strong);
  QStringList marks;
  for (const Spans::Mark& mark : spans.marks) marks << QString(mark.text).replace(QChar(0x00A0), u' ');
  CHECK(marks == QStringList{"now 06:00", "09:00", "12:00", "15:00", "18:00", "21:00", "Fri 27 Nov 2026", "03:00",
                             "06:00", "09:00", "12:00"});
  CHECK(spans.notes.last().contains(QStringLiteral("ovens, chillers, hands")));
}

TEST_CASE("a scale in grams speaks grams, whatever else the kitchen measures in", "[facts][sheet][plan]") {
  book::Book book = read_kitchen();
  book.kitchen.units = measure::System::Customary;
  const auto made = [&] {
    return rows(planned({order("stew", "4.5 kg", "2026-11-26 14:00")}, {}, in_english(book)).sheet, "Order of work")
        .value(0);
  };
  CHECK(made().contains("| 4.5 kg; 9 lb 14.7 oz |"));
  book.kitchen.scale_step = quantity("0.1 oz");
  CHECK(made().contains("| 9 lb 14.7 oz; 4.5 kg |"));
}

TEST_CASE("what is made for a level says so", "[facts][sheet][plan]") {
  book::Book book = read_kitchen();
  book.products[static_cast<size_t>(book.product_index.value(QStringLiteral("stew")))].keep_on_hand = quantity("3 kg");
  CHECK(rows(planned({}, {}, in_english(book)).sheet, "Order of work").value(0).contains("; to keep on hand |"));
  CHECK(rows(planned({order("stew", "1 kg", "2026-11-26 14:00")}, {}, in_english(book)).sheet, "Order of work")
            .value(0)
            .contains("For Harbour Street 118, to keep on hand"));
}

TEST_CASE("an order a year ahead leaves a dozen days on the axis", "[facts][sheet][plan]") {
  const Planned day = planned({order("stew", "4.5 kg", "2027-11-25 14:00")});
  const auto marks = must(start_windows(in_english(), day.plan, at(kNow))).marks;
  CHECK(marks.size() > 8);
  CHECK(marks.size() <= 14);
  CHECK(std::count_if(marks.begin(), marks.end(), [](const Spans::Mark& mark) { return mark.strong; }) == 1);
}

TEST_CASE("an order of what has no shelf life says that, not that it cannot be weighed", "[facts][sheet][plan]") {
  book::Book book = read_kitchen();
  book.products[static_cast<size_t>(book.product_index.value(QStringLiteral("stew")))].shelf_lives.clear();
  CHECK(rows(planned({order("stew", "4.5 kg", "2026-11-26 14:00")}, {}, in_english(book)).sheet, "CANNOT BE MET")
            .value(0)
            .endsWith("| Chicken stew: the book does not say how long it keeps"));
}

TEST_CASE("a frozen lot's row says when it leaves the freezer", "[facts][sheet][plan]") {
  book::Book book = read_kitchen();
  book::Ingredient& butter =
      book.ingredients[static_cast<size_t>(book.ingredient_index.value(QStringLiteral("butter")))];
  book::ShelfLife thawed;
  thawed.state = book::State::Thawed;
  thawed.length.count = 5;
  butter.shelf_lives.push_back(thawed);
  plan::OnHand frozen = lot("butter", "5 kg", "MB-1", QDate(2027, 3, 1));
  const auto row = [&](book::State state) {
    frozen.state = state;
    return rows(planned({order("lime-butter", "1 kg", "2026-11-28 14:00")}, {frozen}, in_english(book)).sheet,
                "Pull list")
        .value(0);
  };
  CHECK(row(book::State::Frozen).startsWith("[] | Butter; out of the freezer by THU 26 NOV 06:00 | MB-1"));
  CHECK(row(book::State::Chilled).startsWith("[] | Butter | MB-1"));
}
