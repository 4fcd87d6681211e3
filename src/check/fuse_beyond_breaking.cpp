// SPDX-License-Identifier: MIT
// A dead short right behind the fuse, cold wires and a rested battery, against the current that the fuse's family can
// break (1000 A for blades, ISO 8820-3; strips and glass from memory).
#include "check/guarded.h"
#include "check/rules.h"

namespace loomfolio::rules {

void fuse_beyond_breaking(const Facts& facts, Diagnostics& findings) {
  if (!facts.protection) return;
  for (const FuseStudy& fuse : facts.protection->fuses) {
    if (fuse.prospective <= fuse.family->breaking_capacity) continue;
    const Part& part = facts.build.part(fuse.fuse.part);
    const bool is_known = fuse.family->breaking_capacity.number() > 0;
    findings.push_back(make_diagnostic(DiagnosticId::fuse_beyond_breaking, part.origin.table,
                                       say_fuse(facts.build, fuse.fuse) + " may have to break " +
                                           say(fuse.prospective) + "; " +
                                           (is_known ? "its family breaks " + say(fuse.family->breaking_capacity)
                                                     : "no source says what its family breaks"),
                                       "put a fuse that breaks more between it and the battery, or give the breaking "
                                       "capacity of its data sheet in a [[fuse_curve]]"));
  }
}

}  // namespace loomfolio::rules
