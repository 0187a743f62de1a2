// A work sheet with every text as it will be printed.
#include "paper/work_printable.h"

namespace lardiner::paper {

namespace {

class Composer {
 public:
  explicit Composer(const Faces& faces) : faces_(faces) {}

  void compose(QString& text) {
    const auto found = faces_.printable(text);
    if (found) {
      text = *found;
      return;
    }
    problem::Error error = found.error();
    error.what = QStringLiteral("\"%1\" cannot be printed: %2").arg(text, error.what);
    errors.push_back(error);
  }

  void compose(facts::SmallLine& line) { compose(line.text); }
  void compose(facts::Cell& cell) {
    compose(cell.text);
    each(cell.small);
  }
  void compose(facts::Column& column) { compose(column.heading); }
  void compose(facts::Row& row) { each(row.cells); }
  void compose(facts::Note& note) { compose(note.text); }
  void compose(facts::Table& table) {
    compose(table.caption);
    each(table.columns);
    each(table.rows);
  }
  void compose(facts::Spans::Mark& mark) { compose(mark.text); }
  void compose(facts::Spans::Span& span) { compose(span.text); }
  void compose(facts::Spans& spans) {
    compose(spans.caption);
    each(spans.marks);
    each(spans.spans);
    each(spans.notes);
  }
  void compose(facts::Part& part) {
    std::visit([&](auto& one) { compose(one); }, part);
  }
  void compose(facts::WorkSheet& sheet) {
    for (QString* text : {&sheet.kind, &sheet.title, &sheet.amount, &sheet.running, &sheet.page_of}) compose(*text);
    each(sheet.head);
    each(sheet.fields);
    each(sheet.parts);
    each(sheet.foot);
  }

  problem::Errors errors;

 private:
  template <class All>
  void each(All& all) {
    for (auto& one : all) compose(one);
  }

  const Faces& faces_;
};

template <class Texts>
problem::ExpectedAll<Texts> composed(Texts texts, const Faces& faces) {
  Composer composer(faces);
  composer.compose(texts);
  problem::sort(composer.errors);
  if (!composer.errors.empty()) return tl::unexpected(composer.errors);
  return texts;
}

}  // namespace

problem::ExpectedAll<facts::WorkSheet> printable(const facts::WorkSheet& sheet, const Faces& faces) {
  return composed(sheet, faces);
}

problem::ExpectedAll<facts::Spans> printable(const facts::Spans& spans, const Faces& faces) {
  return composed(spans, faces);
}

}  // namespace lardiner::paper
