// The TOML parser's faults in our words, with a remedy.
#pragma once

#include "reader/source.h"
#include "reader/toml_scan.h"

namespace lardiner::reader {

/// `description` is toml++'s sentence about the fault it met at the byte `at`. Common faults are told in our words, at
/// the whole word that is wrong; the others in toml++'s.
problem::Error toml_fault(Source& source, const TomlScan& scan, const QString& description, qsizetype at);

}  // namespace lardiner::reader
