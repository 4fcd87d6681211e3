// SPDX-License-Identifier: MIT
#include "check/rules.h"

#include "check/check.h"

namespace loomfolio {

const std::vector<NamedRule>& all_rules() {
  static const std::vector<NamedRule> list = {
#define RULE(name) {#name, rules::name},
#include "check/rules.def"
#undef RULE
  };
  return list;
}

Diagnostics check_build(const CheckInput& input) {
  const Facts facts = gather_facts(input);
  Diagnostics findings;
  for (const NamedRule& rule : all_rules()) rule.run(facts, findings);
  sort_diagnostics(findings);
  return findings;
}

}  // namespace loomfolio
