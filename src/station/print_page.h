// How a print stands, in the words of a page.
#pragma once

#include "station/desk.h"
#include "station/pages.h"
#include "words/words.h"

namespace lardiner::station {

/// "page.print_stopped": the key of what is said in large letters.
const char* state_key(const PrintShown& print);

/// Whether somebody has to do something before it goes on or ends.
bool asks_somebody(const PrintShown& print);

/// How many came out of how many, as far as it is known: "12 / 46".
QString counted(const PrintShown& print);

/// What keeps it, each in the language where the pages have a word for it.
QStringList whys(const PrintShown& print, const words::Language& language);

}  // namespace lardiner::station
