// SPDX-License-Identifier: MIT
#include <ostream>

#include "commands/command.h"
#include "commands/proof.h"

namespace loomfolio {

int run_check(const Request& request, Surroundings& surroundings) {
  const auto proof = prove_spec(request, surroundings);
  if (!proof) return 2;
  if (request.as_json) {
    surroundings.out << print_diagnostics_json(proof->diagnostics, proof->sources) << "\n";
  } else if (request.is_brief) {
    surroundings.out << print_diagnostics_short(proof->diagnostics, proof->sources);
  } else {
    report_findings(*proof, surroundings);
    if (proof->diagnostics.empty()) surroundings.out << proof->spec_name << ": nothing found\n";
  }
  return has_errors(proof->diagnostics) ? 1 : 0;
}

}  // namespace loomfolio
