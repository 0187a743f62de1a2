// The traceability spreadsheet as XLSX (ISO/IEC 29500): the rows of export_rows with real dates, times and numbers.
#pragma once

#include "ledger/export_rows.h"

namespace lardiner::ledger {

/// Writes the file `path`: one sheet, the names of its columns frozen, a filter on each, so that it sorts. Texts are
/// texts, never formulas. Memory does not grow with the rows; the same rows give the same bytes. What was written is
/// read back, and on the disk when this returns. Gives the number of rows. Errors (Machine) name `path`: the disk's;
/// more rows than a sheet holds.
problem::Expected<qint64> write_xlsx(Ledger& ledger, const ExportScope& scope, const ExportKitchen& kitchen,
                                     const QString& path);

}  // namespace lardiner::ledger
