// The test page of a medium: what its printer can do, found out on the medium itself.
#include "paper/test_page.h"

#include <algorithm>
#include <cmath>

#include "paper/label_stack.h"
#include "paper/lines.h"
#include "paper/one_line.h"
#include "paper/test_patterns.h"
#include "symbol/qr.h"

namespace lardiner::paper {

namespace {

constexpr Points kWords{7.5};
constexpr double kLine = 1.2;    // in parts of a text's size: a line's height
constexpr double kAbove = 0.95;  // and its baseline below the line's top
constexpr Millimetres kAir{1.2};
constexpr int kLeastModule = 2;  // dots: what a phone may just read

CodeImage image_of(const symbol::Matrix& matrix) {
  const auto* bytes = reinterpret_cast<const char*>(matrix.bits.data());
  return {matrix.size, QByteArray(bytes, static_cast<qsizetype>(matrix.bits.size()))};
}

QString millimetres_text(double dots, Resolution resolution, int places) {
  return QString::number(millimetres(FineDots{dots}, resolution).value, 'f', places) + QStringLiteral(" mm");
}

// Sets one thing below or beside the other, on a new label where there is no room left.
class Flow {
 public:
  Flow(const TestPageWish& wish, const Faces& faces, std::vector<Drawing>& pages)
      : wish_(wish), faces_(faces), resolution_(wish.page.resolution), pages_(pages) {
    left_ = wish.margin.left.value;
    right_ = (wish.page.width - wish.margin.right).value;
    top_ = wish.margin.top.value;
    end_ = (wish.page.height - wish.margin.bottom).value;
    air_ = whole_dots_covering(fine_dots(kAir, resolution_)).value;
  }

  void new_page() {
    pages_.emplace_back();
    y_ = top_;
  }

  // False where a word is wider than the label, or the text higher.
  bool add(const QString& text, Weight weight, Points size) {
    const auto lines = break_lines(faces_, {{text, weight}}, {size, resolution_}, fine_dots(Dots{right_ - left_}));
    if (!lines) return false;
    const int height = height_of(lines->size(), size);
    if (!make_room(height)) return false;
    draw(*lines, left_, y_, size);
    y_ += height;
    return true;
  }

  bool add_air() {
    y_ += air_;
    return true;
  }

  // A patch with its caption above; as many side by side as fit.
  struct Patch {
    QString caption;
    int side = 0;   ///< with the white that it needs around it
    int white = 0;  ///< of that, on each side
    Code code;      ///< its place is set here
  };
  bool add(std::vector<Patch> patches) {
    const int caption = height_of(1, kWords);
    for (size_t i = 0; i < patches.size();) {
      int x = left_, height = 0;
      size_t end = i;
      for (; end < patches.size(); ++end) {
        const int width = width_of(patches[end]);
        if (x + width > right_ && end > i) break;
        if (x + width > right_) return false;
        x += width + air_;
        height = std::max(height, patches[end].side);
      }
      if (!make_room(caption + height)) return false;
      x = left_;
      for (; i < end; ++i) {
        draw(patches[i], x);
        x += width_of(patches[i]) + air_;
      }
      y_ += caption + height;
    }
    return true;
  }

  bool make_room(int height) {
    if (y_ + height > end_) new_page();
    return y_ + height <= end_;
  }

  // The largest patch that a label holds.
  int most_side() const { return std::min(right_ - left_, end_ - top_ - height_of(1, kWords)); }
  Drawing& page() { return pages_.back(); }
  int y() const { return y_; }
  void skip(int dots) { y_ += dots; }
  int air() const { return air_; }

 private:
  int height_of(size_t lines, Points size) const {
    return static_cast<int>(std::ceil(static_cast<double>(lines) * fine_dots(size, resolution_).value * kLine));
  }

  int width_of(const Patch& patch) const {
    const double words = width(faces_, patch.caption, Weight::Bold, kWords, resolution_).value;
    return std::max(patch.side, static_cast<int>(std::ceil(words)));
  }

  void draw(const std::vector<Line>& lines, int x, int top, Points size) {
    const double em = fine_dots(size, resolution_).value;
    double baseline = top + em * kAbove;
    for (const Line& line : lines) {
      for (const LinePiece& piece : line.pieces)
        page().texts.push_back({piece.face, size, {x + piece.x.value}, {baseline}, piece.text, Ink::Black});
      baseline += em * kLine;
    }
  }

  void draw(Patch& patch, int x) {
    const double em = fine_dots(kWords, resolution_).value;
    add_runs(page().texts, faces_,
             {patch.caption, Weight::Bold, kWords, {static_cast<double>(x)}, {y_ + em * kAbove}, Ink::Black},
             resolution_);
    patch.code.x = Dots{x + patch.white};
    patch.code.y = Dots{y_ + height_of(1, kWords) + patch.white};
    page().codes.push_back(std::move(patch.code));
  }

  const TestPageWish& wish_;
  const Faces& faces_;
  Resolution resolution_;
  std::vector<Drawing>& pages_;
  int left_ = 0, right_ = 0, top_ = 0, end_ = 0, y_ = 0, air_ = 0;
};

class TestPages {
 public:
  TestPages(const TestPageWish& wish, const Faces& faces)
      : wish_(wish), faces_(faces), resolution_(wish.page.resolution), flow_(wish, faces, pages_) {}

  problem::Expected<std::vector<Drawing>> make() {
    if (add_rulers() && add_type() && add_codes() && add_patterns()) return std::move(pages_);
    return tl::unexpected(problem::Error{problem::Code::NoRoom,
                                         QStringLiteral("the test page does not fit on %1").arg(wish_.medium),
                                         {},
                                         QStringLiteral("print it on a larger medium of the same printer")});
  }

 private:
  bool add_rulers() {
    flow_.new_page();
    const Dots inset{draw_rulers(flow_.page(), wish_.page, wish_.margin, faces_)};
    TestPageWish inner = wish_;
    for (Dots* side : {&inner.margin.top, &inner.margin.right, &inner.margin.bottom, &inner.margin.left})
      *side += inset;
    std::vector<Drawing> words;
    Flow flow(inner, faces_, words);
    flow.new_page();
    const bool fits =
        flow.add(QStringLiteral("Lardiner test page"), Weight::ExtraBold, Points{9}) &&
        flow.add(wish_.medium, Weight::Regular, kWords) && flow.add_air() &&
        flow.add(QStringLiteral("10\u00A0mm must measure 10\u00A0mm: print without scaling."), Weight::Bold, kWords) &&
        flow.add(QStringLiteral("The frame stands at the medium's margin: all four sides must be there."),
                 Weight::Regular, kWords);
    if (!fits || words.size() != 1) return false;
    auto& texts = flow_.page().texts;
    texts.insert(texts.end(), words.front().texts.begin(), words.front().texts.end());
    return true;
  }

  bool add_type() {
    flow_.new_page();
    if (!flow_.add(QStringLiteral("The smallest type of each template: use those that you read at arm's length."),
                   Weight::Bold, kWords))
      return false;
    for (const NamedTemplate& named : wish_.templates) {
      const Points size = smallest_type(*named.label, faces_, resolution_);
      const double x = fine_dots(size, resolution_).value * faces_.least_x_height(Weight::Regular);
      flow_.add_air();
      const bool fits =
          flow_.add(QStringLiteral("%1: %2 pt, x-height %3, %4 dots")
                        .arg(named.name, QString::number(size.value, 'f', 1), millimetres_text(x, resolution_, 2),
                             QString::number(std::round(x * 10) / 10)),
                    Weight::Regular, size) &&
          flow_.add(QStringLiteral("0 O 1 l I 8 B 5 S"), Weight::Regular, size);
      if (!fits) return false;
    }
    return true;
  }

  bool add_codes() {
    flow_.new_page();
    if (!flow_.add(QStringLiteral("Write the least module that your phone reads into module_dots of the medium."),
                   Weight::Bold, kWords))
      return false;
    flow_.add_air();
    std::vector<Flow::Patch> patches;
    for (int module = kLeastModule;; ++module) {
      const QByteArray content = test_code_content(resolution_, module, wish_.code_bytes);
      const auto matrix = symbol::encode_qr(content, symbol::strongest_correction(content));  // as on labels
      if (!matrix) return false;
      const int quiet = symbol::kQuietZone * module;
      const int side = matrix->size * module + 2 * quiet;
      if (side > flow_.most_side()) break;
      patches.push_back({QStringLiteral("%1 dots: %2").arg(module).arg(millimetres_text(module, resolution_, 3)), side,
                         quiet, Code{{}, {}, Dots{module}, image_of(*matrix)}});
    }
    return !patches.empty() && flow_.add(std::move(patches));
  }

  bool add_patterns() {
    flow_.new_page();
    if (!flow_.add(QStringLiteral("A white line down the label is a burnt-out dot of the print head."), Weight::Bold,
                   kWords))
      return false;
    flow_.add_air();
    const int height = lines_height();
    if (!flow_.make_room(height)) return false;
    draw_lines(flow_.page(), {wish_.margin.left, wish_.page.width - wish_.margin.right}, Dots{flow_.y()});
    flow_.skip(height + flow_.air());
    std::vector<Flow::Patch> boards;
    for (const int square : {1, 2, 3}) {
      const int squares = kBoardDots / square;
      boards.push_back({QStringLiteral("%1-dot squares").arg(square), squares * square, 0,
                        Code{{}, {}, Dots{square}, checkerboard(squares)}});
    }
    return flow_.add(std::move(boards));
  }

  const TestPageWish& wish_;
  const Faces& faces_;
  Resolution resolution_;
  std::vector<Drawing> pages_;
  Flow flow_;
};

}  // namespace

QByteArray test_code_content(Resolution resolution, int module_dots, int code_bytes) {
  const QByteArray words = "Lardiner test page " + QByteArray::number(resolution.dots_per_inch) + " dpi, " +
                           QByteArray::number(module_dots) + " dots a module";
  QByteArray text = words;
  while (text.size() < code_bytes) text += QByteArray(", as long as a label's code is").left(code_bytes - text.size());
  return text;
}

Dots tick(int index, Millimetres apart, Resolution resolution) {
  return nearest_dots(fine_dots(apart * static_cast<double>(index), resolution));
}

Points smallest_type(const LabelTemplate& label, const Faces& faces, Resolution resolution) {
  const auto least = [&](const Sizes& sizes, Weight weight) {
    return std::max(sizes.least, legible(label, faces, weight, resolution));
  };
  Points smallest = least(label.foot, Weight::Regular);
  for (const Block& block : label.blocks) smallest = std::min(smallest, least(block.sizes, block.weight));
  return smallest;
}

problem::Expected<std::vector<Drawing>> test_pages(const TestPageWish& wish, const Faces& faces) {
  return TestPages(wish, faces).make();
}

}  // namespace lardiner::paper
