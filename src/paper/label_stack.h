// One attempt at a label: blocks stacked from the top, foot and code at the bottom, at one set of sizes.
#pragma once

#include <optional>

#include "book/kitchen.h"
#include "paper/label.h"
#include "paper/label_text.h"

namespace lardiner::paper {

/// What an attempt may vary.
struct Choice {
  double factor = 1;
  bool flowed = false;
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
  Dots margin;  ///< the medium's or the template's, whichever is more
  Dots frame;
  int code_modules = 0;  ///< a side, without quiet zone; 0: no code
};

Attempt stack(const Ground& ground, const Choice& choice);

/// Dots from the page's edge to the code: its quiet zone, and never inside the margin.
Dots code_inset(const Ground& ground, Dots module);

}  // namespace lardiner::paper
