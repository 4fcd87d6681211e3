// SPDX-License-Identifier: MIT
// The idea. Piece a before piece b costs what crosses then: stubs that reach b from the low side through a's extent, and stubs
// that reach a from the high side through b's. Two stubs that face each other at one place force an order (else they would lie
// on each other). Among the pieces that nothing forces to wait, take the one whose standing first saves most; when all wait
// for each other, split one piece of the cycle and begin again. Then move single pieces to their best place while that helps.
//
//      low    a1    b1                a's low stub at a1 faces b's high stub at b2: a must stand before b
//             |     |
//      a .....+-----|-------          b before a elsewhere would be a cycle: one of them is split
//      b      +-----+---
//      high   b2
#include "layout/strip.h"

#include <algorithm>

#include "layout/strip_pairs.h"

namespace loomfolio::laying {
namespace {

/// A piece's pins by side, sorted, and its extent.
struct SidePins {
  std::vector<Grid> low, high;
  Grid begin = 0, end = 0;
};

int count_between(const std::vector<Grid>& sorted, Grid low, Grid high) {
  const auto from = std::upper_bound(sorted.begin(), sorted.end(), low);
  const auto to = std::lower_bound(from, sorted.end(), high);
  return static_cast<int>(to - from);
}

/// How much a piece leans to the high side, -2 to 2.
int lean_of(const SidePins& pins) {
  return std::clamp(static_cast<int>(pins.high.size()) - static_cast<int>(pins.low.size()), -2, 2);
}

int count_crossings(const SidePins& a, const SidePins& b) {
  if (a.end <= b.begin || b.end <= a.begin) return 0;
  return count_between(b.low, a.begin, a.end) + count_between(a.high, b.begin, b.end);
}

/// Crossings that the order of a and b causes beyond the strip's ends.
int count_beyond(const StripPiece& a, const StripPiece& b, const BeyondEnds& beyond, int sources) {
  const std::size_t at = static_cast<std::size_t>(a.source) * sources + b.source;
  return (!beyond.low.empty() && a.is_open_low && b.is_open_low ? beyond.low[at] : 0) +
         (!beyond.high.empty() && a.is_open_high && b.is_open_high ? beyond.high[at] : 0);
}

SidePins side_pins_of(const StripPiece& piece) {
  SidePins pins;
  for (const StripPin& p : piece.pins) (p.side == StripSide::low ? pins.low : pins.high).push_back(p.at);
  std::sort(pins.low.begin(), pins.low.end());
  std::sort(pins.high.begin(), pins.high.end());
  pins.begin = piece.low();
  pins.end = piece.high();
  return pins;
}

void find_musts(const Strip& strip, StripPairs& pairs, Grid reach) {
  struct Stub {
    Grid at;
    int piece, tag;
    StripSide side;
  };
  std::vector<Stub> stubs;
  for (int i = 0; i < pairs.count; ++i)
    for (const StripPin& p : strip.pieces[i].pins) stubs.push_back({p.at, i, p.tag, p.side});
  std::stable_sort(stubs.begin(), stubs.end(), [](const Stub& a, const Stub& b) { return a.at < b.at; });
  for (std::size_t i = 0; i < stubs.size(); ++i)
    for (std::size_t j = i + 1; j < stubs.size() && stubs[j].at - stubs[i].at < reach; ++j) {
      if (stubs[i].piece == stubs[j].piece || stubs[i].side == stubs[j].side) continue;
      if (stubs[i].tag < 0 && stubs[i].tag == stubs[j].tag) continue;   // the two ends of one link
      const bool i_first = stubs[i].side == StripSide::low;
      pairs.must_of(stubs[i_first ? i : j].piece, stubs[i_first ? j : i].piece) = 1;
    }
  for (const StripLink& link : strip.links) pairs.must_of(link.before, link.after) = 1;
}

StripPairs weigh_pairs(const Strip& strip, Grid reach, const BeyondEnds& beyond, int sources) {
  StripPairs pairs;
  pairs.count = static_cast<int>(strip.pieces.size());
  pairs.cost.assign(static_cast<std::size_t>(pairs.count) * pairs.count, 0);
  pairs.must.assign(pairs.cost.size(), 0);
  std::vector<SidePins> pins;
  for (const StripPiece& piece : strip.pieces) pins.push_back(side_pins_of(piece));
  for (int a = 0; a < pairs.count; ++a)
    for (int b = 0; b < pairs.count; ++b) {
      if (a == b) continue;
      const int crossings = count_crossings(pins[a], pins[b]) +
                            count_beyond(strip.pieces[a], strip.pieces[b], beyond, sources);
      pairs.cost_of(a, b) = strip_crossing_cost * crossings + std::max(0, lean_of(pins[a]) - lean_of(pins[b]));
    }
  find_musts(strip, pairs, reach);
  return pairs;
}

/// A cycle of musts among the pieces not yet placed; every one of them has a must before it.
std::vector<int> find_cycle(StripPairs& pairs, const std::vector<int>& waiting) {
  std::vector<int> seen_at(static_cast<std::size_t>(pairs.count), -1), walk;
  int piece = waiting.front();
  while (seen_at[piece] < 0) {
    seen_at[piece] = static_cast<int>(walk.size());
    walk.push_back(piece);
    for (int w : waiting)
      if (pairs.must_of(w, piece)) {
        piece = w;
        break;
      }
  }
  std::vector<int> cycle(walk.begin() + seen_at[piece], walk.end());
  std::reverse(cycle.begin(), cycle.end());
  return cycle;
}

/// Fills `order`; gives a cycle when the musts contradict each other.
std::vector<int> place_greedily(const Strip& strip, StripPairs& pairs, std::vector<int>& order) {
  std::vector<int> waiting;
  for (int i = 0; i < pairs.count; ++i)
    if (!strip.pieces[i].is_straight()) waiting.push_back(i);
  std::vector<long> score(static_cast<std::size_t>(pairs.count), 0);
  std::vector<int> blocked(static_cast<std::size_t>(pairs.count), 0);
  for (int a : waiting)
    for (int b : waiting) {
      score[a] += pairs.cost_of(a, b) - pairs.cost_of(b, a);
      blocked[b] += pairs.must_of(a, b);
    }
  order.clear();
  while (!waiting.empty()) {
    int best = -1;
    for (int a : waiting)
      if (blocked[a] == 0 && (best < 0 || score[a] < score[best])) best = a;
    if (best < 0) return find_cycle(pairs, waiting);
    order.push_back(best);
    waiting.erase(std::find(waiting.begin(), waiting.end(), best));
    for (int o : waiting) {
      score[o] -= pairs.cost_of(o, best) - pairs.cost_of(best, o);
      blocked[o] -= pairs.must_of(best, o);
    }
  }
  return {};
}

/// Moves one piece to its best place among the others; true when that helped.
bool sift(StripPairs& pairs, std::vector<int>& order, std::size_t from) {
  const int piece = order[from];
  long change = 0, best = 0;
  std::size_t to = from;
  for (std::size_t i = from; i-- > 0;) {
    if (pairs.must_of(order[i], piece)) break;
    change += pairs.cost_of(piece, order[i]) - pairs.cost_of(order[i], piece);
    if (change < best) best = change, to = i;
  }
  change = 0;
  for (std::size_t i = from + 1; i < order.size(); ++i) {
    if (pairs.must_of(piece, order[i])) break;
    change += pairs.cost_of(order[i], piece) - pairs.cost_of(piece, order[i]);
    if (change < best) best = change, to = i;
  }
  if (to == from) return false;
  order.erase(order.begin() + static_cast<long>(from));
  order.insert(order.begin() + static_cast<long>(to), piece);
  return true;
}

Grid gap_between(const Plan& plan, const StripPiece& before, const StripPiece& after, StripKind kind) {
  const Grid gap = distance_between(plan, before.wire, after.wire);
  const bool is_level = (kind == StripKind::channel) == (plan.flow == Flow::down);
  if (!is_level) return gap;
  const Grid label = plan.graph->wires[after.wire].label_height;
  if (label == 0) return gap;
  return std::max(gap, half_pen(plan, before.wire) + half_pen(plan, after.wire) + label + 2 * plan.spacing.label_gap);
}

/// A gap to each piece that is seen from the next one, looking back to the low side; the others follow from those.
void make_arcs(Strip& strip, const Plan& plan, StripKind kind) {
  struct Seen {
    Grid low, high;
    int piece;
  };
  const Grid half = (reach_of(plan) + 1) / 2;
  std::vector<Seen> skyline;
  strip.arcs.clear();
  for (int index : strip.order) {
    const StripPiece& piece = strip.pieces[index];
    const Grid low = piece.low() - half, high = piece.high() + half;
    std::vector<Seen> next;
    std::vector<int> met;
    for (const Seen& s : skyline) {
      if (s.high <= low || s.low >= high) {
        next.push_back(s);
        continue;
      }
      met.push_back(s.piece);
      if (s.low < low) next.push_back({s.low, low, s.piece});
      if (s.high > high) next.push_back({high, s.high, s.piece});
    }
    next.push_back({low, high, index});
    skyline = std::move(next);
    std::sort(met.begin(), met.end());
    met.erase(std::unique(met.begin(), met.end()), met.end());
    for (int m : met) strip.arcs.push_back({m, index, gap_between(plan, strip.pieces[m], piece, kind)});
  }
}

}  // namespace

Grid StripPiece::low() const {
  Grid least = is_open_low ? -far_away : far_away;
  for (const StripPin& p : pins) least = std::min(least, p.at);
  return least;
}

Grid StripPiece::high() const {
  Grid most = is_open_high ? far_away : -far_away;
  for (const StripPin& p : pins) most = std::max(most, p.at);
  return most;
}

bool StripPiece::is_straight() const {
  return !is_open_low && !is_open_high && pins.size() == 2 && pins[0].side != pins[1].side && pins[0].at == pins[1].at;
}

Grid reach_of(const Plan& plan) {
  Grid widest = 0;
  for (int w = 0; w < wires_of(plan); ++w) widest = std::max(widest, half_pen(plan, w));
  return std::max(plan.spacing.pitch, plan.spacing.least + 2 * widest);
}

int count_least_crossings(const StripPiece& a, const StripPiece& b) {
  const Grid a_low = a.low(), a_high = a.high(), b_low = b.low(), b_high = b.high();
  if (a_high <= b_low || b_high <= a_low) return 0;
  int a_first = 0, b_first = 0;  // crossings when that one stands nearer to the low side
  for (const StripPin& p : a.pins)
    if (p.at > b_low && p.at < b_high) ++(p.side == StripSide::high ? a_first : b_first);
  for (const StripPin& p : b.pins)
    if (p.at > a_low && p.at < a_high) ++(p.side == StripSide::low ? a_first : b_first);
  return std::min(a_first, b_first);
}

void order_strip(Strip& strip, const Plan& plan, StripKind kind, const BeyondEnds& beyond) {
  const int sources = static_cast<int>(strip.pieces.size());
  for (int i = 0; i < sources; ++i) strip.pieces[i].source = i;
  split_four_ways(strip, plan);
  StripPairs pairs = weigh_pairs(strip, reach_of(plan), beyond, sources);
  for (std::vector<int> cycle = place_greedily(strip, pairs, strip.order); !cycle.empty();
       cycle = place_greedily(strip, pairs, strip.order)) {
    split_cycle(strip, cycle, plan);
    pairs = weigh_pairs(strip, reach_of(plan), beyond, sources);
  }
  for (int round = 0; round < 6; ++round) {
    bool helped = false;
    for (std::size_t i = 0; i < strip.order.size(); ++i) helped |= sift(pairs, strip.order, i);
    if (!helped) break;
  }
  bring_mates_together(strip, *plan.graph, pairs);
  make_arcs(strip, plan, kind);
}

}  // namespace loomfolio::laying
