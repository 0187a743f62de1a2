// The shipped faces: what they can print, and how wide and high it is.
#pragma once

#include <QByteArray>
#include <QString>
#include <QStringView>
#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "paper/units.h"
#include "problem/error.h"

namespace lardiner::paper {

enum class Weight : std::uint8_t { Regular, Bold, ExtraBold };
inline constexpr std::array kWeights = {Weight::Regular, Weight::Bold, Weight::ExtraBold};

/// In the order in which they are tried (`spans`): Atkinson Hyperlegible Next for Latin; Noto Sans for the rest of
/// Latin (Vietnamese), Greek and Cyrillic; Noto Sans SC for Chinese.
enum class Family : std::uint8_t { Atkinson, NotoSans, NotoSansSc };
inline constexpr std::array kFamilies = {Family::Atkinson, Family::NotoSans, Family::NotoSansSc};

/// One shipped face, by which drawings name it.
enum class FaceId : std::uint8_t {
  AtkinsonRegular,
  AtkinsonBold,
  AtkinsonExtraBold,
  NotoRegular,
  NotoBold,
  NotoExtraBold,
  ScRegular,
  ScBold
};
inline constexpr std::array kFaces = {FaceId::AtkinsonRegular, FaceId::AtkinsonBold, FaceId::AtkinsonExtraBold,
                                      FaceId::NotoRegular,     FaceId::NotoBold,     FaceId::NotoExtraBold,
                                      FaceId::ScRegular,       FaceId::ScBold};

constexpr std::size_t index(FaceId face) { return static_cast<std::size_t>(face); }

/// The face of a family in a weight; Chinese has no ExtraBold: strokes that dense close up on a printer of 203 dpi.
constexpr FaceId face_of(Family family, Weight weight) {
  if (family == Family::NotoSansSc) return weight == Weight::Regular ? FaceId::ScRegular : FaceId::ScBold;
  return kFaces[static_cast<std::size_t>(family) * kWeights.size() + static_cast<std::size_t>(weight)];
}

constexpr Family family_of(FaceId face) { return kFamilies[index(face) / kWeights.size()]; }

/// One glyph in the face's own units (`Face::units_per_em` to the em, y upwards from the baseline).
struct Glyph {
  std::uint16_t id = 0;  ///< 0 is "no glyph"
  std::uint16_t advance = 0;
  std::int16_t bottom = 0;  ///< of the ink
  std::int16_t top = 0;
};

/// One face, read once and never changed: any number of threads may read it.
class Face {
 public:
  Face() { block_of_.fill(kNoBlock); }

  /// The glyph of a character, or nullptr where the face has none.
  const Glyph* glyph(char32_t character) const;
  /// Every glyph that is drawn as a part of this one, parts of parts too; empty for a simple glyph.
  std::vector<std::uint16_t> parts(std::uint16_t glyph) const;
  /// Every character that has a glyph, in order.
  std::vector<char32_t> characters() const;

  QString file;  ///< path of the .ttf
  QByteArray postscript_name;
  int units_per_em = 1;
  // Heights as parts of an em: multiply by the size.
  double x_height = 0;
  double cap_height = 0;
  double ascent = 0;   ///< above the baseline
  double descent = 0;  ///< below it, positive
 private:
  friend class FaceReader;
  struct Part {
    std::uint16_t whole, part;
    auto operator<=>(const Part&) const = default;
  };
  static constexpr std::uint8_t kNoBlock = 0xFF;
  std::array<std::uint8_t, 256> block_of_{};    // by the high byte of a character of the basic plane
  std::vector<std::array<Glyph, 256>> blocks_;  // by its low byte
  std::vector<Part> parts_;                     // direct parts of the composite glyphs, sorted
};

/// All shipped faces. Copies share them; any number of threads may use them.
class Faces {
 public:
  /// Reads the Latin family from `folder`; the others are read when a text first needs them. Errors: Machine, naming
  /// the file that is missing or is no usable face.
  static problem::Expected<Faces> load(const QString& folder);

  /// REQUIRES: a text that came through `printable` needs it, or it is of the Latin family; else, where its file cannot
  /// be read, it is a face without glyphs.
  const Face& operator[](FaceId face) const;

  /// The text as it will be printed: composed (Unicode NFC). Refused with NoGlyph, naming the first such character as
  /// U+0041 and its place in the text: a character that no family has in every weight, a combining mark that does not
  /// compose, a script that needs shaping or runs from right to left (there is no shaping here). Refused with Machine:
  /// the text needs a family that cannot be read. REQUIRES of everything below and of all that is drawn: text that came
  /// through here.
  problem::Expected<QString> printable(const QString& text) const;

  /// Whether some family can print the character by itself, in every weight.
  bool prints(char32_t character) const;

  /// Whether the family has the character, in every weight; false where it cannot be read.
  bool has(Family family, char32_t character) const;
  /// How many characters (UTF-16 units) at the start of the text it has so; invisible ones need no glyph.
  qsizetype covered(Family family, QStringView text) const;

  /// The width of a text in one line of one face, without kerning: the faces' advance widths alone place the glyphs,
  /// so that what is measured is what is printed. Invisible controls (`is_invisible`) have no width.
  FineDots width(QStringView text, FaceId face, Points size, Resolution resolution) const;

  /// The least x-height of a text in the weight, in ems: that of the Latin family, which is the smallest of all (Noto
  /// Sans is higher). Regulation (EU) 1169/2011 and 21 CFR 101.2 measure Latin letters and name no height of Chinese
  /// characters; an ideograph of this size is higher than a capital.
  double least_x_height(Weight weight) const { return (*this)[face_of(Family::Atkinson, weight)].x_height; }

 private:
  struct Shelf;
  Faces() = default;
  const std::optional<problem::Error>& fault(Family family) const;
  std::shared_ptr<Shelf> shelf_;
};

/// Soft hyphen, zero-width space, word joiner: they guide line breaking and are never drawn themselves.
constexpr bool is_invisible(char16_t c) { return c == 0x00AD || c == 0x200B || c == 0x2060; }

}  // namespace lardiner::paper
