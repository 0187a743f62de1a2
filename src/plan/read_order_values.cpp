// What the readers of orders and of lots on hand have in common: items of the book, and amounts that it can convert.
#include "plan/read_order_values.h"

#include <algorithm>

#include "plan/amounts_of.h"
#include "reader/quote.h"

namespace lardiner::plan {

using measure::Dimension;
using measure::Quantity;
using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

QString by_what(Dimension dimension) {
  switch (dimension) {
    case Dimension::Mass:
      return QStringLiteral("by weight");
    case Dimension::Volume:
      return QStringLiteral("by volume");
    case Dimension::Count:
      return QStringLiteral("in pieces");
  }
  return {};
}

QString example(Dimension dimension) {
  switch (dimension) {
    case Dimension::Mass:
      return QStringLiteral("write a weight, as 12 kg");
    case Dimension::Volume:
      return QStringLiteral("write a volume, as 4 L");
    case Dimension::Count:
      return QStringLiteral("write pieces, as 96 pieces");
  }
  return {};
}

using Letters = decltype(QString().toUcs4());

constexpr qsizetype kMostText = 60;
// GS1 General Specifications, from memory: AI (10), a lot, has at most 20 characters, AI (400), an order, 30.
constexpr qsizetype kMostWord = 30;

QString code_point(char32_t letter) {
  return QStringLiteral("U+") + QStringLiteral("%1").arg(static_cast<uint>(letter), 4, 16, QLatin1Char('0')).toUpper();
}

// Lines break at spaces, hyphens, and between ideographs.
qsizetype longest_word(const Letters& letters) {
  qsizetype longest = 0, word = 0;
  for (const char32_t letter : letters) {
    const bool breaks = letter == U'-' || QChar::isSpace(letter) || QChar::script(letter) == QChar::Script_Han;
    word = breaks ? 0 : word + 1;
    longest = std::max(longest, word);
  }
  return longest;
}

// Controls, breaks of lines, and what turns the direction of writing (Unicode Standard Annex 9, section 2).
bool is_control(char32_t letter) {
  const QChar::Category category = QChar::category(letter);
  return category == QChar::Other_Control || category == QChar::Separator_Line ||
         category == QChar::Separator_Paragraph || letter == 0x061C || letter == 0x200E || letter == 0x200F ||
         (letter >= 0x202A && letter <= 0x202E) || (letter >= 0x2066 && letter <= 0x2069);
}

bool converts(const book::Book& book, const QString& item, Quantity quantity) {
  book::Weighing weighing(book);
  if (const book::Product* product = book.product(item)) return amount_of(weighing, *product, quantity).has_value();
  const book::Ingredient* ingredient = book.ingredient(item);
  return !ingredient || weight_of(weighing, *ingredient, quantity).has_value();
}

void refuse_dimension(Fields& fields, const QString& item, const book::Book& book) {
  const book::Product* product = book.product(item);
  const QString written = quoted(*fields.text(u"quantity"));
  if (product) {
    const Dimension made = product->made_as();
    fields.refuse(u"quantity", Code::Conflict,
                  QStringLiteral("%1: %2 is made %3, and the book does not convert one to the other")
                      .arg(written, quoted(item), by_what(made)),
                  example(made));
    return;
  }
  fields.refuse(u"quantity", Code::Conflict,
                QStringLiteral("%1: nothing in the book says what that of %2 weighs").arg(written, quoted(item)),
                example(Dimension::Mass));
}

}  // namespace

QString read_text(Fields& fields, QStringView key) {
  const QString text = fields.text(key).value_or(QString());
  const Letters letters = text.toUcs4();
  const auto control = std::find_if(letters.begin(), letters.end(), is_control);
  if (control != letters.end())
    fields.refuse(key, Code::Malformed,
                  QStringLiteral("%1 has %2 as character %3, which is a control code and prints nothing")
                      .arg(quoted(text), code_point(*control))
                      .arg(control - letters.begin() + 1),
                  QStringLiteral("delete it"));
  else if (letters.size() > kMostText)
    fields.refuse(key, Code::Range, QStringLiteral("%1 is longer than %2 characters").arg(quoted(text)).arg(kMostText),
                  QStringLiteral("write it shorter"));
  else if (longest_word(letters) > kMostWord)
    fields.refuse(key, Code::Range,
                  QStringLiteral("%1 has a word of more than %2 characters").arg(quoted(text)).arg(kMostWord),
                  QStringLiteral("shorten it, or divide it by a space or a hyphen"));
  else
    return text;
  return {};
}

QString read_product_id(Fields& fields, QStringView key, const Reading& reading) {
  const QString id = fields.text(key).value_or(QString());
  if (id.isEmpty() || reading.book.product(id)) return id;
  QStringList known;
  for (const book::Product& product : reading.book.products) known += product.id;
  fields.refuse(key, Code::Unknown, QStringLiteral("%1 is not a product of the book").arg(quoted(id)),
                reading.book.ingredient(id)
                    ? QStringLiteral("it is an ingredient, which is bought and not made")
                    : batch::did_you_mean(id, known, QStringLiteral("write the id of a product of the book")));
  return {};
}

std::optional<Quantity> read_quantity_of(Fields& fields, const QString& item, const Reading& reading) {
  const std::optional<Quantity> quantity = batch::read_required_amount(fields, u"quantity", reading.of_records());
  if (!quantity || item.isEmpty() || converts(reading.book, item, *quantity)) return quantity;
  refuse_dimension(fields, item, reading.book);
  return std::nullopt;
}

}  // namespace lardiner::plan
