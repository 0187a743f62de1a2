// The chain of hashes: each entry's with the one before it, one chain a station.
#include "ledger/chain.h"

#include <QCryptographicHash>
#include <QtEndian>

namespace lardiner::ledger {

QByteArray no_hash() { return QByteArray(32, '\0'); }

QByteArray link(const QByteArray& previous, const QString& station, qint64 number, const QByteArray& body) {
  const QByteArray name = station.toUtf8();
  const auto length = qToBigEndian(static_cast<quint32>(name.size()));
  const auto place = qToBigEndian(number);
  QCryptographicHash hash(QCryptographicHash::Sha256);
  hash.addData(previous);
  hash.addData(QByteArrayView(reinterpret_cast<const char*>(&length), sizeof length));
  hash.addData(name);
  hash.addData(QByteArrayView(reinterpret_cast<const char*>(&place), sizeof place));
  hash.addData(body);
  return hash.result();
}

}  // namespace lardiner::ledger
