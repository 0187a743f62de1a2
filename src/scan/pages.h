// The pages of a PDF as grey bitmaps.
#pragma once

#include <memory>

#include "scan/read_pictures.h"

namespace poppler {
class document;
}

namespace lardiner::scan {

constexpr int kPageResolution = 300;  ///< dots per inch; what corners are told in
constexpr int kFineResolution = 600;  ///< where nothing was found

class Pages {
 public:
  /// Opens a PDF and looks at its pages' sizes; nothing is rastered yet. What the PDF library has to say goes nowhere.
  /// Errors: Malformed (damaged, opens only with a password), Range (pages too many or too large). REQUIRES: `bytes`
  /// outlive it.
  static problem::Expected<Pages> open(const QByteArray& bytes, const QString& name, const Bounds& bounds);

  Pages(Pages&& other) noexcept;
  Pages& operator=(Pages&& other) noexcept;
  ~Pages();

  int count() const;

  /// Pixels of a page, from 1, at a resolution; 0 where it has no size.
  qint64 pixels(int page, int resolution) const;

  /// White paper where nothing can be drawn. REQUIRES: 1 <= page <= count(), and its pixels are within the bounds.
  symbol::Grey raster(int page, int resolution) const;

 private:
  explicit Pages(std::unique_ptr<poppler::document> document);

  std::unique_ptr<poppler::document> document_;
};

}  // namespace lardiner::scan
