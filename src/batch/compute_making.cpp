// What every record of a run needs: refusals, identity, and the time of use.
#include "batch/compute_making.h"

#include <algorithm>

#include "batch/clock.h"
#include "batch/lot.h"
#include "batch/phrases.h"
#include "gs1/check_digit.h"
#include "reader/quote.h"

namespace lardiner::batch {

using problem::Code;
using problem::Error;

namespace {

QString noun_of(const Record& record) {
  return (record.deed == Deed::Made ? QStringLiteral("product ") : QStringLiteral("ingredient ")) +
         reader::quoted(record.item);
}

void identify_item(Making& making, const Run& run) {
  const QString& number = making.product ? making.product->item_number : making.ingredient->item_number;
  const problem::Place& place = making.product ? making.product->place : making.ingredient->place;
  if (number.isEmpty()) {
    refuse(making, "missing.other",
           {Code::Missing,
            noun_of(making.batch.record) + QStringLiteral(" has no item_number, which the code of its label needs"),
            place, QStringLiteral("add item_number to the book")});
    return;
  }
  const problem::Expected<QString> gtin = gs1::gtin14(run.book.kitchen.gtin_prefix, number);
  if (gtin) {
    making.batch.gtin = *gtin;
  } else {
    Error error = gtin.error();
    error.place = place;
    refuse(making, "missing.other", error);
  }
}

void identify_lot(Making& making, const Run& run) {
  const Record& record = making.batch.record;
  const QString& code = making.product ? making.product->code : making.ingredient->code;
  if (code.isEmpty()) {
    refuse(making, "missing.other",
           {Code::Missing, noun_of(making.batch.record) + QStringLiteral(" has no code for its lots"),
            making.product ? making.product->place : making.ingredient->place, QStringLiteral("add code to the book")});
    return;
  }
  if (!record.number) {
    refuse(making, "missing.other",
           {Code::Missing,
            QStringLiteral("the record has no number, and there is no ledger to take the next number from"),
            {},
            QStringLiteral("write number, the running number of the batch")});
    return;
  }
  making.batch.number = *record.number;
  const QString made = lot(run.book.kitchen, lot_day(record, run.zone()), code, *record.number);
  if (!record.lot.isEmpty()) {
    const problem::Expected<QString> verified = verified_lot(record.lot, made);
    if (!verified) {
      Error error = verified.error();
      error.place = record.lot_place;
      refuse(making, "missing.other", error);
      return;
    }
  }
  making.batch.lot = made;
}

QString where(const problem::Place& place) {
  return place.line > 0 ? QStringLiteral("%1:%2").arg(place.file).arg(place.line) : place.file;
}

// What was recorded stands; the second is refused, and with it what names its lot in this run.
void refuse_made_before(Run& run) {
  for (Making& making : run.makings) {
    if (!run.lots_before.contains(making.batch.lot)) continue;
    refuse(making, "missing.other",
           {Code::Duplicate,
            QStringLiteral("lot %1 was made and recorded before").arg(making.batch.lot),
            {},
            QStringLiteral("give each batch its own number")});
  }
}

// Neither of two can be believed.
void refuse_doubled(Run& run) {
  QHash<QString, std::vector<size_t>> lots;
  for (size_t i = 0; i < run.makings.size(); ++i)
    if (!run.makings[i].batch.lot.isEmpty()) lots[run.makings[i].batch.lot].push_back(i);
  for (auto same = lots.cbegin(); same != lots.cend(); ++same) {
    run.by_lot.insert(same.key(), same->front());
    if (same->size() < 2) continue;
    for (const size_t i : *same) {
      const size_t other = i == same->front() ? (*same)[1] : same->front();
      refuse(run.makings[i], "missing.other",
             {Code::Duplicate,
              QStringLiteral("lot %1 is made twice in this run, here and at %2")
                  .arg(same.key(), where(run.makings[other].batch.record.place)),
              {},
              QStringLiteral("give each batch its own number")});
    }
  }
}

}  // namespace

QStringList missing_in_order(const std::set<QString>& missing) {
  static const char* const order[] = {"missing.allergens",    "missing.tcs",          "missing.shelf_life",
                                      "missing.cook_reading", "missing.cook_too_low", "missing.cook_temperature",
                                      "missing.cooling",      "missing.finishing",    "missing.past_its_date",
                                      "missing.input_date",   "missing.input",        "missing.other"};
  QStringList keys;
  for (const char* key : order)
    if (missing.count(QLatin1String(key)) > 0) keys += QString::fromLatin1(key);
  return keys;
}

void refuse(Making& making, const char* missing, Error error) {
  if (error.place == problem::Place{}) error.place = making.batch.record.place;
  making.batch.refused.push_back(std::move(error));
  making.missing.insert(QString::fromLatin1(missing));
}

QDateTime last_use(const Record& record, const Run& run) {
  if (record.made_to) return *record.made_to;
  if (record.time_known) return record.made_at;
  return std::min(end_of(local_day(record.made_at, run.zone()), run.zone()).addMSecs(-1),
                  std::max(run.now, record.made_at));
}

std::optional<Error> over_before(const Batch& batch, const std::vector<UseBy>& use_bys, const QDateTime& since,
                                 const QTimeZone& zone) {
  for (const UseBy& answer : use_bys) {
    const bool dated = answer.form == UseBy::Form::Date || answer.form == UseBy::Form::Instant;
    if (!dated || answer.end > since || answer.reasons.empty()) continue;
    return Error{Code::Unsafe,
                 QStringLiteral("%1 was over before %2: %3")
                     .arg(noun_of(batch.record), instant_text(since, zone), answer.reasons.front().rule),
                 {},
                 QStringLiteral("discard it, or correct the date if it was written wrongly")};
  }
  return std::nullopt;
}

void check_not_over(Making& making, const Run& run, const QDateTime& since) {
  if (!making.batch.refused.empty()) return;
  if (const std::optional<Error> error = over_before(making.batch, making.batch.use_bys, since, run.zone()))
    refuse(making, "missing.past_its_date", *error);
}

const Making* Run::source(const QString& lot) const {
  if (const auto found = by_lot.constFind(lot); found != by_lot.constEnd()) return &makings[*found];
  const auto found = earlier_by_lot.constFind(lot);
  return found == earlier_by_lot.constEnd() ? nullptr : &earlier[*found];
}

void identify(Run& run) {
  for (Making& making : run.makings) {
    identify_item(making, run);
    identify_lot(making, run);
  }
  refuse_doubled(run);
  refuse_made_before(run);
}

void add_containers(Making& making, const Run& run) {
  Record& record = making.batch.record;
  if (record.containers.empty())
    record.containers.push_back({1, {}, record.quantity.value_or(measure::Quantity{}), record.place});
  int of = 0;
  for (const ContainerGroup& group : record.containers) of += group.count;
  const QDate day = lot_day(record, run.zone());
  for (size_t group = 0; group < record.containers.size(); ++group)
    for (int i = 0; i < record.containers[group].count; ++i) {
      Container container;
      container.number = static_cast<int>(making.batch.containers.size()) + 1;
      container.of = of;
      container.group = static_cast<int>(group);
      if (!making.batch.lot.isEmpty())
        container.serial = serial(run.book.kitchen, day, making.batch.number, container.number);
      making.batch.containers.push_back(container);
    }
}

}  // namespace lardiner::batch
