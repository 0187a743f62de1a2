// The outlines of glyphs as SVG path data, read with FreeType.
#include "paper/outlines.h"

#include <QFile>
#include <map>

#include "paper/free_type.h"
#include FT_OUTLINE_H

namespace lardiner::paper {

namespace {

// FreeType's y runs upwards, that of a drawing downwards.
void point(QByteArray& path, const FT_Vector* at) {
  path += QByteArray::number(static_cast<qlonglong>(at->x)) + ' ' + QByteArray::number(static_cast<qlonglong>(-at->y));
}

QByteArray& path_of(void* user) { return *static_cast<QByteArray*>(user); }

int move_to(const FT_Vector* to, void* user) {
  QByteArray& path = path_of(user);
  if (!path.isEmpty()) path += 'Z';
  path += 'M';
  point(path, to);
  return 0;
}

int line_to(const FT_Vector* to, void* user) {
  path_of(user) += 'L';
  point(path_of(user), to);
  return 0;
}

int conic_to(const FT_Vector* control, const FT_Vector* to, void* user) {
  path_of(user) += 'Q';
  point(path_of(user), control);
  path_of(user) += ' ';
  point(path_of(user), to);
  return 0;
}

int cubic_to(const FT_Vector* first, const FT_Vector* second, const FT_Vector* to, void* user) {
  path_of(user) += 'C';
  point(path_of(user), first);
  path_of(user) += ' ';
  point(path_of(user), second);
  path_of(user) += ' ';
  point(path_of(user), to);
  return 0;
}

QByteArray path_of_outline(FT_Outline& outline) {
  static const FT_Outline_Funcs functions = {move_to, line_to, conic_to, cubic_to, 0, 0};
  QByteArray path;
  FT_Outline_Decompose(&outline, &functions, &path);
  if (!path.isEmpty()) path += 'Z';
  return path;
}

}  // namespace

class Outlines::OpenFaces {
 public:
  OpenFaces() {
    FT_Library library = nullptr;
    if (FT_Init_FreeType(&library) == 0) library_.reset(library);
  }

  /// nullptr: it cannot be opened.
  FT_Face open(const QString& file) {
    OpenFace& known = faces_[file];
    FT_Face face = nullptr;
    if (!known && library_ && FT_New_Face(library_.get(), QFile::encodeName(file).constData(), 0, &face) == 0)
      known.reset(face);
    return known.get();
  }

 private:
  Library library_;
  std::map<QString, OpenFace> faces_;
};

Outlines::Outlines(const Faces& faces) : faces_(faces), open_(std::make_unique<OpenFaces>()) {}
Outlines::~Outlines() = default;

problem::Expected<QByteArray> Outlines::path(FaceId id, char32_t character) {
  const Face& face = faces_[id];
  const Glyph* glyph = face.glyph(character);
  if (!glyph)
    return tl::unexpected(problem::Error{problem::Code::NoGlyph,
                                         QStringLiteral("U+%1 is not in the face %2")
                                             .arg(static_cast<uint>(character), 4, 16, QLatin1Char('0'))
                                             .arg(face.file),
                                         {},
                                         QStringLiteral("this is a fault of Lardiner's layout: please report it")});
  FT_Face open = open_->open(face.file);
  if (!open || FT_Load_Glyph(open, glyph->id, FT_LOAD_NO_SCALE) != 0)
    return tl::unexpected(problem::Error{problem::Code::Machine,
                                         QStringLiteral("the face %1 cannot be read").arg(face.file),
                                         {},
                                         QStringLiteral("install Lardiner again: its fonts folder belongs to it")});
  return path_of_outline(open->glyph->outline);
}

}  // namespace lardiner::paper
