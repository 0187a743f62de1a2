// PDFs that the tests write by hand: pages with one grey picture each, or without any.
#pragma once

#include <vector>

#include "pictures.h"

namespace lardiner::scan {

struct Page {
  symbol::Grey picture;          ///< fills the page
  double width = 0, height = 0;  ///< in points
};

/// The page on which a picture is shown at so many dots per inch.
inline Page page_of(const symbol::Grey& picture, int resolution) {
  return {picture, 72.0 * picture.width / resolution, 72.0 * picture.height / resolution};
}

inline QByteArray object(int number, const QByteArray& body) {
  return QByteArray::number(number) + " 0 obj\n" + body + "\nendobj\n";
}

inline QByteArray stream(const QByteArray& entries, const QByteArray& bytes) {
  return "<< " + entries + " /Length " + QByteArray::number(bytes.size()) + " >>\nstream\n" + bytes + "\nendstream";
}

inline QByteArray with_table(const std::vector<QByteArray>& objects, const QByteArray& trailer) {
  QByteArray file = "%PDF-1.4\n", table;
  for (const QByteArray& one : objects) {
    table += QByteArray::number(file.size()).rightJustified(10, '0') + " 00000 n \n";
    file += one;
  }
  const QByteArray size = QByteArray::number(qsizetype(objects.size()) + 1);
  return file + "xref\n0 " + size + "\n0000000000 65535 f \n" + table + "trailer\n<< /Size " + size + " /Root 1 0 R " +
         trailer + " >>\nstartxref\n" + QByteArray::number(file.size()) + "\n%%EOF\n";
}

inline QByteArray pdf(const std::vector<Page>& pages, const QByteArray& trailer = {}) {
  std::vector<QByteArray> objects{object(1, "<< /Type /Catalog /Pages 2 0 R >>"), {}};
  QByteArray kids;
  for (const Page& page : pages) {
    const int first = int(objects.size()) + 1;
    const QByteArray width = QByteArray::number(page.width), height = QByteArray::number(page.height);
    kids += QByteArray::number(first) + " 0 R ";
    objects.push_back(object(first, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 " + width + " " + height +
                                        "] /Contents " + QByteArray::number(first + 1) +
                                        " 0 R /Resources << /XObject << /P " + QByteArray::number(first + 2) +
                                        " 0 R >> >> >>"));
    objects.push_back(object(first + 1, stream("", width + " 0 0 " + height + " 0 0 cm /P Do")));
    objects.push_back(object(
        first + 2,
        stream("/Type /XObject /Subtype /Image /ColorSpace /DeviceGray /BitsPerComponent 8 /Width " +
                   QByteArray::number(page.picture.width) + " /Height " + QByteArray::number(page.picture.height),
               page.picture.bytes)));
  }
  objects[1] =
      object(2, "<< /Type /Pages /Count " + QByteArray::number(qsizetype(pages.size())) + " /Kids [" + kids + "] >>");
  return with_table(objects, trailer);
}

/// So many pages without content, all of this size in points.
inline QByteArray empty_pages(int count, const QByteArray& width, const QByteArray& height) {
  std::vector<QByteArray> objects{object(1, "<< /Type /Catalog /Pages 2 0 R >>"), {}};
  QByteArray kids;
  for (int page = 0; page < count; ++page) {
    kids += QByteArray::number(page + 3) + " 0 R ";
    objects.push_back(object(page + 3, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 " + width + " " + height + "] >>"));
  }
  objects[1] = object(2, "<< /Type /Pages /Count " + QByteArray::number(count) + " /Kids [" + kids + "] >>");
  return with_table(objects, {});
}

}  // namespace lardiner::scan
