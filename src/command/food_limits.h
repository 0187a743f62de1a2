// What a reading of food is judged by, when nothing but the entry says what it was.
#pragma once

#include <optional>

#include "book/book.h"
#include "book/storage_place.h"
#include "history/event.h"

namespace lardiner::command {

/// Of food held hot or cold the limit of that; of other food that of the one it is nearer to. Nothing where no
/// temperature was read.
book::HeldTo held_to(const history::Event& event, const book::RuleSet& rules);

/// Of food that came, left or arrived cold: what it may be at most. Of a receipt the ingredient's own where the book
/// has one.
const measure::TemperatureLimit& warmest_when_cold(const history::Event& event, const book::Book& book);

/// Food is reheated for hot holding unless somebody says otherwise, which no event does. Absent of other events.
std::optional<book::TimeAtTemperature> reheat_minimum(const history::Event& event, const book::RuleSet& rules);

}  // namespace lardiner::command
