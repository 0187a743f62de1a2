// Whether the tables that are computed from the entries say what the entries give.
#include "ledger/computed_anew.h"

#include <QFile>
#include <QTemporaryDir>

#include "ledger/ledger.h"
#include "ledger/schema.h"

namespace lardiner::ledger {

using problem::Code;
using problem::Error;
using problem::Errors;

namespace {

Error no_room(const QString& folder) {
  return {Code::Machine, QStringLiteral("the ledger cannot be copied to be computed anew"), at_file(folder),
          QStringLiteral("make room there, or name another folder in TMPDIR")};
}

// Two copies of one moment: the one stays as it is.
std::optional<Error> copy_twice(const QString& path, const QString& kept, const QString& anew) {
  const auto store = Store::open(path, Access::Read);
  if (!store) return store.error();
  if (const auto current = check_version(**store); !current) return current.error();
  (*store)->statement("VACUUM INTO ?").with(kept).run();
  if ((*store)->fault()) return no_room(kept);
  return QFile::copy(kept, anew) ? std::nullopt : std::optional(no_room(anew));
}

bool differs(Store& store, const QString& table) {
  const QString unlike = QStringLiteral("SELECT 1 FROM (SELECT * FROM %1 EXCEPT SELECT * FROM %2) LIMIT 1");
  return !store.rows(unlike.arg(QStringLiteral("main.") + table, QStringLiteral("kept.") + table)).isEmpty() ||
         !store.rows(unlike.arg(QStringLiteral("kept.") + table, QStringLiteral("main.") + table)).isEmpty();
}

}  // namespace

problem::ExpectedAll<QStringList> unlike_tables(const QString& path) {
  const QTemporaryDir folder;
  const QString kept = folder.filePath(QStringLiteral("kept.sqlite"));
  const QString anew = folder.filePath(QStringLiteral("anew.sqlite"));
  if (!folder.isValid()) return tl::unexpected(Errors{no_room(folder.path())});
  if (const std::optional<Error> error = copy_twice(path, kept, anew)) return tl::unexpected(Errors{*error});
  auto ledger = Ledger::open(anew, Access::Write);
  if (!ledger) return tl::unexpected(Errors{ledger.error()});
  if (const auto computed = ledger->rebuild(); !computed) return tl::unexpected(computed.error());
  Store& store = ledger->store();
  store.run(QStringLiteral("PRAGMA temp_store=FILE"));  // comparing sorts whole tables
  store.statement("ATTACH ? AS kept").with(kept).run();
  QStringList unlike;
  for (const QString& table : projections())
    if (differs(store, table)) unlike += table;
  if (store.fault()) return tl::unexpected(Errors{*store.fault()});
  return unlike;
}

}  // namespace lardiner::ledger
