// What a scanned or typed text is: a label of ours, a lot, a supplier's code, or nothing that is known here.
#include "command/scanned.h"

#include "gs1/check_digit.h"
#include "gs1/digital_link.h"
#include "gs1/iso7064.h"
#include "ledger/nearest.h"

namespace lardiner::command {

namespace {

// The attributes that tell a label's date (design: Identity).
constexpr const char* kDates[] = {"17", "7003", "7006", "15"};

QString end_of(const gs1::Link& link) {
  for (const char* ai : kDates)
    if (const QString value = gs1::attribute(link, QString::fromLatin1(ai)); !value.isEmpty())
      return QLatin1String(ai) + QLatin1Char('=') + value;
  return {};
}

// "A2632901-3": the container is behind the last hyphen.
std::optional<int> container_of(const QString& serial) {
  bool whole = false;
  const int number = serial.section(u'-', -1).toInt(&whole);
  return whole && serial.contains(u'-') && number > 0 ? std::optional(number) : std::nullopt;
}

// Notes the lot of a code, of `item` where that is named: the only one, or of which items it may be.
void open_lot(LedgerRun& run, const QString& code, const QString& item, Scanned& out) {
  if (code.isEmpty()) return;
  const auto lot = lot_named(run.ledger, code, item);
  if (lot)
    out.lot = *lot;
  else if (lot.error().code == problem::Code::Conflict)
    out.several = lot.error();
}

// The item of a label of ours, where it was made here under this item number.
QString item_of(LedgerRun& run, const gs1::Link& link) {
  for (const ledger::LotName& name : run.ledger.lots().named(link.lot)) {
    const history::Lot* lot = run.ledger.lots().lot(name.id);
    if (lot && lot->made && lot->made->batch.gtin == link.gtin) return name.item;
  }
  return {};
}

QString not_recorded(LedgerRun& run, const QString& code) {
  const QStringList near = ledger::nearest_codes(run.ledger.store(), code);
  const bool ours = gs1::check_characters_hold(gs1::CheckSystem::Mod37_36, code);
  QString what = ours ? QStringLiteral("lot %1 is not recorded").arg(code)
                      : QStringLiteral("%1 is no lot of ours: its check character does not hold").arg(code);
  if (!near.isEmpty()) what += QStringLiteral("; near it: %1").arg(near.join(QStringLiteral(", ")));
  return what;
}

Scanned of_foreign_link(LedgerRun& run, const QString& text, const gs1::Link& link, const QString& item) {
  Scanned out{text, QStringLiteral("a GS1 Digital Link of %1: item number %2").arg(link.address, link.gtin)};
  if (!link.lot.isEmpty()) out.what += QStringLiteral(", lot ") + link.lot;
  open_lot(run, link.lot, item, out);
  return out;
}

Scanned of_label(LedgerRun& run, const QString& text, const gs1::Link& link, const QString& item) {
  Scanned out{text, {}};
  const QString made = item_of(run, link);
  open_lot(run, link.lot, made.isEmpty() ? item : made, out);
  out.container = container_of(link.serial);
  out.label_end = end_of(link);
  out.unknown = !out.lot && !out.several;
  out.what = out.unknown ? not_recorded(run, link.lot) : QStringLiteral("a label of lot %1").arg(link.lot);
  if (out.lot && out.container) out.what += QStringLiteral(", container %1").arg(*out.container);
  return out;
}

QString written_out(const QString& typed) { return typed.toUpper().remove(u' '); }

// A lot typed by hand is found in capitals or not, and with blanks in it.
void open_typed(LedgerRun& run, const QString& typed, const QString& item, Scanned& out) {
  open_lot(run, typed, item, out);
  if (!out.lot && !out.several) open_lot(run, written_out(typed), item, out);
}

bool is_item_number(const QString& text) {
  const bool length = text.size() == 8 || (text.size() >= 12 && text.size() <= 14);
  for (const QChar digit : text)
    if (digit < u'0' || digit > u'9') return false;
  return length && gs1::check_digit_holds(text);
}

}  // namespace

QString label_end(const QString& uri) {
  const auto link = gs1::parse_digital_link(uri);
  return link ? end_of(*link) : QString();
}

Scanned scanned(LedgerRun& run, const QString& text, const QString& item) {
  const QString trimmed = text.trimmed();
  if (const auto link = gs1::parse_digital_link(trimmed))
    return link->address == run.book.kitchen.code_address ? of_label(run, trimmed, *link, item)
                                                          : of_foreign_link(run, trimmed, *link, item);
  Scanned out{trimmed, {}};
  open_typed(run, trimmed, item, out);
  if (out.lot) {
    out.what = QStringLiteral("lot %1").arg(out.lot->code);
  } else if (out.several) {
    out.what = out.several->what;
  } else if (is_item_number(trimmed)) {
    out.what = QStringLiteral("an item number (GTIN) %1: not a label of this kitchen").arg(trimmed);
  } else if (trimmed.contains(QLatin1String("://"))) {
    out.what = QStringLiteral("an address that is no label of this kitchen: %1").arg(trimmed);
  } else {
    out.unknown = true;
    out.what = not_recorded(run, written_out(trimmed));
  }
  return out;
}

}  // namespace lardiner::command
