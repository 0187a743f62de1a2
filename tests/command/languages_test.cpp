// Every product of the demo in every language and for every purpose: it fits and says everything, or is refused.
#include "batch/batch.h"
#include "our_book.h"
#include "pages.h"
#include "paper/label.h"
#include "paper/pdf.h"
#include "positions.h"
#include "symbol/qr.h"

using namespace lardiner;
using namespace lardiner::command;
using namespace Qt::StringLiterals;

namespace {

// Texts that stand in for a translation: as long as the first language's, of words of the language's own pack.
class StandIn {
 public:
  explicit StandIn(const words::Language& language) : language_(language) {
    for (const QString& key : words::keys(language.code()))
      if (key.startsWith(u"allergen.")) words_ << language.word(key);
  }

  void add_to(book::LocalText& text) {
    if (text.empty() || !text.in(language_.code()).isEmpty()) return;
    QString& out = made_[text.texts.front().second];  // equal texts stay equal
    const qsizetype length = text.texts.front().second.size();
    if (out.isEmpty()) out = next();
    while (out.size() + 4 < (is_dense(out) ? length / 2 : length)) out += u' ' + next();
    text.texts.emplace_back(language_.code(), out);
  }

 private:
  static bool is_dense(const QString& text) { return text.front().script() == QChar::Script_Han; }
  const QString& next() { return words_[at_++ % words_.size()]; }

  const words::Language& language_;
  QStringList words_;
  std::map<QString, QString> made_;
  qsizetype at_ = 0;
};

void translate(book::Book& book, const words::Language& language) {
  StandIn stand_in(language);
  for (book::Site& site : book.sites) stand_in.add_to(site.name);
  for (book::Ingredient& ingredient : book.ingredients) {
    stand_in.add_to(ingredient.name);
    for (book::SupplierItem& item : ingredient.supplier_items) stand_in.add_to(item.statement);
  }
  for (book::Product& product : book.products) {
    for (book::LocalText* text :
         {&product.name, &product.unit_name, &product.unit_plural, &product.used_for, &product.common_name})
      stand_in.add_to(*text);
    for (book::Finishing& finishing : product.finishing) {
      stand_in.add_to(finishing.setting_text);
      stand_in.add_to(finishing.cue);
    }
  }
  book.kitchen.words_reviewed_by.texts.emplace_back(language.code(), u"a test"_s);
}

// The demo's book with every label in these languages, for this purpose.
book::Book book_in(const QStringList& languages, book::Purpose purpose, const std::vector<words::Language>& packs) {
  book::Book book = demo_book();
  for (const words::Language& pack : packs)
    if (languages.contains(pack.code()) && pack.code() != "en"_L1) translate(book, pack);
  book.kitchen.languages = languages;
  for (book::Product& product : book.products)
    for (book::ContainerSpec& container : product.containers) {
      container.languages = languages;
      container.purpose = purpose;
    }
  return book;
}

QString template_name(const facts::LabelRun& run) {
  if (run.hold) return u"hold"_s;
  return run.purpose == book::Purpose::Inside     ? u"inside"_s
         : run.purpose == book::Purpose::Finisher ? u"finisher"_s
                                                  : u"sale"_s;
}

QString text_of(const facts::Paragraph& paragraph) {
  QString out;
  for (const facts::Run& run : paragraph) out += run.text;
  return out;
}

// Labels of one medium in one PDF, and what each must say.
class Proofread {
 public:
  Proofread(const book::Media& medium, const paper::Faces& faces) : medium_(medium), faces_(faces), writer_(faces) {}

  void add(const facts::LabelRun& run, const paper::LabelLayout& layout) {
    if (wanted_.empty()) writer_.begin({u"Every language"_s, run.language, layout.size});
    const facts::ContainerFacts& container = run.containers.front();
    std::optional<paper::CodeImage> code;
    if (!container.uri.isEmpty()) {
      const auto matrix = symbol::encode_qr(container.uri, symbol::strongest_correction(container.uri));
      REQUIRE(matrix);
      code = paper::CodeImage{matrix->size, QByteArray(reinterpret_cast<const char*>(matrix->bits.data()),
                                                       static_cast<qsizetype>(matrix->bits.size()))};
    }
    writer_.add_page(writer_.add_form(layout.shared), paper::own_drawing(layout, container, code, faces_));
    wanted_.push_back({run, layout.code ? layout.code->module.value : 0});
  }

  void check(const Folder& folder) {
    if (wanted_.empty()) return;
    const auto pdf = writer_.finish();
    REQUIRE(pdf);
    folder.write(u"all.pdf"_s, *pdf);
    const std::vector<Page> pages = page_texts(folder, u"all.pdf"_s, Order::AsDrawn);
    const auto drawn = drawn_pages(folder, u"all.pdf"_s, medium_.dots_per_inch, faces_);
    REQUIRE(pages.size() == wanted_.size());
    REQUIRE(drawn.size() == wanted_.size());
    for (size_t i = 0; i < wanted_.size(); ++i) {
      INFO(wanted_[i].run.title.toStdString()
           << " on " << medium_.id.toStdString() << ", " << wanted_[i].run.language.toStdString());
      check_text(wanted_[i].run, pages[i]);
      CHECK(faults(drawn[i], printable(), wanted_[i].module) == QStringList());
    }
  }

 private:
  struct Wanted {
    facts::LabelRun run;
    int module = 0;
  };

  void check_text(const facts::LabelRun& run, const Page& page) const {
    const QString text = unspaced(page.text);
    for (const facts::Fact& fact : run.facts) {
      if (fact.id == facts::FactId::ContainerOf || fact.id == facts::FactId::Serial) continue;
      for (const facts::Paragraph& paragraph : fact.paragraphs) {
        INFO(text_of(paragraph).toStdString() << " in " << text.toStdString());
        CHECK(text.contains(unspaced(text_of(paragraph))));
      }
    }
  }

  Area printable() const {
    const paper::Sheet sheet = paper::sheet_of(medium_);
    const auto dots = [](paper::Dots length) { return static_cast<double>(length.value); };
    return {dots(sheet.margin.left), dots(sheet.margin.top), dots(sheet.label.width - sheet.margin.right),
            dots(sheet.label.height - sheet.margin.bottom)};
  }

  const book::Media& medium_;
  const paper::Faces& faces_;
  paper::PdfWriter writer_;
  std::vector<Wanted> wanted_;
};

// What a label may be refused for here: room, a medium that does not bear the container, and for sale an ingredient of
// which it is not written which supplier's it was.
void check_refusal(const problem::Errors& errors, const batch::Batch& batch) {
  CHECK_FALSE(errors.empty());
  for (const problem::Error& error : errors) {
    INFO(problem::text(error).toStdString());
    CHECK((error.code == problem::Code::NoRoom || error.code == problem::Code::Conflict ||
           error.hint == "write supplier_item among the inputs"_L1));
    CHECK(error.place.line == batch.record.place.line);
  }
}

// The runs of a batch on a medium; none when they are refused.
std::vector<facts::LabelRun> runs_of(const book::Book& book, const batch::Batch& batch,
                                     const std::vector<words::Language>& packs, const QString& medium) {
  auto runs = facts::label_runs(book, batch, packs, {false, medium});
  if (runs) return std::move(*runs);
  check_refusal(runs.error(), batch);
  return {};
}

// Every batch of the demo day on every medium of the book; how many labels fitted.
int try_all(const QStringList& languages, book::Purpose purpose, const std::vector<words::Language>& packs,
            const paper::Faces& faces) {
  const book::Book book = book_in(languages, purpose, packs);
  const auto run_of_day = value_of(read_run(kDemoDay, {}, book, kEvening));
  std::map<QString, paper::LabelTemplate> templates;
  for (const QString& name : {u"inside"_s, u"finisher"_s, u"sale"_s, u"hold"_s})
    templates[name] = value_of(read_template(demo_options(), name));
  int fitted = 0;
  for (const book::Media& medium : book.media) {
    Proofread proofread(medium, faces);
    for (const batch::Batch& batch : run_of_day.batches)
      for (const facts::LabelRun& run : runs_of(book, batch, packs, medium.id)) {
        const auto layout = paper::lay_out(run, templates.at(template_name(run)), medium, faces);
        if (layout) {
          proofread.add(run, *layout);
          ++fitted;
        } else {
          check_refusal(layout.error(), batch);
        }
      }
    const Folder folder;
    proofread.check(folder);
  }
  return fitted;
}

}  // namespace

TEST_CASE("in every language every product fits and says all its facts in its place, or is refused for want of room",
          "[command][languages][labels][once]") {
  const auto packs = value_of(read_languages(demo_options()));
  const paper::Faces faces = value_of(read_faces(demo_options()));
  for (const words::Language& pack : packs)
    for (const auto purpose : {book::Purpose::Inside, book::Purpose::Finisher, book::Purpose::Sale}) {
      QStringList languages{pack.code()};
      if (purpose == book::Purpose::Finisher && pack.code() != "en"_L1) languages << u"en"_s;  // two on one label
      INFO(languages.join(u'+').toStdString() << ", purpose " << static_cast<int>(purpose));
      CHECK(try_all(languages, purpose, packs, faces) > 40);
    }
}
