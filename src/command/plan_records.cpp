// The batch records of a plan, ready for `labels` once the hands have made the batches.
#include "command/plan_records.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <map>

#include "batch/clock.h"
#include "measure/text.h"
#include "plan/rounding.h"

namespace lardiner::command {

namespace {

using measure::Dimension;
using measure::Quantity;
using measure::Ratio;
using measure::System;

struct Exact {
  const char* unit;
  std::int64_t one;
};

Exact exact_unit(Dimension dimension) {
  if (dimension == Dimension::Mass) return {"g", measure::one(measure::Unit::Gram).amount};
  if (dimension == Dimension::Volume) return {"mL", measure::one(measure::Unit::Millilitre).amount};
  return {"pieces", measure::one(measure::Unit::Piece).amount};
}

// Every figure of it.
QString exactly(Quantity amount) {
  const Exact as = exact_unit(amount.dimension);
  QString decimals;
  for (std::int64_t rest = amount.amount % as.one; rest > 0; rest = rest * 10 % as.one)
    decimals += QChar(u'0' + static_cast<char16_t>(rest * 10 / as.one));
  const QString point = decimals.isEmpty() ? QString() : QStringLiteral(".");
  return QString::number(amount.amount / as.one) + point + decimals + u' ' + QLatin1String(as.unit);
}

// As people write it where that reads back as the same amount, in the kitchen's units if possible.
QString written(Quantity amount, System system) {
  if (amount.dimension == Dimension::Count) return exactly(amount);
  for (const System one : {system, system == System::Metric ? System::Customary : System::Metric}) {
    const QString text = measure::display(amount, one);
    if (measure::parse_quantity(text) == amount) return text;
  }
  return exactly(amount);
}

// As a scale or a jug shows it; of what has a maximum by law none more than it is.
QString measured_text(const book::Kitchen& kitchen, Quantity amount, bool restricted) {
  if (amount.dimension == Dimension::Count) return exactly(amount);
  const Quantity step = amount.dimension == Dimension::Mass ? plan::weighable(kitchen, amount).step
                                                            : measure::one(measure::Unit::Millilitre);
  return written(plan::weighed(amount, step, restricted), kitchen.units);
}

QString time_text(const QDateTime& at, const QTimeZone& zone) {
  const QDateTime local = at.toTimeZone(zone);
  const QString text = local.toString(QStringLiteral("yyyy-MM-dd HH:mm"));
  return batch::shows_twice(at, zone) ? text + batch::offset_text(local.offsetFromUtc()) : text;
}

// "use_by" or "best_before" of an input.
void put_end(QJsonObject& input, const batch::StatedEnd& end, const QTimeZone& zone) {
  const QString key = end.kind == book::EndKind::UseBy ? QStringLiteral("use_by") : QStringLiteral("best_before");
  input.insert(
      key, end.is_date ? batch::local_day(end.end.addMSecs(-1), zone).toString(Qt::ISODate) : time_text(end.end, zone));
}

void put(QJsonObject& object, const char* key, const QString& text) {
  if (!text.isEmpty()) object.insert(QString::fromLatin1(key), text);
}

class Records {
 public:
  Records(const WorkRun& run, const plan::DayPlan& plan, const std::vector<PlannedBatch>& batches)
      : book_(run.book), plan_(plan), batches_(batches), weighing_(run.book) {}

  QJsonObject record(size_t index) {
    const PlannedBatch& batch = batches_[index];
    QJsonObject out{{QStringLiteral("product"), batch.making->product->id},
                    {QStringLiteral("number"), batch.number},
                    {QStringLiteral("quantity"), written(batch.put_up, kitchen().units)},
                    {QStringLiteral("made_at"), time_text(batch.making->start, kitchen().zone)},
                    {QStringLiteral("inputs"), inputs(index)}};
    put(out, "lot", batch.ahead.lot);
    if (!batch.ahead.fill.empty()) out.insert(QStringLiteral("containers"), containers(batch));
    const std::vector<plan::For>& wanted = batch.making->wanted_by;
    if (wanted.size() == 1 && wanted.front().kind == plan::For::Kind::Order) {
      put(out, "site", plan_.orders[wanted.front().index].site);
      put(out, "order", plan_.orders[wanted.front().index].number);
    }
    return out;
  }

 private:
  const book::Kitchen& kitchen() const { return book_.kitchen; }

  QJsonArray containers(const PlannedBatch& batch) const {
    QJsonArray out;
    for (const plan::Filled& group : batch.ahead.fill)
      out.append(QJsonObject{{QStringLiteral("count"), group.count},
                             {QStringLiteral("kind"), group.container->kind},
                             {QStringLiteral("holds"), written(group.holds, kitchen().units)}});
    return out;
  }

  QJsonArray inputs(size_t index) {
    QJsonArray out;
    std::map<QString, Quantity> open = bought(index);
    for (const PlannedInput& input : batches_[index].inputs) {
      out.append(input_of(input));
      if (!input.lot) continue;
      const auto found = open.find(input.lot->item);
      if (found != open.end()) found->second = found->second - edible(input.lot->item, input.quantity);
    }
    for (const auto& [item, rest] : open)
      if (measure::less(measure::one(measure::Unit::Milligram), rest))
        out.append(QJsonObject{{QStringLiteral("item"), item}, {QStringLiteral("quantity"), measured(item, rest)}});
    return out;
  }

  QJsonObject input_of(const PlannedInput& input) const {
    QJsonObject out;
    if (!input.lot) {
      const PlannedBatch& sub = batches_[input.batch];
      put(out, "item", sub.making->product->id);
      put(out, "lot", sub.ahead.lot);
      put(out, "quantity", measured(sub.making->product->id, input.quantity));
      return out;
    }
    put(out, "item", input.lot->item);
    put(out, "lot", input.lot->lot);
    put(out, "quantity", measured(input.lot->item, edible(input.lot->item, input.quantity)));
    if (input.lot->use_by && !must_be_thawed(*input.lot)) put_end(out, *input.lot->use_by, kitchen().zone);
    return out;
  }

  QString measured(const QString& item, Quantity amount) const {
    const book::Ingredient* ingredient = book_.ingredient(item);
    return measured_text(kitchen(), amount, ingredient && ingredient->most_percent);
  }

  // How long it is good then follows from when it left the freezer, which only the hands can tell.
  bool must_be_thawed(const plan::OnHand& lot) const {
    const book::Ingredient* ingredient = book_.ingredient(lot.item);
    const book::Product* product = book_.product(lot.item);
    const book::TcsStatement tcs = ingredient ? ingredient->tcs : product ? product->tcs : book::TcsStatement{};
    return lot.state == book::State::Frozen && tcs.is != book::TcsStatement::Is::No;
  }

  // What goes in of what is pulled.
  Quantity edible(const QString& item, Quantity pulled) const {
    const book::Ingredient* ingredient = book_.ingredient(item);
    return ingredient ? measure::scaled(pulled, ingredient->edible) : pulled;
  }

  // What goes in of each ingredient.
  std::map<QString, Quantity> bought(size_t index) {
    std::map<QString, Quantity> out;
    const plan::PlannedMaking& making = *batches_[index].making;
    const auto& weights = weighing_.lines(*making.product);
    for (size_t i = 0; weights && i < weights->size(); ++i) {
      const QString& item = making.product->formula[i].item;
      if (!book_.ingredient(item)) continue;
      out[item] = out[item] + measure::scaled((*weights)[i], making.makings);
    }
    return out;
  }

  const book::Book& book_;
  const plan::DayPlan& plan_;
  const std::vector<PlannedBatch>& batches_;
  book::Weighing weighing_;
};

}  // namespace

QByteArray plan_records(const WorkRun& run, const plan::DayPlan& plan, const std::vector<PlannedBatch>& batches) {
  QByteArray out;
  Records records(run, plan, batches);
  for (size_t i = 0; i < batches.size(); ++i)
    out += QJsonDocument(records.record(i)).toJson(QJsonDocument::Compact) + '\n';
  return out;
}

}  // namespace lardiner::command
