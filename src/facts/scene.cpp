// What every fact of one label is computed from, and the phrases that several facts share.
#include "facts/scene.h"

namespace lardiner::facts {

namespace {

constexpr QChar kNoBreak(0x00A0);

QString degrees(measure::Temperature temperature, QChar decimal_mark) {
  QString number = QString::number(std::abs(temperature.tenths) / 10);
  if (temperature.tenths % 10 != 0) number += decimal_mark + QString::number(std::abs(temperature.tenths) % 10);
  if (temperature.tenths < 0) number.prepend(QChar(0x2212));  // minus sign
  return number + kNoBreak +
         (temperature.scale == measure::Scale::Celsius ? QStringLiteral("°C") : QStringLiteral("°F"));
}

QString number_and(const Scene& scene, int number, const char* unit_key) {
  return unbroken(scene.sentence(unit_key, {QString::number(number)}));
}

const char* unit_key(measure::Unit unit) {
  using measure::Unit;
  switch (unit) {
    case Unit::Milligram:
      return "unit_mg";
    case Unit::Gram:
      return "unit_g";
    case Unit::Kilogram:
      return "unit_kg";
    case Unit::Ounce:
      return "unit_oz";
    case Unit::Pound:
      return "unit_lb";
    case Unit::Millilitre:
      return "unit_ml";
    case Unit::Litre:
      return "unit_l";
    case Unit::Teaspoon:
      return "unit_tsp";
    case Unit::FluidOunce:
      return "unit_fl_oz";
    case Unit::Quart:
      return "unit_qt";
    case Unit::Gallon:
      return "unit_gal";
    case Unit::Tablespoon:
    case Unit::Cup:
    case Unit::Pint:
    case Unit::Piece:
      break;
  }
  return "";  // no amount is shown in these
}

}  // namespace

QString Scene::text(const book::LocalText& texts, const QString& what, const problem::Place& place) const {
  const QString found = texts.in(words.code());
  if (found.isEmpty()) {
    errors.push_back(
        {problem::Code::Missing,
         QStringLiteral("%1 has no text in \"%2\", a language of its label").arg(what, words.code()), place,
         QStringLiteral("write it as { en = \"…\", %1 = \"…\" }, or take \"%1\" out of the container's languages")
             .arg(words.code())});
  }
  return found;
}

QString both_scales(const Scene& scene, const measure::TemperatureLimit& limit) {
  const QChar mark = scene.words.decimal_mark();
  const QString celsius = degrees(limit.celsius, mark);
  const QString fahrenheit = degrees(limit.fahrenheit, mark);
  const bool metric = scene.book.kitchen.units == measure::System::Metric;
  return (metric ? celsius : fahrenheit) + kNoBreak + u'(' + (metric ? fahrenheit : celsius) + u')';
}

measure::Notation notation(const Scene& scene) {
  const words::Language& words = scene.words;
  return {words.decimal_mark(), [&words](const QString& figure, measure::Unit unit) {
            return unbroken(words.sentence(QString::fromLatin1(unit_key(unit)), {figure}));
          }};
}

QString both_systems(const Scene& scene, measure::Quantity quantity) {
  if (quantity.dimension == measure::Dimension::Count) return pieces(scene, quantity);
  const auto shown = [&](measure::System system) {
    return unbroken(measure::display(quantity, system, notation(scene)));
  };
  const bool metric = scene.book.kitchen.units == measure::System::Metric;
  const QString first = shown(metric ? measure::System::Metric : measure::System::Customary);
  const QString second = shown(metric ? measure::System::Customary : measure::System::Metric);
  return first + kNoBreak + u'(' + second + u')';
}

QString pieces(const Scene& scene, measure::Quantity count) {
  const QString number = measure::display(count, scene.book.kitchen.units, notation(scene));
  return unbroken(scene.words.counted(QStringLiteral("pieces"), number));
}

QString lasting(const Scene& scene, int seconds) {
  QStringList parts;
  if (seconds >= 3600) parts << number_and(scene, seconds / 3600, "unit_h");
  if (seconds % 3600 >= 60) parts << number_and(scene, seconds % 3600 / 60, "unit_min");
  if (seconds % 60 != 0 || seconds == 0) parts << number_and(scene, seconds % 60, "unit_s");
  return parts.join(kNoBreak);
}

QString lasting(const Scene& scene, int least_seconds, int most_seconds) {
  if (least_seconds == most_seconds || most_seconds == 0) return lasting(scene, least_seconds);
  const bool whole_minutes = least_seconds % 60 == 0 && most_seconds % 60 == 0 && most_seconds < 2 * 3600;
  const QString from = whole_minutes ? QString::number(least_seconds / 60) : lasting(scene, least_seconds);
  const QString to = whole_minutes ? number_and(scene, most_seconds / 60, "unit_min") : lasting(scene, most_seconds);
  return unbroken(scene.sentence("range", {from, to}));
}

QString unbroken(QString text) { return text.replace(u' ', kNoBreak); }

std::vector<Paragraph> plain(const QString& text) {
  return text.isEmpty() ? std::vector<Paragraph>{} : std::vector<Paragraph>{{Run{text, false}}};
}

std::vector<Paragraph> strong(const QString& text) {
  return text.isEmpty() ? std::vector<Paragraph>{} : std::vector<Paragraph>{{Run{text, true}}};
}

const book::AllergenList* destination_list(const Scene& scene) {
  const book::Site* site = scene.book.site(scene.batch.record.site);
  const QString id = site && !site->allergen_list.isEmpty() ? site->allergen_list : scene.book.kitchen.allergen_list;
  return scene.book.law.list(id);
}

}  // namespace lardiner::facts
