// How a record came to be: made ready on a pad, and entered later than made.
#pragma once

#include "batch/read_records_values.h"

namespace lardiner::batch {

/// `recorded`: when the record was entered. Refused before the making and in the future.
/// REQUIRES: record.made_at as read.
void read_recorded(reader::Fields& fields, const Reading& reading, Record& record);

/// `pad_day`: the day on which the lot on a pad's label was made ready. Refused after the day of the making, and
/// without the lot, which shows that day, product and number were read rightly. Where `recorded` is not written, it is
/// the time of the run. REQUIRES: record.made_at, lot and recorded_at as read.
void read_pad(reader::Fields& fields, const Reading& reading, Record& record);

}  // namespace lardiner::batch
