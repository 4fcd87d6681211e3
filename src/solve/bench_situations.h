// SPDX-License-Identifier: MIT
// The situations as someone with a meter sets them: engine stopped and gear in neutral wherever that shows the same.
#pragma once

#include <vector>

#include "solve/solution.h"

namespace loomfolio {

/// The build with each situation made easy to reach, and what it then shows; situations keep their ids. A riding
/// situation is one with the engine stopped when every lamp, load and motor does the same then, tell-tales and spark
/// aside. The first in which a charger charges keeps its engine running. The gear leaves neutral only where that
/// matters.
struct BenchSituations {
  Build build;
  std::vector<Solution> solutions;
};
BenchSituations set_on_bench(const Build& build, const std::vector<Solution>& solutions);

/// Whether a switch worked by the gear lever stands out of neutral.
bool is_in_gear(const Build& build, const Situation& situation);

}  // namespace loomfolio
