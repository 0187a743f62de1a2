// Work sheets on pages: nothing lost, nothing clipped, no row divided, every page knows what it belongs to.
#include "paper/work_pages.h"

#include "paper/pdf.h"
#include "work_sheets.h"

namespace lardiner::paper {

namespace {

QByteArray pdf_of(const facts::WorkSheet& sheet, Paper paper) {
  PdfWriter writer(shipped_faces());
  writer.begin({sheet.title, sheet.language, page_size(paper)});
  for (const Drawing& page : pages_of(sheet, paper)) writer.add_page(std::nullopt, page);
  const auto pdf = writer.finish();
  if (!pdf) FAIL(problem::text(pdf.error()).toStdString());
  return *pdf;
}

// The page, from 1, on which a text stands; 0 where it stands on none or on several.
int page_with(const std::vector<Drawing>& pages, const QString& text) {
  int found = 0;
  for (std::size_t i = 0; i < pages.size(); ++i)
    for (const TextRun& run : pages[i].texts)
      if (run.text == text || run.text.startsWith(text + u' ')) {
        if (found != 0) return 0;
        found = static_cast<int>(i) + 1;
      }
  return found;
}

QString only_error(const facts::WorkSheet& sheet, problem::Code code) {
  const auto pages = lay_out(sheet, Paper::A4, shipped_faces());
  REQUIRE_FALSE(pages);
  REQUIRE(pages.error().size() == 1);
  CHECK(pages.error().front().code == code);
  return pages.error().front().what;
}

facts::WorkSheet with(facts::Part part) {
  facts::WorkSheet out = bare_sheet();
  out.parts.push_back(std::move(part));
  return out;
}

}  // namespace

TEST_CASE("pages are A4 and letter in dots of 300 to the inch", "[paper][work][src:iso-216][src:asme-y14.1]") {
  CHECK(page_size(Paper::A4) == PageSize{{2480}, {3508}, {300}});
  CHECK(page_size(Paper::Letter) == PageSize{{2550}, {3300}, {300}});
}

TEST_CASE("on pages by chance, in every language, no text is lost, out of order, clipped or touched", "[paper][work]") {
  unsigned seed = 0;
  for (const QString& language : shipped_languages())
    for (int round = 0; round < 6; ++round) {
      CAPTURE(language, ++seed);
      const Paper paper = round % 2 == 0 ? Paper::A4 : Paper::Letter;
      const facts::WorkSheet sheet = SheetChance(seed, language).sheet();
      const std::vector<Drawing> pages = pages_of(sheet, paper);
      QString all;
      for (std::size_t i = 0; i < pages.size(); ++i) {
        check_ink(pages[i], print_of(page_size(paper)));
        const QString drawn = read(pages[i]);
        CHECK(
            drawn.endsWith(without_spaces(sheet.running) + QStringLiteral("Page%1of%2").arg(i + 1).arg(pages.size())));
        all += drawn;
      }
      qsizetype at = 0;
      for (const QString& text : texts_in_order(sheet)) {
        const QString sought = without_spaces(text.normalized(QString::NormalizationForm_C));
        const qsizetype found = all.indexOf(sought, at);
        CAPTURE(text);
        CHECK(found >= at);
        at = found + sought.size();
      }
    }
}

TEST_CASE("equal sheets give equal pages, and any PDF reader takes them", "[paper][work]") {
  const facts::WorkSheet sheet = SheetChance(7, QStringLiteral("vi")).sheet();
  const QByteArray pdf = pdf_of(sheet, Paper::A4);
  CHECK(pdf == pdf_of(sheet, Paper::A4));
  const Folder folder;
  const QString file = folder.write(QStringLiteral("sheet.pdf"), pdf);
  CHECK(run(QStringLiteral("qpdf"), {QStringLiteral("--check"), file}).status == 0);
  CHECK(run(QStringLiteral("pdfinfo"), {file}).out.contains("(A4)"));
  const QString letter = folder.write(QStringLiteral("letter.pdf"), pdf_of(sheet, Paper::Letter));
  CHECK(run(QStringLiteral("pdfinfo"), {letter}).out.contains("(letter)"));
}

TEST_CASE("a row is never split, and its table's caption and headings stand above it on every page", "[paper][work]") {
  facts::Table table = plain_table(90);
  for (std::size_t i = 0; i < table.rows.size(); ++i)
    table.rows[i].cells[1].small = {{QStringLiteral("%1# beneath").arg(i + 1), false}};
  const auto pages = pages_of(with(table));
  REQUIRE(pages.size() > 3);
  for (int row = 1; row <= 90; ++row) {
    CAPTURE(row);
    const int page = page_with(pages, QStringLiteral("%1# onion").arg(row));
    CHECK(page > 0);
    CHECK(page_with(pages, QStringLiteral("%1# g").arg(row)) == page);
    CHECK(page_with(pages, QStringLiteral("%1# beneath").arg(row)) == page);
  }
  for (const Drawing& page : pages) {
    const QString drawn = read(page);
    CHECK(drawn.indexOf(QStringLiteral("WeighoutItemWeighLot")) >= 0);
    CHECK(drawn.indexOf(QStringLiteral("WeighoutItemWeighLot")) < drawn.indexOf(QStringLiteral("#onion")));
  }
}

TEST_CASE("a large line beneath an item is as large as the item, in whatever size that is set", "[paper][work]") {
  const auto size_of = [](const std::vector<Drawing>& pages, const QString& text) {
    for (const TextRun& run : pages.front().texts)
      if (run.text.startsWith(text)) return run.size.value;
    FAIL(text.toStdString());
    return 0.0;
  };
  for (const bool narrow : {false, true}) {
    facts::Table table = plain_table(1);
    table.rows[0].cells[1].small = {{QStringLiteral("USE-BY"), true, true}, {QStringLiteral("beneath"), true}};
    if (narrow)  // so many columns that the sizes give way
      for (int more = 0; more < 4; ++more) {
        table.columns.push_back({facts::Column::Kind::Amount, {}, 1});
        table.rows[0].cells.push_back(text_cell(QStringLiteral("1,234.5 kg")));
      }
    const auto pages = pages_of(with(table));
    CHECK(size_of(pages, QStringLiteral("USE-BY")) == size_of(pages, QStringLiteral("1#")));
    CHECK(size_of(pages, QStringLiteral("beneath")) == kSmall.value);
    CHECK((size_of(pages, QStringLiteral("1#")) < kRowSizes.front().item.value) == narrow);
  }
}

TEST_CASE("a table without caption and headings repeats nothing but its rule", "[paper][work]") {
  facts::Table table = plain_table(60);
  table.caption.clear();
  for (facts::Column& column : table.columns) column.heading.clear();
  for (const Drawing& page : pages_of(with(table))) CHECK_FALSE(read(page).contains(QStringLiteral("Weighout")));
}

TEST_CASE("a heading, or a band in a table, stands on the page of what follows it", "[paper][work]") {
  for (int rows = 1; rows < 30; ++rows) {
    CAPTURE(rows);
    facts::Table second = plain_table(2);
    second.rows.insert(second.rows.begin() + 1, {{text_cell(QStringLiteral("Clean down"), {}, true)}, true});
    for (facts::Row& row : second.rows) row.cells.back().small = {{QStringLiteral("of the second"), false}};
    second.caption = QStringLiteral("Second table");
    second.rows[0].cells[1].text = QStringLiteral("First of it");
    second.rows[2].cells[1].text = QStringLiteral("Last of it");
    facts::WorkSheet sheet = with(plain_table(rows));
    sheet.parts.push_back(facts::Note{QStringLiteral("Method"), true});
    sheet.parts.push_back(facts::Note{QStringLiteral("Stir it"), false});
    sheet.parts.push_back(second);
    const auto pages = pages_of(sheet);
    CHECK(page_with(pages, QStringLiteral("Method")) == page_with(pages, QStringLiteral("Stir it")));
    CHECK(page_with(pages, QStringLiteral("Clean down")) == page_with(pages, QStringLiteral("Last of it")));
    const int first = page_with(pages, QStringLiteral("First of it"));
    REQUIRE(first > 0);
    CHECK(read(pages[static_cast<std::size_t>(first) - 1]).contains(QStringLiteral("Secondtable")));
    const auto has_caption = std::count_if(pages.begin(), pages.end(), [](const Drawing& page) {
      return read(page).contains(QStringLiteral("Secondtable"));
    });
    CHECK(has_caption == (page_with(pages, QStringLiteral("Last of it")) == first ? 1 : 2));
  }
}

TEST_CASE("the cautions end the last page, whole, and rows go with them", "[paper][work]") {
  for (int rows = 1; rows < 40; ++rows) {
    CAPTURE(rows);
    facts::WorkSheet sheet = with(plain_table(rows));
    for (int i = 0; i < 6; ++i) sheet.foot << QStringLiteral("Caution %1: follow the local food code").arg(i);
    const auto pages = pages_of(sheet);
    for (int i = 0; i < 6; ++i)
      CHECK(page_with(pages, QStringLiteral("Caution %1: follow the local food code").arg(i)) ==
            static_cast<int>(pages.size()));
    CHECK(page_with(pages, QStringLiteral("%1# onion").arg(rows)) == static_cast<int>(pages.size()));
  }
}

TEST_CASE("what is weighed is read at a metre: figures of 4.7 mm, amounts larger", "[paper][work][src:iso-9241-303]") {
  const auto pages = pages_of(with(plain_table(3)));
  const auto capitals = [&](const QString& text) {
    for (const TextRun& run : pages.front().texts)
      if (run.text == text) return millimetres(Points{run.size.value * shipped_faces()[run.face].cap_height}).value;
    return 0.0;
  };
  // 16 minutes of arc at 1000 mm.
  CHECK(capitals(QStringLiteral("1# onion")) >= 1000 * std::tan(16.0 / 60 * 3.14159265358979 / 180));
  CHECK(capitals(QStringLiteral("1# g")) > capitals(QStringLiteral("1# onion")));
}

TEST_CASE("where columns are many the type gives way, in steps, before a word is refused", "[paper][work]") {
  facts::Table table = plain_table(2);
  std::vector<double> sizes;
  for (int more = 0; more < 4; ++more) {
    for (const Drawing& page : pages_of(with(table)))
      for (const TextRun& run : page.texts)
        if (run.text == QStringLiteral("1# onion")) sizes.push_back(run.size.value);
    table.columns.insert(table.columns.begin() + 2, {facts::Column::Kind::Amount, QStringLiteral("Pull"), 1});
    for (facts::Row& row : table.rows) row.cells.insert(row.cells.begin() + 2, text_cell(QStringLiteral("12.345 kg")));
  }
  REQUIRE(sizes.size() == 4);
  CHECK(sizes.front() == 20);
  CHECK(std::is_sorted(sizes.rbegin(), sizes.rend()));
  CHECK(sizes.back() >= 14);
  CHECK(sizes.back() < 20);
}

TEST_CASE("tables of the same columns have them in the same places, others their own", "[paper][work]") {
  facts::WorkSheet sheet = with(plain_table(1));
  facts::Table second = plain_table(1);
  second.rows[0].cells[1].text = QStringLiteral("second");
  second.rows[0].cells[2].text = QStringLiteral("100 lb 13.78 oz");
  const auto right_end_of = [&](const QString& text) {
    const std::vector<Drawing> pages = pages_of(sheet);
    for (const TextRun& run : pages.front().texts)
      if (run.text == text) return run.x.value + shipped_faces().width(run.text, run.face, run.size, kPrint).value;
    FAIL("not drawn");
    return 0.0;
  };
  sheet.parts.push_back(second);
  CHECK(right_end_of(QStringLiteral("1# g")) == Approx(right_end_of(QStringLiteral("100 lb 13.78 oz"))));
  second.columns.back().share = 3;
  sheet.parts.back() = second;
  CHECK(right_end_of(QStringLiteral("1# g")) != Approx(right_end_of(QStringLiteral("100 lb 13.78 oz"))));
}

TEST_CASE("small lines longer than their column run on to the right, where that makes the row lower", "[paper][work]") {
  facts::Table table = plain_table(1);
  const QString raw = QStringLiteral("Raw: keep apart, put on last, clean down after, then wash your hands well");
  table.rows[0].cells[1].small = {{QStringLiteral("cebolla"), false}, {raw, true}, {QStringLiteral("MILK"), true}};
  const auto rows_of = [&](const QString& text) {
    const auto pages = pages_of(with(table));
    std::vector<double> baselines;
    for (const TextRun& run : pages.front().texts)
      if (without_spaces(text).contains(without_spaces(run.text))) baselines.push_back(run.baseline.value);
    return baselines;
  };
  CHECK(rows_of(raw).size() == 1);
  CHECK(rows_of(QStringLiteral("cebolla")).front() < rows_of(raw).front());
  CHECK(rows_of(raw).front() < rows_of(QStringLiteral("MILK")).front());
  // Nothing to be gained: the column is the last and as wide as that of all.
  table.columns.resize(2);
  table.rows[0].cells.resize(2);
  table.rows[0].cells[1].small[1].text = raw + u' ' + raw;
  CHECK(rows_of(raw + u' ' + raw).size() == 2);
}

TEST_CASE("a word wider than its column is refused by name, and fits when divided", "[paper][work]") {
  const QString long_word = QString(90, u'm');
  facts::Table table = plain_table(2);
  table.rows[1].cells[1].text = long_word;
  CHECK(only_error(with(table), problem::Code::NoRoom).startsWith(u'"' + long_word + QStringLiteral("\" is ")));
  table.rows[1].cells[1].text = QString(30, u'm') + u' ' + QString(30, u'm') + u' ' + QString(30, u'm');
  CHECK(pages_of(with(table)).size() == 1);

  facts::WorkSheet sheet = bare_sheet();
  sheet.title = long_word;
  CHECK(only_error(sheet, problem::Code::NoRoom).contains(long_word));
  sheet.title = QString(20, u'm');
  CHECK(pages_of(sheet).size() == 1);
}

TEST_CASE("a row higher than a page is refused by name; one that fits a page has one of its own", "[paper][work]") {
  facts::Table table = plain_table(3);
  table.rows[1].cells[1].small.resize(70, {QStringLiteral("and more"), false});
  CHECK(only_error(with(table), problem::Code::NoRoom).startsWith(QStringLiteral("\"2# onion\" is ")));
  table.rows[1].cells[1].small.resize(45);
  const auto pages = pages_of(with(table));
  CHECK(page_with(pages, QStringLiteral("2# onion")) > page_with(pages, QStringLiteral("1# onion")));
}

TEST_CASE("a paragraph longer than a page goes on on the next; one that fits a page stays whole", "[paper][work]") {
  QStringList words;
  for (int i = 0; i < 900; ++i) words << QStringLiteral("stir%1").arg(i);
  const auto long_pages = pages_of(with(facts::Note{words.join(u' '), false}));
  CHECK(long_pages.size() > 1);
  facts::WorkSheet sheet = with(plain_table(12));
  sheet.parts.push_back(facts::Note{QStringList(words.mid(0, 150)).join(u' '), false});
  const auto pages = pages_of(sheet);
  REQUIRE(pages.size() == 2);
  CHECK(read(pages[1]).contains(QStringLiteral("stir0stir1")));
  CHECK(read(pages[1]).contains(QStringLiteral("stir149")));
}

TEST_CASE("a paragraph behind a table stays with its last row", "[paper][work]") {
  for (int rows = 1; rows < 30; ++rows) {
    CAPTURE(rows);
    facts::WorkSheet sheet = with(plain_table(rows));
    sheet.parts.push_back(facts::Note{QStringLiteral("What it means"), false});
    const auto pages = pages_of(sheet);
    CHECK(page_with(pages, QStringLiteral("What it means")) == page_with(pages, QStringLiteral("%1# onion").arg(rows)));
  }
}

TEST_CASE("what stands above the rows must leave them a page", "[paper][work]") {
  facts::WorkSheet sheet = with(plain_table(3));
  sheet.head.resize(70, {QStringLiteral("and more"), false});
  CHECK(only_error(sheet, problem::Code::NoRoom) ==
        QStringLiteral("what stands above the rows of \"Black-bean filling\" is higher than a page"));
  sheet.head.resize(10);
  CHECK(pages_of(sheet).size() == 1);
}

TEST_CASE("a character that no face has is refused, in every place", "[paper][work]") {
  const QString thai = QStringLiteral("\u0E01");
  facts::WorkSheet sheet = with(plain_table(2));
  sheet.foot << QStringLiteral("caution");
  sheet.fields = {blank_cell(QStringLiteral("by"))};
  CHECK(pages_of(sheet).size() == 1);
  auto& table = std::get<facts::Table>(sheet.parts.front());
  for (QString* text :
       {&sheet.kind, &sheet.title, &sheet.running, &sheet.page_of, &sheet.foot.front(), &sheet.fields.front().text,
        &table.caption, &table.columns[1].heading, &table.rows[1].cells[1].text}) {
    const QString before = *text;
    *text += thai;
    CHECK(only_error(sheet, problem::Code::NoGlyph).startsWith(u'"' + *text + QStringLiteral("\" cannot be printed")));
    *text = before;
  }
}

TEST_CASE("a row of more cells than columns is refused, not cut short", "[paper][work]") {
  facts::Table table = plain_table(2);
  table.rows[0].cells.push_back(text_cell(QStringLiteral("lost")));
  CHECK(only_error(with(table), problem::Code::NoRoom).contains(QStringLiteral("more cells")));
}

}  // namespace lardiner::paper
