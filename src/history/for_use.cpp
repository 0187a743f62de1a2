// A lot as whatever is printed or made of it has to take it: its fixed facts with what corrections said since.
#include "history/for_use.h"

#include <algorithm>
#include <tuple>

#include "history/shown.h"

namespace lardiner::history {

namespace {

// "fish:cod": the substance and its species.
std::pair<QString, QString> named(const QString& text) {
  const QString name = text.section(u' ', 0, 0);
  return {name.section(u':', 0, 0), name.section(u':', 1)};
}

book::Declaration declaration_of(const QString& text, const book::AllergenLaw& law) {
  if (const auto read = book::parse_declaration(text, law)) return *read;
  book::Declaration declaration;
  std::tie(declaration.substance, declaration.species) = named(text);
  return declaration;
}

batch::Cap cap_of(const Lot& lot) {
  batch::Cap cap;
  cap.item = lot.item;
  cap.lot = lot.code;
  cap.why = QStringLiteral("corrected");
  cap.kind = lot.not_after->kind;
  cap.end = lot.not_after->end.toTimeZone(lot.zone);
  cap.is_date = lot.not_after->is_date;
  cap.absolute = true;
  return cap;
}

// The dates that its containers show; those that show one date share it.
void show_corrected(batch::Batch& batch, const Lot& lot) {
  batch.use_bys.clear();
  for (size_t at = 0; at < batch.containers.size() && at < lot.holders.size(); ++at) {
    const Shown now = shown(lot, lot.holders[at]);
    if (!now.use_by) continue;
    const auto same = std::find(batch.use_bys.begin(), batch.use_bys.end(), *now.use_by);
    batch.containers[at].use_by = static_cast<int>(same - batch.use_bys.begin());
    if (same == batch.use_bys.end()) batch.use_bys.push_back(*now.use_by);
  }
}

// The date that a correction gave a lot: on its own labels, and for what is made of it.
void shorten(batch::Fixed& facts, const Lot& lot) {
  if (!lot.not_after) return;
  for (batch::Question& question : facts.questions) question.caps.push_back(cap_of(lot));
  if (facts.batch.refused.empty()) show_corrected(facts.batch, lot);
}

}  // namespace

void declare_besides(book::Declared& declared, const QStringList& substances, const book::AllergenLaw& law) {
  for (const QString& text : substances) declared.contains.push_back(declaration_of(text, law));
  declared.contains = book::gathered(declared.contains);
}

bool declares(const book::Declared& declared, const QString& substance) {
  return std::any_of(declared.contains.begin(), declared.contains.end(), [&](const book::Declaration& one) {
    return one.exemption.isEmpty() && std::pair(one.substance, one.species) == named(substance);
  });
}

QString barred(const Lot& lot) {
  if (!lot.recalls.empty()) return QStringLiteral("in a recall");
  return lot.holds.empty() ? QString() : QStringLiteral("on hold");
}

batch::Fixed facts_for_use(const Lot& lot, const book::AllergenLaw& law) {
  batch::Fixed facts = *lot.made;
  shorten(facts, lot);
  declare_besides(facts.batch.declared, lot.further_allergens, law);
  if (!barred(lot).isEmpty())
    facts.batch.refused.push_back({problem::Code::Unsafe,
                                   lot.recalls.empty()
                                       ? QStringLiteral("lot %1 is on hold: %2").arg(lot.code, lot.holds.front().reason)
                                       : QStringLiteral("lot %1 is in an open recall").arg(lot.code),
                                   {},
                                   {}});
  return facts;
}

}  // namespace lardiner::history
