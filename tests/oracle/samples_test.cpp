// SPDX-License-Identifier: MIT
// Every sample, variant and situation, solved here and by ngspice, relays standing where the solver let them settle.
#include <doctest/doctest.h>

#include "base/text.h"
#include "oracle/compare.h"
#include "oracle/disk.h"
#include "solve/settle.h"
#include "solve/spice.h"

using namespace loomfolio;
using namespace loomfolio::test;

TEST_CASE("samples: every node of every variant and situation as ngspice has it") {
  Diagnostics diagnostics;
  const auto samples = read_samples(diagnostics);
  REQUIRE(!samples.empty());
  REQUIRE(!has_errors(diagnostics));
  std::vector<Question> questions;
  for (const Sample& sample : samples)
    for (const Build& build : sample.project.builds) {
      const auto solutions = solve_all(build);
      for (const Solution& solution : solutions) {
        const std::string name = sample.name + " " + build.variant + " " + build.situations[solution.situation.at()].name;
        CHECK_MESSAGE(solution.settling == Settling::settled, name << " does not settle: " << join(solution.unsettled_by, ", "));
        const Circuit circuit = make_circuit(build, solution.situation, usual_options(build));
        NodeSolver solver(circuit);
        const NodeVolts ours = solver.solve(solution.relays, Flash::lit, {});
        CHECK_MESSAGE(ours.has_settled, name);
        questions.push_back({name, write_netlist({circuit, solution.relays, Flash::lit, name, &build}), ours});
      }
    }
  const Verdict verdict = compare_with_ngspice(questions);
  REQUIRE_MESSAGE(verdict.trouble.empty(), verdict.trouble);
  for (const std::string& difference : verdict.differences) CHECK_MESSAGE(false, difference);
  for (const std::string& name : verdict.unanswered) CHECK_MESSAGE(false, "ngspice has no answer for " << name);
  MESSAGE("situations compared: " << verdict.answered << ", nodes: " << verdict.nodes);
}
