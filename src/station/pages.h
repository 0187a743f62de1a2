// The pages of templates/station with what is to stand on them; every text is escaped for where it stands.
#pragma once

#include <QByteArray>
#include <QHash>
#include <QString>
#include <memory>
#include <string_view>
#include <utility>
#include <vector>

#include "problem/error.h"
#include "words/words.h"

namespace lardiner::station {

/// The values of a page, or of one row of a part that is repeated, by the names that its template has. REQUIRES: a name
/// is a literal.
struct Part {
  std::vector<std::pair<std::string_view, QString>> values;
  std::vector<std::pair<std::string_view, Part>> parts;

  Part& set(std::string_view name, const QString& value) {
    values.emplace_back(name, value);
    return *this;
  }
  /// One more row of `name`; the reference holds until the next.
  Part& add(std::string_view name) { return parts.emplace_back(name, Part()).second; }
};

/// A page as its file has it: what a name stands for is set by whoever renders it.
struct PageSource {
  QString file;  ///< "templates/station/lot.html"
  QString name;  ///< "lot"
  QByteArray html;
};

/// HTML with three kinds of mark: `{{NAME}}`, a value; `{{#NAME}}…{{/NAME}}`, repeated for each row of that name;
/// `[[key]]`, the page's word of the language. A page is set into the page "frame" where that has `[[content]]`.
/// ctemplate escapes by context (HTML, attribute, address): a source must begin with its AUTOESCAPE pragma.
class Pages {
 public:
  Pages();
  ~Pages();
  Pages(Pages&&) noexcept;
  Pages& operator=(Pages&&) noexcept;

  /// All pages in each language. Errors: no frame, no pragma or another, an escape that is turned off (":none"), an
  /// unknown word, marks that ctemplate cannot read.
  static problem::ExpectedAll<Pages> read(const std::vector<PageSource>& sources,
                                          const std::vector<words::Language>& languages);

  /// REQUIRES: a page and a language that were read. A value that the template has and `part` has not is a fault of the
  /// program: it throws std::logic_error, since a label's date that is left out would look like one that is none.
  QByteArray page(const QString& name, const QString& language, const Part& part) const;

 private:
  struct Kept;
  std::unique_ptr<Kept> kept_;
};

}  // namespace lardiner::station
