// SPDX-License-Identifier: MIT
// Cold filaments and standing motors: the surge's energy against the least that melts the fuse. A maker's data sheet
// asks for 0.3 of it where a fuse shall last 100 000 switchings, more than a machine sees; and the share is counted
// with the quickest fuse of its family and slowly warming filaments, both from memory and both on the safe side. So the
// rule speaks where the fuse may blow the first time: above the whole.
#include "base/text.h"
#include "check/guarded.h"
#include "check/rules.h"

namespace loomfolio::rules {

constexpr double blowing_share = 1.0;

void fuse_blown_by_inrush(const Facts& facts, Diagnostics& findings) {
  if (!facts.protection) return;
  for (const FuseStudy& fuse : facts.protection->fuses) {
    if (fuse.inrush_share <= blowing_share || !fuse.inrush_situation.is_set()) continue;
    const Part& part = facts.build.part(fuse.fuse.part);
    findings.push_back(make_diagnostic(
        DiagnosticId::fuse_blown_by_inrush, rating_place(part, inside_of(facts.build, fuse.fuse)),
        "the surge when loads come on in " + say_situation(facts.build.situations[fuse.inrush_situation.at()]) +
            " is " + shortest(fuse.inrush_share, 1) + " times what melts " + say_fuse(facts.build, fuse.fuse) +
            " at its quickest",
        "fit a larger fuse if every wire behind it allows, or split the load"));
  }
}

}  // namespace loomfolio::rules
