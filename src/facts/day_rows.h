// The rows of a day record, section by section.
#pragma once

#include "facts/day_record.h"
#include "facts/sheet_phrases.h"

namespace lardiner::facts {

/// When, late or not; what; the figure; what is said of it; by whom, with the entry's name and its corrections.
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<PlaceRead>& all);
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Cooked>& all);
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Cooled>& all);
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<HeldRead>& all);
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Receipt>& all);
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Checked>& all);
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Acted>& all);
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Thrown>& all);
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Shipped>& all);
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<MadeBatch>& all);
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Counted>& all);
std::vector<Row> rows_of(const SheetPhrases& phrases, const std::vector<Reviewed>& all);

}  // namespace lardiner::facts
