// SPDX-License-Identifier: MIT
#include <ostream>

#include "commands/command.h"
#include "commands/proof.h"
#include "layout/bench_door.h"

namespace loomfolio {

int run_bench_layout(const Request& request, Surroundings& surroundings) {
  const auto graph = read_text(request.spec, surroundings);
  if (!graph) return 2;
  std::string error, why;
  const std::string laid = lay_out_bench_json(*graph, error);
  if (!error.empty()) {
    surroundings.err << "loomfolio: " << request.spec << ": " << error << "\n";
    return 1;
  }
  if (request.output == "-") surroundings.out << laid;
  else if (!surroundings.files.write(request.output, laid, why)) {
    surroundings.err << "loomfolio: cannot write `" << request.output << "`: " << why << "\n";
    return 2;
  }
  return 0;
}

}  // namespace loomfolio
