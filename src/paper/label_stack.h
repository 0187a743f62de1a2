// One attempt at a label: blocks stacked from the top, foot and code at the bottom, at one set of sizes.
#pragma once

#include <optional>

#include "book/kitchen.h"
#include "paper/label.h"
#include "paper/label_sizes.h"
#include "paper/label_text.h"
#include "paper/sheet.h"

namespace lardiner::paper {

/// What an attempt may vary.
struct Choice {
  double scale = 1;  ///< as LabelLayout's
  int trial = 0;
  Dots module;
};

/// What stood in the way: a word wider than its line, or the stack running into the foot.
struct Lack {
  facts::FactId fact = facts::FactId::Name;
  FineDots width, height;  ///< that is missing; one of them is 0
  QString word;            ///< the word that is too wide
};

struct Attempt {
  LabelLayout layout;
  std::optional<Lack> lack;
};

/// What all attempts on one medium share.
struct Ground {
  const facts::LabelRun& run;
  const LabelTemplate& label;
  const LabelText& text;
  const Faces& faces;
  PageSize page;
  Insets margin;  ///< the medium's: nothing is printed there
  Dots inset;     ///< of text from what may be printed
  Dots frame;
  int code_modules = 0;             ///< a side, without quiet zone; 0: no code
  std::vector<BlockBounds> bounds;  ///< of the template's blocks, and of the foot
};

/// The least size in which a face is legible: the least x-height in whole dots, so that the printer's grid does not
/// undercut it. Capitals and figures by themselves obey it too: what they are measured by is stricter than their own
/// height would be.
Points legible(const LabelTemplate& label, const Faces& faces, Weight weight, Resolution resolution);

Attempt stack(const Ground& ground, const Choice& choice);

}  // namespace lardiner::paper
