// Writes labels down as plain drawing steps, so that other programs can draw exactly the same.
#pragma once

#include <QByteArray>

#include "press.h"

namespace bench {

/// One label, a step a line, lengths in points from the top left:
///   page WIDTH HEIGHT
///   box X Y WIDTH HEIGHT black|white
///   code X Y SIDE MODULES ROWS-IN-HEX URI
///   text regular|bold|extra-bold SIZE X BASELINE black|white THE TEXT
///   end
QByteArray written_down(const lardiner::paper::LabelLayout& layout, const lardiner::facts::ContainerFacts& container,
                        const lardiner::paper::CodeImage& code, const lardiner::paper::Faces& faces);

}  // namespace bench
