// SPDX-License-Identifier: MIT
// The idea. The terminals of a joint, and the places at a wide terminal, were ordered before the exact tracks were known; now that the
// wires are drawn, it shows which of them could change places:
//
//     a ------+                a ---+
//     b ---+--(--              b ---(--+      only the last upright stretches move, each to where the other stood
//          |  |                     |  |
//          ====                     ====
//
// Every change is tried on the drawing itself and judged by what `measure` and `verify` say of it.
#include "layout/untangle.h"

#include <algorithm>

#include "layout/measure.h"
#include "layout/segments.h"
#include "layout/verify.h"

namespace loomfolio::laying {
namespace {

/// A wire that ends alone at a terminal of a joint, by an upright stretch with a bend.
struct TapEnd {
  int wire = -1, terminal = -1;
  bool is_from = true;
  Side side = Side::top;
  Grid x = 0;
};

int count_at(const Graph& graph, int box, int terminal) {
  return static_cast<int>(std::count_if(graph.wires.begin(), graph.wires.end(), [&](const GraphWire& w) {
    return (w.from_box == box && w.from_terminal == terminal) || (w.to_box == box && w.to_terminal == terminal);
  }));
}

/// The ends above and below the joint's core, from left to right on each side.
std::vector<TapEnd> find_taps(const Graph& graph, const Laid& laid, const SettledJoint& joint) {
  std::vector<TapEnd> taps;
  for (int w = 0; w < static_cast<int>(graph.wires.size()); ++w) {
    const GraphWire& wire = graph.wires[static_cast<std::size_t>(w)];
    if ((wire.from_box == joint.box) == (wire.to_box == joint.box)) continue;
    TapEnd tap{w, 0, wire.from_box == joint.box};
    tap.terminal = tap.is_from ? wire.from_terminal : wire.to_terminal;
    tap.side = joint.terminals[static_cast<std::size_t>(tap.terminal)].side;
    const auto& points = laid.courses[static_cast<std::size_t>(w)].points;
    if (!is_upright(tap.side) || points.size() < 3 || count_at(graph, joint.box, tap.terminal) != 1) continue;
    tap.x = tap.is_from ? points.front().x : points.back().x;
    taps.push_back(tap);
  }
  std::stable_sort(taps.begin(), taps.end(),
                   [](const TapEnd& a, const TapEnd& b) { return std::pair(a.side, a.x) < std::pair(b.side, b.x); });
  return taps;
}

bool do_cross(const Laid& laid, int one, int other) {
  Laid both;
  for (const int wire : {one, other}) both.courses.push_back(laid.courses[static_cast<std::size_t>(wire)]);
  bool found = false;
  for_each_meeting(find_segments(both), [&](const Segment& level, const Segment& upright) {
    found |= level.wire != upright.wire && crosses(level, upright);
  });
  return found;
}

/// Moves the end's upright stretch to `x`; false when its bend is gone then.
bool move_end(Laid& laid, const TapEnd& tap, Grid x) {
  auto& points = laid.courses[static_cast<std::size_t>(tap.wire)].points;
  const std::size_t last = points.size() - 1;
  GridPoint &end = tap.is_from ? points[0] : points[last], &bend = tap.is_from ? points[1] : points[last - 1];
  const GridPoint beyond = tap.is_from ? points[2] : points[last - 2];
  if (end.x != bend.x || beyond.x == x) return false;
  end.x = bend.x = x;
  return true;
}

/// Keeps the change when the drawing is cheaper with it; each such change makes it cheaper, so they come to an end.
bool change_places(const Graph& graph, Laid& laid, std::size_t number, const TapEnd& a, const TapEnd& b) {
  const auto quality = [&](const Laid& drawing) { return measure(drawing).cost(RouteWeights{}); };
  const auto broken = [&](const Laid& drawing) { return verify(with_settled_joints(graph, drawing), drawing).size(); };
  Laid changed = laid;
  auto& terminals = changed.joints[number].terminals;
  std::swap(terminals[static_cast<std::size_t>(a.terminal)].at, terminals[static_cast<std::size_t>(b.terminal)].at);
  if (!move_end(changed, a, b.x) || !move_end(changed, b, a.x)) return false;
  if (quality(changed) >= quality(laid) || broken(changed) > broken(laid)) return false;
  laid = std::move(changed);
  return true;
}

/// Of a part, those that stand at one terminal drawn wide; of a joint all.
bool may_change(const Graph& graph, const SettledJoint& joint, const TapEnd& a, const TapEnd& b) {
  return graph.boxes[static_cast<std::size_t>(joint.box)].joint.pitch > 0 ||
         are_one_terminal(joint.terminals[static_cast<std::size_t>(a.terminal)], joint.terminals[static_cast<std::size_t>(b.terminal)]);
}

/// One change at the joint; false when none helps.
bool untangle(Plan& plan, Laid& laid, std::size_t number) {
  const std::vector<TapEnd> taps = find_taps(*plan.graph, laid, laid.joints[number]);
  for (std::size_t i = 1; i < taps.size(); ++i) {
    const TapEnd &a = taps[i - 1], &b = taps[i];
    if (a.side != b.side || !may_change(*plan.graph, laid.joints[number], a, b)) continue;
    if (!do_cross(laid, a.wire, b.wire) || !change_places(*plan.graph, laid, number, a, b)) continue;
    std::swap(plan.pins[static_cast<std::size_t>(a.is_from ? from_pin(a.wire) : to_pin(a.wire))].at,
              plan.pins[static_cast<std::size_t>(b.is_from ? from_pin(b.wire) : to_pin(b.wire))].at);
    return true;
  }
  return false;
}

}  // namespace

void untangle_joints(Plan& plan, Laid& laid) {
  for (std::size_t joint = 0; joint < laid.joints.size(); ++joint)
    while (untangle(plan, laid, joint)) {
    }
}

}  // namespace loomfolio::laying
