// The facts of a run as printable paragraphs, block by block, before any measuring.
#pragma once

#include <vector>

#include "facts/label_facts.h"
#include "paper/lines.h"
#include "paper/template.h"

namespace lardiner::paper {

/// A fact's paragraphs in the weights of its block.
struct FactText {
  facts::FactId id;
  std::vector<Paragraph> paragraphs;
};

/// Everything a layout draws, by place.
struct LabelText {
  std::vector<std::vector<FactText>> blocks;  ///< as the template's blocks; empty where the label says nothing there
  std::vector<std::optional<FactText>> beside;
  std::vector<FactText> foot;  ///< lot, container, serial: those that the run has
};

/// Composes every text (Unicode NFC), refusing what the faces cannot print and facts without a place.
problem::ExpectedAll<LabelText> label_text(const facts::LabelRun& run, const LabelTemplate& label, const Faces& faces);

}  // namespace lardiner::paper
