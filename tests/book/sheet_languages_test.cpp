// The languages that a kitchen's sheets are in: one or two of its own, the first where it names none.
#include "kitchen.h"
#include "refused.h"

using namespace lardiner;

namespace {

QStringList sheet_languages(const char* line) {
  std::vector<book_test::SourceFile> files = book_test::kitchen();
  book_test::edit(book_test::file_of(files, QStringLiteral("kitchen.toml")), "", "languages = [\"en\", \"es\"]\n",
                  QByteArray("languages = [\"en\", \"es\"]\n") + line);
  const book_test::Reading reading = book_test::read(files);
  CHECK(problem::text(reading.findings.errors) == QString());
  return reading.book.kitchen.sheet_languages;
}

}  // namespace

TEST_CASE("sheets are in one or two languages of the kitchen, in its first where it names none", "[book][sheets]") {
  CHECK(sheet_languages("") == QStringList{"en"});
  CHECK(sheet_languages("sheet_languages = [\"es\"]\n") == QStringList{"es"});
  CHECK(sheet_languages("sheet_languages = [\"es\", \"en\"]\n") == QStringList{"es", "en"});
}

TEST_CASE("a book is refused for sheets in languages that it does not have, or in three", "[book][refused][sheets]") {
  book_test::check_refused({
      {"sheets in a language that the kitchen does not have", "kitchen.toml", "", "languages = [\"en\", \"es\"]",
       "languages = [\"en\", \"es\"]\nsheet_languages = [\"en\", \"fr\"]",
       R"(kitchen.toml:5:19: the kitchen asks for sheets in the language "fr"
  sheet_languages = ["en", "fr"]
                    ^^^^^^^^^^^^
  the kitchen's languages are en, es
)"},
      {"sheets in three languages", "kitchen.toml", "", "languages = [\"en\", \"es\"]",
       "languages = [\"en\", \"es\", \"vi\"]\nsheet_languages = [\"en\", \"es\", \"vi\"]",
       R"(kitchen.toml:5:19: the kitchen asks for sheets in more than 2 languages
  sheet_languages = ["en", "es", "vi"]
                    ^^^^^^^^^^^^^^^^^^
  name the one or two that the hands read
)"},
      {"sheets in one language twice", "kitchen.toml", "", "languages = [\"en\", \"es\"]",
       "languages = [\"en\", \"es\"]\nsheet_languages = [\"en\", \"en\"]",
       R"(kitchen.toml:5:19: the language "en" is named twice
  sheet_languages = ["en", "en"]
                    ^^^^^^^^^^^^
  name each language once
)"},
  });
}
