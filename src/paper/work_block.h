// What is never divided between two pages: a row, a paragraph's line, a heading; drawn from its own top.
#pragma once

#include <memory>
#include <vector>

#include "paper/drawing.h"

namespace lardiner::paper {

/// y from the block's top, x on the page; nothing of it is drawn above or below its height. Lengths in dots.
struct WorkBlock {
  Drawing drawing;
  int height = 0;
  int air = 0;        ///< above it, unless it begins a page
  bool keep = false;  ///< on one page with the next, if the two fit one
  /// Stands above it where it begins a page: the table's caption and headings, the axis.
  std::shared_ptr<const WorkBlock> again;
  QString name;  ///< its first text, for errors
};

/// Draws the block with its top at y.
void draw(Drawing& to, const WorkBlock& block, int y);

}  // namespace lardiner::paper
