// A label template: which facts stand on a label, in which order of importance and at which sizes. Data of
// templates/labels.
#pragma once

#include <QByteArray>
#include <optional>
#include <vector>

#include "facts/label_facts.h"
#include "paper/face.h"
#include "paper/units.h"
#include "problem/error.h"

namespace lardiner::paper {

/// Sizes of a block's text. All blocks of a label grow and shrink by one factor between these.
struct Sizes {
  Points least, preferred, most;
};

/// One block of the stack, as wide as the label allows at its height.
struct Block {
  bool band = false;                    ///< the date, white on black; facts are then the date's own
  std::vector<facts::FactId> facts;     ///< in order; those that a label lacks are left out
  std::optional<facts::FactId> beside;  ///< at the right end of the first line where there is room, else below
  Weight weight = Weight::Regular;
  Sizes sizes;
};

struct LabelTemplate {
  QString file;               ///< for errors
  std::vector<Block> blocks;  ///< from the top
  Sizes foot;                 ///< lot, container and serial, at the bottom beside the code
  Millimetres margin;
  Millimetres least_x_height;  ///< of every text on the label
  double code_share = 0.4;     ///< the most of the shorter side that the code with its quiet zone takes
  Millimetres frame;           ///< thickness of a line all round; 0: none
};

/// Reads a template; unknown facts and keys, sizes out of order, a fact that stands in two blocks are errors.
problem::ExpectedAll<LabelTemplate> read_label_template(const QByteArray& toml, const QString& file);

/// Whether the template has a place for the fact.
bool has_place(const LabelTemplate& label, facts::FactId fact);

}  // namespace lardiner::paper
