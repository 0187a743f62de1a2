// The test page of a medium: what its printer can do, found out on the medium itself.
#pragma once

#include <QString>
#include <vector>

#include "paper/drawing.h"
#include "paper/face.h"
#include "paper/sheet.h"
#include "paper/template.h"
#include "problem/error.h"

namespace lardiner::paper {

/// A template by the name that a kitchen knows it by.
struct NamedTemplate {
  QString name;
  const LabelTemplate* label = nullptr;
};

struct TestPageWish {
  QString medium;  ///< as it is called on the page: "lid, 50 × 50 mm, 203 dpi"
  PageSize page;
  Insets margin;  ///< nothing is drawn in it
  std::vector<NamedTemplate> templates;
  int code_bytes = 0;  ///< of a real label's code
};

/// As many labels as it takes, in this order: rulers along all four sides within a frame at the margin; the smallest
/// type that each template allows; a code at each module size from 2 dots up to what fits, which says so itself; lines,
/// checkerboards and a staircase that fire every dot across the printable width. Its words are English: it is the
/// tool's own page, not a label. Errors: NoRoom where the medium is too small for it.
problem::Expected<std::vector<Drawing>> test_pages(const TestPageWish& wish, const Faces& faces);

/// What the test page's code of this module size holds: as many bytes as a real label's code, unless its words are
/// longer.
QByteArray test_code_content(Resolution resolution, int module_dots, int code_bytes);

/// Where tick `index` of a ruler stands, in dots from its start: the nearest whole dot.
Dots tick(int index, Millimetres apart, Resolution resolution);

/// The smallest type that a label of the template may carry, after its least x-height in whole dots.
Points smallest_type(const LabelTemplate& label, const Faces& faces, Resolution resolution);

}  // namespace lardiner::paper
