// What to say of a lot that is not recorded: the codes that are near it.
#include "ledger/nearest.h"

namespace lardiner::ledger {

namespace {

// How many letters stand otherwise, in codes of one length; of others one.
int differing(const QString& a, const QString& b) {
  if (a.size() != b.size()) return 1;
  int count = 0;
  for (qsizetype at = 0; at < a.size(); ++at) count += a.at(at) == b.at(at) ? 0 : 1;
  return count;
}

}  // namespace

QStringList nearest_codes(Store& store, const QString& code) {
  QStringList found;
  if (code.size() < 3) return found;
  // A slip leaves one half of the code as it was: those that begin or end alike are looked at.
  const QString half = code.left(code.size() / 2);
  Statement& rows = store.statement(
      "SELECT code, began FROM lot WHERE (code >= ? AND code < ?) OR (length(code) = ? AND substr(code, ?) = ?)"
      " ORDER BY began DESC LIMIT 5000");
  rows.with(half)
      .with(QString(half + QChar(0xFFFD)))
      .with(qint64{code.size()})
      .with(qint64{half.size() + 1})
      .with(code.mid(half.size()));
  QStringList codes;
  while (rows.next()) codes += rows.text(0);
  while (found.size() < 10 && !codes.isEmpty()) {
    const QString next = problem::nearest(code, codes);
    if (next.isEmpty()) break;
    if (differing(code, next) <= 2) found += next;
    codes.removeAll(next);
  }
  return found;
}

problem::Error unknown_lot(Store& store, const QString& code, const problem::Place& place, const QString& otherwise) {
  const QStringList near = nearest_codes(store, code);
  if (near.contains(code))
    return {problem::Code::Unknown, QStringLiteral("no lot %1 of this item is recorded").arg(code), place,
            QStringLiteral("a lot of another item has this code: correct the item or the lot")};
  return {problem::Code::Unknown, QStringLiteral("no lot %1 is recorded").arg(code), place,
          near.isEmpty() ? otherwise : QStringLiteral("did you mean %1?").arg(near.join(QStringLiteral(", ")))};
}

}  // namespace lardiner::ledger
