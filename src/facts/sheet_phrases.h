// What a work sheet says in its one or two languages, and the errors of what it cannot say.
#pragma once

#include <functional>

#include "facts/sheet_setting.h"
#include "facts/wording.h"
#include "facts/work_sheet.h"

namespace lardiner::facts {

/// REQUIRES: setting and errors outlive it. A text that the book lacks in a language of the sheet is an error, once.
class SheetPhrases {
 public:
  /// Says something in the language of a wording.
  using Saying = std::function<QString(const Wording&)>;

  SheetPhrases(const SheetSetting& setting, problem::Errors& errors);

  const book::Book& book() const { return setting_.book; }
  const words::Language& language() const { return *setting_.languages.front(); }
  Wording first() const { return wording(0); }

  /// In both languages, on one line: "Pull / Sacar"; once where they say the same.
  QString both(const Saying& say) const;
  QString both(const char* key, const QStringList& values = {}) const;

  /// The first language; what the others say differently stands beneath.
  Cell cell(const Saying& say, bool strong = false) const;
  /// Each language on a small line.
  void add_small(std::vector<SmallLine>& to, const Saying& say, bool strong = false) const;
  /// The same, strong and as large as the item that they stand beneath.
  void add_large(std::vector<SmallLine>& to, const Saying& say) const;

  QString text(const Wording& wording, const book::LocalText& text, const QString& what,
               const problem::Place& place) const;
  /// Of an ingredient or a product.
  QString name(const Wording& wording, const QString& item) const;
  Cell name_cell(const QString& item) const;

  /// "Harbour Street 118, Mill Road 7"; of more than a few the rest as a number: "+94".
  static QString few(const Wording& wording, const QStringList& names);

  /// A weight as a scale with such a step shows it, in the units of the kitchen's scale.
  QString on_scale(measure::Quantity weight, measure::Quantity step) const;
  /// A weight in the units of the kitchen's scale, a volume in the kitchen's, pieces; and in the other system of units.
  QString amount(measure::Quantity quantity) const { return amount(first(), quantity); }
  QString amount(const Wording& wording, measure::Quantity quantity) const;
  QString other_system(measure::Quantity quantity) const;
  /// In those units in which the figure is exact, as one that the book states; else as `amount`.
  QString exact_amount(measure::Quantity quantity) const;

  /// An amount set large, the other system beneath.
  Cell amount_cell(measure::Quantity quantity) const;

  /// "Wed 25 Nov 2026", "Wed 25 Nov 10:40": in the kitchen's zone and the first language.
  QString day(QDate day) const { return language().date(day); }
  QString time(const QDateTime& instant) const;
  QString day_and_time(const QDateTime& instant) const;
  /// "FRI 27 NOV 14:00", for narrow columns.
  QString brief(const Wording& wording, const QDateTime& instant) const;

 private:
  void add_lines(std::vector<SmallLine>& to, const Saying& say, const SmallLine& as) const;
  Wording wording(size_t language) const {
    return {*setting_.languages[language], setting_.book.kitchen.units, scale_units_};
  }
  /// That of the scale for weights, else the kitchen's.
  measure::System working_units(measure::Quantity quantity) const;

  const SheetSetting& setting_;
  measure::System scale_units_;
  problem::Errors& errors_;
};

/// A line to write on, after what is written there.
Cell blank(const QString& before = {});
Cell tick();

}  // namespace lardiner::facts
