// A walk over one part of a record; for the readers of parts.
#pragma once

#include "batch/read_records_parts.h"

namespace lardiner::batch {

/// What a further row has besides its part (the record's number and item) is known to it.
class PartWalk {
 public:
  PartWalk(const WrittenPart& part, const QString& noun)
      : fields(part.table, noun, part.errors), before_(part.errors.size()), errors_(part.errors) {
    if (!part.row) return;
    for (const QStringView key : {u"row", u"number", u"product", u"ingredient"}) fields.has(key);
  }

  /// Whether the part is without fault. Call last, once.
  bool finish() {
    fields.finish();
    return errors_.size() == before_;
  }

  reader::Fields fields;

 private:
  size_t before_;
  problem::Errors& errors_;
};

/// Where a key's value stands, or the table where it is absent.
inline problem::Place place_of(reader::Fields& fields, QStringView key) {
  const reader::Value* value = fields.value(key);
  return value ? value->place : fields.source().place;
}

}  // namespace lardiner::batch
