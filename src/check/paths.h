// SPDX-License-Identifier: MIT
// Which points of a build are joined by what: the build as a graph, before any current is known.
#pragma once

#include <functional>
#include <vector>

#include "model/build.h"

namespace loomfolio {

/// A point where current may pass, an index: all terminals in order of TerminalId, then the inner points part by part,
/// then one point for the frame, which all earths and the bodies of parts are bolted to.
using PathPoint = std::int32_t;

/// One way from a point to another: a wire, an element inside a part, or (neither set) a bolt to the frame.
struct Bridge {
  PathPoint a = -1, b = -1;
  WireId wire;       ///< set for a wire
  InsideRef inside;  ///< set for an element; a switch has one bridge for each pair it can join
  PathPoint other(PathPoint one) const { return one == a ? b : a; }
};

struct Paths {
  std::vector<Bridge> bridges;
  std::vector<std::vector<int>> at;  ///< bridges by point
  std::vector<int> first_inner;      ///< first inner point of each part
  PathPoint frame = -1;

  /// Nets: points joined by metal that nothing opens (wires, splices, links of connectors, earths).
  std::vector<int> net;  ///< by point
  int net_count = 0;
  std::vector<bool> earthed_net;  ///< by net: the frame, or the earthed pole of a source
  std::vector<bool> live_net;     ///< by net: the other pole of a source

  PathPoint point(PartId part, const Inside::Node& node) const;
  std::vector<PathPoint> points(const Build& build, InsideRef inside) const;
  bool is_earthed(PathPoint p) const { return earthed_net[static_cast<std::size_t>(net[static_cast<std::size_t>(p)])]; }
  bool is_live(PathPoint p) const { return live_net[static_cast<std::size_t>(net[static_cast<std::size_t>(p)])]; }

 private:
  friend Paths trace_paths(const Build&);
  std::vector<std::vector<TerminalId>> terminals_;  ///< by part
};

Paths trace_paths(const Build& build);

/// Points reached from `start` over bridges that `passes` allows; by point.
std::vector<bool> reach(const Paths& paths, const std::vector<PathPoint>& start,
                        const std::function<bool(const Bridge&)>& passes);

const Inside& inside_of(const Build& build, InsideRef ref);

/// Wire, link of a connector or bolt: metal that nothing opens.
bool is_plain_metal(const Build& build, const Bridge& bridge);

}  // namespace loomfolio
