// Writes drawings as SVG: the same list of boxes, codes and texts that becomes a PDF, for screens and pages.
#pragma once

#include <QByteArray>
#include <set>
#include <utility>

#include "paper/drawing.h"
#include "paper/face.h"
#include "paper/outlines.h"
#include "problem/error.h"

namespace lardiner::paper {

/// Several drawings of one document share the outlines of their glyphs: each is defined once and used by reference.
/// What goes wrong is kept and told at the end, the first fault only.
class SvgWriter {
 public:
  /// REQUIRES: `faces` outlives this.
  explicit SvgWriter(const Faces& faces) : faces_(faces), outlines_(faces) {}

  /// The drawing as a group, in dots from the top left. It needs `definitions` in the same document.
  QByteArray group(const Drawing& drawing, Resolution resolution);

  /// The outlines that the groups so far refer to: one <defs>. Errors: NoGlyph, Machine.
  problem::Expected<QByteArray> definitions();

 private:
  void add(QByteArray& out, const TextRun& run, Resolution resolution);

  const Faces& faces_;
  Outlines outlines_;
  std::set<std::pair<FaceId, char32_t>> used_;  // sorted: equal drawings give equal files
};

/// The opening tag of a picture of so many dots at its real size on paper: `<svg … viewBox="0 0 400 400">`.
QByteArray svg_tag(PageSize size, const QString& spoken);

/// One drawing as a whole SVG file (SVG 2). `spoken` is what it is, for readers that speak.
problem::Expected<QByteArray> svg(const Faces& faces, const Drawing& drawing, PageSize size, const QString& spoken);

}  // namespace lardiner::paper
