// The kinds of value that a row of an event writes, besides those of batch records.
#include "history/read_events_values.h"

#include <QRegularExpression>

#include "batch/clock.h"
#include "batch/phrases.h"
#include "reader/quote.h"

namespace lardiner::history {

using batch::did_you_mean;
using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

constexpr int kMostName = 60;
constexpr int kMostSentence = 200;

QString read_text(Fields& fields, QStringView key, int most) {
  const QString text = fields.text(key).value_or(QString());
  if (reader::printable(text) != text)
    fields.refuse(key, Code::Malformed, QStringLiteral("%1 has a control code in it").arg(quoted(text)),
                  QStringLiteral("write it once more, letter by letter"));
  else if (text.toUcs4().size() > most)
    fields.refuse(key, Code::Range, QStringLiteral("%1 is longer than %2 characters").arg(quoted(text)).arg(most),
                  QStringLiteral("write it shorter"));
  else
    return text;
  return {};
}

QStringList ingredient_ids(const book::Book& book) {
  QStringList ids;
  for (const book::Ingredient& ingredient : book.ingredients) ids += ingredient.id;
  return ids;
}

QStringList supplier_items_of(const QString& item, const book::Book& book) {
  QStringList ids;
  for (const book::Ingredient& ingredient : book.ingredients)
    if (item.isEmpty() || ingredient.id == item)
      for (const book::SupplierItem& one : ingredient.supplier_items) ids += one.id;
  return ids;
}

}  // namespace

QString read_name(Fields& fields, QStringView key) { return read_text(fields, key, kMostName); }

QString read_sentence(Fields& fields, QStringView key) { return read_text(fields, key, kMostSentence); }

QString read_item(Fields& fields, bool bought, const book::Book& book) {
  const QString id = fields.text(u"item").value_or(QString());
  const bool product = book.product(id) != nullptr;
  if (id.isEmpty() || book.ingredient(id) || (product && !bought)) return id;
  if (product)
    fields.refuse(u"item", Code::Conflict, QStringLiteral("%1 is made here, and not received").arg(quoted(id)),
                  QStringLiteral("record what was made, or what was returned"));
  else
    fields.refuse(u"item", Code::Unknown, QStringLiteral("%1 is not in the book").arg(quoted(id)),
                  did_you_mean(id, bought ? ingredient_ids(book) : book.item_ids(),
                               QStringLiteral("write the id of an ingredient or a product of the book")));
  return {};
}

QString read_supplier_item(Fields& fields, const QString& item, const book::Book& book) {
  const QString id = fields.text(u"supplier_item").value_or(QString());
  const QStringList known = supplier_items_of(item, book);
  if (id.isEmpty() || known.contains(id)) return id;
  fields.refuse(u"supplier_item", Code::Unknown,
                item.isEmpty() ? QStringLiteral("%1 is not a supplier item of the book").arg(quoted(id))
                               : QStringLiteral("%1 is not a supplier item of %2").arg(quoted(id), quoted(item)),
                did_you_mean(id, known,
                             known.isEmpty() ? QStringLiteral("leave it out")
                                             : QStringLiteral("write one of ") + known.join(QStringLiteral(", "))));
  return {};
}

QString read_place(Fields& fields, const book::Book& book) {
  const QString name = read_name(fields, u"place");
  if (name.isEmpty() || book.places.empty() || book.storage_place(name)) return name;
  QStringList known;
  for (const book::StoragePlace& place : book.places) known += place.name;
  fields.refuse(u"place", Code::Unknown, QStringLiteral("%1 is not a place of the book").arg(quoted(name)),
                did_you_mean(name, known,
                             QStringLiteral("write one of %1, or add it to the book as a [[place]]")
                                 .arg(known.join(QStringLiteral(", ")))));
  return {};
}

QString read_site(Fields& fields, const book::Book& book) {
  const QString id = fields.text(u"site").value_or(QString());
  if (id.isEmpty() || book.site(id)) return id;
  QStringList known;
  for (const book::Site& site : book.sites) known += site.id;
  fields.refuse(u"site", Code::Unknown, QStringLiteral("%1 is not a site of the book").arg(quoted(id)),
                did_you_mean(id, known, QStringLiteral("add it to the book as a [[site]]")));
  return {};
}

std::optional<int> read_left(Fields& fields) {
  const std::optional<QString> text = fields.text(u"left");
  if (!text) return std::nullopt;
  static const QStringList words{QStringLiteral("full"), QStringLiteral("half"), QStringLiteral("quarter"),
                                 QStringLiteral("none")};
  static const int percents[] = {100, 50, 25, 0};
  if (const qsizetype at = words.indexOf(*text); at >= 0) return percents[at];
  static const QRegularExpression percent(QStringLiteral(R"(\A([0-9]{1,3}) ?%\z)"));
  const QRegularExpressionMatch match = percent.match(*text);
  if (match.hasMatch() && match.capturedView(1).toInt() <= 100) return match.capturedView(1).toInt();
  fields.refuse(u"left", Code::Malformed, QStringLiteral("%1 does not say how much is left").arg(quoted(*text)),
                QStringLiteral("write full, half, quarter, none, or a percentage, as 75 %"));
  return std::nullopt;
}

EntryId read_entry(Fields& fields) {
  const std::optional<QString> text = fields.text(u"of");
  if (!text) return {};
  if (const std::optional<EntryId> id = entry_id(*text)) return *id;
  fields.refuse(u"of", Code::Malformed, QStringLiteral("%1 is not the number of an entry").arg(quoted(*text)),
                QStringLiteral("write it as its history shows it: A-123"));
  return {};
}

std::optional<QDate> read_day(Fields& fields, const batch::Reading& reading) {
  const std::optional<QDate> day = fields.date(u"day");
  const QDate today = batch::local_day(reading.settings.now, reading.zone());
  if (!day || *day <= today) return day;
  fields.refuse(u"day", Code::Range,
                QStringLiteral("%1 is in the future: it is now %2")
                    .arg(quoted(*fields.text(u"day")), batch::instant_text(reading.settings.now, reading.zone())),
                QStringLiteral("write a day that is over, or today"));
  return std::nullopt;
}

QStringList read_adds(Fields& fields, const book::Book& book) {
  QStringList texts;
  for (const QString& cell : fields.texts(u"adds"))
    for (const QString& text : cell.split(u',')) texts += text.trimmed();
  for (const QString& text : texts) {
    const problem::Expected<book::Declaration> read = book::parse_declaration(text, book.law);
    if (read) continue;
    fields.refuse(u"adds", read.error().code, read.error().what, read.error().hint);
    return {};
  }
  texts.removeDuplicates();
  return texts;
}

}  // namespace lardiner::history
