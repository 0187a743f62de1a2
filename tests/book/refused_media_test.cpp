// Label materials: each way to write one, and each way to be refused.
#include "refused.h"
#include "tables.h"

using namespace lardiner;
using namespace lardiner::book;

namespace {

constexpr const char* kRoll = "[[media]]\nid = \"side\"\n";
constexpr const char* kSide = "height = \"2 in\"\n";

// The side, two by four on Letter.
constexpr const char* kSheet =
    "height = \"2 in\"\nform = \"sheet\"\npaper = \"Letter\"\ncolumns = 2\nrows = 5\nleft = \"0.2 in\"\n"
    "top = \"12.7 mm\"\ngap_across = \"2.54 mm\"\ngap_down = \"0 mm\"\n";

QByteArray sheet_with(const QByteArray& from, const QByteArray& to) {
  QByteArray sheet = kSheet;
  REQUIRE(sheet.count(from) == 1);
  return sheet.replace(from, to);
}

QString refused(const QByteArray& media) {
  std::vector<book_test::SourceFile> files = book_test::kitchen();
  book_test::edit(book_test::file_of(files, QStringLiteral("places.toml")), kRoll, kSide, media);
  return problem::text(book_test::read(files).findings.errors);
}

Media side_with(const QByteArray& media) {
  std::vector<book_test::SourceFile> files = book_test::kitchen();
  book_test::edit(book_test::file_of(files, QStringLiteral("places.toml")), kRoll, kSide, media);
  const Reading reading = book_test::read(files);
  CHECK(problem::text(reading.findings.errors) == QString());
  return *reading.book.medium(QStringLiteral("side"));
}

}  // namespace

TEST_CASE("a sheet of labels is read in hundredths of a millimetre", "[book][media][src:iso-216][src:asme-y14.1]") {
  const Media medium = side_with(kSheet);
  REQUIRE(medium.sheet);
  const Sheet& sheet = *medium.sheet;
  CHECK(sheet.paper_width == 21590);
  CHECK(sheet.paper_height == 27940);
  CHECK(sheet.columns == 2);
  CHECK(sheet.rows == 5);
  CHECK(sheet.labels() == 10);
  CHECK(sheet.left == 508);
  CHECK(sheet.top == 1270);
  CHECK(sheet.gap_across == 254);
  CHECK(sheet.gap_down == 0);
  const auto paper = [](const char* name) {
    const Sheet of =
        *side_with(sheet_with("columns = 2\nrows = 5", "columns = 1\nrows = 1").replace("\"Letter\"", name)).sheet;
    return std::pair(of.paper_width, of.paper_height);
  };
  CHECK(paper("\"A3\"") == std::pair(29700, 42000));
  CHECK(paper("\"A4\"") == std::pair(21000, 29700));
  CHECK(paper("\"A5\"") == std::pair(14800, 21000));
  CHECK(paper("\"Ledger\"") == std::pair(27940, 43180));
  CHECK(paper("{ width = \"12 cm\", height = \"4 in\" }") == std::pair(12000, 10160));
}

TEST_CASE("without a form, and with the form of a roll, a medium is a roll", "[book][media]") {
  CHECK_FALSE(side_with(kSide).sheet);
  CHECK_FALSE(side_with(QByteArray(kSide) + "form = \"roll\"\n").sheet);
}

TEST_CASE("a single row or column needs no gap, and may state one", "[book][media]") {
  const QByteArray one = sheet_with("columns = 2\nrows = 5", "columns = 1\nrows = 1");
  CHECK(side_with(one).sheet->gap_across == 254);
  CHECK(side_with(QByteArray(one).replace("gap_across = \"2.54 mm\"\ngap_down = \"0 mm\"\n", "")).sheet->gap_across ==
        0);
}

TEST_CASE("a label that is read otherwise than it lies is turned", "[book][media][src:rfc-8011]") {
  const auto with = [](const QByteArray& direction, const QByteArray& height) {
    return side_with("height = \"" + height + "\"\n" + direction);
  };
  const Media wide = with("direction = \"landscape\"\n", "2 in");
  CHECK_FALSE(wide.turned);
  CHECK(with("direction = \"portrait\"\n", "2 in").turned);
  CHECK(with("direction = \"portrait\"\n", "2 in").width_as_read() == 5080);
  CHECK(with("direction = \"portrait\"\n", "2 in").height_as_read() == 10160);
  CHECK(with("direction = \"landscape\"\n", "6 in").turned);
  CHECK_FALSE(with("direction = \"portrait\"\n", "6 in").turned);
  CHECK_FALSE(with("", "2 in").turned);
  CHECK_FALSE(with("", "6 in").turned);
  for (const char* direction : {"landscape", "portrait"})
    CHECK_FALSE(with(QByteArray("direction = \"") + direction + "\"\n", "4 in").turned);
}

TEST_CASE("a margin is one length for all sides, or each side's own", "[book][media]") {
  const auto with = [](const QByteArray& margin) { return side_with(kSide + margin).margin; };
  CHECK(with("") == Margins{});
  CHECK(with("margin = \"1.5 mm\"\n") == Margins{150, 150, 150, 150});
  CHECK(with("margin = { top = \"1 mm\", right = \"2 mm\", bottom = \"3 mm\", left = \"4 mm\" }\n") ==
        Margins{100, 200, 300, 400});
  CHECK(with("margin = { left = \"0.1 in\" }\n") == Margins{0, 0, 0, 254});
  CHECK(with("margin = { top = \"25 mm\", bottom = \"25.79 mm\" }\n") == Margins{2500, 0, 2579, 0});
}

TEST_CASE("a medium is refused for its form, its sheet or its margins", "[book][media][refused]") {
  CHECK(refused(sheet_with("\"sheet\"", "\"sheets\"")) ==
        "places.toml:14:8: medium \"side\": form cannot be \"sheets\"\n"
        "  form = \"sheets\"\n"
        "         ^^^^^^^^\n"
        "  write \"roll\" or \"sheet\"\n");
  CHECK(refused(QByteArray(kSide) + "paper = \"A4\"\nrows = 3\n") ==
        "places.toml:14:9: medium \"side\" is a roll, and has no paper\n"
        "  paper = \"A4\"\n"
        "          ^^^^\n"
        "  write form = \"sheet\", or leave paper out\n"
        "places.toml:15:8: medium \"side\" is a roll, and has no rows\n"
        "  rows = 3\n"
        "         ^\n"
        "  write form = \"sheet\", or leave rows out\n");
  CHECK(refused(QByteArray(kSide) + "form = \"sheet\"\n") ==
        "places.toml:9:1: medium \"side\" is a sheet, but has no columns\n"
        "  [[media]]\n"
        "  ^^^^^^^^^\n"
        "  state how many labels it has: columns = 2\n"
        "places.toml:9:1: medium \"side\" is a sheet, but has no left\n"
        "  [[media]]\n"
        "  ^^^^^^^^^\n"
        "  state left, from the paper's edge to the first label: \"4 mm\"\n"
        "places.toml:9:1: medium \"side\" is a sheet, but has no paper\n"
        "  [[media]]\n"
        "  ^^^^^^^^^\n"
        "  state paper: \"A4\", \"Letter\" or { width = \"210 mm\", height = \"297 mm\" }\n"
        "places.toml:9:1: medium \"side\" is a sheet, but has no rows\n"
        "  [[media]]\n"
        "  ^^^^^^^^^\n"
        "  state how many labels it has: rows = 2\n"
        "places.toml:9:1: medium \"side\" is a sheet, but has no top\n"
        "  [[media]]\n"
        "  ^^^^^^^^^\n"
        "  state top, from the paper's edge to the first label: \"12 mm\"\n");
  CHECK(refused(sheet_with("gap_across = \"2.54 mm\"\ngap_down = \"0 mm\"\n", "")) ==
        "places.toml:9:1: medium \"side\" is a sheet, but has no gap_across\n"
        "  [[media]]\n"
        "  ^^^^^^^^^\n"
        "  state gap_across, between two labels of a row: \"3 mm\", or \"0 mm\"\n"
        "places.toml:9:1: medium \"side\" is a sheet, but has no gap_down\n"
        "  [[media]]\n"
        "  ^^^^^^^^^\n"
        "  state gap_down, between two rows of labels: \"3 mm\", or \"0 mm\"\n");
  CHECK(refused(sheet_with("\"Letter\"", "\"letter\"")) ==
        "places.toml:15:9: medium \"side\": paper cannot be \"letter\"\n"
        "  paper = \"letter\"\n"
        "          ^^^^^^^^\n"
        "  write \"A3\", \"A4\", \"A5\", \"Letter\" or \"Ledger\"\n");
  CHECK(refused(sheet_with("\"Letter\"", "{ width = \"12 in\", high = \"9 in\" }")) ==
        "places.toml:15:9: the paper of medium \"side\" has no height\n"
        "  paper = { width = \"12 in\", high = \"9 in\" }\n"
        "          ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n"
        "  state height: \"210 mm\" or \"8.5 in\"\n"
        "places.toml:15:28: the paper of medium \"side\" cannot have \"high\"\n"
        "  paper = { width = \"12 in\", high = \"9 in\" }\n"
        "                             ^^^^\n"
        "  what it can have: width, height\n");
  CHECK(refused(sheet_with("columns = 2", "columns = 0")) ==
        "places.toml:16:11: medium \"side\": columns is 0\n"
        "  columns = 0\n"
        "            ^\n"
        "  write a whole number from 1 to 100\n");
  CHECK(refused(QByteArray(kSide) + "direction = \"upright\"\n") ==
        "places.toml:14:13: medium \"side\": direction cannot be \"upright\"\n"
        "  direction = \"upright\"\n"
        "              ^^^^^^^^^\n"
        "  write \"portrait\" or \"landscape\"\n");
  CHECK(refused("height = \"0 mm\"\n") ==
        "places.toml:13:10: medium \"side\": height is nothing\n"
        "  height = \"0 mm\"\n"
        "           ^^^^^^\n"
        "  state height: \"50 mm\" or \"2 in\"\n");
}

TEST_CASE("labels that do not fit on their paper with margins and gaps are refused", "[book][media][refused]") {
  // 2 × 101.6 + 2.54 mm leave 10.16 of Letter's 215.9 mm; 5 × 50.8 mm leave 25.4 of its 279.4.
  CHECK(refused(sheet_with("left = \"0.2 in\"", "left = \"0.4 in\"")) == "");
  CHECK(refused(sheet_with("left = \"0.2 in\"", "left = \"10.17 mm\"")) ==
        "places.toml:16:11: medium \"side\": its columns do not fit on the paper: they end at 215.91 mm of 215.9 mm\n"
        "  columns = 2\n"
        "            ^\n"
        "  write fewer columns, or less left, gap_across or width\n");
  CHECK(refused(sheet_with("top = \"12.7 mm\"", "top = \"25.4 mm\"")) == "");
  CHECK(refused(sheet_with("gap_down = \"0 mm\"", "gap_down = \"0.2 in\"")) ==
        "places.toml:17:8: medium \"side\": its rows do not fit on the paper: they end at 287.02 mm of 279.4 mm\n"
        "  rows = 5\n"
        "         ^\n"
        "  write fewer rows, or less top, gap_down or height\n");
}

TEST_CASE("margins that leave nothing to print on are refused", "[book][media][refused]") {
  CHECK(refused(QByteArray(kSide) + "margin = { left = \"2 in\", right = \"2 in\" }\n") ==
        "places.toml:14:10: medium \"side\" is all margin\n"
        "  margin = { left = \"2 in\", right = \"2 in\" }\n"
        "           ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n"
        "  write margins that together are less than its width and its height\n");
  CHECK(refused(QByteArray(kSide) + "margin = { top = \"2 in\" }\n").contains("is all margin"));
  CHECK(refused(QByteArray(kSide) + "margin = { top = \"1.9 in\" }\n") == "");
  CHECK(refused(QByteArray(kSide) + "margin = { above = \"1 mm\" }\n") ==
        "places.toml:14:12: the margin of medium \"side\" cannot have \"above\"\n"
        "  margin = { above = \"1 mm\" }\n"
        "             ^^^^^\n"
        "  what it can have: top, right, bottom, left\n");
}

TEST_CASE("a container is refused on a medium that does not bear how it is kept, and accepted on one that does",
          "[book][media][refused]") {
  struct Kept {
    const char* kept;
    const char* bears;
  };
  const std::vector<Kept> pairs{{"chilled", "chilled"}, {"frozen", "freezer"}, {"hot-held", "hot"}};
  for (const Kept& kept : pairs)
    for (const Kept& borne : pairs) {
      std::vector<book_test::SourceFile> files = book_test::kitchen();
      book_test::edit(book_test::file_of(files, QStringLiteral("places.toml")), kRoll, "bears = [\"chilled\"]",
                      QByteArray("bears = [\"") + borne.bears + "\"]");
      book_test::SourceFile& products = book_test::file_of(files, QStringLiteral("products.toml"));
      book_test::edit(products, "id = \"marinade\"", "media = \"lid\"",
                      QByteArray("media = \"side\", kept = \"") + kept.kept + "\"");
      QString said;
      for (const problem::Error& error : book_test::read(files).findings.errors)
        if (error.what.contains(QStringLiteral("\"marinade\": the medium"))) said += error.what + u'\n' + error.hint;
      CAPTURE(kept.kept, borne.bears);
      const QString needed = QString::fromLatin1(kept.bears);
      CHECK(said == (kept.bears == borne.bears
                         ? QString()
                         : QStringLiteral("a container of product \"marinade\": the medium \"side\" does not bear %1\n"
                                          "choose a medium whose bears has \"%1\"")
                               .arg(needed)));
    }
}
