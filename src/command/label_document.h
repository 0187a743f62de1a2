// One PDF of labels in the making: its labels in order, in pieces whose codes are made side by side.
#pragma once

#include <atomic>
#include <future>
#include <memory>
#include <optional>
#include <vector>

#include "facts/label_facts.h"
#include "paper/label.h"
#include "paper/pdf.h"
#include "paper/sheet.h"
#include "problem/error.h"

namespace lardiner::command {

/// The code of each label of a piece, where it has one.
using LabelCodes = std::vector<std::optional<paper::CodeImage>>;

/// Some labels of one run, one behind the other.
struct LabelPiece {
  std::shared_ptr<const paper::LabelLayout> layout;
  std::shared_ptr<const std::vector<facts::ContainerFacts>> labels;
  std::future<problem::Expected<LabelCodes>> codes;
};

struct LabelDocument {
  paper::PdfSettings settings;
  std::shared_ptr<const paper::Sheet> sheet;
  QString file;   ///< its name
  int start = 0;  ///< places of the first sheet that are used already
  int labels = 0;
  std::vector<LabelPiece> pieces;
};

/// Set by who wants the work no more: what is under way ends soon, with what it has, as when a stop is asked for.
using GivenUp = std::atomic<bool>;

problem::Expected<LabelCodes> codes_of(const std::vector<facts::ContainerFacts>& labels, const GivenUp& given_up);

/// The document's file, its pages filled in order; waits for the codes of each piece. What was given up is an empty
/// file.
problem::Expected<QByteArray> drawn(LabelDocument& document, const paper::Faces& faces, paper::PdfWriter& writer,
                                    const GivenUp& given_up);

}  // namespace lardiner::command
