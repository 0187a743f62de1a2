// Batches from records: what was in a freezer before, through lots made of lots, and which containers say so.
#include "compute_kitchen.h"

using namespace lardiner;
using namespace lardiner::batch;
using namespace lardiner::batch::day;

namespace {

QByteArray frozen(const QByteArray& from, const QByteArray& to = {}, const QByteArray& containers = {}) {
  const QByteArray of = containers.isEmpty() ? QByteArray() : ", \"containers\": \"" + containers + "\"";
  QByteArray events = "\"events\": [{\"what\": \"frozen\", \"at\": \"" + from + "\"" + of + "}";
  if (!to.isEmpty()) events += ", {\"what\": \"thawed\", \"at\": \"" + to + "\"" + of + "}";
  return events + "]";
}

const book::Book& free_day() {
  static const book::Book book = read_kitchen("freezing_day = \"free\"\n");
  return book;
}

// Seven days each, ready to eat, the second made of the first and the third of the second.
QByteArray dip(const QByteArray& made_at, const QByteArray& events = {}) {
  return made("dip", 1, made_at, input("mayonnaise", "2027-12-20"), events);
}
QByteArray dressing(const QByteArray& lot, const QByteArray& made_at, const QByteArray& events = {}) {
  const QByteArray extra = from_lot("dip", lot, "\"agreed_by\": \"MK\"");
  return made("dressing", 2, made_at, input("butter", "2027-12-20") + "," + extra, events);
}
QByteArray creamy(const QByteArray& lot, const QByteArray& made_at, const QByteArray& events = {}) {
  const QByteArray extra = from_lot("dressing", lot, "\"agreed_by\": \"MK\"");
  return made("creamy", 3, made_at, input("cream", "2027-12-20") + "," + extra, events);
}

const char* const kMade = "2026-10-10 09:00";

}  // namespace

TEST_CASE(
    "where the day of freezing is free, a second freezing counts though the first was of the lot it was made from",
    "[batch][compute]") {
  const QByteArray first = dip("2026-10-01 09:00", frozen("2026-10-01 15:00"));
  const QByteArray again = frozen("2026-10-10 15:00", "2026-10-20 08:00");
  CHECK(last_day(good(first + dressing(lot_of(first), kMade, again), 1, free_day())) == date("2026-10-25"));
  const QByteArray fresh = dip("2026-10-10 08:00");
  CHECK(last_day(good(fresh + dressing(lot_of(fresh), kMade, again), 1, free_day())) == date("2026-10-26"));
}

TEST_CASE("a second freezing counts through a lot between that was never frozen", "[batch][compute]") {
  const QByteArray again = frozen("2026-10-10 15:00", "2026-10-20 08:00");
  const auto third = [&](const QByteArray& first) {
    const QByteArray two = first + dressing(lot_of(first), kMade);
    return last_day(good(two + creamy(lot_of(two, 1), "2026-10-10 10:00", again), 2, free_day()));
  };
  CHECK(third(dip("2026-10-01 09:00", frozen("2026-10-01 15:00"))) == date("2026-10-25"));
  CHECK(third(dip("2026-10-10 08:00")) == date("2026-10-26"));
}

TEST_CASE("only the containers that were frozen were previously frozen", "[batch][compute]") {
  const Batch one = good(dip("2026-11-01 09:00", frozen("2026-11-01 15:00", "2026-11-04 08:00", "2")));
  CHECK_FALSE(one.previously_frozen);
  CHECK_FALSE(one.use_bys[static_cast<size_t>(one.containers[0].use_by)].previously_frozen);
  CHECK(one.use_bys[static_cast<size_t>(one.containers[1].use_by)].previously_frozen);
  const Batch all = good(dip("2026-11-01 09:00", frozen("2026-11-01 15:00", "2026-11-04 08:00")));
  CHECK(all.previously_frozen);
}

TEST_CASE("what is made of a lot was previously frozen if one of its containers was", "[batch][compute]") {
  const QByteArray first = dip("2026-11-01 09:00", frozen("2026-11-01 15:00", "2026-11-04 08:00", "2"));
  const Batch after = good(first + dressing(lot_of(first), "2026-11-05 09:00"), 1);
  CHECK(after.previously_frozen);
  CHECK(after.use_bys.front().previously_frozen);
  CHECK_FALSE(good(first + dressing(lot_of(first), "2026-11-01 12:00"), 1).previously_frozen);
}

TEST_CASE("a lot that was put on time control or opened after its end is refused", "[batch][compute]") {
  const auto happened = [](const QByteArray& what, const QByteArray& day) {
    return refused(dip("2026-10-01 09:00", "\"events\": [{\"what\": \"" + what + "\", \"at\": \"2026-10-" + day +
                                               " 10:00\"" + (what == "time-control" ? ", \"temperature\": \"40 °F\"" : "") +
                                               "}]"));
  };
  CHECK(happened("time-control", "20").contains(QStringLiteral("after its end, Wed 7 Oct 2026")));
  CHECK(happened("opened", "20").contains(QStringLiteral("after its end, Wed 7 Oct 2026")));
  CHECK(happened("time-control", "05") == QString());
  CHECK(happened("opened", "05") == QString());
}
