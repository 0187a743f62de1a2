// Looking up an entry of a table.
#include "reader/value.h"

#include <algorithm>
#include <utility>

namespace lardiner::reader {

Entry::Entry(QString key, Value value) : first(std::move(key)), second(std::move(value)) {}

const Value* Value::find(QStringView key) const {
  const auto found =
      std::find_if(entries.begin(), entries.end(), [&](const Entry& entry) { return entry.first == key; });
  return found == entries.end() ? nullptr : &found->second;
}

}  // namespace lardiner::reader
