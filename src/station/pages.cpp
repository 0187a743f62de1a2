// The pages of templates/station with what is to stand on them.
#include "station/pages.h"

#include <ctemplate/template.h>

#include <QRegularExpression>
#include <algorithm>
#include <set>
#include <stdexcept>
#include <string>

namespace lardiner::station {

using problem::Code;
using problem::Error;
using problem::Errors;

namespace {

constexpr const char* kPragma = "{{%AUTOESCAPE context=\"HTML\"}}";
constexpr const char* kFrame = "frame";

// What a template asks for: its own values, and those of the parts that it repeats.
struct Marks {
  std::set<std::string, std::less<>> values;
  std::vector<std::pair<std::string, Marks>> parts;
};

Error fault(const PageSource& source, const QString& what, const QString& hint) {
  return {Code::Malformed, what, {source.file, 0, 0, {}, 1, 1}, hint};
}

// The marks from `at` on, up to the end of the part `within`.
bool read_marks(const QByteArray& html, qsizetype& at, const QByteArray& within, Marks& marks) {
  for (;;) {
    const qsizetype begin = html.indexOf("{{", at);
    if (begin < 0) return within.isEmpty();
    const qsizetype end = html.indexOf("}}", begin);
    if (end < 0) return false;
    const QByteArray mark = html.mid(begin + 2, end - begin - 2);
    at = end + 2;
    if (mark.startsWith('%') || mark.startsWith('!')) continue;
    if (mark.startsWith('/')) return mark.mid(1) == within;
    if (!mark.startsWith('#')) {
      marks.values.insert(mark.toStdString());
      continue;
    }
    Marks part;
    if (!read_marks(html, at, mark.mid(1), part)) return false;
    marks.parts.emplace_back(mark.mid(1).toStdString(), std::move(part));
  }
}

// Every [[key]] as the language's word, escaped for text and for a quoted attribute.
QByteArray with_words(const PageSource& source, const QByteArray& html, const words::Language& language,
                      Errors& errors) {
  static const QRegularExpression form(QStringLiteral("\\[\\[([a-z_.]+)\\]\\]"));
  const QString text = QString::fromUtf8(html);
  QString out;
  qsizetype from = 0;
  for (auto found = form.globalMatch(text); found.hasNext();) {
    const auto mark = found.next();
    const QString key = QStringLiteral("page.") + mark.captured(1);
    out += text.mid(from, mark.capturedStart() - from);
    from = mark.capturedEnd();
    if (!language.has(key)) {
      errors.push_back(fault(source, QStringLiteral("there is no word \"%1\" for a page").arg(mark.captured(1)),
                             QStringLiteral("correct the key, or add it to templates/words")));
      continue;
    }
    out += language.word(key).toHtmlEscaped();
  }
  return (out + text.mid(from)).toUtf8();
}

void check_escapes(const PageSource& source, Errors& errors) {
  if (!source.html.startsWith(kPragma))
    errors.push_back(fault(source, QStringLiteral("the page does not begin with its pragma"),
                           QStringLiteral("let it begin with %1").arg(QLatin1String(kPragma))));
  if (source.html.indexOf("{{%", 1) >= 0)
    errors.push_back(fault(source, QStringLiteral("the page has a second pragma"), QStringLiteral("leave it out")));
  static const QRegularExpression unescaped(QStringLiteral("\\{\\{[^}]*:"));
  if (unescaped.match(QString::fromUtf8(source.html)).hasMatch())
    errors.push_back(fault(source, QStringLiteral("a mark of the page chooses its own escape"),
                           QStringLiteral("write the name alone: what it needs is told from where it stands")));
  if (source.html.contains("{{>"))
    errors.push_back(fault(source, QStringLiteral("the page includes another"), QStringLiteral("write it out")));
}

void fill(ctemplate::TemplateDictionary& dictionary, const Part& part) {
  const auto text = [](std::string_view bytes) { return ctemplate::TemplateString(bytes.data(), bytes.size()); };
  for (const auto& [name, value] : part.values) {
    const QByteArray bytes = value.toUtf8();
    dictionary.SetValue(text(name), text({bytes.constData(), static_cast<size_t>(bytes.size())}));
  }
  for (const auto& [name, row] : part.parts) fill(*dictionary.AddSectionDictionary(text(name)), row);
}

// A part and those that it stands in: what none of them has is not known.
struct Within {
  const Part& part;
  const Within* outer;

  bool has(std::string_view name) const {
    const auto& values = part.values;
    return std::any_of(values.begin(), values.end(), [&](const auto& one) { return one.first == name; }) ||
           (outer && outer->has(name));
  }
};

void check_filled(const Marks& marks, const Within& within) {
  for (const std::string& name : marks.values)
    if (!within.has(name)) throw std::logic_error("a page lacks its " + name);
  for (const auto& [name, row] : within.part.parts)
    for (const auto& [repeated, its_marks] : marks.parts)
      if (repeated == name) check_filled(its_marks, {row, &within});
}

}  // namespace

struct Pages::Kept {
  ctemplate::TemplateCache cache;
  QHash<QString, Marks> marks;  // by "es/lot"

  void add(const PageSource& source, const QByteArray& html, const QString& language, Errors& errors);
};

void Pages::Kept::add(const PageSource& source, const QByteArray& html, const QString& language, Errors& errors) {
  const QString key = language + u'/' + source.name;
  qsizetype at = 0;
  Marks read;
  const QByteArray name = key.toUtf8();
  const bool whole = read_marks(html, at, {}, read) &&
                     cache.StringToTemplateCache(name.constData(), html.constData(), static_cast<size_t>(html.size()),
                                                 ctemplate::STRIP_BLANK_LINES);
  if (!whole)
    errors.push_back(fault(source, QStringLiteral("the marks of the page do not close"),
                           QStringLiteral("close each {{#PART}} with its {{/PART}}")));
  marks.insert(key, std::move(read));
}

Pages::Pages() : kept_(std::make_unique<Kept>()) {}
Pages::~Pages() = default;
Pages::Pages(Pages&&) noexcept = default;
Pages& Pages::operator=(Pages&&) noexcept = default;

problem::ExpectedAll<Pages> Pages::read(const std::vector<PageSource>& sources,
                                        const std::vector<words::Language>& languages) {
  Pages pages;
  Errors errors;
  const auto frame = std::find_if(sources.begin(), sources.end(),
                                  [](const PageSource& one) { return one.name == QLatin1String(kFrame); });
  if (frame == sources.end() || !frame->html.contains("[[content]]"))
    return tl::unexpected(Errors{{Code::Missing,
                                  QStringLiteral("there is no frame with a place for a page"),
                                  {},
                                  QStringLiteral("install the program again: templates/station/frame.html")}});
  for (const PageSource& source : sources) check_escapes(source, errors);
  if (!errors.empty()) return tl::unexpected(errors);
  for (const PageSource& source : sources) {
    if (source.name == frame->name) continue;
    QByteArray html = frame->html;
    html.replace("[[content]]", source.html.mid(source.html.indexOf('\n') + 1));
    for (const words::Language& language : languages)
      pages.kept_->add(source, with_words(source, html, language, errors), language.code(), errors);
  }
  if (!errors.empty()) return tl::unexpected(errors);
  pages.kept_->cache.Freeze();
  return pages;
}

QByteArray Pages::page(const QString& name, const QString& language, const Part& part) const {
  const QString key = language + u'/' + name;
  const auto marks = kept_->marks.constFind(key);
  if (marks == kept_->marks.constEnd()) throw std::logic_error("no such page: " + key.toStdString());
  check_filled(*marks, {part, nullptr});
  ctemplate::TemplateDictionary dictionary("page");
  fill(dictionary, part);
  std::string out;
  const QByteArray template_name = key.toUtf8();
  if (!kept_->cache.ExpandNoLoad(template_name.constData(), ctemplate::STRIP_BLANK_LINES, &dictionary, nullptr, &out))
    throw std::logic_error("a page could not be made: " + key.toStdString());
  return {out.data(), static_cast<qsizetype>(out.size())};
}

}  // namespace lardiner::station
