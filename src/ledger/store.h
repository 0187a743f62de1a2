// One SQLite file, opened for one thread: prepared statements, transactions, and what went wrong.
#pragma once

#include <QByteArray>
#include <QString>
#include <QStringList>
#include <QVariant>
#include <cstring>
#include <memory>
#include <optional>
#include <unordered_map>

#include "problem/error.h"

class QSqlError;
class QSqlQuery;

namespace lardiner::ledger {

/// The place of an error that a whole file is at fault for.
inline problem::Place at_file(const QString& path) { return {path, 0, 0, {}, 1, 1}; }

enum class Access { Read, Write };

/// A statement, prepared once a store and used again. Values are bound in order; `run` starts it anew.
class Statement {
 public:
  Statement& with(qint64 value) { return bind(QVariant(value)); }
  Statement& with(const QString& value) { return bind(QVariant(value.isNull() ? QLatin1String("") : value)); }
  Statement& with(const QByteArray& value) { return bind(QVariant(value)); }
  Statement& with(const std::optional<qint64>& value);

  /// Runs it to its end; for what gives no rows.
  void run();
  /// The next row, or false at the end (and on a fault, which the store then holds).
  bool next();
  /// Its only row, if there is one; `end` it when its values have been read.
  bool one() { return next(); }

  qint64 number(int column) const;
  bool absent(int column) const;
  QString text(int column) const;
  QByteArray bytes(int column) const;
  void end();

  ~Statement();

 private:
  friend class Store;
  explicit Statement(class Store& store, const QString& sql);
  Statement& bind(const QVariant& value);
  bool start();

  class Store& store_;
  std::unique_ptr<QSqlQuery> query_;
  int bound_ = 0;
  bool started_ = false;
};

/// The first thing that goes wrong is kept and every statement after it does nothing, so that a piece of work asks
/// once, at its end. Errors are of Code::Machine and name the file.
class Store {
 public:
  /// WAL, synchronous FULL, foreign keys off. Write creates the file where there is none. Errors: a network file system
  /// (a lock is not one there; a file that is only read, without a log beside it, may stand there), a folder that is
  /// missing, a file that is no SQLite file or may not be written, busy for longer than ten seconds.
  static problem::Expected<std::unique_ptr<Store>> open(const QString& path, Access access);
  ~Store();
  Store(const Store&) = delete;
  Store& operator=(const Store&) = delete;

  /// Prepared once for each text.
  Statement& statement(const char* sql) { return statement(QByteArray::fromRawData(sql, qsizetype(std::strlen(sql)))); }
  Statement& statement(const QByteArray& sql);
  void run(const QString& sql);
  /// Every row as text, its values parted by |.
  QStringList rows(const QString& sql);

  /// A transaction that has the write lock from its start: two processes wait for one another and both succeed.
  void begin();
  void commit();
  void roll_back();

  const QString& path() const { return path_; }
  const std::optional<problem::Error>& fault() const { return fault_; }
  void forget_fault() { fault_.reset(); }

 private:
  friend class Statement;
  explicit Store(const QString& path);
  void failed(const QSqlError& error);

  struct Connection;

  QString path_;
  std::unique_ptr<Connection> connection_;
  std::unordered_map<QByteArray, std::unique_ptr<Statement>> statements_;
  std::optional<problem::Error> fault_;
};

}  // namespace lardiner::ledger
