// SPDX-License-Identifier: MIT
// A generator that fills an empty battery sends more through the fuses on its way than any situation with a charged one does. The figure
// is on the safe side: the battery takes it over its own resistance alone, and a worn one takes less. So the rule speaks where the fuse
// is sure to open (135 % of a blade's rating); the fuse chart prints the figure in any case.
#include "base/text.h"
#include "check/guarded.h"
#include "check/rules.h"

namespace loomfolio::rules {

void fuse_blown_by_charging(const Facts& facts, Diagnostics& findings) {
  if (!facts.protection) return;
  for (const FuseStudy& fuse : facts.protection->fuses) {
    if (!fuse.into_empty_from.is_set() || fuse.into_empty < surely_opens_from(*fuse.family, fuse.rating)) continue;
    const Part& part = facts.build.part(fuse.fuse.part);
    if (!part.fuse_choice.empty()) continue;
    findings.push_back(make_diagnostic(
        DiagnosticId::fuse_blown_by_charging, rating_place(part, inside_of(facts.build, fuse.fuse)),
        say_fuse(facts.build, fuse.fuse) + " carries " + say(fuse.into_empty) + ", " +
            shortest(fuse.into_empty / fuse.rating * 100, 0) + " % of its rating, when the generator charges an empty battery in " +
            say_situation(facts.build.situations[fuse.into_empty_from.at()]),
        "fit a larger fuse if every wire behind it allows, and charge an empty battery off the machine"));
  }
}

}  // namespace loomfolio::rules
