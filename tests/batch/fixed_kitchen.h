// Fixed facts of the test kitchen's records, and short ways to have something happen to them.
#pragma once

#include <QJsonDocument>
#include <random>

#include "batch/fixed.h"
#include "batch/fixed_json.h"
#include "compute_kitchen.h"

namespace lardiner::batch::day {

inline std::vector<Fixed> fix_records(const std::vector<Record>& records, const std::vector<Fixed>& earlier = {},
                                      const book::Book& book = kitchen(), const char* now = kNow) {
  Computing computing(book, records, earlier, at(now));
  std::vector<Fixed> all;
  while (std::optional<Fixed> fixed = computing.next_fixed()) all.push_back(std::move(*fixed));
  return all;
}

inline std::vector<Record> records_of(const QByteArray& lines, const book::Book& book = kitchen(), const char* now = kNow) {
  const Records records = read_json(lines, book, now);
  if (!records.errors.empty()) FAIL(problem::text(records.errors).toStdString());
  return records.records;
}

inline Fixed fix(const QByteArray& lines, const book::Book& book = kitchen(), const char* now = kNow) {
  return fix_records(records_of(lines, book, now), {}, book, now).back();
}

inline Event event(Happening what, const char* time, std::vector<int> containers = {}) {
  Event out;
  out.what = what;
  out.at = at(time);
  out.containers = std::move(containers);
  return out;
}

/// The bytes that a ledger keeps of it.
inline QByteArray bytes(const Fixed& fixed) {
  reader::JsonText text;
  write_json(text, fixed);
  return text.bytes();
}

inline QJsonObject to_json(const Fixed& fixed) { return QJsonDocument::fromJson(bytes(fixed)).object(); }

/// Any event of a container's life, at a whole hour of the days after 2026-11-01 09:00, often impossible.
inline Event random_event(std::mt19937& random, int containers) {
  const auto pick = [&](int least, int most) { return std::uniform_int_distribution<int>(least, most)(random); };
  static const Happening all[] = {Happening::Frozen,      Happening::Thawed,   Happening::Opened,  Happening::HotHeld,
                                  Happening::TimeControl, Happening::Finished, Happening::Reheated, Happening::Discarded};
  Event out;
  out.what = all[pick(0, 9) % 8];
  out.at = QDateTime(QDate(2026, 11, 1), QTime(9, 0), kZone).addSecs(pick(-3, 24 * 8) * 3600);
  const bool cold = pick(0, 3) > 0;
  if (out.what == Happening::TimeControl) out.temperature = measure::Temperature{cold ? 400 : 500, measure::Scale::Fahrenheit};
  if (out.what == Happening::HotHeld) out.temperature = measure::Temperature{cold ? 1400 : 1200, measure::Scale::Fahrenheit};
  for (int number = 1; number <= containers; ++number)
    if (pick(0, 1) == 0) out.containers.push_back(number);
  if (out.containers.empty()) out.containers.push_back(pick(1, containers));
  return out;
}

}  // namespace lardiner::batch::day
