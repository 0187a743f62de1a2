// What bare SQLite does on the same disk: hashed rows appended in commits of ten, and a recursive query.
#pragma once

#include <QByteArray>
#include <QtGlobal>
#include <vector>

namespace bench {

/// Rows a second of number, hash and body, each hash over the one before, WAL and synchronous=FULL, ten a commit.
double bare_appends(const QByteArray& path, const std::vector<QByteArray>& bodies);

/// The plain recursive query over the edges of a ledger, both ways, through SQLite alone: seconds and rows for all
/// `lots`.
struct Traced {
  double seconds = 0;
  qint64 rows = 0;
};
Traced bare_traces(const QByteArray& path, const std::vector<qint64>& lots);

}  // namespace bench
