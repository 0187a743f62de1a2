// The tables of a ledger: what is evidence, and what is computed from it; and how older files become newer ones.
#include "ledger/schema.h"

namespace lardiner::ledger {

using problem::Code;
using problem::Error;

namespace {

// "Lard" in ASCII: what tells our files from other SQLite files (PRAGMA application_id).
constexpr int kApplicationId = 0x4C617264;

// Each step brings a file of one version to the next. Steps are never changed once a program with them was used.
//
// Evidence: `event`, and `chain`, which says how long each chain is and how it ends. All other tables are computed from
// `event` in the order of `seq`. Instants are seconds since 1970 UTC; amounts are whole numbers of the smallest unit of
// the lot's dimension.
const char* const kToVersion1[] = {
    "CREATE TABLE chain (id INTEGER PRIMARY KEY, station TEXT NOT NULL UNIQUE, count INTEGER NOT NULL, head BLOB NOT "
    "NULL,"
    " recorded INTEGER NOT NULL)",
    "CREATE TABLE event (seq INTEGER PRIMARY KEY, chain INTEGER NOT NULL, number INTEGER NOT NULL, hash BLOB NOT NULL,"
    " body TEXT NOT NULL)",
    "CREATE UNIQUE INDEX event_of ON event(chain, number)",
    // kind: 0 named alone, 1 made here, 2 received. began: made at, received at
    "CREATE TABLE lot (id INTEGER PRIMARY KEY, code TEXT NOT NULL, item TEXT NOT NULL, supplier_item TEXT NOT NULL,"
    " kind INTEGER NOT NULL, seq INTEGER, began INTEGER, name TEXT NOT NULL, dimension INTEGER, held INTEGER NOT NULL,"
    " refused INTEGER NOT NULL, cooling_due INTEGER)",
    "CREATE UNIQUE INDEX lot_of ON lot(code, item)",
    "CREATE INDEX lot_of_item ON lot(item, began)",
    "CREATE INDEX lot_cooling ON lot(cooling_due) WHERE cooling_due IS NOT NULL",
    // whereabouts: as history::Where. ends: the first instant past. running: ends at a time of day
    "CREATE TABLE holder (lot INTEGER NOT NULL, number INTEGER NOT NULL, whereabouts INTEGER NOT NULL, place TEXT NOT "
    "NULL,"
    " site TEXT NOT NULL, note TEXT NOT NULL, kind TEXT NOT NULL, holds INTEGER NOT NULL, remains INTEGER NOT NULL,"
    " ends INTEGER, running INTEGER NOT NULL, frozen INTEGER NOT NULL, opened INTEGER NOT NULL, labelled INTEGER NOT "
    "NULL,"
    " superseded INTEGER NOT NULL, seen INTEGER NOT NULL, PRIMARY KEY (lot, number)) WITHOUT ROWID",
    "CREATE INDEX holder_ends ON holder(ends) WHERE whereabouts = 0 AND ends IS NOT NULL",
    "CREATE INDEX holder_place ON holder(place) WHERE whereabouts = 0",
    "CREATE INDEX holder_superseded ON holder(lot) WHERE whereabouts = 0 AND superseded = 1",
    "CREATE INDEX holder_note ON holder(note) WHERE note <> ''",
    // What went into what. assumed: nobody confirmed which lot it was
    "CREATE TABLE input (output INTEGER NOT NULL, input INTEGER NOT NULL, assumed INTEGER NOT NULL, amount INTEGER,"
    " dimension INTEGER,"
    " PRIMARY KEY (output, input)) WITHOUT ROWID",
    "CREATE INDEX input_of ON input(input, output)",
    "CREATE TABLE touched (lot INTEGER NOT NULL, seq INTEGER NOT NULL, PRIMARY KEY (lot, seq)) WITHOUT ROWID",
    "CREATE TABLE happened (day INTEGER NOT NULL, seq INTEGER NOT NULL, kind INTEGER NOT NULL, PRIMARY KEY (day, seq))"
    " WITHOUT ROWID",
    // Holds and recalls that are open, and corrections, by the lots that they concern
    "CREATE TABLE concern (seq INTEGER NOT NULL, lot INTEGER NOT NULL, kind INTEGER NOT NULL, PRIMARY KEY (seq, lot))"
    " WITHOUT ROWID",
    "CREATE INDEX concern_of ON concern(lot)",
    "CREATE TABLE counted (place TEXT NOT NULL PRIMARY KEY, at INTEGER NOT NULL) WITHOUT ROWID",
    // Prints that are not done, by the entry that asked for them; and what each printer is loaded with.
    "CREATE TABLE print (seq INTEGER PRIMARY KEY, printer TEXT NOT NULL, sent INTEGER NOT NULL)",
    "CREATE TABLE loaded (printer TEXT NOT NULL PRIMARY KEY, seq INTEGER NOT NULL) WITHOUT ROWID",
};

const char* const kToVersion2[] = {
    // Corrections of what a supplier's item declares, for the lots of it that come later. lot: of this one alone
    "CREATE TABLE declares_besides (seq INTEGER PRIMARY KEY, item TEXT NOT NULL, supplier_item TEXT NOT NULL,"
    " lot TEXT NOT NULL, day INTEGER NOT NULL)",
    "CREATE INDEX declares_besides_of ON declares_besides(item)",
};

constexpr const char* kProjections[] = {"lot",     "holder",  "input", "touched", "happened",
                                        "concern", "counted", "print", "loaded",  "declares_besides"};

int pragma(Store& store, const char* sql) {
  Statement& asked = store.statement(sql);
  const int value = asked.one() ? static_cast<int>(asked.number(0)) : 0;
  asked.end();
  return value;
}

int version(Store& store) { return pragma(store, "PRAGMA user_version"); }

Error newer(const Store& store, int found) {
  return {Code::Machine,
          QStringLiteral("this ledger was written by a newer Lardiner (tables of version %1; this one knows %2)")
              .arg(found)
              .arg(kSchemaVersion),
          at_file(store.path()), QStringLiteral("use the newer one")};
}

Error not_ours(const Store& store) {
  return {Code::Machine, QStringLiteral("this SQLite file is no ledger"), at_file(store.path()),
          QStringLiteral("name the ledger's file with --ledger")};
}

bool has_tables(Store& store) {
  Statement& tables = store.statement("SELECT count(*) FROM sqlite_schema WHERE type = 'table'");
  const bool some = tables.one() && tables.number(0) > 0;
  tables.end();
  return some;
}

std::optional<Error> unfit(Store& store) {
  const int found = version(store);
  if (store.fault()) return store.fault();
  const bool ours = pragma(store, "PRAGMA application_id") == kApplicationId;
  if (ours && found > kSchemaVersion) return newer(store, found);
  if (!ours && has_tables(store)) return not_ours(store);
  return store.fault();
}

void step_to_1(Store& store) {
  for (const char* sql : kToVersion1) store.run(QString::fromLatin1(sql));
  store.run(QStringLiteral("PRAGMA application_id = %1").arg(kApplicationId));
}

void step_to_2(Store& store) {
  for (const char* sql : kToVersion2) store.run(QString::fromLatin1(sql));
}

constexpr void (*kSteps[])(Store&) = {step_to_1, step_to_2};  // kSteps[n] leads from version n to n + 1
static_assert(std::size(kSteps) == kSchemaVersion);

}  // namespace

problem::Expected<bool> migrate(Store& store, const std::function<problem::Errors()>& compute_anew) {
  if (const std::optional<Error> error = unfit(store)) return tl::unexpected(*error);
  if (version(store) == kSchemaVersion) return true;
  store.begin();
  const int from = version(store);  // read again: another may have done it meanwhile
  for (int at = from; at < kSchemaVersion; ++at) {
    kSteps[at](store);
    store.run(QStringLiteral("PRAGMA user_version = %1").arg(at + 1));
  }
  const bool older = from > 0 && from < kSchemaVersion;
  const problem::Errors errors = older && !store.fault() ? compute_anew() : problem::Errors();
  if (errors.empty()) store.commit();
  if (errors.empty() && !store.fault()) return true;
  store.roll_back();
  return tl::unexpected(store.fault() ? *store.fault() : errors.front());
}

problem::Expected<bool> check_version(Store& store) {
  if (const std::optional<Error> error = unfit(store)) return tl::unexpected(*error);
  const int found = version(store);
  if (found == kSchemaVersion) return true;
  return tl::unexpected(Error{
      Code::Machine,
      found == 0 ? QStringLiteral("nothing has been recorded in this ledger yet")
                 : QStringLiteral("this ledger has tables of version %1, older than %2").arg(found).arg(kSchemaVersion),
      at_file(store.path()),
      found == 0 ? QStringLiteral("record something first (lardiner record); if something was, restore a backup")
                 : QStringLiteral("bring it to the newer form: lardiner verify --rebuild")});
}

problem::Expected<bool> check_entries(Store& store) {
  if (const std::optional<Error> error = unfit(store)) return tl::unexpected(*error);
  return version(store) == 0 ? check_version(store) : true;
}

QStringList projections() {
  QStringList names;
  for (const char* table : kProjections) names += QLatin1String(table);
  return names;
}

void clear_projections(Store& store) {
  for (const char* table : kProjections) store.run(QStringLiteral("DELETE FROM %1").arg(QLatin1String(table)));
}

QStringList dump_projections(Store& store) {
  QStringList rows;
  for (const char* table : kProjections)
    for (const QString& row : store.rows(QStringLiteral("SELECT * FROM %1").arg(QLatin1String(table))))
      rows += QLatin1String(table) + QLatin1Char(' ') + row;
  rows.sort();
  return rows;
}

}  // namespace lardiner::ledger
