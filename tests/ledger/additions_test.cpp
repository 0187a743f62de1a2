// What a correction adds to the declaration of a supplier's item stands for what comes later, too.
#include <QTemporaryDir>

#include "history/for_use.h"
#include "ledger/further_allergens.h"
#include "ledger/reach.h"
#include "ledger/schema.h"
#include "random_history.h"
#include "show.h"

using namespace lardiner;
using namespace lardiner::ledger;
using history::Event;
using history::Kind;

namespace {

const QString kItem = QStringLiteral("tomatillo");
const QString kSupplierItem = QStringLiteral("hill-tomatillo");
const QStringList kSesame{QStringLiteral("sesame")};

struct OpenLedger {
  QTemporaryDir folder;
  problem::Expected<Ledger> ledger = Ledger::open(folder.filePath(QStringLiteral("ledger.sqlite")), Access::Write);
  QDateTime now = kMorning;

  void append(Event event) {
    now = now.addSecs(600);
    event.at = now;
    const auto entries = ledger->append({event}, stamp(now));
    if (!entries) FAIL(problem::text(entries.error().front()).toStdString());
  }
  void add_sesame(const QString& lot = {}) {
    Event event;
    event.kind = Kind::Correction;
    event.by = QStringLiteral("MK");
    event.reason = QStringLiteral("letter");
    event.item = kItem;
    event.supplier_item = kSupplierItem;
    event.lot = lot;
    event.adds = kSesame;
    append(event);
  }
  void receive(const QString& lot, const QString& supplier_item, std::optional<QDate> checked = {}) {
    Event event = received(kItem, lot, now, 5000);
    event.supplier_item = supplier_item;
    event.checked = checked;
    append(event);
  }
  QStringList further(const QString& lot, const QString& item = kItem) {
    const auto id = ledger->lots().id(lot, item);
    REQUIRE(id);
    const history::Lot* read = ledger->lots().lot(*id);
    REQUIRE(read);
    CHECK(further_allergens(ledger->store(), *id) == read->further_allergens);
    return read->further_allergens;
  }
};

}  // namespace

TEST_CASE("a lot that comes after a correction of its supplier's item takes it on; another supplier's does not",
          "[ledger][additions]") {
  OpenLedger one;
  REQUIRE(one.ledger);
  one.receive("T-0", kSupplierItem);
  one.add_sesame();
  one.receive("T-1", kSupplierItem);
  one.receive("T-2", "vale-tomatillo");
  one.receive("T-3", {});  // whose it is nobody wrote
  CHECK(one.further("T-0") == kSesame);
  CHECK(one.further("T-1") == kSesame);
  CHECK(one.further("T-2").isEmpty());
  CHECK(one.further("T-3") == kSesame);
}

TEST_CASE("a declaration that was read on a later day than the correction knows better; on the same day it does not",
          "[ledger][additions]") {
  OpenLedger one;
  REQUIRE(one.ledger);
  one.add_sesame();
  one.receive("T-1", kSupplierItem, kMorning.date().addDays(-200));
  one.receive("T-2", kSupplierItem, kMorning.date());
  one.receive("T-3", kSupplierItem, kMorning.date().addDays(1));
  CHECK(one.further("T-1") == kSesame);
  CHECK(one.further("T-2") == kSesame);
  CHECK(one.further("T-3").isEmpty());
}

TEST_CASE("a correction that names a lot reaches it when it comes, whenever the declaration was read, and no other",
          "[ledger][additions]") {
  OpenLedger one;
  REQUIRE(one.ledger);
  one.add_sesame("T-1");
  one.receive("T-1", kSupplierItem, kMorning.date().addDays(1));
  one.receive("T-2", kSupplierItem);
  CHECK(one.further("T-1") == kSesame);
  CHECK(one.further("T-2").isEmpty());
}

TEST_CASE("what was made of a lot that is received afterwards takes on what the lot does, through any depth",
          "[ledger][additions]") {
  OpenLedger one;
  REQUIRE(one.ledger);
  one.add_sesame();
  one.append(made("L1", "salsa", one.now, 2, {{kItem, "T-1"}}));
  one.append(made("L2", "bowl", one.now, 2, {{"salsa", "L1"}}));
  CHECK(one.further("L2", "bowl").isEmpty());
  one.receive("T-1", kSupplierItem);
  CHECK(one.further("L1", "salsa") == kSesame);
  CHECK(one.further("L2", "bowl") == kSesame);
}

TEST_CASE("what was recorded without an allergen of its input is corrected; what declares it is as it was",
          "[ledger][additions]") {
  OpenLedger one;
  REQUIRE(one.ledger);
  one.receive("T-1", kSupplierItem);
  one.add_sesame();
  one.append(made("L1", "salsa", one.now, 2, {{kItem, "T-1"}}));
  batch::Fixed knows = batch_of("L2", "salsa", one.now, 2, {{kItem, "T-1"}});
  history::declare_besides(knows.batch.declared, kSesame, {});
  one.append(made(std::move(knows)));
  CHECK(one.further("L1", "salsa") == kSesame);
  CHECK(one.further("L2", "salsa").isEmpty());
}

TEST_CASE("an exemption that is declared does not stand for the whole substance", "[history][additions]") {
  book::Declared declared;
  declared.contains = {{"soy", {}, {}, "highly-refined-oil", {}}, {"fish", "cod", {}, {}, {}}};
  CHECK_FALSE(history::declares(declared, "soy"));
  CHECK(history::declares(declared, "fish:cod"));
  CHECK_FALSE(history::declares(declared, "fish"));
  CHECK_FALSE(history::declares(declared, "fish:hake"));
}

// Of every lot that came, whichever came first, and of all that was made of it.
TEST_CASE("whatever a correction stands for declares what it adds, and so does all that was made of it",
          "[ledger][additions][property]") {
  int corrected = 0;
  for (unsigned seed = 51; seed <= 56; ++seed) {
    OpenLedger one;
    REQUIRE(one.ledger);
    RandomHistory history(seed);
    for (int at = 0; at < 250; ++at) (void)one.ledger->append({history.next()}, stamp(history.now()));
    Store& store = one.ledger->store();
    for (const QString& row : store.rows(QStringLiteral("SELECT id FROM lot WHERE kind = 2"))) {
      const history::Lot* lot = one.ledger->lots().lot(row.toLongLong());
      REQUIRE(lot);
      for (const Addition& addition : additions(store, lot->item, lot->supplier_item, lot->code)) {
        if (!stands(addition, lot->received->checked)) continue;
        for (const qint64 id : reach(store, {row.toLongLong()}, Direction::Forward)) {
          const history::Lot* holds = one.ledger->lots().lot(id);
          if (!holds) continue;
          ++corrected;
          CHECK(holds->further_allergens.contains(addition.substances.front()));
        }
      }
    }
    const QStringList kept = dump_projections(store);
    REQUIRE(one.ledger->rebuild());
    CHECK(dump_projections(store) == kept);
  }
  CHECK(corrected > 100);
}
