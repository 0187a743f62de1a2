// What a child process tells comes over whole, and of what is cut short as much as is whole.
#include "scan/report.h"

#include <random>

#include "show.h"

using namespace lardiner;
using namespace lardiner::scan;

namespace {

Code code(const char16_t* text, int page) {
  return {QString::fromUtf16(text),
          QStringLiteral("QRCode"),
          page,
          QStringLiteral("denoised"),
          {QPoint(1, 2), QPoint(-3, 4), QPoint(5, 60'000), QPoint(7, 8)}};
}

void check_same(const Code& one, const Code& other) {
  CHECK(one.text == other.text);
  CHECK(one.format == other.format);
  CHECK(one.page == other.page);
  CHECK(one.pass == other.pass);
  CHECK(one.corners == other.corners);
}

const Code kFirst = code(u"https://id.example/01/00400000000077", 1);
const Code kSecond = code(u"\x00e9\xd800 \x0001", 3);  // half a surrogate pair, as a damaged code may hold

}  // namespace

TEST_CASE("a report comes over as it was told", "[scan][child][src:practice/scan]") {
  const Report report = report_of(begun_message(1, 3) + found_message(kFirst) + begun_message(3, 3) +
                                  found_message(kSecond) + end_message(Codes{{}, 3, QStringLiteral("too slow")}));
  CHECK(report.ended);
  CHECK_FALSE(report.error);
  CHECK(report.page == 3);
  CHECK(report.codes.pages == 3);
  CHECK(report.codes.stopped == QStringLiteral("too slow"));
  REQUIRE(report.codes.codes.size() == 2);
  check_same(report.codes.codes[0], kFirst);
  check_same(report.codes.codes[1], kSecond);
}

TEST_CASE("a refusal comes over without its place, which the caller knows", "[scan][child][src:practice/scan]") {
  const problem::Error error{
      problem::Code::Range, QStringLiteral("too large"), {QStringLiteral("x"), 1, 1, {}, 1, 1}, QStringLiteral("cut")};
  const Report report = report_of(end_message(tl::unexpected(error)));
  CHECK(report.ended);
  REQUIRE(report.error);
  CHECK(*report.error == problem::Error{problem::Code::Range, QStringLiteral("too large"), {}, QStringLiteral("cut")});
}

TEST_CASE("a report cut short anywhere keeps its whole messages, and has not ended",
          "[scan][child][src:practice/scan]") {
  const QByteArray first = found_message(kFirst), both = first + found_message(kSecond);
  const QByteArray all = both + end_message(Codes{});
  CHECK(report_of(all).ended);
  for (qsizetype length = 0; length < all.size(); ++length) {
    INFO(length);
    const Report report = report_of(all.left(length));
    CHECK_FALSE(report.ended);
    CHECK(report.codes.codes.size() == (length < first.size() ? 0U : length < both.size() ? 1U : 2U));
  }
}

TEST_CASE("bytes that are no report end it", "[scan][child][src:practice/scan]") {
  std::mt19937 random(7);
  for (int round = 0; round < 2'000; ++round) {
    QByteArray bytes = found_message(kFirst);
    for (int more = 0; more < 40; ++more) bytes += static_cast<char>(random() % 256);
    bytes[bytes.size() - 40] = static_cast<char>(5 + random() % 251);  // no kind of message
    const Report report = report_of(bytes);
    CHECK(report.codes.codes.size() == 1);
    CHECK_FALSE(report.ended);
  }
  CHECK_FALSE(report_of("\x02\xff\xff\xff\xf0 a text of four thousand million bytes").ended);
}
