// The shipped faces: reading them when needed, looking glyphs up and adding widths.
#include "paper/face.h"

#include <algorithm>
#include <bitset>
#include <mutex>

#include "paper/face_reader.h"

namespace lardiner::paper {

namespace {

constexpr std::array kFileOf = {"AtkinsonHyperlegibleNext-Regular.ttf",
                                "AtkinsonHyperlegibleNext-Bold.ttf",
                                "AtkinsonHyperlegibleNext-ExtraBold.ttf",
                                "NotoSans-Regular.ttf",
                                "NotoSans-Bold.ttf",
                                "NotoSans-ExtraBold.ttf",
                                "NotoSansSC-Regular.ttf",
                                "NotoSansSC-Bold.ttf"};
static_assert(kFileOf.size() == kFaces.size());

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
  for (char32_t block = 0; block < block_of_.size(); ++block) {
    if (block_of_[block] == kNoBlock) continue;
    for (char32_t c = block << 8; c < (block + 1) << 8; ++c)
      if (glyph(c)) all.push_back(c);
  }
  return all;
}

// The faces, each family read at most once.
struct Faces::Shelf {
  explicit Shelf(const QString& from) : folder(from) {}

  // Reads the family at the first call; all later ones find it there, on any thread.
  const std::optional<problem::Error>& read(Family family) {
    const auto place = static_cast<std::size_t>(family);
    std::call_once(once[place], [&] {
      for (FaceId id : kFaces) {
        if (family_of(id) != family || faults[place]) continue;
        problem::Expected<Face> face = FaceReader::read(folder + u'/' + QLatin1String(kFileOf[index(id)]));
        if (face)
          faces[index(id)] = std::move(*face);
        else
          faults[place] = face.error();
      }
      if (!faults[place]) cover(family);
    });
    return faults[place];
  }

  void cover(Family family) {
    for (char32_t c : faces[index(face_of(family, Weight::Regular))].characters())
      covered[static_cast<std::size_t>(family)][c] = std::all_of(kWeights.begin(), kWeights.end(), [&](Weight weight) {
        return faces[index(face_of(family, weight))].glyph(c) != nullptr;
      });
  }

  QString folder;
  std::array<Face, kFaces.size()> faces;
  std::array<std::bitset<0x10000>, kFamilies.size()> covered;  // the characters that a family has in every weight
  std::array<std::once_flag, kFamilies.size()> once;
  std::array<std::optional<problem::Error>, kFamilies.size()> faults;
};

problem::Expected<Faces> Faces::load(const QString& folder) {
  Faces faces;
  faces.shelf_ = std::make_shared<Shelf>(folder);
  if (const auto& fault = faces.shelf_->read(Family::Atkinson)) return tl::unexpected(*fault);
  return faces;
}

const std::optional<problem::Error>& Faces::fault(Family family) const { return shelf_->read(family); }

const Face& Faces::operator[](FaceId face) const {
  if (face > FaceId::AtkinsonExtraBold) shelf_->read(family_of(face));  // the Latin family was read by `load`
  return shelf_->faces[index(face)];
}

bool Faces::has(Family family, char32_t character) const {
  shelf_->read(family);
  return character <= 0xFFFF && shelf_->covered[static_cast<std::size_t>(family)][character];
}

qsizetype Faces::covered(Family family, QStringView text) const {
  if (family != Family::Atkinson) shelf_->read(family);
  const auto& has = shelf_->covered[static_cast<std::size_t>(family)];
  const auto* first =
      std::find_if(text.begin(), text.end(), [&](QChar c) { return !has[c.unicode()] && !is_invisible(c.unicode()); });
  return first - text.begin();
}

FineDots Faces::width(QStringView text, FaceId id, Points size, Resolution resolution) const {
  const Face& face = (*this)[id];
  int units = 0;
  for (QChar c : text) {
    const Glyph* glyph = is_invisible(c.unicode()) ? nullptr : face.glyph(c.unicode());
    if (glyph) units += glyph->advance;
  }
  return fine_dots(size, resolution) * (static_cast<double>(units) / face.units_per_em);
}

}  // namespace lardiner::paper
