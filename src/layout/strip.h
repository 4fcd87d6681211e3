// SPDX-License-Identifier: MIT
// A strip is a place where wires run side by side: a channel between two rows, or an alley between two parts of a row. Both are
// one problem turned by a quarter: pieces of wire run along the strip, and stubs reach them from its low side (top of a channel,
// left of an alley) and its high side. This says in which order the pieces stand from low to high, so that nothing lies on
// anything else, with few crossings.
#pragma once

#include <vector>

#include "layout/plan.h"

namespace loomfolio::laying {

inline constexpr Grid far_away = 1 << 28;  ///< where a run ends that is open there

enum class StripSide : std::uint8_t { low, high };

struct StripPin {
  Grid at = 0;               ///< along the strip
  StripSide side = StripSide::low;
  int tag = -1;              ///< the caller's; -1 - n for link n
};

/// One run of one wire along the strip.
struct StripPiece {
  int wire = -1;
  int source = -1;           ///< its number before any splitting; pieces split from one another share it
  std::vector<StripPin> pins;
  bool is_open_low = false, is_open_high = false;  ///< runs on beyond the strip's ends
  Grid low() const;          ///< where it begins along the strip
  Grid high() const;
  bool is_straight() const;  ///< two facing pins at one place: crosses the strip and needs no run along it
};

/// Two pieces of one wire joined across the strip.
struct StripLink {
  int before = -1, after = -1;
  Grid at = 0;
};

struct StripArc {
  int before = -1, after = -1;
  Grid gap = 0;
};

/// Crossings beyond the open ends of a strip when piece a stands before piece b: beyond[a * count + b], by source.
struct BeyondEnds {
  std::vector<int> low, high;
};

struct Strip {
  std::vector<StripPiece> pieces;
  std::vector<StripLink> links;
  std::vector<int> order;       ///< pieces that run along it, from the low side
  std::vector<StripArc> arcs;   ///< what must stand how far before what
};

enum class StripKind : std::uint8_t { alley, channel };

/// Splits where it must, orders, and says the gaps. Never fails. `beyond` may be empty.
void order_strip(Strip& strip, const Plan& plan, StripKind kind, const BeyondEnds& beyond = {});

/// Crossings of two pieces in the better order; ends that tie cross nothing.
int count_least_crossings(const StripPiece& a, const StripPiece& b);

/// Distance along the strip within which stubs from opposite sides would touch.
Grid reach_of(const Plan& plan);

/// Splits pieces that would meet themselves from both sides at one place: two joints, never four ways at one dot.
void split_four_ways(Strip& strip, const Plan& plan);

/// Splits one piece of a cycle of "must stand before"; `cycle` lists pieces, each before the next and the last before the first.
void split_cycle(Strip& strip, const std::vector<int>& cycle, const Plan& plan);

}  // namespace loomfolio::laying
