// SPDX-License-Identifier: MIT
// Measures the solver: bench_solve. No options; a release build counts.
//
//   1. street-single: every single fault in every situation, the protection study, and the whole check.
//   2. Invented machines of about 60 parts and 150 wires with 12 situations, and of ten times that: the same; then with a diode
//      over each relay's coil.
//
// A figure in seconds says little on another machine: beside it stands the ratio to solving each of those circuits
// anew, one factorisation and its Newton steps from the sound machine's volts, relays held - the least that a plain
// nodal solver would need.
#include <cstdio>
#include <ctime>
#include <iostream>

#include "check/check.h"
#include "oracle/disk.h"
#include "solve/defaults.h"
#include "solve/faults.h"
#include "solve/machine_maker.h"
#include "solve/newton.h"
#include "solve/protection.h"
#include "solve/settle.h"

namespace {

using namespace loomfolio;

template <class Work>
double seconds(Work work) {
  const std::clock_t start = std::clock();  // of this process: others may run beside it
  work();
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

/// The quickest of a few runs: the one that was least disturbed.
template <class Work>
double best_of(int runs, Work work) {
  double best = seconds(work);
  for (int run = 1; run < runs; ++run) best = std::min(best, seconds(work));
  return best;
}

/// Mean over the situations of one plain nodal solve, started from the settled volts.
double plain_solve(const Build& build, const std::vector<Solution>& solutions) {
  constexpr int repeats = 20;
  double sum = 0;
  for (const Solution& solution : solutions) {
    const Circuit circuit = make_circuit(build, solution.situation, usual_options(build));
    NodeSolver first(circuit);
    const NodeVolts sound = first.solve(solution.relays, Flash::lit, {});
    sum += seconds([&] {
             for (int i = 0; i < repeats; ++i) {
               NodeSolver anew(circuit);
               anew.solve(solution.relays, Flash::lit, sound.volts);
             }
           }) /
           repeats;
  }
  return sum / static_cast<double>(solutions.size());
}

struct Measured {
  std::size_t wires = 0;
  double solve = 0, faults = 0, protection = 0, check = 0;
};

Measured measure(const char* name, const Build& build, int runs) {
  Measured m;
  m.wires = build.wires.size();
  std::vector<Solution> solutions;
  m.solve = best_of(runs, [&] { solutions = solve_all(build); });
  FaultBook book;
  m.faults = best_of(runs, [&] { book = solve_faults(build, solutions, {}); });
  m.protection = best_of(runs, [&] { study_protection(build, solutions); });
  m.check = best_of(runs, [&] { check_build({build, solutions}); });
  const std::size_t count = book.faults.size() * solutions.size();
  const std::size_t different = book.effects[0].size() * solutions.size();
  const double plain = plain_solve(build, solutions);
  std::printf("%s: %zu parts, %zu wires, %zu situations\n", name, build.parts.size(), m.wires, solutions.size());
  std::printf("  situations solved   %8.4f s\n", m.solve);
  std::printf("  faults solved       %8.4f s   %zu faults x situations, %zu of them different circuits\n", m.faults,
              count, different);
  std::printf("    a plain solve of each of those circuits %8.4f s: %.1f times as long\n",
              plain * static_cast<double>(different), plain * static_cast<double>(different) / m.faults);
  std::printf("  protection studied  %8.4f s\n", m.protection);
  std::printf("  rules, with their own protection study %8.4f s\n", m.check);
  std::printf("  check and all faults, from the build on %8.4f s\n\n", m.solve + m.check + m.faults);
  return m;
}

/// The same machines with a diode over each relay's coil.
Build with_diodes(Build build) {
  for (Part& part : build.parts) {
    if (part.insides.empty() || part.insides.front().type != InsideType::coil) continue;
    Inside diode;
    diode.id = "diode";
    diode.type = InsideType::diode;
    diode.nodes = {part.insides.front().nodes[1], part.insides.front().nodes[0]};
    part.insides.push_back(diode);
    build.kinds[part.kind.at()].insides.push_back(diode);
  }
  return build;
}

void print_growth(const Measured& one, const Measured& ten) {
  const auto ratio = [](const char* what, double a, double b) { std::printf("  %-12s %6.1f times\n", what, b / a); };
  std::printf("%.1f times the wires take\n", static_cast<double>(ten.wires) / static_cast<double>(one.wires));
  ratio("situations", one.solve, ten.solve);
  ratio("faults", one.faults, ten.faults);
  ratio("protection", one.protection, ten.protection);
  ratio("rules", one.check, ten.check);
  ratio("all", one.solve + one.check + one.faults, ten.solve + ten.check + ten.faults);
}

}  // namespace

int main() {
  Diagnostics diagnostics;
  for (const test::Sample& sample : test::read_samples(diagnostics))
    if (sample.name == "street-single.toml") measure("street-single", sample.project.builds.at(0), 5);
  const Measured one = measure("one block", test::make_machine(1).build, 3);
  print_growth(one, measure("ten blocks", test::make_machine(10).build, 3));
  const Measured guarded = measure("one block, a diode over each coil", with_diodes(test::make_machine(1).build), 3);
  print_growth(guarded, measure("ten blocks, a diode over each coil", with_diodes(test::make_machine(10).build), 3));
  return 0;
}
