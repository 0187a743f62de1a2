// Every code in a picture or a PDF, with more passes for the hard ones, in bounded memory and time.
#include "scan/read_pictures.h"

#include <algorithm>
#include <optional>

#include "scan/deadline.h"
#include "scan/decode_picture.h"
#include "scan/file_kind.h"
#include "scan/pages.h"
#include "scan/passes.h"
#include "scan/refusals.h"

namespace lardiner::scan {

namespace {

QString out_of_time(const Bounds& bounds) { return QStringLiteral("%1 seconds were not enough").arg(bounds.seconds); }

// Tells a listener of each code once, however the list grows.
class Telling {
 public:
  explicit Telling(const Listener& listener) : listener_(listener) {}

  void begins(int page, int pages) const {
    if (listener_.begins) listener_.begins(page, pages);
  }
  void found(const std::vector<Code>& codes) {
    for (; told_ < codes.size(); ++told_)
      if (listener_.found) listener_.found(codes[told_]);
  }

 private:
  const Listener& listener_;
  size_t told_ = 0;
};

problem::Expected<Codes> read_picture(const QByteArray& bytes, const QString& name, const Bounds& bounds,
                                      Telling telling) {
  const Deadline deadline(bounds.seconds);
  const auto grey = decode_picture(bytes, name, bounds);
  if (!grey) return tl::unexpected(grey.error());
  Codes all{read_plainly(*grey), 1, {}};
  telling.found(all.codes);
  read_harder(*grey, all.codes, deadline);
  telling.found(all.codes);
  if (deadline.passed()) all.stopped = out_of_time(bounds);
  put_in_order(all.codes);
  return all;
}

// One PDF: first every page plainly, so that a hard page keeps no time from the others; then what is left.
class Reading {
 public:
  Reading(const Pages& pages, const Bounds& bounds, const Telling& telling)
      : pages_(pages), bounds_(bounds), deadline_(bounds.seconds), telling_(telling) {
    all_.pages = pages.count();
  }

  Codes read() {
    std::vector<int> left;
    for (int page = 1; page <= pages_.count() && in_time(page); ++page)
      if (read_page(page)) left.push_back(page);
    const bool none = all_.codes.empty();
    for (int page = 1; page <= pages_.count() && all_.stopped.isEmpty(); ++page)
      if ((none || std::binary_search(left.begin(), left.end(), page)) && in_time(page)) read_page_harder(page);
    put_in_order(all_.codes);
    return std::move(all_);
  }

 private:
  bool in_time(int page) {
    if (deadline_.passed()) all_.stopped = out_of_time(bounds_) + QStringLiteral(" beyond page %1").arg(page - 1);
    if (all_.stopped.isEmpty()) telling_.begins(page, all_.pages);
    return all_.stopped.isEmpty();
  }

  void add_all(std::vector<Code> codes, int page, int shrink) {
    for (Code& code : codes) {
      code.page = page;
      for (QPoint& corner : code.corners) corner /= shrink;
      add(all_.codes, code);
    }
    telling_.found(all_.codes);
  }

  // Whether something that looks like a code is left there.
  bool read_page(int page) {
    const symbol::Grey grey = pages_.raster(page, kPageResolution);
    const std::vector<Code> codes = read_plainly(grey);
    add_all(codes, page, 1);
    return finders_left(grey, codes);
  }

  void read_page_harder(int page) {
    const symbol::Grey grey = pages_.raster(page, kPageResolution);
    if (is_blank(grey)) return;
    read_page_finely(page);
    std::vector<Code> codes;
    std::copy_if(all_.codes.begin(), all_.codes.end(), std::back_inserter(codes),
                 [&](const Code& code) { return code.page == page; });
    for (Code& code : codes) code.page = 1;
    read_harder(grey, codes, deadline_);
    add_all(codes, page, 1);
  }

  void read_page_finely(int page) {
    if (pages_.pixels(page, kFineResolution) > bounds_.most_pixels) return;
    std::vector<Code> codes = read_plainly(pages_.raster(page, kFineResolution));
    for (Code& code : codes) code.pass = QStringLiteral("600 dots per inch");
    add_all(codes, page, kFineResolution / kPageResolution);
  }

  const Pages& pages_;
  const Bounds& bounds_;
  Deadline deadline_;
  Telling telling_;
  Codes all_;
};

problem::Expected<Codes> read_pdf(const QByteArray& bytes, const QString& name, const Bounds& bounds,
                                  const Telling& telling) {
  const auto pages = Pages::open(bytes, name, bounds);
  if (!pages) return tl::unexpected(pages.error());
  return Reading(*pages, bounds, telling).read();
}

}  // namespace

problem::Expected<Codes> read_codes(const QByteArray& bytes, const QString& name, const Bounds& bounds,
                                    const Listener& listener) {
  if (bytes.isEmpty()) return refused_as_empty(name);
  if (bytes.size() > bounds.most_bytes) return refused_as_long(name, bytes.size(), bounds.most_bytes);
  const FileKind kind = kind_of(bytes);
  if (kind == FileKind::Other) return refused_as_unknown(name);
  if (!is_whole(bytes, kind)) return refused_as_cut_short(name);
  const Telling telling(listener);
  return kind == FileKind::Pdf ? read_pdf(bytes, name, bounds, telling) : read_picture(bytes, name, bounds, telling);
}

}  // namespace lardiner::scan
