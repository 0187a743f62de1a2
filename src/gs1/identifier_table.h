// The rows that the identifiers are made from; for identifier.cpp alone.
#pragma once

#include <vector>

namespace lardiner::gs1 {

/// One line in the notation of the GS1 Barcode Syntax Dictionary.
struct IdentifierRow {
  const char* identifiers;  ///< "01" or "3100-3105"
  const char* flags;        ///< "*" predefined length, no separator; "?" attribute of a Digital Link
  const char* format;       ///< "N13,csum [X..17]"
  const char* qualifiers;   ///< of a primary key: "22,10,21|235"; nullptr: no primary key
  const char* needs;        ///< one of these groups; several conditions are parted by a semicolon
  const char* excludes;
  const char* title;
};

const std::vector<IdentifierRow>& identifier_rows();

}  // namespace lardiner::gs1
