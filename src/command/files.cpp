// Files in and out: read whole, written whole or not at all.
#include "command/files.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>
#include <QTemporaryDir>
#include <algorithm>
#include <cstdio>
#include <optional>

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

// A pipe gives what is in it just then: only an empty part is its end. Room is made for a part, not for the most.
QByteArray read_to_end(QFile& file, qsizetype most) {
  constexpr qsizetype kPart = 256 * 1024;
  QByteArray bytes;
  while (bytes.size() < most) {
    const QByteArray part = file.read(std::min(kPart, most - bytes.size()));
    if (part.isEmpty()) break;
    bytes += part;
  }
  return bytes;
}

problem::Expected<QByteArray> read_open(QFile& file, const QString& path) {
  const QByteArray bytes = read_to_end(file, reader::kMostBytes + 1);
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

// A disk that fills up takes a part first: only the next write tells why.
bool write_all(QSaveFile& file, const QByteArray& bytes) {
  qsizetype done = 0;
  while (done < bytes.size()) {
    const qint64 written = file.write(bytes.constData() + done, bytes.size() - done);
    if (written <= 0) return false;
    done += written;
  }
  return true;
}

bool holds_only(const QString& folder, const QStringList& ours) {
  const auto all = QDir(folder).entryInfoList(QDir::AllEntries | QDir::Hidden | QDir::System | QDir::NoDotAndDotDot);
  return std::all_of(all.begin(), all.end(), [&ours](const QFileInfo& entry) {
    const QString name = entry.fileName();
    return entry.isFile() &&
           (name.endsWith(QLatin1String(".pdf")) || name.endsWith(QLatin1String("-proof.html")) || ours.contains(name));
  });
}

bool is_empty(const QString& folder) {
  return QDir(folder).isEmpty(QDir::AllEntries | QDir::Hidden | QDir::System | QDir::NoDotAndDotDot);
}

// What is wanted in a place.
struct Wish {
  NewFolder::Shape shape;
  bool replace;
  const QStringList& ours;
};

// Only what an earlier run left may give way, and only when asked: never a book, nor the folder that somebody stands
// in.
std::optional<Error> taken(const QFileInfo& place, const QString& path, const Wish& wish) {
  const auto refuse = [&path](const char* what, const char* hint) {
    return Error{Code::Conflict, QString::fromLatin1(what), {path, 0, 0, {}, 1}, QString::fromLatin1(hint)};
  };
  if (!place.exists()) return std::nullopt;
  const QString here = QDir::current().canonicalPath() + u'/';
  if (here.startsWith(place.canonicalFilePath() + u'/'))
    return refuse("this is the folder that you are in, or one above it", "name a new folder in it");
  if (place.isDir() != (wish.shape == NewFolder::Shape::Folder))
    return place.isDir() ? refuse("this is a folder, and one file was asked for", "name another file")
                         : refuse("this is a file, and a folder is needed", "name another folder");
  if (place.isDir() && is_empty(place.filePath())) return std::nullopt;
  if (!wish.replace)
    return refuse("there is something of that name already",
                  wish.shape == NewFolder::Shape::Folder
                      ? "name a new folder, or say --replace to let the new one take its place"
                      : "name a new file, or say --replace to let the new one take its place");
  if (place.isDir() && !holds_only(place.filePath(), wish.ours))
    return refuse("this folder holds other things than an earlier run wrote, which would be lost",
                  "name a new folder, or take the other things out of it");
  return std::nullopt;
}

}  // namespace

QByteArray look_of_file(const QString& path) {
  struct stat file {};
  if (::stat(path.toLocal8Bit().constData(), &file) != 0) return {};
  QByteArray look;
  for (const qint64 figure : {qint64(file.st_ino), qint64(file.st_size), qint64(file.st_mtim.tv_sec),
                              qint64(file.st_mtim.tv_nsec), qint64(file.st_ctim.tv_nsec)})
    look += QByteArray::number(figure) + ' ';
  return look;
}

bool is_file(const QString& path) { return QFileInfo(path).isFile(); }

problem::Expected<QByteArray> read_file(const QString& path) {
  if (path == QLatin1String("-")) {
    QFile input;
    if (!input.open(stdin, QIODevice::ReadOnly))
      return tl::unexpected(machine(path, QStringLiteral("standard input cannot be read"), input.errorString()));
    return read_open(input, path);
  }
  QFile file(path);
  if (QFileInfo(path).isDir())
    return tl::unexpected(Error{Code::Missing,
                                QStringLiteral("this is a folder, and a file is needed"),
                                {path, 0, 0, {}, 1},
                                QStringLiteral("name a file in it")});
  if (!file.exists())
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
  // Flushed first: QSaveFile loses the reason for a failure at its commit.
  const bool whole = file.open(QIODevice::WriteOnly) && write_all(file, bytes) && file.flush();
  const QString reason = file.errorString();
  if (!whole || !file.commit())
    return tl::unexpected(machine(path, QStringLiteral("the file could not be written; nothing was"), reason));
  return bytes.size();
}

NewFolder::NewFolder(QString path, QString shown, QString draft)
    : path_(std::move(path)), shown_(std::move(shown)), draft_(std::move(draft)) {}

NewFolder::NewFolder(NewFolder&& other) noexcept
    : path_(std::move(other.path_)), shown_(std::move(other.shown_)), draft_(std::exchange(other.draft_, QString())) {}

NewFolder::~NewFolder() {
  if (!draft_.isEmpty()) QDir(draft_).removeRecursively();
}

problem::Expected<NewFolder> NewFolder::beside(const QString& path, Shape shape, bool replace,
                                               const QStringList& ours) {
  QFileInfo place(QDir::cleanPath(path));
  if (place.exists()) place = QFileInfo(place.canonicalFilePath());  // what a link stands for gives way, not the link
  if (const auto error = taken(place, path, {shape, replace, ours})) return tl::unexpected(*error);
  // The draft must lie on the same disk: in the nearest folder that is there already. Those between are made at the
  // end.
  QFileInfo above(place.absolutePath());
  while (!above.exists() && !above.isRoot()) above = QFileInfo(above.absolutePath());
  if (!above.isDir())
    return tl::unexpected(machine(path, QStringLiteral("the folder above it cannot be made"),
                                  QStringLiteral("a file stands in its place")));
  QTemporaryDir draft(above.absoluteFilePath() + QStringLiteral("/.") + place.fileName() +
                      u'.');  // Qt adds six letters
  if (!draft.isValid())
    return tl::unexpected(machine(path, QStringLiteral("no folder can be made beside it"), draft.errorString()));
  draft.setAutoRemove(false);
  return NewFolder(place.absoluteFilePath(), path, draft.path());
}

problem::Expected<qsizetype> NewFolder::write(const QString& name, const QByteArray& bytes) {
  auto written = write_file(draft_ + u'/' + name, bytes);
  if (!written) written.error().place.file = shown_ + u'/' + name;
  return written;
}

problem::Expected<bool> NewFolder::rename(const QString& from, const QString& to) {
  if (QFile::rename(draft_ + u'/' + from, draft_ + u'/' + to)) return true;
  return tl::unexpected(machine(shown_, QStringLiteral("a file could not be renamed; nothing was written"), from));
}

problem::Expected<bool> NewFolder::put(const QString& from, unsigned flags) {
  const QString above = QFileInfo(path_).absolutePath();
  const QByteArray source = QFile::encodeName(from), place = QFile::encodeName(path_);
  if (!QDir().mkpath(above) || ::renameat2(AT_FDCWD, source.constData(), AT_FDCWD, place.constData(), flags) != 0)
    return tl::unexpected(machine(shown_, QStringLiteral("what was made could not take its place; nothing was written"),
                                  qt_error_string()));
  sync_folder(above);
  return true;
}

problem::Expected<bool> NewFolder::keep() {
  QFile::setPermissions(
      draft_, QFile::permissions(draft_) | QFile::ReadGroup | QFile::ExeGroup | QFile::ReadOther | QFile::ExeOther);
  return put(draft_, QFileInfo(path_).isDir() ? RENAME_EXCHANGE : 0);  // the draft is then the old folder, which goes
}

problem::Expected<bool> NewFolder::keep_only(const QString& name) { return put(draft_ + u'/' + name, 0); }

}  // namespace lardiner::command
