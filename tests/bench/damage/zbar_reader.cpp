// zbar as it comes, as a reader of grey bitmaps.
#include "zbar_reader.h"

#include <zbar.h>

namespace bench {

struct ZbarReader::Scanner {
  zbar::ImageScanner zbar;
};

ZbarReader::ZbarReader() : scanner_(std::make_unique<Scanner>()) {}

ZbarReader::~ZbarReader() = default;

bool ZbarReader::reads(const lardiner::symbol::Grey& grey, const std::string& content) {
  zbar::Image image(static_cast<unsigned>(grey.width), static_cast<unsigned>(grey.height), "Y800",
                    grey.bytes.constData(), static_cast<unsigned long>(grey.bytes.size()));
  scanner_->zbar.scan(image);
  for (const auto* symbol = zbar::zbar_image_first_symbol(image); symbol; symbol = zbar::zbar_symbol_next(symbol))
    if (zbar::zbar_symbol_get_type(symbol) == zbar::ZBAR_QRCODE && zbar::zbar_symbol_get_data(symbol) == content)
      return true;
  return false;
}

}  // namespace bench
