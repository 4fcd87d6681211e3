// SPDX-License-Identifier: MIT
// Which wires and elements serve each consumer: all that lies on some way from the consumer to the supply or to earth,
// whatever the switches do. Only split_*.cpp include this.
#pragma once

#include <vector>

#include "model/build.h"

namespace loomfolio::splitting {

/// What conducts between two nodes of the machine.
struct Conductor {
  int a = -1, b = -1;
  int wire = -1;               ///< index into Build::wires, or -1
  int part = -1, inside = -1;  ///< else an element of a part
  bool is_fuse = false;
};

/// Nodes are the build's terminals, then the inner points of each part; the last two are the supply and the earth,
/// which stand for the poles of the battery and for every earth and bolted body.
struct Circuit {
  int nodes = 0, supply = 0, earth = 0;
  std::vector<Conductor> conductors;
  std::vector<std::vector<int>> at;  ///< conductors by node
  std::vector<int> stands_for;       ///< by node: itself, the supply or the earth
  std::vector<int> first_inner;      ///< by part: its first inner point
};

Circuit make_circuit(const Build& build);

/// Node of an element's point.
int node_of(const Circuit& circuit, const Build& build, int part, const Inside::Node& node);

/// Conductors (indices) on some way from `from` to `to` that passes no node twice and none of `barred`.
std::vector<int> find_ways(const Circuit& circuit, int from, int to, const std::vector<int>& barred);

/// Of those conductors, the ones reached from `from` without passing a fuse, the fuse itself included.
std::vector<int> before_fuses(const Circuit& circuit, const std::vector<int>& ways, int from);

}  // namespace loomfolio::splitting
