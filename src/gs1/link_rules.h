// What may stand where in a GTIN's address; for this layer alone.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>

#include "problem/error.h"

namespace lardiner::gs1 {

/// Why `ai` is no attribute of a GTIN (unknown, the GTIN itself, a qualifier, not permitted), or nothing.
std::optional<problem::Error> attribute_fault(const QString& ai);

/// Why labels cannot stand under this address: no web address, or one that names an item already; or nothing.
std::optional<problem::Error> address_fault(const QString& address);

/// Where the last primary key of the path's segments stands, -1 if nowhere. Pairs of key and value are counted from the
/// end, so that a resolver's own path may say anything.
qsizetype primary_key_at(const QStringList& segments);

/// The error for a second value of one identifier.
problem::Error given_twice(const QString& ai);

}  // namespace lardiner::gs1
