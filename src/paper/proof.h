// The proof of a PDF of labels: every label as a picture, and a table of what was chosen for it. A page to look at, not
// to print labels from.
#pragma once

#include <QByteArray>
#include <QString>

#include "book/kitchen.h"
#include "paper/label.h"
#include "paper/svg.h"

namespace lardiner::paper {

/// Collects the labels of one medium; the result is one HTML file that calls for nothing from elsewhere.
class Proof {
 public:
  /// REQUIRES: `faces` outlives this. `title`: of the page.
  Proof(const Faces& faces, const book::Media& medium, const QString& title);

  /// Begins the labels of a run, named by its title: sizes of type in points, millimetres and dots, the code's version,
  /// module and quiet zone, and what gave way.
  void add_run(const QString& run, const LabelLayout& layout);

  /// The next label of the run begun last; `own` as `own_drawing` gives it.
  void add_label(const Drawing& own);

  /// The page. Errors: those of `SvgWriter::definitions`.
  problem::Expected<QByteArray> finish();

 private:
  void end_run();

  const Faces& faces_;
  SvgWriter svg_;
  QByteArray body_;
  QByteArray pictures_;  // of the run begun last
  QString run_title_;
  LabelLayout layout_;
  Drawing first_;  // what the run's first label draws for itself
  int labels_ = 0;
  int runs_ = 0;
};

}  // namespace lardiner::paper
