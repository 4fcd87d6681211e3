// SPDX-License-Identifier: MIT
// Two supplies on one net with nothing between: the fuller drives current into the emptier.
#include "check/rules.h"

namespace loomfolio::rules {

void sources_joined(const Facts& facts, Diagnostics& findings) {
  std::vector<std::pair<InsideRef, int>> sources;  // source and the net of its live pole
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::source || inside.nodes.size() < 2) return;
    const PathPoint pole = facts.paths.points(facts.build, ref)[facts.build.electrics.is_positive_earth ? 1 : 0];
    const int net = facts.paths.net[static_cast<std::size_t>(pole)];
    for (const auto& [other, other_net] : sources) {
      if (other_net != net) continue;
      findings.push_back(make_diagnostic(DiagnosticId::sources_joined, part.origin.table,
                                         "supplies " + say_inside(facts.build, other) + " and " +
                                             say_inside(facts.build, ref) +
                                             " are joined with no fuse, switch or diode between",
                                         "put a fuse at each, or keep them apart"));
      break;
    }
    sources.emplace_back(ref, net);
  });
}

}  // namespace loomfolio::rules
