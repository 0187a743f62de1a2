// Turns a drawing into the operators of a PDF content stream (ISO 32000-1:2008, 8 and 9), in printer dots.
#include "paper/pdf_content.h"

#include <cmath>

namespace lardiner::paper {

namespace {

// Boxes and codes are drawn a little smaller than their dots on each side. An edge that lies exactly between two dots
// falls to either by the last bit of a rounding, and some renderers ink every dot that an edge touches. Measured at 203
// dpi: anything from 0.02 to 0.1 dot gives exact dots in poppler, MuPDF and Ghostscript.
constexpr double kInset = 0.05;
// Text may overhang by this without being called off the page: rounding, not ink.
constexpr double kRounding = 0.01;

// MuPDF smooths a picture that it enlarges less than twofold, and with the inset twice is less than that. Such a code
// is written with one pixel for each dot.
constexpr int kSmoothedScale = 2;

QString dots(Dots d) { return QString::number(d.value); }

CodeImage enlarged(const CodeImage& image, int times) {
  const int side = image.modules * times;
  CodeImage large{side, {}};
  large.rows = QByteArray(side * large.row_bytes(), '\0');
  for (int y = 0; y < side; ++y)
    for (int x = 0; x < side; ++x) {
      char& byte = large.rows.data()[y * large.row_bytes() + x / 8];
      if (image.dark(x / times, y / times)) byte = static_cast<char>(byte | 0x80 >> x % 8);
    }
  return large;
}

}  // namespace

QByteArray font_name(FaceId face) { return "F" + QByteArray::number(static_cast<int>(face)); }
QByteArray form_name(int form) { return "X" + QByteArray::number(form); }

QByteArray to_dots(Resolution resolution) {
  const QByteArray scale = QByteArray::number(points(FineDots{1}, resolution).value, 'f', 9);
  return scale + " 0 0 " + scale + " 0 0 cm\n";
}

problem::Expected<QByteArray> PdfContent::of(const Drawing& drawing) {
  out_.clear();
  fault_.reset();
  ink_.reset();
  face_.reset();
  for (const Box& box : drawing.boxes) add(box);
  for (const Code& code : drawing.codes) add(code);
  if (!drawing.texts.empty()) {
    out_ += "BT\n";
    for (const TextRun& run : drawing.texts) add(run);
    out_ += "ET\n";
  }
  if (fault_) return tl::unexpected(*fault_);
  return out_;
}

bool PdfContent::on_page(Dots x, Dots y, Dots width, Dots height) const {
  return x.value >= 0 && y.value >= 0 && width.value > 0 && height.value > 0 && x + width <= size_.width &&
         y + height <= size_.height;
}

QString PdfContent::page_text() const {
  return QStringLiteral("%1 by %2 dots").arg(dots(size_.width), dots(size_.height));
}

void PdfContent::refuse(problem::Code code, const QString& what) {
  if (fault_) return;
  fault_ = problem::Error{code, what, {}, QStringLiteral("this is a fault of Lardiner's layout: please report it")};
}

void PdfContent::add(const Box& box) {
  if (!on_page(box.x, box.y, box.width, box.height))
    return refuse(problem::Code::NoRoom,
                  QStringLiteral("a box of %1 by %2 dots at %3, %4 does not lie on the page of %5")
                      .arg(dots(box.width), dots(box.height), dots(box.x), dots(box.y), page_text()));
  set_ink(box.ink);
  for (double value : {box.x.value + kInset, (size_.height - box.y - box.height).value + kInset,
                       box.width.value - 2 * kInset, box.height.value - 2 * kInset})
    number(value);
  out_ += "re f\n";
}

void PdfContent::add(const Code& code) {
  const int modules = code.image.modules;
  const Dots side = code.module * modules;
  if (modules < 1 || code.image.rows.size() != modules * code.image.row_bytes())
    return refuse(problem::Code::Malformed,
                  QStringLiteral("a code of %1 modules has %2 bytes of rows").arg(modules).arg(code.image.rows.size()));
  if (!on_page(code.x, code.y, side, side))
    return refuse(problem::Code::NoRoom, QStringLiteral("a code of %1 dots at %2, %3 does not lie on the page of %4")
                                             .arg(dots(side), dots(code.x), dots(code.y), page_text()));
  const CodeImage image = code.module.value <= kSmoothedScale ? enlarged(code.image, code.module.value) : code.image;
  set_ink(Ink::Black);
  out_ += "q ";
  number(side.value - 2 * kInset);
  out_ += "0 0 ";
  number(side.value - 2 * kInset);
  number(code.x.value + kInset);
  number((size_.height - code.y - side).value + kInset);
  const QByteArray count = QByteArray::number(image.modules);
  out_ += "cm\nBI /W " + count + " /H " + count + " /BPC 1 /IM true /D [1 0] ID " + image.rows + "\nEI Q\n";
}

void PdfContent::add(const TextRun& run) {
  if (run.text.isEmpty()) return;
  set_ink(run.ink);
  set_font(run);
  out_ += "1 0 0 1 ";
  number(run.x.value);
  number(size_.height.value - run.baseline.value);
  out_ += "Tm ";
  show(run);
}

void PdfContent::set_ink(Ink ink) {
  if (ink_ == ink) return;
  ink_ = ink;
  out_ += ink == Ink::Black ? "0 g\n" : "1 g\n";
}

void PdfContent::set_font(const TextRun& run) {
  const double size = fine_dots(run.size, size_.resolution).value;
  if (face_ == run.face && font_size_ == size) return;
  face_ = run.face;
  font_size_ = size;
  out_ += '/' + font_name(run.face) + ' ';
  number(size);
  out_ += "Tf\n";
}

// The codes are the characters themselves, two bytes each (ISO 32000-1, 9.7.4), in a literal string (7.3.4.2).
void PdfContent::show(const TextRun& run) {
  const Face& face = faces_[run.face];
  const auto byte = [this](unsigned value) {
    const char c = static_cast<char>(value);
    if (c == '(' || c == ')' || c == '\\') out_ += '\\';
    if (c == '\r')
      out_ += "\\r";  // a bare one would be read as a line feed
    else
      out_ += c;
  };
  int advance = 0, top = 0, bottom = 0;
  out_ += '(';
  for (QChar c : run.text) {
    if (is_invisible(c.unicode())) continue;
    const Glyph* glyph = face.glyph(c.unicode());
    if (!glyph)
      return refuse(problem::Code::NoGlyph, QStringLiteral("\"%1\" has U+%2, which the label faces do not have")
                                                .arg(run.text)
                                                .arg(static_cast<uint>(c.unicode()), 4, 16, QLatin1Char('0')));
    used_[run.face].set(c.unicode());
    byte(c.unicode() >> 8);
    byte(c.unicode() & 0xFFU);
    advance += glyph->advance;
    top = std::max<int>(top, glyph->top);
    bottom = std::min<int>(bottom, glyph->bottom);
  }
  out_ += ") Tj\n";
  const double unit = font_size_ / face.units_per_em;
  if (run.x.value < -kRounding || run.x.value + advance * unit > size_.width.value + kRounding ||
      run.baseline.value - top * unit < -kRounding ||
      run.baseline.value - bottom * unit > size_.height.value + kRounding)
    refuse(problem::Code::NoRoom, QStringLiteral("\"%1\" does not lie on the page").arg(run.text));
}

// Three decimals of a dot, without needless zeros, and a space.
void PdfContent::number(double value) {
  constexpr long kParts = 1000;
  const long parts = std::lround(value * kParts);
  const long whole = std::labs(parts) / kParts;
  long rest = std::labs(parts) % kParts;
  if (parts < 0) out_ += '-';
  out_ += QByteArray::number(static_cast<qlonglong>(whole));
  if (rest > 0) {
    out_ += '.';
    for (long place = kParts / 10; rest > 0; place /= 10) {
      out_ += static_cast<char>('0' + rest / place);
      rest %= place;
    }
  }
  out_ += ' ';
}

}  // namespace lardiner::paper
