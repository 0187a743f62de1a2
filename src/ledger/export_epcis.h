// The critical tracking events as an EPCIS 2.0 document in JSON-LD (GS1; ISO/IEC 19987). What becomes what: EXPORTS.md.
#pragma once

#include "ledger/export_rows.h"

namespace lardiner::ledger {

/// Writes one EPCISDocument, created `now`; an event at a time. Gives the number of its events. Errors: those of
/// each_tracked; a lot of ours that no Digital Link can name, by its code.
problem::Expected<qint64> write_epcis(Ledger& ledger, const ExportScope& scope, const ExportKitchen& kitchen,
                                      const QDateTime& now, const Sink& sink);

/// The address of a lot as a class of things: a Digital Link where it has a GTIN, else one of the kitchen's own.
/// Errors: gs1::digital_link's, with the lot.
problem::Expected<QString> class_uri(const TrackedLot& lot, const QString& address);

}  // namespace lardiner::ledger
