// Making a batch: the product, what went in and when; what it will be; then recorded, and its labels.
#include <QHash>
#include <algorithm>

#include "facts/wording.h"
#include "ledger/on_hand.h"
#include "station/rows.h"
#include "station/visit.h"

namespace lardiner::station {

using reader::Value;

namespace {

constexpr int kMostOffered = 40;  // lots of one input

QHash<QString, qint64> times_made(Desk& desk) {
  QHash<QString, qint64> times;
  ledger::Statement& rows =
      desk.ledger().store().statement("SELECT item, count(*) FROM lot WHERE kind = 1 GROUP BY item");
  while (rows.next()) times.insert(rows.text(0), rows.number(1));
  return times;
}

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

void add_list(Value& to, const QString& key, Value item) {
  Value list = form_table();
  list.kind = Value::Kind::List;
  list.items.push_back(std::move(item));
  to.entries.emplace_back(key, std::move(list));
}

// The record that the form wrote down, as a line of JSON Lines would say it.
Value record_of(const Visit& visit, const book::Product& product) {
  const Fields& form = visit.request().form;
  const auto field = [&](const char* name) { return form.value(QString::fromLatin1(name)); };
  Value row = form_table();
  add(row, QStringLiteral("product"), product.id);
  for (const char* key : {"number", "quantity", "made_at", "containers", "site", "order"})
    add(row, QString::fromLatin1(key), field(key));
  add(row, QStringLiteral("by"), visit.who().initials);
  Value inputs = form_table();
  inputs.kind = Value::Kind::List;
  for (const book::FormulaLine& line : product.formula) {
    Value input = form_table();
    add(input, QStringLiteral("item"), line.item);
    add(input, QStringLiteral("lot"), form.value(QStringLiteral("lot.") + line.item));
    add(input, QStringLiteral("use_by"), form.value(QStringLiteral("use_by.") + line.item));
    if (input.entries.size() > 1) inputs.items.push_back(std::move(input));
  }
  if (!inputs.items.empty()) row.entries.emplace_back(QStringLiteral("inputs"), std::move(inputs));
  if (field("core").isEmpty()) return row;
  Value cooked = form_table();
  for (const auto& [key, name] : {std::pair("at", "cooked_at"), std::pair("core", "core"), std::pair("held", "held")})
    add(cooked, QString::fromLatin1(key), field(name));
  add_list(row, QStringLiteral("cooked"), std::move(cooked));
  return row;
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
  const QString chosen = form.value(QStringLiteral("lot.") + line.item);
  input.set("CHOSEN", chosen).set("INPUT_USE_BY", form.value(QStringLiteral("use_by.") + line.item));
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
  part.set("MADE_AT", said("made_at", local.toString(QStringLiteral("yyyy-MM-dd HH:mm"))));
  part.set("CORE", said("core", {})).set("HELD_FOR", said("held", {})).set("COOKED_AT", said("cooked_at", {}));
  for (const book::FormulaLine& line : product.formula) add_input(visit, part, line);
  add_problems(part, errors);
  if (foreseen) {
    Part& look = part.add("FORESEEN");
    look.set("LOT", foreseen->lot).set("USE_BY", foreseen->use_by);
    for (const QString& reason : foreseen->reasons) look.add("REASON").set("TEXT", reason);
    for (const QString& line : foreseen->contains) look.add("CONTAINS").set("TEXT", line);
    for (const QString& warning : foreseen->warnings) look.add("FORESEEN_WARNING").set("TEXT", warning);
    if (!foreseen->label_svg.isEmpty())
      look.add("PICTURE").set("DATA", QString::fromLatin1(foreseen->label_svg.toBase64()));
    if (const auto printers = visit.desk().printers(); printers && !printers->empty())
      add_printers(look.add("PRINTING"), *printers, form);
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
  const QHash<QString, qint64> times = times_made(visit.desk());
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
  const Value row = record_of(visit, *product);
  const QString step = visit.request().form.value(QStringLiteral("step"));
  if (step != QLatin1String("record") && step != QLatin1String("print")) {
    const auto foreseen = visit.desk().foresee(row);
    return foreseen ? form_page(visit, *product, {}, &*foreseen) : form_page(visit, *product, foreseen.error());
  }
  const auto recorded = visit.desk().record({row});
  if (!recorded) return form_page(visit, *product, recorded.error());
  if (step != QLatin1String("print"))
    return redirection(QStringLiteral("/lot/%1?item=%2").arg(recorded->lot, product->id));
  return print_made(visit, {recorded->lot, product->id});
}

}  // namespace lardiner::station
