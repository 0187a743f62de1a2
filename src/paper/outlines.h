// The outlines of glyphs as SVG path data, for the formats that do not carry the faces themselves.
#pragma once

#include <QByteArray>
#include <memory>

#include "paper/face.h"

namespace lardiner::paper {

/// Reads outlines when they are first asked for. One thread at a time; several may share the `Faces`.
class Outlines {
 public:
  /// REQUIRES: `faces` outlives this.
  explicit Outlines(const Faces& faces);
  ~Outlines();

  /// The path of a character in the face's own units, y downwards from the baseline (as SVG 2, 9.3 has it); empty for
  /// a space. Errors: NoGlyph; Machine when the face's file can no longer be read.
  problem::Expected<QByteArray> path(FaceId face, char32_t character);

 private:
  class OpenFaces;
  const Faces& faces_;
  std::unique_ptr<OpenFaces> open_;
};

}  // namespace lardiner::paper
