// The proof of a PDF of labels: every label as a picture, and a table of what was chosen for it.
#include "paper/proof.h"

#include "facts/fact_names.h"
#include "paper/proof_table.h"
#include "symbol/qr.h"

namespace lardiner::paper {

namespace {

// Well-formed as XML too, so that any reader takes it.
constexpr const char* kHead = R"(<!DOCTYPE html>
<html xmlns="http://www.w3.org/1999/xhtml" lang="en">
<head>
<meta charset="utf-8"/>
<title>%1</title>
<style>
body { font: 16px/1.4 sans-serif; margin: 2em auto; max-width: 72em; padding: 0 1em; color: #111; background: #fff; }
h1, h2 { line-height: 1.15; margin: 0; }
section { border-top: 3px solid #111; margin-top: 2em; padding-top: .7em; break-inside: avoid; }
.labels { display: flex; flex-wrap: wrap; gap: 4mm; background: #e4e4e4; padding: 4mm; margin: .8em 0; }
.labels svg { background: #fff; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; }
th, td { text-align: left; padding: .15em 1.4em .15em 0; border-bottom: 1px solid #bbb; }
.n { text-align: right; }
</style>
</head>
<body>
)";

QString html(const QString& text) { return text.toHtmlEscaped(); }

QString figure(double value, int decimals = 2) { return QString::number(value, 'f', decimals); }

QString hundredths(int length) { return QString::number(length / 100.0); }

QString row(const QStringList& cells, const char* tag) {
  QString out = QStringLiteral("<tr>");
  for (qsizetype i = 0; i < cells.size(); ++i)
    out += QStringLiteral("<%1%2>%3</%1>")
               .arg(QLatin1String(tag), i == 0 ? QString() : QStringLiteral(" class=\"n\""), html(cells[i]));
  return out + QStringLiteral("</tr>\n");
}

QString medium_in_words(const book::Media& medium) {
  QStringList bears;
  if (medium.chilled) bears << QStringLiteral("chilled");
  if (medium.freezer) bears << QStringLiteral("freezer");
  if (medium.hot) bears << QStringLiteral("hot");
  return QStringLiteral(
             "%1 × %2 mm%3, %4, %5 dots per inch (a dot is %6 mm); bears %7; the code at least %8 dots a module")
      .arg(hundredths(medium.width), hundredths(medium.height),
           medium.turned ? QStringLiteral(", read a quarter turn") : QString(),
           medium.sheet ? QStringLiteral("sheet") : QStringLiteral("roll"))
      .arg(medium.dots_per_inch)
      .arg(figure(kMillimetresPerInch / medium.dots_per_inch, 3), bears.join(QStringLiteral(", ")))
      .arg(medium.module_dots);
}

Drawing together(const Drawing& shared, const Drawing& own) {
  Drawing all = shared;
  all.boxes.insert(all.boxes.end(), own.boxes.begin(), own.boxes.end());
  all.codes.insert(all.codes.end(), own.codes.begin(), own.codes.end());
  all.texts.insert(all.texts.end(), own.texts.begin(), own.texts.end());
  return all;
}

QString type_table(const Faces& faces, const Drawing& drawing, Resolution resolution) {
  QString out = QStringLiteral("<table>\n") +
                row({QStringLiteral("type"), QStringLiteral("points"), QStringLiteral("mm"), QStringLiteral("dots"),
                     QStringLiteral("x-height, mm"), QStringLiteral("x-height, dots")},
                    "th");
  for (const TypeSize& one : type_sizes(faces, drawing, resolution))
    out += row({one.sample, figure(one.size.value), figure(millimetres(one.size).value),
                figure(fine_dots(one.size, resolution).value, 1), figure(millimetres(one.x_height, resolution).value),
                figure(one.x_height.value, 1)},
               "td");
  return out + QStringLiteral("</table>\n");
}

QString code_in_words(const CodeFigures& code, Resolution resolution) {
  return QStringLiteral(
             "QR version %1, %2 × %2 modules of %3 dots (%4 mm), %5 mm a side; %6 modules free all round, %7 needed")
      .arg(code.version)
      .arg(code.modules)
      .arg(code.module.value)
      .arg(figure(millimetres(fine_dots(code.module), resolution).value, 3),
           figure(millimetres(fine_dots(code.module * code.modules), resolution).value, 1), figure(code.quiet_zone, 1))
      .arg(symbol::kQuietZone);
}

// What is smaller than its template would have it, and what was run together.
QString gave_way(const LabelLayout& layout) {
  QStringList all;
  if (layout.code && layout.code->module < layout.largest_module)
    all << QStringLiteral("the code, %1 dots a module instead of %2")
               .arg(layout.code->module.value)
               .arg(layout.largest_module.value);
  for (const BlockSize& block : layout.blocks) {
    QStringList how;
    if (block.run_together) how << QStringLiteral("run together");
    if (block.is_shrunk())
      how << QStringLiteral("%1 pt instead of %2, the least is %3")
                 .arg(figure(block.size.value), figure(block.preferred.value), figure(block.least.value));
    if (!how.isEmpty()) all << facts::name(block.fact) + QStringLiteral(": ") + how.join(QStringLiteral(", "));
  }
  return all.isEmpty() ? QStringLiteral("nothing") : all.join(QStringLiteral("; "));
}

QString paragraph(const QString& what, const QString& text) {
  return QStringLiteral("<p>%1: %2</p>\n").arg(html(what), html(text));
}

QString count(int labels) { return labels == 1 ? QStringLiteral("1 label") : QStringLiteral("%1 labels").arg(labels); }

}  // namespace

Proof::Proof(const Faces& faces, const book::Media& medium, const QString& title) : faces_(faces), svg_(faces) {
  body_ = (QString::fromUtf8(kHead).arg(html(title)) + QStringLiteral("<h1>%1</h1>\n").arg(html(title)) +
           paragraph(QStringLiteral("Medium \"%1\"").arg(medium.id), medium_in_words(medium)))
              .toUtf8();
}

void Proof::add_run(const QString& run, const LabelLayout& layout) {
  end_run();
  ++runs_;
  run_title_ = run;
  layout_ = layout;
}

void Proof::add_label(const Drawing& own) {
  const QByteArray name = "run" + QByteArray::number(runs_);
  if (labels_++ == 0) {
    first_ = own;
    pictures_ += svg_tag(layout_.size, run_title_) + "<g id=\"" + name + "\">" +
                 svg_.group(layout_.shared, layout_.size.resolution) + "</g>";
  } else {
    pictures_ += svg_tag(layout_.size, run_title_) + "<use href=\"#" + name + "\"/>";
  }
  pictures_ += svg_.group(own, layout_.size.resolution) + "</svg>\n";
}

void Proof::end_run() {
  if (labels_ == 0) return;
  const Drawing all = together(layout_.shared, first_);
  const Resolution resolution = layout_.size.resolution;
  const auto code = code_figures(faces_, all, layout_.size);
  body_ += QStringLiteral("<section>\n<h2>%1</h2>\n<p>%2</p>\n<div class=\"labels\">\n")
               .arg(html(run_title_), count(labels_))
               .toUtf8();
  body_ += pictures_ + "</div>\n";
  body_ += type_table(faces_, all, resolution).toUtf8();
  body_ += paragraph(QStringLiteral("Code"), code ? code_in_words(*code, resolution) : QStringLiteral("none")).toUtf8();
  body_ += paragraph(QStringLiteral("Gave way"), gave_way(layout_)).toUtf8();
  body_ += "</section>\n";
  pictures_.clear();
  labels_ = 0;
}

problem::Expected<QByteArray> Proof::finish() {
  end_run();
  const auto definitions = svg_.definitions();
  if (!definitions) return tl::unexpected(definitions.error());
  return body_ + "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"0\" height=\"0\">" + *definitions +
         "</svg>\n</body>\n</html>\n";
}

}  // namespace lardiner::paper
