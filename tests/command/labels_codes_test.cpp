// The loop closed on every page: what a scanner reads from a 203 dpi, 1-bit raster is what is printed beside it.
#include <set>

#include "demo_day.h"
#include "gs1/dates.h"
#include "gs1/digital_link.h"
#include "small_kitchen.h"

using namespace lardiner;
using namespace lardiner::command;
using namespace Qt::StringLiterals;

namespace {

constexpr int kThisYear = 2026;

gs1::Link link_of(const Page& page) {
  REQUIRE(page.codes.size() == 1);
  const auto link = gs1::parse_digital_link(page.codes.front());
  REQUIRE(link);
  return *link;
}

bool has_word(const Page& page, const QString& word) { return page.text.split(u' ').contains(word); }

QDate date_in(const gs1::Link& link, QStringView ai) {
  return gs1::read_yymmdd(gs1::attribute(link, ai), kThisYear, gs1::DayZero::Refused).value();
}

// "Wed 25 Nov 2026", as the small print writes dates.
QString small_print(QDate date) { return QLocale(QLocale::English).toString(date, QStringLiteral("ddd dd MMM yyyy")); }

// The date identifiers in a link, in ascending order.
QStringList date_identifiers(const gs1::Link& link) {
  QStringList out;
  for (const auto& [ai, value] : link.attributes)
    if (ai != "11"_L1) out << ai;
  return out;
}

void check_frozen(const Page& page, const Band& band, const gs1::Link& link) {
  CHECK(band.date == date_in(link, u"7006"));
  const bool limited = page.text.contains("Best before ");
  CHECK(date_identifiers(link) == (limited ? QStringList{"15", "7006"} : QStringList{"7006"}));
  if (limited) CHECK(page.text.contains("Best before " + small_print(date_in(link, u"15")) + " if kept frozen"));
}

void check_instant(const Band& band, const gs1::Link& link) {
  CHECK(band.caption == "USE BY");
  CHECK(date_identifiers(link) == QStringList{"7003"});
  const auto end = gs1::read_yymmddhhmm(gs1::attribute(link, u"7003"), kThisYear).value();
  CHECK(end.date == band.date);
  CHECK(end.time == *band.time);
}

void check_day(const Band& band, const gs1::Link& link) {
  const QString ai = band.caption == "USE BY" ? "17" : "15";
  CHECK(date_identifiers(link) == QStringList{ai});
  CHECK(date_in(link, ai) == band.date);
}

}  // namespace

TEST_CASE("one code is read from every page, and it names the lot and the serial that are printed there",
          "[command][labels][codes][src:gs1-dl]") {
  const DemoDay& day = demo_day();
  std::set<std::pair<QString, QString>> seen;
  for (const Labelled& label : labelled(day)) {
    INFO(label.page->name().toStdString() << ": " << label.page->text.toStdString());
    const gs1::Link link = link_of(*label.page);
    CHECK(link.address == "https://quarrylane.example");
    CHECK(link.lot == label.lot);
    CHECK(has_word(*label.page, link.lot));
    CHECK(has_word(*label.page, link.serial));
    CHECK(link.serial.endsWith(QStringLiteral("-%1").arg(label.number)));
    CHECK(link.gtin == label.batch["gtin"_L1].toString());
    CHECK(seen.emplace(link.gtin, link.serial).second);
  }
  CHECK(seen.size() == day.pages.size());
}

TEST_CASE("the code's date is the one in the band: 17 a use-by day, 7003 a use-by time, 15 quality, 7006 the freezing",
          "[command][labels][codes][src:gs1-dl]") {
  int frozen = 0, instants = 0, days = 0;
  for (const Page& page : demo_day().pages) {
    INFO(page.name().toStdString() << ": " << page.text.toStdString());
    const gs1::Link link = link_of(page);
    const auto shown = band(page);
    REQUIRE(shown);
    if (shown->caption == "FROZEN") {
      check_frozen(page, *shown, link);
      ++frozen;
    } else if (shown->time) {
      check_instant(*shown, link);
      ++instants;
    } else {
      check_day(*shown, link);
      ++days;
    }
  }
  CHECK(frozen > 0);
  CHECK(instants > 0);
  CHECK(days > 0);
}

TEST_CASE("where the code has room for it, the production date is in it: the day that the label says it was made",
          "[command][labels][codes][src:gs1-dl]") {
  const SmallKitchen kitchen;
  kitchen.folder.put_fault("kitchen/kitchen.toml", "https://weirhouse.example", "https://a.test");
  REQUIRE(kitchen.labels({"records.csv", "--out", "labels"}).status == 0);
  for (const Page& page : pages(kitchen.folder, "labels/lid.pdf")) {
    INFO(page.name().toStdString() << ": " << page.text.toStdString());
    const gs1::Link link = link_of(page);
    CHECK(date_in(link, u"11") == QDate(2026, 11, 25));
    CHECK(page.text.contains("Made " + small_print(QDate(2026, 11, 25))));
  }
}
