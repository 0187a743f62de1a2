// Any bytes as events, CSV or JSON Lines, over a small book that is right: every fault with words, never a crash; what
// is read can be written to a ledger and read back.
#include <QDateTime>
#include <QTimeZone>

#include "history/event_json.h"
#include "history/read_events.h"
#include "small_book.h"

namespace {

using namespace lardiner;

void check_body(const history::Event& event, const QDateTime& now) {
  const history::EntryId id{QStringLiteral("A"), 1};
  const QByteArray body = history::body({id, now, QStringLiteral("America/New_York"), event});
  const auto read = history::entry_of(id, body);
  fuzz::must(read && history::body(*read) == body);
}

void read(std::vector<reader::Value> rows, bool decimal_comma) {
  std::erase_if(rows, [](const reader::Value& row) { return !history::is_event(row); });
  const history::ReadSettings settings{QDateTime(QDate(2026, 11, 26), QTime(18, 0), QTimeZone::utc()), decimal_comma};
  const history::Events events = history::read_events(rows, fuzz::small_book(), settings);
  fuzz::must(events.events.size() <= rows.size());
  for (const problem::Error& error : events.errors) fuzz::must(!problem::text(error).isEmpty());
  for (const history::Event& event : events.events) {
    fuzz::must(event.at <= settings.now && !event.by.isEmpty());
    check_body(event, settings.now);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const QByteArray bytes(reinterpret_cast<const char*>(data), static_cast<qsizetype>(size));
  if (const auto rows = reader::read_csv(bytes, QStringLiteral("events.csv"))) read(rows->rows, rows->semicolons);
  if (const auto rows = reader::read_json_lines(bytes, QStringLiteral("events.jsonl"))) read(*rows, false);
  return 0;
}
