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
  bool hold = false;            ///< HOLD labels where the lot is refused, instead of the reason
  history::EntryId of;          ///< the print that gives them to a printer; invalid: none
};

/// What would be printed: the medium, and the containers in the order of their labels.
struct LabelsToCome {
  QString item, medium;
  std::vector<int> containers;
};

/// What `print_lot` would print, without drawing or recording it. Errors: the same but for those of layout.
problem::ExpectedAll<LabelsToCome> labels_to_come(const Options& options, const book::Book& book,
                                                  const std::vector<words::Language>& languages, const QDateTime& now,
                                                  const LotToPrint& wish);

/// The labels of a lot of the ledger, as `lardiner labels --lot` makes them; recorded as printed, and as sent where a
/// print does, before they are given out. Errors: those of LabelLedger, of a refused batch, of layout; labels of
/// several media, which are asked for one by one; a print that is sent already or over.
problem::ExpectedAll<LabelFile> print_lot(const Options& options, const book::Book& book,
                                          const std::vector<words::Language>& languages, const QDateTime& now,
                                          const LotToPrint& wish);

}  // namespace lardiner::command
