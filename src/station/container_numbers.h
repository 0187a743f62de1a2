// The numbers of containers as a form has them.
#pragma once

#include <QStringList>
#include <vector>

#include "problem/error.h"

namespace lardiner::station {

/// "1-4, 9" in one text or several, in their order; none is an empty list, which stands for all. Errors (Malformed):
/// what is no such list, for it would stand for all; more than 10,000.
problem::Expected<std::vector<int>> container_numbers(const QStringList& texts);

}  // namespace lardiner::station
