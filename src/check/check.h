// SPDX-License-Identifier: MIT
// The rules. One rule a file; each is a function from a build and its solutions to findings.
#pragma once

#include <vector>

#include "diag/diagnostic.h"
#include "model/build.h"
#include "solve/protection.h"
#include "solve/solution.h"

namespace loomfolio {

struct Facts;

/// What a check starts from. Rules change nothing.
struct CheckInput {
  const Build& build;
  const std::vector<Solution>& solutions;  ///< one a situation, in order; empty: the rules on solutions find nothing
  /// The study of these solutions where every one has settled; nothing: it is made here.
  const ProtectionStudy* protection = nullptr;
};

using Rule = void (*)(const Facts&, Diagnostics&);

struct NamedRule {
  std::string_view name;  ///< the rule's file: `wire_too_big` is in wire_too_big.cpp
  Rule run;
};

/// All rules, in the order of rules.def.
const std::vector<NamedRule>& all_rules();

/// Runs every rule on one build. Findings that repeat over variants are the caller's to merge (sort_diagnostics does
/// it).
Diagnostics check_build(const CheckInput& input);

}  // namespace loomfolio
