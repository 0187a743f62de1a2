// Writes labels down as plain drawing steps, so that other programs can draw exactly the same.
#include "content.h"

namespace bench {

using namespace lardiner::paper;

namespace {

class Scribe {
 public:
  explicit Scribe(Resolution resolution) : resolution_(resolution) {}

  void page(PageSize size) { step("page", {points_of(size.width), points_of(size.height)}); }

  void draw(const Drawing& drawing, const QByteArray& uri) {
    for (const Box& box : drawing.boxes)
      step("box", {points_of(box.x), points_of(box.y), points_of(box.width), points_of(box.height), ink(box.ink)});
    for (const Code& code : drawing.codes)
      step("code", {points_of(code.x), points_of(code.y), points_of(code.module * code.image.modules),
                    QByteArray::number(code.image.modules), code.image.rows.toHex(), uri});
    for (const TextRun& run : drawing.texts)
      step("text", {weight(run.face), QByteArray::number(run.size.value), points_of(run.x), points_of(run.baseline),
                    ink(run.ink), run.text.toUtf8()});
  }

  QByteArray end() {
    step("end", {});
    return out_;
  }

 private:
  QByteArray points_of(FineDots d) const { return QByteArray::number(points(d, resolution_).value, 'f', 4); }
  QByteArray points_of(Dots d) const { return points_of(fine_dots(d)); }
  static QByteArray ink(Ink ink) { return ink == Ink::Black ? "black" : "white"; }
  // The programs that draw it have the Latin family alone: another face stops them.
  static QByteArray weight(FaceId face) {
    if (face == FaceId::AtkinsonRegular) return "regular";
    if (face == FaceId::AtkinsonBold) return "bold";
    return face == FaceId::AtkinsonExtraBold ? "extra-bold" : "not-latin";
  }
  void step(const char* verb, const QByteArrayList& words) {
    out_ += verb + (words.isEmpty() ? "" : ' ' + words.join(' ')) + '\n';
  }

  Resolution resolution_;
  QByteArray out_;
};

}  // namespace

QByteArray written_down(const LabelLayout& layout, const lardiner::facts::ContainerFacts& container,
                        const CodeImage& code, const Faces& faces) {
  Scribe scribe(layout.size.resolution);
  scribe.page(layout.size);
  scribe.draw(layout.shared, {});
  scribe.draw(own_drawing(layout, container, code, faces), container.uri);
  return scribe.end();
}

}  // namespace bench
