// Making a batch: the product, what went in and when; what it will be; then recorded, and its labels.
#include <QHash>
#include <algorithm>

#include "facts/wording.h"
#include "ledger/on_hand.h"
#include "station/make_record.h"
#include "station/visit.h"

namespace lardiner::station {

namespace {

constexpr int kMostOffered = 40;  // lots of one input

struct MadeLot {
  QString code, item;
};

// A lot that may have gone in, and until when it is good.
struct Offer {
  QString lot;
  std::optional<QDateTime> end;
};

// In date and not held, what ends first in front.
std::vector<Offer> offers(Desk& desk, const QString& item) {
  std::vector<Offer> all;
  for (const QString& code : ledger::lots_there(desk.ledger().store(), item, desk.now(), desk.now())) {
    const auto id = desk.ledger().lots().id(code, item);
    const history::Lot* lot = id ? desk.ledger().lots().lot(*id) : nullptr;
    if (!lot || code.isEmpty()) continue;
    for (const history::Holder& holder : lot->holders) {
      const history::Good good = history::good(*lot, holder, desk.now());
      const bool usable = good.state == history::Good::State::Good || good.state == history::Good::State::NoDate;
      if (holder.where != history::Where::Here || !usable) continue;
      all.push_back({code, good.end});
      break;
    }
  }
  std::stable_sort(all.begin(), all.end(), [](const Offer& a, const Offer& b) {
    if (!a.end || !b.end) return a.end.has_value() && !b.end;
    return *a.end < *b.end;
  });
  if (all.size() > kMostOffered) all.resize(kMostOffered);
  return all;
}

QString containers_of(const book::Product& product, measure::System units) {
  if (product.containers.empty()) return {};
  const book::ContainerSpec& spec = product.containers.front();
  const QString holds = measure::display(spec.holds, units);
  const bool counted = spec.holds.dimension == measure::Dimension::Count;
  return QStringLiteral("1 %1 %2").arg(spec.kind, counted ? holds + QStringLiteral(" pieces") : holds);
}

void add_input(const Visit& visit, Part& part, const book::FormulaLine& line) {
  const Fields& form = visit.request().form;
  Part& input = part.add("INPUT");
  input.set("INPUT_ITEM", line.item).set("INPUT_NAME", visit.name_of(line.item));
  const WentIn went = went_in(visit, line);
  const QString& chosen = went.lot;
  input.set("INPUT_USE_BY", form.value(QStringLiteral("use_by.") + line.item));
  input.set("INPUT_CODE", form.value(QStringLiteral("code.") + line.item));
  input.set("INSTEAD", form.value(QStringLiteral("instead.") + line.item));
  input.set("OPEN", went.instead() || !went.code.isEmpty() ? QStringLiteral("open") : QString());
  if (!chosen.isEmpty())
    input.add("CONFIRMED").set("CONFIRMED_LOT", chosen).set("CONFIRMED_NAME", visit.name_of(went.item));
  for (const Offer& offer : offers(visit.desk(), line.item)) {
    const QDateTime end = offer.end.value_or(QDateTime());
    const QString until =
        end.isValid() ? visit.language().date(end.addMSecs(-1).toTimeZone(visit.desk().book().kitchen.zone).date())
                      : QString();
    Part& row = input.add("OFFER");
    row.set("OFFERED", offer.lot).set("OFFERED_UNTIL", until);
    row.set("SELECTED", offer.lot == chosen ? QStringLiteral("selected") : QString());
  }
}

// All that may go in instead of something.
void add_items(const Visit& visit, Part& part) {
  for (const book::Ingredient& one : visit.desk().book().ingredients)
    part.add("ANY_ITEM").set("ITEM_NAME", visit.name_of(one.id));
  for (const book::Product& one : visit.desk().book().products)
    part.add("ANY_ITEM").set("ITEM_NAME", visit.name_of(one.id));
}

// Somebody has to say yes to what adds an allergen, by name.
void add_differences(const Visit& visit, Part& look, const std::vector<Replaced>& all) {
  bool asks = false;
  for (const Replaced& one : all) {
    Part& row = look.add("DIFFERENCE").set("ADDS", one.adds);
    row.set("NEW", visit.name_of(one.item))
        .set("OLD", one.instead_of.isEmpty() ? QString() : visit.name_of(one.instead_of));
    asks = asks || !one.adds.isEmpty();
  }
  if (asks)
    look.add("AGREE")
        .set("CHECKED",
             visit.request().form.value(QStringLiteral("agreed")).isEmpty() ? QString() : QStringLiteral("checked"))
        .set("WHO_AGREES", visit.signed_in() ? visit.who().initials : QString());
}

Reply form_page(const Visit& visit, const book::Product& product, const problem::Errors& errors = {},
                const Foreseen* foreseen = nullptr) {
  const Fields& form = visit.request().form;
  const QDateTime local = visit.desk().now().toTimeZone(visit.desk().book().kitchen.zone);
  const auto said = [&](const char* name, const QString& otherwise) {
    const QString text = form.value(QString::fromLatin1(name));
    return text.isEmpty() ? otherwise : text;
  };
  Part part;
  part.set("PRODUCT", product.id).set("NAME", visit.name_of(product.id));
  const int number = visit.desk().next_number(product.code, local.date());
  part.set("NUMBER", said("number", number > 0 ? QString::number(number) : QString()));
  part.set("QUANTITY", said("quantity", {}))
      .set("PUT_IN", said("containers", containers_of(product, visit.desk().book().kitchen.units)));
  part.set("MADE_AT", said("made_at", visit.now_text()));
  part.set("CORE", said("core", {})).set("HELD_FOR", said("held", {})).set("COOKED_AT", said("cooked_at", {}));
  for (const book::FormulaLine& line : product.formula) add_input(visit, part, line);
  add_items(visit, part);
  add_problems(part, errors);
  if (foreseen) {
    Part& look = part.add("FORESEEN");
    look.set("LOT", foreseen->lot).set("USE_BY", foreseen->use_by);
    for (const QString& reason : foreseen->reasons) look.add("REASON").set("TEXT", reason);
    add_differences(visit, look, foreseen->differences);
    for (const QString& line : foreseen->contains) look.add("CONTAINS").set("TEXT", line);
    for (const QString& warning : foreseen->warnings) look.add("FORESEEN_WARNING").set("TEXT", warning);
    if (!foreseen->label_svg.isEmpty())
      look.add("PICTURE").set("DATA", QString::fromLatin1(foreseen->label_svg.toBase64()));
    if (const auto printers = visit.desk().printers(); printers && !printers->empty())
      add_printers(look.add("PRINTING"), *printers, form);
    if (!foreseen->refused.empty()) look.add("MAY_HOLD");
    for (const problem::Error& error : foreseen->refused)
      look.add("REFUSED").set("REFUSED_WHAT", error.what).set("REFUSED_HINT", error.hint);
  }
  return visit.page(QStringLiteral("make_form"), visit.name_of(product.id), std::move(part), status_of(errors));
}

// The labels of what was just recorded, HOLD where it is not released yet; where they cannot be printed it is recorded
// all the same, and the lot's page says why.
Reply print_made(const Visit& visit, const MadeLot& made) {
  ToPrint wish;
  wish.lot = made.code;
  wish.by = visit.who().initials;
  wish.hold = true;
  const auto print = print_labels(visit, wish);
  return print ? *print : lot_with_problems(visit, made.code, made.item, print.error());
}

}  // namespace

Reply make_list(const Visit& visit) {
  const QString text = visit.request().query.value(QStringLiteral("q")).trimmed();
  const QHash<QString, qint64> times = ledger::lots_of_items(visit.desk().ledger().store(), ledger::LotKind::Made);
  std::vector<const book::Product*> found;
  for (const book::Product& product : visit.desk().book().products)
    if (text.isEmpty() || visit.name_of(product.id).contains(text, Qt::CaseInsensitive)) found.push_back(&product);
  std::stable_sort(found.begin(), found.end(), [&](const book::Product* a, const book::Product* b) {
    return times.value(a->id) > times.value(b->id);
  });
  Part part;
  part.set("ASKED", text);
  for (const book::Product* product : found)
    part.add("PRODUCT").set("ID", product->id).set("NAME", visit.name_of(product->id));
  return visit.page(QStringLiteral("make"), visit.word("page.make"), std::move(part));
}

Reply make_form(const Visit& visit, const QString& id) {
  const book::Product* product = visit.desk().book().product(id);
  return product ? form_page(visit, *product) : visit.message(404, "page.no_such_page");
}

// Looked at first; recorded when the same form comes again with the press of the other button.
Reply make(const Visit& visit, const QString& id) {
  const book::Product* product = visit.desk().book().product(id);
  if (!product) return visit.message(404, "page.no_such_page");
  const reader::Value row = made_row(visit, *product);
  const QString step = visit.request().form.value(QStringLiteral("step"));
  const bool hold = step == QLatin1String("hold");
  if (!hold && step != QLatin1String("record") && step != QLatin1String("print")) {
    const auto foreseen = visit.desk().foresee(row);
    return foreseen ? form_page(visit, *product, {}, &*foreseen) : form_page(visit, *product, foreseen.error());
  }
  const auto recorded = hold ? visit.desk().record_on_hold(row) : visit.desk().record({row});
  if (!recorded) return form_page(visit, *product, recorded.error());
  if (step != QLatin1String("print"))
    return redirection(QStringLiteral("/lot/%1?item=%2").arg(recorded->lot, product->id));
  return print_made(visit, {recorded->lot, product->id});
}

}  // namespace lardiner::station
