// Files that are meant to do harm: they state sizes that they have not, or take a library for ever or all memory.
#pragma once

#include <QtEndian>

#include "pdfs.h"

namespace lardiner::scan {

/// CRC of ISO/IEC 15948, annex D.
inline quint32 check_of(const QByteArray& bytes) {
  quint32 check = 0xffffffff;
  for (const char one : bytes) {
    check ^= static_cast<quint8>(one);
    for (int bit = 0; bit < 8; ++bit) check = (check & 1) != 0 ? 0xedb88320u ^ (check >> 1) : check >> 1;
  }
  return ~check;
}

inline QByteArray big_endian(quint32 number) {
  QByteArray four(4, '\0');
  qToBigEndian(number, four.data());
  return four;
}

inline QByteArray chunk(const QByteArray& type, const QByteArray& body) {
  return big_endian(static_cast<quint32>(body.size())) + type + body + big_endian(check_of(type + body));
}

/// A PNG that states a size and holds a few bytes.
inline QByteArray png_of_size(quint32 width, quint32 height,
                              const QByteArray& depth_and_colour = QByteArray("\x08\0", 2)) {
  return "\x89PNG\r\n\x1a\n" +
         chunk("IHDR", big_endian(width) + big_endian(height) + depth_and_colour + QByteArray(3, '\0')) +
         chunk("IDAT", qCompress(QByteArray(1000, '\0')).mid(4)) + chunk("IEND", {});
}

/// A page of so many points a side, whose content is `nest` forms deep: each draws the next `times` over, and the last
/// fills it. `group` stands in each form.
inline QByteArray nested_forms(int side, int nest, int times, const QByteArray& group) {
  const QByteArray box = "[0 0 " + QByteArray::number(side) + " " + QByteArray::number(side) + "]";
  const auto uses = [](int form) { return "/Resources << /XObject << /F " + QByteArray::number(form) + " 0 R >> >>"; };
  std::vector<QByteArray> objects{
      object(1, "<< /Type /Catalog /Pages 2 0 R >>"), object(2, "<< /Type /Pages /Count 1 /Kids [3 0 R] >>"),
      object(3, "<< /Type /Page /Parent 2 0 R /MediaBox " + box + " /Contents 4 0 R " + uses(5) + " >>"),
      object(4, stream("", "/F Do"))};
  for (int form = 5; form < 5 + nest; ++form)
    objects.push_back(object(form, stream("/Type /XObject /Subtype /Form /BBox " + box + " " + group + uses(form + 1),
                                          QByteArray("/F Do ").repeated(times))));
  objects.push_back(object(5 + nest, stream("/Type /XObject /Subtype /Form /BBox " + box, "0 0 9 9 re f")));
  return with_table(objects, {});
}

/// Ten to the twelfth rectangles.
inline QByteArray endless_pdf() { return nested_forms(200, 12, 10, {}); }

/// Sixty bitmaps of 100 million pixels at the same time.
inline QByteArray greedy_pdf() {
  return nested_forms(2399, 60, 1, "/Group << /S /Transparency /I true /CS /DeviceGray >> ");
}

}  // namespace lardiner::scan
