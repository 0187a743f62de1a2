// The words that orders and lots on hand bring onto a PDF: what no face has is told at their rows.
#pragma once

#include <vector>

#include "paper/face.h"
#include "plan/order.h"
#include "problem/error.h"

namespace lardiner::command {

/// NoGlyph of each order whose number, and each lot whose lot, container or place, cannot be printed, at its row.
problem::Errors unprintable(const std::vector<plan::Order>& orders, const paper::Faces& faces);
problem::Errors unprintable(const std::vector<plan::OnHand>& lots, const paper::Faces& faces);

}  // namespace lardiner::command
