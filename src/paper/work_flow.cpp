// Puts blocks on pages one under the other.
#include "paper/work_flow.h"

#include <algorithm>

#include "paper/work_text.h"

namespace lardiner::paper {

namespace {

using Blocks = std::vector<WorkBlock>;

int height_with_repeat(const WorkBlock& block) { return block.height + (block.again ? block.again->height : 0); }

class Flow {
 public:
  Flow(const Blocks& blocks, const WorkBlock& last, Rooms rooms) : blocks_(blocks), last_(last), rooms_(rooms) {}

  std::vector<PlacedPage> pages() {
    for (std::size_t from = 0; from < blocks_.size();) {
      const std::size_t end = end_of_group(from);
      if (!is_fresh() && !holds(from, must_hold(from, end))) new_page();
      last_group_ = {from, pages_.size(), pages_.back().size()};
      for (; from < end; ++from) {
        if (!is_fresh() && !holds(from, from + 1)) new_page();
        place(blocks_[from]);
      }
    }
    if (last_.height == 0) return std::move(pages_);
    if (y_ > 0 && y_ + last_.air + last_.height > room()) take_along();
    pages_.back().push_back({&last_, room() - last_.height});
    return std::move(pages_);
  }

 private:
  // A further page with nothing on it: no other has more room.
  bool is_fresh() const { return y_ == 0 && pages_.size() > 1; }
  int room() const { return pages_.size() == 1 ? rooms_.first : rooms_.further; }

  std::size_t end_of_group(std::size_t from) const {
    while (from + 1 < blocks_.size() && blocks_[from].keep) ++from;
    return from + 1;
  }

  // A group that no page holds is parted, but not after what only leads to it: a heading, an axis.
  std::size_t must_hold(std::size_t from, std::size_t end) const {
    return height_of(from, end) <= rooms_.further ? end : std::min(end, from + 3);
  }

  // Whether the rest of the page holds these.
  bool holds(std::size_t from, std::size_t end) const {
    int y = y_;
    for (std::size_t i = from; i < end; ++i) y += (y > 0 ? blocks_[i].air : 0) + blocks_[i].height;
    return y <= room();
  }

  int height_of(std::size_t from, std::size_t end) const {
    int height = blocks_[from].again ? blocks_[from].again->height : 0;
    for (std::size_t i = from; i < end; ++i) height += blocks_[i].height + (i > from ? blocks_[i].air : 0);
    return height;
  }

  void new_page() {
    pages_.emplace_back();
    y_ = 0;
  }

  void place(const WorkBlock& block) {
    if (y_ == 0 && block.again) put(*block.again);
    put(block);
  }

  void put(const WorkBlock& block) {
    if (y_ > 0) y_ += block.air;
    pages_.back().push_back({&block, y_});
    y_ += block.height;
  }

  // The last group goes with `last_`, where both have room there and something else stays before them.
  void take_along() {
    const std::size_t begin = last_group_.begin;
    const bool both = height_of(begin, blocks_.size()) + last_.air + last_.height <= rooms_.further;
    const bool takes = both && last_group_.page == pages_.size() && last_group_.before > 0;
    if (takes) pages_.back().resize(last_group_.before);
    new_page();
    for (std::size_t i = begin; takes && i < blocks_.size(); ++i) place(blocks_[i]);
  }

  const Blocks& blocks_;
  const WorkBlock& last_;
  Rooms rooms_;
  std::vector<PlacedPage> pages_ = {{}};
  struct {
    std::size_t begin = 0;   // among the blocks
    std::size_t page = 0;    // from 1
    std::size_t before = 0;  // blocks on that page before it
  } last_group_;
  int y_ = 0;
};

problem::Error too_high(const WorkBlock& block, int room) {
  return {problem::Code::NoRoom,
          QStringLiteral("\"%1\" is %2 high with what belongs to it, and a page has %3")
              .arg(block.name, in_millimetres(height_with_repeat(block)), in_millimetres(room)),
          {},
          QStringLiteral("shorten it")};
}

}  // namespace

problem::ExpectedAll<std::vector<PlacedPage>> flow(const Blocks& blocks, const WorkBlock& last, Rooms rooms) {
  problem::Errors errors;
  for (const WorkBlock& block : blocks)
    if (height_with_repeat(block) > rooms.further) errors.push_back(too_high(block, rooms.further));
  if (last.height > rooms.further) errors.push_back(too_high(last, rooms.further));
  if (!errors.empty()) return tl::unexpected(errors);
  return Flow(blocks, last, rooms).pages();
}

}  // namespace lardiner::paper
