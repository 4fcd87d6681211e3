// SPDX-License-Identifier: MIT
// Every sample and test machine, variant and situation, solved here and by ngspice, relays standing where the solver let them
// settle, flashers closed and open.
#include <doctest/doctest.h>

#include <algorithm>

#include "base/text.h"
#include "oracle/compare.h"
#include "oracle/disk.h"
#include "solve/settle.h"
#include "solve/spice.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

struct Counted {
  int situations = 0, nodes = 0;
};

Counted compare_folder(const std::string& folder) {
  Diagnostics diagnostics;
  const auto samples = read_specs(folder, diagnostics);
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
        for (const Flash flash : {Flash::lit, Flash::dark}) {
          const bool flashes = std::any_of(circuit.branches.begin(), circuit.branches.end(), [](const Branch& b) { return b.gate.flashes; });
          if (flash == Flash::dark && !flashes) continue;
          const NodeVolts ours = solver.solve(solution.relays, flash, {});
          CHECK_MESSAGE(ours.has_settled, name);
          questions.push_back({name, write_netlist({circuit, solution.relays, flash, name, &build}), ours});
        }
      }
    }
  const Verdict verdict = compare_with_ngspice(questions);
  REQUIRE_MESSAGE(verdict.trouble.empty(), verdict.trouble);
  for (const std::string& difference : verdict.differences) CHECK_MESSAGE(false, difference);
  for (const std::string& name : verdict.unanswered) CHECK_MESSAGE(false, "ngspice has no answer for " << name);
  MESSAGE("situations compared: " << verdict.answered << ", nodes: " << verdict.nodes);
  return {verdict.answered, verdict.nodes};
}

}  // namespace

TEST_CASE("samples: every node of every variant and situation as ngspice has it") {
  const Counted counted = compare_folder("samples");
  CHECK(counted.situations > 60);
  CHECK(counted.nodes > 8000);
}

TEST_CASE("invented machines, 6 V and 12 V, of either earth, with and without a battery's charging: the same") {
  const Counted counted = compare_folder("tests/machines");
  CHECK(counted.situations > 60);
  CHECK(counted.nodes > 8000);
}
