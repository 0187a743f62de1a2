// The chain of hashes: each entry's with the one before it, one chain a station.
#pragma once

#include <QByteArray>
#include <QString>

namespace lardiner::ledger {

/// The hash before the first entry of a chain: 32 zero bytes.
QByteArray no_hash();

/// SHA-256 (FIPS 180-4) over: the hash of the entry before (32 bytes); the station's length in UTF-8 as 32 bits and its
/// bytes; the number as 64 bits; the body's bytes to the end. Big-endian. The lengths make every text of bytes belong
/// to one entry alone.
QByteArray link(const QByteArray& previous, const QString& station, qint64 number, const QByteArray& body);

}  // namespace lardiner::ledger
