// Orders from CSV or JSON Lines rows: every fault told at once, each at its cell.
#include "plan/read_orders.h"

#include "batch/clock.h"
#include "batch/phrases.h"
#include "book/values.h"
#include "plan/read_order_values.h"
#include "reader/quote.h"

namespace lardiner::plan {

using measure::Dimension;
using measure::Quantity;
using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

// A due time further ahead than this is a slip of the pen.
constexpr int kMostDaysAhead = 366;

QString read_site(Fields& fields, const Reading& reading) {
  const QString id = fields.text(u"site").value_or(QString());
  if (id.isEmpty() || reading.book.site(id)) return id;
  QStringList sites;
  for (const book::Site& site : reading.book.sites) sites += site.id;
  fields.refuse(u"site", Code::Unknown, QStringLiteral("%1 is not a site of the book").arg(quoted(id)),
                batch::did_you_mean(id, sites, QStringLiteral("add it to the book as a [[site]]")));
  return {};
}

std::optional<QDateTime> read_instant(Fields& fields, QStringView key, const Reading& reading) {
  const auto refuse = [&](const problem::Error& error) {
    fields.refuse(key, error.code, error.what, error.hint);
    return std::nullopt;
  };
  const std::optional<QString> text = fields.text(key);
  if (!text) return std::nullopt;
  const problem::Expected<reader::Written> written = reader::parse_written(*text);
  if (!written) return refuse(written.error());
  if (!written->seconds_of_day)
    return refuse({Code::Missing,
                   QStringLiteral("%1 has no time of day").arg(quoted(*text)),
                   {},
                   QStringLiteral("write it as 2026-02-28 14:30")});
  const problem::Expected<QDateTime> at = batch::instant(*written, reading.zone());
  return at ? std::optional(*at) : refuse(at.error());
}

std::optional<QDateTime> read_due(Fields& fields, const Reading& reading) {
  batch::require(fields, u"due", QStringLiteral("write when it leaves the kitchen, as 2026-02-28 14:30"));
  const std::optional<QDateTime> due = read_instant(fields, u"due", reading);
  if (!due) return std::nullopt;
  const QDateTime now = reading.settings.now;
  if (*due < now) {
    fields.refuse(u"due", Code::Range,
                  QStringLiteral("%1 is in the past: it is now %2")
                      .arg(quoted(*fields.text(u"due")), batch::instant_text(now, reading.zone())),
                  QStringLiteral("correct the day or the time, or leave the order out"));
    return std::nullopt;
  }
  if (*due <= now.addDays(kMostDaysAhead)) return due;
  fields.refuse(u"due", Code::Range, quoted(*fields.text(u"due")) + QStringLiteral(" is more than a year ahead"),
                QStringLiteral("correct the year"));
  return std::nullopt;
}

// Nobody orders a part of a piece.
void check_pieces(Fields& fields, Quantity quantity) {
  const std::int64_t piece = measure::one(measure::Unit::Piece).amount;
  if (quantity.dimension != Dimension::Count || quantity.amount % piece == 0) return;
  const QString written = quoted(*fields.text(u"quantity"));
  if (quantity.amount < piece)
    fields.refuse(u"quantity", Code::Range, written + QStringLiteral(" is less than one piece"),
                  QStringLiteral("write whole pieces, at least one"));
  else
    fields.refuse(u"quantity", Code::Range, written + QStringLiteral(" is not a whole number of pieces"),
                  QStringLiteral("write whole pieces"));
}

std::optional<Order> read_order(const reader::Value& row, const Reading& reading, problem::Errors& errors) {
  const size_t before = errors.size();
  Fields fields(row, QStringLiteral("the order"), errors);
  Order order;
  batch::require(fields, u"product", QStringLiteral("write the id of a product of the book"));
  order.product = read_product_id(fields, u"product", reading);
  if (const reader::Value* product = fields.value(u"product")) order.place = product->place;
  order.site = read_site(fields, reading);
  order.number = read_text(fields, u"order");
  if (const std::optional<Quantity> quantity = read_quantity_of(fields, order.product, reading)) {
    check_pieces(fields, *quantity);
    order.quantity = *quantity;
  }
  order.due = read_due(fields, reading).value_or(QDateTime());
  order.life = book::read_length(fields, u"life");
  fields.finish();
  if (errors.size() != before) return std::nullopt;
  return order;
}

}  // namespace

Orders read_orders(const reader::Rows& rows, const book::Book& book, const ReadSettings& settings) {
  Orders out;
  const Reading reading(book, settings);
  for (size_t i = 0; i < rows.count; ++i)
    if (std::optional<Order> order = read_order(rows.row(i), reading, out.errors))
      out.orders.push_back(std::move(*order));
  problem::sort(out.errors);
  return out;
}

}  // namespace lardiner::plan
