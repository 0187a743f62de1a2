// One label run laid out on one medium: everything that must be said, measured and fitted, or an error that says what
// lacks.
#pragma once

#include <optional>
#include <vector>

#include "book/kitchen.h"
#include "facts/label_facts.h"
#include "paper/drawing.h"
#include "paper/face.h"
#include "paper/one_line.h"
#include "paper/template.h"
#include "problem/error.h"

namespace lardiner::paper {

/// A text whose words differ from label to label; it is drawn at this place with the container's own.
struct Varying {
  facts::FactId fact = facts::FactId::Serial;
  OneLine line;
};

/// Where each label's code stands: its bottom right corner, so that codes of any size keep their quiet zone to the
/// edge.
struct CodePlace {
  Dots right, bottom;
  Dots module;
};

/// How large a block came out, and what it gave up.
struct BlockSize {
  facts::FactId fact = facts::FactId::Name;  ///< the first that it says; the lot of the foot
  Points size;
  Points preferred, least;  ///< `least` is legible on this printer: the least x-height in whole dots
  bool run_together = false;

  bool is_shrunk() const { return size < preferred; }
};

/// A run's labels: what they share, and the places of what varies.
struct LabelLayout {
  PageSize size;  ///< of the label as it is read
  Drawing shared;
  std::vector<Varying> varying;
  std::optional<CodePlace> code;
  double scale =
      1;          ///< 0: all at their least; 1: all at their preferred sizes; above: those times it, up to their most
  int trial = 0;  ///< of the template: which blocks were run together to save lines
  std::vector<BlockSize> blocks;  ///< those that say something, from the top, and the foot
  Dots largest_module;            ///< that the template and the medium allow: below it the code gave way
};

/// The best layout within the template's bounds: the largest code first, then the largest type; facts are run together
/// before anything shrinks much below its preferred size. Nothing stands in the medium's margin. Never clips, never
/// drops.
/// Errors (place: the record): NoRoom with the fact, the medium and the space that lacks; NoGlyph; Missing where the
/// template has no place for a fact; Conflict where the medium does not bear the container's state.
problem::ExpectedAll<LabelLayout> lay_out(const facts::LabelRun& run, const LabelTemplate& label,
                                          const book::Media& medium, const Faces& faces);

/// The smallest of `media` (by area) on which the run fits, or nullptr.
const book::Media* smallest_that_fits(const facts::LabelRun& run, const LabelTemplate& label,
                                      const std::vector<book::Media>& media, const Faces& faces);

/// What one container's label adds to the shared drawing. `code` is absent where the run has none.
Drawing own_drawing(const LabelLayout& layout, const facts::ContainerFacts& container,
                    const std::optional<CodeImage>& code, const Faces& faces);

}  // namespace lardiner::paper
