// SPDX-License-Identifier: MIT
// Lays out benchmark graphs: bench_layout [--svg] GRAPH.json OUT [EARLIER.json]. Without --svg, OUT is a result file for the metric
// script; with it, a plain drawing to look at.
#include <fstream>
#include <iostream>
#include <sstream>

#include "bench/svg_dump.h"
#include "layout/bench_door.h"
#include "layout/verify.h"

namespace {

std::string read_file(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

}  // namespace

int main(int count, char** words) {
  using namespace loomfolio;
  std::vector<std::string> arguments(words + 1, words + count);
  const bool svg = !arguments.empty() && arguments[0] == "--svg";
  if (svg) arguments.erase(arguments.begin());
  if (arguments.size() < 2) {
    std::cerr << "use: bench_layout [--svg] GRAPH.json OUT [EARLIER.json]\n";
    return 2;
  }
  std::string error, result;
  const std::string json = read_file(arguments[0]), earlier = arguments.size() > 2 ? read_file(arguments[2]) : "";
  if (svg) {
    const Graph graph = read_bench_graph(json, error);
    if (error.empty()) {
      const Laid laid = lay_out(graph);
      result = dump_svg(graph, laid);
      for (const Violation& v : verify(graph, laid)) std::cerr << name_of(v.promise) << ": " << v.what << "\n";
      for (const LayoutWarning& w : laid.warnings) std::cerr << w.wire << ": " << w.message << "\n";
    }
  } else {
    result = lay_out_bench_json(json, error, earlier);
  }
  if (!error.empty()) {
    std::cerr << arguments[0] << ": " << error << "\n";
    return 1;
  }
  std::ofstream(arguments[1], std::ios::binary) << result;
  return 0;
}
