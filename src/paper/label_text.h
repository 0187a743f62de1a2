// The facts of a run as printable, measured paragraphs, block by block, before any layout.
#pragma once

#include <optional>
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

/// A paragraph to be set as a whole.
struct Piece {
  facts::FactId fact;  ///< the last one in it, for errors
  MeasuredText text;
};

/// What one block says; all empty where the label says nothing there.
struct BlockText {
  std::vector<FactText> facts;    ///< as they are: the band sets them itself
  std::vector<Piece> apart;       ///< a paragraph for each
  std::vector<Piece> flowed;      ///< run together, where the template has a trial for that; short facts stay whole
  std::vector<Piece> filled;      ///< the same, but lines are filled as far as they go
  std::optional<Piece> together;  ///< all in one line of words, for a frozen container's date
  std::optional<FactText> beside;
  std::optional<Piece> beside_words;  ///< of `beside`

  bool empty() const { return facts.empty() && !beside; }
};

/// Everything a layout draws, by place.
struct LabelText {
  std::vector<BlockText> blocks;  ///< as the template's blocks
  std::vector<FactText> foot;     ///< lot, container, serial: those that the run has
};

/// Composes every text (Unicode NFC), refusing what the faces cannot print and facts without a place.
problem::ExpectedAll<LabelText> label_text(const facts::LabelRun& run, const LabelTemplate& label, const Faces& faces);

}  // namespace lardiner::paper
