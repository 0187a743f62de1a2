// A sound book is read whole and without a complaint.
#include "kitchen.h"

using namespace lardiner;
using namespace lardiner::book;

TEST_CASE("a sound book has neither errors nor gaps", "[book]") {
  const Reading reading = book_test::read(book_test::kitchen());
  CHECK(problem::text(reading.findings.errors) == QString());
  CHECK(problem::text(reading.findings.gaps) == QString());
}
