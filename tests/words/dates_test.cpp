// Dates on labels: weekday and month in letters, day before month, whatever the machine's locale.
#include <QRegularExpression>
#include <clocale>

#include "show.h"
#include "words/words.h"

using namespace lardiner::words;

namespace {

const Language kEnglish(QStringLiteral("en"), {}, {});
const Language kSpanish(QStringLiteral("es"), {}, {});
const QDate kFirstOfDecember(2026, 12, 1);  // a Tuesday

QStringList split(const char* words) { return QString::fromUtf8(words).split(u' '); }

QStringList weekdays(const Language& language) {
  QStringList names;
  for (int day = 1; day <= 7; ++day) names.append(language.weekday_short(QDate(2026, 6, day)));  // June 1 is a Monday
  return names;
}

QStringList months(const Language& language) {
  QStringList names;
  for (int month = 1; month <= 12; ++month) names.append(language.month_short(QDate(2026, month, 1)));
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
  CHECK(kEnglish.date(kFirstOfDecember) == QStringLiteral("Tue 01 Dec 2026"));
  CHECK(kSpanish.date(kFirstOfDecember) == QStringLiteral("mar 01 dic 2026"));
  CHECK(kEnglish.date_time(QDateTime(kFirstOfDecember, QTime(10, 40))) == QStringLiteral("Tue 01 Dec 2026 10:40"));
  CHECK(kSpanish.date_time(QDateTime(kFirstOfDecember, QTime(0, 5))) == QStringLiteral("mar 01 dic 2026 00:05"));
  CHECK(kEnglish.time(QTime(23, 59, 59)) == QStringLiteral("23:59"));
}

TEST_CASE("the weekday is the calendar's", "[words][date][src:iso-8601]") {
  CHECK(kEnglish.weekday_short(QDate(1985, 4, 12)) == QStringLiteral("Fri"));   // 1985-W15-5
  CHECK(kEnglish.weekday_short(QDate(2005, 1, 1)) == QStringLiteral("Sat"));    // 2004-W53-6
  CHECK(kEnglish.weekday_short(QDate(2008, 12, 29)) == QStringLiteral("Mon"));  // 2009-W01-1
}

TEST_CASE("no date of four years is in digits only, holds a full stop, or looks like another", "[words][date]") {
  const QRegularExpression form(QStringLiteral("^\\p{L}{3,4} [0-9]{2} \\p{L}{3,4} [0-9]{4}$"));
  for (const Language& language : {kEnglish, kSpanish}) {
    QSet<QString> seen;
    for (QDate day(2024, 1, 1); day < QDate(2028, 1, 1); day = day.addDays(1)) {
      REQUIRE(form.match(language.date(day)).hasMatch());
      seen.insert(language.date(day));
    }
    CHECK(seen.size() == 1461);
  }
}

TEST_CASE("abbreviations lose their full stops", "[words][date]") {
  const Language german(QStringLiteral("de"), {}, {});
  CHECK(german.date(kFirstOfDecember) == QStringLiteral("Di 01 Dez 2026"));
  const Language french(QStringLiteral("fr"), {}, {});
  CHECK(french.day_month(kFirstOfDecember) == QStringLiteral("MAR 01 DÉC"));
}

TEST_CASE("each language puts letters in capitals by its own rules", "[words][upper]") {
  const Language turkish(QStringLiteral("tr"), {}, {});
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
  CHECK(Language(QStringLiteral("es-US"), {}, {}).decimal_mark() == u'.');
}
