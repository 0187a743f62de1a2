// Turns a drawing into the operators of a PDF content stream, and notes which characters it needs.
#pragma once

#include <QByteArray>
#include <array>
#include <bitset>
#include <optional>

#include "paper/drawing.h"

namespace lardiner::paper {

/// The characters that a document shows, in each face.
struct UsedCharacters {
  std::array<std::bitset<0x10000>, kFaces.size()> of;
  std::bitset<0x10000>& operator[](FaceId face) { return of[index(face)]; }
  const std::bitset<0x10000>& operator[](FaceId face) const { return of[index(face)]; }
};

/// The names of fonts and forms in the resources that all pages share.
QByteArray font_name(FaceId face);
QByteArray form_name(int form);

/// The operator that turns points into dots.
QByteArray to_dots(Resolution resolution);

class PdfContent {
 public:
  /// REQUIRES: both outlive this.
  PdfContent(const Faces& faces, UsedCharacters& used) : faces_(faces), used_(used) {}

  /// The size of what is drawn next.
  void set_page(PageSize size) { size_ = size; }

  /// The drawing in dots from its page's bottom left, ready to stand in a form, or on a page after `to_dots`.
  /// The result is valid until the next call. Refuses what does not lie on the page and what has no glyph.
  problem::Expected<QByteArray> of(const Drawing& drawing);

 private:
  void add(const Box& box);
  void add(const Code& code);
  void add(const TextRun& run);
  void set_ink(Ink ink);
  void set_font(const TextRun& run);
  void show(const TextRun& run);
  void number(double value);
  void refuse(problem::Code code, const QString& what);
  QString page_text() const;
  bool on_page(Dots x, Dots y, Dots width, Dots height) const;

  const Faces& faces_;
  UsedCharacters& used_;
  PageSize size_;
  QByteArray out_;
  std::optional<problem::Error> fault_;
  std::optional<Ink> ink_;
  std::optional<FaceId> face_;
  double font_size_ = 0;
};

}  // namespace lardiner::paper
