// A value read from the text of a key, or its fault told at that key.
#pragma once

#include <optional>

#include "reader/fields.h"

namespace lardiner::book {

template <class T>
std::optional<T> taken(reader::Fields& fields, QStringView key, const problem::Expected<T>& read) {
  if (read) return *read;
  fields.refuse(key, read.error().code, read.error().what, read.error().hint);
  return std::nullopt;
}

}  // namespace lardiner::book
