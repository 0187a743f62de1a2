// The checks of an element's content that its identifier names; for element_fault.cpp alone.
#include "gs1/value.h"

#include <QDate>
#include <algorithm>
#include <array>

#include "gs1/check_digit.h"
#include "gs1/identifier.h"
#include "gs1/uri.h"

namespace lardiner::gs1 {

namespace {

int number(QStringView text) { return text.toInt(); }

// In a leap year: without the century, 29 February is as good as its two digits.
bool month_and_day(QStringView text, int year_digits, bool zero_day) {
  const int year = number(text.first(year_digits));
  const int full = year_digits == 2 ? 2000 + year : year;
  const int day = number(text.mid(year_digits + 2, 2));
  return QDate(full, number(text.mid(year_digits, 2)), day == 0 && zero_day ? 1 : day).isValid();
}

bool date_or_month(QStringView text) { return month_and_day(text, 2, true); }
bool date(QStringView text) { return month_and_day(text, 2, false); }
bool long_date(QStringView text) { return month_and_day(text, 4, false); }
bool hour(QStringView text) { return number(text) <= 23; }
bool sixtieth(QStringView text) { return number(text) <= 59; }
bool hour_and_minute(QStringView text) { return hour(text.first(2)) && sixtieth(text.mid(2)); }

bool zero(QStringView text) {
  return std::all_of(text.begin(), text.end(), [](QChar c) { return c == u'0'; });
}
bool not_zero(QStringView text) { return !zero(text); }
bool no_zero_prefix(QStringView text) { return text.size() == 1 || text[0] != u'0'; }
bool yes_no(QStringView text) { return text == u"0" || text == u"1"; }
bool hyphen(QStringView text) { return text == u"-"; }
bool winding(QStringView text) { return QStringView(u"019").contains(text); }
bool sex(QStringView text) { return QStringView(u"0129").contains(text); }

bool media_type(QStringView text) { return (number(text) >= 1 && number(text) <= 10) || number(text) >= 80; }
bool latitude(QStringView text) { return text.toLongLong() <= 1'800'000'000; }
bool longitude(QStringView text) { return text.toLongLong() <= 3'600'000'000; }

bool piece_of_total(QStringView text) {
  const int piece = number(text.first(2));
  return piece >= 1 && piece <= number(text.mid(2));
}

bool place_in_sequence(QStringView text) {
  return text[1] == u'/' && text[0] >= u'1' && text[0] <= u'9' && text[2] >= text[0] && text[2] <= u'9';
}

bool has_non_digit(QStringView text) { return !all_digits(text); }
bool importer_index(QStringView text) { return text[0] != u'=' && in_set(text[0], CharacterSet::Set64); }

bool percent_encoding(QStringView text) {
  for (qsizetype at = text.indexOf(u'%'); at >= 0; at = text.indexOf(u'%', at + 1))
    if (at + 2 >= text.size() || !is_hexadecimal(text[at + 1]) || !is_hexadecimal(text[at + 2])) return false;
  return true;
}

// GS1 General Specifications 1.4.2: a company prefix has at least four digits.
bool company_prefix_first(QStringView text) { return text.size() >= 4 && all_digits(text.first(4)); }
bool company_prefix_second(QStringView text) { return company_prefix_first(text.mid(1)); }

constexpr std::array kChecks = {
    ContentCheck{"csum", check_digit_holds, "does not end in its check digit"},
    ContentCheck{"gcppos1", company_prefix_first, "does not begin with a company prefix"},
    ContentCheck{"gcppos2", company_prefix_second, "has no company prefix behind its first digit"},
    ContentCheck{"yymmd0", date_or_month, "is no date (two digits each of year, month and day)"},
    ContentCheck{"yymmdd", date, "is no date (two digits each of year, month and day)"},
    ContentCheck{"yyyymmdd", long_date, "is no date (four digits of the year, two of month and day)"},
    ContentCheck{"hhmi", hour_and_minute, "is no time (two digits each of hour and minute)"},
    ContentCheck{"hh", hour, "is no hour"},
    ContentCheck{"mi", sixtieth, "is no minute"},
    ContentCheck{"ss", sixtieth, "is no second"},
    ContentCheck{"zero", zero, "is not 0"},
    ContentCheck{"nonzero", not_zero, "is 0"},
    ContentCheck{"nozeroprefix", no_zero_prefix, "begins with 0"},
    ContentCheck{"yesno", yes_no, "is neither 0 nor 1"},
    ContentCheck{"hyphen", hyphen, "is not a minus sign"},
    ContentCheck{"winding", winding, "is none of 0, 1 and 9"},
    ContentCheck{"iso5218", sex, "is none of 0, 1, 2 and 9"},
    ContentCheck{"mediatype", media_type, "is no media type (01 to 10, 80 to 99)"},
    ContentCheck{"latitude", latitude, "is no latitude"},
    ContentCheck{"longitude", longitude, "is no longitude"},
    ContentCheck{"pieceoftotal", piece_of_total, "is no piece of a total"},
    ContentCheck{"posinseqslash", place_in_sequence, "is no place in a sequence"},
    ContentCheck{"hasnondigit", has_non_digit, "has digits only"},
    ContentCheck{"importeridx", importer_index, "is no importer index"},
    ContentCheck{"pcenc", percent_encoding, "has a % without two hexadecimal digits behind it"},
};

}  // namespace

const ContentCheck* content_check(QStringView name) {
  const auto found = std::find_if(kChecks.begin(), kChecks.end(),
                                  [&](const ContentCheck& check) { return name == QLatin1String(check.name); });
  return found == kChecks.end() ? nullptr : &*found;
}

}  // namespace lardiner::gs1
