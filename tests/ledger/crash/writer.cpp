// Appends to a ledger, ten events at a time, and tells on standard output how many it has been told are recorded; it is
// killed while it does so.   ledger_writer FILE STATION APPENDS
#include <unistd.h>

#include <QCoreApplication>
#include <cstdio>

#include "small_history.h"

using namespace lardiner;
using namespace lardiner::ledger;
using history::Kind;

namespace {

// A batch, what is done with its tubs, and a temperature.
std::vector<history::Event> ten_events(const QString& station, qint64 round) {
  const QDateTime at = kMorning.addSecs(round);
  const QString lot = QStringLiteral("%1LOT%2").arg(station).arg(round);
  std::vector<history::Event> events{
      made(lot, QStringLiteral("salsa"), at, 6, {{QStringLiteral("tomatillo"), QStringLiteral("T-1")}})};
  for (int tub = 1; tub <= 6; ++tub) events.push_back(of_lot(Kind::Moved, lot, at, {tub}));
  events.push_back(of_lot(Kind::Frozen, lot, at, {5, 6}));
  events.push_back(of_lot(Kind::Dispatched, lot, at, {1, 2}));
  history::Event place;
  place.kind = Kind::PlaceTemperature;
  place.at = at;
  place.by = QStringLiteral("JO");
  place.place = QStringLiteral("walk-in 1");
  place.temperature = measure::Temperature{38 * 10, measure::Scale::Fahrenheit};
  events.push_back(place);
  return events;
}

void tell(const QByteArray& line) {
  if (::write(STDOUT_FILENO, line.constData(), static_cast<size_t>(line.size())) < 0) ::_exit(5);
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  if (argc != 4) return 2;
  const QString station = QString::fromLocal8Bit(argv[2]);
  problem::Expected<Ledger> ledger = Ledger::open(QString::fromLocal8Bit(argv[1]), Access::Write);
  if (!ledger) {
    std::fprintf(stderr, "%s\n", qPrintable(problem::text(ledger.error())));
    return 4;
  }
  qint64 count = 0;
  for (const Head& head : ledger->heads())
    if (head.station == station) count = head.count;
  tell("open\n");
  for (int left = QByteArray(argv[3]).toInt(); left > 0; --left) {
    const auto entries = ledger->append(ten_events(station, count / 10),
                                        {station, kMorning.addYears(1), QStringLiteral("America/New_York")});
    if (!entries) {
      std::fprintf(stderr, "%s", qPrintable(problem::text(entries.error())));
      return 4;
    }
    count += 10;
    tell(QByteArray::number(count) + '\n');
  }
  return 0;
}
