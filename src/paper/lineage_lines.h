// The lines between the lots of a lineage picture: level, upright, level; each with places of its own.
#pragma once

#include "paper/lineage_layers.h"
#include "paper/work_text.h"

namespace lardiner::paper {

/// A slot with its words, where it stands. Lengths in dots.
struct SetNode {
  Slot::Kind kind = Slot::Kind::Lot;
  bool asked = false;
  TextStack words;
  int x = 0, y = 0, width = 0, height = 0;
};

/// Draws all links. False where a gap between columns is too narrow for its upright lines, or a lot too low for the
/// lines that enter it.
[[nodiscard]] bool draw_links(Drawing& to, const Layers& layers, const std::vector<std::vector<SetNode>>& nodes,
                              int gap);

}  // namespace lardiner::paper
