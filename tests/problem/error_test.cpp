// How a fault reads.
#include "problem/error.h"

#include "show.h"

using namespace lardiner::problem;

TEST_CASE("an error names file, line, column, what is wrong, the place in the line, and the remedy", "[problem]") {
  const Error error{Code::Malformed, QStringLiteral("\"31/02\" is not a date"),
                    Place{QStringLiteral("batches.csv"), 14, 11, QStringLiteral("butter-cl,31/02,24"), 5},
                    QStringLiteral("write it as 2026-02-28")};
  CHECK(text(error) == QStringLiteral("batches.csv:14:11: \"31/02\" is not a date\n"
                                      "  butter-cl,31/02,24\n"
                                      "            ^^^^^\n"
                                      "  write it as 2026-02-28"));
}

TEST_CASE("an error without a place is its sentence alone", "[problem]") {
  CHECK(text(Error{Code::Machine, QStringLiteral("the disk is full"), {}, {}}) == QStringLiteral("the disk is full"));
}

TEST_CASE("the caret keeps the tabs before it, so that it stands under its letter", "[problem]") {
  const Error error{Code::Unknown, QStringLiteral("x"), Place{QStringLiteral("f"), 1, 2, QStringLiteral("\tid"), 2}, {}};
  CHECK(text(error) == QStringLiteral("f:1:2: x\n  \tid\n  \t^^"));
}

TEST_CASE("a long line is shown in part, with its true column and the caret under its letter", "[problem]") {
  const Error error{
      Code::Unknown, QStringLiteral("x"), Place{QStringLiteral("f"), 1, 203, QStringLiteral("…abc"), 1, 200}, {}};
  CHECK(text(error) == QStringLiteral("f:1:203: x\n  …abc\n     ^"));
}

TEST_CASE("errors are told in the order of the file, and each once", "[problem]") {
  const Error first{Code::Unknown, QStringLiteral("a"), Place{QStringLiteral("f"), 2, 1, {}, 1}, {}};
  const Error second{Code::Unknown, QStringLiteral("b"), Place{QStringLiteral("f"), 10, 1, {}, 1}, {}};
  Errors errors{second, first, second};
  sort(errors);
  CHECK((errors == Errors{first, second}));
}

TEST_CASE("the nearest known word is offered, and none when all are far", "[problem]") {
  const QStringList known{QStringLiteral("salsa-tomatillo"), QStringLiteral("butter"), QStringLiteral("rice")};
  CHECK(nearest(QStringLiteral("buter"), known) == QStringLiteral("butter"));
  CHECK(nearest(QStringLiteral("salsa-tomatilo"), known) == QStringLiteral("salsa-tomatillo"));
  CHECK(nearest(QStringLiteral("xyzzyx"), known).isEmpty());
}
