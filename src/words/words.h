// The fixed words of labels and sheets in each language, and dates and numbers as each language writes them.
#pragma once

#include <QDate>
#include <QDateTime>
#include <QHash>
#include <QLocale>
#include <QString>
#include <QStringList>

#include "words/keys.h"

namespace lardiner::words {

/// One language pack: templates/words/<language>.toml, read by the caller and handed over as key -> text.
class Language {
 public:
  /// `code` is a BCP 47 tag ("en", "es"). The names of days and months, the decimal mark and capitals come from
  /// QLocale's CLDR data for that tag; the order of a date from the pack (for "en" day before month, as on every label:
  /// TUE 01 DEC 2026). `reviewed_by` empty: nobody has reviewed the safety words.
  Language(QString code, QHash<QString, QString> words, QString reviewed_by);

  const QString& code() const { return code_; }
  /// The tag of a document in this language: "zh-Hans" for "zh", which alone does not say which characters.
  QString tag() const;
  bool reviewed() const { return !reviewed_by_.isEmpty(); }

  /// The word for `key`; REQUIRES: has(key) (the pack is checked against the key list when it is read). A key that the
  /// pack lacks all the same comes back in brackets, "[allergen.lupin]": it must be seen, never be nothing.
  QString word(const QString& key) const;
  bool has(const QString& key) const;
  /// `word(key)` with {0}, {1}… replaced in one pass: braces within a value stay as they are.
  QString sentence(const QString& key, const QStringList& values) const;

  /// The text before, between and after the values of `key`. REQUIRES: is_in_order(key).
  QStringList around(const QString& key) const;
  /// The form of the counted word `key` that goes with `figure`, a number as written: "1 piece", "24 pieces".
  QString counted(const QString& key, const QString& figure) const;

  QString weekday(QDate date) const;    ///< "Tue", without a full stop
  QString month(QDate date) const;      ///< "Dec", "dic", "12月", without a full stop
  QString day_month(QDate date) const;  ///< "TUE 01 DEC": upper case in the language's way, for the band
  QString year(QDate date) const;       ///< "2026", "2026年": beside `day_month`
  /// "Tue 01 Dec 2026". No line ends between day and month (in the shipped packs by U+00A0), within a month, or beside
  /// an ideograph (word joiners, U+2060).
  QString date(QDate date) const;
  QString date_time(const QDateTime& local) const;  ///< "Tue 01 Dec 2026 10:40", 24 hours
  QString time(const QTime& time) const;            ///< "10:40"
  QChar decimal_mark() const;
  QString upper(const QString& text) const;           ///< by the language's own rules
  QString list(const QStringList& items) const;       ///< "wheat, milk, egg"
  QString clauses(const QStringList& parts) const;    ///< "190 °C (375 °F), 16 to 18 min", within a sentence
  QString sentences(const QStringList& parts) const;  ///< "Golden. Rest 2 min", without the last full stop

 private:
  QString joined(const QString& key, const QStringList& parts) const;

  QString code_;
  QHash<QString, QString> words_;
  QString reviewed_by_;
  QLocale locale_;
  QStringList weekdays_, months_;
};

}  // namespace lardiner::words
