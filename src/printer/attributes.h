// The attributes of an IPP answer as values of ours.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "printer/ipp.h"
#include "printer/media_match.h"

namespace lardiner::printer {

/// All values of an attribute that are text of any kind; empty where it is not there.
QStringList texts_of(const Message& answer, const char* name);
/// Its first value; empty where it is not there.
QString text_of(const Message& answer, const char* name);
/// Its first value, integer or enum.
std::optional<int> number_of(const Message& answer, const char* name);
/// The upper end of a rangeOfInteger, or an integer.
std::optional<int> most_of(const Message& answer, const char* name);
bool truth_of(const Message& answer, const char* name, bool unless_said);
/// Of printer-resolution-supported: those that are the same both ways, in dots an inch. 80 dots a centimetre are 203.
std::vector<int> resolutions_of(const Message& answer, const char* name);
/// The x and y of media-size collections: sizes where both are integers, bounds where one is a range.
struct Sizes {
  std::vector<Size> fixed;
  std::vector<CustomSizes> ranges;
};
Sizes sizes_of(const Message& answer, const char* name);

/// Names what the answer shall hold.
void ask_for(const Message& request, const std::vector<const char*>& names);

}  // namespace lardiner::printer
