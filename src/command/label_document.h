// One PDF of labels in the making: its labels in order, in pieces whose codes are made side by side.
#pragma once

#include <atomic>
#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <vector>

#include "facts/label_facts.h"
#include "paper/label.h"
#include "paper/pdf.h"
#include "paper/proof.h"
#include "paper/sheet.h"
#include "problem/error.h"

namespace lardiner::command {

/// The code of each label of a piece, where it has one.
using LabelCodes = std::vector<std::optional<paper::CodeImage>>;

/// Set by who wants the work no more: what is under way ends soon, with what it has, as when a stop is asked for.
using GivenUp = std::atomic<bool>;

/// Some labels of one run, one behind the other. One thread makes their codes, another waits for them.
class LabelPiece {
 public:
  LabelPiece(QString run, std::shared_ptr<const paper::LabelLayout> layout, std::vector<facts::ContainerFacts> labels)
      : run_(std::move(run)), layout_(std::move(layout)), labels_(std::move(labels)) {}

  const QString& run() const { return run_; }  ///< its title
  const paper::LabelLayout& layout() const { return *layout_; }
  const std::vector<facts::ContainerFacts>& labels() const { return labels_; }

  void make_codes(const GivenUp& given_up);
  /// Valid as long as this. REQUIRES: somebody makes them.
  const problem::Expected<LabelCodes>& codes();

 private:
  QString run_;
  std::shared_ptr<const paper::LabelLayout> layout_;
  std::vector<facts::ContainerFacts> labels_;
  std::mutex mutex_;
  std::condition_variable made_;
  std::optional<problem::Expected<LabelCodes>> codes_;
};

struct LabelDocument {
  paper::PdfSettings settings;
  std::shared_ptr<const paper::Sheet> sheet;
  QString file;   ///< its name
  int start = 0;  ///< places of the first sheet that are used already
  int labels = 0;
  const book::Media* proofed = nullptr;  ///< a proof is made too; the medium that it speaks of
  std::vector<std::shared_ptr<LabelPiece>> pieces;
};

/// What becomes files.
struct DrawnLabels {
  QByteArray pdf;
  QByteArray proof;  ///< HTML; empty: none was asked for
};

/// The document's files, its pages filled in order; waits for the codes of each piece. What was given up is empty.
problem::Expected<DrawnLabels> drawn(LabelDocument& document, const paper::Faces& faces, paper::PdfWriter& writer,
                                     const GivenUp& given_up);

}  // namespace lardiner::command
