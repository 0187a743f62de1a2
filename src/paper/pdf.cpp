// Writes drawings as a PDF: what is equal on many labels once, on each page only what varies.
#include "paper/pdf.h"

#include <hpdf.h>

#include <array>
#include <vector>

#include "paper/pdf_content.h"
#include "paper/pdf_fonts.h"

namespace lardiner::paper {

namespace {

// Called from C: it must neither throw nor jump. The document keeps the first error, which `finish` reads.
void ignore(HPDF_STATUS, HPDF_STATUS, void*) {}

// What one label has of its own is mostly the bits of its code, which do not compress: to try costs more time than all
// else on its page and saves a tenth of its bytes.
constexpr qsizetype kWorthCompressing = 1024;
// Pages hang in groups under the root: an array of libharu ends at 32,767.
constexpr int kPagesInGroup = 256;
// Further forms are written out on their pages: a dictionary of libharu ends at 4,095 entries and is searched from the
// start at each addition.
constexpr int kMostForms = 2000;

struct FreeDocument {
  void operator()(HPDF_Doc document) const { HPDF_Free(document); }
};

// A hair less than the whole dots: renderers take the next whole dot, and what a float rounds up would be one too many.
HPDF_Box box_of(PageSize size) {
  constexpr Points kHair{0.001};
  const auto length = [&](Dots d) {
    return static_cast<HPDF_REAL>((points(fine_dots(d), size.resolution) - kHair).value);
  };
  return {0, 0, length(size.width), length(size.height)};
}

problem::Error failed(HPDF_STATUS status) {
  return {problem::Code::Machine,
          QStringLiteral("the PDF cannot be built (libharu error 0x%1)").arg(status, 4, 16, QLatin1Char('0')),
          {},
          QStringLiteral("make fewer labels at once, so that less memory is needed; if it stays, please report it")};
}

}  // namespace

class PdfWriter::Document {
 public:
  explicit Document(const Faces& faces) : fonts_(faces), content_(faces, used_), haru_(HPDF_New(ignore, nullptr)) {
    if (haru_) HPDF_UseUTFEncodings(haru_.get());
  }

  void begin(const PdfSettings& settings);
  PageSize page() const { return page_; }
  Form add_form(const Drawing& shared, PageSize size);
  void add_page(const std::vector<Placed>& labels);
  void add_page(std::optional<Form> form, const Drawing& own);
  problem::Expected<QByteArray> finish();

 private:
  // Whether all is well so far; notes a fault otherwise.
  bool check(bool well) {
    if (!well && !fault_) fault_ = failed(haru_ ? HPDF_GetError(haru_.get()) : HPDF_FAILD_TO_ALLOC_MEM);
    return !fault_;
  }
  void describe(const PdfSettings& settings);
  QByteArray drawn(const Drawing& drawing, PageSize size);
  void add_placed(QByteArray& content, const Placed& label);
  void check_on_page(const Placed& label);
  void end_page(const QByteArray& content);
  HPDF_Dict stream_of(const QByteArray& bytes);
  void add_shared(QByteArray& content, int form) const;
  HPDF_Pages group();
  problem::Expected<QByteArray> saved();

  UsedCharacters used_;
  PdfFonts fonts_;
  PdfContent content_;
  std::unique_ptr<HPDF_Doc_Rec, FreeDocument> haru_;
  PageSize page_;
  HPDF_Dict resources_ = nullptr;
  HPDF_Dict forms_ = nullptr;
  HPDF_Pages group_ = nullptr;
  int form_count_ = 0;
  std::vector<QByteArray> written_out_;  // the forms from kMostForms on
  int page_count_ = 0;
  std::optional<problem::Error> fault_;
};

void PdfWriter::Document::begin(const PdfSettings& settings) {
  fault_.reset();
  used_ = {};
  form_count_ = page_count_ = 0;
  written_out_.clear();
  page_ = settings.size;
  HPDF_Doc doc = haru_.get();
  if (doc) HPDF_ResetError(doc);
  if (!check(doc && HPDF_NewDoc(doc) == HPDF_OK)) return;
  resources_ = HPDF_Dict_New(doc->mmgr);
  forms_ = HPDF_Dict_New(doc->mmgr);
  check(resources_ && forms_ && HPDF_Xref_Add(doc->xref, resources_) == HPDF_OK &&
        HPDF_Dict_Add(resources_, "XObject", forms_) == HPDF_OK &&
        HPDF_Dict_Add(doc->root_pages, "Resources", resources_) == HPDF_OK &&
        HPDF_Dict_Add(doc->root_pages, "MediaBox", HPDF_Box_Array_New(doc->mmgr, box_of(page_))) == HPDF_OK);
  describe(settings);
}

void PdfWriter::Document::describe(const PdfSettings& settings) {
  HPDF_Doc doc = haru_.get();
  const QByteArray language = settings.language.toUtf8();
  const QByteArray title = settings.title.toUtf8();
  check(HPDF_Dict_Add(doc->catalog, "Lang", HPDF_String_New(doc->mmgr, language.constData(), nullptr)) == HPDF_OK &&
        HPDF_SetCurrentEncoder(doc, "UTF-8") == HPDF_OK &&
        HPDF_SetInfoAttr(doc, HPDF_INFO_TITLE, title.constData()) == HPDF_OK);
}

QByteArray PdfWriter::Document::drawn(const Drawing& drawing, PageSize size) {
  content_.set_page(size);
  problem::Expected<QByteArray> content = content_.of(drawing);
  if (!content && !fault_) fault_ = content.error();
  return content ? *content : QByteArray();
}

// A stream whose buffer is no larger than its content: libharu's own takes 4 KB for each page.
HPDF_Dict PdfWriter::Document::stream_of(const QByteArray& bytes) {
  HPDF_Doc doc = haru_.get();
  HPDF_Dict dict = HPDF_DictStream_New(doc->mmgr, doc->xref);
  HPDF_Stream exact = HPDF_MemStream_New(doc->mmgr, static_cast<HPDF_UINT>(bytes.size()));
  if (!check(dict && exact)) return nullptr;
  HPDF_Stream_Free(dict->stream);
  dict->stream = exact;
  if (bytes.size() > kWorthCompressing) dict->filter = HPDF_STREAM_FILTER_FLATE_DECODE;
  check(HPDF_Stream_Write(exact, reinterpret_cast<const HPDF_BYTE*>(bytes.constData()),
                          static_cast<HPDF_UINT>(bytes.size())) == HPDF_OK);
  return dict;
}

PdfWriter::Form PdfWriter::Document::add_form(const Drawing& shared, PageSize size) {
  const Form form{form_count_++};
  if (fault_) return form;
  HPDF_Doc doc = haru_.get();
  const QByteArray content = "0 g\n" + drawn(shared, size);  // never empty: readers warn of an empty stream
  if (fault_) return form;
  if (form_count_ > kMostForms) {
    written_out_.push_back(content);
    return form;
  }
  HPDF_Dict dict = stream_of(content);
  if (!dict) return form;
  dict->header.obj_class |= HPDF_OSUBCLASS_XOBJECT;
  const HPDF_Box box = {0, 0, static_cast<HPDF_REAL>(size.width.value), static_cast<HPDF_REAL>(size.height.value)};
  check(HPDF_Dict_AddName(dict, "Type", "XObject") == HPDF_OK &&
        HPDF_Dict_AddName(dict, "Subtype", "Form") == HPDF_OK &&
        HPDF_Dict_Add(dict, "BBox", HPDF_Box_Array_New(doc->mmgr, box)) == HPDF_OK &&
        HPDF_Dict_Add(dict, "Resources", resources_) == HPDF_OK &&
        HPDF_Dict_Add(forms_, form_name(static_cast<int>(form)).constData(), dict) == HPDF_OK);
  return form;
}

void PdfWriter::Document::add_page(std::optional<Form> form, const Drawing& own) {
  QByteArray content = to_dots(page_.resolution);
  if (form) add_shared(content, static_cast<int>(*form));
  content += drawn(own, page_);
  end_page(content);
}

void PdfWriter::Document::add_page(const std::vector<Placed>& labels) {
  QByteArray content = to_dots(page_.resolution);
  for (const Placed& label : labels) add_placed(content, label);
  end_page(content);
}

// PDF counts from the bottom left (ISO 32000-1:2008, 8.3.2.3). Turned, the label's x runs up the page and its y, which
// runs up the label, to the left.
void PdfWriter::Document::add_placed(QByteArray& content, const Placed& label) {
  check_on_page(label);
  if (fault_) return;
  const auto matrix = [&](const char* axes, Dots x, Dots y) {
    content += axes + QByteArray::number(x.value) + ' ' + QByteArray::number(y.value) + " cm\n";
  };
  const Placement& at = label.at;
  content += "q ";
  if (at.turned)
    matrix("0 1 -1 0 ", at.x + label.size.height, page_.height - at.y - label.size.width);
  else
    matrix("1 0 0 1 ", at.x, page_.height - at.y - label.size.height);
  if (label.form) add_shared(content, static_cast<int>(*label.form));
  content += drawn(label.own, label.size) + "Q\n";
}

void PdfWriter::Document::check_on_page(const Placed& label) {
  const Dots width = label.at.turned ? label.size.height : label.size.width;
  const Dots height = label.at.turned ? label.size.width : label.size.height;
  const bool on = label.at.x >= Dots{0} && label.at.y >= Dots{0} && label.at.x + width <= page_.width &&
                  label.at.y + height <= page_.height;
  if (on || fault_) return;
  fault_ = problem::Error{problem::Code::NoRoom,
                          QStringLiteral("a label of %1 by %2 dots at %3, %4 does not lie on the page of %5 by %6 dots")
                              .arg(width.value)
                              .arg(height.value)
                              .arg(label.at.x.value)
                              .arg(label.at.y.value)
                              .arg(page_.width.value)
                              .arg(page_.height.value),
                          {},
                          QStringLiteral("this is a fault of Lardiner's layout: please report it")};
}

// The pages are dictionaries of three entries; size and resources are inherited from the root of the tree
// (ISO 32000-1:2008, 7.7.3.4).
void PdfWriter::Document::end_page(const QByteArray& content) {
  ++page_count_;
  if (fault_ || page_count_ > kMostPages) return;
  HPDF_Dict stream = stream_of(content);
  HPDF_Dict page = stream ? HPDF_Dict_New(haru_->mmgr) : nullptr;
  HPDF_Pages parent = page ? group() : nullptr;
  if (!check(parent && HPDF_Xref_Add(haru_->xref, page) == HPDF_OK &&
             HPDF_Dict_AddName(page, "Type", "Page") == HPDF_OK && HPDF_Dict_Add(page, "Contents", stream) == HPDF_OK &&
             HPDF_Pages_AddKids(parent, page) == HPDF_OK))
    return;
  page->header.obj_class |= HPDF_OSUBCLASS_PAGE;  // only now: it is counted as one, and has no drawing state
}

void PdfWriter::Document::add_shared(QByteArray& content, int form) const {
  if (form < kMostForms)
    content += '/' + form_name(form) + " Do\n";
  else
    content += written_out_[static_cast<std::size_t>(form - kMostForms)];
}

HPDF_Pages PdfWriter::Document::group() {
  if ((page_count_ - 1) % kPagesInGroup == 0) group_ = HPDF_Pages_New(haru_->mmgr, haru_->root_pages, haru_->xref);
  return group_;
}

problem::Expected<QByteArray> PdfWriter::Document::finish() {
  if (page_count_ == 0 && !fault_)
    fault_ = problem::Error{problem::Code::Range, QStringLiteral("a PDF needs at least one page"), {}, {}};
  if (page_count_ > kMostPages)
    fault_ = problem::Error{problem::Code::Range,
                            QStringLiteral("%1 pages are more than the %2 of one PDF").arg(page_count_).arg(kMostPages),
                            {},
                            QStringLiteral("divide the run into several files")};
  if (!fault_) check(fonts_.embed(haru_.get(), resources_, used_));
  problem::Expected<QByteArray> bytes = fault_ ? tl::unexpected(*fault_) : saved();
  if (haru_) HPDF_FreeDoc(haru_.get());
  return bytes;
}

// Not HPDF_SaveToFile: it reports success on a full disk.
problem::Expected<QByteArray> PdfWriter::Document::saved() {
  HPDF_Doc doc = haru_.get();
  if (!check(HPDF_SaveToStream(doc) == HPDF_OK && HPDF_ResetStream(doc) == HPDF_OK)) return tl::unexpected(*fault_);
  QByteArray bytes;
  bytes.reserve(static_cast<qsizetype>(HPDF_GetStreamSize(doc)));
  std::array<HPDF_BYTE, 65536> chunk;
  while (true) {
    HPDF_UINT32 size = static_cast<HPDF_UINT32>(chunk.size());
    const HPDF_STATUS status = HPDF_ReadFromStream(doc, chunk.data(), &size);
    bytes.append(reinterpret_cast<const char*>(chunk.data()), static_cast<qsizetype>(size));
    if (status == HPDF_STREAM_EOF || (status == HPDF_OK && size == 0)) return bytes;
    if (status != HPDF_OK) return tl::unexpected(failed(status));
  }
}

PdfWriter::PdfWriter(const Faces& faces) : document_(std::make_unique<Document>(faces)) {}
PdfWriter::~PdfWriter() = default;
void PdfWriter::begin(const PdfSettings& settings) { document_->begin(settings); }
PdfWriter::Form PdfWriter::add_form(const Drawing& shared, PageSize size) { return document_->add_form(shared, size); }
PdfWriter::Form PdfWriter::add_form(const Drawing& shared) { return document_->add_form(shared, document_->page()); }
void PdfWriter::add_page(const std::vector<Placed>& labels) { document_->add_page(labels); }
void PdfWriter::add_page(std::optional<Form> form, const Drawing& own) { document_->add_page(form, own); }
problem::Expected<QByteArray> PdfWriter::finish() { return document_->finish(); }

}  // namespace lardiner::paper
