// What a form wrote down, as the rows that records and events are read from.
#pragma once

#include "reader/value.h"

namespace lardiner::station {

/// An empty row.
reader::Value form_table();
reader::Value form_text(const QString& key, const QString& text);
/// Adds what was filled in; a field that was left empty is as if it were not there.
void add(reader::Value& to, const QString& key, const QString& text);

/// Whether the row takes a judgement back, or reaches all that holds a lot: for that the strong word is asked for
/// besides the PIN.
bool needs_strong_word(const reader::Value& row);

}  // namespace lardiner::station
