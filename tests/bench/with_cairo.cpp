// Draws the labels of a content file with cairo and Pango: the QR as a 1-bit mask, one PangoLayout used throughout.
//   bench_cairo FONTS CONTENT OUT.pdf    prints "name value" lines, processor seconds
#include <cairo-pdf.h>
#include <fontconfig/fontconfig.h>
#include <pango/pangocairo.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "cpu_time.h"

namespace {

struct Box {
  double x, y, width, height;
  bool white;
};
struct Code {
  double x, y, side;
  int modules;
  std::vector<unsigned char> rows;  // most significant bit left
};
struct Text {
  std::size_t weight;
  double size, x, baseline;
  bool white;
  std::string words;
};
struct Label {
  double width = 0, height = 0;
  std::vector<Box> boxes;
  std::vector<Code> codes;
  std::vector<Text> texts;
};

constexpr std::array<PangoWeight, 3> kWeights = {PANGO_WEIGHT_NORMAL, PANGO_WEIGHT_BOLD, PANGO_WEIGHT_ULTRABOLD};

std::size_t weight_of(const std::string& word) { return word == "regular" ? 0 : word == "bold" ? 1 : 2; }

std::vector<unsigned char> bytes_of(const std::string& hex) {
  std::vector<unsigned char> bytes;
  for (std::size_t at = 0; at + 1 < hex.size(); at += 2)
    bytes.push_back(static_cast<unsigned char>(std::stoi(hex.substr(at, 2), nullptr, 16)));
  return bytes;
}

void read_step(std::istringstream& line, const std::string& verb, Label& label) {
  std::string word, ink;
  if (verb == "page") {
    line >> label.width >> label.height;
  } else if (verb == "box") {
    Box box{};
    line >> box.x >> box.y >> box.width >> box.height >> ink;
    box.white = ink == "white";
    label.boxes.push_back(box);
  } else if (verb == "code") {
    Code code{};
    line >> code.x >> code.y >> code.side >> code.modules >> word;
    code.rows = bytes_of(word);
    label.codes.push_back(code);
  } else if (verb == "text") {
    Text text{};
    line >> word >> text.size >> text.x >> text.baseline >> ink;
    text.weight = weight_of(word);
    text.white = ink == "white";
    line.get();
    std::getline(line, text.words);
    label.texts.push_back(text);
  }
}

std::vector<Label> read_labels(const char* path) {
  std::vector<Label> labels;
  std::ifstream file(path);
  Label label;
  for (std::string text; std::getline(file, text);) {
    std::istringstream line(text);
    std::string verb;
    line >> verb;
    if (verb == "end")
      labels.push_back(std::exchange(label, Label()));
    else
      read_step(line, verb, label);
  }
  return labels;
}

unsigned char mirrored(unsigned char byte) {
  unsigned char out = 0;
  for (int bit = 0; bit < 8; ++bit)
    if (byte & (1 << bit)) out = static_cast<unsigned char>(out | (0x80 >> bit));
  return out;
}

class Painter {
 public:
  explicit Painter(const char* path) {
    surface_ = cairo_pdf_surface_create(path, 100, 100);
    cairo_ = cairo_create(surface_);
    layout_ = pango_cairo_create_layout(cairo_);
    for (std::size_t n = 0; n < kWeights.size(); ++n) {
      fonts_[n] = pango_font_description_from_string("Atkinson Hyperlegible Next");
      pango_font_description_set_weight(fonts_[n], kWeights[n]);
    }
    for (std::size_t n = 0; n < mirror_.size(); ++n) mirror_[n] = mirrored(static_cast<unsigned char>(n));
  }
  Painter(const Painter&) = delete;
  Painter& operator=(const Painter&) = delete;

  void draw(const Label& label) {
    cairo_pdf_surface_set_size(surface_, label.width, label.height);
    for (const Box& box : label.boxes) draw(box);
    for (const Code& code : label.codes) draw(code);
    for (const Text& text : label.texts) draw(text);
    cairo_show_page(cairo_);
  }

  ~Painter() {
    for (PangoFontDescription* font : fonts_) pango_font_description_free(font);
    g_object_unref(layout_);
    cairo_destroy(cairo_);
    cairo_surface_finish(surface_);
    cairo_surface_destroy(surface_);
  }

 private:
  void ink(bool white) { cairo_set_source_rgb(cairo_, white ? 1 : 0, white ? 1 : 0, white ? 1 : 0); }

  void draw(const Box& box) {
    ink(box.white);
    cairo_rectangle(cairo_, box.x, box.y, box.width, box.height);
    cairo_fill(cairo_);
  }

  // cairo's 1-bit masks have the leftmost pixel in the lowest bit (on such a machine as this).
  void draw(const Code& code) {
    cairo_surface_t* mask = cairo_image_surface_create(CAIRO_FORMAT_A1, code.modules, code.modules);
    unsigned char* pixels = cairo_image_surface_get_data(mask);
    const int stride = cairo_image_surface_get_stride(mask);
    const std::size_t row = static_cast<std::size_t>(code.modules + 7) / 8;
    for (std::size_t y = 0; y < static_cast<std::size_t>(code.modules); ++y)
      for (std::size_t n = 0; n < row; ++n)
        pixels[y * static_cast<std::size_t>(stride) + n] = mirror_[code.rows[y * row + n]];
    cairo_surface_mark_dirty(mask);
    ink(false);
    cairo_save(cairo_);
    cairo_translate(cairo_, code.x, code.y);
    cairo_scale(cairo_, code.side / code.modules, code.side / code.modules);
    cairo_pattern_t* pattern = cairo_pattern_create_for_surface(mask);
    cairo_pattern_set_filter(pattern, CAIRO_FILTER_NEAREST);
    cairo_mask(cairo_, pattern);
    cairo_pattern_destroy(pattern);
    cairo_restore(cairo_);
    cairo_surface_destroy(mask);
  }

  void draw(const Text& text) {
    PangoFontDescription* font = fonts_[text.weight];
    pango_font_description_set_absolute_size(font, text.size * PANGO_SCALE);
    pango_layout_set_font_description(layout_, font);
    pango_layout_set_text(layout_, text.words.c_str(), static_cast<int>(text.words.size()));
    ink(text.white);
    cairo_move_to(cairo_, text.x, text.baseline - pango_layout_get_baseline(layout_) / double{PANGO_SCALE});
    pango_cairo_show_layout(cairo_, layout_);
  }

  cairo_surface_t* surface_;
  cairo_t* cairo_;
  PangoLayout* layout_;
  std::array<PangoFontDescription*, kWeights.size()> fonts_;
  std::array<unsigned char, 256> mirror_;
};

}  // namespace

int main(int argc, char** argv) {
  if (argc != 4) return 2;
  FcConfigAppFontAddDir(nullptr, reinterpret_cast<const FcChar8*>(argv[1]));
  const std::vector<Label> labels = read_labels(argv[2]);
  const double seconds = bench::timed([&] {
    Painter painter(argv[3]);
    for (const Label& label : labels) painter.draw(label);
  });
  std::printf("labels %zu\nseconds %.9g\n", labels.size(), seconds);
  return 0;
}
