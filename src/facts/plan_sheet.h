// The day's plan as a sheet: the order of work, the start windows, what is pulled and bought, and what cannot be met.
#pragma once

#include "facts/sheet_setting.h"
#include "facts/wording.h"
#include "facts/work_sheet.h"
#include "plan/day_plan.h"

namespace lardiner::facts {

/// `lots`: of each making, as on its own sheet; may be empty texts. REQUIRES: `plan` of the setting's book. Errors as
/// prep_sheet's.
problem::ExpectedAll<WorkSheet> plan_sheet(const SheetSetting& setting, const plan::DayPlan& plan,
                                           const QStringList& lots, const QDateTime& now);

/// Why, and by how much, in words; `item`: as the language calls the product at fault.
QString unmet_reason(const Wording& wording, const QString& item, const plan::Unmet& open);

/// The picture of the start windows alone.
problem::ExpectedAll<Spans> start_windows(const SheetSetting& setting, const plan::DayPlan& plan, const QDateTime& now);

}  // namespace lardiner::facts
