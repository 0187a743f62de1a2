// Fixed facts as the text that a ledger keeps: exact, without floats, readable by a person, and read back alike.
#pragma once

#include <QJsonObject>

#include "batch/fixed.h"
#include "reader/json_text.h"

namespace lardiner::batch {

/// An object. Amounts as {"ng"|"ml-e11"|"pieces-e6": whole number}, fractions as "3/4", instants in UTC as
/// "2026-11-25T12:40:00Z" (of sub-seconds nothing), calendar days as "2026-11-25", the zone by its IANA name;
/// temperatures as they were written. Fields that are at their default are left out. Places are left out.
void write_json(reader::JsonText& text, const Fixed& fixed);

/// Errors: what is missing, of the wrong kind or cannot be true, by its key ("facts.questions[0].made_at").
problem::Expected<Fixed> fixed_from_json(const QJsonObject& json);

}  // namespace lardiner::batch
