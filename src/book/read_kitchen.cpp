// The kitchen's own keys: who it is and what it chose.
#include <QRegularExpression>

#include "book/tables.h"
#include "book/values.h"
#include "measure/text.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using reader::Fields;
using reader::quoted;

namespace {

// Common practice of the trade; no code names a freezer's temperature.
constexpr measure::TemperatureLimit kFreezer{{-180, measure::Scale::Celsius}, {0, measure::Scale::Fahrenheit}};

bool matches(const QString& form, const QString& text) { return QRegularExpression(form).match(text).hasMatch(); }

QTimeZone read_zone(Fields& fields) {
  const std::optional<QString> name = fields.required_text(u"time_zone");
  if (!name) return QTimeZone::utc();
  const QByteArray id = name->toUtf8();
  if (QTimeZone::isTimeZoneIdAvailable(id) && id.contains('/')) return QTimeZone(id);
  fields.refuse(u"time_zone", Code::Unknown, quoted(*name) + QStringLiteral(" is not a time zone"),
                QStringLiteral("write its name as in America/New_York or Europe/London"));
  return QTimeZone::utc();
}

QStringList read_languages(Fields& fields) {
  if (!fields.has(u"languages"))
    fields.refuse(u"languages", Code::Missing, fields.noun() + QStringLiteral(" has no languages"),
                  QStringLiteral("state languages, the book's own first: [\"en\", \"es\"]"));
  QStringList languages;
  for (const QString& code : fields.texts(u"languages")) {
    if (!matches(QStringLiteral("^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$"), code))
      fields.refuse(u"languages", Code::Malformed, quoted(code) + QStringLiteral(" is not a language code"),
                    QStringLiteral("write the code of the language, as in en or es"));
    else if (languages.contains(code))
      fields.refuse(u"languages", Code::Duplicate, QStringLiteral("the language %1 is named twice").arg(quoted(code)),
                    QStringLiteral("name each language once"));
    else
      languages += code;
  }
  return languages;
}

QStringList read_sheet_languages(Fields& fields, const QStringList& languages) {
  constexpr qsizetype kMost = 2;  // a sheet has room for a second line beneath what guards safety, not for a third
  QStringList out;
  for (const QString& code : fields.texts(u"sheet_languages")) {
    if (!languages.contains(code))
      fields.refuse(u"sheet_languages", Code::Unknown,
                    QStringLiteral("%1 asks for sheets in the language %2").arg(fields.noun(), quoted(code)),
                    QStringLiteral("the kitchen's languages are ") + languages.join(QStringLiteral(", ")));
    else if (out.contains(code))
      fields.refuse(u"sheet_languages", Code::Duplicate,
                    QStringLiteral("the language %1 is named twice").arg(quoted(code)),
                    QStringLiteral("name each language once"));
    else
      out += code;
  }
  if (out.size() > kMost)
    fields.refuse(u"sheet_languages", Code::Range,
                  QStringLiteral("%1 asks for sheets in more than %2 languages").arg(fields.noun()).arg(kMost),
                  QStringLiteral("name the one or two that the hands read"));
  return out.isEmpty() ? languages.mid(0, 1) : out;
}

QString read_code_address(Fields& fields) {
  const std::optional<QString> address = fields.required_text(u"code_address");
  if (!address) return {};
  if (matches(QStringLiteral("^https://[A-Za-z0-9.-]+(:[0-9]{1,5})?(/[A-Za-z0-9._~-]+)*$"), *address)) return *address;
  fields.refuse(
      u"code_address", Code::Malformed, quoted(*address) + QStringLiteral(" is not the address of codes"),
      QStringLiteral("write one that the kitchen owns, as in https://lot.example.com, without a / at its end"));
  return {};
}

QString read_matching(Fields& fields, QStringView key, const QString& form, const QString& hint) {
  const std::optional<QString> text = fields.required_text(key);
  if (!text) return {};
  if (matches(form, *text)) return *text;
  fields.refuse(key, Code::Malformed, QStringLiteral("%1: %2 cannot be %3").arg(fields.noun(), key, quoted(*text)),
                hint);
  return {};
}

std::vector<LotPart> read_lot(Fields& fields) {
  static const QStringList names{QStringLiteral("station"), QStringLiteral("year"), QStringLiteral("day-of-year"),
                                 QStringLiteral("product-code"), QStringLiteral("number")};
  const QStringList written = fields.texts(u"lot");
  QStringList sorted = written;
  QStringList all = names;
  sorted.sort();
  all.sort();
  std::vector<LotPart> parts;
  for (const QString& part : written)
    parts.push_back(static_cast<LotPart>(std::max<qsizetype>(0, names.indexOf(part))));
  if (sorted == all) return parts;
  fields.refuse(u"lot", fields.has(u"lot") ? Code::Malformed : Code::Missing,
                QStringLiteral("%1: lot must have each of its five parts once").arg(fields.noun()),
                QStringLiteral("write the parts in the kitchen's order: ") +
                    one_of(names).replace(QStringLiteral(" or "), QStringLiteral(", ")));
  return {LotPart::Station, LotPart::Year, LotPart::DayOfYear, LotPart::ProductCode, LotPart::Number};
}

measure::Quantity read_scale_step(Fields& fields) {
  if (!fields.has(u"scale_step"))
    fields.refuse(u"scale_step", Code::Missing, fields.noun() + QStringLiteral(" has no scale_step"),
                  QStringLiteral("state what the scale shows: \"1 g\""));
  return read_weight(fields, u"scale_step").value_or(measure::one(measure::Unit::Gram));
}

std::optional<measure::Quantity> read_fine_scale_step(Fields& fields, measure::Quantity scale_step) {
  const std::optional<measure::Quantity> step = read_weight(fields, u"fine_scale_step");
  if (!step || less(*step, scale_step)) return step;
  fields.refuse(u"fine_scale_step", Code::Conflict,
                fields.noun() + QStringLiteral(": fine_scale_step is not less than scale_step"),
                QStringLiteral("state what the scale for small amounts shows, as in \"0.1 g\", or leave it out"));
  return std::nullopt;
}

void read_out_of_cold(Fields& fields, Kitchen& kitchen) {
  const std::optional<int> seconds = read_seconds(fields, u"out_of_cold");
  if (!seconds) return;
  kitchen.out_of_cold_seconds = *seconds;
  kitchen.out_of_cold_place = fields.value(u"out_of_cold")->place;
  if (*seconds == 0)
    fields.refuse(u"out_of_cold", Code::Range, fields.noun() + QStringLiteral(": out_of_cold is no time at all"),
                  QStringLiteral("state how long food may stand out of the cold while it is worked on: \"30 min\""));
}

void read_choices(Fields& fields, const Choices& choices, Kitchen& kitchen) {
  kitchen.allergen_list = read_required_word(fields, u"allergen_list", choices.allergen_lists).value_or(QString());
  kitchen.rule_set = read_required_word(fields, u"rule_set", choices.rule_sets).value_or(QString());
  const auto units = read_required_word(fields, u"units", {QStringLiteral("metric"), QStringLiteral("customary")});
  if (units == QStringLiteral("customary")) kitchen.units = measure::System::Customary;
  const auto freezing = read_word(fields, u"freezing_day", {QStringLiteral("counts"), QStringLiteral("free")});
  if (freezing == QStringLiteral("free")) kitchen.freezing_day = FreezingDay::Free;
}

}  // namespace

Kitchen read_kitchen(Fields& fields, const Choices& choices) {
  Kitchen kitchen;
  kitchen.name = fields.required_text(u"name").value_or(QString());
  kitchen.address = fields.texts(u"address");
  kitchen.zone = read_zone(fields);
  kitchen.languages = read_languages(fields);
  kitchen.sheet_languages = read_sheet_languages(fields, kitchen.languages);
  read_choices(fields, choices, kitchen);
  kitchen.code_address = read_code_address(fields);
  kitchen.gtin_prefix =
      read_matching(fields, u"gtin_prefix", QStringLiteral("^[0-9]{2,11}$"), QStringLiteral("write 2 to 11 digits"));
  kitchen.station =
      read_matching(fields, u"station", QStringLiteral("^[A-Z]$"), QStringLiteral("write one capital letter"));
  kitchen.lot = read_lot(fields);
  kitchen.scale_step = read_scale_step(fields);
  kitchen.fine_scale_step = read_fine_scale_step(fields, kitchen.scale_step);
  read_out_of_cold(fields, kitchen);
  kitchen.freezer = read_limit(fields, u"freezer", Bound::AtMost).value_or(kFreezer);
  kitchen.ingredient_media = fields.required_text(u"ingredient_media").value_or(QString());
  kitchen.words_reviewed_by = read_local_text(fields, u"words_reviewed_by", kitchen.languages);
  kitchen.merge_compounds = fields.boolean(u"merge_compounds").value_or(false);
  return kitchen;
}

}  // namespace lardiner::book
