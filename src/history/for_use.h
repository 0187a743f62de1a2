// A lot as whatever is printed or made of it has to take it: its fixed facts with what corrections said since.
#pragma once

#include "book/allergen.h"
#include "history/lot.h"

namespace lardiner::history {

/// With the corrected date, in its use-bys and in its questions; with what corrections added to its declarations;
/// refused where it is held or recalled. REQUIRES: it was made here.
batch::Fixed facts_for_use(const Lot& lot, const book::AllergenLaw& law);

/// Adds declared substances as events write them, "fish:cod". One that `law` no longer reads is declared all the same,
/// without what would lessen it.
void declare_besides(book::Declared& declared, const QStringList& substances, const book::AllergenLaw& law);

/// Whether it stands among them already, whole: without an exemption.
bool declares(const book::Declared& declared, const QString& substance);

/// "in a recall", "on hold"; empty: neither.
QString barred(const Lot& lot);

}  // namespace lardiner::history
