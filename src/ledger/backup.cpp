// A copy of a ledger while it is written to, and a ledger out of a copy; each verified before it counts.
#include "ledger/backup.h"

#include <fcntl.h>
#include <unistd.h>

#include <QFile>
#include <QFileInfo>

#include "ledger/schema.h"
#include "ledger/verify.h"

namespace lardiner::ledger {

using problem::Code;
using problem::Error;

namespace {

Error there_already(const QString& path) {
  return {Code::Conflict, QStringLiteral("there is a file already"), at_file(path),
          QStringLiteral("name another; nothing is written over")};
}

Error broken(const QString& path, const Broken& first) {
  return {Code::Machine,
          QStringLiteral("entry %1-%2 does not verify: %3").arg(first.station).arg(first.number).arg(first.what),
          at_file(path), QStringLiteral("keep this file as it is, and go back to the last backup that verifies")};
}

Error failed(const QString& path, const QString& what) {
  return {Code::Machine, what, at_file(path),
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
  if (const problem::Expected<bool> ours = check_version(**store); !ours) return tl::unexpected(ours.error());
  const problem::Expected<Verified> result = verify(**store, std::nullopt);
  if (!result) return tl::unexpected(result.error());
  if (!result->broken.empty()) return tl::unexpected(broken(shown, result->broken.front()));
  return result->heads;
}

// Copies a consistent moment of a database that others write to.
problem::Expected<bool> copy(const QString& from, const QString& to) {
  const problem::Expected<std::unique_ptr<Store>> store = Store::open(from, Access::Read);
  if (!store) return tl::unexpected(store.error());
  if (const problem::Expected<bool> ours = check_version(**store); !ours) return tl::unexpected(ours.error());
  (*store)->statement("VACUUM INTO ?").with(to).run();
  if ((*store)->fault()) return tl::unexpected(*(*store)->fault());
  return true;
}

problem::Expected<std::vector<Head>> copy_verified(const QString& from, const QString& to) {
  if (QFileInfo::exists(to)) return tl::unexpected(there_already(to));
  const QString draft = to + QStringLiteral(".draft");
  QFile::remove(draft);
  const auto give_up = [&](Error error) {
    QFile::remove(draft);
    return tl::unexpected(std::move(error));
  };
  if (const problem::Expected<bool> copied = copy(from, draft); !copied) return give_up(copied.error());
  problem::Expected<std::vector<Head>> heads = verified(draft, from);
  if (!heads) return give_up(heads.error());
  // link and not rename: a file that has come there meanwhile is not written over.
  const bool there = sync(draft, O_RDONLY) &&
                     ::link(QFile::encodeName(draft).constData(), QFile::encodeName(to).constData()) == 0 &&
                     sync(QFileInfo(to).path(), O_RDONLY | O_DIRECTORY);
  if (!there) return give_up(failed(to, QStringLiteral("the copy cannot be put there")));
  QFile::remove(draft);
  return heads;
}

}  // namespace

problem::Expected<std::vector<Head>> back_up(const QString& from, const QString& to) {
  if (!QFileInfo::exists(from))
    return tl::unexpected(Error{Code::Missing, QStringLiteral("there is no ledger yet"), at_file(from), {}});
  return copy_verified(from, to);
}

problem::Expected<std::vector<Head>> restore(const QString& from, const QString& to) {
  if (!QFileInfo::exists(from))
    return tl::unexpected(Error{Code::Missing, QStringLiteral("there is no such backup"), at_file(from), {}});
  return copy_verified(from, to);
}

}  // namespace lardiner::ledger
