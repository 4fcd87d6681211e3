// SPDX-License-Identifier: MIT
// A fuse that blew: is there a short behind it? Asked with the battery off, so relays rest, whatever the switches do;
// what hangs behind an open contact, or behind another fuse that blew, cannot be seen from the fuse. Cold bulbs in the way would read as a short: they
// come out.
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "solve/diagnose_probes.h"
#include "solve/islands.h"
#include "solve/newton.h"

namespace loomfolio {
namespace {

constexpr double metal_ohms = 0.5;      // a path of less is a short to a meter
constexpr double least_sound_ohms = 3;  // clear of the 1 ohm that a short may read through its leads
constexpr double open_above = 50000;    // ohms; a hand meter's beeper and its ohms range end before
constexpr std::size_t most_bulbs_out = 2;
constexpr double meter_volts = 0.5, meter_inner_ohms = 1000;  // of a hand meter, from memory

/// The network behind one fuse, battery off.
class DeadCircuit {
 public:
  DeadCircuit(const Build& build, const Situation& situation, InsideRef fuse, TerminalId at)
      : build_(build),
        at_(at),
        circuit_(make_circuit(build, situation, usual_options(build))),
        islands_(circuit_.node_count) {
    earth_ = circuit_.frame >= 0 ? circuit_.frame : circuit_.reference;
    std::erase_if(circuit_.branches, [&](const Branch& b) {
      return b.law == Law::source || b.law == Law::charger || (b.origin == BranchOrigin::inside && b.inside == fuse);
    });
    islands_ = metal_without({});
  }

  /// Bulbs between the fuse's side and earth.
  std::vector<InsideRef> bulbs_across() {
    std::vector<InsideRef> bulbs;
    for (const Branch& b : circuit_.branches) {
      if (b.law != Law::lamp) continue;
      const bool a_live = islands_.are_joined(b.a, at_.index), b_live = islands_.are_joined(b.b, at_.index);
      const bool a_earthed = islands_.are_joined(b.a, earth_), b_earthed = islands_.are_joined(b.b, earth_);
      if ((a_live && b_earthed) || (b_live && a_earthed)) bulbs.push_back(b.inside);
    }
    return bulbs;
  }

  Ohms sound_ohms(const std::vector<InsideRef>& taken_out) {
    Circuit circuit = circuit_;
    std::erase_if(circuit.branches, [&](const Branch& b) {
      return std::find(taken_out.begin(), taken_out.end(), b.inside) != taken_out.end();
    });
    Branch meter;
    meter.law = Law::source;
    meter.a = at_.index, meter.b = earth_;
    meter.volts = Volts(meter_volts);
    meter.ohms = meter.charge_ohms = Ohms(meter_inner_ohms);
    circuit.branches.push_back(meter);
    NodeSolver solver(circuit);
    const NodeVolts nodes = solver.solve(rest_state(circuit), Flash::dark, {});
    const double volts =
        nodes.volts[static_cast<std::size_t>(meter.a)] - nodes.volts[static_cast<std::size_t>(meter.b)];
    const double amperes = (meter_volts - volts) / meter_inner_ohms;
    const double ohms = amperes > 0 ? volts / amperes : std::numeric_limits<double>::infinity();
    return Ohms(ohms > open_above ? std::numeric_limits<double>::infinity() : ohms);
  }

  /// With these fuses open too, the fault joins the fuse's side to earth in metal.
  bool is_short(const Fault& fault, const std::vector<InsideRef>& open_fuses) {
    Islands with = metal_without(open_fuses);
    if (fault.type == FaultType::wire_to_earth) {
      with.join(build_.wire(fault.wire).to.index, earth_);
    } else if (fault.type == FaultType::contact_stuck || fault.type == FaultType::switch_stuck) {
      const Inside& inside = element_of(build_, fault.inside);
      const bool is_switch = fault.type == FaultType::switch_stuck;
      const auto node = [&](int index) {
        return node_of(build_, circuit_, fault.inside.part, inside.nodes[static_cast<std::size_t>(index)]);
      };
      const int a = node(is_switch ? fault.first : 0), b = node(is_switch ? fault.second : 1);
      if (a >= 0 && b >= 0) with.join(a, b);
    }
    return with.are_joined(at_.index, earth_);
  }

 private:
  /// What hangs together in metal.
  Islands metal_without(const std::vector<InsideRef>& open_fuses) const {
    Islands islands(circuit_.node_count);
    const RelayState rest = rest_state(circuit_);
    for (const Branch& b : circuit_.branches) {
      const bool is_open = b.origin == BranchOrigin::inside &&
                           std::find(open_fuses.begin(), open_fuses.end(), b.inside) != open_fuses.end();
      if (b.law == Law::conductor && b.ohms.number() < metal_ohms && !is_open && is_active(b, rest, Flash::dark))
        islands.join(b.a, b.b);
    }
    return islands;
  }

  const Build& build_;
  TerminalId at_;
  Circuit circuit_;
  Islands islands_;
  int earth_ = -1;
};

void add_short(ProbePlan& plan, InsideRef fuse, TerminalId at, Standing standing) {
  const Build& build = plan.study.build();
  Situation situation = build.situations[plan.situation()];
  situation.engine = EngineState::stopped;
  if (standing == Standing::all_at_rest) situation.settings.clear();
  DeadCircuit dead(build, situation, fuse, at);
  Probe probe;
  probe.type = ProbeType::short_to_earth;
  probe.situation = plan.symptom().situation;
  probe.at = at;
  probe.what = fuse;
  probe.standing = standing;
  probe.taken_out = dead.bulbs_across();
  if (probe.taken_out.size() > most_bulbs_out) return;
  probe.sound_ohms = dead.sound_ohms(probe.taken_out);
  if (probe.sound_ohms.number() < least_sound_ohms) return;
  probe.minutes = minutes::battery_off + static_cast<double>(probe.taken_out.size()) * minutes::for_ohms +
                  (standing == Standing::as_set ? minutes::to_set : 0);
  std::vector<int> column;
  for (const int f : plan.suspects)
    column.push_back(dead.is_short(plan.study.book().faults[static_cast<std::size_t>(f)], plan.here(f).blown) ? 0 : 1);
  ProbeOutcome shorted, free;
  free.is_open = free.is_sound = true;
  probe.outcomes = {shorted, free};
  add_probe(plan, std::move(probe), std::move(column));
}

}  // namespace

TerminalId dead_end(const FaultStudy& study, std::size_t fault, std::size_t s, InsideRef fuse) {
  const Part& part = study.build().part(fuse.part);
  TerminalId lower;
  double least = std::numeric_limits<double>::infinity();
  for (const Inside::Node& node : element_of(study.build(), fuse).nodes) {
    if (node.terminal < 0) continue;
    const TerminalId at = part.terminals[static_cast<std::size_t>(node.terminal)];
    double volts = study.solutions()[s].terminal_volts[at.at()].number();
    for (const Reading& reading : study.book().effect(fault, s).readings)
      if (reading.at == at) volts = reading.volts;
    if (std::isnan(volts)) volts = 0;
    if (std::abs(volts) < least) lower = at, least = std::abs(volts);
  }
  return lower;
}

void add_short_probes(ProbePlan& plan) {
  std::map<InsideRef, TerminalId> fuses;
  for (const int f : plan.suspects)
    for (const InsideRef fuse : plan.here(f).blown)
      fuses.try_emplace(fuse, dead_end(plan.study, static_cast<std::size_t>(f), plan.situation(), fuse));
  for (const auto& [fuse, at] : fuses)
    if (at.is_set())
      for (const Standing standing : {Standing::all_at_rest, Standing::as_set}) add_short(plan, fuse, at, standing);
}

}  // namespace loomfolio
