// SPDX-License-Identifier: MIT
// What a person with a fault reads at a box, with the machine set as the box says: computed here once more, from the
// circuit, not taken from the chart.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>

#include "solve/diagnose.h"
#include "solve/newton.h"

namespace loomfolio::test {

inline const Inside& probed_inside(const Build& build, InsideRef ref) {
  return build.part(ref.part).insides[static_cast<std::size_t>(ref.inside)];
}

/// Ohms from the fuse's side to the frame: battery off, the fuse and those that blew and bulbs out, relays at rest, a chafed wire or a stuck
/// joint in place.
inline double read_dead_ohms(const Build& build, const Probe& probe, const Fault& fault,
                             const std::vector<InsideRef>& blown) {
  Situation situation = build.situations[probe.situation.at()];
  situation.engine = EngineState::stopped;
  if (probe.standing == Standing::all_at_rest) situation.settings.clear();
  Circuit circuit = make_circuit(build, situation, usual_options(build));
  const RelayState rest = rest_state(circuit);
  std::vector<InsideRef> out = probe.taken_out;
  out.push_back(probe.what);
  out.insert(out.end(), blown.begin(), blown.end());
  std::erase_if(circuit.branches, [&](const Branch& b) {
    return b.law == Law::source || b.law == Law::charger ||
           (b.origin == BranchOrigin::inside && std::find(out.begin(), out.end(), b.inside) != out.end());
  });
  Branch extra;
  extra.ohms = Ohms(0.05);
  if (fault.type == FaultType::wire_to_earth) {
    extra.a = build.wire(fault.wire).to.index, extra.b = circuit.frame;
    circuit.branches.push_back(extra);
  }
  if (fault.type == FaultType::switch_stuck || fault.type == FaultType::contact_stuck) {
    const Inside& inside = probed_inside(build, fault.inside);
    const bool is_switch = fault.type == FaultType::switch_stuck;
    const auto node = [&](int i) {
      return node_of(build, circuit, fault.inside.part, inside.nodes[static_cast<std::size_t>(i)]);
    };
    extra.a = node(is_switch ? fault.first : 0), extra.b = node(is_switch ? fault.second : 1);
    circuit.branches.push_back(extra);
  }
  Branch meter;
  meter.law = Law::source;
  meter.a = probe.at.index, meter.b = circuit.frame;
  meter.volts = Volts(0.3);
  meter.ohms = meter.charge_ohms = Ohms(100);
  circuit.branches.push_back(meter);
  NodeSolver solver(circuit);
  const NodeVolts nodes = solver.solve(rest, Flash::dark, {});
  const double volts = nodes.volts[static_cast<std::size_t>(meter.a)] - nodes.volts[static_cast<std::size_t>(meter.b)];
  const double amperes = (0.3 - volts) / 100;
  return amperes > 1e-9 ? volts / amperes : std::numeric_limits<double>::infinity();
}

inline bool is_blown_at_head(const FaultStudy& study, const Diagnosis& d, std::size_t fault, InsideRef fuse) {
  const auto& blown = study.book().effect(fault, d.symptom.situation.at()).blown;
  return std::find(blown.begin(), blown.end(), fuse) != blown.end();
}

/// The outcome of the probe that the fault shows; -1: none of them.
inline int outcome_shown(FaultStudy& study, const Diagnosis& d, const Probe& probe, std::size_t f) {
  const Build& build = study.build();
  const Fault& fault = study.book().faults[f];
  const std::size_t s = probe.situation.at(), head = d.symptom.situation.at();
  const auto find = [&](const auto& matches) {
    const auto found = std::find_if(probe.outcomes.begin(), probe.outcomes.end(), matches);
    return found == probe.outcomes.end() ? -1 : static_cast<int>(found - probe.outcomes.begin());
  };
  const auto open = [&](bool is_open) { return find([&](const ProbeOutcome& o) { return o.is_open == is_open; }); };
  switch (probe.type) {
    case ProbeType::volts: {
      double volts = study.solutions()[s].terminal_volts[probe.at.at()].number();
      for (const Reading& reading : study.effect(f, s, head).readings)
        if (reading.at == probe.at) volts = reading.volts;
      if (std::isnan(volts)) volts = 0;
      return find([&](const ProbeOutcome& o) { return volts >= o.least && volts <= o.most; });
    }
    case ProbeType::ohms:
      if (fault.type == FaultType::diode_reversed && fault.inside == probe.what)
        return find([](const ProbeOutcome& o) { return o.is_reversed; });
      if (probed_inside(build, probe.what).is_winding)
        return open(fault.type == FaultType::element_dead && fault.inside.part == probe.what.part &&
                    probed_inside(build, fault.inside).is_winding);
      return open(is_blown_at_head(study, d, f, probe.what) ||
                  (fault.inside == probe.what &&
                   (fault.type == FaultType::element_dead || fault.type == FaultType::fuse_blown)));
    case ProbeType::short_to_earth: {
      const double ohms = read_dead_ohms(build, probe, fault, study.book().effect(f, head).blown);
      if (ohms > 1 && ohms < 2) return -1;  // neither of the two that the chart offers
      return open(ohms >= 2);
    }
    case ProbeType::alternating: {
      const bool is_wire = fault.type == FaultType::wire_open || fault.type == FaultType::bad_joint;
      return open(is_wire ? study.solutions()[s].wire_alternating[fault.wire.at()].number() > 0
                          : fault.type == FaultType::element_dead && probed_inside(build, fault.inside).is_winding);
    }
    case ProbeType::new_fuse:
      return open(fault.type != FaultType::fuse_blown && is_blown_at_head(study, d, f, probe.what));
    case ProbeType::watch:
      break;
  }
  const Expected seen = study.seen(f, s, head, probe.what);
  return find([&](const ProbeOutcome& o) { return o.state == seen; });
}

}  // namespace loomfolio::test
