// Work sheets by chance in the words of every shipped language, and what their pages may never do.
#pragma once

#include <QDir>
#include <QRegularExpression>

#include "label_runs.h"
#include "paper/work_pages.h"
#include "paper/work_type.h"

namespace lardiner::paper {

/// The texts of a pack that need nothing put in, as they stand in its file.
inline QStringList sample_words(const QString& language) {
  QFile file(QStringLiteral(LARDINER_SOURCE_DIR "/templates/words/%1.toml").arg(language));
  REQUIRE(file.open(QIODevice::ReadOnly));
  static const QRegularExpression entry(QStringLiteral("^[a-z0-9_-]+ = \"([^\"{}\\\\]{3,60})\""),
                                        QRegularExpression::MultilineOption);
  QStringList out;
  for (auto found = entry.globalMatch(QString::fromUtf8(file.readAll())); found.hasNext();)
    out << found.next().captured(1);
  REQUIRE(out.size() > 20);
  return out;
}

inline QStringList shipped_languages() {
  QStringList out;
  for (const QString& name :
       QDir(QStringLiteral(LARDINER_SOURCE_DIR "/templates/words")).entryList({QStringLiteral("*.toml")}))
    out << name.section(u'.', 0, 0);
  return out;
}

inline facts::Cell text_cell(const QString& text, std::vector<facts::SmallLine> small = {}, bool strong = false) {
  return {facts::Cell::Kind::Text, text, std::move(small), strong};
}
inline facts::Cell tick_cell() { return {facts::Cell::Kind::Tick, {}, {}, false}; }
inline facts::Cell blank_cell(const QString& before = {}) { return {facts::Cell::Kind::Blank, before, {}, false}; }

/// A sheet with a head, and nothing beneath yet.
inline facts::WorkSheet bare_sheet() {
  facts::WorkSheet out;
  out.language = QStringLiteral("en");
  out.kind = QStringLiteral("Prep sheet");
  out.title = QStringLiteral("Black-bean filling");
  out.amount = QStringLiteral("17.6 kg");
  out.running = QStringLiteral("Black-bean filling, A26330BBF");
  out.page_of = QStringLiteral("Page {0} of {1}");
  return out;
}

/// Item, amount, lot: with so many rows, each with its number before its texts ("7# …").
inline facts::Table plain_table(int rows) {
  using Kind = facts::Column::Kind;
  facts::Table out;
  out.caption = QStringLiteral("Weigh out");
  out.columns = {{Kind::Tick, {}, 1},
                 {Kind::Text, QStringLiteral("Item"), 3},
                 {Kind::Amount, QStringLiteral("Weigh"), 1},
                 {Kind::Blank, QStringLiteral("Lot"), 1}};
  for (int row = 1; row <= rows; ++row)
    out.rows.push_back({{tick_cell(), text_cell(QStringLiteral("%1# onion").arg(row)),
                         text_cell(QStringLiteral("%1# g").arg(row)), blank_cell()},
                        false});
  return out;
}

/// Sheets by chance: few or many rows, short or long names, up to seven columns.
class SheetChance {
 public:
  SheetChance(unsigned seed, const QString& language) : chance_(seed), words_(sample_words(language)) {}

  facts::WorkSheet sheet() {
    facts::WorkSheet out = bare_sheet();
    out.kind = words(1);
    out.title = words(1 + below(3));
    out.amount = one_in(4) ? QString() : amount();
    out.running = words(2);
    for (int i = below(4); i > 0; --i) out.head.push_back({words(1 + below(3)), one_in(2)});
    for (int i = below(5); i > 0; --i) out.fields.push_back(one_in(2) ? text_cell(words(1)) : blank_cell(words(1)));
    for (int i = 1 + below(4); i > 0; --i) add_part(out);
    for (int i = below(3); i > 0; --i) out.foot << words(2 + below(4));
    return out;
  }

  facts::Spans spans(int count) {
    facts::Spans out;
    out.caption = words(1);
    out.length = 1 + below(5000);
    for (int i = below(12); i > 0; --i)
      out.marks.push_back({below(out.length + 1), words(1).left(12).trimmed(), one_in(4)});
    for (int i = 0; i < count; ++i) {
      facts::Spans::Span span{words(1), below(out.length + 1), 0, 0, 0, one_in(3)};
      span.to = span.from + below(out.length - span.from + 1);
      span.end = span.to + below(out.length - span.to + 1);
      span.start = span.from + below(span.to - span.from + 1);
      out.spans.push_back(span);
    }
    out.notes << words(4) << words(3);
    return out;
  }

 private:
  int below(int most) { return chance_.below(most); }
  bool one_in(int of) { return chance_.one_in(of); }

  QString words(int count) {
    QStringList out;
    for (int i = 0; i < count; ++i) out << words_[below(static_cast<int>(words_.size()))];
    return out.join(u' ');
  }

  QString amount() { return QStringLiteral("%1 kg").arg(1 + below(20000) / 1000.0); }

  void add_part(facts::WorkSheet& out) {
    if (one_in(3)) out.parts.push_back(facts::Note{words(2), true});
    if (one_in(3)) out.parts.push_back(facts::Note{words(1 + below(20)), false});
    if (one_in(4))
      out.parts.push_back(spans(1 + below(6)));
    else
      out.parts.push_back(table());
  }

  facts::Table table() {
    using Kind = facts::Column::Kind;
    facts::Table out;
    if (!one_in(3)) out.caption = words(1);
    out.columns = {{Kind::Tick, {}, 1}, {Kind::Text, words(1), 3}};
    for (int i = below(4); i > 0; --i) out.columns.push_back({Kind::Amount, QStringLiteral("kg"), 1});
    if (one_in(2)) out.columns.push_back({Kind::Blank, words(1), 1});
    for (int row = 1 + below(one_in(3) ? 60 : 12); row > 0; --row) out.rows.push_back(this->row(out));
    return out;
  }

  facts::Row row(const facts::Table& table) {
    facts::Row out;
    if (one_in(9)) {
      out.band = true;
      out.cells = {text_cell(words(1 + below(3)), {{words(2), false}}, one_in(2))};
      if (one_in(2)) out.cells.push_back(blank_cell(QStringLiteral("MK")));
      return out;
    }
    for (const facts::Column& column : table.columns) switch (column.kind) {
        case facts::Column::Kind::Tick:
          out.cells.push_back(tick_cell());
          break;
        case facts::Column::Kind::Text:
          out.cells.push_back(
              text_cell(words(1 + below(3)), {{words(1), one_in(2), one_in(3)}, {words(2), false, one_in(3)}}));
          break;
        case facts::Column::Kind::Amount:
          out.cells.push_back(text_cell(amount(), {{QStringLiteral("27 lb 3.5 oz"), false}}));
          break;
        case facts::Column::Kind::Blank:
          out.cells.push_back(one_in(2) ? blank_cell() : text_cell(QStringLiteral("A26329CLB7")));
          break;
      }
    return out;
  }

  Chance chance_;
  QStringList words_;
};

/// Every text of the parts and cautions in the order in which it is read; of a picture's marks the strong ones.
inline QStringList texts_in_order(const facts::WorkSheet& sheet) {
  QStringList out{sheet.kind, sheet.title, sheet.amount};
  const auto add_cell = [&](const facts::Cell& cell) {
    out << cell.text;
    for (const facts::SmallLine& line : cell.small) out << line.text;
  };
  for (const facts::SmallLine& line : sheet.head) out << line.text;
  for (const facts::Cell& cell : sheet.fields) add_cell(cell);
  for (const facts::Part& part : sheet.parts) {
    if (const auto* note = std::get_if<facts::Note>(&part)) out << note->text;
    if (const auto* table = std::get_if<facts::Table>(&part)) {
      out << table->caption;
      for (const facts::Column& column : table->columns) out << column.heading;
      for (const facts::Row& row : table->rows)
        for (const facts::Cell& cell : row.cells) add_cell(cell);
    }
    if (const auto* spans = std::get_if<facts::Spans>(&part)) {
      out << spans->caption;
      for (const facts::Spans::Mark& mark : spans->marks)
        if (mark.strong) out << mark.text;
      for (const facts::Spans::Span& span : spans->spans) out << span.text;
      out << spans->notes;
    }
  }
  out << sheet.foot;
  out.removeAll(QString());
  return out;
}

/// All that is drawn on a page, in the order of drawing, without spaces.
inline QString read(const Drawing& page) {
  QString out;
  for (const TextRun& run : page.texts) out += without_spaces(run.text);
  return out;
}

inline Rect rect(const Box& box) {
  return {static_cast<double>(box.x.value), static_cast<double>(box.y.value),
          static_cast<double>((box.x + box.width).value), static_cast<double>((box.y + box.height).value)};
}

/// Nothing stands outside `print`, no text meets another or a rule.
inline void check_ink(const Drawing& page, const Rect& print) {
  for (const Box& box : page.boxes) {
    CAPTURE(box.x.value, box.y.value, box.width.value, box.height.value);
    CHECK(rect(box).within(print));
  }
  for (std::size_t one = 0; one < page.texts.size(); ++one) {
    const Rect letters = ink(page.texts[one], kPrint);
    CAPTURE(page.texts[one].text, page.texts[one].size.value);
    CHECK(letters.within(print));
    for (const Box& box : page.boxes)
      if (box.ink == Ink::Black) CHECK_FALSE(letters.meets(rect(box)));
    for (std::size_t other = one + 1; other < page.texts.size(); ++other) {
      CAPTURE(page.texts[other].text);
      CHECK_FALSE(letters.meets(ink(page.texts[other], kPrint)));
    }
  }
}

/// Within the margins.
inline Rect print_of(PageSize page) {
  return {static_cast<double>(kSideMargin), static_cast<double>(kTopMargin),
          static_cast<double>(page.width.value - kSideMargin), static_cast<double>(page.height.value - kBottomMargin)};
}

inline std::vector<Drawing> pages_of(const facts::WorkSheet& sheet, Paper paper = Paper::A4) {
  const auto pages = lay_out(sheet, paper, shipped_faces());
  if (!pages) FAIL(problem::text(pages.error()).toStdString());
  return *pages;
}

}  // namespace lardiner::paper
