// SPDX-License-Identifier: MIT
// The rules. One rule a file; each is a function from a build and its solutions to findings.
#pragma once

#include <vector>

#include "diag/diagnostic.h"
#include "model/build.h"
#include "solve/solution.h"

namespace loomfolio {

/// What a rule may look at. Rules change nothing.
struct CheckInput {
  const Build& build;
  const std::vector<Solution>& solutions;  ///< one a situation
};

using Rule = void (*)(const CheckInput&, Diagnostics&);

/// All rules, in the order of the list in rules.cpp.
const std::vector<Rule>& all_rules();

/// Runs every rule on one build. Findings that repeat over variants are the caller's to merge (sort_diagnostics does it).
Diagnostics check_build(const CheckInput& input);

}  // namespace loomfolio
