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
  /// `code` is a BCP 47 tag ("en", "es"). Dates and numbers come from QLocale's CLDR data for that tag (for "en" day
  /// before month, as on every label: TUE 01 DEC 2026). `reviewed_by` empty: nobody has reviewed the safety words.
  Language(QString code, QHash<QString, QString> words, QString reviewed_by);

  const QString& code() const { return code_; }
  bool reviewed() const { return !reviewed_by_.isEmpty(); }

  /// The word for `key`; REQUIRES: has(key) (the pack is checked against the key list when it is read). A key that the
  /// pack lacks all the same comes back in brackets, "[allergen.lupin]": it must be seen, never be nothing.
  QString word(const QString& key) const;
  bool has(const QString& key) const;
  /// `word(key)` with {0}, {1}… replaced in one pass: braces within a value stay as they are.
  QString sentence(const QString& key, const QStringList& values) const;

  QString weekday_short(QDate date) const;          ///< "Tue", without a full stop
  QString month_short(QDate date) const;            ///< "Dec", "dic", without a full stop
  QString day_month(QDate date) const;              ///< "TUE 01 DEC": upper case in the language's way, for the band
  QString date(QDate date) const;                   ///< "Tue 01 Dec 2026"
  QString date_time(const QDateTime& local) const;  ///< "Tue 01 Dec 2026 10:40", 24 hours
  QString time(const QTime& time) const;            ///< "10:40"
  QChar decimal_mark() const;
  QString upper(const QString& text) const;      ///< by the language's own rules
  QString list(const QStringList& items) const;  ///< "wheat, milk, egg"

 private:
  QString code_;
  QHash<QString, QString> words_;
  QString reviewed_by_;
  QLocale locale_;
};

}  // namespace lardiner::words
