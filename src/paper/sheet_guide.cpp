// A page that shows whether a printer puts a sheet's labels where they are: to be held against a sheet of labels.
#include "paper/sheet_guide.h"

#include <algorithm>

namespace lardiner::paper {

namespace {

constexpr Millimetres kLine{0.15};
constexpr Millimetres kCross{10};  // from both edges
constexpr Millimetres kArm{5};
// The rulers keep out of what office printers cannot print, commonly 4.2 mm (1/6 inch) at an edge.
constexpr Millimetres kRuler{5};
constexpr double kTick = 1, kTickOfFive = 1.6, kTickOfTen = 2.4;  // millimetres
constexpr Points kNumeral{7};
// A place's number: of its shorter side, and at the most.
constexpr double kNumberShare = 0.4;
constexpr Points kMostNumber{48};
constexpr FaceId kFace = face_of(Family::Atkinson, Weight::Bold);

class Guide {
 public:
  Guide(const Sheet& sheet, const Faces& faces)
      : sheet_(sheet),
        faces_(faces),
        resolution_(sheet.page.resolution),
        line_(std::max(Dots{1}, nearest_dots(fine_dots(kLine, resolution_)))) {}

  Drawing make() {
    for (std::size_t n = 0; n < sheet_.places.size(); ++n) add_place(sheet_.places[n], static_cast<int>(n) + 1);
    const Dots in = at(kCross.value);
    for (const Dots x : {in, sheet_.page.width - in})
      for (const Dots y : {in, sheet_.page.height - in}) add_cross(x, y);
    for (int mm = 0; at(mm) < sheet_.page.width; ++mm) add_tick(mm, true);
    for (int mm = 0; at(mm) < sheet_.page.height; ++mm) add_tick(mm, false);
    return std::move(out_);
  }

 private:
  Dots at(double millimetres) const { return nearest_dots(fine_dots(Millimetres{millimetres}, resolution_)); }

  // What lies on the page.
  void add_box(Dots x, Dots y, Dots width, Dots height) {
    const Dots left = std::max(x, Dots{0}), top = std::max(y, Dots{0});
    const Dots right = std::min(x + width, sheet_.page.width), bottom = std::min(y + height, sheet_.page.height);
    if (left < right && top < bottom) out_.boxes.push_back({left, top, right - left, bottom - top, Ink::Black});
  }

  void add_place(const Placement& place, int number) {
    const Dots w = place.turned ? sheet_.label.height : sheet_.label.width;
    const Dots h = place.turned ? sheet_.label.width : sheet_.label.height;
    add_box(place.x, place.y, w, line_);
    add_box(place.x, place.y + h - line_, w, line_);
    add_box(place.x, place.y, line_, h);
    add_box(place.x + w - line_, place.y, line_, h);
    const double shorter = points(fine_dots(std::min(w, h)), resolution_).value;
    const Points size{std::min(kMostNumber.value, shorter * kNumberShare)};
    add_text(QString::number(number), size, fine_dots(place.x).value + w.value / 2.0,
             fine_dots(place.y).value + h.value / 2.0);
  }

  void add_cross(Dots x, Dots y) {
    const Dots arm = at(kArm.value);
    const Dots before{line_.value / 2};  // of the line's thickness, so that its middle lies there
    add_box(x - arm, y - before, arm * 2, line_);
    add_box(x - before, y - arm, line_, arm * 2);
  }

  void add_tick(int mm, bool across) {
    const double length = mm % 10 == 0 ? kTickOfTen : mm % 5 == 0 ? kTickOfFive : kTick;
    const Dots along = at(mm) - Dots{line_.value / 2}, from = at(kRuler.value), to = at(kRuler.value + length);
    if (across)
      add_box(along, from, line_, to - from);
    else
      add_box(from, along, to - from, line_);
    if (mm % 10 != 0 || mm == 0) return;
    const double beyond = fine_dots(to).value + fine_dots(kNumeral, resolution_).value;
    const double on = fine_dots(at(mm)).value;
    if (on + fine_dots(kNumeral, resolution_).value < fine_dots(across ? sheet_.page.width : sheet_.page.height).value)
      add_text(QString::number(mm), kNumeral, across ? on : beyond, across ? beyond : on);
  }

  // Its middle at (x, y).
  void add_text(const QString& text, Points size, double x, double y) {
    const double width = faces_.width(text, kFace, size, resolution_).value;
    const double height = fine_dots(size, resolution_).value * faces_[kFace].cap_height;
    out_.texts.push_back({kFace, size, {x - width / 2}, {y + height / 2}, text, Ink::Black});
  }

  const Sheet& sheet_;
  const Faces& faces_;
  Resolution resolution_;
  Dots line_;
  Drawing out_;
};

}  // namespace

Drawing sheet_guide(const Sheet& sheet, const Faces& faces) { return Guide(sheet, faces).make(); }

}  // namespace lardiner::paper
