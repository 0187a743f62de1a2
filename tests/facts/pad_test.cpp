// What a pad's label says: blanks, the rule for the hand, the book's facts with their day, and a code without a date.
#include "batch/pad.h"

#include "gs1/digital_link.h"
#include "kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::tray;

namespace {

const QDate kPadDay(2026, 11, 20);

batch::Batch ready(const char* product, const char* kind, measure::Quantity each, const book::Book& book = kitchen()) {
  auto batch = batch::pad_batch(
      book, {*book.product(QString::fromLatin1(product)), kPadDay, 901, {{3, QString::fromLatin1(kind), each, {}}}});
  if (!batch) FAIL(problem::text(batch.error()).toStdString());
  return *batch;
}

batch::Batch butter_pad(const book::Book& book = kitchen()) {
  return ready("lime-butter", "tub", amount(5000, measure::Unit::Gram), book);
}

LabelRun pad_of(const batch::Batch& batch, const book::Book& book = kitchen()) {
  return run_of(batch, book, {false, QStringLiteral("lid"), true});
}

const book::Book& with(const QByteArray& more, const QByteArray& in) {
  static std::map<QByteArray, book::Book> books;
  const auto found = books.find(more);
  if (found != books.end()) return found->second;
  book::Book book = read_kitchen();
  for (book::Product& product : book.products)
    if (product.id == QLatin1String(in)) {
      product.process = book::Process::Cook;
      product.cooled = true;
      product.cooled_from_ambient = more == "ambient";
    }
  return books.emplace(more, book).first->second;
}

}  // namespace

TEST_CASE("a pad's label has blanks for the making, the maker and the date, and no date of its own", "[facts][pad]") {
  const LabelRun run = pad_of(butter_pad());
  CHECK(run.pad);
  CHECK_FALSE(run.hold);
  CHECK(words_of(run, FactId::BlankMade) == "Made ____________ at _______");
  CHECK(words_of(run, FactId::BlankBy) == "By ____");
  CHECK(words_of(run, FactId::BlankDate) == "USE BY ____________");
  CHECK(words_of(run, FactId::BlankFrozen) == "Frozen before? ____");
  for (const FactId id : {FactId::Date, FactId::DateCaption, FactId::Year, FactId::Time, FactId::Made, FactId::Hold})
    CHECK_FALSE(says(run, id));
}

TEST_CASE("a pad's label says the rule that the hand must follow, and what the date may never pass", "[facts][pad]") {
  CHECK(words_of(pad_of(butter_pad()), FactId::DateRule) ==
        "Day 1 is the day of making, day 7 the last.\nNever past an ingredient's date.");
  const LabelRun parcel = pad_of(ready("parcel", "tray", amount(240, measure::Unit::Piece)));
  CHECK(words_of(parcel, FactId::DateRule).startsWith("Day 1 is the day of making, day 3 the last."));
}

TEST_CASE("a pad's label says the book's allergens and keeping, and of which day they are", "[facts][pad]") {
  const LabelRun run = pad_of(butter_pad());
  CHECK(words_of(run, FactId::Contains) == "CONTAINS milk");
  CHECK(words_of(run, FactId::BookDay) ==
        "By the kitchen book of Fri 20 Nov 2026. If anything was added or substituted, do not use this label.");
  CHECK(words_of(run, FactId::KeepAt) == "Keep at 5 °C (41 °F) or below");
  CHECK(words_of(run, FactId::Lot) == batch::lot(kitchen().kitchen, kPadDay, QStringLiteral("LBU"), 901));
  CHECK(words_of(run, FactId::ContainerOf) == "Tub 1 of _______");
  CHECK_FALSE(says(run, FactId::Release));
}

TEST_CASE("a finisher's pad says how to finish from chilled", "[facts][pad]") {
  const LabelRun run = pad_of(ready("parcel", "tray", amount(240, measure::Unit::Piece)));
  CHECK(words_of(run, FactId::Readiness) == "RAW: COOK BEFORE SERVING");
  CHECK(words_of(run, FactId::Finishing).startsWith("Oven, from chilled"));
  CHECK_FALSE(words_of(run, FactId::Finishing).contains("frozen"));
}

TEST_CASE("food that is cooked and cooled here is not released without its readings, and not called ready before them",
          "[facts][pad]") {
  const book::Book& hot = with("hot", "parcel");
  const LabelRun run = pad_of(ready("parcel", "tray", amount(240, measure::Unit::Piece), hot), hot);
  CHECK(words_of(run, FactId::Release) == "NOT RELEASED until these readings are met");
  CHECK(words_of(run, FactId::Readings) ==
        "COOK TO 74 °C (165 °F): _______ at _______\n"
        "Cooling from 57 °C (135 °F): _______ at _______\n"
        "to 21 °C (70 °F) within 2 h: _______ at _______\n"
        "to 5 °C (41 °F) within 6 h: _______ at _______");
  CHECK_FALSE(says(run, FactId::Readiness));
  const book::Book& ambient = with("ambient", "lime-butter");
  const LabelRun butter = pad_of(butter_pad(ambient), ambient);
  CHECK(words_of(butter, FactId::Readings) == "to 5 °C (41 °F) within 4 h: _______ at _______");
}

TEST_CASE("a reduced-oxygen pack's pad has its end to write", "[facts][pad]") {
  const LabelRun run = pad_of(ready("wrapped-butter", "bag", amount(2500, measure::Unit::Gram)));
  CHECK(words_of(run, FactId::ReducedOxygen) ==
        "KEEP REFRIGERATED AT 5 °C (41 °F) OR BELOW\nDiscard if not used by ________________");
}

TEST_CASE(
    "the code of a pad's label holds GTIN, lot and serial, and no date; the entered batch's holds the same and the "
    "date",
    "[facts][pad][code]") {
  const batch::Batch pad = butter_pad();
  const LabelRun run = pad_of(pad);
  REQUIRE(run.containers.size() == 3);
  batch::Batch entered = butter();
  entered.lot = pad.lot;
  entered.containers = pad.containers;
  entered.record.pad_day = kPadDay;
  const LabelRun dated = run_of(entered);
  for (size_t i = 0; i < 3; ++i) {
    const QByteArray uri = run.containers[i].uri;
    CHECK(uri == QByteArray("https://tl.test/01/") + pad.gtin.toLatin1() + "/10/" + pad.lot.toLatin1() + "/21/" +
                     pad.containers[i].serial.toLatin1());
    CHECK(dated.containers[i].uri.startsWith(uri + "?17=261201"));
  }
}

TEST_CASE("a pad in two languages says what is of safety in both, and what is written once", "[facts][pad]") {
  const book::Book& book = bilingual_kitchen();
  const LabelRun run = pad_of(ready("lime-butter", "bag", amount(10, measure::Unit::Kilogram), book), book);
  CHECK(words_of(run, FactId::BlankDate) == "USE BY ____________\nUSAR HASTA ____________");
  CHECK(words_of(run, FactId::BlankMade) == "Made ____________ at _______");
  CHECK(words_of(run, FactId::DateRule).contains("el de elaboración"));
  CHECK(words_of(run, FactId::BookDay).contains("no use esta etiqueta"));
}

TEST_CASE("a pad in two languages: readings are written once, and the second language says which", "[facts][pad]") {
  book::Book book = bilingual_kitchen();
  for (book::Product& product : book.products) product.cooled = product.cooled_from_ambient = true;
  const LabelRun run = pad_of(ready("lime-butter", "bag", amount(10, measure::Unit::Kilogram), book), book);
  CHECK(words_of(run, FactId::Readings) == "to 5 °C (41 °F) within 4 h: _______ at _______");
  const QString release = words_of(run, FactId::Release);
  CHECK(release.startsWith("NOT RELEASED until these readings are met\nNO LIBERADO hasta"));
  CHECK(release.endsWith(": a 5 °C (41 °F) en menos de 4 h"));
}

TEST_CASE("refused: a pad in words that nobody reviewed", "[facts][pad]") {
  const auto runs = label_runs(kitchen(), ready("lime-butter", "bag", amount(10, measure::Unit::Kilogram)), languages(),
                               {false, QStringLiteral("lid"), true});
  REQUIRE(!runs);
  CHECK(problem::text(runs.error()).contains("review"));
}
