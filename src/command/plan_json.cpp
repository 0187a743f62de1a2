// A day's plan as JSON; its keys are in src/plan/ORDERS.md.
#include "command/plan_json.h"

#include <QJsonArray>

#include "book/limit_text.h"
#include "command/amount_json.h"
#include "command/output.h"

namespace lardiner::command {

namespace {

using plan::For;
using plan::PassedOver;
using plan::Unmet;

QString why(Unmet::Why why) {
  switch (why) {
    case Unmet::Why::TooLate:
      return QStringLiteral("too-late");
    case Unmet::Why::LifeTooShort:
      return QStringLiteral("life-too-short");
    case Unmet::Why::NoWindow:
      return QStringLiteral("no-window");
    case Unmet::Why::NoWeight:
      return QStringLiteral("no-weight");
  }
  return {};
}

QString why(PassedOver::Why why) {
  switch (why) {
    case PassedOver::Why::PastDate:
      return QStringLiteral("past-date");
    case PassedOver::Why::TooShort:
      return QStringLiteral("too-short");
    case PassedOver::Why::NoDate:
      return QStringLiteral("no-date");
    case PassedOver::Why::FrozenUnknown:
      return QStringLiteral("frozen-unknown");
    case PassedOver::Why::NoTimeToThaw:
      return QStringLiteral("no-time-to-thaw");
  }
  return {};
}

// The objects of one plan.
class PlanJson {
 public:
  PlanJson(const WorkRun& run, const plan::DayPlan& plan, const std::vector<PlannedBatch>& batches)
      : run_(run), plan_(plan), batches_(batches) {}

  QJsonObject whole() const {
    return object()
        .put("at", time(run_.now))
        .put("orders", array(plan_.orders))
        .put("makings", array(batches_))
        .put("takes", array(plan_.takes))
        .put("buys", array(plan_.buys))
        .put("unmet", array(plan_.unmet))
        .put("passed_over", array(plan_.passed_over))
        .json();
  }

 private:
  JsonObject object() const { return JsonObject(run_.book.kitchen.units); }
  QString time(const QDateTime& at) const { return at.toTimeZone(run_.book.kitchen.zone).toString(Qt::ISODate); }

  template <class Row>
  QJsonValue array(const std::vector<Row>& rows) const {
    QJsonArray out;
    for (const Row& row : rows) out.append(json(row));
    return out;
  }

  QJsonObject json(const plan::Order& order) const {
    JsonObject out = object();
    out.put("site", order.site)
        .put("order", order.number)
        .put("product", order.product)
        .put("quantity", order.quantity)
        .put("due", time(order.due))
        .put("file", order.place.file)
        .put("line", QJsonValue(order.place.line));
    if (order.life) out.put("life", book::text(*order.life));
    return out.json();
  }

  QJsonObject json(const For& what) const {
    JsonObject out = object();
    out.put("quantity", what.quantity);
    const auto index = std::optional(static_cast<std::int64_t>(what.index));
    if (what.kind == For::Kind::Level) return out.put("level", QJsonValue(true)).json();
    return out.put(what.kind == For::Kind::Order ? "order" : "making", index).json();
  }

  QJsonObject json(const PlannedBatch& batch) const {
    const plan::PlannedMaking& making = *batch.making;
    return object()
        .put("number", QJsonValue(batch.number))
        .put("product", making.product->id)
        .put("lot", batch.ahead.lot)
        .put("makings", std::optional(making.makings))
        .put("output", making.output)
        .put("put_up", batch.put_up)
        .put("wanted_by", array(making.wanted_by))
        .put("earliest", time(making.earliest))
        .put("latest", time(making.latest))
        .put("start", time(making.start))
        .put("any_time_before", QJsonValue(making.any_time_before))
        .put("seconds", QJsonValue(making.seconds))
        .put("time_stated", QJsonValue(making.time_stated))
        .put("clean_down", QJsonValue(making.clean_down))
        .json();
  }

  JsonObject lot_json(size_t lot) const {
    const plan::OnHand& there = plan_.on_hand[lot];
    JsonObject out = object();
    out.put("item", there.item).put("lot", there.lot).put("container", there.container).put("place", there.where);
    return out;
  }

  QJsonObject json(const plan::Take& take) const {
    JsonObject out = lot_json(take.lot);
    out.put("quantity", take.quantity).put("for", QJsonValue(json(take.what)));
    if (take.thaw_by) out.put("thaw_by", time(*take.thaw_by));
    return out.json();
  }

  QJsonObject json(const plan::Buy& buy) const {
    JsonObject out = object();
    out.put("item", buy.ingredient->id).put("need", buy.need).put("buy", buy.buy).put("by", time(buy.by));
    if (buy.units) out.put("units", buy.units);
    return out.json();
  }

  QJsonObject json(const Unmet& unmet) const {
    JsonObject out = object();
    out.put("product", unmet.product)
        .put("quantity", unmet.quantity)
        .put("why", why(unmet.why))
        .put("seconds", QJsonValue(unmet.seconds))
        .put("item", unmet.item)
        .put("problems", QJsonValue(command::json(unmet.errors)));
    if (unmet.order) out.put("order", std::optional(static_cast<std::int64_t>(*unmet.order)));
    return out.json();
  }

  QJsonObject json(const PassedOver& passed) const {
    return lot_json(passed.lot).put("quantity", plan_.on_hand[passed.lot].quantity).put("why", why(passed.why)).json();
  }

  const WorkRun& run_;
  const plan::DayPlan& plan_;
  const std::vector<PlannedBatch>& batches_;
};

}  // namespace

QJsonObject json_of(const WorkRun& run, const plan::DayPlan& plan, const std::vector<PlannedBatch>& batches) {
  return PlanJson(run, plan, batches).whole();
}

}  // namespace lardiner::command
