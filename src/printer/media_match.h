// Which medium of a printer a page fits, and how sizes are named: pure.
#pragma once

#include <QString>
#include <optional>
#include <vector>

namespace lardiner::printer {

/// Across and along the feed, in hundredths of a millimetre as in IPP's media-size (PWG 5100.3).
struct Size {
  int width = 0, height = 0;

  Size turned() const { return {height, width}; }
  friend bool operator==(Size, Size) = default;
};

/// A size that a printer names. `name`: as the printer's own keyword; empty where it gave the size alone.
struct Medium {
  QString name;
  Size size;
  friend bool operator==(const Medium&, const Medium&) = default;
};

/// The sizes that a printer takes beside those that it names.
struct CustomSizes {
  Size least, most;

  bool holds(Size size) const;
  friend bool operator==(const CustomSizes&, const CustomSizes&) = default;
};

/// How far a side may be off for two sizes to be the same: half a millimetre. A 2 in label (50.8 mm) is sold as 51 mm,
/// one of 4 in (101.6 mm) as 102.
inline constexpr int kTolerance = 50;

/// The size in a self-describing name: "oe_2x1-label_2x1in" is 50.8 × 25.4 mm. Nothing where the name is none of those
/// (class, size name, two numbers without needless zeros, in or mm), or stands for a bound ("custom_max_…") and not for
/// a medium. Source: PWG 5101.1, section 5.
std::optional<Size> size_of_name(const QString& name);

/// The bounds that "custom_min_…" with "custom_max_…", or "roll_min_…" with "roll_max_…", state; at most one of each.
std::vector<CustomSizes> custom_sizes(const std::vector<QString>& names);

/// "custom_label_50x50mm": the name of a size that has none. The width comes first, as it is fed and as printers read
/// such names; PWG 5101.1, section 5, puts the shorter side first, which says nothing about the feed.
QString custom_name(Size size);

/// The whole millimetre or quarter of an inch that a side was cut from: a page is drawn in whole dots and may be as
/// much as a dot of a coarse printer (0.13 mm at 203 to the inch) smaller than its label. Another size stays as it is.
Size as_cut(Size page);

/// "50.8 × 25.4 mm".
QString text(Size size);

/// What a page is printed on.
struct Match {
  Medium medium;        ///< of a custom size: its name is `custom_name`, its size the page's
  bool turned = false;  ///< the printer has it the other way round
  bool custom = false;
  friend bool operator==(const Match&, const Match&) = default;
};

/// The way round that the page has goes first, then a size with a name, then the one that is nearest; of equal ones the
/// first.
std::optional<Match> match(Size page, const std::vector<Medium>& media, const std::vector<CustomSizes>& custom);

}  // namespace lardiner::printer
