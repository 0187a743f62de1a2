// Patterns of the test page, dot by dot: rulers, lines and checkerboards.
#include "paper/test_patterns.h"

#include <array>
#include <cmath>

#include "paper/one_line.h"
#include "paper/test_page.h"

namespace lardiner::paper {

namespace {

constexpr int kFrame = 2;      // dots
constexpr Points kNumbers{6};  // of the rulers
constexpr int kStep = 8;       // dots: the height of a stair, and the number of stairs
constexpr std::array kApart = {1, 2, 3};

// A scale: the distance of its ticks, and which are longer.
struct Scale {
  Millimetres apart;
  int middle, whole;  // every so many ticks
  int unit;           // what a whole counts for
};
constexpr Scale kMillimetres{{1}, 5, 10, 10};
constexpr Scale kInches{{kMillimetresPerInch / 8}, 4, 8, 1};

// One side of the frame: ticks along it, from the start inwards.
struct Side {
  Scale scale;
  bool across = true;     // along the top or the bottom
  bool from_far = false;  // on the bottom or the right
};

class Rulers {
 public:
  Rulers(Drawing& page, PageSize size, Insets margin, const Faces& faces)
      : page_(page), size_(size), margin_(margin), faces_(faces) {
    const auto dots = [&](double mm) { return whole_dots_covering(fine_dots(Millimetres{mm}, size.resolution)).value; };
    short_ = dots(1), middle_ = dots(1.5), long_ = dots(2.2);
    numbers_ = static_cast<int>(std::ceil(fine_dots(kNumbers, size.resolution).value));
  }

  int draw() {
    draw_frame();
    for (const Side& side : {Side{kMillimetres, true, false}, Side{kInches, true, true},
                             Side{kMillimetres, false, false}, Side{kInches, false, true}})
      draw_side(side);
    return kFrame + long_ + 2 * numbers_;
  }

 private:
  int start(bool across) const { return (across ? margin_.left : margin_.top).value; }
  int end(bool across) const {
    return across ? (size_.width - margin_.right).value : (size_.height - margin_.bottom).value;
  }

  void box(int x, int y, int width, int height) { page_.boxes.push_back({{x}, {y}, {width}, {height}, Ink::Black}); }

  void draw_frame() {
    const int left = start(true), top = start(false);
    const int width = end(true) - left, height = end(false) - top;
    box(left, top, width, kFrame);
    box(left, end(false) - kFrame, width, kFrame);
    box(left, top, kFrame, height);
    box(end(true) - kFrame, top, kFrame, height);
  }

  void draw_side(const Side& side) {
    for (int index = 1;; ++index) {
      const int along = start(side.across) + tick(index, side.scale.apart, size_.resolution).value;
      if (along >= end(side.across) - kFrame) return;
      const bool whole = index % side.scale.whole == 0;
      const int length = whole ? long_ : index % side.scale.middle == 0 ? middle_ : short_;
      draw_tick(side, along, length);
      if (whole) draw_number(side, along, index / side.scale.whole * side.scale.unit);
    }
  }

  void draw_tick(const Side& side, int along, int length) {
    const int from = side.from_far ? end(!side.across) - kFrame - length : start(!side.across) + kFrame;
    if (side.across)
      box(along, from, 1, length);
    else
      box(from, along, length, 1);
  }

  // Behind its tick; left out where it would stand in the corner of the next side.
  void draw_number(const Side& side, int along, int number) {
    const QString text = QString::number(number);
    const double wide = width(faces_, text, Weight::Regular, kNumbers, size_.resolution).value;
    const int corner = kFrame + long_ + 2 * numbers_;
    if (along - numbers_ < start(side.across) + corner || along + numbers_ > end(side.across) - corner) return;
    const int inner = kFrame + long_ + numbers_ / 4;
    double x = along - wide / 2, baseline = along + numbers_ * 0.35;
    if (side.across)
      baseline = side.from_far ? end(false) - inner : start(false) + inner + numbers_ * 0.75;
    else
      x = side.from_far ? end(true) - inner - wide : start(true) + inner;
    add_runs(page_.texts, faces_, {text, Weight::Regular, kNumbers, {x}, {baseline}, Ink::Black}, size_.resolution);
  }

  Drawing& page_;
  PageSize size_;
  Insets margin_;
  const Faces& faces_;
  int short_ = 0, middle_ = 0, long_ = 0, numbers_ = 0;
};

}  // namespace

int draw_rulers(Drawing& page, PageSize size, Insets margin, const Faces& faces) {
  return Rulers(page, size, margin, faces).draw();
}

void draw_lines(Drawing& page, std::pair<Dots, Dots> sides, Dots top) {
  const Dots left = sides.first, width = sides.second - sides.first;
  int y = top.value;
  const auto line = [&] { page.boxes.push_back({left, {y}, width, {1}, Ink::Black}); };
  line();
  y += kStep;
  for (int x = 0; x < width.value; ++x)
    page.boxes.push_back({left + Dots{x}, {y + x % kStep * kStep}, {1}, {kStep}, Ink::Black});
  y += kStep * kStep + kStep;
  for (const int apart : kApart) {
    line();
    y += 1 + apart;
    line();
    y += 1 + kStep;
  }
}

int lines_height() {
  int height = kStep + kStep * kStep + kStep;
  for (const int apart : kApart) height += 2 + apart + kStep;
  return height;
}

CodeImage checkerboard(int squares) {
  const int stride = (squares + 7) / 8;
  CodeImage out{squares, QByteArray(qsizetype{stride} * squares, '\0')};
  for (int y = 0; y < squares; ++y)
    for (int x = y % 2; x < squares; x += 2)
      out.rows[y * stride + x / 8] = static_cast<char>(out.rows.at(y * stride + x / 8) | (0x80 >> (x % 8)));
  return out;
}

}  // namespace lardiner::paper
