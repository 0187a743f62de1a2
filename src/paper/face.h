// The shipped faces: what they can print, and how wide and high it is.
#pragma once

#include <QByteArray>
#include <QString>
#include <QStringView>
#include <array>
#include <cstdint>
#include <vector>

#include "paper/units.h"
#include "problem/error.h"

namespace lardiner::paper {

enum class Weight { Regular, Bold, ExtraBold };
inline constexpr std::array kWeights = {Weight::Regular, Weight::Bold, Weight::ExtraBold};

/// One glyph in the face's own units (`Face::units_per_em` to the em, y upwards from the baseline).
struct Glyph {
  std::uint16_t id = 0;  ///< 0 is "no glyph"
  std::uint16_t advance = 0;
  std::int16_t bottom = 0;  ///< of the ink
  std::int16_t top = 0;
};

/// One face of the family, read once and never changed: any number of threads may read it.
class Face {
 public:
  /// The glyph of a character, or nullptr where the face has none.
  const Glyph* glyph(char32_t character) const;
  /// Every glyph that is drawn as a part of this one, parts of parts too; empty for a simple glyph.
  std::vector<std::uint16_t> parts(std::uint16_t glyph) const;
  /// Every character that has a glyph, in order.
  std::vector<char32_t> characters() const;

  QString file;  ///< path of the .ttf
  QByteArray postscript_name;
  int units_per_em = 0;
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

class Faces {
 public:
  /// Reads the family from `folder`. Errors: Machine, naming the file that is missing or is no usable face.
  static problem::Expected<Faces> load(const QString& folder);

  const Face& operator[](Weight weight) const { return faces_[static_cast<std::size_t>(weight)]; }

  /// The text as it will be printed: composed (Unicode NFC). Refused with NoGlyph, naming the first such character as
  /// U+0041 and its place in the text: a character that one of the faces lacks, a combining mark that does not compose,
  /// a script that needs shaping or runs from right to left (there is no shaping here). REQUIRES of everything below
  /// and of all that is drawn: text that came through here.
  problem::Expected<QString> printable(const QString& text) const;

  /// Whether every face can print the character by itself.
  bool prints(char32_t character) const;

  /// The width of a text in one line, without kerning: libharu places glyphs by their advance widths alone, so that
  /// what is measured is what is printed. Invisible controls (`is_invisible`) have no width.
  FineDots width(QStringView text, Weight weight, Points size, Resolution resolution) const;

 private:
  std::array<Face, 3> faces_;
};

/// Soft hyphen, zero-width space, word joiner: they guide line breaking and are never drawn themselves.
constexpr bool is_invisible(char16_t c) { return c == 0x00AD || c == 0x200B || c == 0x2060; }

}  // namespace lardiner::paper
