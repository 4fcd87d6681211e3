// SPDX-License-Identifier: MIT
// A diode across a coil that conducts while the coil is fed: it shorts the supply. Its band belongs at the supply end.
#include "check/rules.h"

namespace loomfolio::rules {

namespace {

bool is_across_coil(const Facts& facts, InsideRef diode) {
  const auto net = [&](PathPoint p) { return facts.paths.net[static_cast<std::size_t>(p)]; };
  const std::vector<PathPoint> d = facts.paths.points(facts.build, diode);
  bool across = false;
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    if (inside.type != InsideType::coil || inside.nodes.size() < 2) return;
    const std::vector<PathPoint> c = facts.paths.points(facts.build, ref);
    const bool straight = net(c[0]) == net(d[0]) && net(c[1]) == net(d[1]);
    const bool turned = net(c[0]) == net(d[1]) && net(c[1]) == net(d[0]);
    across = across || straight || turned;
  });
  return across;
}

}  // namespace

void diode_reversed(const Facts& facts, Diagnostics& findings) {
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::diode || inside.nodes.size() < 2 || !is_across_coil(facts, ref)) return;
    for (const SettledSituation& settled : settled_situations(facts)) {
      const InsideState& state = settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
      if (state.amperes.number() < 0.01) continue;
      findings.push_back(make_diagnostic(DiagnosticId::diode_reversed, part.origin.table,
                                         "diode " + say_inside(facts.build, ref) + " lies across a coil and conducts " +
                                             say(state.amperes) + " in " + say_situation(*settled.situation),
                                         "turn it round: its cathode, at the band, to the supply end of the coil"));
      return;
    }
  });
}

}  // namespace loomfolio::rules
