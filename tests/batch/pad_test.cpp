// Batches made ready on a pad before they are made: their identity, the rule a hand follows, and their entry later.
#include "batch/pad.h"

#include "batch/lot.h"
#include "batch/read_records_parts.h"
#include "refused_records.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

std::vector<ContainerGroup> containers(const char* text, const book::Book& book = kitchen()) {
  const RecordSettings settings;
  return parse_containers(QString::fromLatin1(text), Reading{book, settings}).value();
}

problem::ExpectedAll<Batch> padded(const char* product, const char* day, int number, const char* in = "4 tub 500 g",
                                   const book::Book& book = kitchen()) {
  return pad_batch(book, {*book.product(QString::fromLatin1(product)), date(day), number, containers(in, book)});
}

QString refused_pad(const char* product, const book::Book& book = kitchen(), const char* in = "4 tub 500 g") {
  const auto batch = padded(product, "2026-11-20", 901, in, book);
  return batch ? QStringLiteral("made") : problem::text(batch.error());
}

const book::Book& with_further(const QByteArray& further) {
  static std::map<QByteArray, book::Book> books;
  return books.try_emplace(further, read_kitchen({}, further)).first->second;
}

HandRule rule(const char* product, const book::Book& book = kitchen()) {
  const auto batch = padded(product, "2026-11-20", 1, "4 tub 500 g", book);
  REQUIRE(batch);
  return hand_rule(book, *batch, batch->record.containers.front()).value();
}

const QByteArray kDip = input("mayonnaise", "2026-12-20");

QByteArray entered(const QByteArray& more) { return made("dip", 901, "2026-11-25 08:10", kDip, more); }

}  // namespace

TEST_CASE("a batch from a pad has the lot and the serials of the pad's day, whenever it was made", "[batch][pad]") {
  const Batch ready = padded("dip", "2026-11-20", 901).value();
  const Batch entry = good(entered("\"pad_day\": \"2026-11-20\", \"lot\": \"" + ready.lot.toLatin1() + "\""));
  CHECK(entry.lot == lot(kitchen().kitchen, date("2026-11-20"), QStringLiteral("DIP"), 901));
  CHECK(entry.lot == ready.lot);
  CHECK(entry.gtin == ready.gtin);
  REQUIRE(entry.containers.size() == ready.containers.size());
  for (size_t i = 0; i < entry.containers.size(); ++i) CHECK(entry.containers[i].serial == ready.containers[i].serial);
  CHECK(last_day(entry) == date("2026-12-01"));  // counted from the making, not from the pad
}

TEST_CASE("a batch made ready on a pad has what the book says of it, and no date", "[batch][pad]") {
  const Batch ready = padded("raw-tray", "2026-11-20", 1).value();
  CHECK(ready.use_bys.empty());
  CHECK(ready.refused.empty());
  CHECK(ready.readiness == book::Readiness::MustBeCooked);
  CHECK(ready.declared.contains == book::declared(kitchen(), QStringLiteral("raw-tray")).contains);
  CHECK(ready.declared.contains.size() == 2);
}

TEST_CASE("the time of entry is kept apart from the time of the making", "[batch][pad]") {
  CHECK(!good(made("dip", 1, "2026-11-25 08:10", kDip)).record.recorded_at);
  const Record record = good(made("dip", 1, "2026-11-25 08:10", kDip, "\"recorded\": \"2026-11-27 09:00\"")).record;
  CHECK(record.made_at == at("2026-11-25 08:10"));
  CHECK(record.recorded_at == at("2026-11-27 09:00"));
  const QByteArray lot = padded("dip", "2026-11-20", 901)->lot.toLatin1();
  const QByteArray pad = "\"pad_day\": \"2026-11-20\", \"lot\": \"" + lot + "\"";
  CHECK(good(entered(pad)).record.recorded_at == at(kNow));
  CHECK(good(entered(pad + ", \"recorded\": \"2026-11-26 07:00\"")).record.recorded_at == at("2026-11-26 07:00"));
}

TEST_CASE("a pad of the day of the making is taken", "[batch][pad]") {
  const QByteArray lot = padded("dip", "2026-11-25", 901)->lot.toLatin1();
  CHECK(good(entered("\"pad_day\": \"2026-11-25\", \"lot\": \"" + lot + "\"")).lot.toLatin1() == lot);
}

TEST_CASE("refused: a pad of a day after the making", "[batch][pad]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,lot,pad_day
dip,901,2 kg,2026-11-25 08:10,4 tub 500 g,A26330DIP901W,2026-11-26
)~") == told(R"~(
day.csv:2:57: the pad is of Thu 26 Nov 2026, after the making on Wed 25 Nov 2026
  dip,901,2 kg,2026-11-25 08:10,4 tub 500 g,A26330DIP901W,2026-11-26
                                                          ^^^^^^^^^^
  copy the day that the label names with the kitchen book
)~"));
}

TEST_CASE("refused: a batch from a pad without its lot", "[batch][pad]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,pad_day
dip,901,2 kg,2026-11-25 08:10,4 tub 500 g,2026-11-20
)~") == told(R"~(
day.csv:2:43: the batch is from a pad, but its lot is not written
  dip,901,2 kg,2026-11-25 08:10,4 tub 500 g,2026-11-20
                                            ^^^^^^^^^^
  write lot, as it stands on the label
)~"));
}

TEST_CASE("refused: a pad's day with a time", "[batch][pad]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,lot,pad_day
dip,901,2 kg,2026-11-25 08:10,4 tub 500 g,A26324DIP901W,2026-11-20 08:00
)~")
            .contains(QStringLiteral("\"2026-11-20 08:00\" is not a date")));
}

TEST_CASE("refused: a package of an ingredient has no pad", "[batch][pad]") {
  CHECK(csv(R"~(what,ingredient,number,made_at,pad_day
opened,cream,1,2026-11-25 08:10,2026-11-20
)~")
            .contains(QStringLiteral("pad_day")));
}

TEST_CASE("refused: recorded before it was made, and in the future", "[batch][pad]") {
  CHECK(csv(R"~(product,number,quantity,made_at,containers,recorded
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,2026-11-25 08:09
)~") == told(R"~(
day.csv:2:41: recorded Wed 25 Nov 2026 08:09, before it was made at Wed 25 Nov 2026 08:10
  dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,2026-11-25 08:09
                                          ^^^^^^^^^^^^^^^^
  write when it was entered, or leave it out
)~"));
  CHECK(csv(R"~(product,number,quantity,made_at,containers,recorded
dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,2026-12-31 12:01
)~") == told(R"~(
day.csv:2:41: "2026-12-31 12:01" is in the future: it is now Thu 31 Dec 2026 12:00
  dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,2026-12-31 12:01
                                          ^^^^^^^^^^^^^^^^
  write when it happened
)~"));
  CHECK(read_csv("product,number,quantity,made_at,containers,recorded\n"
                 "dip,1,2 kg,2026-11-25 08:10,4 tub 500 g,2026-11-25 08:10\n")
            .errors.empty());
}

TEST_CASE("refused: the lot of another pad", "[batch][pad]") {
  const QByteArray other = padded("dip", "2026-11-21", 901)->lot.toLatin1();
  const QString expected = padded("dip", "2026-11-20", 901)->lot;
  const QString text = refused(entered("\"pad_day\": \"2026-11-20\", \"lot\": \"" + other + "\""));
  CHECK(text.contains(QStringLiteral("is that of a different batch")));
  CHECK(text.contains(QStringLiteral("the lot of this batch is ") + expected));
}

TEST_CASE("whatever was added to or substituted in a batch from a pad asks for new labels", "[batch][pad]") {
  const QByteArray lot = padded("dip", "2026-11-20", 901)->lot.toLatin1();
  const QByteArray pad = "\"pad_day\": \"2026-11-20\", \"lot\": \"" + lot + "\"";
  const QByteArray swapped = input("butter", "2026-12-20", "\"instead_of\": \"mayonnaise\", \"agreed_by\": \"MK\"");
  const std::vector<QString> said = good(made("dip", 901, "2026-11-25 08:10", swapped, pad)).warnings;
  REQUIRE(said.size() == 1);
  CHECK(said.front() ==
        QStringLiteral("the label of the pad does not say what was added or substituted: put new labels on "
                       "the containers"));
  CHECK(good(made("dip", 901, "2026-11-25 08:10", swapped)).warnings.empty());
  CHECK(good(entered(pad)).warnings.empty());
  const QByteArray added = input("mayonnaise", "2026-12-20") + ", " + input("salt");
  CHECK(good(made("dip", 901, "2026-11-25 08:10", added, pad)).warnings == said);
  CHECK(good(made("dip", 901, "2026-11-25 08:10", added)).warnings.empty());
}

TEST_CASE("the rule of a pad is the shortest that counts from the making", "[batch][pad][use_by]") {
  CHECK(rule("dip").length == book::Length{book::Length::Unit::Days, 7, 1});
  CHECK(rule("raw-tray").length == book::Length{book::Length::Unit::Days, 3, 1});
  CHECK(rule("vac-dip").length == book::Length{book::Length::Unit::Days, 21, 1});
  CHECK(rule("spice-mix").length.unit == book::Length::Unit::Months);
  CHECK(rule("spice-mix").length.count == 6);
  CHECK(rule("spice-mix").kind == book::EndKind::BestBefore);
  CHECK(rule("dip").kind == book::EndKind::UseBy);
}

TEST_CASE("the date by the rule of a pad is the computed one where no ingredient ends earlier",
          "[batch][pad][use_by]") {
  const HandRule hand = rule("dip");
  for (const QByteArray day : {"2026-11-25", "2026-10-31", "2026-03-07", "2026-02-24"}) {
    const Batch batch = good(made("dip", 1, day + " 08:10", input("mayonnaise", "2026-12-31")));
    CHECK(last_day(batch) == date(day).addDays(hand.length.count - hand.length.first_day));
  }
}

TEST_CASE("refused: a pad of what the book leaves open", "[batch][pad]") {
  const QString text = refused_pad("puzzle");
  CHECK(text == problem::text(book::label_gaps(kitchen(), *kitchen().product(QStringLiteral("puzzle")))));
  CHECK(text.contains(QStringLiteral("does not declare its allergens")));
}

TEST_CASE("refused: a pad of what keeps for hours, or by days and months of which either may be shorter",
          "[batch][pad]") {
  const book::Book& hours = with_further(product("hourly", "HOU", "yes", line("mayonnaise"), life("chilled", "8 h")));
  CHECK(
      refused_pad("hourly", hours) ==
      QStringLiteral("products.toml:%1:1: no pad of \"hourly\": it keeps for hours, and its label has a day to write\n"
                     "  [[product]]\n  ^^^^^^^^^^^\n  label it when its record is entered\n")
          .arg(hours.product(QStringLiteral("hourly"))->place.line));
  const QByteArray best = "kind = \"best before\"";
  const auto lives = [&](const char* days) {
    return product("either", "EIT", "no", line("salt"),
                   life("chilled", days, "kitchen rule", best) + life("ambient", "2 months", "kitchen rule", best));
  };
  CHECK(refused_pad("either", with_further(lives("60 days"))).contains(QStringLiteral("either may end first")));
  CHECK(refused_pad("either", with_further(lives("50 days"))) == QStringLiteral("made"));
  CHECK(rule("either", with_further(lives("50 days"))).length.count == 50);
  CHECK(rule("either", with_further(lives("90 days"))).length.unit == book::Length::Unit::Months);
}

TEST_CASE("refused: a pad of containers that are kept frozen, held hot or for sale", "[batch][pad]") {
  const auto kept = [&](const QByteArray& state, const QByteArray& more) {
    return product("tubbed", "TBD", "yes", line("mayonnaise"),
                   seven_days() + life("frozen", "3 months") + life("hot-held", "4 h"))
        .replace("purpose = \"inside\"\n", "purpose = \"" + more + "\"\nkept = \"" + state + "\"\n");
  };
  CHECK(
      refused_pad("tubbed", with_further(kept("frozen", "inside"))).contains(QStringLiteral("its tub is kept frozen")));
  CHECK(
      refused_pad("tubbed", with_further(kept("hot-held", "inside"))).contains(QStringLiteral("its tub is held hot")));
  CHECK(refused_pad("tubbed", with_further(kept("chilled", "sale"))).contains(QStringLiteral("its tub is for sale")));
  CHECK(refused_pad("tubbed", with_further(kept("chilled", "inside"))) == QStringLiteral("made"));
}

TEST_CASE("refused: a pad of a kind of container that the book does not have", "[batch][pad]") {
  CHECK(
      refused_pad("dip", kitchen(), "4 jar 500 g") ==
      QStringLiteral("\"dip\" is not put up in a jar by the book\n  it has: tub; or add the container to the book\n"));
}

TEST_CASE("what is cooked or cooled here has readings to write: its own cook first, else the minimum", "[batch][pad]") {
  const book::Book& book = kitchen();
  const auto cook = [&](const char* id) { return cook_by_hand(book, *book.product(QString::fromLatin1(id))); };
  CHECK(cook("dip") == nullptr);
  REQUIRE(cook("stew"));
  CHECK(cook("stew")->temperature.fahrenheit.tenths == 1750);
  REQUIRE(cook("burger"));
  CHECK(cook("burger")->temperature.fahrenheit.tenths ==
        book.rules.cook_for(QStringLiteral("ground-meat"))->any_of.front().temperature.fahrenheit.tenths);
  CHECK(cooling_by_hand(book, *book.product(QStringLiteral("stock"))).size() == book.rules.cooling.size());
  CHECK(cooling_by_hand(book, *book.product(QStringLiteral("stew"))).empty());
}
