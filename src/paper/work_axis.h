// The axis of a picture of spans: where a time stands, the marks' texts above, and their lines through each row.
#pragma once

#include "facts/work_sheet.h"
#include "paper/work_block.h"
#include "paper/work_text.h"

namespace lardiner::paper {

/// Where the times are, in whole dots.
struct Axis {
  int left = 0, width = 0;
  int length = 1;  ///< in the spans' unit
  int right() const { return left + width; }
  int at(int time) const;  ///< within the axis
};

/// The marks' texts over the axis. A strong mark's line begins beneath its text.
WorkBlock set_axis(const std::vector<facts::Spans::Mark>& marks, const Axis& axis, const Frame& frame);

/// The marks' lines through a row of this height, from its top.
void draw_marks(Drawing& to, const std::vector<facts::Spans::Mark>& marks, const Axis& axis, int height);

}  // namespace lardiner::paper
