// Reads a language pack: templates/words/<language>.toml.
#include "words/pack.h"

#include <QRegularExpression>

#include "reader/fields.h"
#include "reader/quote.h"
#include "reader/read.h"
#include "words/date_names.h"

namespace lardiner::words {

namespace {

using problem::Code;
using reader::quoted;
using reader::Value;

// A key longer than any of ours is not compared with them.
constexpr qsizetype kLongestKeyCompared = 60;

// Collects the words of a pack, and what is wrong with them.
class PackReader {
 public:
  PackReader(const Value& document, QString code) : document_(document), code_(std::move(code)) {}

  problem::ExpectedAll<Language> read() {
    reader::Fields fields(document_, QStringLiteral("the language pack"), errors_);
    check_language(fields);
    const QString reviewed_by = reviewer(fields);
    if (const Value* table = fields.table(u"words")) {
      take(*table, QString());
      check_complete(*table);
    } else if (!fields.has(u"words")) {
      fields.refuse(u"words", Code::Missing, QStringLiteral("the language pack has no words"),
                    QStringLiteral("add a table [words]"));
    }
    fields.finish();
    if (!errors_.empty()) {
      problem::sort(errors_);
      return tl::unexpected(errors_);
    }
    return Language(code_, words_, reviewed_by);
  }

 private:
  void check_language(reader::Fields& fields) {
    const auto language = fields.required_text(u"language");
    if (!language) return;
    if (*language != code_) {
      fields.refuse(
          u"language", Code::Conflict,
          QStringLiteral("the pack for ") + quoted(code_) + QStringLiteral(" says it is for ") + quoted(*language),
          QStringLiteral("name the file after its language"));
      return;
    }
    check_dates(fields);
  }

  // A figure beside the day of the month would be misread; two of one name would be one day.
  void check_dates(reader::Fields& fields) {
    const QLocale locale(code_);
    const QString brief = locale.monthName(12, QLocale::ShortFormat);
    if (locale.language() == QLocale::C || brief == QLatin1String("M12")) {  // CLDR's stand-in for a month it lacks
      fields.refuse(u"language", Code::Unknown,
                    QStringLiteral("the months of language ") + quoted(code_) + QStringLiteral(" are not known"),
                    QStringLiteral("write a language tag such as en, es or es-MX"));
      return;
    }
    QStringList days = weekday_names(locale);
    QStringList months = month_names(locale);
    const bool named = days.size() == 7 && months.size() == 12;
    if (named && days.removeDuplicates() == 0 && months.removeDuplicates() == 0) return;
    fields.refuse(
        u"language", Code::Unsafe,
        QStringLiteral("language ") + quoted(code_) + QStringLiteral(" has days or months without a name of their own"),
        QStringLiteral("use a language that names them in words, so that no date is misread"));
  }

  QString reviewer(reader::Fields& fields) {
    const Value* value = fields.value(u"reviewed_by");
    if (value && value->kind == Value::Kind::String) return value->text.trimmed();
    fields.refuse(u"reviewed_by", Code::Missing, QStringLiteral("the language pack does not say who reviewed it"),
                  QStringLiteral("write reviewed_by = \"\" while nobody has"));
    return {};
  }

  // The table's words; a table within is a family: allergen.milk.
  void take(const Value& table, const QString& prefix) {
    for (const auto& [name, value] : table.entries) {
      const QString key = prefix + name;
      if (value.kind == Value::Kind::Table) {
        take(value, key + u'.');
      } else if (accepted(key, value)) {
        words_.insert(key, value.text);
      }
    }
  }

  bool accepted(const QString& key, const Value& value) {
    seen_.append(key);
    if (words_.contains(key)) {
      return refused(Code::Duplicate, quoted(key) + QStringLiteral(" is said twice"), value.key_place,
                     QStringLiteral("keep one"));
    }
    if (!is_known(key, code_)) {
      const QString near = key.size() > kLongestKeyCompared ? QString() : problem::nearest(key, keys(code_));
      return refused(
          Code::Unknown, quoted(key) + QStringLiteral(" is not a word of labels or sheets"), value.key_place,
          near.isEmpty() ? QStringLiteral("take it out") : QStringLiteral("did you mean ") + quoted(near) + u'?');
    }
    if (value.kind != Value::Kind::String || value.text.trimmed().isEmpty()) {
      return refused(Code::Malformed, quoted(key) + QStringLiteral(" has no text"), value.place,
                     QStringLiteral("write its words in quotes"));
    }
    return has_its_gaps(key, value);
  }

  // Each of {0}, {1}… that the sentence takes must stand in it, and no other.
  bool has_its_gaps(const QString& key, const Value& value) {
    static const QRegularExpression gap(QStringLiteral("\\{([^}]*)\\}"));
    QStringList wanted;
    for (int i = 0; i < values_of(key); ++i) wanted.append(QString::number(i));
    QStringList found;
    for (auto gaps = gap.globalMatch(value.text); gaps.hasNext();) {
      const auto match = gaps.next();
      if (!wanted.contains(match.captured(1))) {
        return refused(
            Code::Malformed,
            quoted(key) + QStringLiteral(" has ") + match.captured() + QStringLiteral(", which nothing fills"),
            value.place, QStringLiteral("take it out"));
      }
      found.append(match.captured(1));
    }
    for (const QString& number : wanted) {
      if (found.contains(number)) continue;
      return refused(Code::Missing, quoted(key) + QStringLiteral(" lacks {") + number + u'}', value.place,
                     QStringLiteral("write it where the value stands in the sentence"));
    }
    if (!is_in_order(key) || found == wanted) return true;
    return refused(Code::Malformed, quoted(key) + QStringLiteral(" does not have its values once and in order"),
                   value.place, QStringLiteral("write {0} before {1}: other text is built around them"));
  }

  void check_complete(const Value& table) {
    for (const QString& key : keys(code_)) {
      if (seen_.contains(key)) continue;
      // "pieces.few" is missing from [words.pieces], where there is one.
      const QString family = key.section(u'.', 0, -2);
      const Value* within = family.isEmpty() ? nullptr : table.find(family);
      refused(Code::Missing, QStringLiteral("the words have no ") + quoted(key), (within ? *within : table).place,
              within ? QStringLiteral("add ") + key.section(u'.', -1) + QStringLiteral(" under [words.") + family + u']'
                     : QStringLiteral("add it under [words]"));
    }
  }

  bool refused(Code code, const QString& what, const problem::Place& place, const QString& hint) {
    errors_.push_back({code, what, place, hint});
    return false;
  }

  const Value& document_;
  QString code_;
  QHash<QString, QString> words_;
  QStringList seen_;
  problem::Errors errors_;
};

}  // namespace

problem::ExpectedAll<Language> read_language(const QByteArray& toml, const QString& file, const QString& code) {
  const auto document = reader::read_toml(toml, file);
  if (!document) return tl::unexpected(problem::Errors{document.error()});
  return PackReader(*document, code).read();
}

}  // namespace lardiner::words
