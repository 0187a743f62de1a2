// The words that orders and lots on hand bring onto a PDF: what no face has is told at their rows.
#include "command/printed_words.h"

namespace lardiner::command {

using problem::Errors;

namespace {

void check(const char* key, const QString& text, const problem::Place& place, const paper::Faces& faces,
           Errors& errors) {
  const auto found = faces.printable(text);
  if (found) return;
  problem::Error error = found.error();
  if (error.code == problem::Code::NoGlyph) {
    error.what.prepend(QLatin1String(key) + u' ');
    error.place = place;
  }
  errors.push_back(error);
}

}  // namespace

Errors unprintable(const std::vector<plan::Order>& orders, const paper::Faces& faces) {
  Errors errors;
  for (const plan::Order& order : orders) check("order", order.number, order.place, faces, errors);
  return errors;
}

Errors unprintable(const std::vector<plan::OnHand>& lots, const paper::Faces& faces) {
  Errors errors;
  for (const plan::OnHand& lot : lots) {
    check("lot", lot.lot, lot.place, faces, errors);
    check("container", lot.container, lot.place, faces, errors);
    check("place", lot.where, lot.place, faces, errors);
  }
  return errors;
}

}  // namespace lardiner::command
