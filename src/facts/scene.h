// What every fact of one label is computed from, and the phrases that several facts share.
#pragma once

#include <QString>
#include <vector>

#include "batch/batch.h"
#include "book/book.h"
#include "facts/label_facts.h"
#include "measure/text.h"
#include "words/words.h"

namespace lardiner::facts {

/// One label run seen in one language. All parts outlive the scene; faults are collected in `errors`.
struct Scene {
  const book::Book& book;
  const batch::Batch& batch;
  const words::Language& words;
  problem::Errors& errors;
  const batch::UseBy* use_by = nullptr;  ///< nullptr: a HOLD label, or a pad's
  const book::ContainerSpec* container =
      nullptr;  ///< nullptr: a labelled ingredient, or a HOLD label of an unknown container
  const batch::ContainerGroup* group = nullptr;
  book::State state = book::State::Chilled;
  book::Purpose purpose = book::Purpose::Inside;
  int container_number = 0;  ///< of any of the run's containers: their timelines are equal

  const book::Product* product() const { return book.product(batch.record.item); }
  const book::Ingredient* ingredient() const { return book.ingredient(batch.record.item); }

  QString word(const char* key) const { return words.word(QString::fromLatin1(key)); }
  QString sentence(const char* key, const QStringList& values) const {
    return words.sentence(QString::fromLatin1(key), values);
  }
  /// The text in this label's language; a missing one is an error that names the table at `place` and the key to
  /// complete.
  QString text(const book::LocalText& text, const QString& what, const problem::Place& place) const;
};

/// "5 °C (41 °F)" in the order of the kitchen's units, with no-break spaces.
QString both_scales(const Scene& scene, const measure::TemperatureLimit& limit);

/// How the label's language writes amounts; a figure and its unit stay on one line.
measure::Notation notation(const Scene& scene);

/// "500 g (1 lb 1.6 oz)" in the order of the kitchen's units; pieces as "24 pieces".
QString both_systems(const Scene& scene, measure::Quantity quantity);
QString pieces(const Scene& scene, measure::Quantity count);

/// "16 to 18 min", "30 s", "1 h 30 min".
QString lasting(const Scene& scene, int seconds);
QString lasting(const Scene& scene, int least_seconds, int most_seconds);

/// A line to write a time on, and one for a day.
inline const QString kBlank = QStringLiteral("_______");
inline const QString kDayBlank = QStringLiteral("________________");

/// The text with no-break spaces: it stays on one line.
QString unbroken(QString text);

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
