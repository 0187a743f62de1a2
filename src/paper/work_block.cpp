// What is never divided between two pages, drawn where it stands.
#include "paper/work_block.h"

namespace lardiner::paper {

void draw(Drawing& to, const WorkBlock& block, int y) {
  for (Box box : block.drawing.boxes) {
    box.y += Dots{y};
    to.boxes.push_back(box);
  }
  for (TextRun run : block.drawing.texts) {
    run.baseline += FineDots{static_cast<double>(y)};
    to.texts.push_back(std::move(run));
  }
}

}  // namespace lardiner::paper
