// Files in and out: read whole, written whole or not at all.
#include "command/files.h"

#include <fcntl.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>
#include <QTemporaryDir>
#include <cstdio>

#include "reader/read.h"

namespace lardiner::command {

namespace {

using problem::Code;
using problem::Error;

Error machine(const QString& path, const QString& what, const QString& reason) {
  return {Code::Machine,
          QStringLiteral("%1 (%2)").arg(what, reason),
          {path, 0, 0, {}, 1},
          QStringLiteral("see that the disk has room and that the folder may be written")};
}

Error too_large(const QString& path) {
  return {Code::Range,
          QStringLiteral("the file is larger than %1 MiB").arg(reader::kMostBytes >> 20),
          {path, 0, 0, {}, 1},
          QStringLiteral("split it into several files")};
}

problem::Expected<QByteArray> read_open(QFile& file, const QString& path) {
  const QByteArray bytes = file.read(reader::kMostBytes + 1);
  if (file.error() != QFile::NoError)
    return tl::unexpected(machine(path, QStringLiteral("the file cannot be read"), file.errorString()));
  if (bytes.size() > reader::kMostBytes) return tl::unexpected(too_large(path));
  return bytes;
}

// A rename counts only once the folder that holds the name is on the disk.
void sync_folder(const QString& path) {
  const int handle = ::open(QFile::encodeName(path).constData(), O_RDONLY | O_DIRECTORY);
  if (handle < 0) return;
  ::fsync(handle);
  ::close(handle);
}

}  // namespace

problem::Expected<QByteArray> read_file(const QString& path) {
  if (path == QLatin1String("-")) {
    QFile input;
    if (!input.open(stdin, QIODevice::ReadOnly))
      return tl::unexpected(machine(path, QStringLiteral("standard input cannot be read"), input.errorString()));
    return read_open(input, path);
  }
  QFile file(path);
  if (!file.exists() || QFileInfo(path).isDir())
    return tl::unexpected(Error{Code::Missing,
                                QStringLiteral("there is no such file"),
                                {path, 0, 0, {}, 1},
                                QStringLiteral("see that the path is right, seen from the current folder")});
  if (!file.open(QIODevice::ReadOnly))
    return tl::unexpected(machine(path, QStringLiteral("the file cannot be opened"), file.errorString()));
  return read_open(file, path);
}

problem::ExpectedAll<std::vector<book::SourceFile>> read_toml_files(const QString& folder, const QString& shown) {
  std::vector<book::SourceFile> files;
  problem::Errors errors;
  for (const QString& name : QDir(folder).entryList({QStringLiteral("*.toml")}, QDir::Files, QDir::Name)) {
    const auto bytes = read_file(folder + u'/' + name);
    if (bytes)
      files.push_back({shown + name, *bytes});
    else
      errors.push_back(bytes.error());
  }
  if (!errors.empty()) return tl::unexpected(errors);
  return files;
}

problem::Expected<qsizetype> write_file(const QString& path, const QByteArray& bytes) {
  QSaveFile file(path);
  const bool whole = file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit();
  if (!whole)
    return tl::unexpected(
        machine(path, QStringLiteral("the file could not be written; nothing was"), file.errorString()));
  return bytes.size();
}

NewFolder::NewFolder(QString path, QString draft) : path_(std::move(path)), draft_(std::move(draft)) {}

NewFolder::NewFolder(NewFolder&& other) noexcept
    : path_(std::move(other.path_)), draft_(std::exchange(other.draft_, QString())) {}

NewFolder::~NewFolder() {
  if (!draft_.isEmpty()) QDir(draft_).removeRecursively();
}

problem::Expected<NewFolder> NewFolder::beside(const QString& path, bool replace) {
  const QFileInfo place(QDir::cleanPath(path));
  const bool empty =
      place.isDir() && QDir(place.filePath()).isEmpty(QDir::AllEntries | QDir::Hidden | QDir::NoDotAndDotDot);
  if (place.exists() && !empty && !replace)
    return tl::unexpected(
        Error{Code::Conflict,
              QStringLiteral("there is something of that name already"),
              {path, 0, 0, {}, 1},
              QStringLiteral("name a new folder, or say --replace to let the new labels take its place")});
  if (!QDir().mkpath(place.absolutePath()))
    return tl::unexpected(machine(path, QStringLiteral("the folder above it cannot be made"), QStringLiteral("mkdir")));
  QTemporaryDir draft(place.absolutePath() + QStringLiteral("/.") + place.fileName() + QStringLiteral(".XXXXXX"));
  if (!draft.isValid())
    return tl::unexpected(machine(path, QStringLiteral("no folder can be made beside it"), draft.errorString()));
  draft.setAutoRemove(false);
  return NewFolder(place.absoluteFilePath(), draft.path());
}

problem::Expected<qsizetype> NewFolder::write(const QString& name, const QByteArray& bytes) {
  return write_file(draft_ + u'/' + name, bytes);
}

problem::Expected<bool> NewFolder::rename(const QString& from, const QString& to) {
  if (QFile::rename(draft_ + u'/' + from, draft_ + u'/' + to)) return true;
  return tl::unexpected(machine(path_, QStringLiteral("a file could not be renamed; nothing was written"), from));
}

problem::Expected<bool> NewFolder::keep() {
  const QByteArray draft = QFile::encodeName(draft_), place = QFile::encodeName(path_);
  QFile::setPermissions(
      draft_, QFile::permissions(draft_) | QFile::ReadGroup | QFile::ExeGroup | QFile::ReadOther | QFile::ExeOther);
  const unsigned exchange =
      QFileInfo(path_).isDir() ? RENAME_EXCHANGE : 0;  // the draft is then the old folder, which goes
  if (::renameat2(AT_FDCWD, draft.constData(), AT_FDCWD, place.constData(), exchange) != 0)
    return tl::unexpected(machine(path_, QStringLiteral("the new folder could not take its place; nothing was written"),
                                  qt_error_string()));
  sync_folder(QFileInfo(path_).absolutePath());
  return true;
}

problem::Expected<bool> NewFolder::keep_only(const QString& name) {
  const QByteArray file = QFile::encodeName(draft_ + u'/' + name), place = QFile::encodeName(path_);
  if (std::rename(file.constData(), place.constData()) != 0)
    return tl::unexpected(
        machine(path_, QStringLiteral("the file could not take its place; nothing was written"), qt_error_string()));
  sync_folder(QFileInfo(path_).absolutePath());
  return true;
}

}  // namespace lardiner::command
