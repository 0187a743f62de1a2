// The further passes: what each makes of a bitmap, and how that is read.
#include "scan/pass_list.h"

#include <algorithm>

#include "scan/filters.h"
#include "scan/shapes.h"
#include "scan/tones.h"

namespace lardiner::scan {

namespace {

using symbol::Grey;
using symbol::Kinds;
using symbol::Threshold;

Grey as_it_is(const Grey& grey) { return grey; }

Grey smaller(const Grey& grey) {
  return thresholded(scaled(grey, std::max(1, grey.width / 2), std::max(1, grey.height / 2)), 25, 2);
}

Grey larger(const Grey& grey) { return scaled(grey, 2 * grey.width, 2 * grey.height); }

Grey denoised(const Grey& grey) { return blurred(grey, 2); }

Grey denoised_black(const Grey& grey) { return thresholded(blurred(grey, 2), 51, 2); }

Grey black(const Grey& grey) { return thresholded(grey, 51, -8); }

Grey thicker(const Grey& grey) { return thickened(grey, 1); }

Grey sharper(const Grey& grey) { return thresholded(sharpened(grey, 3, 3), 51, 2); }

Grey locally(const Grey& grey) { return stretched_locally(grey, 40); }

}  // namespace

const std::vector<Pass>& further_passes() {
  static const std::vector<Pass> kPasses = {
      {"one threshold", as_it_is, {Threshold::Picture, Kinds::Square}},
      {"smaller", smaller, {Threshold::Middle, Kinds::All}},
      {"denoised", denoised, {Threshold::Neighbourhood, Kinds::Square}},
      {"stretched", stretched, {Threshold::Neighbourhood, Kinds::All}},
      {"thicker", thicker, {Threshold::Neighbourhood, Kinds::Square}},
      {"denoised, black and white", denoised_black, {Threshold::Middle, Kinds::Square}},
      {"inverted", inverted, {Threshold::Neighbourhood, Kinds::All}},
      {"black and white", black, {Threshold::Middle, Kinds::Square}},
      {"sharpened", sharper, {Threshold::Middle, Kinds::Square}},
      {"stretched locally", locally, {Threshold::Neighbourhood, Kinds::Square}},
      {"median", median, {Threshold::Picture, Kinds::Square}},
      {"larger", larger, {Threshold::Neighbourhood, Kinds::All}},
  };
  return kPasses;
}

}  // namespace lardiner::scan
