// What every work sheet is computed from besides its own figures.
#pragma once

#include <QDate>
#include <QString>
#include <vector>

#include "book/book.h"
#include "plan/filling.h"
#include "words/words.h"

namespace lardiner::facts {

struct SheetSetting {
  const book::Book& book;
  std::vector<const words::Language*> languages;  ///< one or two; what guards safety is said in both
};

/// The languages that the kitchen's sheets are in (`sheet_languages`, else its first). Errors: those of label_language.
problem::ExpectedAll<std::vector<const words::Language*>> sheet_languages(const std::vector<words::Language>& packs,
                                                                          const book::Kitchen& kitchen);

/// A lot that an input is taken from.
struct Drawn {
  QString item;
  QString lot, place;  ///< may be empty
  measure::Quantity quantity;
};

/// What is known of a batch before it is made.
struct Ahead {
  QDate day;
  QString lot;                     ///< empty: to be written in
  std::vector<Drawn> drawn;        ///< empty: the lots are written in
  std::vector<plan::Filled> fill;  ///< containers to fill, with a label each; empty: the book names none
  QStringList whom;                ///< sites and orders, as printed
};

}  // namespace lardiner::facts
