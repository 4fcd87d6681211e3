// SPDX-License-Identifier: MIT
// From functions to diagrams. Small functions join the one they share most parts with; a diagram over the budget is cut
// where it hangs together least: first into circuits that meet only at fuses and earths, and only when there is but one
// circuit by place along the machine.
#include <algorithm>
#include <numeric>
#include <set>

#include "layout/split.h"
#include "layout/split_paths.h"

namespace loomfolio {
namespace {

using namespace splitting;

constexpr int few_wires = 8;

/// What stands on a diagram as a box of its own: parts, then splices.
using BoxSet = std::set<int>;

int box_of(const Build& build, TerminalId id) {
  const Terminal& terminal = build.terminal(id);
  switch (terminal.owner) {
    case OwnerType::part:
      return terminal.owner_index;
    case OwnerType::splice:
      return static_cast<int>(build.parts.size()) + terminal.owner_index;
    case OwnerType::earth:
      return -1;
  }
  return -1;
}

BoxSet boxes_of(const Build& build, const std::vector<WireId>& wires) {
  BoxSet boxes;
  for (WireId id : wires)
    for (TerminalId end : {build.wire(id).from, build.wire(id).to})
      if (const int box = box_of(build, end); box >= 0) boxes.insert(box);
  return boxes;
}

bool ends_in_earth(const Build& build, WireId id) {
  return box_of(build, build.wire(id).from) < 0 || box_of(build, build.wire(id).to) < 0;
}

int count_plain_wires(const Build& build, const std::vector<WireId>& wires) {
  return static_cast<int>(
      std::count_if(wires.begin(), wires.end(), [&](WireId id) { return !ends_in_earth(build, id); }));
}

bool fits(const Build& build, const std::vector<WireId>& wires, const SplitBudget& budget) {
  return static_cast<int>(boxes_of(build, wires).size()) <= budget.most_parts &&
         count_plain_wires(build, wires) <= budget.most_wires;
}

DiagramPlan joined(const DiagramPlan& a, const DiagramPlan& b) {
  DiagramPlan plan = a;
  plan.functions.insert(plan.functions.end(), b.functions.begin(), b.functions.end());
  std::sort(plan.functions.begin(), plan.functions.end());
  plan.wires.insert(plan.wires.end(), b.wires.begin(), b.wires.end());
  std::sort(plan.wires.begin(), plan.wires.end());
  return plan;
}

int count_shared(const Build& build, const DiagramPlan& a, const DiagramPlan& b) {
  const BoxSet in_a = boxes_of(build, a.wires), in_b = boxes_of(build, b.wires);
  return static_cast<int>(std::count_if(in_a.begin(), in_a.end(), [&](int box) { return in_b.count(box) != 0; }));
}

/// What charges the battery and what it feeds are one story.
bool are_kin(const DiagramPlan& a, const DiagramPlan& b) {
  const auto is_feeding = [](const DiagramPlan& plan) {
    return std::all_of(plan.functions.begin(), plan.functions.end(),
                       [](Function f) { return f == Function::supply || f == Function::charging; });
  };
  return is_feeding(a) && is_feeding(b);
}

/// Joins the smallest plan to its nearest kin, once; false when nothing is left to join.
bool join_smallest(const Build& build, std::vector<DiagramPlan>& plans, const SplitBudget& budget) {
  std::vector<std::size_t> order(plans.size());
  std::iota(order.begin(), order.end(), 0U);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return count_plain_wires(build, plans[a].wires) < count_plain_wires(build, plans[b].wires);
  });
  for (std::size_t small : order) {
    if (count_plain_wires(build, plans[small].wires) > few_wires) break;
    std::size_t best = small;
    int most = 0;
    for (std::size_t other = 0; other < plans.size(); ++other) {
      if (other == small || !fits(build, joined(plans[small], plans[other]).wires, budget)) continue;
      const int shared =
          count_shared(build, plans[small], plans[other]) + (are_kin(plans[small], plans[other]) ? 100 : 0);
      if (shared > most) {
        most = shared;
        best = other;
      }
    }
    if (best == small) continue;
    plans[std::min(small, best)] = joined(plans[small], plans[best]);
    plans.erase(plans.begin() + static_cast<std::ptrdiff_t>(std::max(small, best)));
    return true;
  }
  return false;
}

/// Nodes from which wires and splices alone lead to earth.
std::vector<char> find_earthed(const Build& build, const Circuit& circuit) {
  std::vector<char> is_earthed(static_cast<std::size_t>(circuit.nodes), 0);
  std::vector<int> reached{circuit.earth};
  is_earthed[static_cast<std::size_t>(circuit.earth)] = 1;
  for (std::size_t n = 0; n < reached.size(); ++n)
    for (int c : circuit.at[static_cast<std::size_t>(reached[n])]) {
      const Conductor& conductor = circuit.conductors[static_cast<std::size_t>(c)];
      const int other = conductor.a == reached[n] ? conductor.b : conductor.a;
      if (conductor.wire < 0 || is_earthed[static_cast<std::size_t>(other)] != 0) continue;
      const bool is_terminal = other < static_cast<int>(build.terminals.size());
      // Wires go on from a splice; at a part's terminal the earthed net ends.
      const bool goes_on = is_terminal && build.terminals[static_cast<std::size_t>(other)].owner == OwnerType::splice;
      is_earthed[static_cast<std::size_t>(other)] = 1;
      if (goes_on) reached.push_back(other);
    }
  return is_earthed;
}

/// For each wire of the plan the circuit it is part of: what hangs together without fuses, supply and earth. -1: in
/// none.
std::vector<int> find_circuits(const Build& build, const DiagramPlan& plan) {
  const Circuit circuit = make_circuit(build);
  const std::vector<char> is_earthed = find_earthed(build, circuit);
  std::vector<int> group(static_cast<std::size_t>(circuit.nodes));
  std::iota(group.begin(), group.end(), 0);
  const auto join = [&](int a, int b) {
    const int ga = group[static_cast<std::size_t>(a)], gb = group[static_cast<std::size_t>(b)];
    std::replace(group.begin(), group.end(), std::max(ga, gb), std::min(ga, gb));
  };
  const auto is_common = [&](int n) { return n == circuit.supply || is_earthed[static_cast<std::size_t>(n)] != 0; };
  std::set<int> own;
  for (WireId id : plan.wires) own.insert(id.index);
  const BoxSet boxes = boxes_of(build, plan.wires);
  for (const Conductor& c : circuit.conductors) {
    const bool is_here = c.wire >= 0 ? own.count(c.wire) != 0 : boxes.count(c.part) != 0;
    if (is_here && !c.is_fuse && !is_common(c.a) && !is_common(c.b)) join(c.a, c.b);
  }
  std::vector<int> circuits;
  for (WireId id : plan.wires) {
    const int a = circuit.stands_for[build.wire(id).from.at()], b = circuit.stands_for[build.wire(id).to.at()];
    circuits.push_back(!is_common(a)   ? group[static_cast<std::size_t>(a)]
                       : !is_common(b) ? group[static_cast<std::size_t>(b)]
                                       : -1);
  }
  return circuits;
}

/// Circuits in two heaps of about equal wires; empty when there is only one circuit.
std::vector<int> heap_circuits(const std::vector<int>& circuits) {
  std::vector<std::pair<int, int>> sizes;  // wires, circuit
  for (int circuit : std::set<int>(circuits.begin(), circuits.end()))
    if (circuit >= 0)
      sizes.emplace_back(static_cast<int>(std::count(circuits.begin(), circuits.end(), circuit)), circuit);
  if (sizes.size() < 2) return {};
  std::stable_sort(sizes.begin(), sizes.end(), [](auto& a, auto& b) { return a.first > b.first; });
  int filled[2] = {0, 0};
  std::set<int> second;
  for (const auto& [wires, circuit] : sizes) {
    const int heap = filled[1] < filled[0] ? 1 : 0;
    filled[heap] += wires;
    if (heap == 1) second.insert(circuit);
  }
  if (filled[1] * 4 < filled[0]) return {};
  std::vector<int> heaps;
  for (int circuit : circuits) heaps.push_back(circuit < 0 ? -1 : second.count(circuit) != 0 ? 1 : 0);
  return heaps;
}

/// By place along the machine: the front half of the wires, and the rest.
std::vector<int> heap_places(const Build& build, const DiagramPlan& plan) {
  std::vector<std::size_t> order(plan.wires.size());
  std::iota(order.begin(), order.end(), 0U);
  const auto place = [&](std::size_t i) {
    const Wire& wire = build.wire(plan.wires[i]);
    return build.zone(zone_of(build, wire.from)).place.number() + build.zone(zone_of(build, wire.to)).place.number();
  };
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return place(a) < place(b); });
  std::vector<int> heaps(plan.wires.size(), 0);
  for (std::size_t n = order.size() / 2; n < order.size(); ++n) heaps[order[n]] = 1;
  return heaps;
}

/// Wires in no circuit go where most of their neighbours are.
void settle_common(const Build& build, const DiagramPlan& plan, std::vector<int>& heaps) {
  for (std::size_t i = 0; i < heaps.size(); ++i) {
    if (heaps[i] >= 0) continue;
    int votes[2] = {0, 0};
    const Wire& wire = build.wire(plan.wires[i]);
    for (std::size_t j = 0; j < heaps.size(); ++j) {
      const Wire& other = build.wire(plan.wires[j]);
      const bool meets =
          other.from == wire.from || other.from == wire.to || other.to == wire.from || other.to == wire.to;
      if (meets && heaps[j] >= 0) ++votes[heaps[j]];
    }
    heaps[i] = votes[1] > votes[0] ? 1 : 0;
  }
}

void number_alike(std::vector<DiagramPlan>& plans) {
  for (DiagramPlan& plan : plans) {
    plan.number = 1;
    plan.of = static_cast<int>(std::count_if(
        plans.begin(), plans.end(), [&](const DiagramPlan& other) { return other.functions == plan.functions; }));
    for (const DiagramPlan& other : plans) {
      if (&other == &plan) break;
      if (other.functions == plan.functions) ++plan.number;
    }
  }
}

}  // namespace

std::vector<DiagramPlan> halve(const Build& build, const DiagramPlan& plan) {
  if (plan.wires.size() < 2) return {plan};
  // Several functions on one sheet part company first.
  std::vector<int> heaps;
  if (plan.functions.size() > 1) {
    const std::vector<Function> functions = find_functions(build);
    for (WireId id : plan.wires) {
      const auto at =
          std::find(plan.functions.begin(), plan.functions.end(), functions[id.at()]) - plan.functions.begin();
      heaps.push_back(at < static_cast<std::ptrdiff_t>(plan.functions.size() + 1) / 2 ? 0 : 1);
    }
  } else {
    heaps = heap_circuits(find_circuits(build, plan));
    if (heaps.empty()) heaps = heap_places(build, plan);
    settle_common(build, plan, heaps);
  }
  std::vector<DiagramPlan> halves(2, DiagramPlan{plan.functions, {}, 1, 1});
  if (plan.functions.size() > 1) {
    const auto middle = plan.functions.begin() + static_cast<std::ptrdiff_t>(plan.functions.size() + 1) / 2;
    halves[0].functions.assign(plan.functions.begin(), middle);
    halves[1].functions.assign(middle, plan.functions.end());
  }
  for (std::size_t i = 0; i < heaps.size(); ++i)
    halves[static_cast<std::size_t>(heaps[i])].wires.push_back(plan.wires[i]);
  if (halves[0].wires.empty() || halves[1].wires.empty()) return {plan};
  number_alike(halves);
  return halves;
}

std::vector<DiagramPlan> split_build(const Build& build, const SplitBudget& budget) {
  const std::vector<Function> functions = find_functions(build);
  DiagramPlan whole;
  std::vector<DiagramPlan> plans;
  for (int f = 0; f < function_count; ++f) {
    DiagramPlan plan;
    plan.functions = {static_cast<Function>(f)};
    for (std::size_t w = 0; w < functions.size(); ++w)
      if (functions[w] == static_cast<Function>(f)) plan.wires.push_back(WireId{static_cast<std::int32_t>(w)});
    if (plan.wires.empty()) continue;
    whole = plans.empty() ? plan : joined(whole, plan);
    plans.push_back(std::move(plan));
  }
  if (plans.empty()) return {};
  if (fits(build, whole.wires, budget)) return {whole};
  while (join_smallest(build, plans, budget)) {}
  for (std::size_t i = 0; i < plans.size();) {
    const std::vector<DiagramPlan> halves =
        fits(build, plans[i].wires, budget) ? std::vector<DiagramPlan>{} : halve(build, plans[i]);
    if (halves.size() < 2) {
      ++i;
      continue;
    }
    plans[i] = halves[0];
    plans.insert(plans.begin() + static_cast<std::ptrdiff_t>(i) + 1, halves[1]);
  }
  number_alike(plans);
  return plans;
}

}  // namespace loomfolio
