// A text in one weight on one line: how wide and high it is, and the runs that draw it, across families.
#include "paper/one_line.h"

#include "paper/spans.h"

namespace lardiner::paper {

FineDots width(const Faces& faces, QStringView text, Weight weight, Points size, Resolution resolution) {
  FineDots sum;
  for (const Span& span : spans(faces, text))
    sum += faces.width(text.mid(span.start, span.size), face_of(span.family, weight), size, resolution);
  return sum;
}

Reach reach(const Face& face, QChar character) {
  const Glyph* glyph = face.glyph(character.unicode());
  if (!glyph) return {};
  const double em = face.units_per_em;
  return {std::max(0.0, glyph->top / em), std::max(0.0, -glyph->bottom / em)};
}

Reach reach(const Faces& faces, QStringView text, Weight weight) {
  Reach most;
  for (const Span& span : spans(faces, text))
    for (QChar c : text.mid(span.start, span.size)) most = farther(most, reach(faces[face_of(span.family, weight)], c));
  return most;
}

void add_runs(std::vector<TextRun>& to, const Faces& faces, const OneLine& line, Resolution resolution) {
  FineDots x = line.x;
  for (const Span& span : spans(faces, line.text)) {
    const QString text = line.text.mid(span.start, span.size);
    const FaceId face = face_of(span.family, line.weight);
    to.push_back({face, line.size, x, line.baseline, text, line.ink});
    x += faces.width(text, face, line.size, resolution);
  }
}

}  // namespace lardiner::paper
