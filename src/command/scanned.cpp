// What a scanned or typed text is: a label of ours, a lot, a supplier's code, or nothing that is known here.
#include "command/scanned.h"

#include <QUrl>

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

// Scheme and host are written in any case (RFC 3986 3.1, 3.2.2), and a scanner may shout; either scheme leads here.
bool is_ours(const QString& address, const book::Kitchen& kitchen) {
  const QUrl one(address), own(kitchen.code_address);
  return one.host().compare(own.host(), Qt::CaseInsensitive) == 0 && one.port() == own.port() &&
         one.path() == own.path();
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

QString not_recorded(LedgerRun& run, const QString& code) {
  const QStringList near = ledger::nearest_codes(run.ledger.store(), code);
  const bool ours = gs1::check_characters_hold(gs1::CheckSystem::Mod37_36, code);
  QString what = ours ? QStringLiteral("lot %1 is not recorded").arg(code)
                      : QStringLiteral("%1 is no lot of ours: its check character does not hold").arg(code);
  if (!near.isEmpty()) what += QStringLiteral("; near it: %1").arg(near.join(QStringLiteral(", ")));
  return what;
}

// Anybody may print a code with a lot of ours in it: it opens suppliers' lots alone.
Scanned of_foreign_link(LedgerRun& run, const QString& text, const gs1::Link& link, const QString& item) {
  Scanned out{text, QStringLiteral("a GS1 Digital Link of %1: item number %2").arg(link.address, link.gtin)};
  if (link.lot.isEmpty()) return out;
  out.what += QStringLiteral(", lot ") + link.lot;
  open_lot(run, link.lot, item, out);
  if (!out.lot || out.lot->kind != ledger::LotKind::Made) return out;
  out.lot.reset();
  out.what += QStringLiteral("; it is not the label of our lot of that name");
  return out;
}

// What is known of a label of ours.
struct Ours {
  const history::Lot* lot = nullptr;     // that was made here under its item number; nullptr: none
  std::optional<ledger::LotName> other;  // one of its name that was made under another
};

Ours labelled(LedgerRun& run, const gs1::Link& link) {
  Ours ours;
  for (const ledger::LotName& name : run.ledger.lots().named(link.lot)) {
    const history::Lot* lot = run.ledger.lots().lot(name.id);
    if (!lot || !lot->made) continue;
    if (lot->made->batch.gtin == link.gtin) return {lot, {}};
    ours.other = name;
  }
  return ours;
}

// The container of a serial; nothing where the lot has none with it.
std::optional<int> container_of(const history::Lot& lot, const QString& serial) {
  for (const history::Holder& holder : lot.holders)
    if (holder.serial == serial) return holder.number;
  return std::nullopt;
}

Scanned no_label(const QString& text, const QString& why) {
  Scanned out{text, QStringLiteral("no label of this kitchen: ") + why};
  out.unknown = true;
  return out;
}

Scanned of_label(LedgerRun& run, const QString& text, const gs1::Link& link, const QString& item) {
  if (link.lot.isEmpty()) return no_label(text, QStringLiteral("item number %1 without a lot").arg(link.gtin));
  const Ours ours = labelled(run, link);
  if (ours.other)
    return no_label(text, QStringLiteral("item number %1 is not that of lot %2").arg(link.gtin, link.lot));
  Scanned out{text, {}};
  open_lot(run, link.lot, ours.lot ? ours.lot->item : item, out);
  if (ours.lot && !link.serial.isEmpty()) {
    out.container = container_of(*ours.lot, link.serial);
    if (!out.container)
      return no_label(text, QStringLiteral("lot %1 has no container with the serial %2").arg(link.lot, link.serial));
  }
  out.label_end = end_of(link);
  out.unknown = !out.lot && !out.several;
  out.what = out.unknown ? not_recorded(run, link.lot) : QStringLiteral("a label of lot %1").arg(link.lot);
  if (out.lot && out.container) out.what += QStringLiteral(", container %1").arg(*out.container);
  return out;
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
    return is_ours(link->address, run.book.kitchen) ? of_label(run, trimmed, *link, item)
                                                    : of_foreign_link(run, trimmed, *link, item);
  Scanned out{trimmed, {}};
  open_lot(run, trimmed, item, out);
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
    out.what = trimmed.isEmpty() ? QStringLiteral("no text was read") : not_recorded(run, as_printed(trimmed));
  }
  return out;
}

}  // namespace lardiner::command
