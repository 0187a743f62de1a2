// The sizes of type and the steps of space that every work sheet is set in.
#pragma once

#include <array>

#include "paper/units.h"

namespace lardiner::paper {

/// Of an office's printer: where a coarser one prints, rules are still whole dots thick.
inline constexpr Resolution kPrint{300};

// One scale, each size a fifth larger than the one before: 10 12 14 17 20 24 29 35. At a metre a height of 16 minutes
// of arc is 4.7 mm (ISO 9241-303, from memory): the capitals and figures of 20 points.
inline constexpr Points kFine{10};     ///< the foot line, columns' headings
inline constexpr Points kSmall{12};    ///< what stands beneath: other units, second language, allergens, cautions
inline constexpr Points kBody{14};     ///< paragraphs, fields
inline constexpr Points kSection{17};  ///< headings

/// The sizes within a table.
struct RowSizes {
  Points item;
  Points amount;
  Points beside;  ///< a text in the place of a line to write on
};
/// What a table gives way to, where its columns are too many for the page.
inline constexpr std::array kRowSizes = {RowSizes{{20}, {24}, {14}}, RowSizes{{17}, {20}, {14}},
                                         RowSizes{{17}, {17}, {12}}, RowSizes{{14}, {17}, {12}},
                                         RowSizes{{14}, {14}, {12}}};

// Lengths in dots. A step is 12 of them, 1.02 mm: space and line distances are whole steps.
inline constexpr int kStep = 12;
inline constexpr int kSideMargin = 12 * kStep;    ///< what a printer cannot print, and a hand's thumb
inline constexpr int kTopMargin = 15 * kStep;     ///< and a clip
inline constexpr int kBottomMargin = 12 * kStep;  ///< as at the sides
inline constexpr int kGap = 42;                   ///< between columns
inline constexpr int kAirOfSection = 3 * kStep;   ///< above a heading, a table, a picture
inline constexpr int kThin = 2, kRule = 4, kHeavy = 24;
inline constexpr int kTickGap = 2 * kStep;  ///< behind a box to tick
inline constexpr int kTickSide = 6 * kStep, kTickLine = 3;
inline constexpr int kWritingRow = 9 * kStep;     ///< the least height of a row that is written in
inline constexpr int kLeastWriting = 22 * kStep;  ///< the least length of a line to write on
inline constexpr int kWritingLine = 3;            ///< its thickness
inline constexpr int kWritingBelow = 6;           ///< how far it lies below the baseline

}  // namespace lardiner::paper
