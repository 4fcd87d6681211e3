// SPDX-License-Identifier: MIT
#include "solve/bundles.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace loomfolio {
namespace {

struct Stretch {
  std::vector<std::size_t> wires;
  double load_share = 0.6;
};

std::vector<int> ranks_along_machine(const Build& build) {
  std::vector<int> order(build.zones.size()), rank(build.zones.size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    return build.zones[static_cast<std::size_t>(a)].place < build.zones[static_cast<std::size_t>(b)].place;
  });
  for (std::size_t i = 0; i < order.size(); ++i) rank[static_cast<std::size_t>(order[i])] = static_cast<int>(i);
  return rank;
}

// The loads of a moment over what the bundle's wires could carry alone.
void find_share(const std::vector<Solution>& solutions, const std::vector<double>& alone, Stretch& stretch) {
  if (solutions.empty() || stretch.wires.empty()) return;
  double capacity = 0;
  for (const std::size_t w : stretch.wires) capacity += alone[w];
  stretch.load_share = 0;
  for (const Solution& solution : solutions) {
    double sum = 0;
    for (const std::size_t w : stretch.wires) sum += std::hypot(solution.wire_amperes[w].number(), solution.wire_alternating[w].number());
    stretch.load_share = std::max(stretch.load_share, std::min(1.0, sum / capacity));
  }
}

}  // namespace

std::vector<Bundle> find_bundles(const Build& build, const std::vector<Solution>& solutions) {
  const std::vector<int> rank = ranks_along_machine(build);
  const std::size_t zones = build.zones.size();
  std::vector<Stretch> within(zones), between(zones);  // between[i]: from rank i to i + 1
  std::vector<std::pair<int, int>> ends(build.wires.size(), {0, 0});
  std::vector<double> alone(build.wires.size());
  for (std::size_t w = 0; w < build.wires.size(); ++w) {
    const Wire& wire = build.wires[w];
    alone[w] = balance_heat(heat_balance_of(wire, build.electrics.ambient)).amperes.number();
    const ZoneId from = zone_of(build, wire.from), to = zone_of(build, wire.to);
    if (!from.is_set() || !to.is_set() || wire.insulation == Insulation::battery_cable) continue;
    ends[w] = std::minmax(rank[from.at()], rank[to.at()]);
    if (ends[w].first == ends[w].second) within[static_cast<std::size_t>(ends[w].first)].wires.push_back(w);
    for (int r = ends[w].first; r < ends[w].second; ++r) between[static_cast<std::size_t>(r)].wires.push_back(w);
  }
  for (auto* stretches : {&within, &between})
    for (Stretch& stretch : *stretches) find_share(solutions, alone, stretch);

  std::vector<Bundle> bundles(build.wires.size());
  for (std::size_t w = 0; w < build.wires.size(); ++w) {
    if (build.wires[w].insulation == Insulation::battery_cable || zones == 0) continue;
    const auto take = [&](const Stretch& stretch) {
      const Bundle bundle{static_cast<int>(std::max<std::size_t>(1, stretch.wires.size())), stretch.load_share};
      if (bundle_factor(bundle.wires, bundle.load_share) < bundle_factor(bundles[w].wires, bundles[w].load_share)) bundles[w] = bundle;
    };
    if (ends[w].first == ends[w].second) take(within[static_cast<std::size_t>(ends[w].first)]);
    for (int r = ends[w].first; r < ends[w].second; ++r) take(between[static_cast<std::size_t>(r)]);
  }
  return bundles;
}

}  // namespace loomfolio
