// Reads the lists of the laws: substances, species, and for each destination its entries and exemptions.
#include <algorithm>

#include "book/allergen.h"
#include "measure/text.h"
#include "reader/fields.h"
#include "reader/read.h"

namespace lardiner::book {

namespace {

using problem::Code;
using problem::Errors;
using reader::Fields;
using reader::Value;

QString noun(const Value& table, const QString& what) {
  const Value* id = table.find(u"id");
  return id == nullptr || id->text.isEmpty() ? what : QStringLiteral("%1 \"%2\"").arg(what, id->text);
}

QString new_id(Fields& fields, const QStringList& taken) {
  const QString id = fields.required_text(u"id").value_or(QString());
  if (!id.isEmpty() && taken.contains(id))
    fields.refuse(u"id", Code::Duplicate, QStringLiteral("%1 is given twice").arg(fields.noun()),
                  QStringLiteral("keep one of the two"));
  return id;
}

// The words of a key's list, each of which must be among `known`.
QStringList known_words(Fields& fields, QStringView key, const QStringList& known) {
  const QStringList words = fields.texts(key);
  for (const QString& word : words) {
    if (known.contains(word)) continue;
    const QString near = problem::nearest(word, known);
    fields.refuse(key, Code::Unknown, QStringLiteral("%1: the file names no \"%2\"").arg(fields.noun(), word),
                  near.isEmpty() ? QStringLiteral("add it above") : QStringLiteral("did you mean \"%1\"?").arg(near));
  }
  return words;
}

QStringList substances(Fields& fields, const AllergenLaw& law) {
  if (!fields.has(u"of"))
    fields.refuse(u"of", Code::Missing, QStringLiteral("%1 names no substance").arg(fields.noun()),
                  QStringLiteral("write of = [\"milk\"]"));
  return known_words(fields, u"of", law.substances);
}

void read_substance(const Value& table, AllergenLaw& law, Errors& errors) {
  Fields fields(table, noun(table, QStringLiteral("substance")), errors);
  const QString id = new_id(fields, law.substances);
  const QStringList species = fields.texts(u"species");
  if (QStringList sorted = species; sorted.removeDuplicates() > 0)
    fields.refuse(u"species", Code::Duplicate, QStringLiteral("%1 names a species twice").arg(fields.noun()),
                  QStringLiteral("keep one of the two"));
  law.substances += id;
  if (!species.isEmpty()) law.species.emplace_back(id, species);
  if (fields.boolean(u"measured").value_or(false)) law.measured += id;
  fields.finish();
}

// `from` includes the figure, `over` does not.
void read_threshold(Fields& fields, ListEntry& entry) {
  const auto from = fields.text(u"from");
  const auto over = fields.text(u"over");
  if (!from && !over) return;
  QString figure = from ? *from : *over;
  entry.threshold_included = from.has_value();
  const auto number = measure::parse_decimal(figure.remove(QStringLiteral(" mg/kg")));
  if (number && !(from && over)) {
    entry.from_mg_per_kg = *number;
    return;
  }
  fields.refuse(from ? u"from" : u"over", Code::Malformed,
                QStringLiteral("%1 has no readable threshold").arg(fields.noun()),
                QStringLiteral("write from = \"10 mg/kg\", or over = \"10 mg/kg\""));
}

ListEntry read_entry(const Value& table, const AllergenLaw& law, const QStringList& taken, Errors& errors) {
  Fields fields(table, noun(table, QStringLiteral("entry")), errors);
  ListEntry entry;
  entry.id = new_id(fields, taken);
  entry.substances = substances(fields, law);
  QStringList species;
  for (const QString& substance : entry.substances) species += law.species_of(substance);
  entry.species = known_words(fields, u"species", species);
  entry.species_named = fields.boolean(u"species_named").value_or(false);
  entry.substance_named = fields.boolean(u"substance_named").value_or(false);
  entry.in_ingredient_list_only = fields.boolean(u"in_ingredient_list_only").value_or(false);
  read_threshold(fields, entry);
  entry.source = fields.required_text(u"source").value_or(QString());
  fields.finish();
  return entry;
}

Exemption read_exemption(const Value& table, const AllergenLaw& law, const QStringList& taken, Errors& errors) {
  Fields fields(table, noun(table, QStringLiteral("exemption")), errors);
  Exemption exemption{new_id(fields, taken), substances(fields, law),
                      fields.required_text(u"source").value_or(QString())};
  fields.finish();
  return exemption;
}

AllergenList read_list(const Value& table, const AllergenLaw& law, Errors& errors) {
  Fields fields(table, noun(table, QStringLiteral("list")), errors);
  AllergenList list;
  list.id = new_id(fields, law.list_ids());
  list.source = fields.required_text(u"source").value_or(QString());
  list.emphasised = fields.boolean(u"emphasised").value_or(false);
  QStringList taken;
  for (const Value* entry : fields.tables(u"entry")) {
    list.entries.push_back(read_entry(*entry, law, taken, errors));
    taken += list.entries.back().id;
  }
  if (list.entries.empty())
    fields.refuse(u"entry", Code::Missing, QStringLiteral("%1 has no entries").arg(fields.noun()),
                  QStringLiteral("add a [[list.entry]] table"));
  taken.clear();
  for (const Value* exemption : fields.tables(u"exemption")) {
    list.exemptions.push_back(read_exemption(*exemption, law, taken, errors));
    taken += list.exemptions.back().id;
  }
  fields.finish();
  return list;
}

}  // namespace

problem::ExpectedAll<AllergenLaw> read_allergen_law(const QByteArray& toml, const QString& file) {
  const auto root = reader::read_toml(toml, file);
  if (!root) return tl::unexpected(Errors{root.error()});
  Errors errors;
  Fields fields(*root, QStringLiteral("allergen law"), errors);
  AllergenLaw law;
  for (const Value* table : fields.tables(u"substance")) read_substance(*table, law, errors);
  for (const Value* table : fields.tables(u"list")) law.lists.push_back(read_list(*table, law, errors));
  if (law.lists.empty())
    fields.refuse(u"list", Code::Missing, QStringLiteral("allergen law has no list"),
                  QStringLiteral("add a [[list]] table"));
  fields.finish();
  if (errors.empty()) return law;
  problem::sort(errors);
  return tl::unexpected(errors);
}

}  // namespace lardiner::book
