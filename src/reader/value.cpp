// Looking up an entry of a table.
#include "reader/value.h"

#include <algorithm>

namespace lardiner::reader {

const Value* Value::find(QStringView key) const {
  const auto found =
      std::find_if(entries.begin(), entries.end(), [&](const auto& entry) { return entry.first == key; });
  return found == entries.end() ? nullptr : &found->second;
}

}  // namespace lardiner::reader
