// The test page from the command line: what each code says, as an independent reader reads it, and what is refused.
#include <set>

#include "small_kitchen.h"

using namespace lardiner;
using namespace lardiner::command;

namespace {

Ran test_page(const Folder& folder, const QStringList& more) {
  return folder.lardiner(QStringList{"--kitchen", "kitchen", "test-page"} + more);
}

}  // namespace

TEST_CASE(
    "the test page of a medium has a code of each module size from 2 dots up, as long as a label's, and each reads",
    "[command][test_page]") {
  const SmallKitchen kitchen;
  const Ran ran = test_page(kitchen.folder, {"side", "--out", "test.pdf"});
  CHECK(ran.err == "");
  REQUIRE(ran.status == 0);
  CHECK(ran.out.contains("Write the least module that your phone reads into module_dots of the medium \"side\"."));
  std::set<int> modules;
  QString text;
  for (const Page& page : pages(kitchen.folder, "test.pdf")) {
    text += unspaced(page.text);
    for (const QString& code : page.codes) {
      CHECK(code.startsWith("Lardiner test page 203 dpi, "));
      CHECK(code.size() > 70);
      CHECK(code.size() < 90);
      modules.insert(code.section(", ", 1, 1).section(u' ', 0, 0).toInt());
    }
  }
  REQUIRE(modules.size() > 3);
  CHECK(*modules.begin() == 2);
  CHECK(*modules.rbegin() == static_cast<int>(modules.size()) + 1);  // none is left out
  for (const char* said : {"10 mm must measure 10 mm", "side: 100 × 50 mm, 203 dpi",
                           "inside: ", "finisher: ", "sale: ", "hold: ", "pad: ", "0 O 1 l I 8 B 5 S", "burnt-out"})
    CHECK(text.contains(unspaced(QString::fromUtf8(said))));
}

TEST_CASE("refused: the test page of an unknown medium, or in the place of a file", "[command][test_page][refused]") {
  const SmallKitchen kitchen;
  const Ran unknown = test_page(kitchen.folder, {"lidd", "--out", "test.pdf"});
  CHECK(unknown.status == 1);
  CHECK(unknown.err == "--medium: \"lidd\" is not a medium of the book\n  its media are: lid, side\n");
  CHECK(kitchen.as_it_was());
  CHECK(test_page(kitchen.folder, {"lid", "--out", "test"}).status == 2);
  REQUIRE(test_page(kitchen.folder, {"side", "--out", "test.pdf"}).status == 0);
  const QByteArray first = kitchen.folder.read("test.pdf");
  CHECK(test_page(kitchen.folder, {"side", "--out", "test.pdf"}).status == 1);
  CHECK(test_page(kitchen.folder, {"side", "--out", "test.pdf", "--replace"}).status == 0);
  CHECK(kitchen.folder.read("test.pdf") == first);
}

TEST_CASE("the test page of a sheet begins with the guide to its places", "[command][test_page]") {
  const Folder folder;
  folder.copy_book(kDemoKitchen, "kitchen");
  const Ran ran = test_page(folder, {"sheet", "--out", "test.pdf"});
  CHECK(ran.err == "");
  REQUIRE(ran.status == 0);
  const std::vector<Page> sheets = page_texts(folder, "test.pdf");
  REQUIRE(sheets.size() >= 2);
  CHECK_FALSE(sheets[0].text.contains("Lardiner"));
  CHECK(sheets[1].text.contains("Lardiner"));
}
