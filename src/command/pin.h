// Where the PINs of the station's people are kept.
#pragma once

#include "book/kitchen.h"
#include "command/kitchen.h"
#include "station/pins.h"

namespace lardiner::command {

/// The file `named`; empty: beside the ledger and with its name, "A.pins", and no part of it. Errors: those of
/// Pins::at.
problem::Expected<station::Pins> open_pins(const Options& options, const book::Kitchen& kitchen, const QString& named);

}  // namespace lardiner::command
