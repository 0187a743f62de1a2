// What a count grade promises: a range, of which a buyer is only sure of the worst end.
#include "plan/count_grade.h"

namespace lardiner::plan {

using measure::Quantity;
using measure::Ratio;

namespace {

// Whole pieces in a weight at so many to the grade's weight. A weight given in pounds is kept to the nanogram, so that
// 5 lb of 21 to the lb are 105, not 104 and a bit.
std::int64_t whole_pieces(const book::CountGrade& grade, Ratio pieces, Quantity weight) {
  const Quantity one_piece = scaled(grade.per, Ratio(1, 1) / pieces);
  const Ratio count = ratio({weight.dimension, weight.amount}, grade.per) * pieces;
  const std::int64_t whole = count.num() / count.den();
  const Quantity next = scaled(grade.per, Ratio(whole + 1, 1) / pieces);
  // Within a millionth of a piece of the next whole one it is that one: the weights were rounded to the nanogram.
  return next.amount - weight.amount <= one_piece.amount / 1'000'000 ? whole + 1 : whole;
}

}  // namespace

std::optional<Quantity> sure_weight(const book::CountGrade& grade, std::int64_t pieces) {
  if (!grade.fewest) return std::nullopt;
  return scaled(grade.per, Ratio(pieces, *grade.fewest));
}

PieceRange pieces_in(const book::CountGrade& grade, Quantity weight) {
  PieceRange range;
  range.best = whole_pieces(grade, Ratio(grade.most, 1), weight);
  if (!grade.fewest) return range;
  range.worst = whole_pieces(grade, Ratio(*grade.fewest, 1), weight);
  range.likely = whole_pieces(grade, Ratio(*grade.fewest + grade.most, 2), weight);
  return range;
}

PieceWeight piece_weight(const book::CountGrade& grade) {
  PieceWeight weight{scaled(grade.per, Ratio(1, grade.most)), std::nullopt};
  if (grade.fewest) weight.most = scaled(grade.per, Ratio(1, *grade.fewest));
  return weight;
}

}  // namespace lardiner::plan
