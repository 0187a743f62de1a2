// Names, capitals, decimal marks and plural forms against ICU's own CLDR data, and dates read back with ICU's names.
// Debian 12's Qt 6.4 carries CLDR 41 and its ICU 72 CLDR 42: in what is compared here, for the shipped languages, the
// two releases do not differ.
#include <unicode/dcfmtsym.h>
#include <unicode/dtfmtsym.h>
#include <unicode/plurrule.h>

#include <QRegularExpression>
#include <QSet>
#include <memory>

#include "pack_files.h"

using namespace lardiner::words;

namespace {

using icu::DateFormatSymbols;

QString text(const icu::UnicodeString& of) {
  return QString(reinterpret_cast<const QChar*>(of.getBuffer()), of.length());
}

icu::UnicodeString unicode(const QString& of) {
  return icu::UnicodeString(reinterpret_cast<const char16_t*>(of.utf16()), static_cast<int32_t>(of.size()));
}

icu::Locale locale(const QString& code) { return icu::Locale(code.toLatin1().constData()); }

QString upper(const QString& of, const QString& code) { return text(unicode(of).toUpper(locale(code))); }

// Monday first, or January first.
struct Names {
  QStringList days, months;
};

Names names(const QString& code, DateFormatSymbols::DtWidthType width) {
  UErrorCode status = U_ZERO_ERROR;
  const DateFormatSymbols symbols(locale(code), status);
  REQUIRE(U_SUCCESS(status));
  int32_t count = 0;
  Names out;
  const icu::UnicodeString* days = symbols.getWeekdays(count, DateFormatSymbols::FORMAT, width);
  for (int day : {2, 3, 4, 5, 6, 7, 1}) out.days << text(days[day]).remove(u'.');
  const icu::UnicodeString* months = symbols.getMonths(count, DateFormatSymbols::FORMAT, width);
  for (int month = 0; month < 12; ++month) out.months << text(months[month]).remove(u'.');
  return out;
}

// The year's days that `language` prints, each read back by `read`; no two may be equal, and none be in figures alone.
template <typename Print, typename Read>
void round_trip(const Print& print, const Read& read) {
  static const QRegularExpression misread(QStringLiteral("\\d+[/.-]\\d+"));
  QSet<QString> seen;
  for (QDate day(2028, 1, 1); day.year() == 2028; day = day.addDays(1)) {
    const QString printed = print(day);
    INFO(printed.toStdString());
    CHECK_FALSE(misread.match(printed).hasMatch());
    CHECK(read(printed) == day);
    seen.insert(printed);
  }
  CHECK(seen.size() == 366);
}

// Where the names of ICU's table stand in a date: named groups day, month, weekday and year.
QDate read_back(const QString& printed, const QRegularExpression& form, const std::vector<Names>& tables) {
  const auto match = form.match(printed);
  if (!match.hasMatch()) return {};
  for (const Names& table : tables) {
    const qsizetype month = table.months.indexOf(match.captured(QStringLiteral("month")));
    if (month < 0) continue;
    const QDate date(2028, static_cast<int>(month) + 1, match.captured(QStringLiteral("day")).toInt());
    for (const Names& other : tables)
      if (other.days.indexOf(match.captured(QStringLiteral("weekday"))) + 1 == date.dayOfWeek()) return date;
  }
  return {};
}

const char* const kWeekdayFirst = "(?<weekday>.+) (?<day>\\d\\d) (?<month>.+)";
const char* const kMonthFirst = "(?<month>\\d+月)(?<day>\\d+)日 (?<weekday>.+)";

}  // namespace

TEST_CASE("weekdays and months have ICU's short names, in Vietnamese, where the short ones are figures, the long",
          "[words][date][src:cldr]") {
  for (const QString& code : shipped_languages()) {
    const Language language = shipped(code);
    const bool full = code == QStringLiteral("vi");
    const Names expected = names(code, full ? DateFormatSymbols::WIDE : DateFormatSymbols::ABBREVIATED);
    for (int day = 1; day <= 7; ++day) CHECK(language.weekday(QDate(2026, 6, day)) == expected.days[day - 1]);
    for (int month = 1; month <= 12; ++month)
      CHECK(language.month(QDate(2026, month, 1)) == expected.months[month - 1]);
  }
}

TEST_CASE("no weekday has a figure, and no month is a figure alone", "[words][date]") {
  const QRegularExpression figure(QStringLiteral("\\d"));
  const QRegularExpression letter(QStringLiteral("\\p{L}"));
  for (const QString& code : shipped_languages()) {
    const Language language = shipped(code);
    for (int day = 1; day <= 7; ++day) CHECK_FALSE(language.weekday(QDate(2026, 6, day)).contains(figure));
    for (int month = 1; month <= 12; ++month) CHECK(language.month(QDate(2026, month, 1)).contains(letter));
  }
}

TEST_CASE("each day of a leap year is read back from its date with ICU's names, and no two are printed alike",
          "[words][date][src:cldr]") {
  for (const QString& code : shipped_languages()) {
    const Language language = shipped(code);
    const bool chinese = code == QStringLiteral("zh");
    std::vector<Names> tables{names(code, DateFormatSymbols::ABBREVIATED), names(code, DateFormatSymbols::WIDE)};
    const QString day_month = QString::fromUtf8(chinese ? kMonthFirst : kWeekdayFirst);
    const QRegularExpression date(chinese ? QStringLiteral("^(?<year>2028)年") + day_month + u'$'
                                          : u'^' + day_month + QStringLiteral(" (?<year>2028)$"));
    round_trip([&](QDate day) { return shown(language.date(day)); },
               [&](const QString& printed) { return read_back(printed, date, tables); });
    for (Names& table : tables)
      for (QStringList* list : {&table.days, &table.months})
        for (QString& name : *list) name = upper(name, code);
    const QRegularExpression band(u'^' + day_month + u'$');
    round_trip([&](QDate day) { return language.day_month(day); },
               [&](const QString& printed) { return read_back(printed, band, tables); });
  }
}

TEST_CASE("decimal marks are ICU's", "[words][number][src:cldr]") {
  for (const QString& code : shipped_languages()) {
    UErrorCode status = U_ZERO_ERROR;
    const icu::DecimalFormatSymbols symbols(locale(code), status);
    REQUIRE(U_SUCCESS(status));
    CHECK(QString(shipped(code).decimal_mark()) ==
          text(symbols.getSymbol(icu::DecimalFormatSymbols::kDecimalSeparatorSymbol)));
  }
}

TEST_CASE("capitals are ICU's: in Greek without accents", "[words][upper][src:cldr]") {
  CHECK(shipped(QStringLiteral("el")).upper(QStringLiteral("Τρίτη, αυγά, γάλα")) ==
        QStringLiteral("ΤΡΙΤΗ, ΑΥΓΑ, ΓΑΛΑ"));
  for (const QString& code : shipped_languages()) {
    const Language language = shipped(code);
    for (const QString& key : keys(code)) CHECK(language.upper(language.word(key)) == upper(language.word(key), code));
  }
}

TEST_CASE("plural forms are ICU's, for whole numbers and decimals as written", "[words][plural][src:cldr]") {
  for (const QString& code : shipped_languages()) {
    INFO(code.toStdString());
    UErrorCode status = U_ZERO_ERROR;
    const std::unique_ptr<icu::PluralRules> rules(icu::PluralRules::forLocale(locale(code), status));
    REQUIRE(U_SUCCESS(status));
    std::vector<int> numbers{100'000, 1'000'000, 1'000'001, 2'000'000};
    for (int n = 0; n <= 1'200; ++n) numbers.push_back(n);
    for (const int n : numbers) CHECK(name(plural_of(code, QString::number(n))) == text(rules->select(n)));
    for (const double n : {0.5, 1.5, 2.5, 21.5, 1'000'000.5}) {
      const QString figure = QString::number(n, 'f', 1).replace(u'.', shipped(code).decimal_mark());
      CHECK(name(plural_of(code, figure)) == text(rules->select(n)));
    }
  }
}

TEST_CASE("a pack gives the plural forms that ICU knows of its language", "[words][plural][src:cldr]") {
  for (const QString& code : shipped_languages()) {
    UErrorCode status = U_ZERO_ERROR;
    const std::unique_ptr<icu::PluralRules> rules(icu::PluralRules::forLocale(locale(code), status));
    const std::unique_ptr<icu::StringEnumeration> keywords(rules->getKeywords(status));
    REQUIRE(U_SUCCESS(status));
    QStringList expected;
    while (const icu::UnicodeString* keyword = keywords->snext(status)) expected << text(*keyword);
    QStringList given;
    for (const Plural plural : plurals_of(code)) given << name(plural);
    expected.sort();
    given.sort();
    CHECK(given == expected);
  }
}

TEST_CASE("a language that is not shipped has the form for any number alone, a region that of its language",
          "[words][plural]") {
  CHECK(plurals_of(QStringLiteral("de")) == std::vector{Plural::Other});
  CHECK(plural_of(QStringLiteral("de"), QStringLiteral("1")) == Plural::Other);
  CHECK(plural_of(QStringLiteral("es-MX"), QStringLiteral("1")) == Plural::One);
  CHECK(plural_of(QStringLiteral("pt"), QStringLiteral("0")) == Plural::One);
  CHECK(plural_of(QStringLiteral("pt-PT"), QStringLiteral("0")) == Plural::Other);
}
