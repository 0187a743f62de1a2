// The sites that food is sent to, and the people who sign for it.
#include <QRegularExpression>

#include "book/tables.h"
#include "book/values.h"
#include "reader/quote.h"

namespace lardiner::book {

using problem::Code;
using reader::Fields;

Site read_site(const reader::Value& table, const Context& context) {
  Fields fields(table, noun(QStringLiteral("site"), table), context.errors);
  Site site;
  site.place = table.place;
  site.id = read_id(fields).value_or(QString());
  site.name = read_name(fields, context.languages());
  QStringList lists;
  for (const AllergenList& list : context.book.law.lists) lists += list.id;
  site.allergen_list = read_word(fields, u"allergen_list", lists).value_or(QString());
  fields.finish();
  return site;
}

Person read_person(const reader::Value& table, const Context& context) {
  static const QRegularExpression letters(QStringLiteral("^\\p{L}{1,4}$"),
                                          QRegularExpression::UseUnicodePropertiesOption);
  Fields fields(table, noun(QStringLiteral("person"), table, u"initials"), context.errors);
  Person person;
  person.place = table.place;
  person.initials = fields.required_text(u"initials").value_or(QString());
  if (!person.initials.isEmpty() && !letters.match(person.initials).hasMatch())
    fields.refuse(u"initials", Code::Malformed, reader::quoted(person.initials) + QStringLiteral(" are not initials"),
                  QStringLiteral("write 1 to 4 letters"));
  person.name = fields.required_text(u"name").value_or(QString());
  fields.finish();
  return person;
}

}  // namespace lardiner::book
