// Pages: every text is escaped for where it stands, and nothing that a page asks for can be left out.
#include "station/pages.h"

#include <QFile>
#include <stdexcept>

#include "show.h"
#include "words/pack.h"

using namespace lardiner;
using namespace lardiner::station;

namespace {

const QByteArray kPragma = "{{%AUTOESCAPE context=\"HTML\"}}\n";

const std::vector<words::Language>& english() {
  static const std::vector<words::Language> languages = [] {
    QFile file(QStringLiteral(LARDINER_SOURCE_DIR "/templates/words/en.toml"));
    REQUIRE(file.open(QFile::ReadOnly));
    return std::vector<words::Language>{words::read_language(file.readAll(), "en.toml", "en").value()};
  }();
  return languages;
}

problem::ExpectedAll<Pages> read(const QByteArray& body, const QByteArray& frame = "<main>[[content]]</main>\n") {
  return Pages::read({{"frame.html", "frame", kPragma + frame}, {"one.html", "one", body}}, english());
}

QString refused(const QByteArray& body) {
  const auto pages = read(body);
  return pages ? QString() : problem::text(pages.error());
}

QString rendered(const QByteArray& body, const Part& part) {
  const auto pages = read(kPragma + body);
  INFO(problem::text(pages ? problem::Errors() : pages.error()).toStdString());
  REQUIRE(pages);
  return QString::fromUtf8(pages->page("one", "en", part));
}

}  // namespace

TEST_CASE("a page says its values and its rows, in its frame and in its language", "[station][pages]") {
  Part part;
  part.set("NAME", "Salsa");
  part.add("ROW").set("TEXT", "one");
  part.add("ROW").set("TEXT", "two");
  CHECK(rendered("<h1>{{NAME}} [[today]]</h1>{{#ROW}}<p>{{TEXT}}</p>{{/ROW}}\n", part) ==
        "<main><h1>Salsa Today</h1><p>one</p><p>two</p>\n</main>\n");
}

TEST_CASE("no text becomes markup, wherever it stands", "[station][pages][attack]") {
  for (const char* attack : {"<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "' onmouseover='alert(1)",
                             "{{NAME}}", "]]><!--", "&lt;b&gt;"}) {
    Part part;
    part.set("T", QString::fromUtf8(attack));
    const QString page = rendered("<p>{{T}}</p><input value=\"{{T}}\"><a href=\"/lot/{{T}}?item={{T}}\">x</a>\n", part);
    INFO(page.toStdString());
    CHECK(page.count('<') == 7);
    CHECK(page.count('"') == 4);
    CHECK_FALSE(page.contains("<script"));
    CHECK_FALSE(page.contains(" onmouseover='"));
  }
}

TEST_CASE("an address that a text gives is one of ours or none", "[station][pages][attack]") {
  Part part;
  part.set("T", "javascript:alert(1)");
  CHECK_FALSE(rendered("<a href=\"{{T}}\">x</a>\n", part).contains("javascript:"));
}

TEST_CASE("a value that a page asks for is never left out in silence", "[station][pages]") {
  const auto pages = read(kPragma + "<p>{{USE_BY}}</p>{{#ROW}}<p>{{TEXT}}</p>{{/ROW}}\n");
  REQUIRE(pages);
  Part part;
  CHECK_THROWS_AS(pages->page("one", "en", part), std::logic_error);
  part.set("USE_BY", "");
  CHECK_NOTHROW(pages->page("one", "en", part));
  part.add("ROW");
  CHECK_THROWS_AS(pages->page("one", "en", part), std::logic_error);
  CHECK_THROWS_AS(pages->page("two", "en", part), std::logic_error);
  CHECK_THROWS_AS(pages->page("one", "xx", part), std::logic_error);
}

TEST_CASE("a page that would not escape is refused", "[station][pages]") {
  CHECK(refused("<p>x</p>\n") ==
        "one.html: the page does not begin with its pragma\n"
        "  let it begin with {{%AUTOESCAPE context=\"HTML\"}}\n");
  CHECK(refused("{{%AUTOESCAPE context=\"JSON\"}}\n<p>x</p>\n").startsWith("one.html: the page does not begin with"));
  CHECK(refused(kPragma + "<p>{{T:none}}</p>\n") ==
        "one.html: a mark of the page chooses its own escape\n"
        "  write the name alone: what it needs is told from where it stands\n");
  CHECK(refused(kPragma + kPragma + "<p>x</p>\n") == "one.html: the page has a second pragma\n  leave it out\n");
  CHECK(refused(kPragma + "{{>OTHER}}\n") == "one.html: the page includes another\n  write it out\n");
  CHECK(refused(kPragma + "{{#ROW}}<p>x</p>\n").startsWith("one.html: the marks of the page do not close\n"));
  CHECK(refused(kPragma + "[[no_such_word]]\n") ==
        "one.html: there is no word \"no_such_word\" for a page\n"
        "  correct the key, or add it to templates/words\n");
  CHECK_FALSE(read(kPragma, "<main></main>\n"));
}
