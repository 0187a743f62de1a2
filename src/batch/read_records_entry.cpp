// How a record came to be: made ready on a pad, and entered later than made.
#include "batch/read_records_entry.h"

#include "batch/clock.h"
#include "batch/phrases.h"

namespace lardiner::batch {

using problem::Code;

void read_recorded(reader::Fields& fields, const Reading& reading, Record& record) {
  record.recorded_at = read_instant(fields, u"recorded", reading);
  if (!record.recorded_at || !record.made_at.isValid() || *record.recorded_at >= record.made_at) return;
  fields.refuse(
      u"recorded", Code::Conflict,
      QStringLiteral("recorded %1, before it was made at %2")
          .arg(instant_text(*record.recorded_at, reading.zone()), instant_text(record.made_at, reading.zone())),
      QStringLiteral("write when it was entered, or leave it out"));
}

void read_pad(reader::Fields& fields, const Reading& reading, Record& record) {
  record.pad_day = fields.date(u"pad_day");
  if (!record.pad_day) return;
  if (record.made_at.isValid() && *record.pad_day > local_day(record.made_at, reading.zone()))
    fields.refuse(u"pad_day", Code::Conflict,
                  QStringLiteral("the pad is of %1, after the making on %2")
                      .arg(day_text(*record.pad_day), day_text(local_day(record.made_at, reading.zone()))),
                  QStringLiteral("copy the day that the label names with the kitchen book"));
  if (!fields.has(u"lot"))
    fields.refuse(u"pad_day", Code::Missing, QStringLiteral("the batch is from a pad, but its lot is not written"),
                  QStringLiteral("write lot, as it stands on the label"));
  if (!fields.has(u"recorded")) record.recorded_at = reading.settings.now;
}

}  // namespace lardiner::batch
