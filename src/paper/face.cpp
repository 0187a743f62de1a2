// The shipped faces: looking glyphs up and adding widths.
#include "paper/face.h"

#include <algorithm>

#include "paper/face_reader.h"

namespace lardiner::paper {

namespace {

constexpr std::array kFileOf = {"AtkinsonHyperlegibleNext-Regular.ttf", "AtkinsonHyperlegibleNext-Bold.ttf",
                                "AtkinsonHyperlegibleNext-ExtraBold.ttf"};
static_assert(kFileOf.size() == kWeights.size());

}  // namespace

const Glyph* Face::glyph(char32_t character) const {
  if (character > 0xFFFF || block_of_[character >> 8] == kNoBlock) return nullptr;
  const Glyph& glyph = blocks_[block_of_[character >> 8]][character & 0xFF];
  return glyph.id == 0 ? nullptr : &glyph;
}

std::vector<std::uint16_t> Face::parts(std::uint16_t glyph) const {
  std::vector<std::uint16_t> found;
  std::vector<std::uint16_t> waiting = {glyph};
  while (!waiting.empty()) {
    const std::uint16_t whole = waiting.back();
    waiting.pop_back();
    auto part = std::lower_bound(parts_.begin(), parts_.end(), Part{whole, 0});
    for (; part != parts_.end() && part->whole == whole; ++part) {
      if (std::find(found.begin(), found.end(), part->part) != found.end()) continue;
      found.push_back(part->part);
      waiting.push_back(part->part);
    }
  }
  return found;
}

std::vector<char32_t> Face::characters() const {
  std::vector<char32_t> all;
  for (char32_t c = 0; c <= 0xFFFF; ++c)
    if (glyph(c)) all.push_back(c);
  return all;
}

problem::Expected<Faces> Faces::load(const QString& folder) {
  Faces faces;
  for (std::size_t n = 0; n < kFileOf.size(); ++n) {
    problem::Expected<Face> face = FaceReader::read(folder + u'/' + QLatin1String(kFileOf[n]));
    if (!face) return tl::unexpected(face.error());
    faces.faces_[n] = std::move(*face);
  }
  return faces;
}

FineDots Faces::width(QStringView text, Weight weight, Points size, Resolution resolution) const {
  const Face& face = (*this)[weight];
  int units = 0;
  for (QChar c : text) {
    const Glyph* glyph = is_invisible(c.unicode()) ? nullptr : face.glyph(c.unicode());
    if (glyph) units += glyph->advance;
  }
  return fine_dots(size, resolution) * (static_cast<double>(units) / face.units_per_em);
}

}  // namespace lardiner::paper
