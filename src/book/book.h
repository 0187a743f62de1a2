// The whole kitchen book, read and checked as one.
#pragma once

#include <QByteArray>
#include <QHash>
#include <QString>
#include <vector>

#include "book/allergen.h"
#include "book/item.h"
#include "book/kitchen.h"
#include "book/rule_set.h"

namespace lardiner::book {

/// A file as the command layer found it.
struct SourceFile {
  QString name;  ///< as shown in errors
  QByteArray bytes;
};

struct Book {
  Kitchen kitchen;
  RuleSet rules;  ///< adopted and amended
  AllergenLaw law;
  std::vector<Site> sites;
  std::vector<Person> people;
  std::vector<StoragePlace> places;
  std::vector<Media> media;
  std::vector<Vessel> vessels;
  std::vector<Ingredient> ingredients;
  std::vector<Product> products;
  QByteArray
      hash;  ///< SHA-256 over the files' names (without folders) and bytes in name order, then those of the rules

  const Ingredient* ingredient(const QString& id) const;
  const Product* product(const QString& id) const;
  const Media* medium(const QString& id) const;
  const Site* site(const QString& id) const;
  const Vessel* vessel(const QString& id) const;
  const StoragePlace* storage_place(const QString& name) const;
  QStringList item_ids() const;
  /// Of an ingredient or a product; empty: there is none, or it has no name in `language`.
  QString name_of(const QString& item, const QString& language) const;

  QHash<QString, int> ingredient_index, product_index;  ///< id -> position; filled by read_book
};

/// What labels and sheets cannot do without but the book does not say: kept apart so that a book with gaps still
/// serves everything that the gap does not touch.
struct Findings {
  problem::Errors errors;  ///< the book is wrong: nothing is printed from it
  problem::Errors gaps;    ///< an item is incomplete: no dated label of it or of what contains it
};

struct Reading {
  Book book;
  Findings findings;
};

/// Reads every *.toml of the book (kitchen.toml names the kitchen; the other files hold [[ingredient]], [[product]],
/// [[media]], [[vessel]], [[site]], [[person]], [[place]] tables in any grouping) and checks the whole: unknown ids
/// (nearest match), duplicate ids, codes and item numbers, cycles (naming the loop), amounts, temperatures below the
/// adopted minimum, shelf lives longer than the authority they cite, restricted ingredients, and what is missing.
/// `rules` are all of templates/rules. One syntax fault a file; every fault of meaning.
Reading read_book(const std::vector<SourceFile>& files, const std::vector<SourceFile>& rules);

}  // namespace lardiner::book
