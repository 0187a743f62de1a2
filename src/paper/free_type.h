// FreeType's library and faces as objects that free themselves.
#pragma once

#include <ft2build.h>

#include <memory>
#include <type_traits>
#include FT_FREETYPE_H

namespace lardiner::paper {

struct FreeTypeDone {
  void operator()(FT_Library library) const { FT_Done_FreeType(library); }
  void operator()(FT_Face face) const { FT_Done_Face(face); }
};
using Library = std::unique_ptr<std::remove_pointer_t<FT_Library>, FreeTypeDone>;
using OpenFace = std::unique_ptr<std::remove_pointer_t<FT_Face>, FreeTypeDone>;

}  // namespace lardiner::paper
