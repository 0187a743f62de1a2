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
