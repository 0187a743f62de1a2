// What every fact of one label is computed from, and the phrases that several facts share.
#pragma once

#include <QString>
#include <vector>

#include "batch/batch.h"
#include "book/book.h"
#include "facts/label_facts.h"
#include "facts/wording.h"

namespace lardiner::facts {

/// One label run seen in one language. All parts outlive the scene; faults are collected in `errors`.
struct Scene : Wording {
  const book::Book& book;
  const batch::Batch& batch;
  problem::Errors& errors;
  bool first_language = true;
  const batch::UseBy* use_by = nullptr;  ///< nullptr: a HOLD label, or a pad's
  const book::ContainerSpec* container =
      nullptr;  ///< nullptr: a labelled ingredient, or a HOLD label of an unknown container
  const batch::ContainerGroup* group = nullptr;
  book::State state = book::State::Chilled;
  book::Purpose purpose = book::Purpose::Inside;
  bool reprint = false;      ///< the run's labels were printed before
  int container_number = 0;  ///< of any of the run's containers: their timelines are equal

  const book::Product* product() const { return book.product(batch.record.item); }
  const book::Ingredient* ingredient() const { return book.ingredient(batch.record.item); }

  /// The text in this label's language; a missing one is an error that names the table at `place` and the key to
  /// complete.
  QString text(const book::LocalText& text, const QString& what, const problem::Place& place) const;
};

/// A line to write a time on, and one for a day.
inline const QString kBlank = QStringLiteral("_______");
inline const QString kDayBlank = QStringLiteral("________________");

/// One paragraph in one weight; empty text gives no paragraph.
std::vector<Paragraph> plain(const QString& text);
std::vector<Paragraph> strong(const QString& text);

/// The facts by group; each adds what applies to `facts` and nothing else.
void add_name_facts(const Scene& scene, std::vector<Fact>& facts);
void add_date_facts(const Scene& scene, std::vector<Fact>& facts);
void add_contains_facts(const Scene& scene, std::vector<Fact>& facts);
void add_storage_facts(const Scene& scene, std::vector<Fact>& facts);
void add_finishing_facts(const Scene& scene, std::vector<Fact>& facts);
void add_sale_facts(const Scene& scene, std::vector<Fact>& facts);
void add_pad_facts(const Scene& scene, std::vector<Fact>& facts);
void add_identity_facts(const Scene& scene, std::vector<Fact>& facts);
void add_hold_facts(const Scene& scene, std::vector<Fact>& facts);

/// The list of the label's destination: the site's, else the kitchen's.
const book::AllergenList* destination_list(const Scene& scene);

}  // namespace lardiner::facts
