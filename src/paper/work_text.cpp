// Texts set one under the other in a column, measured from their first baseline.
#include "paper/work_text.h"

#include <algorithm>
#include <cmath>

namespace lardiner::paper {

namespace {

// In parts of the size. The letters of most texts keep within the first two, so that rows with and without accents have
// one height; what reaches farther gets more.
constexpr double kAbove = 0.74, kBelow = 0.24, kPitch = 1.2;
constexpr double kAir = 2;  // dots between the ink of two lines

double em_of(Points size) { return fine_dots(size, kPrint).value; }

// The distance of baselines of this size, to the nearest step.
double pitch(Points size) { return std::round(em_of(size) * kPitch / kStep) * kStep; }

}  // namespace

std::optional<TooLong> append(TextStack& to, const Faces& faces, const QString& text, Type type, double width) {
  const MeasuredText measured(faces, {{text, type.weight}});
  const auto lines = measured.lines({type.size, kPrint}, [&](std::size_t) { return FineDots{width}; });
  if (!lines) return lines.error();
  const double em = em_of(type.size);
  const double above = em * std::max(kAbove, measured.reach().above);
  const double below = em * std::max(kBelow, measured.reach().below);
  for (const Line& line : *lines) {
    const bool first = to.empty();
    const double last = first ? 0 : to.lines.back().baseline;
    const double baseline = first ? 0 : std::max(last + pitch(type.size), to.below + kAir + above);
    if (first) to.above = above;
    to.below = baseline + below;
    to.width = std::max(to.width, line.width.value);
    to.lines.push_back({line, type.size, baseline});
  }
  return std::nullopt;
}

void draw(Drawing& to, const TextStack& stack, const ColumnOf& column, double baseline) {
  for (const TextStack::SetLine& set : stack.lines) {
    const double spare = column.side == Side::Right ? column.width - set.line.width.value : 0;
    for (const LinePiece& piece : set.line.pieces)
      to.texts.push_back({piece.face,
                          set.size,
                          {column.x + spare + piece.x.value},
                          {baseline + set.baseline},
                          piece.text,
                          Ink::Black});
  }
}

double whole_width(const Faces& faces, const QString& text, Type type) {
  return MeasuredText(faces, {{text, type.weight}}).width({type.size, kPrint}).value;
}

// Each refusal names a word that is wider than the one before.
TooLong widest_word(const Faces& faces, const QString& text, Type type) {
  const MeasuredText measured(faces, {{text, type.weight}});
  TooLong widest{{}, {0}};
  while (true) {
    const auto lines = measured.lines({type.size, kPrint}, [&](std::size_t) { return widest.width; });
    if (lines) return widest;
    widest = lines.error();
  }
}

double cap_height(const Faces& faces, Points size) {
  return em_of(size) * faces[face_of(Family::Atkinson, Weight::Bold)].cap_height;
}

problem::Error too_wide(const TooLong& word, double width) {
  return {problem::Code::NoRoom,
          QStringLiteral("\"%1\" is %2 wide, and its column %3")
              .arg(word.word, in_millimetres(word.width.value), in_millimetres(width)),
          {},
          QStringLiteral("shorten it, or divide it by a space or a hyphen")};
}

QString in_millimetres(double dots) {
  return QString::number(millimetres(FineDots{dots}, kPrint).value, 'f', 1) + QStringLiteral(" mm");
}

int steps_covering(double dots) { return static_cast<int>(std::ceil(dots / kStep - 1e-9)) * kStep; }

}  // namespace lardiner::paper
