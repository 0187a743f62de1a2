// Files in and out: read whole, written whole or not at all.
#pragma once

#include <QByteArray>
#include <QString>
#include <vector>

#include "book/book.h"
#include "problem/error.h"

namespace lardiner::command {

/// The bytes of a file, or of standard input for "-". Errors: Missing when there is none, Machine when it cannot be
/// read, Range when it is larger than reader::kMostBytes.
problem::Expected<QByteArray> read_file(const QString& path);

/// Every file of `folder` that ends in `.toml`, by name, without its sub-folders. `shown` is put before the names in
/// errors.
problem::ExpectedAll<std::vector<book::SourceFile>> read_toml_files(const QString& folder, const QString& shown);

/// Writes a file beside, then renames it: the old one stays until the new one is whole.
problem::Expected<qsizetype> write_file(const QString& path, const QByteArray& bytes);

/// A folder that is filled beside its place and appears there whole, or not at all: what was not kept is removed.
class NewFolder {
 public:
  /// `path`: where the folder, or the one file of it, shall stand. `replace`: what is there gives way when the new is
  /// whole.
  static problem::Expected<NewFolder> beside(const QString& path, bool replace);
  NewFolder(NewFolder&& other) noexcept;
  NewFolder& operator=(NewFolder&&) = delete;
  ~NewFolder();

  problem::Expected<qsizetype> write(const QString& name, const QByteArray& bytes);
  problem::Expected<bool> rename(const QString& from, const QString& to);
  /// Moves the folder to its place.
  problem::Expected<bool> keep();
  /// Moves one file of it to its place, in the folder's stead.
  problem::Expected<bool> keep_only(const QString& name);

 private:
  NewFolder(QString path, QString draft);

  QString path_, draft_;
};

}  // namespace lardiner::command
