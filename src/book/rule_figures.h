// What reading and amending a rule set have in common: the order of demand, and the figures that have names of their
// own.
#pragma once

#include "book/rule_set.h"

namespace lardiner::book {

/// Copies the day and time limits in `figures` to the members named after them. REQUIRES: they are all there.
void set_named_figures(RuleSet& rules);

/// Derives `demand` from the figures: the hottest way, then its time, then the mildest way.
void set_demand(RuleSet& rules);

/// Adds an error for every class of food whose minimum does not cook a less demanding class: a mixture takes the most
/// demanding class only, so that one must cook them all.
void check_demand(const RuleSet& rules, const problem::Place& place, const QString& hint, problem::Errors& errors);

}  // namespace lardiner::book
