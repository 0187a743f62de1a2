// What labels say of time, HOLD labels, and the address in each code: one truth with the computed use-by.
#include <random>

#include "gs1/digital_link.h"
#include "kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::tray;

namespace {

batch::Batch butter_until(batch::UseBy use_by) {
  batch::Batch out = butter();
  out.use_bys = {std::move(use_by)};
  return out;
}

batch::Batch frozen_butter(int days_left = 4) {
  batch::Batch out = butter_until(frozen_with(QDate(2026, 11, 26), days_left));
  happens(out, batch::Happening::Frozen, at(2026, 11, 26, 9));
  return out;
}

batch::Batch refused_butter() {
  batch::Batch out = butter();
  out.refused.push_back({problem::Code::Missing, QStringLiteral("no cook reading"), {}, {}});
  out.missing << QStringLiteral("missing.cook_reading") << QStringLiteral("missing.allergens");
  return out;
}

LabelRun hold_of(const batch::Batch& batch) {
  LabelWish wish;
  wish.hold_labels = true;
  return run_of(batch, kitchen(), wish);
}

gs1::Link link_of(const batch::Batch& batch, const book::Kitchen& home = kitchen().kitchen) {
  const auto uri = code_uri(home, batch, batch.containers.front());
  REQUIRE(uri);
  const auto link = gs1::parse_digital_link(QString::fromLatin1(*uri));
  REQUIRE(link);
  return *link;
}

QStringList attributes(const batch::Batch& batch) {
  QStringList out;
  for (const auto& [ai, value] : link_of(batch).attributes) out << ai + u'=' + value;
  return out;
}

// The kitchen with an address of so many letters more.
book::Kitchen with_longer_address(int letters) {
  book::Kitchen home = kitchen().kitchen;
  home.code_address += QStringLiteral("/") + QString(letters - 1, u'k');
  return home;
}

}  // namespace

TEST_CASE("a use-by reads weekday, day, month in letters, year", "[facts][dates]") {
  const LabelRun run = run_of(butter());
  CHECK(words_of(run, FactId::DateCaption) == "USE BY");
  CHECK(words_of(run, FactId::Date) == "TUE 01 DEC");
  CHECK(words_of(run, FactId::Year) == "2026");
  CHECK_FALSE(says(run, FactId::Time));
}

TEST_CASE("quality alone is a best before", "[facts][dates]") {
  CHECK(words_of(run_of(butter_until(until(QDate(2027, 5, 25), book::EndKind::BestBefore))), FactId::DateCaption) ==
        "BEST BEFORE");
}

TEST_CASE("an end within a day is told with its time, in the kitchen's zone", "[facts][dates]") {
  const LabelRun run = run_of(butter_until(until_time(QDateTime(QDate(2026, 11, 26), QTime(1, 5), Qt::UTC))));
  CHECK(words_of(run, FactId::Date) == "WED 25 NOV");
  CHECK(words_of(run, FactId::Time) == "20:05");
}

TEST_CASE("a time that the clocks show twice says which of the two it is", "[facts][dates]") {
  const auto time = [](int hour) {
    return words_of(run_of(butter_until(until_time(QDateTime(QDate(2026, 11, 1), QTime(hour, 30), Qt::UTC)))),
                    FactId::Time);
  };
  CHECK(time(4) == "00:30");
  CHECK(time(5) == "01:30 -04:00");
  CHECK(time(6) == "01:30 -05:00");
  CHECK(time(7) == "02:30");
}

TEST_CASE("without temperature control is said with the time, and the warmth that the longer form may never pass",
          "[facts][dates][src:food-code-2022/3-501.19]") {
  batch::UseBy use_by = until_time(at(2026, 11, 25, 18));
  use_by.time_control = true;
  batch::Batch batch = butter_until(use_by);
  happens(batch, batch::Happening::TimeControl, at(2026, 11, 25, 12));
  const LabelRun run = run_of(batch);
  CHECK(words_of(run, FactId::TimeControl) == "Without temperature control");
  CHECK(words_of(run, FactId::Time) == "18:00");
  CHECK_FALSE(says(run, FactId::KeepAt));
  batch.use_bys.front().never_above =
      measure::TemperatureLimit{{210, measure::Scale::Celsius}, {700, measure::Scale::Fahrenheit}};
  CHECK(words_of(run_of(batch), FactId::TimeControl) == "Without temperature control, never above 21 °C (70 °F)");
}

TEST_CASE("a frozen label has no use-by: the day of freezing, the days left, and lines to write both dates on",
          "[facts][dates][frozen]") {
  const LabelRun run = run_of(frozen_butter());
  CHECK(run.frozen);
  CHECK(words_of(run, FactId::DateCaption) == "FROZEN");
  CHECK(words_of(run, FactId::Date) == "THU 26 NOV");
  CHECK(words_of(run, FactId::DaysLeft) == "4 days left: the thaw day is day 1");
  CHECK(words_of(run, FactId::WriteDates) == "Thawed ________________\nUse by ________________");
  CHECK(words_of(run, FactId::KeepAt) == "Keep at −18 °C (0 °F) or below, frozen");
  for (const Fact& fact : run.facts) CHECK_FALSE(words_of(run, fact.id).contains("USE BY"));
  CHECK(words_of(run_of(frozen_butter(1)), FactId::DaysLeft) == "1 day left: use it on the thaw day");
  CHECK_FALSE(says(run, FactId::FrozenLimits));
}

TEST_CASE("a frozen label tells the maker's date that it never passes, and its best before", "[facts][dates][frozen]") {
  batch::Batch batch = frozen_butter();
  batch.use_bys.front().never_past = QDate(2027, 1, 15);
  batch.use_bys.front().frozen_best_before = QDate(2027, 2, 26);
  CHECK(words_of(run_of(batch), FactId::FrozenLimits) ==
        "Never past Fri 15 Jan 2027\nBest before Fri 26 Feb 2027 if kept frozen");
}

TEST_CASE("a thawed container says when, that it was frozen before, and a use-by again", "[facts][dates][frozen]") {
  batch::Batch batch = frozen_butter();
  happens(batch, batch::Happening::Thawed, at(2026, 12, 3, 7, 15));
  batch.use_bys = {until(QDate(2026, 12, 6))};
  batch.use_bys.front().previously_frozen = true;
  const LabelRun run = run_of(batch);
  CHECK_FALSE(run.frozen);
  CHECK(words_of(run, FactId::DateCaption) == "USE BY");
  CHECK(words_of(run, FactId::PreviouslyFrozen) == "Previously frozen");
  CHECK(words_of(run, FactId::Made) == "Made Wed 25 Nov 2026 10:40\nThawed Thu 03 Dec 2026 07:15");
  CHECK(words_of(run, FactId::KeepAt) == "Keep at 5 °C (41 °F) or below");
}

TEST_CASE("previously frozen carries forward from an input", "[facts][dates][frozen]") {
  batch::Batch batch = butter();
  CHECK_FALSE(says(run_of(batch), FactId::PreviouslyFrozen));
  batch.previously_frozen = true;
  CHECK(words_of(run_of(batch), FactId::PreviouslyFrozen) == "Previously frozen");
}

TEST_CASE("a reduced-oxygen pack carries its own sentences instead of how to keep it",
          "[facts][dates][src:food-code-2022/3-502.12]") {
  batch::Batch batch =
      batch_of(QStringLiteral("wrapped-butter"), QStringLiteral("bag"), amount(2500, measure::Unit::Gram));
  CHECK(words_of(run_of(batch), FactId::ReducedOxygen) ==
        "KEEP REFRIGERATED AT 5 °C (41 °F) OR BELOW\nDiscard if not used by Tue 01 Dec 2026");
  CHECK_FALSE(says(run_of(batch), FactId::KeepAt));
  CHECK_FALSE(says(run_of(butter()), FactId::ReducedOxygen));
}

TEST_CASE("a reduced-oxygen pack of a size that the book does not list carries its sentences too",
          "[facts][dates][src:food-code-2022/3-502.12]") {
  const batch::Batch small =
      batch_of(QStringLiteral("wrapped-butter"), QStringLiteral("bag"), amount(1000, measure::Unit::Gram));
  CHECK(says(run_of(small), FactId::ReducedOxygen));
  batch::Batch hot = small;
  happens(hot, batch::Happening::HotHeld, at(2026, 11, 25, 16));
  CHECK_FALSE(says(run_of(hot), FactId::ReducedOxygen));
  CHECK(words_of(run_of(hot), FactId::KeepAt) == "Keep at 57 °C (135 °F) or above");
}

TEST_CASE("food kept chilled without need says how cold to keep it, and shelf-stable food does not", "[facts][dates]") {
  book::Book book = kitchen();
  book::Product& product = book.products[static_cast<size_t>(book.product_index.value(QStringLiteral("lime-butter")))];
  product.tcs.is = book::TcsStatement::Is::No;
  CHECK(words_of(run_of(butter(), book), FactId::KeepAt) == "Keep at 5 °C (41 °F) or below");
  for (book::ContainerSpec& container : product.containers) container.kept = book::State::Ambient;
  CHECK(words_of(run_of(butter(), book), FactId::KeepAt) == "Keep cool and dry");
}

TEST_CASE("a finisher's container that is held hot or finished needs no finishing step", "[facts][dates]") {
  batch::Batch hot = parcels();
  happens(hot, batch::Happening::HotHeld, at(2026, 11, 25, 16));
  CHECK_FALSE(says(run_of(hot), FactId::Finishing));
  batch::Batch thawed_in_the_oven = parcels();
  happens(thawed_in_the_oven, batch::Happening::Frozen, at(2026, 11, 25, 12));
  CHECK(run_of(thawed_in_the_oven).frozen);
  happens(thawed_in_the_oven, batch::Happening::Finished, at(2026, 11, 25, 16));
  const LabelRun finished = run_of(thawed_in_the_oven);
  CHECK_FALSE(finished.frozen);
  CHECK_FALSE(says(finished, FactId::Finishing));
  CHECK_FALSE(says(finished, FactId::KeepAt));
}

TEST_CASE("hot food says how hot to keep it, and asks for a medium that bears it", "[facts][dates]") {
  batch::Batch batch = butter_until(until_time(at(2026, 11, 25, 20)));
  happens(batch, batch::Happening::HotHeld, at(2026, 11, 25, 16));
  CHECK(run_of(batch).hot);
  CHECK(words_of(run_of(batch), FactId::KeepAt) == "Keep at 57 °C (135 °F) or above");
}

TEST_CASE("a refused batch has no label unless a HOLD label is asked for", "[facts][hold]") {
  const auto runs = label_runs(kitchen(), refused_butter(), languages(), {});
  REQUIRE(runs);
  CHECK(runs->empty());
}

TEST_CASE("a HOLD label says DO NOT USE, what is missing and when it was made, and no date to use it by",
          "[facts][hold]") {
  const LabelRun run = hold_of(refused_butter());
  CHECK(run.hold);
  CHECK(words_of(run, FactId::Name) == "Lime butter");
  CHECK(words_of(run, FactId::Hold) == "HOLD");
  CHECK(words_of(run, FactId::DoNotUse) == "DO NOT USE");
  CHECK(words_of(run, FactId::Missing) ==
        "No date: the cook reading is missing, the allergens are not known. Ask the chef.");
  CHECK(words_of(run, FactId::Made) == "Made Wed 25 Nov 2026 10:40");
  CHECK(says(run, FactId::Lot));
  for (const FactId id :
       {FactId::DateCaption, FactId::Date, FactId::Year, FactId::Time, FactId::DaysLeft, FactId::WriteDates,
        FactId::FrozenLimits, FactId::Contains, FactId::Readiness, FactId::Finishing, FactId::KeepAt})
    CHECK_FALSE(says(run, id));
  batch::Batch batch = refused_butter();
  batch.missing.clear();
  CHECK(words_of(hold_of(batch), FactId::Missing) == "No date: the record is not complete. Ask the chef.");
}

TEST_CASE("the code of a HOLD label holds no date", "[facts][hold][codes]") {
  CHECK(attributes(refused_butter()).isEmpty());
  batch::Batch batch = refused_butter();
  batch.use_bys.clear();
  CHECK(attributes(batch).isEmpty());
  CHECK_FALSE(hold_of(batch).containers.front().uri.isEmpty());
}

TEST_CASE("a HOLD label of a batch without a lot stands without a code", "[facts][hold][codes]") {
  batch::Batch batch = refused_butter();
  batch.lot.clear();
  batch.use_bys.clear();
  const LabelRun run = hold_of(batch);
  CHECK(run.title == "Lime butter");
  CHECK_FALSE(says(run, FactId::Lot));
  for (const ContainerFacts& container : run.containers) CHECK(container.uri.isEmpty());
}

TEST_CASE("the code holds GTIN, lot, serial and the date that the label shows", "[facts][codes][src:gs1-dl/4]") {
  const gs1::Link link = link_of(butter());
  CHECK(link.address == "https://tl.test");
  CHECK(link.gtin == butter().gtin);
  CHECK(link.lot == butter().lot);
  CHECK(link.serial == "A2632901-1");
  CHECK(gs1::attribute(link, u"17") == "261201");
}

TEST_CASE("each kind of end has its identifier in the code", "[facts][codes][src:gs1-genspecs/3]") {
  const auto date_of = [](const batch::UseBy& use_by) {
    QStringList out = attributes(butter_until(use_by));
    out.removeAll(QStringLiteral("11=261125"));
    return out;
  };
  CHECK(date_of(until(QDate(2026, 12, 1))) == QStringList{"17=261201"});
  CHECK(date_of(until(QDate(2027, 5, 25), book::EndKind::BestBefore)) == QStringList{"15=270525"});
  CHECK(date_of(until_time(at(2026, 11, 25, 14, 30))) == QStringList{"7003=2611251430"});
  batch::UseBy frozen = frozen_with(QDate(2026, 11, 26), 4);
  CHECK(date_of(frozen) == QStringList{"7006=261126"});
  frozen.frozen_best_before = QDate(2027, 2, 26);
  CHECK(date_of(frozen) == QStringList{"15=270226", "7006=261126"});
}

TEST_CASE("the production date is in the code only while it stays within 84 bytes", "[facts][codes][src:iso-18004/7]") {
  const batch::Batch batch = butter();
  const qsizetype with_made = code_uri(kitchen().kitchen, batch, batch.containers.front())->size();
  REQUIRE(with_made == 83);
  CHECK(gs1::attribute(link_of(batch), u"11") == "261125");
  for (int letters = 2; letters < 30; ++letters) {
    const book::Kitchen home = with_longer_address(letters);
    const gs1::Link link = link_of(batch, home);
    const qsizetype size = code_uri(home, batch, batch.containers.front())->size();
    const bool has = !gs1::attribute(link, u"11").isEmpty();
    CAPTURE(letters, size);
    const qsizetype longer = has ? size : size + QByteArray("11=261125&").size();
    CHECK(has == (longer <= 84));
    CHECK(gs1::attribute(link, u"17") == "261201");
  }
}

TEST_CASE("what is neither letter nor digit is percent-encoded in the code", "[facts][codes][src:gs1-dl/4]") {
  batch::Batch batch = butter();
  batch.lot = QStringLiteral("A/26%1");
  const QByteArray uri = code_uri(kitchen().kitchen, batch, batch.containers.front()).value();
  CHECK(uri.contains("/10/A%2F26%251/21/"));
  CHECK(link_of(batch).lot == batch.lot);
}

TEST_CASE("an address that cannot be written refuses the label", "[facts][codes][refused]") {
  batch::Batch batch = butter();
  batch.lot = QStringLiteral("A26329LBU01-far-too-long-for-a-lot");
  CHECK_FALSE(refused(batch).isEmpty());
}

TEST_CASE("whatever the date, label, code and computed use-by say the same", "[facts][dates][property]") {
  std::mt19937 random(7);
  const QLocale english = QLocale::c();
  for (int round = 0; round < 400; ++round) {
    const QDate last = QDate(2026, 1, 1).addDays(static_cast<int>(random() % 9000));
    const bool best_before = random() % 3 == 0;
    const batch::Batch batch =
        butter_until(until(last, best_before ? book::EndKind::BestBefore : book::EndKind::UseBy));
    const LabelRun run = run_of(batch);
    const QString shown = words_of(run, FactId::Date).toLower() + u' ' + words_of(run, FactId::Year);
    CAPTURE(round, shown);
    CHECK(shown == english.toString(last, QStringLiteral("ddd dd MMM yyyy")).toLower());
    const gs1::Link link = gs1::parse_digital_link(QString::fromLatin1(run.containers.front().uri)).value();
    CHECK(gs1::attribute(link, best_before ? u"15" : u"17") == last.toString(QStringLiteral("yyMMdd")));
    CHECK(gs1::attribute(link, best_before ? u"17" : u"15").isEmpty());
  }
}

TEST_CASE("whatever the instant, label and code show its minute in the kitchen's zone", "[facts][dates][property]") {
  std::mt19937 random(8);
  for (int round = 0; round < 400; ++round) {
    const QDateTime end = at(2026, 1, 1).addSecs(static_cast<qint64>(random() % (600 * 86400)) / 60 * 60);
    const LabelRun run = run_of(butter_until(until_time(end.toUTC())));
    const QDateTime local = end.toTimeZone(kitchen().kitchen.zone);
    CAPTURE(round, local);
    CHECK(words_of(run, FactId::Time).left(5) == local.toString(QStringLiteral("HH:mm")));
    CHECK(words_of(run, FactId::Date).mid(4, 2) == local.toString(QStringLiteral("dd")));
    const gs1::Link link = gs1::parse_digital_link(QString::fromLatin1(run.containers.front().uri)).value();
    CHECK(gs1::attribute(link, u"7003") == local.toString(QStringLiteral("yyMMddHHmm")));
  }
}
