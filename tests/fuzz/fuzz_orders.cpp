// Any bytes as orders and as lots on hand, CSV or JSON Lines, over a small book that is right: every fault with words,
// never a crash.
#include <QDateTime>
#include <QTimeZone>

#include "plan/read_orders.h"
#include "small_book.h"

namespace {

using namespace lardiner;

void check_told(const problem::Errors& errors) {
  for (const problem::Error& error : errors) fuzz::must(!problem::text(error).isEmpty());
}

void read(const reader::Rows& rows) {
  const plan::ReadSettings settings{QDateTime(QDate(2026, 10, 7), QTime(6, 0), QTimeZone::utc()), rows.semicolons};
  const plan::Orders orders = plan::read_orders(rows, fuzz::small_book(), settings);
  const plan::OnHandLots lots = plan::read_on_hand(rows, fuzz::small_book(), settings);
  check_told(orders.errors);
  check_told(lots.errors);
  for (const plan::Order& order : orders.orders) fuzz::must(order.due >= settings.now && order.quantity.amount > 0);
  for (const plan::OnHand& lot : lots.lots) fuzz::must(lot.quantity.amount > 0);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  const QByteArray bytes(reinterpret_cast<const char*>(data), static_cast<qsizetype>(size));
  if (const auto rows = reader::csv_rows(bytes, QStringLiteral("orders.csv"))) read(*rows);
  if (const auto rows = reader::json_rows(bytes, QStringLiteral("orders.jsonl"))) read(*rows);
  return 0;
}
