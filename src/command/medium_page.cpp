// The page that a medium is printed as.
#include "command/medium_page.h"

namespace lardiner::command {

printer::Size page_of(const book::Media& medium) {
  if (medium.sheet) return {medium.sheet->paper_width, medium.sheet->paper_height};
  return {medium.width, medium.height};
}

}  // namespace lardiner::command
