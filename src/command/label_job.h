// Collects label runs into PDFs, one for each medium (numbered when there are many), and writes all or nothing.
#pragma once

#include <QString>
#include <map>
#include <memory>
#include <mutex>
#include <optional>

#include "book/book.h"
#include "command/files.h"
#include "command/kitchen.h"
#include "command/label_document.h"
#include "command/pool.h"
#include "facts/label_facts.h"
#include "paper/label.h"
#include "paper/pdf.h"

namespace lardiner::command {

/// What a finished job wrote.
struct Written {
  QString file;
  int labels = 0;
  QString medium;
  QString proof = {};                             ///< file; empty: none was asked for
  std::optional<int> places_left = std::nullopt;  ///< on the last sheet, of a medium's last file; absent: a roll
  int next_start = 1;                             ///< the first of them, else of a new sheet
};

/// A run laid out on its medium with its own template. Errors: no such medium or template; what does not fit, with the
/// smallest medium of the book that holds it.
problem::ExpectedAll<paper::LabelLayout> lay_out_run(const Options& options, const book::Book& book,
                                                     const facts::LabelRun& run, const paper::Faces& faces);

/// Codes are made on several threads; whole documents are drawn and written on others, while the codes of the next are
/// made. Few are in hand at once, so that the memory of a run does not grow with it. What is written depends on the
/// runs alone, never on the number of threads.
class LabelJob {
 public:
  /// Labels in one PDF at the most, as whole sheets; more become numbered files.
  static constexpr int kMostLabels = 4000;
  /// Of a medium: on sheets whole ones hold no more than that.
  static int most_labels(const book::Media& medium);

  /// All must outlive the job. `drafts` is where the PDFs are built; `title` is each document's; `start` is the first
  /// free place of the sheet that each medium of sheets begins with, from 1. `proof`: each PDF gets one beside it.
  /// `options.threads` make the codes.
  LabelJob(const Options& options, const book::Book& book, const paper::Faces& faces, NewFolder& drafts, QString title,
           int start, bool proof);
  /// Gives up what is not finished.
  ~LabelJob();

  /// What `add` would say of the runs, without taking them.
  problem::ExpectedAll<int> fit(const std::vector<facts::LabelRun>& runs);

  /// Lays out all runs of a batch, then takes their labels: all or none. The number of labels taken, or what does not
  /// fit (with the smallest medium that does) and what cannot be printed; and what failed meanwhile in a document taken
  /// before.
  problem::ExpectedAll<int> add(const std::vector<facts::LabelRun>& runs);

  /// Ends all documents in the drafts folder. Where a stop was asked for some may be missing.
  problem::ExpectedAll<std::vector<Written>> finish();

 private:
  struct Medium {
    std::shared_ptr<const paper::Sheet> sheet;
    int used = 0;  // places of the sheet that the next label goes on
    std::shared_ptr<LabelDocument> open;
    std::vector<Written> written;  // documents ended

    int places() const { return static_cast<int>(sheet->places.size()); }
  };

  problem::ExpectedAll<const paper::LabelTemplate*> label_template(const facts::LabelRun& run);
  problem::ExpectedAll<paper::LabelLayout> lay_out(const facts::LabelRun& run);
  problem::ExpectedAll<std::vector<paper::LabelLayout>> lay_out_all(const std::vector<facts::LabelRun>& runs);
  void take(const facts::LabelRun& run, paper::LabelLayout layout);
  Medium& medium_of(const facts::LabelRun& run);
  void add_piece(LabelDocument& document, std::shared_ptr<LabelPiece> piece);
  void end_document(const QString& name, Medium& medium);
  problem::Expected<bool> rename_only(Written& written) const;
  void write(LabelDocument& document);
  problem::Errors faults();

  const Options& options_;
  const book::Book& book_;
  const paper::Faces& faces_;
  NewFolder& drafts_;
  QString title_;
  int start_;
  bool proof_;
  std::map<QString, paper::LabelTemplate> templates_;
  std::map<QString, Medium> media_;

  std::mutex mutex_;  // of the two below
  problem::Errors faults_;
  std::vector<std::unique_ptr<paper::PdfWriter>> idle_writers_;
  GivenUp given_up_ = false;
  Pool encoders_;
  Pool writers_;  // last, so that it ends first: it waits for codes
};

}  // namespace lardiner::command
