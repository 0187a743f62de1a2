// A lot's lineage as a picture on paper: SVG or PDF.
#pragma once

#include "command/commands.h"
#include "command/traced.h"

namespace lardiner::command {

/// Writes the picture to `out` (.svg or .pdf), whole or not at all. Errors: those of the picture and of the file.
problem::Errors write_lineage(const Options& options, const Traced& traced, const QString& out, bool replace);

/// The picture as SVG. Errors: those of the picture.
problem::ExpectedAll<QByteArray> lineage_svg(const Options& options, const Traced& traced);

}  // namespace lardiner::command
