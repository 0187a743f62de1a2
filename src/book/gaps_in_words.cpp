// Names and sentences that a label asks for in a language in which the book does not have them.
#include <QSet>

#include "book/gaps.h"
#include "book/reach.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using problem::Errors;
using reader::quoted;

namespace {

// A text of the product and the key under which it is written.
struct Wanted {
  const LocalText& text;
  QString noun;
  QString key;
  const problem::Place& place;
};

QStringList languages_of(const Book& book, const ContainerSpec& container) {
  return container.languages.isEmpty() ? book.kitchen.languages.mid(0, 1) : container.languages;
}

std::vector<Wanted> wanted(const Product& product) {
  const QString noun = QStringLiteral("product ") + quoted(product.id);
  std::vector<Wanted> all{{product.name, noun, QStringLiteral("name"), product.place}};
  const std::pair<const LocalText&, QString> optional[] = {{product.unit_name, QStringLiteral("unit_name")},
                                                           {product.unit_plural, QStringLiteral("unit_plural")},
                                                           {product.used_for, QStringLiteral("used_for")},
                                                           {product.common_name, QStringLiteral("common_name")}};
  for (const auto& [text, key] : optional)
    if (!text.empty()) all.push_back({text, noun, key, product.place});
  for (const Finishing& finishing : product.finishing) {
    const QString of = QStringLiteral("the %1 finishing of %2").arg(finishing.equipment, noun);
    if (!finishing.cue.empty()) all.push_back({finishing.cue, of, QStringLiteral("cue"), finishing.place});
    if (!finishing.setting_text.empty())
      all.push_back({finishing.setting_text, of, QStringLiteral("setting_text"), finishing.place});
  }
  return all;
}

// The ingredient statement of a label for sale names everything through any depth.
std::vector<Wanted> wanted_for_sale(const Reach& reached) {
  std::vector<Wanted> all;
  for (const Ingredient* ingredient : reached.ingredients) {
    const QString noun = QStringLiteral("ingredient ") + quoted(ingredient->id);
    all.push_back({ingredient->name, noun, QStringLiteral("name"), ingredient->place});
    for (const SupplierItem& item : ingredient->supplier_items)
      if (!item.statement.empty())
        all.push_back({item.statement, QStringLiteral("supplier item %1 of %2").arg(quoted(item.id), noun),
                       QStringLiteral("statement"), item.place});
  }
  for (const Product* part : reached.products)
    all.push_back({part->name, QStringLiteral("product ") + quoted(part->id), QStringLiteral("name"), part->place});
  return all;
}

void add_missing(const std::vector<Wanted>& texts, const QString& language, const Product& product, Errors& gaps) {
  for (const Wanted& wanted : texts) {
    if (!wanted.text.in(language).isEmpty()) continue;
    gaps.push_back({Code::Missing,
                    QStringLiteral("%1 has no %2 in \"%3\", which a label of %4 asks for")
                        .arg(wanted.noun, wanted.key, language, quoted(product.id)),
                    wanted.place, QStringLiteral("add the language: %1 = { %2 = \"…\" }").arg(wanted.key, language)});
  }
}

}  // namespace

Errors gaps_in_words(const Book& book, const Product& product) {
  QSet<QString> own, for_sale;
  for (const ContainerSpec& container : product.containers)
    for (const QString& language : languages_of(book, container)) {
      own.insert(language);
      if (container.purpose == Purpose::Sale) for_sale.insert(language);
    }
  Errors gaps;
  for (const QString& language : own) add_missing(wanted(product), language, product, gaps);
  if (for_sale.isEmpty()) return gaps;
  const Reach reached = reach(book, product);
  for (const QString& language : for_sale) add_missing(wanted_for_sale(reached), language, product, gaps);
  return gaps;
}

}  // namespace lardiner::book
