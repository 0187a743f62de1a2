// Whether an XLSX holds all that was put into it: libxlsxwriter 1.1.4 says "no error" where a full disk cut its
// temporary files off.
#pragma once

#include <QString>
#include <optional>

namespace lardiner::ledger {

/// How much a sheet holds: rows that are not empty, cells with a value.
struct SheetSize {
  qint64 rows = 0, cells = 0;
  friend bool operator==(const SheetSize&, const SheetSize&) = default;
};

/// Reads the file `path` through: what its first sheet holds. Nothing where it cannot be read, is no ZIP, or any of its
/// parts is not whole XML. Memory does not grow with the file.
std::optional<SheetSize> size_of_sheet(const QString& path);

}  // namespace lardiner::ledger
