// SPDX-License-Identifier: MIT
#include <algorithm>
#include <map>
#include <set>

#include "solve/faults.h"
#include "solve/plain_metal.h"
#include "solve/supply.h"

namespace loomfolio {
namespace {

/// Neither earth nor the battery's live pole, joined by nothing that opens: there a live wire would burn, or change nothing.
std::vector<bool> find_wires_that_may_come_live(const Build& build) {
  PlainMetal metal = join_plain_metal(build);
  const auto root_of_pole = [&](InsideRef source, std::size_t node) {
    const Part& part = build.part(source.part);
    const Inside& inside = part.insides[static_cast<std::size_t>(source.inside)];
    return metal.islands.root(metal.point(part, source.part.at(), inside.nodes[node]));
  };
  std::vector<bool> may(build.wires.size());
  const SupplyPoles poles = find_supply_poles(build);
  if (!poles.live.part.is_set()) return may;
  const std::size_t live_node = build.electrics.is_positive_earth ? 1 : 0;
  const int live = root_of_pole(poles.live, live_node), earthed = root_of_pole(poles.earthed, 1 - live_node);
  for (std::size_t w = 0; w < may.size(); ++w) {
    const int root = metal.islands.root(build.wires[w].to.index);
    may[w] = root != live && root != earthed && root != metal.islands.root(metal.frame);
  }
  return may;
}

void add_wires(const Build& build, std::vector<Fault>& faults) {
  const std::vector<bool> may_come_live = find_wires_that_may_come_live(build);
  for (std::size_t i = 0; i < build.wires.size(); ++i) {
    Fault fault;
    fault.wire = WireId{static_cast<std::int32_t>(i)};
    faults.push_back(fault);
    fault.type = FaultType::bad_joint;
    for (const TerminalId end : {build.wires[i].from, build.wires[i].to}) {
      fault.end = end;
      faults.push_back(fault);
    }
    fault.type = FaultType::wire_to_earth;
    fault.end = {};
    faults.push_back(fault);
    fault.type = FaultType::wire_to_live;
    if (may_come_live[i]) faults.push_back(fault);
  }
}

void add_earths(const Build& build, std::vector<Fault>& faults) {
  for (std::size_t i = 0; i < build.earths.size(); ++i) {
    Fault fault;
    fault.type = FaultType::earth_loose;
    fault.earth = EarthId{static_cast<std::int32_t>(i)};
    faults.push_back(fault);
  }
  const auto wires_at = wires_at_terminals(build);
  for (const Part& part : build.parts) {
    const Kind& kind = build.kind_of(part);
    for (std::size_t t = 0; t < part.terminals.size() && t < kind.terminals.size(); ++t) {
      if (kind.terminals[t].form != TerminalForm::body || !wires_at[part.terminals[t].at()].empty()) continue;
      Fault fault;
      fault.type = FaultType::earth_loose;
      fault.end = part.terminals[t];
      faults.push_back(fault);
    }
  }
}

// A joint once, in whichever position it is made.
void add_switch(const Inside& inside, Fault fault, std::vector<Fault>& faults) {
  std::set<std::pair<int, int>> seen;
  for (const SwitchPosition& position : inside.positions)
    for (const auto& group : position.joined)
      for (std::size_t i = 1; i < group.size(); ++i) {
        if (!seen.insert(std::minmax(group[0], group[i])).second) continue;
        fault.first = group[0];
        fault.second = group[i];
        for (const FaultType type : {FaultType::switch_open, FaultType::switch_stuck}) {
          fault.type = type;
          faults.push_back(fault);
        }
      }
}

void add_inside(const Inside& inside, Fault fault, std::vector<Fault>& faults) {
  const auto add = [&](FaultType type) {
    fault.type = type;
    faults.push_back(fault);
  };
  switch (inside.type) {
    case InsideType::fuse: return add(FaultType::fuse_blown);
    case InsideType::contact: return add(FaultType::contact_open), add(FaultType::contact_stuck);
    case InsideType::switch_: return add_switch(inside, fault, faults);
    case InsideType::output: return add(FaultType::output_dead);
    case InsideType::charger: return add(FaultType::charger_dead);
    case InsideType::source: return add(FaultType::battery_flat);
    case InsideType::resistor:
      if (inside.is_secondary) return;
      return add(FaultType::element_dead);
    case InsideType::lamp:
    case InsideType::load:
    case InsideType::motor:
    case InsideType::coil: return add(FaultType::element_dead);
    case InsideType::diode: return add(FaultType::element_dead), add(FaultType::diode_reversed);
    case InsideType::link: return;
  }
}

enum class Trade : std::uint8_t { bulb, joint, earth, battery, switches, fuse, chafed, regulator, relay, winding, coil, starter_relay, crossed, other };

// Relative, from memory of workshop practice; `other` too.
double trade_weight(Trade trade) {
  switch (trade) {
    case Trade::bulb: return 25;
    case Trade::joint: return 20;
    case Trade::earth: return 12;
    case Trade::battery: return 12;
    case Trade::switches: return 10;
    case Trade::fuse: return 8;
    case Trade::chafed: return 6;
    case Trade::regulator: return 5;
    case Trade::relay: return 4;
    case Trade::winding: return 3;
    case Trade::coil: return 3;
    case Trade::starter_relay: return 2;
    case Trade::crossed: return 2;
    case Trade::other: return 3;
  }
  return 1;
}

Trade trade_of_dead(const Build& build, InsideRef ref) {
  const Part& part = build.part(ref.part);
  const Inside& inside = part.insides[static_cast<std::size_t>(ref.inside)];
  const std::string& group = build.kind_of(part).group;
  if (inside.type == InsideType::lamp) return Trade::bulb;
  if (inside.is_winding) return Trade::winding;
  if (inside.type == InsideType::coil) return group == "starting" ? Trade::starter_relay : Trade::relay;
  return group == "ignition" ? Trade::coil : Trade::other;
}

Trade trade_of(const Build& build, const Fault& fault) {
  switch (fault.type) {
    case FaultType::wire_open:
    case FaultType::bad_joint: return Trade::joint;
    case FaultType::wire_to_earth: return Trade::chafed;
    case FaultType::wire_to_live: return Trade::crossed;
    case FaultType::fuse_blown: return Trade::fuse;
    case FaultType::contact_open:
    case FaultType::contact_stuck:
      return build.kind_of(build.part(fault.inside.part)).group == "starting" ? Trade::starter_relay : Trade::relay;
    case FaultType::switch_open:
    case FaultType::switch_stuck: return Trade::switches;
    case FaultType::earth_loose: return Trade::earth;
    case FaultType::diode_reversed: return Trade::other;
    case FaultType::element_dead: return trade_of_dead(build, fault.inside);
    case FaultType::output_dead: return Trade::other;
    case FaultType::charger_dead: return Trade::regulator;
    case FaultType::battery_flat: return Trade::battery;
  }
  return Trade::other;
}

/// What a person plugs in, and that it is plugged in, is no fault: an empty socket is open by nature.
bool is_plugged_in(const Part& part, const Inside& inside) {
  const auto plug = std::find_if(part.insides.begin(), part.insides.end(), [](const Inside& i) {
    return i.type == InsideType::switch_ && i.id == "plug";
  });
  if (plug == part.insides.end()) return false;
  const auto is_shared = [&](const Inside::Node& a) {
    return a.terminal < 0 && std::any_of(plug->nodes.begin(), plug->nodes.end(), [&](const Inside::Node& b) {
      return b.terminal < 0 && b.inner == a.inner;
    });
  };
  return &inside == &*plug || std::any_of(inside.nodes.begin(), inside.nodes.end(), is_shared);
}

}  // namespace

std::vector<Fault> list_faults(const Build& build) {
  std::vector<Fault> faults;
  add_wires(build, faults);
  add_earths(build, faults);
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      Fault fault;
      fault.inside = {PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
      if (!is_plugged_in(build.parts[p], build.parts[p].insides[i]))
        add_inside(build.parts[p].insides[i], fault, faults);
    }
  weigh_faults(build, faults);
  return faults;
}

void weigh_faults(const Build& build, std::vector<Fault>& faults) {
  std::map<Trade, int> count;
  for (const Fault& fault : faults) ++count[trade_of(build, fault)];
  for (Fault& fault : faults) {
    const Trade trade = trade_of(build, fault);
    fault.weight = trade_weight(trade) / count[trade];
  }
}

}  // namespace loomfolio
