// SPDX-License-Identifier: MIT
#include "solve/alternating.h"

#include <algorithm>
#include <cmath>

#include "solve/charger_feed.h"
#include "solve/circuit_insides.h"

namespace loomfolio {
namespace {

const double three_phase = std::sqrt(2.0 / 3), single_phase = 1.11;

}  // namespace

std::vector<Amperes> find_alternating(const Build& build, const Circuit& circuit, const Situation& situation,
                                      const std::vector<std::vector<InsideState>>& insides) {
  std::vector<Amperes> amperes(build.wires.size());
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const Inside& charger = build.parts[p].insides[i];
      if (charger.type != InsideType::charger || charger.fed_by.empty() || !insides[p][i].is_on) continue;
      const double factor = charger.fed_by.size() >= 3 ? three_phase : single_phase;
      const Amperes each = insides[p][i].amperes * -factor;
      Islands metal = metal_without_windings({build, circuit, situation, {}, {}});
      for (const int index : charger.fed_by) {
        const int node = node_of(build, circuit, PartId{static_cast<std::int32_t>(p)}, charger.nodes[static_cast<std::size_t>(index)]);
        if (node < 0) continue;
        for (std::size_t w = 0; w < build.wires.size(); ++w)
          if (metal.are_joined(node, build.wires[w].from.index)) amperes[w] = std::max(amperes[w], each);
      }
    }
  return amperes;
}

}  // namespace loomfolio
