// The address in a label's code: GTIN, lot, serial, and the date that the label shows.
#include "facts/label_facts.h"
#include "gs1/dates.h"
#include "gs1/digital_link.h"

namespace lardiner::facts {

namespace {

// The production date is added only while the code stays at version 5-M, 84 bytes: ISO/IEC 18004, table 7.
constexpr qsizetype kMostBytesWithMadeDate = 84;
constexpr qsizetype kMadeDate = 10;  // "&11=261125"

using Attributes = std::vector<std::pair<QString, QString>>;

Attributes date_attributes(const batch::UseBy& use_by, const QTimeZone& zone) {
  using Form = batch::UseBy::Form;
  const QDateTime end = use_by.end.toTimeZone(zone);
  switch (use_by.form) {
    case Form::Frozen: {
      Attributes out{{QStringLiteral("7006"), gs1::yymmdd(*use_by.frozen_on)}};
      if (use_by.frozen_best_before) out.push_back({QStringLiteral("15"), gs1::yymmdd(*use_by.frozen_best_before)});
      return out;
    }
    case Form::Date:
      return {{use_by.kind == book::EndKind::UseBy ? QStringLiteral("17") : QStringLiteral("15"),
               gs1::yymmdd(use_by.date)}};
    case Form::Instant:
      if (use_by.kind == book::EndKind::BestBefore) return {{QStringLiteral("15"), gs1::yymmdd(end.date())}};
      return {{QStringLiteral("7003"), gs1::yymmddhhmm(gs1::wall_time(end))}};
    case Form::None:
      return {};
  }
  return {};
}

}  // namespace

problem::Expected<QByteArray> code_uri(const book::Kitchen& kitchen, const batch::Batch& batch,
                                       const batch::Container& container) {
  gs1::Link link{batch.gtin, batch.lot, container.serial, {}, kitchen.code_address, {}};
  if (batch.refused.empty() && !batch.use_bys.empty())
    link.attributes = date_attributes(batch.use_bys[static_cast<size_t>(container.use_by)], kitchen.zone);
  const problem::Expected<QString> shorter = gs1::digital_link(link);
  if (!shorter) return tl::unexpected(shorter.error());
  if (link.attributes.empty()) return shorter->toLatin1();  // a HOLD label's code holds no date at all

  if (shorter->size() + kMadeDate > kMostBytesWithMadeDate) return shorter->toLatin1();
  const QDate made = batch.record.made_at.toTimeZone(kitchen.zone).date();
  link.attributes.push_back({QStringLiteral("11"), gs1::yymmdd(made)});
  const problem::Expected<QString> longer = gs1::digital_link(link);
  return (longer ? *longer : *shorter).toLatin1();
}

}  // namespace lardiner::facts
