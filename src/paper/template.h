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

/// Sizes of a block's text. Where there is room all blocks grow by one factor, up to their most; where it is short they
/// shrink towards their least, in the order in which they give way. A block that is larger than another at the
/// preferred sizes is nowhere smaller than it.
struct Sizes {
  Points least, preferred, most;
};

/// When a block shrinks: those that give way first are at their least before the rest shrinks.
enum class GivesWay { First, WithTheRest, Last };

/// The height of a line to write on by hand; grows and shrinks with the sizes.
struct WritingLine {
  Millimetres least, preferred, most;
};

/// One block of the stack, as wide as the label allows at its height.
struct Block {
  bool band = false;                    ///< the date, white on black; facts are then the date's own
  std::vector<facts::FactId> facts;     ///< in order; those that a label lacks are left out
  std::optional<facts::FactId> beside;  ///< at the right end of the first line where there is room, else below
  Weight weight = Weight::Regular;
  Sizes sizes;
  GivesWay gives_way = GivesWay::WithTheRest;
  /// From which trial on its facts are run together in one paragraph to save lines; 0: never. In that trial short facts
  /// stay whole, in later ones the lines are filled. Lines are saved so before anything shrinks much.
  int run_together = 0;
  std::vector<facts::FactId> alone;  ///< of its facts, those that keep lines of their own even then
  std::optional<WritingLine> write;  ///< the facts' runs of underscores become lines to write on
  bool dark = false;                 ///< their captions white on black
};

struct LabelTemplate {
  QString file;                ///< for errors
  std::vector<Block> blocks;   ///< from the top
  Sizes foot;                  ///< lot, container and serial, at the bottom beside the code; it gives way with the rest
  Millimetres margin;          ///< of the text, inside the medium's own margin; the band reaches out to that
  Millimetres least_x_height;  ///< of every text on the label
  double code_share = 0.4;     ///< the most of the shorter side that the code with its quiet zone takes
  Millimetres frame;           ///< thickness of a line round what may be printed; 0: none

  int trials() const;  ///< the last one, in which all lines of what is run together are filled; 0: nothing is
};

/// Reads a template; unknown facts and keys, sizes out of order in a block or between blocks, a fact that stands in two
/// blocks are errors.
problem::ExpectedAll<LabelTemplate> read_label_template(const QByteArray& toml, const QString& file);

/// Whether the template has a place for the fact.
bool has_place(const LabelTemplate& label, facts::FactId fact);

}  // namespace lardiner::paper
