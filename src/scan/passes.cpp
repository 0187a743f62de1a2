// Codes of one bitmap: read as it is, then in ever other ways, as long as it is worth it.
#include "scan/passes.h"

#include <QRect>
#include <algorithm>
#include <cmath>
#include <utility>

#include "scan/finders.h"
#include "scan/pass_list.h"
#include "scan/pixels.h"
#include "scan/shapes.h"

namespace lardiner::scan {

namespace {

constexpr qint64 kMostWork = 40'000'000;  // pixels that passes are made of: with all their filters about a second
constexpr qint64 kSmall = 750'000, kLarge = 3'000'000;  // pixels of the sizes in which a whole picture is read
constexpr double kModule = 6;                           // pixels a module, in which a part is read at the most
constexpr double kPartReach =
    50;  // modules from a finder to the edges of its part: a code of version 6, turned, and its quiet zone

// Where a bitmap was taken from.
struct Origin {
  QPoint corner;
  double step_x = 1, step_y = 1;  // pixels of the picture for one of the bitmap

  QPoint in_picture(QPoint at) const {
    return corner + QPoint(int(std::lround(at.x() * step_x)), int(std::lround(at.y() * step_y)));
  }
};

QRect box(const Code& code) {
  const auto [left, right] =
      std::minmax({code.corners[0].x(), code.corners[1].x(), code.corners[2].x(), code.corners[3].x()});
  const auto [top, low] =
      std::minmax({code.corners[0].y(), code.corners[1].y(), code.corners[2].y(), code.corners[3].y()});
  return QRect(QPoint(left, top), QPoint(right, low));
}

bool same_place(const Code& one, const Code& other) {
  const QRect a = box(one), b = box(other);
  const int reach = std::max({a.width(), a.height(), b.width(), b.height()}) / 2;
  const QPoint apart = a.center() - b.center();
  return std::abs(apart.x()) <= reach && std::abs(apart.y()) <= reach;
}

void add_found(std::vector<Code>& codes, const std::vector<symbol::Found>& found, const Origin& origin,
               const char* pass) {
  for (const symbol::Found& one : found) {
    Code code{one.text, one.format, 1, QString::fromLatin1(pass), {}};
    for (size_t at = 0; at < code.corners.size(); ++at) code.corners[at] = origin.in_picture(one.corners[at]);
    add(codes, code);
  }
}

// The work that is left for one picture.
class Work {
 public:
  explicit Work(const Deadline& deadline) : deadline_(deadline) {}

  /// Whether as many pixels may still be read; they count then.
  bool allows(const symbol::Grey& grey) {
    left_ -= qint64{grey.width} * grey.height;
    return left_ >= 0 && !deadline_.passed();
  }
  bool done() const { return left_ < 0 || deadline_.passed(); }

 private:
  const Deadline& deadline_;
  qint64 left_ = kMostWork;
};

// The first so many passes, until one reads something. The bitmap that a pass makes may have another size.
void try_passes(const symbol::Grey& grey, const Origin& origin, std::vector<Code>& codes, Work& work,
                size_t most = further_passes().size()) {
  const size_t before = codes.size();
  for (const Pass& pass : further_passes()) {
    if (most-- == 0 || codes.size() > before || !work.allows(grey)) return;
    const symbol::Grey made = pass.made(grey);
    Origin from = origin;
    from.step_x *= double(grey.width) / made.width;
    from.step_y *= double(grey.height) / made.height;
    add_found(codes, symbol::read_codes(made, pass.reading), from, pass.name);
  }
}

// The bitmap at no more pixels than `most`; plainly, then by the passes.
void try_whole(const symbol::Grey& grey, qint64 most, std::vector<Code>& codes, Work& work) {
  const double factor = std::min(1.0, std::sqrt(double(most) / (double(grey.width) * grey.height)));
  if (factor == 1) return try_passes(grey, {}, codes, work);
  const symbol::Grey small =
      scaled(grey, std::max(1, int(grey.width * factor)), std::max(1, int(grey.height * factor)));
  const Origin origin{{}, double(grey.width) / small.width, double(grey.height) / small.height};
  if (!work.allows(small)) return;
  add_found(codes, symbol::read_codes(small), origin, "smaller");
  if (codes.empty()) try_passes(small, origin, codes, work);
}

bool is_within(const Finder& finder, const std::vector<Code>& codes) {
  const int reach = int(2 * finder.module);
  return std::any_of(codes.begin(), codes.end(), [&](const Code& code) {
    return box(code).adjusted(-reach, -reach, reach, reach).contains(finder.middle);
  });
}

bool are_near(const Finder& one, const Finder& other, double modules) {
  return (one.middle - other.middle).manhattanLength() < modules * std::max(one.module, other.module);
}

// Whether another finder of about the same size is so near that both may be of one code.
bool has_partner(const Finder& finder, const std::vector<Finder>& all) {
  return std::any_of(all.begin(), all.end(), [&](const Finder& other) {
    const double ratio = other.module / finder.module;
    return other.middle != finder.middle && ratio > 0.6 && ratio < 1.7 && are_near(finder, other, kPartReach);
  });
}

void try_part(const symbol::Grey& grey, const Finder& finder, size_t most_passes, std::vector<Code>& codes,
              Work& work) {
  const int reach = int(std::ceil(kPartReach * finder.module));
  const QRect place = QRect(finder.middle - QPoint(reach, reach), finder.middle + QPoint(reach, reach))
                          .intersected(QRect(0, 0, grey.width, grey.height));
  symbol::Grey part = cut(grey, place);
  if (finder.module > kModule) {
    const double factor = kModule / finder.module;
    part = scaled(part, std::max(1, int(part.width * factor)), std::max(1, int(part.height * factor)));
  }
  if (!work.allows(part)) return;
  const Origin origin{place.topLeft(), double(place.width()) / part.width, double(place.height()) / part.height};
  add_found(codes, symbol::read_codes(part), origin, "part");
  if (!is_within(finder, codes)) try_passes(part, origin, codes, work, most_passes);
}

// Each part around a finder that stands in no code, and not beside one that was tried in vain: a code has three. One
// that stands alone is most likely none.
void try_parts(const symbol::Grey& grey, std::vector<Code>& codes, Work& work) {
  constexpr double kApart = 35;  // modules
  constexpr size_t kFewPasses = 2;
  std::vector<Finder> left = finders(grey), tried;
  std::erase_if(left, [&](const Finder& finder) { return is_within(finder, codes); });
  for (const Finder& finder : left) {
    const auto beside = [&](const Finder& other) { return are_near(finder, other, kApart); };
    if (is_within(finder, codes) || std::any_of(tried.begin(), tried.end(), beside)) continue;
    if (work.done()) return;
    try_part(grey, finder, has_partner(finder, left) ? further_passes().size() : kFewPasses, codes, work);
    tried.push_back(finder);
  }
}

}  // namespace

void add(std::vector<Code>& codes, const Code& code) {
  const auto known = [&](const Code& other) {
    return other.page == code.page && other.text == code.text && other.format == code.format && same_place(other, code);
  };
  if (std::none_of(codes.begin(), codes.end(), known)) codes.push_back(code);
}

void put_in_order(std::vector<Code>& codes) {
  const auto top = [](const Code& code) { return std::pair(code.page, code.corners[0].y()); };
  const auto left = [](const Code& code) { return code.corners[0].x(); };
  std::stable_sort(codes.begin(), codes.end(), [&](const Code& a, const Code& b) { return top(a) < top(b); });
  for (auto start = codes.begin();
       start != codes.end();) {  // what begins in the upper half of the first stands beside it
    const auto beside = [&](const Code& code) {
      return code.page == start->page && top(code).second <= top(*start).second + box(*start).height() / 2;
    };
    const auto end = std::find_if_not(start, codes.end(), beside);
    std::stable_sort(start, end, [&](const Code& a, const Code& b) { return left(a) < left(b); });
    start = end;
  }
}

bool is_blank(const symbol::Grey& grey) {
  constexpr int kLeastContrast = 8;
  quint8 least = 255, most = 0;
  for (int y = 0; y < grey.height; ++y)
    for (const quint8* at = row(grey, y); at != row(grey, y) + grey.width; ++at) {
      least = std::min(least, *at);
      most = std::max(most, *at);
    }
  return most - least < kLeastContrast;
}

std::vector<Code> read_plainly(const symbol::Grey& grey) {
  std::vector<Code> codes;
  add_found(codes, symbol::read_codes(grey), {}, "plain");
  return codes;
}

bool finders_left(const symbol::Grey& grey, const std::vector<Code>& codes) {
  const auto all = finders(grey);
  return std::any_of(all.begin(), all.end(), [&](const Finder& finder) { return !is_within(finder, codes); });
}

void read_harder(const symbol::Grey& grey, std::vector<Code>& codes, const Deadline& deadline) {
  if (is_blank(grey)) return;
  Work work(deadline);
  const qint64 pixels = qint64{grey.width} * grey.height;
  if (codes.empty()) try_whole(grey, kSmall, codes, work);
  if (codes.empty() && pixels > kSmall) try_whole(grey, kLarge, codes, work);
  try_parts(grey, codes, work);
}

}  // namespace lardiner::scan
