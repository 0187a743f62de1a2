// Collects label runs into PDFs, one for each medium (numbered when there are many), and writes all or nothing.
#pragma once

#include <QHash>
#include <QString>
#include <map>
#include <memory>
#include <optional>

#include "book/book.h"
#include "command/files.h"
#include "command/kitchen.h"
#include "facts/label_facts.h"
#include "paper/label.h"
#include "paper/pdf.h"

namespace lardiner::command {

/// What a finished job wrote.
struct Written {
  QString file;
  int labels = 0;
  QString medium;
};

class LabelJob {
 public:
  /// Labels in one PDF at the most; more become numbered files.
  static constexpr int kMostLabels = 4000;

  /// All must outlive the job. `drafts` is where the PDFs are built; `title` is each document's.
  LabelJob(const Options& options, const book::Book& book, const paper::Faces& faces, NewFolder& drafts, QString title);
  ~LabelJob();

  /// Lays out all runs of a batch, then draws them: all or none. The number of labels drawn, or what does not fit (with
  /// the smallest medium that does) and what cannot be printed.
  problem::ExpectedAll<int> add(const std::vector<facts::LabelRun>& runs);

  /// Ends all documents in the drafts folder.
  problem::ExpectedAll<std::vector<Written>> finish();

 private:
  struct Document;

  problem::ExpectedAll<const paper::LabelTemplate*> label_template(const facts::LabelRun& run);
  problem::ExpectedAll<paper::LabelLayout> lay_out(const facts::LabelRun& run);
  Document& document(const facts::LabelRun& run, const paper::LabelLayout& layout);
  problem::ExpectedAll<int> draw(const facts::LabelRun& run, const paper::LabelLayout& layout);
  problem::Expected<int> end_file(Document& document);

  const Options& options_;
  const book::Book& book_;
  const paper::Faces& faces_;
  NewFolder& drafts_;
  QString title_;
  std::map<QString, paper::LabelTemplate> templates_;
  std::map<QString, std::unique_ptr<Document>> documents_;  // by medium
};

}  // namespace lardiner::command
