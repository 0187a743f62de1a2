// Finding the things of a book by their ids.
#include "book/book.h"

#include <algorithm>

namespace lardiner::book {

namespace {

template <class T>
const T* with_id(const std::vector<T>& all, const QString& id) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const T& one) { return one.id == id; });
  return found == all.end() ? nullptr : &*found;
}

template <class T>
const T* indexed(const std::vector<T>& all, const QHash<QString, int>& index, const QString& id) {
  const auto found = index.constFind(id);
  return found == index.constEnd() ? nullptr : &all[static_cast<size_t>(*found)];
}

}  // namespace

const Ingredient* Book::ingredient(const QString& id) const { return indexed(ingredients, ingredient_index, id); }
const Product* Book::product(const QString& id) const { return indexed(products, product_index, id); }
const Media* Book::medium(const QString& id) const { return with_id(media, id); }
const Site* Book::site(const QString& id) const { return with_id(sites, id); }
const Vessel* Book::vessel(const QString& id) const { return with_id(vessels, id); }

const StoragePlace* Book::storage_place(const QString& name) const {
  const auto found =
      std::find_if(places.begin(), places.end(), [&](const StoragePlace& one) { return one.name == name; });
  return found == places.end() ? nullptr : &*found;
}

QString Book::name_of(const QString& item, const QString& language) const {
  if (const Product* known = product(item)) return known->name.in(language);
  const Ingredient* known = ingredient(item);
  return known ? known->name.in(language) : QString();
}

QStringList Book::item_ids() const {
  QStringList ids;
  for (const Ingredient& one : ingredients) ids += one.id;
  for (const Product& one : products) ids += one.id;
  return ids;
}

const SupplierItem* Ingredient::supplier_item(const QString& supplier_item_id) const {
  return with_id(supplier_items, supplier_item_id);
}

measure::Dimension Product::made_as() const {
  if (makes) return makes->dimension;
  return kind == ProductKind::AssembledItem ? measure::Dimension::Count : measure::Dimension::Mass;
}

const ShelfLife* Product::shelf_life(State state) const {
  const auto found =
      std::find_if(shelf_lives.begin(), shelf_lives.end(), [&](const ShelfLife& life) { return life.state == state; });
  return found == shelf_lives.end() ? nullptr : &*found;
}

const ContainerSpec* Product::container(const QString& container_kind, measure::Quantity holds) const {
  const ContainerSpec* same_kind = nullptr;
  for (const ContainerSpec& spec : containers) {
    if (spec.kind != container_kind) continue;
    if (spec.holds == holds) return &spec;
    if (!same_kind) same_kind = &spec;
  }
  return same_kind;
}

bool Product::reduced_oxygen(const QString& container_kind, measure::Quantity holds) const {
  const ContainerSpec* spec = container(container_kind, holds);
  if (spec && spec->holds == holds) return spec->package == Package::ReducedOxygen;
  return std::any_of(containers.begin(), containers.end(), [&](const ContainerSpec& other) {
    return other.kind == container_kind && other.package == Package::ReducedOxygen;
  });
}

}  // namespace lardiner::book
