// SPDX-License-Identifier: MIT
// Two fuses that feed one net: the net gets the sum of both ratings, neither guards its wires, and with one of them out
// it is still live. Where a switch or a relay joins the two ways it is so in the situations that close it.
#include <algorithm>
#include <map>
#include <set>

#include "check/rules.h"
#include "solve/circuit.h"
#include "solve/islands.h"
#include "solve/supply.h"

namespace loomfolio::rules {

namespace {

using Pair = std::pair<InsideRef, InsideRef>;

struct FuseBridge {
  InsideRef fuse;
  int a = -1, b = -1;  // nodes
};

/// Wires, bolts, and what is made to join: no load, however few its ohms.
bool is_joint(const Build& build, const Branch& branch) {
  if (branch.law != Law::conductor || branch.origin == BranchOrigin::input) return false;
  if (branch.origin != BranchOrigin::inside) return true;
  const InsideType type = inside_of(build, branch.inside).type;
  return type == InsideType::link || type == InsideType::switch_ || type == InsideType::contact;
}

/// What metal joins in one settled situation, every fuse out. Without `open` as well, where it is set.
class FusedNets {
 public:
  FusedNets(const Circuit& circuit, const Build& build, const RelayState& relays, InsideRef open = {})
      : islands_(circuit.node_count) {
    for (const Branch& branch : circuit.branches) {
      if (!is_active(branch, relays, Flash::lit)) continue;
      const bool is_fuse = branch.origin == BranchOrigin::inside && branch.inside.part.is_set() &&
                           inside_of(build, branch.inside).type == InsideType::fuse;
      if (is_fuse) fuses_.push_back({branch.inside, branch.a, branch.b});
      const bool is_open = open.part.is_set() && branch.origin == BranchOrigin::inside && branch.inside == open;
      if (is_joint(build, branch) && !is_open) islands_.join(branch.a, branch.b);
    }
  }

  /// Fuses through which a net other than the supply's is reached, net by net.
  std::vector<std::vector<InsideRef>> feeders(int supply) {
    std::map<int, std::vector<InsideRef>> by_net;
    const int live = islands_.root(supply);
    for (const FuseBridge& fuse : fuses_)
      for (const auto& [near, far] : {std::pair(fuse.a, fuse.b), std::pair(fuse.b, fuse.a)}) {
        const int net = islands_.root(far);
        if (net != live && net != islands_.root(near) && is_fed(near, net, live)) by_net[net].push_back(fuse.fuse);
      }
    std::vector<std::vector<InsideRef>> all;
    for (auto& [net, fuses] : by_net) all.push_back(std::move(fuses));
    return all;
  }

 private:
  /// Whether the supply reaches a node by fuses without passing that net.
  bool is_fed(int node, int net, int live) {
    std::set<int> seen{net};
    std::vector<int> open{islands_.root(node)};
    while (!open.empty()) {
      const int here = open.back();
      open.pop_back();
      if (here == live) return true;
      if (!seen.insert(here).second) continue;
      for (const FuseBridge& fuse : fuses_)
        for (const auto& [near, far] : {std::pair(fuse.a, fuse.b), std::pair(fuse.b, fuse.a)})
          if (islands_.root(near) == here) open.push_back(islands_.root(far));
    }
    return false;
  }

  Islands islands_;
  std::vector<FuseBridge> fuses_;
};

int live_node(const Build& build, const Circuit& circuit) {
  const InsideRef battery = find_supply_poles(build).live;
  if (!battery.part.is_set()) return -1;
  return node_of(build, circuit, battery.part, inside_of(build, battery).nodes[build.electrics.is_positive_earth ? 1 : 0]);
}

bool feed_one_net(FusedNets nets, int supply, const Pair& pair) {
  for (const auto& fuses : nets.feeders(supply))
    if (std::count(fuses.begin(), fuses.end(), pair.first) && std::count(fuses.begin(), fuses.end(), pair.second)) return true;
  return false;
}

/// The switch or contact without which the two part; unset: several close together.
InsideRef find_joint(const Circuit& circuit, const Facts& facts, const RelayState& relays, int supply, const Pair& pair) {
  InsideRef joint;
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    if (joint.part.is_set() || (inside.type != InsideType::switch_ && inside.type != InsideType::contact)) return;
    if (!feed_one_net(FusedNets(circuit, facts.build, relays, ref), supply, pair)) joint = ref;
  });
  return joint;
}

void report(const Facts& facts, const Pair& pair, const std::string& when, const std::string& hint, Diagnostics& findings) {
  findings.push_back(make_diagnostic(DiagnosticId::fuses_in_parallel, facts.build.part(pair.second.part).origin.table,
                                     "fuses " + say_inside(facts.build, pair.first) + " and " +
                                         say_inside(facts.build, pair.second) + " feed the same wires" + when,
                                     hint));
}

/// Joined whatever the switches do.
std::set<Pair> find_lasting(const Facts& facts) {
  std::set<Pair> found;
  std::vector<std::pair<InsideRef, int>> fed;  // fuse and the net behind it
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    if (inside.type != InsideType::fuse || inside.nodes.size() < 2) return;
    const int net = facts.paths.net[static_cast<std::size_t>(facts.paths.points(facts.build, ref)[1])];
    const auto other = std::find_if(fed.begin(), fed.end(), [&](const auto& f) { return f.second == net; });
    if (other != fed.end()) found.insert({other->first, ref});
    fed.emplace_back(ref, net);
  });
  return found;
}

}  // namespace

void fuses_in_parallel(const Facts& facts, Diagnostics& findings) {
  std::set<Pair> told = find_lasting(facts);
  for (const Pair& pair : told) report(facts, pair, "", "split the load between them, or use one fuse", findings);
  for (const SettledSituation& settled : settled_situations(facts)) {
    const Circuit circuit = make_circuit(facts.build, *settled.situation, usual_options(facts.build));
    const int supply = live_node(facts.build, circuit);
    if (supply < 0) return;
    const RelayState& relays = settled.solution->relays;
    for (const auto& fuses : FusedNets(circuit, facts.build, relays).feeders(supply))
      for (std::size_t i = 1; i < fuses.size(); ++i) {
        const Pair pair = std::minmax(fuses[0], fuses[i]);
        if (pair.first == pair.second || !told.insert(pair).second) continue;
        const InsideRef joint = find_joint(circuit, facts, relays, supply, pair);
        const std::string by = joint.part.is_set() ? ", joined by " + say_inside(facts.build, joint) : std::string();
        report(facts, pair, " in " + say_situation(*settled.situation) + by,
               "put a diode in each way, feed both from one fuse, or say on the machine that both must be out", findings);
      }
  }
}

}  // namespace loomfolio::rules
