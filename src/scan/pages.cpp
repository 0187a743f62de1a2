// The pages of a PDF as grey bitmaps.
#include "scan/pages.h"

#include <poppler/cpp/poppler-document.h>
#include <poppler/cpp/poppler-page-renderer.h>
#include <poppler/cpp/poppler-page.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "scan/pixels.h"
#include "scan/refusals.h"

namespace lardiner::scan {

namespace {

constexpr double kPointsAnInch = 72;  // ISO 32000-1, 8.3.2.3

void say_nothing(const std::string&, void*) {}

double dots(double points, int resolution) { return std::ceil(std::abs(points) / kPointsAnInch * resolution); }

symbol::Grey white_page() { return {1, 1, 1, QByteArray(1, '\xff')}; }

symbol::Grey copied(const poppler::image& image) {
  symbol::Grey out = blank(image.width(), image.height());
  for (int y = 0; y < image.height(); ++y)
    std::copy_n(reinterpret_cast<const quint8*>(image.const_data()) + qsizetype{y} * image.bytes_per_row(),
                image.width(), row(out, y));
  return out;
}

}  // namespace

Pages::Pages(std::unique_ptr<poppler::document> document) : document_(std::move(document)) {}
Pages::Pages(Pages&& other) noexcept = default;
Pages& Pages::operator=(Pages&& other) noexcept = default;
Pages::~Pages() = default;

problem::Expected<Pages> Pages::open(const QByteArray& bytes, const QString& name, const Bounds& bounds) {
  static const bool kSilent = (poppler::set_debug_error_function(say_nothing, nullptr), true);
  Q_UNUSED(kSilent);
  if (bytes.size() > std::numeric_limits<int>::max())
    return refused_as_long(name, bytes.size(), std::numeric_limits<int>::max());
  Pages pages(std::unique_ptr<poppler::document>(
      poppler::document::load_from_raw_data(bytes.constData(), static_cast<int>(bytes.size()))));
  if (!pages.document_) return refused_as_damaged(name);
  if (pages.document_->is_locked()) return refused_as_locked(name);
  if (pages.count() <= 0) return refused_as_damaged(name);
  if (pages.count() > bounds.most_pages) return refused_as_many_pages(name, pages.count(), bounds.most_pages);
  for (int page = 1; page <= pages.count(); ++page) {
    const qint64 pixels = pages.pixels(page, kPageResolution);
    if (pixels <= 0 || pixels > bounds.most_pixels) return refused_as_large_page(name, page, bounds.most_pixels);
  }
  return pages;
}

int Pages::count() const { return document_->pages(); }

qint64 Pages::pixels(int page, int resolution) const {
  const std::unique_ptr<poppler::page> one(document_->create_page(page - 1));
  if (!one) return 0;
  const poppler::rectf rect = one->page_rect();
  const double pixels = dots(rect.width(), resolution) * dots(rect.height(), resolution);
  constexpr double kMost = 1e15;
  return std::isfinite(pixels) ? static_cast<qint64>(std::min(pixels, kMost)) : static_cast<qint64>(kMost);
}

symbol::Grey Pages::raster(int page, int resolution) const {
  const std::unique_ptr<poppler::page> one(document_->create_page(page - 1));
  if (!one) return white_page();
  poppler::page_renderer renderer;
  renderer.set_image_format(poppler::image::format_gray8);
  renderer.set_render_hints(poppler::page_renderer::antialiasing | poppler::page_renderer::text_antialiasing);
  const poppler::image image = renderer.render_page(one.get(), resolution, resolution);
  return image.is_valid() && image.width() > 0 && image.height() > 0 ? copied(image) : white_page();
}

}  // namespace lardiner::scan
