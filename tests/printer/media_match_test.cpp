// Names of media as PWG 5101.1 forms them, and which medium a page fits.
#include "printer/media_match.h"

#include "show.h"

using namespace lardiner::printer;

namespace {

constexpr Size kTwoByOne{5080, 2540};
constexpr Size kFourBySix{10160, 15240};

const std::vector<Medium> kLabels{{QStringLiteral("oe_2x1-label_2x1in"), kTwoByOne},
                                  {QStringLiteral("oe_4x6-label_4x6in"), kFourBySix}};
const std::vector<CustomSizes> kAnyUpToFourInches{{{1000, 1000}, {10160, 30480}}};

}  // namespace

TEST_CASE("the last part of a name is the size", "[printer][media][src:pwg-5101.1/5]") {
  CHECK(size_of_name(QStringLiteral("oe_2x1-label_2x1in")) == kTwoByOne);
  CHECK(size_of_name(QStringLiteral("iso_a4_210x297mm")) == Size{21000, 29700});
  CHECK(size_of_name(QStringLiteral("na_letter_8.5x11in")) == Size{21590, 27940});
  CHECK(size_of_name(QStringLiteral("na_number-10_4.125x9.5in")) == Size{10478, 24130});  // 104.775 mm
  CHECK(size_of_name(QStringLiteral("oe_slip_0.5x3in")) == Size{1270, 7620});
  CHECK(size_of_name(QStringLiteral("custom_label_50x50mm")) == Size{5000, 5000});
  CHECK(size_of_name(QStringLiteral("custom__50x50mm")) == Size{5000, 5000});  // it may have no name
  CHECK(size_of_name(QStringLiteral("roll_current_101.6x152.4mm")) == kFourBySix);
}

TEST_CASE("what is no such name has no size", "[printer][media][src:pwg-5101.1/5]") {
  for (const char* name :
       {"", "a4", "iso-a4-white", "oe_2x1-label", "oe_2x1-label_2x1", "oe_2x1-label_2x1cm", "oe_2x1-label_2 x1in",
        "oe_2x1-label_02x1in", "oe_2x1-label_2.0x1in", "oe_2x1-label_2.x1in", "oe_2x1-label_.5x1in",
        "oe_2x1-label_0x1in", "oe_2x1-label_-2x1in", "2x1in", "OE_A_2x1in", "oe_a_99999999999x1in", "oe_a_2x1in "})
    CHECK(size_of_name(QString::fromUtf8(name)) == std::nullopt);
}

TEST_CASE("a bound, a roll without end and a round medium are no label", "[printer][media][src:pwg-5101.1/5]") {
  for (const char* name : {"custom_min_10x10mm", "custom_max_4x12in", "roll_max_4x39.6in", "roll_current_102x0mm",
                           "disc_standard_40x118mm"})
    CHECK(size_of_name(QString::fromUtf8(name)) == std::nullopt);
  CHECK(size_of_name(QStringLiteral("iso_max_10x10mm")) == Size{1000, 1000});
}

TEST_CASE("the sizes that a printer takes beside lie between its bounds", "[printer][media][src:pwg-5101.1/5]") {
  const QString least = QStringLiteral("custom_min_10x10mm"), most = QStringLiteral("custom_max_4x12in");
  CHECK(custom_sizes({QStringLiteral("oe_2x1-label_2x1in"), least, most}) == kAnyUpToFourInches);
  CHECK(custom_sizes({QStringLiteral("roll_max_4x12in"), QStringLiteral("roll_min_10x10mm")}) == kAnyUpToFourInches);
  CHECK(custom_sizes({least}).empty());
  CHECK(custom_sizes({most}).empty());
  CHECK(custom_sizes({least, QStringLiteral("roll_max_4x12in")}).empty());
  CHECK(kAnyUpToFourInches.front().holds({1000, 30480}));
  CHECK_FALSE(kAnyUpToFourInches.front().holds({999, 30480}));
  CHECK_FALSE(kAnyUpToFourInches.front().holds({1000, 30481}));
}

TEST_CASE("a size without a name gets one without needless zeros, and it reads back",
          "[printer][media][src:pwg-5101.1/5]") {
  CHECK(custom_name({5000, 5000}) == "custom_label_50x50mm");
  CHECK(custom_name({10160, 15240}) == "custom_label_101.6x152.4mm");
  CHECK(custom_name({1005, 50}) == "custom_label_10.05x0.5mm");
  for (int side = 1; side < 40'000; side += 7) {
    const Size size{side, 40'001 - side};
    CHECK(size_of_name(custom_name(size)) == size);
  }
  CHECK(text(Size{5080, 2540}) == "50.8 × 25.4 mm");
}

TEST_CASE("a page drawn in whole dots is as large as the label it was drawn for",
          "[printer][media][src:practice/print]") {
  CHECK(as_cut({4992, 4992}) == Size{5000, 5000});      // 399 dots of 1/203 in
  CHECK(as_cut({9997, 4992}) == Size{10000, 5000});     // 799 dots
  CHECK(as_cut({10160, 15240}) == Size{10160, 15240});  // 4 by 6 in
  CHECK(as_cut({10148, 5080}) == Size{10160, 5080});
  CHECK(as_cut({5001, 5079}) == Size{5000, 5080});
  CHECK(as_cut({4986, 5003}) == Size{4986, 5003});
}

TEST_CASE("a page fits the medium of its size, half a millimetre more or less",
          "[printer][media][src:practice/print]") {
  CHECK(match(kTwoByOne, kLabels, {}) == Match{kLabels[0], false, false});
  CHECK(match({5100, 2500}, kLabels, {}) == Match{kLabels[0], false, false});
  CHECK(match({5130, 2590}, kLabels, {}) == Match{kLabels[0], false, false});
  CHECK(match({5131, 2540}, kLabels, {}) == std::nullopt);
  CHECK(match({5080, 2489}, kLabels, {}) == std::nullopt);
}

TEST_CASE("of several that fit the nearest is taken, of equal ones the first", "[printer][media][src:practice/print]") {
  const std::vector<Medium> close{{QStringLiteral("om_a_51x25mm"), {5100, 2500}},
                                  {QStringLiteral("oe_b_2x1in"), kTwoByOne},
                                  {QStringLiteral("oe_c_2x1in"), kTwoByOne}};
  CHECK(match(kTwoByOne, close, {}) == Match{close[1], false, false});
  CHECK(match({5100, 2510}, close, {}) == Match{close[0], false, false});
}

TEST_CASE("a page fits the other way round where it fits no other way", "[printer][media][src:practice/print]") {
  CHECK(match({15240, 10160}, kLabels, {}) == Match{kLabels[1], true, false});
  CHECK(match({2540, 5080}, kLabels, kAnyUpToFourInches) ==
        Match{{QStringLiteral("custom_label_25.4x50.8mm"), {2540, 5080}}, false, true});
}

TEST_CASE("a size that the printer takes beside the named ones has a custom name",
          "[printer][media][src:practice/print]") {
  CHECK(match({5000, 5000}, kLabels, kAnyUpToFourInches) ==
        Match{{QStringLiteral("custom_label_50x50mm"), {5000, 5000}}, false, true});
  CHECK(match({12000, 5000}, kLabels, kAnyUpToFourInches) ==
        Match{{QStringLiteral("custom_label_50x120mm"), {5000, 12000}}, true, true});
  CHECK(match({12000, 12000}, kLabels, kAnyUpToFourInches) == std::nullopt);
  CHECK(match({5000, 5000}, {}, {}) == std::nullopt);
}
