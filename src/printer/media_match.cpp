// Which medium of a printer a page fits, and how sizes are named: pure.
#include "printer/media_match.h"

#include <QRegularExpression>
#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace lardiner::printer {

namespace {

// An inch is 25.4 mm exactly (1959).
constexpr double kHundredthsPerInch = 2540;
constexpr double kHundredthsPerMillimetre = 100;
constexpr double kLongest = 1'000'000;  // 10 m: no label or sheet is longer

constexpr int kMillimetre = 100, kQuarterInch = 635;
constexpr int kMostOfADot = 13, kWritersRounding = 1;

struct Name {
  QString medium_class, size_name;
  Size size;
};

// PWG 5101.1, section 5: no needless zero before or behind; the size name of a custom size may be empty. A roll without
// end has the length 0.
std::optional<Name> parsed(const QString& name) {
  static const QRegularExpression form(
      QStringLiteral("^([a-z][a-z0-9.-]*)_([a-z0-9.-]*)_(D)x(D|0)(in|mm)$")
          .replace(u'D', QStringLiteral("(?:[1-9][0-9]*|0(?=\\.))(?:\\.[0-9]*[1-9])?")));
  const QRegularExpressionMatch found = form.match(name);
  if (!found.hasMatch()) return std::nullopt;
  const double unit = found.captured(5) == QLatin1String("in") ? kHundredthsPerInch : kHundredthsPerMillimetre;
  const double width = found.captured(3).toDouble() * unit;
  const double height = found.captured(4).toDouble() * unit;
  if (width > kLongest || height > kLongest) return std::nullopt;
  return Name{found.captured(1),
              found.captured(2),
              {static_cast<int>(std::lround(width)), static_cast<int>(std::lround(height))}};
}

bool is_of_class(const Name& name, const char* of) { return name.medium_class == QLatin1String(of); }

bool is_bound(const Name& name) {
  return (is_of_class(name, "custom") || is_of_class(name, "roll")) &&
         (name.size_name == QLatin1String("min") || name.size_name == QLatin1String("max"));
}

std::optional<Size> bound(const std::vector<QString>& names, const char* of, const char* which) {
  for (const QString& name : names)
    if (const auto one = parsed(name); one && is_of_class(*one, of) && one->size_name == QLatin1String(which))
      return one->size;
  return std::nullopt;
}

int deviation(Size a, Size b) { return std::max(std::abs(a.width - b.width), std::abs(a.height - b.height)); }

std::optional<Match> named(Size page, const std::vector<Medium>& media, bool turned) {
  const Medium* nearest = nullptr;
  int least = kTolerance + 1;
  for (const Medium& medium : media) {
    const int off = deviation(page, medium.size);
    if (off >= least) continue;
    nearest = &medium;
    least = off;
  }
  if (nearest == nullptr) return std::nullopt;
  return Match{*nearest, turned, false};
}

std::optional<Match> of_custom_size(Size page, const std::vector<CustomSizes>& custom, bool turned) {
  const bool held =
      std::any_of(custom.begin(), custom.end(), [page](const CustomSizes& one) { return one.holds(page); });
  if (!held) return std::nullopt;
  return Match{{custom_name(page), page}, turned, true};
}

// The nearest of the steps at or above that lies within a dot; the writer's rounding counts as none.
std::optional<int> step_above(int side, int step) {
  const int above = (side - kWritersRounding + step - 1) / step * step;
  return above - side <= kMostOfADot ? std::optional(above) : std::nullopt;
}

int side_as_cut(int side) {
  const auto millimetre = step_above(side, kMillimetre), quarter = step_above(side, kQuarterInch);
  if (millimetre && quarter) return std::min(*millimetre, *quarter);
  return millimetre ? *millimetre : quarter.value_or(side);
}

QString millimetres(int hundredths) { return QString::number(hundredths / kHundredthsPerMillimetre, 'g', 9); }

}  // namespace

bool CustomSizes::holds(Size size) const {
  return size.width >= least.width && size.width <= most.width && size.height >= least.height &&
         size.height <= most.height;
}

std::optional<Size> size_of_name(const QString& name) {
  const auto one = parsed(name);
  if (!one || is_bound(*one) || one->size.height == 0 || is_of_class(*one, "disc")) return std::nullopt;
  return one->size;
}

std::vector<CustomSizes> custom_sizes(const std::vector<QString>& names) {
  std::vector<CustomSizes> out;
  for (const char* of : {"custom", "roll"}) {
    const auto least = bound(names, of, "min");
    const auto most = bound(names, of, "max");
    if (least && most) out.push_back({*least, *most});
  }
  return out;
}

QString custom_name(Size size) {
  return QStringLiteral("custom_label_%1x%2mm").arg(millimetres(size.width), millimetres(size.height));
}

Size as_cut(Size page) { return {side_as_cut(page.width), side_as_cut(page.height)}; }

QString text(Size size) { return QStringLiteral("%1 × %2 mm").arg(millimetres(size.width), millimetres(size.height)); }

std::optional<Match> match(Size page, const std::vector<Medium>& media, const std::vector<CustomSizes>& custom) {
  for (const bool turned : {false, true}) {
    const Size size = turned ? page.turned() : page;
    if (auto found = named(size, media, turned)) return found;
    if (auto found = of_custom_size(size, custom, turned)) return found;
  }
  return std::nullopt;
}

}  // namespace lardiner::printer
