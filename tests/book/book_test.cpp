// A sound book is read whole and without a complaint.
#include <algorithm>

#include "kitchen.h"

using namespace lardiner;
using namespace lardiner::book;

namespace {

// The examples of the format document: the first is kitchen.toml, the rest the other files.
std::vector<SourceFile> examples() {
  QFile file(QStringLiteral(LARDINER_SOURCE_DIR "/src/book/FORMAT.md"));
  REQUIRE(file.open(QIODevice::ReadOnly));
  const QString document = QString::fromUtf8(file.readAll());
  std::vector<SourceFile> files;
  for (qsizetype at = 0; (at = document.indexOf(QStringLiteral("```toml\n"), at)) >= 0;) {
    const qsizetype end = document.indexOf(QStringLiteral("```\n"), at + 8);
    const QString name = files.empty() ? QStringLiteral("kitchen.toml") : QStringLiteral("%1.toml").arg(files.size());
    files.push_back({name, document.mid(at + 8, end - at - 8).toUtf8()});
    at = end;
  }
  return files;
}

}  // namespace

TEST_CASE("a sound book has neither errors nor gaps", "[book]") {
  const Reading reading = book_test::read(book_test::kitchen());
  CHECK(problem::text(reading.findings.errors) == QString());
  CHECK(problem::text(reading.findings.gaps) == QString());
}

TEST_CASE("the examples of the format document are read as they stand, but for what they name and do not show",
          "[book][format]") {
  const std::vector<SourceFile> files = examples();
  CHECK(files.size() == 5);
  problem::Errors errors = book_test::read(files).findings.errors;
  const auto names_another = [](const problem::Error& error) {
    return error.code == problem::Code::Unknown && error.what.contains(QStringLiteral(" has the id "));
  };
  errors.erase(std::remove_if(errors.begin(), errors.end(), names_another), errors.end());
  CHECK(problem::text(errors) == QString());
}
