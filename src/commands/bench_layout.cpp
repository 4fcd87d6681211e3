// SPDX-License-Identifier: MIT
#include <sys/resource.h>

#include <optional>
#include <ostream>

#include "commands/command.h"
#include "commands/proof.h"
#include "layout/bench_door.h"

namespace loomfolio {
namespace {

/// Most memory the process has held, in whole megabytes.
long peak_memory() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return usage.ru_maxrss / 1024;
}

}  // namespace

int run_bench_layout(const Request& request, Surroundings& surroundings) {
  const auto graph = read_text(request.spec, surroundings);
  if (!graph) return 2;
  std::string error, why;
  std::optional<std::string> earlier;
  if (!request.earlier.empty()) {
    earlier = surroundings.files.read(request.earlier, why);
    if (!earlier) {
      surroundings.err << "loomfolio: cannot read `" << request.earlier << "`: " << why << "\n";
      return 2;
    }
  }
  BenchFigures figures;
  const std::string laid = lay_out_bench_json(*graph, error, earlier.value_or(""), &figures);
  if (!error.empty()) {
    surroundings.err << "loomfolio: " << request.spec << ": " << error << "\n";
    return 1;
  }
  surroundings.err << figures.text << ", peak " << peak_memory() << " MB\n";
  if (request.output == "-")
    surroundings.out << laid;
  else if (!surroundings.files.write(request.output, laid, why)) {
    surroundings.err << "loomfolio: cannot write `" << request.output << "`: " << why << "\n";
    return 2;
  }
  return 0;
}

}  // namespace loomfolio
