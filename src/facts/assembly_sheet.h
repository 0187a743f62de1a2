// The assembly sheet of a batch: what goes into one unit and onto one tray, and what is checked.
#pragma once

#include "facts/sheet_setting.h"
#include "facts/work_sheet.h"
#include "plan/assembly.h"

namespace lardiner::facts {

/// `suffices`: what there is of each item, as plan::units_from says; empty: not asked. REQUIRES and errors as
/// prep_sheet's.
problem::ExpectedAll<WorkSheet> assembly_sheet(const SheetSetting& setting, const plan::Assembly& assembly,
                                               const std::vector<plan::Suffices>& suffices, const Ahead& ahead);

}  // namespace lardiner::facts
