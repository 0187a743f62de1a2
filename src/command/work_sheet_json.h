// A work sheet as JSON: what it says, part by part, without its layout.
#pragma once

#include <QJsonObject>

#include "facts/work_sheet.h"

namespace lardiner::command {

/// {"kind", "title", "head": […], "fields": […], "parts": [{"note"} or {"caption", "columns", "rows": [[…]]}], "foot":
/// […]}; the lines of a cell are joined by " · ".
QJsonObject json_of(const facts::WorkSheet& sheet);

}  // namespace lardiner::command
