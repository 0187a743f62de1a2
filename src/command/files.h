// Files in and out: read whole, written whole or not at all.
#pragma once

#include <QByteArray>
#include <QString>
#include <QStringList>
#include <vector>

#include "book/book.h"
#include "problem/error.h"

namespace lardiner::command {

/// The bytes of a file, or of standard input for "-". Errors: Missing when there is none, Machine when it cannot be
/// read, Range when it is larger than reader::kMostBytes.
problem::Expected<QByteArray> read_file(const QString& path);

/// Inode, size and times of a file: another text where it was written or replaced since; empty: there is none.
QByteArray look_of_file(const QString& path);

/// Whether there is a file (no folder) of that name.
bool is_file(const QString& path);

/// Every file of `folder` that ends in `.toml`, by name, without its sub-folders. `shown` is put before the names in
/// errors.
problem::ExpectedAll<std::vector<book::SourceFile>> read_toml_files(const QString& folder, const QString& shown);

/// Writes a file beside, then renames it: the old one stays until the new one is whole.
problem::Expected<qsizetype> write_file(const QString& path, const QByteArray& bytes);

/// Labels, sheets or an export that are built beside their place, in a folder, and appear there whole or not at all:
/// what was not kept is removed.
class NewFolder {
 public:
  enum class Shape { Folder, OneFile };

  /// `path`: where the folder, or the one file of it, shall stand; a link is followed. Refused (Conflict): the folder
  /// one is in; a file where a folder is needed, or the other way; what is there, unless `replace`; a folder with
  /// anything but PDFs, their proofs, and files of the names `ours`.
  static problem::Expected<NewFolder> beside(const QString& path, Shape shape, bool replace,
                                             const QStringList& ours = {});
  NewFolder(NewFolder&& other) noexcept;
  NewFolder& operator=(NewFolder&&) = delete;
  ~NewFolder();

  problem::Expected<qsizetype> write(const QString& name, const QByteArray& bytes);
  /// Where a file of it lies until it is kept, for what is written piece by piece: to the disk (fsync) before it is
  /// kept.
  QString draft_of(const QString& name) const { return draft_ + QLatin1Char('/') + name; }
  problem::Expected<bool> rename(const QString& from, const QString& to);
  /// Moves the folder to its place.
  problem::Expected<bool> keep();
  /// Moves one file of it to its place, in the folder's stead.
  problem::Expected<bool> keep_only(const QString& name);

 private:
  NewFolder(QString path, QString shown, QString draft);
  problem::Expected<bool> put(const QString& from, unsigned flags);

  QString path_, shown_, draft_;
};

}  // namespace lardiner::command
