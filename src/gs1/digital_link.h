// GS1 Digital Link addresses (ISO/IEC 18975): what the code on a label holds, written and read.
#pragma once

#include <QString>
#include <QStringView>
#include <utility>
#include <vector>

#include "problem/error.h"

namespace lardiner::gs1 {

/// The facts of one address. Empty lot, serial and variant are absent.
struct Link {
  QString gtin;                                         ///< AI 01: 14 digits
  QString lot;                                          ///< AI 10
  QString serial;                                       ///< AI 21
  std::vector<std::pair<QString, QString>> attributes;  ///< AI and value, of those permitted in the query
  QString address;                                      ///< "https://id.example", without a slash at the end
  QString variant;                                      ///< AI 22: consumer product variant

  friend bool operator==(const Link&, const Link&) = default;
};

/// `https://id.example/01/GTIN/22/VARIANT/10/LOT/21/SERIAL?17=180426`. All but letters, digits and - . _ is
/// percent-encoded; attributes stand in ascending order of their identifiers, whatever order they came in, so that
/// equal facts give equal addresses. Refused: a wrong value, an attribute that is no attribute or given twice, an
/// address that is not http(s)://host[/path], and a variant, lot or serial of "." or "..", which browsers take out of
/// an address.
problem::Expected<QString> digital_link(const Link& link);

/// Reads an address of any resolver; attributes come in the order written. Ignored: the fragment, and keys of the query
/// that are not all digits. Refused: no GTIN, another primary key, qualifiers out of order or in the query, an empty
/// value, a slash at the end, an identifier given twice, an unknown all-digit key, a broken percent-encoding, a wrong
/// value. The error has no place.
problem::Expected<Link> parse_digital_link(const QString& uri);

/// The attribute's value, or an empty string.
QString attribute(const Link& link, QStringView ai);

}  // namespace lardiner::gs1
