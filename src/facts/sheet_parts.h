// The parts that prep sheets and assembly sheets share: head, steps, limits, what is filled, cautions.
#pragma once

#include "facts/sheet_phrases.h"

namespace lardiner::facts {

/// Kind, title, running line, lot, blanks for who made it and when.
WorkSheet begin_sheet(const SheetPhrases& phrases, const char* kind_key, const book::Product& product,
                      const Ahead& ahead);

/// What an ingredient or a product brings, strong, in both languages: "MILK · LECHE"; or that it is not known.
void add_allergens(const SheetPhrases& phrases, std::vector<SmallLine>& to, const std::vector<QString>& entries,
                   bool known);

/// The lots that an item is taken from, one beneath the other, with lines to write on for those without a name and for
/// what they are not enough for. `needed`: of the whole batch, as pulled.
Cell lot_cell(const SheetPhrases& phrases, const Ahead& ahead, const QString& item, measure::Quantity needed);

/// That a line is raw, where it is animal food, unknown, or a product that is: keep it apart.
void add_raw(const SheetPhrases& phrases, std::vector<SmallLine>& to, const QString& item);

/// Each adds its part where there is something to say.
void add_steps(const SheetPhrases& phrases, const book::Product& product, std::vector<Part>& parts);
void add_limits(const SheetPhrases& phrases, const book::Product& product, std::vector<Part>& parts);

/// The containers to fill, each of which gets a label.
void add_fill(const SheetPhrases& phrases, const Ahead& ahead, std::vector<SmallLine>& head);

/// The usual cautions, and what they defer to.
void add_cautions(const SheetPhrases& phrases, QStringList& foot);

}  // namespace lardiner::facts
