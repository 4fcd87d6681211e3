// SPDX-License-Identifier: MIT
// The idea. From every stretch of a wire, its cable's next stretches beside it are gathered for as long as they run on together. The
// ring goes to the middle of that run, or as near to it as labels and other wires let it. The ring that holds most wires comes first.
#include "sheets/diagram_cables.h"

#include <algorithm>
#include <optional>

#include "layout/segments.h"
#include "sheets/diagram_tags.h"

namespace loomfolio {
namespace {

using laying::Segment;

constexpr Grid beyond = 110;       // from the outermost wire's edge to the ring
constexpr Grid half_along = 110;   // of the ring, along the wires
constexpr Grid ring_clear = 120;        // along the wires, from the ring to a bend, a label or another wire
constexpr Grid raster = 50;

struct CableFinder {
  const Build& build;
  const DiagramGraph& diagram;
  const Laid& laid;
  std::vector<Segment> segments;
  std::vector<GridBox> taken;   ///< labels, tags and boxes
  std::vector<char> has_ring;   ///< by wire

  const std::string& cable_of(int wire) const { return build.wire(diagram.wires[static_cast<std::size_t>(wire)]).cable; }
  Grid half_pen_of(int wire) const { return diagram.graph.wires[static_cast<std::size_t>(wire)].pen / 2; }
};

GridBox box_of(const Segment& s) {
  return s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high};
}

bool touch(const GridBox& a, const GridBox& b) { return a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1; }

/// Stretches side by side, in order across, and where all of them run.
struct CableRun {
  std::vector<Segment> stretches;
  Grid low = 0, high = 0;
};

CableRun gather_cable(const CableFinder& finder, const Segment& first) {
  CableRun run{{first}, first.low, first.high};
  for (;;) {
    const Segment& last = run.stretches.back();
    const Segment* next = nullptr;
    for (const Segment& s : finder.segments) {
      if (s.is_level != first.is_level || s.at <= last.at || s.at > last.at + side_by_side_gap) continue;
      if (std::min(run.high, s.high) - std::max(run.low, s.low) < 2 * (half_along + ring_clear)) continue;
      if (next == nullptr || s.at < next->at) next = &s;
    }
    if (next == nullptr || finder.has_ring[static_cast<std::size_t>(next->wire)] || finder.cable_of(next->wire) != finder.cable_of(first.wire)) return run;
    run.low = std::max(run.low, next->low), run.high = std::min(run.high, next->high);
    run.stretches.push_back(*next);
  }
}

/// Around the wires where it touches nothing else, as near the middle of the run as can be.
std::optional<GridBox> place_ring(const CableFinder& finder, const CableRun& run) {
  const Segment &first = run.stretches.front(), &last = run.stretches.back();
  const Grid from = first.at - finder.half_pen_of(first.wire) - beyond, to = last.at + finder.half_pen_of(last.wire) + beyond;
  const Grid middle = (run.low + run.high) / 2, reach = (run.high - run.low) / 2 - half_along - ring_clear;
  const auto box_at = [&](Grid at, Grid half) {
    return first.is_level ? GridBox{at - half, from, at + half, to} : GridBox{from, at - half, to, at + half};
  };
  const auto is_own = [&](const Segment& s) {
    return std::any_of(run.stretches.begin(), run.stretches.end(),
                       [&](const Segment& own) { return own.wire == s.wire && own.index == s.index; });
  };
  for (Grid away = 0; away <= reach; away += raster)
    for (const Grid at : {middle - away, middle + away}) {
      const GridBox room = box_at(at, half_along + ring_clear);
      const auto meets = [&](const GridBox& other) { return touch(room, other); };
      const auto meets_wire = [&](const Segment& s) { return !is_own(s) && touch(room, box_of(s)); };
      if (std::any_of(finder.taken.begin(), finder.taken.end(), meets)) continue;
      if (std::any_of(finder.segments.begin(), finder.segments.end(), meets_wire)) continue;
      return box_at(at, half_along);
    }
  return std::nullopt;
}

/// The ring around most wires, of those the one on the longest run, around wires that have none yet.
std::optional<CableRing> next_ring(const CableFinder& finder) {
  std::optional<CableRing> best;
  Grid longest = 0;
  for (const Segment& first : finder.segments) {
    if (finder.has_ring[static_cast<std::size_t>(first.wire)] || finder.cable_of(first.wire).empty()) continue;
    const CableRun run = gather_cable(finder, first);
    const std::size_t count = run.stretches.size(), most = best ? best->wires.size() : 1;
    if (count < 2 || count < most || (count == most && run.high - run.low <= longest)) continue;
    const std::optional<GridBox> box = place_ring(finder, run);
    if (!box) continue;
    best = CableRing{*box, {}};
    for (const Segment& s : run.stretches) best->wires.push_back(static_cast<std::size_t>(s.wire));
    longest = run.high - run.low;
  }
  return best;
}

}  // namespace

std::vector<CableRing> find_cable_rings(const Build& build, const DiagramGraph& diagram, const Laid& laid) {
  CableFinder finder{build, diagram, laid, laying::find_segments(laid), words_on_wires(diagram, laid), std::vector<char>(diagram.wires.size(), 0)};
  for (const PlacedBox& box : laid.boxes) finder.taken.push_back(box.box);
  std::vector<CableRing> rings;
  while (std::optional<CableRing> ring = next_ring(finder)) {
    for (const std::size_t wire : ring->wires) finder.has_ring[wire] = 1;
    rings.push_back(std::move(*ring));
  }
  return rings;
}

}  // namespace loomfolio
