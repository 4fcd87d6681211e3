// SPDX-License-Identifier: MIT
// Cold filaments and standing motors draw many times their load for a moment. Three solves a situation - small filaments cold,
// headlamps cold, motors standing - tell what each class adds in each fuse. Each surge dies away by its own time constant, so the
// energy beyond the load is
//
//     sum_j 2 I dI_j tau_j  +  sum_jk dI_j dI_k tau_j tau_k / (tau_j + tau_k)
//
// against the least melting energy of the family: its fastest time at 600 % times the current squared (for blades 0.72 In2).
#include <algorithm>
#include <array>
#include <cmath>

#include "base/side_by_side.h"
#include "solve/branch_law.h"
#include "solve/protection_parts.h"

namespace loomfolio {
namespace {

enum class Surge : std::uint8_t { small_filament, headlamp, motor };
constexpr std::array<Surge, 3> surges = {Surge::small_filament, Surge::headlamp, Surge::motor};
// Time constants from memory: 5 ms small lamps, 50 ms headlamps, 200 ms a small motor's start.
constexpr std::array<double, 3> time_constants = {0.005, 0.050, 0.200};
constexpr double headlamp_watts = 30;

// The circuit at the first moment, for one class.
Circuit surging(const Build& build, Circuit circuit, Surge surge) {
  for (Branch& branch : circuit.branches) {
    if (branch.origin != BranchOrigin::inside) continue;
    const Part& part = build.part(branch.inside.part);
    const Inside& inside = part.insides[static_cast<std::size_t>(branch.inside.inside)];
    if (branch.law == Law::lamp) {
      const bool is_headlamp = (branch.volts * branch.amperes).number() >= headlamp_watts;
      if (surge == (is_headlamp ? Surge::headlamp : Surge::small_filament)) branch.law = Law::conductor;  // its ohms are the cold ones
    }
    const bool is_starter = build.kind_of(part).group == "starting";
    if (inside.type == InsideType::motor && surge == Surge::motor && !is_starter)
      branch.ohms = std::min(branch.ohms, inside.resistance.value_or(branch.ohms / 3));
  }
  return circuit;
}

std::vector<double> fuse_amperes(const Study& study, const Circuit& circuit, const RelayState& relays) {
  NodeSolver solver(circuit);
  const NodeVolts nodes = solver.solve(relays, Flash::lit, {});
  std::vector<double> amperes;
  for (const FuseRef& fuse : study.fuses) {
    const int number = circuit.inside_branch[fuse.inside.part.at()][static_cast<std::size_t>(fuse.inside.inside)];
    const Branch* branch = number < 0 ? nullptr : &circuit.branches[static_cast<std::size_t>(number)];
    amperes.push_back(branch ? std::abs(work(*branch, nodes.volts[static_cast<std::size_t>(branch->a)] -
                                                          nodes.volts[static_cast<std::size_t>(branch->b)]).amperes) : 0);
  }
  return amperes;
}

double least_melting_energy(const FuseRef& fuse) {
  const Amperes strong = fuse.rating * 6;
  return fastest_opening(*fuse.family, fuse.rating, strong).number() * strong.number() * strong.number();
}

double surge_energy(double load, const std::array<double, 3>& added) {
  double energy = 0;
  for (std::size_t j = 0; j < added.size(); ++j) {
    energy += 2 * load * added[j] * time_constants[j];
    for (std::size_t k = 0; k < added.size(); ++k)
      energy += added[j] * added[k] * time_constants[j] * time_constants[k] / (time_constants[j] + time_constants[k]);
  }
  return energy;
}

/// By fuse: the surge's energy as a share of what melts it; 0 where the family states no least time.
std::vector<double> inrush_shares(const Study& study, const Solution& solution) {
  const Circuit circuit = make_circuit(study.build, solution.situation, usual_options(study.build));
  const auto load = fuse_amperes(study, circuit, solution.relays);
  std::vector<std::array<double, 3>> added(study.fuses.size(), {0, 0, 0});
  for (std::size_t j = 0; j < surges.size(); ++j) {
    const auto peak = fuse_amperes(study, surging(study.build, circuit, surges[j]), solution.relays);
    for (std::size_t f = 0; f < peak.size(); ++f) added[f][j] = std::max(0.0, peak[f] - load[f]);
  }
  std::vector<double> shares;
  for (std::size_t f = 0; f < study.fuses.size(); ++f) {
    const double melts = least_melting_energy(study.fuses[f]);
    shares.push_back(melts > 0 ? surge_energy(load[f], added[f]) / melts : 0);
  }
  return shares;
}

}  // namespace

void study_inrush(Study& study) {
  std::vector<std::vector<double>> shares(study.solutions.size());  // [situation][fuse]
  work_side_by_side(shares.size(), [&](std::size_t s) { shares[s] = inrush_shares(study, study.solutions[s]); });
  for (std::size_t s = 0; s < shares.size(); ++s)
    for (std::size_t f = 0; f < study.fuses.size(); ++f) {
      FuseStudy& fuse = study.result.fuses[f];
      if (shares[s][f] <= fuse.inrush_share) continue;
      fuse.inrush_share = shares[s][f];
      fuse.inrush_situation = study.solutions[s].situation;
    }
}

}  // namespace loomfolio
