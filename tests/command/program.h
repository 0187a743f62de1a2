// Runs the program as a kitchen does, in a folder of its own, and the independent readers of what it wrote.
#pragma once

#include <QByteArray>
#include <QPair>
#include <QProcess>
#include <QString>
#include <QStringList>
#include <QTemporaryDir>
#include <memory>
#include <vector>

#include "show.h"

namespace lardiner::command {

/// What a program said and how it ended.
struct Ran {
  int status = -1;  ///< -1: it did not end by itself
  QString out, err;
};

/// A program that was begun.
class Running {
 public:
  Running(std::unique_ptr<QProcess> process, QString shown) : process_(std::move(process)), shown_(std::move(shown)) {}
  /// What it said, once it has ended. REQUIRES: within two minutes.
  Ran wait();

 private:
  std::unique_ptr<QProcess> process_;
  QString shown_;
};

/// A folder for one test, removed after it: the current folder of the programs that it runs.
class Folder {
 public:
  Folder() { REQUIRE(dir_.isValid()); }

  QString path(const QString& name) const { return dir_.filePath(name); }
  void write(const QString& name, const QByteArray& bytes) const;
  QByteArray read(const QString& name) const;
  /// Every file and folder of `name` (empty: of this folder), hidden ones too, by name.
  QStringList entries(const QString& name = QString()) const;

  /// Copies the book (the *.toml) of a kitchen into the folder `name` of this one.
  void copy_book(const QString& from, const QString& name) const;
  /// Writes `fault` where `text` stands in a file; REQUIRES: it stands there once.
  void put_fault(const QString& file, const QString& text, const QString& fault) const;

  Ran run(const QString& program, const QStringList& arguments, const QByteArray& input = {},
          const std::vector<QPair<QString, QString>>& environment = {}) const;
  /// As run, but goes on while the program runs. (Not a thread: Catch2 2 counts in one thread only.)
  Running begin(const QString& program, const QStringList& arguments, const QByteArray& input = {},
                const std::vector<QPair<QString, QString>>& environment = {}) const;
  /// Runs lardiner, on the evening of the demo day unless the arguments say otherwise.
  Ran lardiner(const QStringList& arguments, const QByteArray& input = {},
               const std::vector<QPair<QString, QString>>& environment = {}) const;

 private:
  QTemporaryDir dir_;
};

/// The shipped demo kitchen, and its records of a day.
inline const QString kDemoKitchen = QStringLiteral(LARDINER_SOURCE_DIR "/samples/kitchen");
inline const QString kDemoDay = kDemoKitchen + QStringLiteral("/records/day.csv");
inline const QString kDemoDayJson = kDemoKitchen + QStringLiteral("/records/day.jsonl");

/// A kitchen of two products, to put faults into.
inline const QString kSmallKitchen = QStringLiteral(LARDINER_SOURCE_DIR "/tests/command/kitchen");

/// The bytes of a file of the source tree.
QByteArray bytes_of(const QString& path);

/// `words` as a list: "labels day.csv --out labels".
inline QStringList words(const char* text) { return QString::fromUtf8(text).split(u' ', Qt::SkipEmptyParts); }

/// "file:line:column: what", the line with its caret, and the hint, as the program shows a fault of `file` at the first
/// `found` in its text.
QString fault_text(const QString& shown_file, const QByteArray& bytes, const QString& found, const QString& what,
                   const QString& hint);

}  // namespace lardiner::command
