// Writes drawings as SVG (SVG 2): rectangles, codes and glyphs in printer dots.
#include "paper/svg.h"

namespace lardiner::paper {

namespace {

QByteArray number(double value) {
  QByteArray text = QByteArray::number(value, 'f', 3);
  while (text.endsWith('0')) text.chop(1);
  if (text.endsWith('.')) text.chop(1);
  return text == "-0" ? QByteArray("0") : text;
}

QByteArray number(Dots dots) { return QByteArray::number(dots.value); }

const char* colour(Ink ink) { return ink == Ink::Black ? "#000" : "#fff"; }

QByteArray glyph_name(FaceId face, char32_t character) {
  return "g" + QByteArray::number(static_cast<int>(face)) + '-' + QByteArray::number(static_cast<uint>(character), 16);
}

QByteArray rectangle(const Box& box) {
  return "<path fill=\"" + QByteArray(colour(box.ink)) + "\" d=\"M" + number(box.x) + ' ' + number(box.y) + 'h' +
         number(box.width) + 'v' + number(box.height) + "h-" + number(box.width) + "z\"/>";
}

// One path of all dark modules, a rectangle for each run of them in a row.
QByteArray modules(const Code& code) {
  QByteArray path;
  const int side = code.image.modules;
  for (int y = 0; y < side; ++y)
    for (int x = 0; x < side; ++x) {
      if (!code.image.dark(x, y)) continue;
      const int from = x;
      while (x + 1 < side && code.image.dark(x + 1, y)) ++x;
      const QByteArray width = QByteArray::number(x + 1 - from);
      path += 'M' + QByteArray::number(from) + ' ' + QByteArray::number(y) + 'h' + width + "v1h-" + width + 'z';
    }
  return "<path transform=\"translate(" + number(code.x) + ' ' + number(code.y) + ") scale(" + number(code.module) +
         ")\" d=\"" + path + "\"/>";
}

}  // namespace

QByteArray SvgWriter::group(const Drawing& drawing, Resolution resolution) {
  QByteArray out = "<g shape-rendering=\"crispEdges\">";
  for (const Box& box : drawing.boxes) out += rectangle(box);
  for (const Code& code : drawing.codes) out += modules(code);
  out += "</g><g>";
  for (const TextRun& run : drawing.texts) add(out, run, resolution);
  return out + "</g>\n";
}

// Each glyph at its advance, in the units of its face.
void SvgWriter::add(QByteArray& out, const TextRun& run, Resolution resolution) {
  const Face& face = faces_[run.face];
  const double unit = fine_dots(run.size, resolution).value / face.units_per_em;
  out += "<g fill=\"" + QByteArray(colour(run.ink)) + "\" transform=\"translate(" + number(run.x.value) + ' ' +
         number(run.baseline.value) + ") scale(" + QByteArray::number(unit, 'f', 6) + ")\">";
  int advance = 0;
  for (const char32_t c : run.text.toUcs4()) {
    if (c <= 0xFFFF && is_invisible(static_cast<char16_t>(c))) continue;
    used_.emplace(run.face, c);
    out += "<use href=\"#" + glyph_name(run.face, c) + "\" x=\"" + QByteArray::number(advance) + "\"/>";
    const Glyph* glyph = face.glyph(c);
    if (glyph) advance += glyph->advance;
  }
  out += "</g>";
}

problem::Expected<QByteArray> SvgWriter::definitions() {
  QByteArray out = "<defs>";
  for (const auto& [face, character] : used_) {
    const auto path = outlines_.path(face, character);
    if (!path) return tl::unexpected(path.error());
    out += "<path id=\"" + glyph_name(face, character) + "\" d=\"" + *path + "\"/>";
  }
  return out + "</defs>\n";
}

QByteArray svg_tag(PageSize size, const QString& spoken) {
  const auto length = [&](Dots dots) { return number(millimetres(fine_dots(dots), size.resolution).value) + "mm"; };
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-label=\"" + spoken.toHtmlEscaped().toUtf8() +
         "\" width=\"" + length(size.width) + "\" height=\"" + length(size.height) + "\" viewBox=\"0 0 " +
         number(size.width) + ' ' + number(size.height) + "\">";
}

problem::Expected<QByteArray> svg(const Faces& faces, const Drawing& drawing, PageSize size, const QString& spoken) {
  SvgWriter writer(faces);
  const QByteArray group = writer.group(drawing, size.resolution);
  const auto definitions = writer.definitions();
  if (!definitions) return tl::unexpected(definitions.error());
  const QByteArray paper =
      "<rect width=\"" + number(size.width) + "\" height=\"" + number(size.height) + "\" fill=\"#fff\"/>";
  return svg_tag(size, spoken) + *definitions + paper + group + "</svg>\n";
}

}  // namespace lardiner::paper
