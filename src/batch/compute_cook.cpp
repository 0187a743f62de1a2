// The cook of a making: the minimum of what really went in, the readings, and the clocks that it ends.
#include <algorithm>

#include "batch/clock.h"
#include "batch/compute_product.h"
#include "batch/phrases.h"
#include "book/limit_text.h"
#include "reader/quote.h"

namespace lardiner::batch {

using problem::Code;
using reader::quoted;

namespace {

const book::CookMinimum* minimum_of(const Making& making, const Run& run, const std::vector<Used>& used) {
  const book::CookMinimum* most = nullptr;
  for (const Used& part : used) most = more_demanding(most, part.still);
  if (most && !making.product->food.isEmpty())
    most = more_demanding(most, run.book.rules.cook_for(making.product->food));
  return most;
}

std::optional<book::CookMinimum> own_minimum(const book::Product& product) {
  if (!product.cook_to) return std::nullopt;
  return book::CookMinimum{{}, {QStringLiteral("kitchen rule"), {}}, {*product.cook_to}, 0};
}

bool met_by(const CookReading& reading, const Cook& cook, const std::optional<book::CookMinimum>& own,
            const book::RuleSet& rules) {
  if (cook.before && !cooked_enough({reading}, *cook.before, rules)) return false;
  return !own || cooked_enough({reading}, *own, rules);
}

QString reading_text(const CookReading& reading) {
  QString text =
      batch::reading_text(reading.core) +
      (reading.seconds > 0 ? QStringLiteral(" for %1 s").arg(reading.seconds) : QStringLiteral(" for an instant"));
  if (reading.microwave) text += QStringLiteral(" in a microwave, stood %1 s").arg(reading.stood_seconds);
  return text;
}

// What had to be met: the product's own where it has one, which the book holds to be no lower.
QString wanted_text(const Cook& cook, const std::optional<book::CookMinimum>& own) {
  if (own) return QStringLiteral("%1 (cook_to of the book)").arg(book::text(own->any_of.front()));
  return QStringLiteral("%1 (%2, %3)")
      .arg(book::text(cook.before->any_of.front()), cook.before->food, cook.before->authority.text());
}

void refuse_cook(Making& making, const Cook& cook, const std::optional<book::CookMinimum>& own) {
  const std::vector<CookReading>& readings = making.batch.record.cooked;
  const QString wanted = wanted_text(cook, own);
  if (readings.empty()) {
    refuse(making, "missing.cook_reading",
           {Code::Missing,
            QStringLiteral("%1 is cooked here, but no cook reading is written").arg(quoted(making.batch.record.item)),
            {},
            QStringLiteral("write one that meets %1; without it the food counts as raw").arg(wanted)});
    return;
  }
  for (const CookReading& reading : readings)
    refuse(making, "missing.cook_too_low",
           {Code::Unsafe, QStringLiteral("the cook reading %1 does not meet %2").arg(reading_text(reading), wanted),
            reading.place, QStringLiteral("cook it on and write the reading that meets it, or hold the batch")});
}

// A cook of the making belongs to it. Without the making's end written, a day is as long as one is taken to last:
// common practice, no source.
constexpr qint64 kLongestMakingSeconds = 24 * 60 * 60;

QDateTime last_cook(const Record& record) {
  return record.made_to.value_or(record.made_at.addSecs(kLongestMakingSeconds));
}

void refuse_late(Making& making, const Run& run, const CookReading& reading) {
  const Record& record = making.batch.record;
  const QString said = record.made_to ? QStringLiteral("after the making ended at %2")
                                      : QStringLiteral("more than 24 h after the making began at %2");
  refuse(making, "missing.cook_reading",
         {Code::Unsafe,
          (QStringLiteral("cooked at %1, ") + said)
              .arg(instant_text(reading.at, run.zone()),
                   instant_text(record.made_to.value_or(record.made_at), run.zone())),
          reading.place,
          QStringLiteral("correct the time of one of the two, or write made_to, the end of the making; what is cooked "
                         "another day is a making of its own")});
}

// A raw input has to be cooked before its own end.
void check_raw_in_time(Making& making, const Run& run, const Used& part, const QDateTime& cooked) {
  for (const Cap& cap : part.caps) {
    const bool safety = cap.kind == book::EndKind::UseBy || !cap.shelf_stable;
    if (!safety || cap.end > cooked || cap.end <= making.batch.record.made_at) continue;
    refuse(making, "missing.past_its_date",
           {Code::Unsafe,
            QStringLiteral("%1 was cooked at %2, after its end, %3")
                .arg(quoted(part.item), instant_text(cooked, run.zone()),
                     day_text(local_day(cap.end.addMSecs(-1), run.zone()))),
            part.input->place, QStringLiteral("discard the batch, or correct the date if it was written wrongly")});
  }
}

bool same(const Cap& a, const Cap& b) {
  return a.item == b.item && a.lot == b.lot && a.why == b.why && a.kind == b.kind && a.end == b.end &&
         a.absolute == b.absolute && a.shelf_stable == b.shelf_stable && a.frozen_before == b.frozen_before;
}

void add(std::vector<Cap>& caps, const Cap& cap) {
  if (std::none_of(caps.begin(), caps.end(), [&](const Cap& other) { return same(other, cap); })) caps.push_back(cap);
}

void add(std::vector<Carried>& carried, const Carried& more) {
  const auto found =
      std::find_if(carried.begin(), carried.end(), [&](const Carried& other) { return same(other.cap, more.cap); });
  if (found == carried.end()) {
    carried.push_back(more);
  } else {
    found->ready = found->ready || more.ready;
  }
}

}  // namespace

const book::CookMinimum* more_demanding(const book::CookMinimum* a, const book::CookMinimum* b) {
  if (!a || !b) return a ? a : b;
  return a->demand < b->demand ? b : a;
}

Cook cook(Making& making, const Run& run, const std::vector<Used>& used) {
  Cook out;
  out.before = minimum_of(making, run, used);
  const std::optional<book::CookMinimum> own = own_minimum(*making.product);
  if (making.product->process != book::Process::Cook || (!out.before && !own)) return out;
  bool met = false;
  bool late = false;
  for (const CookReading& reading : making.batch.record.cooked) {
    if (reading.at > last_cook(making.batch.record)) {
      refuse_late(making, run, reading);
      late = true;
      continue;
    }
    if (!met_by(reading, out, own, run.book.rules)) continue;
    met = true;
    if (!out.met_at || reading.at < *out.met_at) out.met_at = reading.at;
  }
  if (!met && !late) refuse_cook(making, out, own);
  if (!out.before) out.met_at.reset();  // nothing was raw: no clock is ended
  return out;
}

std::vector<Cap> caps_of(Making& making, const Run& run, const std::vector<Used>& used, const Cook& cook) {
  std::vector<Cap> caps;
  for (const Used& part : used) {
    const bool ended = cook_ends_clock({part.raw(), part.rework}, cook.met_at.has_value()) && !part.holds_ready;
    if (ended) check_raw_in_time(making, run, part, *cook.met_at);
    if (!ended) {
      for (const Cap& cap : part.caps) {
        add(caps, cap);
        add(making.carried, {cap, !part.raw() || part.rework || part.holds_ready});
      }
    }
    for (const Carried& carried : part.deeper) {
      if (ended && !carried.ready) continue;
      if (ended || carried.cap.absolute) add(caps, carried.cap);
      add(making.carried, carried);
    }
  }
  return caps;
}

}  // namespace lardiner::batch
