// SPDX-License-Identifier: MIT
// Two fuses that feed one net: the net gets the sum of both ratings, and neither guards its wires.
#include "check/rules.h"

namespace loomfolio::rules {

void fuses_in_parallel(const Facts& facts, Diagnostics& findings) {
  std::vector<std::pair<InsideRef, int>> fed;  // fuse and the net behind it
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::fuse || inside.nodes.size() < 2) return;
    const int net = facts.paths.net[static_cast<std::size_t>(facts.paths.points(facts.build, ref)[1])];
    for (const auto& [other, other_net] : fed) {
      if (other_net != net) continue;
      findings.push_back(make_diagnostic(
          DiagnosticId::fuses_in_parallel, part.origin.table,
          "fuses " + say_inside(facts.build, other) + " and " + say_inside(facts.build, ref) + " feed the same wires",
          "split the load between them, or use one fuse"));
      break;
    }
    fed.emplace_back(ref, net);
  });
}

}  // namespace loomfolio::rules
