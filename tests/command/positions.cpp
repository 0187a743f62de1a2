// Where everything stands on the pages of a PDF, as MuPDF reads it from the file.
#include "positions.h"

#include <QPointF>
#include <QRectF>
#include <QXmlStreamReader>
#include <algorithm>

namespace lardiner::command {

namespace {

using paper::FaceId;

// Ink that touches by less than this is rounding, in dots.
constexpr double kTouch = 0.2;
// MuPDF tells the advance of a face's table, which is up to this wider than that of the outline, in ems.
constexpr double kAdvance = 0.01;

Area area_of(const QRectF& box, double to_dots) {
  return {box.left() * to_dots, box.top() * to_dots, box.right() * to_dots, box.bottom() * to_dots};
}

// The smallest upright rectangle that holds all points.
QRectF around(const std::vector<QPointF>& points) {
  double left = points.front().x(), top = points.front().y(), right = left, bottom = top;
  for (const QPointF& point : points) {
    left = std::min(left, point.x());
    right = std::max(right, point.x());
    top = std::min(top, point.y());
    bottom = std::max(bottom, point.y());
  }
  return {left, top, right - left, bottom - top};
}

// A matrix of PDF (ISO 32000-1:2008, 8.3.3), as "a b c d e f".
struct Matrix {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;

  explicit Matrix(const QString& six = QStringLiteral("1 0 0 1 0 0")) {
    const QStringList n = six.split(u' ');
    REQUIRE(n.size() == 6);
    a = n[0].toDouble(), b = n[1].toDouble(), c = n[2].toDouble();
    d = n[3].toDouble(), e = n[4].toDouble(), f = n[5].toDouble();
  }
  QPointF map(QPointF p) const { return {a * p.x() + c * p.y() + e, b * p.x() + d * p.y() + f}; }
  QRectF map(const QRectF& box) const {
    return around({map(box.topLeft()), map(box.topRight()), map(box.bottomLeft()), map(box.bottomRight())});
  }
};

// MuPDF cuts a font's name at 31 characters, so that only the family is sure: the ink of a letter is that of any
// weight. In ems from the start of the baseline, y downwards from the top of the ink.
QRectF ink(const paper::Faces& faces, const QString& font, char32_t letter, double advance) {
  double top = 0, bottom = 0;
  const QString family = font.mid(font.indexOf(u'+') + 1, 8);
  for (const FaceId id : paper::kFaces) {
    const paper::Face& face = faces[id];
    const paper::Glyph* glyph = face.glyph(letter);
    if (!glyph || !QString::fromLatin1(face.postscript_name).startsWith(family)) continue;
    const double em = face.units_per_em;
    top = std::max(top, glyph->top / em);
    bottom = std::min(bottom, glyph->bottom / em);
  }
  return {0, bottom, advance, top - bottom};
}

class Tracer {
 public:
  Tracer(const QByteArray& xml, int dots_per_inch, const paper::Faces& faces)
      : xml_(xml), to_dots_(dots_per_inch / paper::kPointsPerInch), faces_(faces) {}

  std::vector<DrawnPage> pages() {
    while (!xml_.atEnd()) {
      xml_.readNext();
      if (xml_.isStartElement()) start();
      if (xml_.isEndElement() && xml_.name() == u"fill_path") end_path();
    }
    INFO(xml_.errorString().toStdString());
    REQUIRE_FALSE(xml_.hasError());
    return std::move(pages_);
  }

 private:
  QString attribute(const char* name) const { return xml_.attributes().value(QLatin1String(name)).toString(); }
  bool is_white() const { return attribute("color").toDouble() > 0.5; }

  void start() {
    const auto name = xml_.name();
    if (name == u"page") {
      pages_.push_back({static_cast<int>(pages_.size()) + 1, {}});
    } else if (name == u"fill_path") {
      at_ = Matrix(attribute("transform"));
      white_ = is_white();
      path_.clear();
      filling_ = true;
    } else if (name == u"clip_path") {
      filling_ = false;
    } else if (filling_ && (name == u"moveto" || name == u"lineto")) {
      path_.push_back(at_.map(QPointF(attribute("x").toDouble(), attribute("y").toDouble())));
    } else if (name == u"fill_text") {
      at_ = Matrix(attribute("transform"));
      white_ = is_white();
    } else if (name == u"span") {
      font_ = attribute("font");
      const QStringList trm = attribute("trm").split(u' ');
      REQUIRE(trm.size() == 4);
      size_ = trm[3].toDouble();
    } else if (name == u"g") {
      letter();
    } else if (name == u"fill_image_mask" || name == u"fill_image") {
      const Matrix unit = Matrix(attribute("transform"));
      add({Mark::Kind::Code, area_of(unit.map(QRectF(0, 0, 1, 1)), to_dots_), false, {}});
    }
  }

  void end_path() {
    filling_ = false;
    if (path_.empty()) return;
    add({Mark::Kind::Box, area_of(around(path_), to_dots_), white_, {}});
  }

  void letter() {
    const QString text = attribute("unicode");
    if (text.trimmed().isEmpty()) return;
    const double advance = attribute("adv").toDouble() - kAdvance;
    const QRectF box = ink(faces_, font_, text.toUcs4().front(), advance);
    const double x = attribute("x").toDouble(), y = attribute("y").toDouble();
    const QRectF placed(x + box.left() * size_, y + box.top() * size_, box.width() * size_, box.height() * size_);
    add({Mark::Kind::Letter, area_of(at_.map(placed), to_dots_), white_, text});
  }

  void add(const Mark& mark) {
    REQUIRE_FALSE(pages_.empty());
    pages_.back().marks.push_back(mark);
  }

  QXmlStreamReader xml_;
  double to_dots_;
  const paper::Faces& faces_;
  std::vector<DrawnPage> pages_;
  Matrix at_;
  std::vector<QPointF> path_;
  QString font_;
  double size_ = 0;
  bool white_ = false, filling_ = false;
};

QString shown(const Mark& mark) {
  const QString what = mark.kind == Mark::Kind::Letter ? QStringLiteral("\"%1\"").arg(mark.letter)
                       : mark.kind == Mark::Kind::Code ? QStringLiteral("the code")
                                                       : QStringLiteral("a box");
  return QStringLiteral("%1 at %2, %3").arg(what).arg(mark.area.left, 0, 'f', 1).arg(mark.area.top, 0, 'f', 1);
}

bool is_letter(const Mark& mark) { return mark.kind == Mark::Kind::Letter; }

class Judge {
 public:
  Judge(const DrawnPage& page, const Area& printable, double module)
      : page_(page), printable_(printable), quiet_(4 * module) {}

  QStringList faults() {
    const auto& marks = page_.marks;
    for (size_t i = 0; i < marks.size(); ++i) {
      if (!marks[i].white && !printable_.grown(kTouch).holds(marks[i].area))
        say(marks[i], QStringLiteral("leaves the printable area"));
      for (size_t j = i + 1; j < marks.size(); ++j) pair(marks[i], marks[j]);
      if (is_letter(marks[i])) ground(marks[i]);
    }
    return std::move(faults_);
  }

 private:
  void say(const Mark& mark, const QString& what) {
    faults_ << QStringLiteral("page %1: %2 %3").arg(page_.number).arg(shown(mark), what);
  }

  void pair(const Mark& one, const Mark& other) {
    if (is_letter(one) && is_letter(other)) {
      if (one.area.meets(other.area)) say(one, QStringLiteral("touches ") + shown(other));
      return;
    }
    const bool one_code = one.kind == Mark::Kind::Code, other_code = other.kind == Mark::Kind::Code;
    if (!one_code && !other_code) return;
    const Mark& code = one_code ? one : other;
    const Mark& what = one_code ? other : one;
    if (code.area.grown(quiet_ - kTouch).meets(what.area))
      say(what, QStringLiteral("stands in the quiet zone of ") + shown(code));
  }

  // White letters lie on black, black ones on the white paper.
  void ground(const Mark& letter) {
    bool on_black = false;
    for (const Mark& box : page_.marks) {
      if (box.kind != Mark::Kind::Box || box.white || !box.area.meets(letter.area)) continue;
      on_black = on_black || box.area.grown(kTouch).holds(letter.area);
      if (!letter.white) say(letter, QStringLiteral("is black on black"));
    }
    if (letter.white && !on_black) say(letter, QStringLiteral("is white on white"));
  }

  const DrawnPage& page_;
  Area printable_;
  double quiet_;
  QStringList faults_;
};

}  // namespace

bool Area::meets(const Area& other) const {
  return left < other.right - kTouch && other.left < right - kTouch && top < other.bottom - kTouch &&
         other.top < bottom - kTouch;
}

bool Area::holds(const Area& other) const {
  return left <= other.left && other.right <= right && top <= other.top && other.bottom <= bottom;
}

std::vector<DrawnPage> drawn_pages(const Folder& folder, const QString& pdf, int dots_per_inch,
                                   const paper::Faces& faces) {
  const Ran ran = folder.run(QStringLiteral("mutool"), {QStringLiteral("trace"), pdf});
  INFO(ran.err.toStdString());
  REQUIRE(ran.status == 0);
  return Tracer(ran.out.toUtf8(), dots_per_inch, faces).pages();
}

QStringList faults(const DrawnPage& page, const Area& printable, double module) {
  return Judge(page, printable, module).faults();
}

}  // namespace lardiner::command
