// Ids, codes, item numbers and initials that are said twice.
#include "book/checks.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using problem::Place;

namespace {

class Once {
 public:
  Once(const Checking& checking, QString kind, QString remedy)
      : checking_(checking), kind_(std::move(kind)), remedy_(std::move(remedy)) {}

  void take(const QString& word, const Place& place) {
    if (word.isEmpty()) return;
    const auto first = seen_.constFind(word);
    if (first == seen_.constEnd()) {
      seen_.insert(word, place);
      return;
    }
    checking_.error(Code::Duplicate,
                    QStringLiteral("the %1 %2 is there twice, first in %3:%4")
                        .arg(kind_, reader::quoted(word), first->file)
                        .arg(first->line),
                    place, remedy_);
  }

 private:
  const Checking& checking_;
  QString kind_;
  QString remedy_;
  QHash<QString, Place> seen_;
};

}  // namespace

void check_ids(const Checking& checking) {
  const QString rename = QStringLiteral("give each its own");
  Once ids(checking, QStringLiteral("id"),
           QStringLiteral("give one of the two another id; ingredients and products share them"));
  Once codes(checking, QStringLiteral("code"), rename);
  Once numbers(checking, QStringLiteral("item_number"), rename);
  Once supplier_items(checking, QStringLiteral("supplier item"), rename);
  for (const Ingredient& one : checking.book.ingredients) {
    ids.take(one.id, one.place);
    codes.take(one.code, one.place);
    numbers.take(one.item_number, one.place);
    for (const SupplierItem& item : one.supplier_items) supplier_items.take(item.id, item.place);
  }
  for (const Product& one : checking.book.products) {
    ids.take(one.id, one.place);
    codes.take(one.code, one.place);
    numbers.take(one.item_number, one.place);
  }
  Once media(checking, QStringLiteral("medium"), rename);
  for (const Media& one : checking.book.media) media.take(one.id, one.place);
  Once vessels(checking, QStringLiteral("vessel"), rename);
  for (const Vessel& one : checking.book.vessels) vessels.take(one.id, one.place);
  Once sites(checking, QStringLiteral("site"), rename);
  for (const Site& one : checking.book.sites) sites.take(one.id, one.place);
  Once people(checking, QStringLiteral("person"), rename);
  for (const Person& one : checking.book.people) people.take(one.initials, one.place);
  Once places(checking, QStringLiteral("place"), rename);
  for (const StoragePlace& one : checking.book.places) places.take(one.name, one.place);
}

}  // namespace lardiner::book
