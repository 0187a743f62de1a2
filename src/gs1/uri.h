// The parts of web addresses (RFC 3986) that Digital Link needs; for this layer alone.
#pragma once

#include <QString>
#include <QStringView>
#include <optional>

#include "problem/error.h"

namespace lardiner::gs1 {

bool is_hexadecimal(QChar letter);

/// Letters, digits and - . _ as they are, every other character as its percent-encoded UTF-8 bytes.
QString percent_encoded(const QString& text);

/// The text behind percent-encoding; refused: a % without two hexadecimal digits. Bytes are taken as Latin-1, so that
/// whatever is not ASCII stays visible and is refused by the character sets of elements.
problem::Expected<QString> percent_decoded(QStringView text);

/// What is wrong with `http(s)://host[:port][/path]` without slash at the end, query or fragment; or nothing.
std::optional<problem::Error> web_address_fault(const QString& address);

/// Only characters that an address may hold, and http:// or https:// before them.
bool looks_like_uri(const QString& text);

}  // namespace lardiner::gs1
