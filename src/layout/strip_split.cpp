// SPDX-License-Identifier: MIT
// Splitting a run into two runs joined across the strip (a jog). Needed in two cases.
//
// Four ways: the run goes on to both sides of a place where a stub comes from each side. Two joints instead of one:
//
//        |                    |
//   -----+-----      ->   ----+            the left half above, the right half below, joined by the stub itself
//        |                    +----
//                             |
//
// A cycle: a must stand before b at one place and b before a at another. One of them changes its track between the two places, at
// a place that is free of stubs; beyond all stubs there always is one, so this never fails.
#include <algorithm>

#include "layout/strip.h"

namespace loomfolio::laying {
namespace {

void add_link(Strip& strip, int before, int after, Grid at) {
  const int tag = -1 - static_cast<int>(strip.links.size());
  strip.links.push_back({before, after, at});
  strip.pieces[before].pins.push_back({at, StripSide::high, tag});
  strip.pieces[after].pins.push_back({at, StripSide::low, tag});
}

/// Links name their pieces; after pins moved to a new piece the links must follow.
void follow_links(Strip& strip, int piece) {
  for (const StripPin& pin : strip.pieces[piece].pins) {
    if (pin.tag >= 0) continue;
    StripLink& link = strip.links[-1 - pin.tag];
    (pin.side == StripSide::high ? link.before : link.after) = piece;
  }
}

bool find_four_ways(const StripPiece& piece, Grid reach, StripPin& low_pin, StripPin& high_pin) {
  for (const StripPin& l : piece.pins)
    for (const StripPin& h : piece.pins) {
      if (l.side != StripSide::low || h.side != StripSide::high || std::abs(l.at - h.at) >= reach) continue;
      bool before = piece.is_open_low, after = piece.is_open_high;
      for (const StripPin& other : piece.pins) {
        if (other.at < std::min(l.at, h.at)) before = true;
        if (other.at > std::max(l.at, h.at)) after = true;
      }
      if (!before || !after) continue;
      low_pin = l;
      high_pin = h;
      return true;
    }
  return false;
}

bool same(const StripPin& a, const StripPin& b) { return a.at == b.at && a.side == b.side && a.tag == b.tag; }

/// The piece keeps what lies before the low pin; a new one takes the rest.
void split_at(Strip& strip, int index, const StripPin& low_pin, const StripPin& high_pin) {
  StripPiece rest = strip.pieces[index];
  StripPiece& first = strip.pieces[index];
  const std::vector<StripPin> all = std::move(first.pins);
  first.pins.clear();
  rest.pins.clear();
  for (const StripPin& pin : all) {
    const bool stays = same(pin, low_pin) || (!same(pin, high_pin) && pin.at <= low_pin.at);
    (stays ? first : rest).pins.push_back(pin);
  }
  first.is_open_high = false;
  rest.is_open_low = false;
  strip.pieces.push_back(std::move(rest));
  const int other = static_cast<int>(strip.pieces.size()) - 1;
  follow_links(strip, other);
  add_link(strip, index, other, low_pin.at);
}

/// The place nearest to `wish` that is at least `reach` from every stub.
Grid find_free_place(const Strip& strip, Grid wish, Grid reach) {
  std::vector<Grid> taken;
  for (const StripPiece& piece : strip.pieces)
    for (const StripPin& pin : piece.pins) taken.push_back(pin.at);
  std::sort(taken.begin(), taken.end());
  Grid best = taken.front() - reach;
  const auto offer = [&](Grid from, Grid to) {
    if (from > to) return;
    const Grid place = std::clamp(wish, from, to);
    if (std::abs(place - wish) < std::abs(best - wish)) best = place;
  };
  offer(taken.back() + reach, taken.back() + reach);
  for (std::size_t i = 1; i < taken.size(); ++i) offer(taken[i - 1] + reach, taken[i] - reach);
  return best;
}

/// Why `before` must stand before `after`: a low pin of the one that faces a high pin of the other, or a link. First is the pin of
/// `before`, second that of `after`.
std::pair<StripPin, StripPin> find_reason(const Strip& strip, int before, int after, Grid reach) {
  for (const StripPin& p : strip.pieces[before].pins)
    for (const StripPin& q : strip.pieces[after].pins) {
      if (p.tag < 0 && p.tag == q.tag) return {p, q};
      if (p.side == StripSide::low && q.side == StripSide::high && std::abs(p.at - q.at) < reach) return {p, q};
    }
  return {};
}

}  // namespace

void split_four_ways(Strip& strip, const Plan& plan) {
  const Grid reach = reach_of(plan);
  StripPin low_pin, high_pin;
  for (int i = 0; i < static_cast<int>(strip.pieces.size()); ++i)
    while (find_four_ways(strip.pieces[i], reach, low_pin, high_pin)) split_at(strip, i, low_pin, high_pin);
}

void split_cycle(Strip& strip, const std::vector<int>& cycle, const Plan& plan) {
  const Grid reach = reach_of(plan);
  // The piece with most pins gains most freedom from a split; ties go to the first of the cycle.
  std::size_t chosen = 0;
  for (std::size_t i = 1; i < cycle.size(); ++i)
    if (strip.pieces[cycle[i]].pins.size() > strip.pieces[cycle[chosen]].pins.size()) chosen = i;
  const int index = cycle[chosen];
  const int earlier = cycle[(chosen + cycle.size() - 1) % cycle.size()], later = cycle[(chosen + 1) % cycle.size()];
  const StripPin in = find_reason(strip, earlier, index, reach).second, out = find_reason(strip, index, later, reach).first;
  const Grid at = find_free_place(strip, in.at + (out.at - in.at) / 2, reach);
  StripPiece moved = strip.pieces[index];   // takes the `in` pin and stands after
  StripPiece& kept = strip.pieces[index];
  const std::vector<StripPin> all = std::move(kept.pins);
  kept.pins.clear();
  moved.pins.clear();
  const bool is_between = (at > in.at) != (at > out.at);
  for (const StripPin& pin : all) {
    const bool moves = same(pin, in) || (is_between && !same(pin, out) && (pin.at < at) == (in.at < at));
    (moves ? moved : kept).pins.push_back(pin);
  }
  const bool takes_low = is_between && in.at < at, takes_high = is_between && in.at > at;
  moved.is_open_low &= takes_low;
  moved.is_open_high &= takes_high;
  kept.is_open_low &= !takes_low;
  kept.is_open_high &= !takes_high;
  strip.pieces.push_back(std::move(moved));
  const int other = static_cast<int>(strip.pieces.size()) - 1;
  follow_links(strip, other);
  add_link(strip, index, other, at);
}

}  // namespace loomfolio::laying
