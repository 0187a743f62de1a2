// Codes of one bitmap: read as it is, then in ever other ways, as long as it is worth it.
#pragma once

#include <vector>

#include "scan/deadline.h"
#include "scan/read_pictures.h"

namespace lardiner::scan {

/// What is read from the bitmap as it is.
std::vector<Code> read_plainly(const symbol::Grey& grey);

/// Whether something that looks like a finder stands outside all of these codes.
bool finders_left(const symbol::Grey& grey, const std::vector<Code>& codes);

/// Whether there is nothing to see: all greys nearly alike.
bool is_blank(const symbol::Grey& grey);

/// Adds what further passes read. With no code yet, the whole bitmap is read, small first, until a pass finds one; then
/// the parts where a finder stands outside all codes. The work is bounded by a count of pixels, not by the clock, so
/// that a picture gives the same on every machine; the deadline cuts off what is slower still.
void read_harder(const symbol::Grey& grey, std::vector<Code>& codes, const Deadline& deadline);

/// Adds a code, unless the same content is known at its place.
void add(std::vector<Code>& codes, const Code& code);

/// Page by page, row by row from the top, in each row from the left.
void put_in_order(std::vector<Code>& codes);

}  // namespace lardiner::scan
