// The size and number of a PDF's pages are read, and what is no PDF to print is refused.
#include "printer/pdf_page.h"

#include "show.h"

using namespace lardiner;
using namespace lardiner::printer;

namespace {

QByteArray pdf(const QByteArray& body) { return "%PDF-1.4\n" + body + "\ntrailer\n<< >>\nstartxref\n9\n%%EOF\n"; }

QString refusal(const QByteArray& bytes) {
  const auto pages = pages_of(bytes, QStringLiteral("lid.pdf"));
  return pages ? QStringLiteral("read") : problem::text(pages.error());
}

PdfPages pages(const QByteArray& body) {
  const auto read = pages_of(pdf(body), QStringLiteral("lid.pdf"));
  REQUIRE(read);
  return *read;
}

}  // namespace

TEST_CASE("a page is as large as its media box, in points of 1/72 inch", "[printer][pdf][src:iso-32000/7.7.3]") {
  CHECK(pages("/MediaBox [ 0 0 288 432 ] /Count 12").size == Size{10160, 15240});
  CHECK(pages("/MediaBox[0 0 287.99899 431.99899]").size == Size{10160, 15240});
  CHECK(pages("/MediaBox\n[ 10 20 154 92 ]").size == Size{5080, 2540});
  CHECK(pages("/MediaBox [144 72 0 0]").size == Size{5080, 2540});
  CHECK(pages("/Count 3 /MediaBox [0 0 144 72] /Count 46 /Count 5").count == 46);
  CHECK(pages("/MediaBox [0 0 144 72]").count == 0);
  CHECK(pages("/MediaBox 7 0 R /MediaBox [0 0 144 72]").size == Size{5080, 2540});
  CHECK(pages("/MediaBox [0 0 144 72] /MediaBox [0 0 144.1 72]").size == Size{5080, 2540});
}

TEST_CASE("a file that is no PDF, or not all of one, is refused", "[printer][pdf][src:iso-32000/7.5]") {
  CHECK(refusal("") == "lid.pdf: this is no PDF\n  print a .pdf that lardiner wrote");
  CHECK(refusal("%PNG") == "lid.pdf: this is no PDF\n  print a .pdf that lardiner wrote");
  CHECK(refusal(pdf("/MediaBox [0 0 144 72]").chopped(8)) ==
        "lid.pdf: this PDF is cut off: its end is missing\n  make it again");
  CHECK(refusal(pdf("/MediaBox [0 0 144 72]")) == "read");
}

TEST_CASE("pages whose size cannot be read are refused", "[printer][pdf][src:iso-32000/7.7.3]") {
  const QString unread =
      QStringLiteral("lid.pdf: the size of its pages cannot be read\n  print a .pdf that lardiner wrote");
  for (const char* body : {"", "/MediaBox", "/MediaBox [0 0 144]", "/MediaBox [0 0 144 x]", "/MediaBox [0 0 144 72 1]",
                           "/MediaBox [0 0 0 0]", "/MediaBox [0 0 99999 72]", "/MediaBox [0 0 nan 72]",
                           "/MediaBox [0 0 144 72", "/MediaBoxes [0 0 144 72]"})
    CHECK(refusal(pdf(body)) == unread);
}

TEST_CASE("pages of different sizes are refused", "[printer][pdf][src:practice/print]") {
  CHECK(refusal(pdf("/MediaBox [0 0 144 72] /MediaBox [0 0 288 432]")) ==
        "lid.pdf: its pages are not all of one size: 50.8 × 25.4 mm and 101.6 × 152.4 mm\n"
        "  print a PDF for each medium");
}
