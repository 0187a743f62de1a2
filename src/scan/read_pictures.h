// Every code in a picture or a PDF, with more passes for the hard ones, in bounded memory and time.
#pragma once

#include <QByteArray>
#include <QPoint>
#include <QString>
#include <array>
#include <functional>
#include <vector>

#include "problem/error.h"
#include "symbol/read.h"

namespace lardiner::scan {

/// Bounds of one file: beyond them it is refused, or what was found until then is given with `stopped` set.
struct Bounds {
  qsizetype most_bytes = 64 * 1024 * 1024;
  qint64 most_pixels = 100'000'000;  ///< of a picture, or of a page as rastered
  int most_pages = 500;
  int seconds = 20;  ///< for the whole file, beyond which no page or pass is begun
};

struct Code {
  QString text;    ///< the content as text
  QString format;  ///< "QRCode", "EAN-13", …
  int page = 1;    ///< from 1; of a picture 1
  QString pass;    ///< which pass read it: "plain", "stretched", "denoised", "smaller", "larger", "inverted", …
  std::array<QPoint, 4> corners{};  ///< in pixels of the picture, or of the page at 300 dots per inch
};

struct Codes {
  std::vector<Code> codes;  ///< in the order of pages, then of rows from the top, then from the left; each place once
  int pages = 1;
  QString stopped;  ///< why it was not read to its end; empty: it was
};

/// Is told while a file is read, so that what was found is not lost where the reading does not come to its end. Either
/// may be empty.
struct Listener {
  std::function<void(int page, int pages)> begins;  ///< a page of a PDF, from 1
  std::function<void(const Code&)> found;           ///< each code once, in no order
};

/// PNG, JPEG, WebP and PDF, told by their first bytes and never by the name. `name` is used in errors. Errors:
/// Malformed (not one of these, truncated, opens only with a password), Range (beyond the bounds). Nothing found is no
/// error. The bounds do not interrupt a library: what is not trusted is read by read_codes_in_child.
problem::Expected<Codes> read_codes(const QByteArray& bytes, const QString& name, const Bounds& bounds,
                                    const Listener& listener = {});

}  // namespace lardiner::scan
