// What was chosen for a label, in figures.
#include "paper/proof_table.h"

#include <algorithm>

#include "symbol/qr.h"

namespace lardiner::paper {

namespace {

constexpr qsizetype kSample = 28;  // characters shown of a text

struct Rectangle {
  double left, top, right, bottom;
};

Rectangle ink(const Faces& faces, const TextRun& run, Resolution resolution) {
  const Face& face = faces[run.face];
  const double unit = fine_dots(run.size, resolution).value / face.units_per_em;
  int top = 0, bottom = 0;
  for (const QChar c : run.text)
    if (const Glyph* glyph = face.glyph(c.unicode())) {
      top = std::max<int>(top, glyph->top);
      bottom = std::min<int>(bottom, glyph->bottom);
    }
  return {run.x.value, run.baseline.value - top * unit,
          run.x.value + faces.width(run.text, run.face, run.size, resolution).value,
          run.baseline.value - bottom * unit};
}

// How far two rectangles are apart along the axis on which they are furthest apart; 0 where they meet.
double apart(const Rectangle& one, const Rectangle& other) {
  const double across = std::max(other.left - one.right, one.left - other.right);
  const double down = std::max(other.top - one.bottom, one.top - other.bottom);
  return std::max({across, down, 0.0});
}

}  // namespace

std::vector<TypeSize> type_sizes(const Faces& faces, const Drawing& drawing, Resolution resolution) {
  std::vector<TypeSize> sizes;
  for (const TextRun& run : drawing.texts) {
    if (run.text.trimmed().isEmpty()) continue;
    const bool known = std::any_of(sizes.begin(), sizes.end(),
                                   [&](const TypeSize& one) { return one.face == run.face && one.size == run.size; });
    if (known) continue;
    const FineDots x = fine_dots(run.size, resolution) * faces[run.face].x_height;
    const QString said = run.text.trimmed();
    const QString sample = said.size() > kSample ? said.left(kSample - 1) + u'…' : said;
    sizes.push_back({sample, run.face, run.size, x});
  }
  std::stable_sort(sizes.begin(), sizes.end(),
                   [](const TypeSize& one, const TypeSize& other) { return one.size > other.size; });
  return sizes;
}

std::optional<CodeFigures> code_figures(const Faces& faces, const Drawing& drawing, PageSize page) {
  if (drawing.codes.empty()) return std::nullopt;
  const Code& code = drawing.codes.front();
  const Dots side = code.module * code.image.modules;
  const auto d = [](Dots dots) { return static_cast<double>(dots.value); };
  const Rectangle place{d(code.x), d(code.y), d(code.x + side), d(code.y + side)};
  double free = std::min({place.left, place.top, d(page.width) - place.right, d(page.height) - place.bottom});
  for (const Box& box : drawing.boxes)
    free = std::min(free, apart(place, {d(box.x), d(box.y), d(box.x + box.width), d(box.y + box.height)}));
  for (const TextRun& run : drawing.texts) free = std::min(free, apart(place, ink(faces, run, page.resolution)));
  constexpr int kModulesAVersion = symbol::modules(1) - symbol::modules(0);
  return CodeFigures{(code.image.modules - symbol::modules(0)) / kModulesAVersion, code.image.modules, code.module,
                     free / code.module.value};
}

}  // namespace lardiner::paper
