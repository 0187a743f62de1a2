// The traceability spreadsheet: the critical tracking events as flat rows, and these as CSV. Columns: EXPORTS.md.
#include "ledger/export_rows.h"

namespace lardiner::ledger {

using measure::Dimension;
using measure::Unit;
using What = Tracked::What;

namespace {

constexpr qint64 kMillion = 1'000'000;

QString symbol(Unit unit) {
  if (unit == Unit::Kilogram) return QStringLiteral("kg");
  if (unit == Unit::Pound) return QStringLiteral("lb");
  return unit == Unit::Litre ? QStringLiteral("L") : QStringLiteral("pieces");
}

Unit unit_of(Dimension dimension, measure::System units) {
  if (dimension == Dimension::Volume) return Unit::Litre;
  if (dimension == Dimension::Count) return Unit::Piece;
  return units == measure::System::Customary ? Unit::Pound : Unit::Kilogram;
}

void add_amount(Row& row, const std::optional<measure::Quantity>& quantity, measure::System units) {
  if (!quantity) return row.insert(row.end(), {QString(), QString()}), void();
  const Measured amount = measured(*quantity, units);
  row.insert(row.end(), {amount.count, symbol(amount.unit)});
}

QString sure_word(TrackedInput::Sure sure) {
  if (sure == TrackedInput::Sure::Recorded) return QStringLiteral("recorded");
  return sure == TrackedInput::Sure::OneOfThese ? QStringLiteral("one of these") : QStringLiteral("not written");
}

void add_input(Row& row, const TrackedInput* input, measure::System units) {
  if (!input) return row.resize(row.size() + 6), void();
  row.insert(row.end(), {input->lot.code, input->lot.item, input->lot.name});
  add_amount(row, input->quantity, units);
  row.push_back(sure_word(input->sure));
}

// Which paper the entry refers to. Of a making it is the entry itself.
QString document_type(const Tracked& one) {
  if (one.what == What::Transformation) return QStringLiteral("ledger entry");
  if (one.document.isEmpty()) return one.order.isEmpty() ? QString() : QStringLiteral("order");
  const bool in = one.what == What::Receiving || one.what == What::ReceivingRefused;
  return in ? QStringLiteral("delivery note") : QStringLiteral("dispatch note");
}

QString document_number(const Tracked& one) {
  if (one.what == What::Transformation) return one.entry.text();
  return one.document.isEmpty() ? one.order : one.document;
}

QString site_name(const ExportKitchen& kitchen, const QString& id) { return kitchen.sites.value(id, id); }

// From whom, to whom, and where it was done.
struct Places {
  QString location, from, to;
};

Places places(const Tracked& one, const ExportKitchen& kitchen) {
  const QString here = kitchen.address.isEmpty() ? kitchen.name : kitchen.name + QStringLiteral(", ") + kitchen.address;
  const QString site = site_name(kitchen, one.site);
  switch (one.what) {
    case What::Receiving:
    case What::ReceivingRefused:
      return {here, one.from, here};
    case What::Shipping:
      return {here, here, site};
    case What::Arrival:
    case What::ArrivalRefused:
      return {site, here, site};
    case What::Return:
      return {here, site, here};
    case What::Discard:
      return {one.site.isEmpty() ? here : site, {}, {}};
    case What::Transformation:
    case What::Correction:
      return {here, {}, {}};
  }
  return {};
}

Row row_of(const Tracked& one, const TrackedInput* input, const ExportKitchen& kitchen) {
  const Places where = places(one, kitchen);
  Row row{word(one.what), one.at.date(), one.at.time(), QStringLiteral("UTC") + offset_text(one.at),
          one.lot.code,   one.lot.item,  one.lot.name};
  add_amount(row, one.quantity, kitchen.units);
  add_input(row, input, kitchen.units);
  row.insert(row.end(), {where.location, where.from, where.to, document_type(one), document_number(one), one.order,
                         one.why, one.by, one.entry.text()});
  return row;
}

QString plain(Millionths value) {
  const qint64 whole = value.amount / kMillion, rest = value.amount % kMillion;
  QString text = QString::number(whole);
  if (rest == 0) return text;
  text += u'.' + QString::number(rest).rightJustified(6, u'0');
  while (text.endsWith(u'0')) text.chop(1);
  return text;
}

struct CellText {
  QString operator()(const QString& text) const {
    static const QString kBegins = QStringLiteral("=+-@\t\r");
    return !text.isEmpty() && kBegins.contains(text.front()) ? u'\'' + text : text;
  }
  QString operator()(Millionths value) const { return plain(value); }
  QString operator()(QDate date) const { return date.toString(Qt::ISODate); }
  QString operator()(QTime time) const { return time.toString(QStringLiteral("HH:mm:ss")); }
};

// RFC 4180, section 2, rules 5 to 7.
QString quoted(QString text) {
  const bool plain_text =
      !text.contains(u',') && !text.contains(u'"') && !text.contains(u'\n') && !text.contains(u'\r');
  return plain_text ? text : u'"' + text.replace(u'"', QLatin1String("\"\"")) + u'"';
}

}  // namespace

QStringList export_columns() {
  return QStringLiteral(
             "event date time utc_offset traceability_lot_code item product_description quantity unit input_lot_code "
             "input_item input_description input_quantity input_unit input_certainty location from to "
             "reference_document_type reference_document_number order note by entry")
      .split(u' ');
}

QString offset_text(const QDateTime& at) {
  const int minutes = at.offsetFromUtc() / 60;
  return QStringLiteral("%1%2:%3")
      .arg(minutes < 0 ? QLatin1Char('-') : QLatin1Char('+'))
      .arg(std::abs(minutes) / 60, 2, 10, QLatin1Char('0'))
      .arg(std::abs(minutes) % 60, 2, 10, QLatin1Char('0'));
}

Measured measured(measure::Quantity quantity, measure::System units) {
  const Unit unit = unit_of(quantity.dimension, units);
  const measure::Ratio exact = measure::in_unit(quantity, unit) * measure::Ratio(kMillion, 1);
  const qint64 rest = exact.num() % exact.den();
  return {{exact.num() / exact.den() + (rest >= exact.den() - rest ? 1 : 0)}, unit};
}

problem::Expected<qint64> each_export_row(Ledger& ledger, const ExportScope& scope, const ExportKitchen& kitchen,
                                          const std::function<bool(const Row&)>& take) {
  qint64 rows = 0;
  const auto put = [&](const Tracked& one, const TrackedInput* input) {
    ++rows;
    return take(row_of(one, input, kitchen));
  };
  const auto told = each_tracked(ledger, scope, kitchen, [&](const Tracked& one) {
    if (one.inputs.empty()) return put(one, nullptr);
    for (const TrackedInput& input : one.inputs)
      if (!put(one, &input)) return false;
    return true;
  });
  if (!told) return tl::unexpected(told.error());
  return rows;
}

QByteArray csv_line(const Row& row) {
  QStringList cells;
  for (const Cell& cell : row) cells += quoted(std::visit(CellText(), cell));
  return (cells.join(u',') + QStringLiteral("\r\n")).toUtf8();
}

problem::Expected<qint64> write_csv(Ledger& ledger, const ExportScope& scope, const ExportKitchen& kitchen,
                                    const Sink& sink) {
  if (!sink((export_columns().join(u',') + QStringLiteral("\r\n")).toUtf8())) return 0;
  return each_export_row(ledger, scope, kitchen, [&](const Row& row) { return sink(csv_line(row)); });
}

}  // namespace lardiner::ledger
