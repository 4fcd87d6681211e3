// SPDX-License-Identifier: MIT
// A live wire that nothing protects. 33 CFR 183.455(a), a boat's rule, borrowed: every live conductor has a fuse;
// starter cables and generators that limit themselves are the exceptions. The way from the battery to its first fuse is
// the matter of first_fuse_far.
#include <algorithm>

#include "check/guarded.h"
#include "check/rules.h"

namespace loomfolio::rules {

namespace {

bool leads_to_fuse(const ProtectionStudy& study, WireId wire) {
  return std::any_of(study.leads.begin(), study.leads.end(), [&](const UnfusedLead& lead) {
    return lead.fuse.part.is_set() && std::find(lead.wires.begin(), lead.wires.end(), wire) != lead.wires.end();
  });
}

}  // namespace

void wire_unfused(const Facts& facts, Diagnostics& findings) {
  if (!facts.protection) return;
  for (std::size_t w = 0; w < facts.protection->wires.size(); ++w) {
    const WireId id{static_cast<std::int32_t>(w)};
    const WireProtection& wire = facts.protection->wires[w];
    if (wire.verdict != WireVerdict::unfused || leads_to_fuse(*facts.protection, id)) continue;
    std::string seen = say_wire(facts.build, id) + " is protected by nothing: a dead short at " +
                       say_terminal(facts.build, wire.far_end) + " passes " + say(wire.prospective) +
                       " and lasts; it " + say_carries(facts, id);
    if (wire.fuse.part.is_set())
      seen = say_wire(facts.build, id) + " is fed twice: when " + say_fuse(facts.build, wire.fuse) +
             " opens, a dead short at " + say_terminal(facts.build, wire.far_end) + " is still fed from the other side";
    findings.push_back(make_diagnostic(DiagnosticId::wire_unfused, facts.build.wire(id).origin.table, std::move(seen),
                                       "put a fuse where the wire leaves its supply"));
  }
}

}  // namespace loomfolio::rules
