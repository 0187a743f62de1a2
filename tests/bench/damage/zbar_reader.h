// zbar as it comes, as a reader of grey bitmaps. (Apart, since headers of zbar and ZXing-C++ do not go together.)
#pragma once

#include <memory>
#include <string>

#include "symbol/read.h"

namespace bench {

class ZbarReader {
 public:
  ZbarReader();
  ~ZbarReader();

  /// Whether it finds a QR code of just this content.
  bool reads(const lardiner::symbol::Grey& grey, const std::string& content);

 private:
  struct Scanner;
  std::unique_ptr<Scanner> scanner_;
};

}  // namespace bench
