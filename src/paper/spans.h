// Which family sets which stretch of a text: the fallback between the shipped faces, decided here alone.
#pragma once

#include <QStringView>
#include <vector>

#include "paper/face.h"

namespace lardiner::paper {

/// A stretch of a text that one family sets, in UTF-16 units.
struct Span {
  Family family = Family::Atkinson;
  qsizetype start = 0;
  qsizetype size = 0;
  friend bool operator==(const Span&, const Span&) = default;
};

/// The whole text, divided. A word (no spaces, one script) takes the first family that has all its characters in every
/// weight, so that no word is set letter by letter in two faces; only where none has all, each part of it takes the
/// family that goes furthest. Signs go with the script before them, opening ones with the one behind; figures are
/// Latin, so that they look alike in every language; spaces go with what precedes them.
/// REQUIRES: text that is `Faces::printable`.
std::vector<Span> spans(const Faces& faces, QStringView text);

}  // namespace lardiner::paper
