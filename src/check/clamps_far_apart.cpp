// SPDX-License-Identifier: MIT
// Zones are where the loom is held. Between two neighbours that wires pass, it hangs free: at most 24 in (610 mm), AC
// 43.13-1B paragraph 11-96.
#include <algorithm>

#include "check/rules.h"

namespace loomfolio::rules {

constexpr Metres farthest_clamp{0.610};

namespace {

bool passes(const Build& build, const Wire& wire, Metres from, Metres to) {
  const Metres a = build.zone(zone_of(build, wire.from)).place, b = build.zone(zone_of(build, wire.to)).place;
  return std::min(a, b) <= from && std::max(a, b) >= to;
}

}  // namespace

void clamps_far_apart(const Facts& facts, Diagnostics& findings) {
  std::vector<const Zone*> zones;
  for (const Zone& zone : facts.build.zones) zones.push_back(&zone);
  std::stable_sort(zones.begin(), zones.end(), [](const Zone* a, const Zone* b) { return a->place < b->place; });
  for (std::size_t z = 1; z < zones.size(); ++z) {
    const Metres from = zones[z - 1]->place, to = zones[z]->place;
    if (to - from <= farthest_clamp) continue;
    const auto& wires = facts.build.wires;
    if (std::none_of(wires.begin(), wires.end(), [&](const Wire& w) { return passes(facts.build, w, from, to); }))
      continue;
    findings.push_back(make_diagnostic(DiagnosticId::clamps_far_apart, zones[z]->origin.key("place"),
                                       "zone `" + zones[z]->id + "` is " + say(to - from) + " from zone `" +
                                           zones[z - 1]->id + "`, and nothing between says where the loom is held; " +
                                           say(farthest_clamp) + " is the most",
                                       "add a zone between the two where the loom is clamped"));
  }
}

}  // namespace loomfolio::rules
