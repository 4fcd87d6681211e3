// SPDX-License-Identifier: MIT
// Each auto wire starts at the thinnest size that both its terminals take. Then, as long as anything is wrong, the wire
// that is wrong goes one size up: first for its load and its fuse, which concern it alone; then for volts lost, which
// concern a whole loop, and for earths that stand above the battery's: there the wire goes up that saves most volts for
// its copper, found by asking the solved circuit what if (what_if.h). Sizes only grow, so it ends.
#include "solve/size_wires.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/text.h"
#include "solve/defaults.h"
#include "solve/drops.h"
#include "solve/meter.h"
#include "solve/protection.h"
#include "solve/what_if.h"

namespace loomfolio {
namespace {

constexpr double least_area = 0.5;  // mm2
constexpr int most_sizing_rounds = 40, most_drop_steps = 400;

struct AutoWire {
  WireId wire;
  std::size_t size = 0, most = 0;  // into sizes_on_sale
  SizeReason reason = SizeReason::least;
};

struct Sizing {
  Build build;
  const std::vector<ConductorSize>& sizes;
  std::vector<AutoWire> autos;
  SizingResult result;
};

void apply(Sizing& s, const AutoWire& a) {
  Wire& wire = s.build.wires[a.wire.at()];
  const ConductorSize& size = s.sizes[a.size];
  wire.area = size.area;
  wire.size_text = shortest(size.area.number(), 2) + " mm2";
  if (size.system == SizeSystem::metric) return;
  for (int gauge = 26; gauge >= -3; --gauge)
    if (std::abs(awg_area(gauge) / size.area - 1) < 1e-6) wire.size_text = awg_text(gauge);
}

bool is_auto(const Wire& wire) { return wire.is_auto_size || wire.area.number() <= 0; }

const KindTerminal* kind_terminal(const Build& build, TerminalId id) {
  const Terminal& terminal = build.terminal(id);
  if (terminal.owner != OwnerType::part) return nullptr;
  return &build.kind_of(build.parts[static_cast<std::size_t>(terminal.owner_index)])
              .terminals[static_cast<std::size_t>(terminal.kind_terminal)];
}

AutoWire start(const Sizing& s, WireId id) {
  double least = least_area, most = s.sizes.back().area.number();
  bool is_terminal = false;
  for (const TerminalId end : {s.build.wire(id).from, s.build.wire(id).to}) {
    const KindTerminal* terminal = kind_terminal(s.build, end);
    if (!terminal || !terminal->takes) continue;
    is_terminal = is_terminal || terminal->takes->least.number() > least;
    least = std::max(least, terminal->takes->least.number());
    most = std::min(most, terminal->takes->most.number());
  }
  AutoWire a{id, 0, 0, is_terminal ? SizeReason::terminal : SizeReason::least};
  // A gauge named for a size passes where that size is taken: 20 AWG (0.518) where 0.5 is, 18 AWG (0.823) where 0.85
  // is.
  while (a.size + 1 < s.sizes.size() && s.sizes[a.size].area.number() < least * 0.97) ++a.size;
  a.most = a.size;
  while (a.most + 1 < s.sizes.size() && s.sizes[a.most + 1].area.number() <= most * 1.06) ++a.most;
  return a;
}

bool is_unsafe(WireVerdict verdict) {
  return verdict == WireVerdict::fuse_too_large || verdict == WireVerdict::fuse_may_not_open ||
         verdict == WireVerdict::wire_hurt_first;
}

// One size up for each wire that its load or its fuse asks it of. True when any went up.
bool grow_for_current(Sizing& s) {
  const auto solutions = solve_all(s.build);
  const ProtectionStudy study = study_protection(s.build, solutions);
  const auto loads = find_wire_loads(s.build, solutions, study);
  bool grew = false;
  s.result.unmet_wires.clear();
  for (AutoWire& a : s.autos) {
    const bool is_hot = loads[a.wire.at()].worst > study.wires[a.wire.at()].ampacity &&
                        loads[a.wire.at()].verdict != WireVerdict::starter_cable;
    if (!is_hot && !is_unsafe(loads[a.wire.at()].verdict)) continue;
    const SizeReason reason = is_hot ? SizeReason::current : SizeReason::protection;
    if (a.size >= a.most) {
      s.result.unmet_wires.push_back({a.wire, reason});
      continue;
    }
    ++a.size;
    a.reason = reason;
    apply(s, a);
    grew = true;
  }
  return grew;
}

// Volts between two nodes of a circuit that should be more, or less, than they are; `b` -1 is the earthed pole.
struct Aim {
  int a = -1, b = -1;
  double sign = 1;  // 1: more is better; -1: less is
};

// Volts that the aim gains when the wire goes one size up.
double gain(WhatIf& what_if, const Build& build, const Circuit& circuit, const AutoWire& wire, const ConductorSize& next,
            const Aim& aim) {
  const int number = circuit.wire_branch[wire.wire.at()];
  const auto seen = [&] {
    return std::abs(what_if.probe_volts(aim.a) - (aim.b < 0 ? 0 : what_if.probe_volts(aim.b))) * aim.sign;
  };
  what_if.begin();
  const double before = seen();
  Branch thicker = circuit.branches[static_cast<std::size_t>(number)];
  const Wire& now = build.wire(wire.wire);
  const Ohms saved = (resistance_per_metre(size_of(now), build.electrics.ambient) -
                      resistance_per_metre(next, build.electrics.ambient)) *
                     length_of(now).number();
  thicker.ohms -= saved;
  what_if.change(number, thicker);
  return what_if.solve() ? seen() - before : 0;
}

// The wire that helps the aim most for its copper goes one size up; false when none helps.
bool grow_toward(Sizing& s, const Circuit& circuit, const Solution& solution, const Aim& aim, SizeReason reason) {
  NodeSolver solver(circuit);
  Settled settled;
  settled.relays = solution.relays;
  settled.nodes = solver.solve(solution.relays, Flash::lit, {});
  WhatIf what_if(circuit, settled, Flash::lit, {0, 0.001, WhatIfReach::probe});
  AutoWire* best = nullptr;
  double most = 1e-4;  // V per mm2 m: less is no help
  for (AutoWire& a : s.autos) {
    if (a.size >= a.most) continue;
    const ConductorSize& next = s.sizes[a.size + 1];
    const double copper = (next.area - s.sizes[a.size].area).number() * length_of(s.build.wire(a.wire)).number();
    const double worth = gain(what_if, s.build, circuit, a, next, aim) / std::max(copper, 0.01);
    if (worth > most) best = &a, most = worth;
  }
  if (!best) return false;
  ++best->size;
  best->reason = reason;
  apply(s, *best);
  return true;
}

bool grow_for_drop(Sizing& s, const LoopDrop& drop, const Solution& solution) {
  const Circuit circuit = make_circuit(s.build, drop.situation, usual_options(s.build));
  const int element = circuit.inside_branch[drop.element.part.at()][static_cast<std::size_t>(drop.element.inside)];
  if (element < 0) return false;
  const Branch& branch = circuit.branches[static_cast<std::size_t>(element)];
  return grow_toward(s, circuit, solution, {branch.a, branch.b, 1}, SizeReason::drop);
}

bool grow_for_lift(Sizing& s, const EarthLift& lift, const Solution& solution) {
  const Circuit circuit = make_circuit(s.build, lift.situation, usual_options(s.build));
  return grow_toward(s, circuit, solution, {lift.terminal.index, -1, -1}, SizeReason::earth);
}

double excess_of(const LoopDrop& drop) { return (drop.total - drop.limit).number(); }
double excess_of(const EarthLift& lift) { return (lift.volts - most_earth_lift).number(); }
InsideRef place_of(const LoopDrop& drop) { return drop.element; }
PartId place_of(const EarthLift& lift) { return lift.part; }

// Grows wires for the worst of what `find` finds wrong until nothing is, or nothing helps: that goes to `unmet`. True
// when a wire went up.
template <typename Wrong>
bool grow_for_worst(Sizing& s, std::vector<Wrong> (*find)(const Build&, const std::vector<Solution>&),
                    bool (*grow)(Sizing&, const Wrong&, const Solution&), std::vector<Wrong>& unmet) {
  bool grew = false;
  unmet.clear();
  for (int step = 0; step < most_drop_steps; ++step) {
    const auto solutions = solve_all(s.build);
    const std::vector<Wrong> all = find(s.build, solutions);
    const Wrong* worst = nullptr;
    for (const Wrong& wrong : all) {
      const auto is_same = [&](const Wrong& other) { return place_of(other) == place_of(wrong); };
      if (std::any_of(unmet.begin(), unmet.end(), is_same)) continue;
      if (!worst || excess_of(wrong) > excess_of(*worst)) worst = &wrong;
    }
    if (!worst) return grew;
    if (grow(s, *worst, solutions[worst->situation.at()])) grew = true;
    else unmet.push_back(*worst);
  }
  return grew;
}

std::vector<LoopDrop> find_drops_over(const Build& build, const std::vector<Solution>& solutions) {
  std::vector<LoopDrop> drops = find_loop_drops(build, solutions);
  std::erase_if(drops, [](const LoopDrop& drop) { return drop.is_in_series || drop.total <= drop.limit; });
  return drops;
}

void grow_for_drops(Sizing& s) {
  std::vector<LoopDrop> unmet;
  grow_for_worst(s, find_drops_over, grow_for_drop, unmet);
  s.result.unmet_drops.clear();
  for (const LoopDrop& drop : unmet) s.result.unmet_drops.push_back({drop.element, drop.situation, drop.total, drop.limit});
}

// A loop may then lose more than it did, since what it feeds takes more.
bool grow_for_lifts(Sizing& s) { return grow_for_worst(s, find_earth_lifts, grow_for_lift, s.result.unmet_lifts); }

// The battery's earth carries what its live cable carries: of the auto wires on the earthed pole the thickest follows
// the live cable. True when it went up.
bool follow_live_cable(Sizing& s) {
  const TerminalId live = live_pole(s.build), earthed = earthed_pole(s.build);
  if (!live.is_set() || !earthed.is_set()) return false;
  const auto ends_at = [](const Wire& wire, TerminalId pole) { return wire.from == pole || wire.to == pole; };
  SquareMillimetres cable{0}, strap{0};
  for (const Wire& wire : s.build.wires) {
    if (ends_at(wire, live)) cable = std::max(cable, wire.area);
    if (ends_at(wire, earthed)) strap = std::max(strap, wire.area);
  }
  AutoWire* thickest = nullptr;
  for (AutoWire& a : s.autos) {
    const Wire& wire = s.build.wire(a.wire);
    const TerminalId other = wire.from == earthed ? wire.to : wire.from;
    if (!ends_at(wire, earthed) || s.build.terminal(other).owner != OwnerType::earth) continue;
    if (!thickest || a.size > thickest->size) thickest = &a;
  }
  if (!thickest || strap >= cable) return false;
  const std::size_t before = thickest->size;
  while (thickest->size < thickest->most && s.sizes[thickest->size].area < cable) ++thickest->size;
  if (thickest->size == before) return false;
  thickest->reason = SizeReason::strap;
  apply(s, *thickest);
  return true;
}

// All that may ask for thicker wires, until none does: what one of them makes thicker carries more, which another may not like.
void grow(Sizing& s) {
  for (int turn = 0; turn < most_sizing_rounds; ++turn) {
    for (int round = 0; round < most_sizing_rounds && grow_for_current(s); ++round) {}
    // Earths first: what they take helps the loops too, and the other way round a feed would be thicker than need be.
    for (int round = 0; round < most_sizing_rounds && (grow_for_lifts(s) || round == 0); ++round) grow_for_drops(s);
    if (!follow_live_cable(s)) return;
  }
}


std::vector<ConductorSize> metric_sizes() {
  std::vector<ConductorSize> sizes;
  for (const double area : {0.5, 0.75, 1.0, 1.5, 2.0, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 50.0})
    sizes.push_back({SquareMillimetres(area), SizeSystem::metric});
  return sizes;
}

std::vector<ConductorSize> gauge_sizes() {
  std::vector<ConductorSize> sizes;
  for (const int gauge : {20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1})
    sizes.push_back({awg_area(gauge), SizeSystem::awg});
  return sizes;
}

}  // namespace

const std::vector<ConductorSize>& sizes_on_sale(UnitSystem units) {
  static const std::vector<ConductorSize> metric = metric_sizes(), gauges = gauge_sizes();
  return units == UnitSystem::imperial ? gauges : metric;
}

namespace {

// Sizes once, from at least these areas on.
SizingResult size_from(Build build, const std::map<std::string, SquareMillimetres>& least) {
  const auto& sizes = sizes_on_sale(build.document.units);
  Sizing sizing{std::move(build), sizes, {}, {}};
  for (std::size_t w = 0; w < sizing.build.wires.size(); ++w) {
    if (!is_auto(sizing.build.wires[w])) continue;
    AutoWire one = start(sizing, WireId{static_cast<std::int32_t>(w)});
    const auto known = least.find(sizing.build.wires[w].id);
    while (known != least.end() && one.size + 1 < sizes.size() && sizes[one.size].area < known->second) ++one.size;
    one.most = std::max(one.most, one.size);
    sizing.autos.push_back(one);
    apply(sizing, one);
  }
  if (!sizing.autos.empty()) grow(sizing);
  for (const AutoWire& a : sizing.autos) {
    sizing.build.wires[a.wire.at()].is_auto_size = false;
    sizing.result.chosen.push_back({a.wire, a.reason});
  }
  sizing.result.build = std::move(sizing.build);
  return std::move(sizing.result);
}

}  // namespace

SizingResult size_wires(Build build) { return size_from(std::move(build), {}); }

// A wire that another hook-up made thicker carries more here, and may ask for more: until all agree.
void size_wires_of_all(std::vector<Build>& builds) {
  std::vector<std::vector<WireId>> autos;
  for (const Build& build : builds) {
    autos.emplace_back();
    for (std::size_t w = 0; w < build.wires.size(); ++w)
      if (is_auto(build.wires[w])) autos.back().push_back({static_cast<std::int32_t>(w)});
  }
  std::map<std::string, SquareMillimetres> thickest;  // by id
  bool has_grown = true;
  for (int turn = 0; turn < most_sizing_rounds && has_grown; ++turn) {
    has_grown = false;
    for (std::size_t b = 0; b < builds.size(); ++b) {
      for (const WireId id : autos[b]) builds[b].wires[id.at()].is_auto_size = true;
      builds[b] = size_from(std::move(builds[b]), thickest).build;
      for (const WireId id : autos[b]) {
        const Wire& wire = builds[b].wire(id);
        SquareMillimetres& area = thickest[wire.id];
        if (wire.area <= area) continue;
        area = wire.area;
        has_grown = has_grown || builds.size() > 1;
      }
    }
  }
}

}  // namespace loomfolio
