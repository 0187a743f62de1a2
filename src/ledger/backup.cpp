// A copy of a ledger while it is written to, and a ledger out of a copy; each verified before it counts.
#include "ledger/backup.h"

#include <fcntl.h>
#include <unistd.h>

#include <QFile>
#include <QFileInfo>
#include <QTemporaryFile>
#include <cerrno>
#include <cstdio>
#include <functional>

#include "ledger/schema.h"
#include "ledger/verify.h"

namespace lardiner::ledger {

using problem::Code;
using problem::Error;

namespace {

using Finish = std::function<std::optional<Error>(const QString& draft)>;

Error there_already(const QString& path) {
  return {Code::Conflict, QStringLiteral("there is a file already"), at_file(path),
          QStringLiteral("name another; nothing is written over")};
}

Error broken(const QString& path, const Broken& first) {
  return {Code::Machine, text(first), at_file(path),
          QStringLiteral("keep this file as it is, and go back to the last backup that verifies")};
}

Error failed(const QString& path) {
  return {Code::Machine, QStringLiteral("the copy cannot be put there"), at_file(path),
          QStringLiteral("see that there is space and that this account may write there")};
}

bool sync(const QString& path, int flags) {
  const int file = ::open(QFile::encodeName(path).constData(), flags);
  if (file < 0) return false;
  const bool synced = ::fsync(file) == 0;
  ::close(file);
  return synced;
}

problem::Expected<std::vector<Head>> verified(const QString& path, const QString& shown) {
  const problem::Expected<std::unique_ptr<Store>> store = Store::open(path, Access::Read);
  if (!store) return tl::unexpected(store.error());
  const problem::Expected<Verified> result = verify(**store, std::nullopt);
  if (!result) return tl::unexpected(result.error());
  if (!result->broken.empty()) return tl::unexpected(broken(shown, result->broken.front()));
  return result->heads;
}

// Copies a consistent moment of a database that others write to. `to` is an empty file.
std::optional<Error> copy(const QString& from, const QString& to) {
  const problem::Expected<std::unique_ptr<Store>> store = Store::open(from, Access::Read);
  if (!store) return store.error();
  if (const problem::Expected<bool> ours = check_entries(**store); !ours) return ours.error();
  (*store)->statement("VACUUM INTO ?").with(to).run();
  if ((*store)->fault()) return failed(to);
  return std::nullopt;
}

// A file that has come there meanwhile is not written over. Disks without hard links (FAT) can rename so.
bool put(const QString& draft, const QString& to) {
  const QByteArray from = QFile::encodeName(draft), there = QFile::encodeName(to);
  const bool put =
      ::link(from.constData(), there.constData()) == 0 ||
      (errno != EEXIST && ::renameat2(AT_FDCWD, from.constData(), AT_FDCWD, there.constData(), RENAME_NOREPLACE) == 0);
  return put && sync(QFileInfo(to).path(), O_RDONLY | O_DIRECTORY);
}

// `finish` does to the copy what is to be done before it appears.
problem::Expected<std::vector<Head>> copy_verified(const QString& from, const QString& to, const Finish& finish) {
  if (QFileInfo::exists(to)) return tl::unexpected(there_already(to));
  QTemporaryFile draft(to + QStringLiteral(".draft"));  // and six letters that Qt appends
  if (!draft.open()) return tl::unexpected(failed(to));
  draft.close();
  if (std::optional<Error> error = copy(from, draft.fileName())) {
    if (error->place.file == draft.fileName()) error->place = at_file(to);
    return tl::unexpected(*error);
  }
  problem::Expected<std::vector<Head>> heads = verified(draft.fileName(), from);
  if (!heads) return heads;
  if (const std::optional<Error> error = finish(draft.fileName())) return tl::unexpected(*error);
  if (!sync(draft.fileName(), O_RDONLY) || !put(draft.fileName(), to)) return tl::unexpected(failed(to));
  return heads;
}

// Its tables are computed from its entries, whatever those of the copy say, and as this program has them.
std::optional<Error> compute_tables(const QString& path) {
  problem::Expected<Ledger> ledger = Ledger::open(path, Access::Write);
  if (!ledger) return ledger.error();
  const auto computed = ledger->rebuild();
  return computed ? std::nullopt : std::optional(computed.error().front());
}

Error of_the_ledger_before(const QString& path) {
  return {Code::Conflict,
          QStringLiteral("it is of the ledger that stood there before, and would be taken for this one's"),
          at_file(path), QStringLiteral("move it to where that ledger's file is now, under its name")};
}

Error no_backup(const QString& path) {
  return {Code::Missing, QStringLiteral("there is no such backup"), at_file(path),
          QStringLiteral("name a file that lardiner backup has made")};
}

}  // namespace

problem::Expected<std::vector<Head>> back_up(const QString& from, const QString& to) {
  if (!QFileInfo::exists(from))
    return tl::unexpected(Error{Code::Missing, QStringLiteral("there is no ledger yet"), at_file(from), {}});
  return copy_verified(from, to, [](const QString& /*draft*/) { return std::nullopt; });
}

problem::Expected<std::vector<Head>> restore(const QString& from, const QString& to) {
  if (!QFileInfo(from).isFile()) return tl::unexpected(no_backup(from));
  for (const char* beside : {"-wal", "-journal"})
    if (const QString log = to + QLatin1String(beside); QFileInfo::exists(log) && !QFileInfo::exists(to))
      return tl::unexpected(of_the_ledger_before(log));
  auto heads = copy_verified(from, to, compute_tables);
  if (!heads && heads.error().place.file == from && heads.error().what == QLatin1String("this file is no ledger"))
    return tl::unexpected(no_backup(from));
  return heads;
}

}  // namespace lardiner::ledger
