// Labels as bytes, for who shows or prints them at once instead of keeping a file.
#pragma once

#include <QByteArray>

#include "command/label_ledger.h"

namespace lardiner::command {

/// The first label of a run as it will print, as a whole SVG file. Errors: it does not fit, a face that lacks a letter.
problem::ExpectedAll<QByteArray> label_picture(const Options& options, const book::Book& book,
                                               const facts::LabelRun& run, const paper::Faces& faces);

/// What one medium is printed with.
struct LabelFile {
  QString medium;
  int labels = 0;
  QByteArray pdf;
};

struct LotToPrint {
  QString lot;
  std::vector<int> containers;  ///< none: all that are in the kitchen
  QString medium;               ///< of the book, instead of the containers' own; empty: theirs
  QString by;                   ///< initials
};

/// The labels of a lot of the ledger, as `lardiner labels --lot` makes them; recorded as printed before they are given
/// out. Errors: those of LabelLedger, of a refused batch, of layout; labels of several media, which are asked for one
/// by one.
problem::ExpectedAll<LabelFile> print_lot(const Options& options, const book::Book& book,
                                          const std::vector<words::Language>& languages, const QDateTime& now,
                                          const LotToPrint& wish);

}  // namespace lardiner::command
