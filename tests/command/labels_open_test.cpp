// The PDFs of the demo day: one for each medium, opened by every reader without a word, one page for each container.
#include <QRegularExpression>
#include <numeric>
#include <set>

#include "demo_day.h"
#include "our_book.h"

using namespace lardiner;
using namespace lardiner::command;
using namespace Qt::StringLiterals;

namespace {

// Points of a page's sides, for every page: "Page    3 size: 141.516 x 141.516 pts".
std::vector<std::pair<double, double>> page_sizes(const DemoDay& day, const QString& file) {
  const QString info = day.folder.run("pdfinfo", {"-f", "1", "-l", "9999", "labels/" + file}).out;
  static const QRegularExpression kSize(QStringLiteral("Page +\\d+ size: +([\\d.]+) x ([\\d.]+) pts"));
  std::vector<std::pair<double, double>> out;
  for (auto match = kSize.globalMatch(info); match.hasNext();) {
    const auto size = match.next();
    out.emplace_back(size.captured(1).toDouble(), size.captured(2).toDouble());
  }
  return out;
}

// A side of the page, in dots, against the medium's, in hundredths of a millimetre.
void check_side(double points, int hundredths, int dots_per_inch) {
  const double dots = points * dots_per_inch / 72;
  const double most = hundredths / 2540.0 * dots_per_inch;
  CHECK(std::abs(dots - std::round(dots)) < 0.01);
  CHECK(dots <= most + 0.01);
  CHECK(dots > most - 1);
}

}  // namespace

TEST_CASE("the demo day gives a PDF for each medium, says how many labels each holds, and has nothing to complain of",
          "[command][labels][src:practice]") {
  const DemoDay& day = demo_day();
  QStringList expected;
  for (const book::Media& medium : demo_book().media)
    if (!medium.sheet) expected << medium.id + ".pdf";  // the sheet is for the day when the roll is out
  expected.sort();
  CHECK(day.ran.status == 0);
  CHECK(day.ran.err == "");
  CHECK(day.files == expected);
  QString report;
  for (const QString& file : day.files) {
    const auto count = std::count_if(day.pages.begin(), day.pages.end(), [&](const Page& p) { return p.file == file; });
    report += QStringLiteral("labels/%1: %2 labels\n").arg(file).arg(count);
  }
  CHECK(day.ran.out == report);
}

TEST_CASE("each container of the day's records has one label, and there are over 200 from 20 batches",
          "[command][labels][src:practice]") {
  const DemoDay& day = demo_day();
  const int containers = std::accumulate(day.made.begin(), day.made.end(), 0,
                                         [](int sum, const Making& making) { return sum + making.containers; });
  const auto batches =
      std::count_if(day.made.begin(), day.made.end(), [](const Making& making) { return !making.ingredient; });
  CHECK(day.pages.size() == static_cast<size_t>(containers));
  CHECK(containers > 200);
  CHECK(batches >= 20);
  REQUIRE(day.batches.size() == static_cast<qsizetype>(day.made.size()));
  std::set<std::pair<QString, int>> seen;
  std::map<QString, int> of;
  for (const Labelled& label : labelled(day)) {
    INFO(label.page->name().toStdString());
    CHECK(seen.emplace(label.lot, label.number).second);
    of[label.lot] = label.of;
  }
  std::map<QString, std::vector<int>> by_item, expected;
  for (const QJsonValue& batch : day.batches)
    by_item[batch["item"_L1].toString()].push_back(of[batch["lot"_L1].toString()]);
  for (const Making& making : day.made) expected[making.item].push_back(making.containers);
  for (auto& [item, counts] : by_item) std::sort(counts.begin(), counts.end());
  for (auto& [item, counts] : expected) std::sort(counts.begin(), counts.end());
  CHECK(by_item == expected);
}

TEST_CASE("the day's labels serve all three purposes: inside, for the finisher, for sale",
          "[command][labels][src:practice]") {
  int inside = 0, finisher = 0, sale = 0;
  for (const Page& page : demo_day().pages) {
    if (page.text.contains("Ingredients: "))
      ++sale;
    else if (page.text.contains("Remove label before the oven"))
      ++finisher;
    else
      ++inside;
  }
  CHECK(inside > 0);
  CHECK(finisher > 0);
  CHECK(sale > 0);
}

TEST_CASE("qpdf, poppler and MuPDF open every PDF of the day without one line of complaint",
          "[command][labels][pdf][src:practice]") {
  const DemoDay& day = demo_day();
  for (const QString& file : day.files) {
    const QString pdf = "labels/" + file;
    INFO(file.toStdString());
    const Ran qpdf = day.folder.run("qpdf", {"--check", pdf});
    CHECK(qpdf.status == 0);
    CHECK(qpdf.err == "");
    CHECK_FALSE(qpdf.out.contains("WARNING"));
    const Ran poppler = day.folder.run("pdftoppm", {"-r", "40", "-gray", pdf, "poppler"});
    CHECK(poppler.status == 0);
    CHECK(poppler.err == "");
    const Ran mupdf = day.folder.run("mutool", {"draw", "-q", "-N", "-r", "40", "-F", "pgm", "-o", "/dev/null", pdf});
    CHECK(mupdf.status == 0);
    CHECK(mupdf.err == "");
    CHECK(mupdf.out == "");
  }
}

TEST_CASE("each page is as large as its medium, cut to whole dots of its printer",
          "[command][labels][pdf][src:practice]") {
  const DemoDay& day = demo_day();
  for (const book::Media& medium : demo_book().media) {
    INFO(medium.id.toStdString());
    const QString file = medium.id + ".pdf";
    const auto sizes = page_sizes(day, file);
    const auto count = std::count_if(day.pages.begin(), day.pages.end(), [&](const Page& p) { return p.file == file; });
    CHECK(sizes.size() == static_cast<size_t>(count));
    for (const auto& [width, height] : sizes) {
      check_side(width, medium.width, medium.dots_per_inch);
      check_side(height, medium.height, medium.dots_per_inch);
    }
  }
}

TEST_CASE("each PDF names its title and language, and every face is embedded as far as it is used, with its text",
          "[command][labels][pdf][src:practice]") {
  const DemoDay& day = demo_day();
  for (const QString& file : day.files) {
    const QString pdf = "labels/" + file;
    INFO(file.toStdString());
    const QString info = day.folder.run("pdfinfo", {pdf}).out;
    CHECK(info.contains(QRegularExpression(QStringLiteral("^Title: +Labels, Quarry Lane Commissary, 2026-11-25$"),
                                           QRegularExpression::MultilineOption)));
    CHECK(day.folder.run("mutool", {"show", pdf, "trailer/Root/Lang"}).out == "(en)\n");
    const QStringList fonts = day.folder.run("pdffonts", {pdf}).out.split(u'\n', Qt::SkipEmptyParts).mid(2);
    CHECK_FALSE(fonts.isEmpty());
    for (const QString& font : fonts) {
      INFO(font.toStdString());
      CHECK(
          font.contains(QRegularExpression(QStringLiteral(" yes +yes +yes +\\d+ +0$"))));  // embedded, subset, Unicode
    }
  }
}
