// What bare SQLite does on the same disk: hashed rows appended in commits of ten, and a recursive query.
#include "bare_sqlite.h"

#include <sqlite3.h>

#include <QCryptographicHash>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>

namespace bench {

namespace {

double now() { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

void must(bool done, sqlite3* database) {
  if (done) return;
  std::fprintf(stderr, "bare SQLite: %s\n", sqlite3_errmsg(database));
  std::exit(1);
}

sqlite3* open(const QByteArray& path) {
  sqlite3* database = nullptr;
  must(sqlite3_open(path.constData(), &database) == SQLITE_OK, database);
  must(sqlite3_exec(database, "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL", nullptr, nullptr, nullptr) ==
           SQLITE_OK,
       database);
  return database;
}

sqlite3_stmt* prepare(sqlite3* database, const char* sql) {
  sqlite3_stmt* statement = nullptr;
  must(sqlite3_prepare_v2(database, sql, -1, &statement, nullptr) == SQLITE_OK, database);
  return statement;
}

// A lot as the ledger names it in its answer.
struct Named {
  qint64 id;
  std::string code, item, name;
  qint64 kind, began;
};

std::string text_of(sqlite3_stmt* row, int column) {
  return reinterpret_cast<const char*>(sqlite3_column_text(row, column));
}

}  // namespace

double bare_appends(const QByteArray& path, const std::vector<QByteArray>& bodies) {
  sqlite3* database = open(path);
  must(sqlite3_exec(database, "CREATE TABLE event (seq INTEGER PRIMARY KEY, hash BLOB, body TEXT)", nullptr, nullptr,
                    nullptr) == SQLITE_OK,
       database);
  sqlite3_stmt* begin = prepare(database, "BEGIN IMMEDIATE");
  sqlite3_stmt* commit = prepare(database, "COMMIT");
  sqlite3_stmt* insert = prepare(database, "INSERT INTO event (hash, body) VALUES (?, ?)");
  const auto run = [&](sqlite3_stmt* statement) {
    must(sqlite3_step(statement) == SQLITE_DONE, database);
    sqlite3_reset(statement);
  };
  QByteArray hash(32, '\0');
  const double start = now();
  for (size_t at = 0; at < bodies.size(); ++at) {
    if (at % 10 == 0) run(begin);
    hash = QCryptographicHash::hash(hash + bodies[at], QCryptographicHash::Sha256);
    sqlite3_bind_blob(insert, 1, hash.constData(), 32, SQLITE_STATIC);
    sqlite3_bind_text(insert, 2, bodies[at].constData(), static_cast<int>(bodies[at].size()), SQLITE_STATIC);
    run(insert);
    if (at % 10 == 9 || at + 1 == bodies.size()) run(commit);
  }
  const double seconds = now() - start;
  for (sqlite3_stmt* statement : {begin, commit, insert}) sqlite3_finalize(statement);
  sqlite3_close(database);
  return static_cast<double>(bodies.size()) / seconds;
}

Traced bare_traces(const QByteArray& path, const std::vector<qint64>& lots) {
  sqlite3* database = open(path);
  sqlite3_stmt* const ways[] = {
      prepare(database,
              "WITH RECURSIVE f(id) AS (SELECT ? UNION SELECT output FROM f JOIN input ON input.input = f.id)"
              " SELECT lot.id, code, item, name, kind, began FROM f CROSS JOIN lot ON lot.id = f.id"),
      prepare(database,
              "WITH RECURSIVE f(id) AS (SELECT ? UNION SELECT input.input FROM f JOIN input ON output = f.id)"
              " SELECT lot.id, code, item, name, kind, began FROM f CROSS JOIN lot ON lot.id = f.id")};
  Traced traced;
  const double start = now();
  for (const qint64 lot : lots)
    for (sqlite3_stmt* statement : ways) {
      sqlite3_bind_int64(statement, 1, lot);
      std::vector<Named> answer;
      while (sqlite3_step(statement) == SQLITE_ROW)
        answer.push_back({sqlite3_column_int64(statement, 0), text_of(statement, 1), text_of(statement, 2),
                          text_of(statement, 3), sqlite3_column_int64(statement, 4),
                          sqlite3_column_int64(statement, 5)});
      traced.rows += static_cast<qint64>(answer.size());
      sqlite3_reset(statement);
    }
  traced.seconds = now() - start;
  for (sqlite3_stmt* statement : ways) sqlite3_finalize(statement);
  sqlite3_close(database);
  return traced;
}

}  // namespace bench
