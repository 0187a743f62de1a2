// Random days of batches of the test kitchen, through lots made of lots.
#pragma once

#include <random>

#include "compute_kitchen.h"

namespace lardiner::batch::day {

using Random = std::mt19937;

inline int pick(Random& random, int least, int most) { return std::uniform_int_distribution<int>(least, most)(random); }

inline QDateTime day_of_november(int day, int hour = 9) { return QDateTime(QDate(2026, 11, day), QTime(hour, 0), kZone); }

inline Input bought(const char* item, int last_day) {
  Input input;
  input.item = QString::fromLatin1(item);
  input.stated = StatedEnd{end_of(QDate(2026, 11, 1).addDays(last_day - 1), kZone), true, book::EndKind::UseBy};
  return input;
}

inline Record record_of(const char* product, int number, int day) {
  Record record;
  record.item = QString::fromLatin1(product);
  record.number = number;
  record.quantity = measure::quantity({2, 1}, measure::Unit::Kilogram);
  record.made_at = day_of_november(day);
  record.containers.push_back({4, QStringLiteral("tub"), measure::quantity({500, 1}, measure::Unit::Gram), {}});
  return record;
}

inline QString lot_of(const Record& record) { return compute(kitchen(), {record}, at(kNow)).front().lot; }

// Dips (ready to eat), pies laid of them (raw), and pies baked of those, some frozen in between, some with additions.
inline std::vector<Record> random_day(Random& random) {
  std::vector<Record> records;
  const auto add_extras = [&](Record& record) {
    static const char* const extras[] = {"sesame", "mustard", "celery", "flour", "salt"};
    for (int i = pick(random, 0, 2); i > 0; --i) {
      Input extra;
      extra.item = QString::fromLatin1(extras[pick(random, 0, 4)]);
      extra.agreed_by = QStringLiteral("MK");
      record.inputs.push_back(extra);
    }
  };
  const auto freeze = [&](Record& record, int day) {
    if (pick(random, 0, 2) > 0) return;
    Event frozen;
    frozen.at = day_of_november(day, 15);
    record.events.push_back(frozen);
  };
  const int dips = pick(random, 1, 3);
  for (int i = 0; i < dips; ++i) {
    Record dip = record_of("dip", i + 1, pick(random, 1, 2));
    dip.inputs.push_back(bought("mayonnaise", pick(random, 5, 30)));
    add_extras(dip);
    freeze(dip, 2);
    records.push_back(dip);
  }
  const int pies = pick(random, 1, 3);
  for (int i = 0; i < pies; ++i) {
    Record pie = record_of("fish-pie", i + 1, 3);
    pie.inputs.push_back(bought("cod", pick(random, 4, 10)));
    for (int n = pick(random, 1, 2); n > 0; --n) {
      Input dip;
      const Record& source = records[static_cast<size_t>(pick(random, 0, dips - 1))];
      dip.item = source.item;
      dip.lot = lot_of(source);
      pie.inputs.push_back(dip);
    }
    add_extras(pie);
    records.push_back(pie);
  }
  Record baked = record_of("baked-pie", 1, 4);
  Input pie;
  pie.item = QStringLiteral("fish-pie");
  pie.lot = lot_of(records.back());
  baked.inputs.push_back(pie);
  baked.cooked.push_back({day_of_november(4, 11), {1650, measure::Scale::Fahrenheit}, 20, false, 0, {}});
  records.push_back(baked);
  return records;
}

}  // namespace lardiner::batch::day
