// Each further pass reads a picture that a plain reading does not, and no place is told twice.
#include "scan/passes.h"

#include "pictures.h"
#include "scan/pass_list.h"
#include "show.h"

using namespace lardiner::scan;
namespace symbol = lardiner::symbol;

namespace {

// A picture that the pass of this name reads.
struct Hard {
  const char* pass;
  Damage damage;
};

const Hard kHard[] = {
    {"one threshold", {.pixels = 2, .noise = 80}},                         // fine noise
    {"one threshold", {.pixels = 3, .blur = 1, .specks = 24}},             // soft and speckled
    {"smaller", {.pixels = 6, .lost = 8, .shade = 62, .noise = 89}},       // lost columns and noise
    {"denoised", {.pixels = 5, .shade = 163, .noise = 42, .specks = 92}},  // noise in uneven light
    {"denoised", {.pixels = 7, .lost = 5, .light = 218, .specks = 58}},    // a burnt head
    {"stretched", {.pixels = 4, .dark = 160, .light = 204}},               // faded
    {"stretched", {.pixels = 2, .dark = 135, .light = 188}},               // faded and small
    {"thicker", {.pixels = 4, .lost = 5}},                                 // a burnt head
    {"thicker", {.pixels = 4, .lost = 11, .grown = 1, .shade = 176}},      // the same, strokes too thin
    {"denoised, black and white", {.pixels = 7, .dark = 156, .shade = 184, .noise = 112, .specks = 136}},
    {"denoised, black and white", {.pixels = 7, .lost = 20, .dark = 198, .light = 230, .shade = 126}},
    {"inverted", {.pixels = 5, .dark = 255, .light = 47, .shade = 124}},  // light on dark
    {"inverted", {.pixels = 3, .dark = 253, .light = 9}},
    {"black and white", {.pixels = 6, .dark = 194, .light = 254, .shade = 134}},  // faded, in uneven light
    {"sharpened", {.pixels = 5, .blur = 3}},                                      // out of focus
    {"sharpened", {.pixels = 3, .lost = 10, .blur = 1, .dark = 196, .light = 220, .shade = 154}},
    {"stretched locally", {.pixels = 7, .dark = 217, .light = 227, .shade = 39}},  // nearly white
    {"median", {.pixels = 3, .shade = 93, .noise = 43, .specks = 50}},             // specks
    {"median", {.pixels = 5, .lost = 22, .blur = 2, .dark = 8, .light = 197, .specks = 139}},
    {"larger", {.pixels = 3, .noise = 116}},  // small and noisy
    {"larger", {.pixels = 2, .lost = 21, .shade = 48, .noise = 107}},
};

bool reads_address(const symbol::Grey& grey, const symbol::Reading& reading) {
  const auto codes = symbol::read_codes(grey, reading);
  return codes.size() == 1 && codes[0].bytes == kAddress;
}

std::vector<Code> read_hard(const symbol::Grey& grey) {
  std::vector<Code> codes = read_plainly(grey);
  read_harder(grey, codes, Deadline(60));
  return codes;
}

}  // namespace

TEST_CASE("a plain picture is read plainly", "[scan][passes][src:practice/scan]") {
  for (const int pixels : {2, 3, 5, 8}) {
    const std::vector<Code> codes = read_plainly(damaged({.pixels = pixels}));
    REQUIRE(codes.size() == 1);
    CHECK(codes[0].pass == QStringLiteral("plain"));
  }
}

TEST_CASE("each pass reads a picture that a plain reading does not", "[scan][passes][src:practice/scan]") {
  for (const Pass& pass : further_passes()) {
    INFO(pass.name);
    int pictures = 0;
    for (const Hard& hard : kHard) {
      if (qstrcmp(hard.pass, pass.name) != 0) continue;
      const symbol::Grey grey = damaged(hard.damage);
      CHECK(read_plainly(grey).empty());
      CHECK(reads_address(pass.made(grey), pass.reading));
      ++pictures;
    }
    CHECK(pictures > 0);
  }
}

TEST_CASE("what one of the passes reads is read, once", "[scan][passes][src:practice/scan]") {
  for (const Hard& hard : kHard) {
    INFO(hard.pass);
    const std::vector<Code> codes = read_hard(damaged(hard.damage));
    REQUIRE(codes.size() == 1);
    CHECK(codes[0].text == QString::fromLatin1(kAddress));
    CHECK(codes[0].pass != QStringLiteral("plain"));
    const int corner = 2 * symbol::kQuietZone * hard.damage.pixels;
    CHECK((codes[0].corners[0] - QPoint(corner, corner)).manhattanLength() <= 3 * hard.damage.pixels);
  }
}

TEST_CASE("of what is beyond all passes nothing is made up", "[scan][passes][src:practice/scan]") {
  CHECK(read_hard(damaged({.pixels = 4, .lost = 2})).empty());
  CHECK(read_hard(damaged({.pixels = 4, .noise = 255, .specks = 700})).empty());
  CHECK(read_hard(damaged({.pixels = 3, .blur = 8})).empty());
}

TEST_CASE("a small hard code in a large picture is read", "[scan][passes][src:practice/scan]") {
  symbol::Grey page = white(2400, 1800);
  draw(page, QByteArrayLiteral("another"), 1500, 300, 5);
  const symbol::Grey faded = damaged({.pixels = 5, .dark = 150, .light = 175, .noise = 6});
  for (int y = 0; y < faded.height; ++y) std::copy_n(row(faded, y), faded.width, row(page, 900 + y) + 700);
  const std::vector<Code> codes = read_hard(page);
  REQUIRE(codes.size() == 2);
  CHECK(codes[0].text + codes[1].text == QStringLiteral("another") + QString::fromLatin1(kAddress));
}

TEST_CASE("one place is told once, another place again", "[scan][passes][src:practice/scan]") {
  const auto at = [](int x, const char* text) {
    return Code{QString::fromLatin1(text),
                QStringLiteral("QRCode"),
                1,
                {},
                {QPoint(x, 0), QPoint(x + 100, 0), QPoint(x + 100, 100), QPoint(x, 100)}};
  };
  std::vector<Code> codes;
  add(codes, at(0, "butter"));
  add(codes, at(8, "butter"));
  CHECK(codes.size() == 1);
  add(codes, at(8, "cod"));
  CHECK(codes.size() == 2);
  add(codes, at(120, "butter"));
  CHECK(codes.size() == 3);
}
