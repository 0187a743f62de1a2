// A job is held against what the printer can do before it is sent.
#include "printer/job_request.h"

#include "show.h"

using namespace lardiner;
using namespace lardiner::printer;

namespace {

Printer label_printer() {
  Printer out;
  out.name = QStringLiteral("labels");
  out.media = {{QStringLiteral("oe_2x1-label_2x1in"), {5080, 2540}},
               {QStringLiteral("oe_4x6-label_4x6in"), {10160, 15240}}};
  out.loaded = {out.media[1]};
  out.dots_per_inch = {203};
  out.formats = {QStringLiteral("application/pdf"), QStringLiteral("image/pwg-raster")};
  out.most_copies = 99;
  out.page_ranges = out.takes_media_size = true;
  return out;
}

JobWish wish() { return {QStringLiteral("lid"), {5080, 2540}, 203, 1, std::nullopt}; }

QString refusal(const JobWish& asked, const Printer& printer) {
  const auto terms = terms_for(asked, printer);
  if (terms) return QStringLiteral("taken");
  CHECK(terms.error().code == problem::Code::Machine);
  return problem::text(terms.error());
}

}  // namespace

TEST_CASE("a medium with a name is asked for by it", "[printer][job][src:rfc-8011/5.2.11]") {
  const auto terms = terms_for(wish(), label_printer());
  REQUIRE(terms);
  CHECK(terms->medium.medium.name == "oe_2x1-label_2x1in");
  CHECK_FALSE(terms->by_media_size);
}

TEST_CASE("a size without a name is asked for by the size, where the printer takes that",
          "[printer][job][src:pwg-5100.3/3.13]") {
  Printer printer = label_printer();
  printer.custom = {{{1000, 1000}, {10160, 30480}}};
  JobWish other = wish();
  other.page = {5000, 5000};
  auto terms = terms_for(other, printer);
  REQUIRE(terms);
  CHECK(terms->by_media_size);
  CHECK(terms->medium.medium.size == Size{5000, 5000});
  printer.takes_media_size = false;
  terms = terms_for(other, printer);
  REQUIRE(terms);
  CHECK_FALSE(terms->by_media_size);
  CHECK(terms->medium.medium.name == "custom_label_50x50mm");
}

TEST_CASE("a printer that names no media is asked for the size", "[printer][job][src:practice/print]") {
  Printer printer = label_printer();
  printer.media.clear();
  printer.loaded.clear();
  const auto terms = terms_for(wish(), printer);
  REQUIRE(terms);
  CHECK(terms->by_media_size);
}

TEST_CASE("a medium that the printer does not have is refused, with what it has",
          "[printer][job][src:practice/print]") {
  JobWish other = wish();
  other.page = {5000, 5000};
  CHECK(refusal(other, label_printer()) ==
        "the printer \"labels\" has no medium of 50 × 50 mm; it has oe_4x6-label_4x6in (101.6 × 152.4 mm, loaded); "
        "oe_2x1-label_2x1in (50.8 × 25.4 mm)\n"
        "  set the medium at the printer, or make the labels for one that it has");
  Printer printer = label_printer();
  printer.custom = {{{1000, 1000}, {4000, 30480}}};
  CHECK(refusal(other, printer).contains(QStringLiteral("; any from 10 × 10 mm to 40 × 304.8 mm\n")));
  for (int side = 3000; side < 3008; ++side) printer.media.push_back({{}, {side, side}});
  CHECK(refusal(other, printer).contains(QStringLiteral("; 2 more; any from")));
}

TEST_CASE("a printer that does not take PDF is refused", "[printer][job][src:rfc-8011/5.4.22]") {
  Printer printer = label_printer();
  printer.formats = {QStringLiteral("image/pwg-raster"), QStringLiteral("image/urf")};
  CHECK(refusal(wish(), printer) ==
        "the printer \"labels\" does not take PDF; it takes image/pwg-raster, image/urf\n"
        "  set it up in this machine's own printing (CUPS), which turns PDF into what it takes, and print by its name "
        "there");
  printer.formats.clear();
  CHECK(refusal(wish(), printer) == "taken");
}

TEST_CASE("a printer of another resolution is refused, a whole multiple or one much finer is as good",
          "[printer][job][src:practice/print]") {
  Printer printer = label_printer();
  printer.dots_per_inch = {300, 400};
  CHECK(refusal(wish(), printer) ==
        "the printer \"labels\" prints 300, 400 dots per inch, and the medium is for 203\n"
        "  write the printer's into dots_per_inch of the medium and make the labels again");
  JobWish finer = wish();
  finer.dots_per_inch = 300;
  CHECK(terms_for(finer, printer)->dots_per_inch == 300);
  printer.dots_per_inch = {1200, 600};
  CHECK(terms_for(finer, printer)->dots_per_inch == 600);
  CHECK(terms_for(wish(), printer)->dots_per_inch == std::nullopt);  // of 203, and left to the printer
  printer.dots_per_inch.clear();
  CHECK(terms_for(wish(), printer)->dots_per_inch == std::nullopt);
  finer.dots_per_inch.reset();
  printer.dots_per_inch = {203};
  CHECK(terms_for(finer, printer)->dots_per_inch == std::nullopt);
}

TEST_CASE("copies and pages are refused where the printer cannot do them", "[printer][job][src:rfc-8011/5.2]") {
  Printer printer = label_printer();
  JobWish many = wish();
  many.copies = 99;
  CHECK(refusal(many, printer) == "taken");
  many.copies = 100;
  CHECK(refusal(many, printer) == "the printer \"labels\" makes at the most 99 copies\n  print several times");
  printer.most_copies = 0;
  CHECK(refusal(many, printer) == "taken");
  JobWish part = wish();
  part.pages = PageRange{3, 9};
  CHECK(refusal(part, printer) == "taken");
  printer.page_ranges = false;
  CHECK(refusal(part, printer) ==
        "the printer \"labels\" cannot print a part of the pages\n  make a PDF of the labels that are wanted");
}

TEST_CASE("a printer that takes no jobs is refused", "[printer][job][src:rfc-8011/5.4.23]") {
  Printer printer = label_printer();
  printer.accepting = false;
  CHECK(refusal(wish(), printer) ==
        "the printer \"labels\" takes no jobs now\n  let it take jobs again, at the printer or where it was set up");
}
