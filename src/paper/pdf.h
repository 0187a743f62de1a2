// Writes drawings as a PDF: what is equal on many labels once, on each page only what varies.
#pragma once

#include <QByteArray>
#include <QString>
#include <memory>
#include <optional>
#include <vector>

#include "paper/drawing.h"
#include "paper/face.h"
#include "paper/sheet.h"
#include "problem/error.h"

namespace lardiner::paper {

struct PdfSettings {
  QString title;
  QString language;  ///< BCP 47, as "en" or "es-MX"; read aloud by it
  PageSize size;     ///< of every page
};

/// One document at a time. The bytes depend on nothing but what was drawn (no date, no program state), so equal
/// drawings give equal files. Several writers may work on several threads; they may share one `Faces`.
///
/// Each page stands in memory until `finish`. Whatever goes wrong on the way (a drawing off its label, a label off the
/// page, a character without a glyph, no memory) is kept and reported there, the first fault only: no file is better
/// than one with a part missing.
class PdfWriter {
 public:
  /// Names a form of the current document.
  enum class Form : int {};

  /// A label on a page: the form, when there is one, below, and the label's own drawing over it.
  struct Placed {
    std::optional<Form> form;  ///< of the same size
    Drawing own;
    PageSize size;  ///< of the label before it is turned, in the page's resolution
    Placement at;
  };

  /// A document of more pages is refused (Range): callers divide a long run into several files, as people do too.
  static constexpr int kMostPages = 40000;

  /// REQUIRES: `faces` outlives the writer.
  explicit PdfWriter(const Faces& faces);
  ~PdfWriter();
  PdfWriter(const PdfWriter&) = delete;
  PdfWriter& operator=(const PdfWriter&) = delete;

  /// Starts a document; what was not finished is dropped. The second and later documents of a writer start quicker,
  /// since the faces are loaded already.
  void begin(const PdfSettings& settings);

  /// Draws once what many labels share: of the label's size, or of the whole page's. REQUIRES: `begin`.
  Form add_form(const Drawing& shared, PageSize size);
  Form add_form(const Drawing& shared);

  /// Adds a page of labels, drawn in this order. Boxes and codes keep to whole dots wherever a label stands, turned or
  /// not.
  void add_page(const std::vector<Placed>& labels);

  /// Adds a page that is one label.
  void add_page(std::optional<Form> form, const Drawing& own);

  /// The finished file. Errors: NoGlyph, NoRoom (drawn off its label or page), Range (too many pages, none), Machine.
  /// Ends the document either way.
  problem::Expected<QByteArray> finish();

 private:
  class Document;
  std::unique_ptr<Document> document_;
};

}  // namespace lardiner::paper
