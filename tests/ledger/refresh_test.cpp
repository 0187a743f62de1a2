// A reader that stays open beside a writer: after a refresh it has every lot as a reader has it that opens then.
#include <QTemporaryDir>

#include "random_history.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::ledger;

namespace {

QString said(const history::Holder& holder, const history::Lot& lot, const QDateTime& now) {
  const history::Good good = history::good(lot, holder, now);
  return QStringList{QString::number(holder.number),
                     QString::number(static_cast<int>(holder.where)),
                     holder.place,
                     holder.site,
                     QString::number(holder.left.amount),
                     QString::number(holder.superseded),
                     QString::number(static_cast<int>(good.state)),
                     good.end ? good.end->toUTC().toString(Qt::ISODate) : QString(),
                     good.why}
      .join(u'|');
}

// All that a page tells of a lot.
QString said(Ledger& ledger, qint64 id, const QDateTime& now) {
  const history::Lot* lot = ledger.lots().lot(id);
  if (!lot) return {};
  QStringList all{lot->code, lot->further_allergens.join(u','), QString::number(lot->used.amount)};
  for (const history::EntryId& recall : lot->recalls) all << recall.text();
  for (const history::HoldOn& hold : lot->holds) all << hold.entry.text();
  for (const history::Holder& holder : lot->holders) all << said(holder, *lot, now);
  return all.join(u'\n');
}

std::vector<qint64> all_lots(Store& store) {
  std::vector<qint64> out;
  Statement& rows = store.statement("SELECT id FROM lot");
  while (rows.next()) out.push_back(rows.number(0));
  return out;
}

}  // namespace

TEST_CASE("a reader that stays open has each lot as a new reader has it, whatever another program records",
          "[ledger][refresh]") {
  for (const unsigned seed : {1U, 2U, 3U}) {
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("ledger.sqlite"));
    auto writer = Ledger::open(path, Access::Write);
    REQUIRE(writer);
    auto reader = Ledger::open(path, Access::Read);
    REQUIRE(reader);
    RandomHistory history(seed);
    int recorded = 0;
    for (int at = 0; at < 250; ++at) {
      recorded += writer->append({history.next()}, stamp(history.now())) ? 1 : 0;
      if (at % 5 == 4) continue;  // several at once, now and then
      reader->lots().refresh();
      auto fresh = Ledger::open(path, Access::Read);
      REQUIRE(fresh);
      for (const qint64 id : all_lots(fresh->store())) {
        INFO("seed " << seed << ", event " << at << ", lot " << id);
        CHECK(said(*reader, id, history.now()) == said(*fresh, id, history.now()));
      }
    }
    CHECK(recorded > 100);
  }
}

TEST_CASE("a reader knows when something was recorded, here or elsewhere, and when nothing was", "[ledger][refresh]") {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("ledger.sqlite"));
  auto writer = Ledger::open(path, Access::Write);
  REQUIRE(writer);
  const auto record = [&](const char* lot, int minutes) {
    const QDateTime at = kMorning.addSecs(60L * minutes);
    REQUIRE(writer->append({made(QLatin1String(lot), QStringLiteral("butter"), kMorning, 4, {})}, stamp(at)));
  };
  record("A1", 10);
  auto reader = Ledger::open(path, Access::Read);
  REQUIRE(reader);
  const auto changes = [](Ledger& ledger) {
    ledger.lots().refresh();
    return ledger.lots().changes();
  };
  const qint64 read = changes(*reader), written = changes(*writer);
  CHECK(reader->last_recorded() == kMorning.addSecs(600));
  CHECK(changes(*reader) == read);
  CHECK(changes(*writer) == written);
  record("A2", 20);
  CHECK(changes(*reader) != read);
  CHECK(changes(*writer) != written);
  CHECK(reader->last_recorded() == kMorning.addSecs(1200));
  CHECK(writer->last_recorded() == kMorning.addSecs(1200));
}

TEST_CASE("what was computed from less than there is now is refused where the rest may change it",
          "[ledger][refresh]") {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("ledger.sqlite"));
  auto mine = Ledger::open(path, Access::Write);
  REQUIRE(mine);
  const QDateTime now = kMorning.addSecs(7200);
  for (const char* lot : {"A1", "A2"})
    REQUIRE(mine->append({made(QLatin1String(lot), QStringLiteral("butter"), kMorning, 4, {})}, stamp(now)));
  auto others = Ledger::open(path, Access::Write);
  REQUIRE(others);
  const auto moved = [](const char* lot) {
    return of_lot(history::Kind::Moved, QLatin1String(lot), kMorning.addSecs(600), {1});
  };
  const auto read_to = [&](qint64 last) {
    Stamp as_read = stamp(now);
    as_read.read_to = last;
    return as_read;
  };
  const auto append = [&](history::Event event, qint64 last) {
    const auto entries = mine->append({std::move(event)}, read_to(last));
    return entries ? QStringLiteral("appended") : entries.error().front().what;
  };
  const QString refused = QStringLiteral("something else was recorded meanwhile");
  const qint64 last = mine->last();
  CHECK(last == 2);
  REQUIRE(others->append({moved("A1")}, stamp(now)));
  CHECK(append(moved("A1"), last) == refused);
  CHECK(append(made(QStringLiteral("A3"), QStringLiteral("butter"), kMorning, 4, {}), last) == refused);
  CHECK(mine->last() == 3);
  CHECK(append(moved("A2"), last) == "appended");
  CHECK(append(moved("A1"), mine->last()) == "appended");
  CHECK(append(made(QStringLiteral("A3"), QStringLiteral("butter"), kMorning, 4, {}), mine->last()) == "appended");

  const qint64 before_hold = mine->last();
  history::Event hold = of_lot(history::Kind::Hold, QStringLiteral("A2"), kMorning.addSecs(700));
  hold.reason = QStringLiteral("a lid was off");
  REQUIRE(others->append({hold}, stamp(now)));
  CHECK(append(moved("A2"), before_hold) == refused);
}

TEST_CASE("a lot is another age after what befell it, and the same after what befell another", "[ledger][refresh]") {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("ledger.sqlite"));
  auto writer = Ledger::open(path, Access::Write);
  REQUIRE(writer);
  const QDateTime later = kMorning.addSecs(7200);
  REQUIRE(writer->append({made(QStringLiteral("A1"), QStringLiteral("butter"), kMorning, 4, {}),
                          made(QStringLiteral("A2"), QStringLiteral("butter"), kMorning, 4, {})},
                         stamp(later)));
  auto reader = Ledger::open(path, Access::Read);
  REQUIRE(reader);
  const qint64 one = *reader->lots().id(QStringLiteral("A1"), QStringLiteral("butter"));
  const qint64 two = *reader->lots().id(QStringLiteral("A2"), QStringLiteral("butter"));
  const auto age = [&](qint64 id) {
    reader->lots().refresh();
    REQUIRE(reader->lots().lot(id));
    return reader->lots().age(id);
  };
  const qint64 old_one = age(one), old_two = age(two);
  CHECK(age(one) == old_one);
  REQUIRE(
      writer->append({of_lot(history::Kind::Moved, QStringLiteral("A1"), kMorning.addSecs(600), {1})}, stamp(later)));
  CHECK(age(one) != old_one);
  CHECK(age(two) == old_two);
}
