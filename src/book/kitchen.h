// The kitchen itself: its place, its choices, its sites, people and media.
#pragma once

#include <QString>
#include <QStringList>
#include <QTimeZone>
#include <optional>
#include <vector>

#include "book/local_text.h"
#include "book/shelf_life.h"
#include "measure/quantity.h"
#include "measure/temperature.h"
#include "measure/text.h"

namespace lardiner::book {

/// Whether the day of freezing uses up a day of chilled life (official guidance differs by a day).
enum class FreezingDay { Counts, Free };

/// The parts of a lot, in the kitchen's order; an ISO/IEC 7064 check character always ends it.
enum class LotPart { Station, Year, DayOfYear, ProductCode, Number };

struct Kitchen {
  QString name;
  QStringList address;  ///< lines, for sale labels
  QTimeZone zone;
  QStringList languages;        ///< the first is the book's own; labels carry what their container asks for
  QStringList sheet_languages;  ///< one or two of `languages` that prep, assembly and plan sheets are in
  measure::System units = measure::System::Metric;
  QString allergen_list;  ///< id: the destination's
  QString rule_set;       ///< id
  FreezingDay freezing_day = FreezingDay::Counts;
  QString code_address;  ///< "https://lot.quarrylane.example", no trailing slash
  QString gtin_prefix;
  QString station;  ///< one letter
  std::vector<LotPart> lot;
  measure::Quantity scale_step;
  std::optional<measure::Quantity> fine_scale_step;  ///< of the scale for small amounts; absent: there is none
  int out_of_cold_seconds = 0;  ///< how long food may stand out of the cold while it is worked on; 0: not said
  problem::Place out_of_cold_place;
  measure::TemperatureLimit freezer;  ///< printed as "keep at"; common practice −18 °C (0 °F)
  QString ingredient_media;  ///< id of the medium for opened, thawed, cut and decanted ingredients, and for HOLD labels
                             ///< of unknown containers
  LocalText words_reviewed_by;  ///< language -> who of this kitchen read the safety words of a pack nobody had reviewed
  bool merge_compounds = false;  ///< ingredient statements: compounds merged and summed instead of in parentheses
};

struct Site {
  QString id;
  LocalText name;
  QString allergen_list;  ///< empty: the kitchen's
  problem::Place place;
};

/// What a place keeps food at.
enum class Keeping { Chilled, Frozen, Hot, Ambient };

/// Where food stands: a walk-in, a freezer, a hot cabinet, a store room, a van.
struct StoragePlace {
  QString name;  ///< as events write it
  Keeping keeps = Keeping::Chilled;
  std::optional<measure::TemperatureLimit> at_least, at_most;  ///< of the kitchen's own plan (storage_place.h)
  problem::Place place;
};

struct Person {
  QString initials;
  QString name;
  problem::Place place;
};

/// A pot, kettle or mixing bowl; which of them a product is made in, and how much of it fits, the product says.
struct Vessel {
  QString id;
  LocalText name;
  std::optional<measure::Quantity> tare;
  problem::Place place;
};

/// What a label purpose is for.
enum class Purpose { Inside, Finisher, Sale };

/// The parts of a label that are kept free for the cut or peel edge: nothing is printed there. Hundredths of a
/// millimetre, as the label lies on its medium.
struct Margins {
  int top = 0, right = 0, bottom = 0, left = 0;
  friend bool operator==(const Margins&, const Margins&) = default;
};

/// A sheet of equal labels, in hundredths of a millimetre from the paper's top left as it is fed.
struct Sheet {
  int paper_width = 0, paper_height = 0;
  int columns = 0, rows = 0;
  int left = 0, top = 0;  ///< from the paper's edges to the first label
  int gap_across = 0, gap_down = 0;

  int labels() const { return columns * rows; }
};

/// The label material. Sizes in hundredths of a millimetre, as in PWG 5101.1.
struct Media {
  QString id;
  LocalText name;
  int width = 0;  ///< of one label as it lies on the medium
  int height = 0;
  bool turned = false;  ///< it is read a quarter turn from how it lies: its width as read is its height here
  int dots_per_inch = 203;
  std::optional<Sheet> sheet;                         ///< else a roll
  bool chilled = true, freezer = false, hot = false;  ///< what it bears
  Margins margin;
  int module_dots = 3;  ///< least dots a module of the code
  problem::Place place;

  int width_as_read() const { return turned ? height : width; }
  int height_as_read() const { return turned ? width : height; }
};

}  // namespace lardiner::book
