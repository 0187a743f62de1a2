// Dates on labels: weekday and month in letters, day before month, whatever the machine's locale.
#include <QTextBoundaryFinder>
#include <algorithm>
#include <clocale>

#include "pack_files.h"

using namespace lardiner::words;

namespace {

const Language kEnglish = shipped(QStringLiteral("en"));
const Language kSpanish = shipped(QStringLiteral("es"));
const QDate kFirstOfDecember(2026, 12, 1);  // a Tuesday

QStringList split(const char* words) { return QString::fromUtf8(words).split(u' '); }

QStringList weekdays(const Language& language) {
  QStringList names;
  for (int day = 1; day <= 7; ++day) names.append(language.weekday(QDate(2026, 6, day)));  // June 1 is a Monday
  return names;
}

QStringList months(const Language& language) {
  QStringList names;
  for (int month = 1; month <= 12; ++month) names.append(language.month(QDate(2026, month, 1)));
  return names;
}

// Sets the C library's locale for one test; where the machine lacks it nothing is set.
class LocaleFor {
 public:
  explicit LocaleFor(const char* name) : before_(std::setlocale(LC_ALL, nullptr)) { std::setlocale(LC_ALL, name); }
  ~LocaleFor() { std::setlocale(LC_ALL, before_.c_str()); }

 private:
  std::string before_;
};

}  // namespace

TEST_CASE("weekdays and months are words in English", "[words][date]") {
  CHECK(weekdays(kEnglish) == split("Mon Tue Wed Thu Fri Sat Sun"));
  CHECK(months(kEnglish) == split("Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec"));
}

TEST_CASE("weekdays and months are words in Spanish", "[words][date]") {
  CHECK(weekdays(kSpanish) == split("lun mar mié jue vie sáb dom"));
  CHECK(months(kSpanish) == split("ene feb mar abr may jun jul ago sept oct nov dic"));
}

TEST_CASE("the band shows weekday, day and month in capitals", "[words][date][src:eu-1169-2011/annex-x]") {
  CHECK(kEnglish.day_month(kFirstOfDecember) == QStringLiteral("TUE 01 DEC"));
  CHECK(kSpanish.day_month(kFirstOfDecember) == QStringLiteral("MAR 01 DIC"));
  CHECK(kSpanish.day_month(QDate(2026, 12, 2)) == QStringLiteral("MIÉ 02 DIC"));
  CHECK(kSpanish.day_month(QDate(2026, 9, 5)) == QStringLiteral("SÁB 05 SEPT"));
}

TEST_CASE("a full date has weekday, day, month and year, and a time in 24 hours",
          "[words][date][src:eu-1169-2011/annex-x]") {
  CHECK(shown(kEnglish.date(kFirstOfDecember)) == QStringLiteral("Tue 01 Dec 2026"));
  CHECK(shown(kSpanish.date(kFirstOfDecember)) == QStringLiteral("mar 01 dic 2026"));
  CHECK(shown(kEnglish.date_time(QDateTime(kFirstOfDecember, QTime(10, 40)))) ==
        QStringLiteral("Tue 01 Dec 2026 10:40"));
  CHECK(shown(kSpanish.date_time(QDateTime(kFirstOfDecember, QTime(0, 5)))) == QStringLiteral("mar 01 dic 2026 00:05"));
  CHECK(kEnglish.time(QTime(23, 59, 59)) == QStringLiteral("23:59"));
}

TEST_CASE("the weekday is the calendar's", "[words][date][src:iso-8601]") {
  CHECK(kEnglish.weekday(QDate(1985, 4, 12)) == QStringLiteral("Fri"));   // 1985-W15-5
  CHECK(kEnglish.weekday(QDate(2005, 1, 1)) == QStringLiteral("Sat"));    // 2004-W53-6
  CHECK(kEnglish.weekday(QDate(2008, 12, 29)) == QStringLiteral("Mon"));  // 2009-W01-1
}

TEST_CASE("each language has its own order of a date, its own names and its own signs", "[words][date]") {
  const auto date = [](const char* code) { return shown(shipped(QLatin1String(code)).date(kFirstOfDecember)); };
  CHECK(date("fr") == QStringLiteral("mar 01 déc 2026"));
  CHECK(date("pt") == QStringLiteral("ter 01 dez 2026"));
  CHECK(date("vi") == QStringLiteral("Thứ Ba 01 tháng 12 2026"));
  CHECK(date("el") == QStringLiteral("Τρί 01 Δεκ 2026"));
  CHECK(date("ru") == QStringLiteral("вт 01 дек 2026"));
  CHECK(date("zh") == QStringLiteral("2026年12月1日 周二"));
}

TEST_CASE("a date without spaces is held on one line", "[words][date]") {
  const QString date = shipped(QStringLiteral("zh")).date(kFirstOfDecember);
  QTextBoundaryFinder lines(QTextBoundaryFinder::Line, date);
  QList<qsizetype> breaks;
  while (lines.toNextBoundary() != -1) breaks << lines.position();
  CHECK(breaks == QList<qsizetype>{date.indexOf(u' ') + 1, date.size()});
  CHECK_FALSE(shipped(QStringLiteral("en")).date(kFirstOfDecember).contains(QChar(0x2060)));
}

TEST_CASE("in no language a line ends between the day and its month, or within the month", "[words][date]") {
  for (const QString& code : shipped_languages()) {
    const Language language = shipped(code);
    const QString date = language.date(kFirstOfDecember);
    INFO(date.toStdString());
    QTextBoundaryFinder lines(QTextBoundaryFinder::Line, date);
    QStringList pieces;
    for (qsizetype from = 0, to = lines.toNextBoundary(); to != -1; from = to, to = lines.toNextBoundary())
      pieces << shown(date.mid(from, to - from));
    const QString day = code == QStringLiteral("zh") ? QStringLiteral("1") : QStringLiteral("01");
    const bool together = std::any_of(pieces.begin(), pieces.end(), [&](const QString& piece) {
      return piece.contains(language.month(kFirstOfDecember)) && piece.contains(day);
    });
    CHECK(together);
  }
}

TEST_CASE("in each language the band shows the day in capitals, and the year apart", "[words][date]") {
  const auto band = [](const char* code) {
    const Language language = shipped(QLatin1String(code));
    return language.day_month(kFirstOfDecember) + u'|' + language.year(kFirstOfDecember);
  };
  CHECK(band("en") == QStringLiteral("TUE 01 DEC|2026"));
  CHECK(band("fr") == QStringLiteral("MAR 01 DÉC|2026"));
  CHECK(band("pt") == QStringLiteral("TER 01 DEZ|2026"));
  CHECK(band("vi") == QStringLiteral("THỨ BA 01 THÁNG 12|2026"));
  CHECK(band("el") == QStringLiteral("ΤΡΙ 01 ΔΕΚ|2026"));
  CHECK(band("ru") == QStringLiteral("ВТ 01 ДЕК|2026"));
  CHECK(band("zh") == QStringLiteral("12月1日 周二|2026年"));
}

TEST_CASE("the hours of the day are 24 in each language", "[words][date]") {
  for (const QString& code : shipped_languages()) {
    CHECK(shipped(code).time(QTime(0, 5)) == QStringLiteral("00:05"));
    CHECK(shipped(code).date_time(QDateTime(kFirstOfDecember, QTime(15, 30))).endsWith(QStringLiteral(" 15:30")));
  }
}

TEST_CASE("abbreviations lose their full stops", "[words][date]") {
  const Language german = unshipped(QStringLiteral("de"));
  CHECK(shown(german.date(kFirstOfDecember)) == QStringLiteral("Di 01 Dez 2026"));
  const Language french = shipped(QStringLiteral("fr"));
  CHECK(french.day_month(kFirstOfDecember) == QStringLiteral("MAR 01 DÉC"));
}

TEST_CASE("each language puts letters in capitals by its own rules", "[words][upper]") {
  const Language turkish = unshipped(QStringLiteral("tr"));
  CHECK(kEnglish.upper(QStringLiteral("fish, milk")) == QStringLiteral("FISH, MILK"));
  CHECK(kSpanish.upper(QStringLiteral("piñón, maní")) == QStringLiteral("PIÑÓN, MANÍ"));
  CHECK(turkish.upper(QStringLiteral("inci ılık")) == QStringLiteral("İNCİ ILIK"));
}

TEST_CASE("the locale of the machine changes nothing", "[words][date][upper]") {
  for (const char* name : {"C", "de_DE.UTF-8", "tr_TR.UTF-8"}) {
    const LocaleFor here(name);
    QLocale::setDefault(QLocale(QLocale::Turkish));
    CHECK(kEnglish.day_month(QDate(2026, 4, 17)) == QStringLiteral("FRI 17 APR"));
    CHECK(kSpanish.day_month(QDate(2026, 6, 16)) == QStringLiteral("MAR 16 JUN"));
    CHECK(kEnglish.upper(QStringLiteral("fish")) == QStringLiteral("FISH"));
    CHECK(kEnglish.decimal_mark() == u'.');
    QLocale::setDefault(QLocale::c());
  }
}

TEST_CASE("each language has its decimal mark", "[words][number]") {
  CHECK(kEnglish.decimal_mark() == u'.');
  CHECK(kSpanish.decimal_mark() == u',');
  CHECK(unshipped(QStringLiteral("es-US")).decimal_mark() == u'.');
}
