// The prep sheet of a batch: what is pulled, weighed and done, and which limits it must meet.
#pragma once

#include "facts/sheet_setting.h"
#include "facts/work_sheet.h"
#include "plan/prep.h"

namespace lardiner::facts {

/// REQUIRES: `prep` of the setting's book. Errors: a text that the book lacks in a language of the sheet.
problem::ExpectedAll<WorkSheet> prep_sheet(const SheetSetting& setting, const plan::Prep& prep, const Ahead& ahead);

}  // namespace lardiner::facts
