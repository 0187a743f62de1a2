// The names of facts in templates and in errors.
#include "facts/fact_names.h"

#include <array>
#include <utility>

namespace lardiner::facts {

namespace {

constexpr auto kNames = std::to_array<std::pair<FactId, const char*>>({
    {FactId::Readiness, "readiness"},
    {FactId::Name, "name"},
    {FactId::Count, "count"},
    {FactId::DateCaption, "date-caption"},
    {FactId::Date, "date"},
    {FactId::Year, "year"},
    {FactId::Time, "time"},
    {FactId::DaysLeft, "days-left"},
    {FactId::FrozenLimits, "frozen-limits"},
    {FactId::WriteDates, "write-dates"},
    {FactId::Contains, "contains"},
    {FactId::MayContain, "may-contain"},
    {FactId::PreviouslyFrozen, "previously-frozen"},
    {FactId::TimeControl, "time-control"},
    {FactId::ReducedOxygen, "reduced-oxygen"},
    {FactId::Finishing, "finishing"},
    {FactId::HoldFinished, "hold-finished"},
    {FactId::KeepAt, "keep-at"},
    {FactId::Made, "made"},
    {FactId::Net, "net"},
    {FactId::ContainerOf, "container-of"},
    {FactId::UsedFor, "used-for"},
    {FactId::Site, "site"},
    {FactId::Ingredients, "ingredients"},
    {FactId::NetDeclared, "net-declared"},
    {FactId::Business, "business"},
    {FactId::SafeHandling, "safe-handling"},
    {FactId::RemoveLabel, "remove-label"},
    {FactId::Difference, "difference"},
    {FactId::SupplierLot, "supplier-lot"},
    {FactId::Lot, "lot"},
    {FactId::Serial, "serial"},
    {FactId::Hold, "hold"},
    {FactId::DoNotUse, "do-not-use"},
    {FactId::Missing, "missing"},
    {FactId::BlankMade, "blank-made"},
    {FactId::BlankDate, "blank-date"},
    {FactId::BlankBy, "blank-by"},
    {FactId::BlankFrozen, "blank-frozen"},
    {FactId::DateRule, "date-rule"},
    {FactId::Release, "release"},
    {FactId::Readings, "readings"},
    {FactId::BookDay, "book-day"},
});

}  // namespace

QString name(FactId id) {
  for (const auto& [known, word] : kNames)
    if (known == id) return QString::fromLatin1(word);
  return {};
}

std::optional<FactId> fact_named(const QString& name) {
  for (const auto& [id, word] : kNames)
    if (name == QLatin1String(word)) return id;
  return std::nullopt;
}

QStringList fact_names() {
  QStringList out;
  for (const auto& [id, word] : kNames) out << QString::fromLatin1(word);
  return out;
}

}  // namespace lardiner::facts
