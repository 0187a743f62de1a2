// Reads one TrueType file into a Face.
#pragma once

#include <QString>

#include "paper/face.h"

namespace lardiner::paper {

class FaceReader {
 public:
  /// Errors: Machine; the file is missing, no TrueType outlines, or has no Unicode character map.
  static problem::Expected<Face> read(const QString& file);
};

}  // namespace lardiner::paper
