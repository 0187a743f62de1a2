// Prints label runs to PDFs in memory, as the program does, with each QR code made on the way or beforehand.
#pragma once

#include <QByteArray>
#include <QHash>
#include <map>
#include <memory>
#include <vector>

#include "book/book.h"
#include "facts/label_facts.h"
#include "paper/label.h"
#include "paper/pdf.h"

namespace bench {

using Codes = QHash<QByteArray, lardiner::paper::CodeImage>;  ///< by the content

/// Encodes as the program does.
lardiner::paper::CodeImage encoded(const QByteArray& uri);

/// The label templates by purpose.
using Templates = std::map<lardiner::book::Purpose, lardiner::paper::LabelTemplate>;

/// What every run is printed with; all outlives the press.
struct Workshop {
  const lardiner::book::Book& book;
  const lardiner::paper::Faces& faces;
  const Templates& templates;
};

lardiner::paper::LabelLayout laid_out(const Workshop& workshop, const lardiner::facts::LabelRun& run);

class Press {
 public:
  /// `codes` null: encode each on the way.
  Press(const Workshop& workshop, const Codes* codes) : workshop_(workshop), codes_(codes) {}

  void print(const lardiner::facts::LabelRun& run);
  /// Ends all PDFs.
  void finish();

  qsizetype bytes() const { return bytes_; }
  int labels() const { return labels_; }

 private:
  struct Document {
    explicit Document(const lardiner::paper::Faces& faces) : writer(faces) {}
    lardiner::paper::PdfWriter writer;
    int labels = 0;
  };
  void end(Document& document);

  const Workshop& workshop_;
  const Codes* codes_;
  std::map<QString, std::unique_ptr<Document>> documents_;  // by medium
  qsizetype bytes_ = 0;
  int labels_ = 0;
};

}  // namespace bench
