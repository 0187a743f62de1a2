// labels --proof: a page beside each PDF, with every label of it.
#include "pages.h"

using namespace lardiner::command;
using namespace Qt::StringLiterals;

TEST_CASE("a proof stands beside each PDF and shows as many labels", "[command][labels][proof]") {
  const Folder folder;
  const Ran ran =
      folder.lardiner({u"--kitchen"_s, kDemoKitchen, u"labels"_s, kDemoDay, u"--out"_s, u"labels"_s, u"--proof"_s});
  INFO(ran.err.toStdString());
  REQUIRE(ran.status == 0);
  int proofs = 0;
  for (const QString& name : folder.entries(u"labels"_s)) {
    if (!name.endsWith(u".pdf")) continue;
    const QString proof = name.chopped(4) + u"-proof.html"_s;
    CHECK(ran.out.contains(u"labels/"_s + proof + u": its proof\n"_s));
    const QString page = QString::fromUtf8(folder.read(u"labels/"_s + proof));
    CHECK(page.count(u"role=\"img\""_s) == static_cast<int>(page_texts(folder, u"labels/"_s + name).size()));
    ++proofs;
  }
  CHECK(proofs * 2 == folder.entries(u"labels"_s).size());
  SECTION("new labels take the place of labels and proofs") {
    const Ran again =
        folder.lardiner({u"--kitchen"_s, kDemoKitchen, u"labels"_s, kDemoDay, u"--out"_s, u"labels"_s, u"--replace"_s});
    CHECK(again.status == 0);
    CHECK(folder.entries(u"labels"_s).size() == proofs);
  }
}

TEST_CASE("a proof of one PDF alone is wrong usage, since it would need a second file", "[command][labels][proof]") {
  const Folder folder;
  const Ran ran = folder.lardiner({u"--kitchen"_s, kDemoKitchen, u"labels"_s, kDemoDay, u"--out"_s, u"lid.pdf"_s,
                                   u"--medium"_s, u"case"_s, u"--proof"_s});
  CHECK(ran.status == 2);
  CHECK(ran.err == u"--proof: proofs stand beside the PDFs, and --out names one PDF\n  name a folder with --out\n"_s);
  CHECK(folder.entries() == QStringList());
}
