// SPDX-License-Identifier: MIT
// A way in for benchmark graphs: JSON in, JSON out, so that one script can measure us beside other engines.
#pragma once

#include <string>

#include "layout/laid.h"

namespace loomfolio {

/// A benchmark graph: {name, parts: [{id, role, rank, zone, width, height, terminals: [{id, side N/E/S/W, x, y}]}],
/// wires: [{id, from, to, net, label, labelWidth, labelHeight}]}, all lengths in millimetres. On bad input gives an
/// empty graph and says why in `error`.
Graph read_bench_graph(const std::string& graph_json, std::string& error);

/// {graph, engine, ms, parts: {id: [x, y]}, wires: {id: [[x, y], ...]}, labels: {id: {x, y, width, height}}, page:
/// {width, height}}.
std::string write_bench_layout(const Graph& graph, const Laid& laid, double milliseconds);

/// What a run of the bench says in one line: size, time, crossings, bends, length, broken promises.
struct BenchFigures {
  std::string text;
};

/// Reads, lays out, writes; the time is that of laying out alone, the middle of three. `earlier_json`, when not empty,
/// is the graph of an earlier drawing, which is laid out first and then stayed near to. `figures` may be null.
std::string lay_out_bench_json(const std::string& graph_json, std::string& error, const std::string& earlier_json = {},
                               BenchFigures* figures = nullptr);

}  // namespace loomfolio
